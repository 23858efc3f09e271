// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "core/base/error.h"
#include "core/pattern/pattern.h"

namespace skeinproof {

// A stripe sequence as people write it: "MC 6, CC 4", a role's label and its rows, parted by commas,
// semicolons or plus signs; "6 MC" is read too. Capital and small letters are the same. An empty text is no
// stripes. Fails at a label that is no role (unknown_name), at rows that are no number above 0
// (not_a_quantity, out_of_range).
Expected<std::vector<Stripe>> read_stripes(std::string_view text, const Pattern& pattern);

// The same text from a sequence; a stripe whose role is gone is written "?".
std::string stripes_text(const std::vector<Stripe>& stripes, const Pattern& pattern);

}  // namespace skeinproof
