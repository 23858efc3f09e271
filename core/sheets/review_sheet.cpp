// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheets/review_sheet.h"

#include <array>

#include "core/base/text.h"
#include "core/sheets/sheet_parts.h"

namespace skeinproof {
namespace {

std::string place_words(const Review& review, const Finding& finding) {
  std::vector<std::string> parts;
  if (!finding.roles.empty()) parts.push_back(join(finding.roles, ", "));
  if (!finding.sizes.empty())
    parts.push_back((finding.sizes.size() == 1 ? "size " : "sizes ") + join(finding.sizes, ", "));
  if (!finding.places.empty())
    parts.push_back("line " + std::to_string(line_column(review.text, finding.places.front().begin).line));
  return join(parts, ", ");
}

Row finding_row(const Review& review, const Finding& finding, bool first) {
  Row row;
  row.opens_group = first;
  row.cells = {words(first ? std::string(word_of(finding.severity)) : std::string()), words(finding.check),
               words(place_words(review, finding)), words(finding.title, first ? 0 : 1)};
  row.cells.front().strong = finding.severity == Severity::stop;
  return row;
}

std::string change_words(const std::string& before, const std::string& after) {
  if (before.empty()) return "put in " + quoted(trimmed(after));
  if (after.empty()) return "take out " + quoted(trimmed(before));
  return quoted(before) + " → " + quoted(after);
}

Table findings_table(const Review& review) {
  Table table;
  table.columns = {{"", Align::left, false},
                   {"check", Align::left, false},
                   {"place", Align::left, false},
                   {"finding", Align::left, false}};
  for (const Cause& cause : review.causes) {
    for (std::size_t i = 0; i < cause.findings.size(); ++i)
      table.rows.push_back(finding_row(review, review.findings[cause.findings[i]], i == 0));
    const Finding& first = review.findings[cause.findings.front()];
    std::string change;
    if (cause.slip)
      change = "likely slip: " + change_words(cause.slip->before, cause.slip->after);
    else if (!first.proposal_words.empty())
      change = "would satisfy it: " + first.proposal_words;
    if (!change.empty()) table.rows.push_back({{words(""), words(""), words(""), words(change, 1)}, false});
  }
  return table;
}

}  // namespace

std::string finding_counts(const Review& review) {
  std::array<int, 4> counts{};
  for (const Cause& cause : review.causes)
    ++counts[static_cast<std::size_t>(review.findings[cause.findings.front()].severity)];
  std::vector<std::string> parts;
  for (std::size_t i = 0; i < counts.size(); ++i)
    if (counts[i] > 0)
      parts.push_back(std::to_string(counts[i]) + " " + std::string(word_of(static_cast<Severity>(i))));
  return parts.empty() ? "nothing found" : join(parts, ", ");
}

Sheet findings_sheet(const Pattern& pattern, const Review& review, std::string_view date) {
  Sheet sheet = started_sheet(pattern, pattern.house(), "Findings: " + finding_counts(review), date);
  if (!review.findings.empty()) sheet.parts.emplace_back(findings_table(review));
  Table not_checked;
  not_checked.title = "Not checked";
  not_checked.columns = {
      {"check", Align::left, false}, {"because", Align::left, false}, {"would help", Align::left, false}};
  for (const NotChecked& one : review.not_checked)
    not_checked.rows.push_back({{words(one.check), words(one.because), words(one.would_help)}, false});
  if (!not_checked.rows.empty()) sheet.parts.emplace_back(std::move(not_checked));
  Table unread;
  unread.title = "Not understood";
  unread.columns = {{"line", Align::right, false}, {"words", Align::left, false}};
  for (const NotUnderstood& one : review.reading.not_understood)
    if (!one.told_nothing)
      unread.rows.push_back({{figure(line_column(review.text, one.span.begin).line, 0),
                              words(quoted(words_at(review.text, one.span)))},
                             false});
  if (!unread.rows.empty()) sheet.parts.emplace_back(std::move(unread));
  if (std::string words = words_on_language(review.reading); !words.empty())
    sheet.foot_notes.push_back(std::move(words));
  sheet.foot_notes.push_back(std::to_string(review.checks_run) + " checks had what they need.");
  return sheet;
}

}  // namespace skeinproof
