// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>

namespace skeinproof {

// What GNU units says `expression` is in `unit`, to twelve digits; NaN where it gives no figure.
double gnu_units(const std::string& expression, const std::string& unit);

}  // namespace skeinproof
