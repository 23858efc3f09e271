// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string_view>

#include "core/review/check.h"

namespace skeinproof {

// The rules of shade names, by what they look at.
void shades_are_complete(const ReviewInput& input, Findings& findings);     // D5
void one_number_one_shade(const ReviewInput& input, Findings& findings);    // D6
void names_are_those_listed(const ReviewInput& input, Findings& findings);  // D7

// Whether a name is so near another that it is likely a slip for it: one letter other, more, fewer or
// exchanged with its neighbour in names of 4 or 5 letters; two in longer ones that begin alike. Names that
// are the same but for case and spaces are not.
bool is_slip_of(std::string_view name, std::string_view other);

}  // namespace skeinproof
