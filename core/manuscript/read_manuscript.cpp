// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/read_manuscript.h"

#include <algorithm>

#include "core/manuscript/read_parts.h"
#include "core/manuscript/reader.h"

namespace skeinproof {
namespace {

constexpr std::pair<Topic, void (*)(Reader&, const Clause&)> clause_readers[] = {
    {Topic::sizes, read_sizes_clause},     {Topic::schematic, read_sizes_clause},
    {Topic::block, read_block_clause},     {Topic::gauge, read_gauge_clause},
    {Topic::needles, read_needles_clause}, {Topic::notions, read_notions_clause},
    {Topic::sample, read_sample_clause},   {Topic::text, read_text_clause},
    {Topic::legend, read_legend_clause},   {Topic::chart, read_text_clause},
    {Topic::care, read_care_clause}};

void read_clause(Reader& reader, const Clause& clause) {
  for (const auto& [topic, read] : clause_readers)
    if (topic == clause.topic) read(reader, clause);
}

// Words and figures that no statement took, a stretch for each line.
void list_not_understood(Reader& reader) {
  const std::size_t count = reader.items.tokens.size();
  for (std::size_t i = 0; i < count;) {
    const auto silent = [&](std::size_t k) {
      return reader.used[k] || !(reader.is_word(k) || reader.is_list(k));
    };
    if (silent(i)) {
      ++i;
      continue;
    }
    std::size_t last = i + 1, k = i + 1;
    bool telling = false;
    const auto tells = [&](std::size_t t) {
      const char c = reader.letter(t);
      return c == 'w' || c == 'W' || reader.is_list(t) || reader.token(t).word == nullptr || c == 'R';
    };
    telling = tells(i);
    for (; k < count && !reader.used[k] && reader.letter(k) != '\n'; ++k) {
      if (silent(k)) continue;
      last = k + 1;
      telling = telling || tells(k);
    }
    if (telling) reader.out.not_understood.push_back({reader.span(i, last), false});
    i = k;
  }
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
  const std::vector<Clause> clauses = read_clauses(reader, headings);
  for (const Clause& clause : clauses) read_clause(reader, clause);
  list_not_understood(reader);
  static_cast<void>(tellings);
  std::stable_sort(reader.out.statements.begin(), reader.out.statements.end(),
                   [](const Statement& a, const Statement& b) { return a.span.begin < b.span.begin; });
  read_parts(reader, headings, parts);
  return std::move(reader.out);
}

}  // namespace skeinproof
