// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/printed_words.h"

#include <algorithm>

#include "core/base/text.h"
#include "core/units/show.h"

namespace skeinproof {

void rest_on(Finding& finding, const PrintedView& printed, const Statement& statement) {
  const std::size_t index = printed.index(statement);
  if (std::find(finding.statements.begin(), finding.statements.end(), index) == finding.statements.end())
    finding.statements.push_back(index);
}

void show(Finding& finding, const PrintedView& printed, const Statement& statement) {
  if (std::find(finding.places.begin(), finding.places.end(), statement.span) == finding.places.end())
    finding.places.push_back(statement.span);
  rest_on(finding, printed, statement);
}

TextSpan span_of(const Statement& one, const Statement& other) {
  return {std::min(one.span.begin, other.span.begin), std::max(one.span.end, other.span.end)};
}

std::string printed_words(const PrintedView& printed, const TextSpan& span) {
  std::string words(printed.words(span));
  for (char& c : words)
    if (c == '\n' || c == '\r') c = ' ';
  return quoted(tidy_spaces(words));
}

std::string printed_words(const PrintedView& printed, const Statement& statement) {
  return printed_words(printed, statement.span);
}

std::string figure(double value, int most_decimals) { return show_short(value, most_decimals); }

TextSpan sentence_around(std::string_view text, std::size_t offset) {
  constexpr std::size_t farthest = 300;
  const auto ends = [&](std::size_t i) {
    const char c = text[i];
    const bool stop = c == '.' && (i + 1 >= text.size() || text[i + 1] == ' ' || text[i + 1] == '\n');
    // A line that goes on in a small letter is a sentence broken to fit the page.
    const bool wrapped = c == '\n' && i + 1 < text.size() && text[i + 1] >= 'a' && text[i + 1] <= 'z';
    return (c == '\n' && !wrapped) || c == ';' || c == '!' || c == '?' || stop;
  };
  offset = std::min(offset, text.size());
  std::size_t begin = offset, end = offset;
  while (begin > 0 && offset - begin < farthest && !ends(begin - 1)) --begin;
  while (end < text.size() && end - offset < farthest && !ends(end)) ++end;
  return {begin, end};
}

}  // namespace skeinproof
