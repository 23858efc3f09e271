// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "core/review/check_bench.h"
#include "tests/support/hand_reading.h"
#include "tests/support/samples.h"

namespace skeinproof::testing {

// A text laid over the facts of a pattern, to run single checks on.
class CheckedText {
 public:
  explicit CheckedText(Pattern pattern, std::string text, std::vector<PartTold> parts = {});
  // Statements put on the words by hand.
  CheckedText(Pattern pattern, HandReading hand);
  // The draft at hand of a sample.
  explicit CheckedText(Pattern pattern);

  CheckResult run(std::string_view check) const;
  std::vector<Finding> found(std::string_view check) const { return run(check).found; }
  bool not_checked(std::string_view check) const { return !run(check).not_checked.empty(); }
  // "MC 5,6" for each finding: roles and sizes, in the order found.
  std::vector<std::string> where(std::string_view check) const;
  std::string text_with(const Finding& finding) const { return edited(printed_.text(), finding.proposal); }
  const PrintedView& printed() const { return printed_; }
  const Pattern& pattern() const { return pattern_; }

 private:
  Pattern pattern_;
  Assessment assessment_;
  PrintedView printed_;
  CheckBench bench_;
};

// The submitted text of a sample with some words changed, each of which must stand there.
std::string submitted(const Pattern& sample,
                      const std::vector<std::pair<std::string, std::string>>& changes = {});
inline PartTold whole(TextPart part) { return {part, PartExtent::whole}; }

}  // namespace skeinproof::testing
