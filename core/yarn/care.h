// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string_view>

#include "core/base/find_word.h"

namespace skeinproof {

// Washing, by the words of ISO 3758 and of bands. All texts are lower case.

// Whether a text names the wool cycle or another gentle one; washing by machine; no washing by machine.
bool says_gentle(std::string_view care);
bool says_machine(std::string_view care);
bool denies_machine(std::string_view care);

// How strict a washing is, the strictest first: 0 not washed, 1 by hand, 2 gentle, 3, 4 and 5 by machine at
// 30, 40 and 60; absent where none is named.
std::optional<int> care_rank(std::string_view care);
std::string_view care_rank_words(int rank);  // "hand wash"

}  // namespace skeinproof
