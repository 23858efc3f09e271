// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/review/check.h"

namespace skeinproof {

// Another reading of a few characters that would clear findings.
struct LikelySlip {
  std::string name;  // "exchange 5 and 6", "digit", "unit"
  std::vector<TextEdit> edits;
  std::string before, after;        // "8, 7" -> "7, 8"
  std::vector<std::size_t> clears;  // indices of findings
  int opens = 0;                    // findings it would open
  std::string explains_too;         // "total line"; may be empty
};

// Findings of one cause, the first of which speaks for all.
struct Cause {
  std::string id;                     // "c1"
  std::vector<std::size_t> findings;  // indices, gravest first
  std::optional<LikelySlip> slip;     // the likeliest
  std::vector<LikelySlip> others;     // next ones that clear its first finding, likeliest first; a few
};

struct Review {
  std::string text;  // as tested: the draft with its replies laid over it
  Reading reading;
  std::vector<Finding> findings;  // ranked: by severity, then by place
  std::vector<Cause> causes;      // each finding in exactly one, in the order of the findings
  std::vector<NotChecked> not_checked;
  int checks_run = 0;            // that had all they need
  bool slips_cut_short = false;  // the text is too long to try every single edit
};

struct ReviewOptions {
  bool search_slips = true;
};

// Every check of the catalogue over the printed view of a pattern. Pure and total.
Review review(const Pattern& pattern, const Assessment& assessment, const ReviewOptions& options = {});

}  // namespace skeinproof
