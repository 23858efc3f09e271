// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <vector>

#include "core/review/check.h"

namespace skeinproof {

// What agrees with the words that edits put in place, beside the findings they clear: "the total line", "the
// need sheet", "the facts in force". `input` is that of the text with the edits made, `edits` those of the
// text before, in its order.
std::vector<std::string> what_agrees(const ReviewInput& input, const std::vector<TextEdit>& edits);

}  // namespace skeinproof
