// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/finding_words.h"

#include <algorithm>

#include "core/base/text.h"
#include "core/review/printed_words.h"

namespace skeinproof {

FindingWords::FindingWords(const ReviewInput& input) {
  style_.mark = input.pattern.house().mark;
  style_.fractions = input.pattern.house().fractions;
}

std::string FindingWords::number(double value, int most_decimals) const {
  return show_short(value, most_decimals, style_);
}
std::string FindingWords::fixed(double value, int decimals) const {
  return show_number(value, decimals, style_);
}
std::string FindingWords::metres(double value) const { return number(value, 1) + " m"; }
std::string FindingWords::percent(double share) const { return number(share * 100, 1) + " %"; }
std::string FindingWords::skeins(double count) const {
  return number(count, 2) + (count == 1 ? " skein" : " skeins");
}

void show_value(Finding& finding, const PrintedView& printed, const Statement& statement,
                const PrintedValue& value) {
  finding.places.push_back(value.span);
  rest_on(finding, printed, statement);
}

void add_size(Finding& finding, const PrintedView& printed, std::size_t size) {
  finding.sizes.push_back(printed.size_labels()[size]);
}

void propose(Finding& finding, const PrintedView& printed, const TextSpan& span, std::string after) {
  if (!finding.proposal_words.empty()) finding.proposal_words += "; ";
  const std::string before(printed.words(span));
  if (before.empty())
    finding.proposal_words += "add “" + std::string(trimmed(after)) + "”";
  else
    finding.proposal_words += before + " → " + after;
  finding.proposal.push_back({span, std::move(after)});
}

std::string sizes_in_words(const std::vector<std::string>& sizes) {
  return (sizes.size() == 1 ? "size " : "sizes ") + listed(sizes);
}

std::vector<std::string> in_columns(const std::vector<std::vector<std::string>>& rows) {
  std::vector<std::size_t> widths;
  const auto width_of = [](const std::string& cell) { return code_points(cell).size(); };
  for (const auto& row : rows)
    for (std::size_t i = 0; i < row.size(); ++i) {
      if (widths.size() <= i) widths.push_back(1);
      widths[i] = std::max(widths[i], width_of(row[i]));
    }
  std::vector<std::string> lines;
  for (const auto& row : rows) {
    std::string line;
    for (std::size_t i = 0; i < row.size(); ++i) {
      const std::string cell = row[i].empty() ? "·" : row[i];
      if (i > 0) line += "  ";
      line += cell + std::string(widths[i] - width_of(cell), ' ');
    }
    line.erase(line.find_last_not_of(' ') + 1);
    lines.push_back(std::move(line));
  }
  return lines;
}

std::string compared(std::string_view text) { return lower_ascii(tidy_spaces(text)); }

}  // namespace skeinproof
