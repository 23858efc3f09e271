// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <vector>

#include "core/review/check_bench.h"
#include "core/review/review.h"
#include "core/review/slip_candidates.h"

namespace skeinproof {

// An edit that clears findings and opens none.
struct SlipFound {
  LikelySlip slip;
  SlipKind kind = SlipKind::digit;
  int explains = 0;  // what else it agrees with: the total line, the need sheet, the facts in force
  int changed = 0;   // characters
};

// What the search stands on: the findings of a printed view, and which check gave which.
struct SlipSearchInput {
  const CheckBench& bench;
  const PrintedView& printed;
  const std::vector<PartTold>& parts;
  const std::vector<Telling>& tellings;
  const std::vector<CheckResult>& results;            // by check, in the order of the catalogue
  const std::vector<Finding>& findings;               // ranked
  const std::vector<std::vector<std::size_t>>& rank;  // of each check's findings, the index among the ranked
};
struct SlipSearch {
  std::vector<SlipFound> found;
  bool cut_short = false;
};

// Tries single edits of the words that findings rest on, each with the checks alone that read what it
// touches. The number of edits is bounded by the length of the text.
SlipSearch search_slips(const SlipSearchInput& input);

// Whether a slip that was found holds when its text is read as a whole and every check is run; its cleared
// findings are set anew.
bool confirm(const SlipSearchInput& input, SlipFound& slip);

}  // namespace skeinproof
