// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/read_manuscript.h"

#include <algorithm>
#include <numeric>

#include "core/manuscript/read_parts.h"
#include "core/manuscript/reader.h"

namespace skeinproof {
namespace {

// Whether a stretch left over says something: a figure, a capital, or more than a few small words.
bool worth_telling(const Reader& reader, std::size_t first, std::size_t last) {
  std::size_t words = 0;
  for (std::size_t i = first; i < last; ++i) {
    const bool number_of_line =
        reader.letter(i) == '0' && reader.letter(i + 1) == '.' && (i == 0 || reader.letter(i - 1) == '\n');
    if (reader.is_list(i) && !number_of_line) return true;
    if (!reader.is_word(i)) continue;
    if (reader.letter(i) == 'W' || reader.has(i, Sense::role_label) || reader.has(i, Sense::number_word))
      return true;
    ++words;
  }
  return words > 3;
}

// What no statement took, a stretch for each sentence of a line.
void list_not_understood(Reader& reader) {
  const std::size_t count = reader.items.tokens.size();
  const auto silent = [&](std::size_t i) {
    return reader.used[i] || !(reader.is_word(i) || reader.is_list(i));
  };
  for (std::size_t i = 0; i < count;) {
    if (silent(i)) {
      ++i;
      continue;
    }
    std::size_t last = i + 1, k = i + 1;
    for (; k < count && !reader.used[k] && reader.letter(k) != '\n' && reader.letter(k) != '.'; ++k)
      if (!silent(k)) last = k + 1;
    if (worth_telling(reader, i, last)) reader.out.not_understood.push_back({reader.span(i, last), false});
    i = k;
  }
}

void sort_by_place(std::vector<Statement>& statements) {
  std::vector<std::uint32_t> order(statements.size());
  std::iota(order.begin(), order.end(), 0);
  const auto before = [&](std::uint32_t a, std::uint32_t b) {
    return statements[a].span.begin < statements[b].span.begin;
  };
  if (std::is_sorted(order.begin(), order.end(), before)) return;
  std::stable_sort(order.begin(), order.end(), before);
  std::vector<Statement> sorted;
  sorted.reserve(statements.size());
  for (const std::uint32_t i : order) sorted.push_back(std::move(statements[i]));
  statements = std::move(sorted);
}

// A letter or a recipe has grams, sizes and an odd "total", too: without one statement that only a pattern
// makes, nothing is read.
bool says_anything(const std::vector<Statement>& statements) {
  return std::any_of(statements.begin(), statements.end(), [](const Statement& statement) {
    switch (statement.kind) {
      case StatementKind::yarn_name:
      case StatementKind::fibre:
      case StatementKind::put_up_length:
      case StatementKind::role:
      case StatementKind::shade_name:
      case StatementKind::legend_shade:
      case StatementKind::gauge_stitches:
      case StatementKind::gauge_rows:
      case StatementKind::needle:
      case StatementKind::needle_type:
      case StatementKind::role_mention:
      case StatementKind::stitches:
      case StatementKind::yarn_care:
        return true;
      case StatementKind::size_labels:
      case StatementKind::measurement:
      case StatementKind::total_count:
        return statement.values.size() > 1 || !statement.subject.empty();
      case StatementKind::count:
        return statement.values.size() > 1 || statement.unit == PrintedUnit::skein;
      default:
        return false;
    }
  });
}

}  // namespace

Reading read_manuscript(std::string_view text, const std::vector<PartTold>& parts,
                        const std::vector<Telling>& tellings) {
  Reader reader;
  reader.plain = plain_text(text);
  reader.items = fold_lists(reader.plain, read_tokens(reader.plain));
  reader.used.resize(reader.items.tokens.size());
  reader.letters.reserve(reader.items.tokens.size());
  for (const Token& token : reader.items.tokens) reader.letters += token.shape;
  Headings headings;
  read_title(reader);
  const std::vector<Clause> clauses = read_clauses(reader, headings);
  for (std::size_t i = 0; i < clauses.size();) {
    const std::size_t behind = read_size_lines(reader, clauses, i);
    if (behind == i && !is_row_of_size(reader, clauses, i)) read_clause(reader, clauses[i]);
    i = std::max(behind, i + 1);
  }
  if (!says_anything(reader.out.statements)) {
    reader.out.statements.clear();
    std::fill(reader.used.begin(), reader.used.end(), false);
  }
  keep_what_any_language_says(reader);
  read_tellings(reader, text, tellings);
  list_not_understood(reader);
  sort_by_place(reader.out.statements);
  read_parts(reader, headings, parts);
  return std::move(reader.out);
}

}  // namespace skeinproof
