// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/base/text.h"
#include "core/manuscript/read_labels.h"
#include "core/manuscript/read_names.h"
#include "core/manuscript/read_parts.h"

namespace skeinproof {
namespace {

constexpr std::size_t longest_title = 9;  // words

bool greets(const Reader& reader, std::size_t i) {
  constexpr std::string_view greetings[] = {"hi",     "hello", "dear", "hey", "thanks", "thank",
                                            "please", "sorry", "re",   "fw",  "subject"};
  return std::any_of(std::begin(greetings), std::end(greetings),
                     [&](auto word) { return reader.is(i, word); });
}
bool says_title(const Reader& reader, std::size_t i) {
  constexpr std::string_view words[] = {"title", "pattern", "name", "design", "project"};
  return reader.letter(i + 1) == ':' &&
         std::any_of(std::begin(words), std::end(words), [&](auto word) { return reader.is(i, word); });
}

// Words that no title begins with.
bool begins_else(const Reader& reader, std::size_t i) {
  constexpr Sense senses[] = {
      Sense::size_word,   Sense::yarn_word, Sense::gauge_word,   Sense::needle_word,   Sense::notions_word,
      Sense::text_word,   Sense::key_word,  Sense::chart_word,   Sense::measures_word, Sense::measure,
      Sense::used,        Sense::total,     Sense::shown,        Sense::role_label,    Sense::role_words,
      Sense::role_prefix, Sense::fit,       Sense::care_heading, Sense::sentence_verb, Sense::care,
      Sense::cast_on,     Sense::about};
  return std::any_of(std::begin(senses), std::end(senses), [&](Sense sense) { return reader.has(i, sense); });
}

bool joins_title(const Reader& reader, std::size_t i) {
  constexpr std::string_view small[] = {"of", "and",  "for", "the", "a",    "an", "in",
                                        "to", "with", "by",  "on",  "from", "or"};
  if (reader.capital(i)) return true;
  if (reader.has(i, Sense::item) || reader.has(i, Sense::wearer) || reader.letter(i) == '&') return true;
  return std::any_of(std::begin(small), std::end(small), [&](auto word) { return reader.is(i, word); });
}

// A title from `first` on: where it ends, or `first`.
std::size_t title_end(const Reader& reader, std::size_t first, std::size_t line_end) {
  std::size_t last = first;
  while (last < line_end && last < first + longest_title &&
         (joins_title(reader, last) ||
          (last > first && reader.letter(last) == gap_shape && reader.capital(last + 1))))
    ++last;
  while (last > first && !reader.capital(last - 1) && !reader.has(last - 1, Sense::item) &&
         !reader.has(last - 1, Sense::wearer))
    --last;
  if (last == first) return first;
  constexpr std::string_view ends = ",:(-.*|;)\"\t\n#";
  const char next = reader.letter(last);
  if (next != '\0' && ends.find(next) == std::string_view::npos) return first;
  return last;
}

}  // namespace

void read_title(Reader& reader) {
  const std::size_t count = reader.letters.size();
  bool first_line = true;
  for (std::size_t line = 0; line < count && line < 400;) {
    const std::size_t found = reader.letters.find('\n', line);
    const std::size_t line_end = found == std::string::npos ? count : found;
    std::size_t first = line;
    constexpr std::string_view marks = "#*\"\t-=";
    while (first < line_end && marks.find(reader.letter(first)) != std::string_view::npos) ++first;
    if (first == line_end) {
      line = line_end + 1;
      continue;
    }
    const bool named = says_title(reader, first);
    const std::size_t begin = named ? first + 2 : first;
    const bool names_size = reader.letter(first + 1) == ':' &&
                            !read_labels(reader.plain, reader.items.tokens, first, true).cells.empty();
    const bool may = named || (first_line && !names_size && !greets(reader, first) &&
                               !begins_else(reader, first) && reader.capital(first));
    first_line = false;
    const std::size_t last = may ? title_end(reader, begin, line_end) : begin;
    Clause clause;
    clause.first = line;
    clause.last = std::min(line_end + 1, count);
    if (last > begin && (named || !yarn_follows(reader, clause, last))) {
      reader.say(StatementKind::title, begin, last).words = reader.words(begin, last);
      reader.use(first, begin);
      for (std::size_t i = begin; i < line_end; ++i) {
        const bool item = reader.has(i, Sense::item), wearer = reader.has(i, Sense::wearer);
        if (!item && !wearer) continue;
        const StatementKind kind = item ? StatementKind::item : StatementKind::wearer;
        if (reader.said(kind)) continue;
        Statement& statement = reader.say(kind, i, i + 1);
        statement.words = reader.value(i).empty() ? reader.lower(i) : std::string(reader.value(i));
      }
      return;
    }
    line = line_end + 1;
  }
}

}  // namespace skeinproof
