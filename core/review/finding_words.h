// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/listed.h"
#include "core/review/check.h"

namespace skeinproof {

// How figures stand in findings: in the house's decimal mark.
class FindingWords {
 public:
  explicit FindingWords(const ReviewInput& input);
  std::string number(double value, int most_decimals = 1) const;
  std::string fixed(double value, int decimals) const;
  std::string metres(double value) const;   // "177.5 m"
  std::string percent(double share) const;  // 0.047 -> "4.7 %"
  // "1 skein", "7 skeins".
  std::string skeins(double count) const;

 private:
  NumberStyle style_;
};

// The finding rests on a statement and shows one figure of it.
void show_value(Finding& finding, const PrintedView& printed, const Statement& statement,
                const PrintedValue& value);
void add_size(Finding& finding, const PrintedView& printed, std::size_t size);
// Adds an edit, and its before and after to the proposal's words.
void propose(Finding& finding, const PrintedView& printed, const TextSpan& span, std::string after);

// "size 4", "sizes 4 and 5".
std::string sizes_in_words(const std::vector<std::string>& sizes);
// Figures under each other in columns, a line each; a missing one shows as a middle dot.
std::vector<std::string> in_columns(const std::vector<std::vector<std::string>>& rows);

// A word as it is compared: lower case, odd spaces tidied.
std::string compared(std::string_view text);
}  // namespace skeinproof
