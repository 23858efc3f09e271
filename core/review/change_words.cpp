// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/change_words.h"

#include <algorithm>
#include <cctype>

#include "core/base/text.h"

namespace skeinproof {
namespace {

constexpr std::size_t most_changes = 4;  // told one by one

std::string in_quotes(std::string_view words) {
  std::string line = tidy_spaces(words);
  std::replace_if(
      line.begin(), line.end(), [](char c) { return c == '\n' || c == '\r' || c == '\t'; }, ' ');
  return quoted(line);
}

bool parts_figures(char c) {
  return std::isspace(static_cast<unsigned char>(c)) != 0 || c == ',' || c == ';' || c == '(' || c == ')' ||
         c == '[' || c == ']' || c == '/';
}

// The first and the last figure or word, and what stands between them.
struct Ends {
  std::string_view first, between, last;
};
Ends ends_of(std::string_view words) {
  const auto first = std::find_if(words.begin(), words.end(), parts_figures);
  const auto last = std::find_if(words.rbegin(), words.rend(), parts_figures);
  const auto front = static_cast<std::size_t>(first - words.begin());
  const auto back = static_cast<std::size_t>(last - words.rbegin());
  if (front + back >= words.size()) return {words, {}, {}};
  return {words.substr(0, front), words.substr(front, words.size() - front - back),
          words.substr(words.size() - back)};
}

std::string exchange(std::string_view one, std::string_view other) {
  return "exchange " + in_quotes(one) + " and " + in_quotes(other);
}

std::string replacement(std::string_view before, std::string_view after) {
  const Ends was = ends_of(before), is = ends_of(after);
  const std::string change = in_quotes(before) + " → " + in_quotes(after);
  if (!was.last.empty() && was.first == is.last && was.last == is.first && was.between == is.between)
    return exchange(was.first, was.last) + ": " + change;
  return "change " + in_quotes(before) + " to " + in_quotes(after);
}

// The statement that words are put into, before and after it.
std::string around(const Review& review, const TextEdit& edit) {
  const Statement* into = nullptr;
  for (const Statement& one : review.reading.statements)
    if (one.span.holds(edit.span) && (into == nullptr || into->span.holds(one.span))) into = &one;
  if (into == nullptr) return {};
  const TextSpan at{edit.span.begin - into->span.begin, edit.span.end - into->span.begin};
  const auto words = words_at(review.text, into->span);
  const auto in_line = [](std::string_view text) { return quoted(tidy_spaces(text), 110); };
  return ": " + in_line(words) + " → " + in_line(edited(words, {{at, edit.after}}));
}

std::string one_change(const Review& review, const TextEdit& edit) {
  const auto before = words_at(review.text, edit.span);
  if (before.empty()) return "put in " + in_quotes(edit.after) + around(review, edit);
  if (edit.after.empty()) return "take out " + in_quotes(before);
  return replacement(before, edit.after);
}

}  // namespace

std::string change_words(const Review& review, const std::vector<TextEdit>& edits) {
  if (edits.size() == 2) {
    const auto one = words_at(review.text, edits[0].span), other = words_at(review.text, edits[1].span);
    if (!one.empty() && one != other && one == edits[1].after && other == edits[0].after)
      return exchange(one, other);
  }
  std::vector<std::string> changes;
  for (const TextEdit& edit : edits)
    if (words_at(review.text, edit.span) != edit.after) changes.push_back(one_change(review, edit));
  if (changes.size() > most_changes) {
    const std::size_t more = changes.size() - (most_changes - 1);
    changes.resize(most_changes - 1);
    changes.push_back("and " + std::to_string(more) + " more");
  }
  return join(changes, "; ");
}

}  // namespace skeinproof
