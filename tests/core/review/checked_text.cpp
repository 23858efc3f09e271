// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/review/checked_text.h"

#include <stdexcept>

#include "core/base/text.h"

namespace skeinproof::testing {

CheckedText::CheckedText(Pattern pattern, std::string text, std::vector<PartTold> parts)
    : pattern_(std::move(pattern)),
      assessment_(assess(pattern_)),
      printed_(std::move(text), parts, {}, pattern_),
      bench_(pattern_, assessment_, printed_) {}

CheckedText::CheckedText(Pattern pattern, HandReading hand)
    : pattern_(std::move(pattern)),
      assessment_(assess(pattern_)),
      printed_(std::move(hand.text), std::move(hand.reading), pattern_),
      bench_(pattern_, assessment_, printed_) {}

CheckedText::CheckedText(Pattern pattern)
    : CheckedText(pattern, pattern.draft()->text, pattern.draft()->parts) {}

CheckResult CheckedText::run(std::string_view check) const {
  if (const Check* row = check_by_id(check)) return bench_.run(*row, printed_);
  throw std::invalid_argument("no check " + std::string(check));
}

std::vector<std::string> CheckedText::where(std::string_view check) const {
  std::vector<std::string> all;
  for (const Finding& finding : found(check))
    all.push_back(join(finding.roles, "+") + " " + join(finding.sizes, ","));
  return all;
}

std::string submitted(const Pattern& sample,
                      const std::vector<std::pair<std::string, std::string>>& changes) {
  std::string text = sample.draft()->text;
  for (const auto& [before, after] : changes) {
    const auto at = text.find(before);
    if (at == std::string::npos) throw std::invalid_argument("not in the text: " + before);
    text.replace(at, before.size(), after);
  }
  return text;
}

}  // namespace skeinproof::testing
