// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string_view>

#include "core/base/error.h"

namespace skeinproof {

// Whether a page can be parsed in time and memory that grow with its length: its elements are not open inside
// each other beyond bounds, its unclosed formatting is not repeated in every paragraph beyond bounds, and no
// tag has hundreds of attributes. Counts at least what a parser would build; the first breach is returned.
Expected<void> check_html_bounds(std::string_view html);

}  // namespace skeinproof
