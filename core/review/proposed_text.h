// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <vector>

#include "core/review/record.h"

namespace skeinproof {

// The text in force with the changes laid in that would answer what is still to be decided.
struct ProposedText {
  std::string text;
  struct Change {
    TextSpan span;      // in `text`; empty where words were taken out
    std::size_t cause;  // whose answer it is
  };
  std::vector<Change> changes;        // in the order of the text
  std::vector<std::size_t> left_out;  // causes whose change meets one of a graver cause
  std::vector<TextEdit> edits;        // of `Review::text`, in its order
};
// Answers of undecided causes, gravest first; of each all edits or none.
ProposedText proposed_text(const Review& review, const Record& record);

}  // namespace skeinproof
