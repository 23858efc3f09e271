// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <vector>

#include "core/review/review.h"

namespace skeinproof {

// A change of words as a query records it: words of the draft, which of the equal ones, and the new words.
struct RecordedWords {
  std::string before, after;
  int occurrence = 1;
};

// Edits of the text in force as words of the draft. Those of one statement or line are one; an earlier reply
// in the way is taken in; and the words are widened, to their statement, to what is said in that breath, to
// their lines, until the draft has them once only. `replies` are the recorded ones, by which `review.text`
// came from `draft`. Edits that change nothing or reach outside the text are left out.
std::vector<RecordedWords> recorded_words(const std::string& draft, const std::vector<TextEdit>& replies,
                                          const Review& review, std::vector<TextEdit> edits);

}  // namespace skeinproof
