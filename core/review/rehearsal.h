// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <vector>

#include "core/review/review.h"

namespace skeinproof {

// What a designer's answer would do, before it is accepted.
struct Rehearsal {
  std::string text;                           // with the answer in place
  std::vector<std::size_t> closes, stays;     // indices of the findings before
  std::vector<Finding> opens;                 // ranked
  std::vector<NotChecked> no_longer_checked;  // checks that ran before and could not with the answer
};

// `before` is the review of this pattern, and `answer` edits its text. Pure and total.
Rehearsal rehearse(const Pattern& pattern, const Assessment& assessment, const Review& before,
                   const std::vector<TextEdit>& answer);

}  // namespace skeinproof
