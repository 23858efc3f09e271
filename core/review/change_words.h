// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <vector>

#include "core/review/review.h"

namespace skeinproof {

// What edits of `Review::text` do, by what it is: "change “197” to “191”", "exchange “8” and “7”",
// "take out “CC4”", "put in “, 1”: “1 (1, 1)” → “1 (1, 1, 1)”". It follows "we propose to" as well as a box
// to tick. Empty where nothing is edited.
std::string change_words(const Review& review, const std::vector<TextEdit>& edits);

}  // namespace skeinproof
