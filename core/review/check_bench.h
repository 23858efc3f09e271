// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <vector>

#include "core/review/check.h"

namespace skeinproof {

// What one check said of one printed view.
struct CheckResult {
  std::vector<Finding> found;
  std::vector<NotChecked> not_checked;
};

// The facts and the evidence that stay while the printed words change under the checks. Refers to the
// pattern and the assessment it was made of.
class CheckBench {
 public:
  // A role without a count in force takes the printed one as evidence.
  CheckBench(const Pattern& pattern, const Assessment& assessment, const PrintedView& printed);
  CheckBench(const CheckBench&) = delete;
  CheckBench& operator=(const CheckBench&) = delete;

  const Pattern& pattern() const { return pattern_; }
  ReviewInput input(const PrintedView& printed) const {
    return {pattern_, need_, assessment_, evidence_, printed};
  }
  CheckResult run(const Check& check, const PrintedView& printed) const;
  // Of every check, in the order of the catalogue.
  std::vector<CheckResult> run_all(const PrintedView& printed) const;

 private:
  const Pattern& pattern_;
  const Assessment& assessment_;
  NeedContext need_;
  std::vector<RoleEvidence> evidence_;
};

}  // namespace skeinproof
