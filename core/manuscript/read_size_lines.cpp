// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/manuscript/read_labels.h"
#include "core/manuscript/read_parts.h"

namespace skeinproof {
namespace {

struct SizeLabel {
  TextSpan span;
  std::string words;
  std::size_t behind = 0;  // the token behind it and its mark; 0 = the clause begins with no name of a size
};

// "Small: 2 skeins MC", "Size M – 3 skeins MC"
SizeLabel label_of(const Reader& reader, const Clause& clause) {
  constexpr std::string_view lead = "\t*-", mark = ":=-";
  const auto& tokens = reader.items.tokens;
  std::size_t i = clause.first, behind = 0;
  while (i < clause.last && lead.find(reader.letter(i)) != std::string_view::npos) ++i;
  std::uint32_t begin = 0, end = 0;
  if (reader.has(i, Sense::size_word) && reader.letter(i + 1) == label_list_shape &&
      reader.list(i + 1).cells == 1) {
    begin = tokens[i + 1].begin;
    end = tokens[i + 1].end;
    behind = i + 2;
  } else if (i < clause.last && reader.is_word(i)) {
    const LabelList labels = read_labels(reader.plain, tokens, i, true);
    // "A: 2 skeins" is a colour.
    constexpr std::string_view letters = "SML";
    const bool letter = labels.next == i + 1 && tokens[i].end - tokens[i].begin == 1;
    if (labels.cells.size() != 1 ||
        (letter && letters.find(reader.plain.text[tokens[i].begin]) == std::string_view::npos))
      return {};
    begin = labels.cells[0].begin;
    end = labels.cells[0].end;
    behind = labels.next;
  }
  if (behind == 0 || mark.find(reader.letter(behind)) == std::string_view::npos) return {};
  const auto lists = [&](std::size_t k) { return reader.is_list(k) && reader.letter(k) != label_list_shape; };
  for (std::size_t k = behind + 1; k < clause.last && k < behind + 12; ++k)
    if (lists(k))
      return {reader.plain.as_came(begin, end), reader.plain.text.substr(begin, end - begin), behind + 1};
  return {};
}

// One value a line makes a list with one value a size.
bool along_lines(const Statement& statement) {
  switch (statement.kind) {
    case StatementKind::count:
    case StatementKind::total_count:
    case StatementKind::measurement:
    case StatementKind::length_note:
      return statement.values.size() == 1;
    default:
      return false;
  }
}
bool same_thing(const Statement& a, const Statement& b) {
  return a.kind == b.kind && a.subject == b.subject && a.qualifier == b.qualifier && a.unit == b.unit;
}

struct Line {
  TextSpan label;
  std::string words;
  std::size_t says = 0;  // its first statement
};

void say_labels(Reader& reader, const std::vector<Line>& lines, std::vector<Statement>& out) {
  Statement labels;
  labels.kind = StatementKind::size_labels;
  labels.part = TextPart::sizes;
  labels.mention = ++reader.mention;
  labels.span = {lines.front().label.begin, lines.back().label.end};
  for (const Line& line : lines) {
    PrintedValue label;
    label.span = line.label;
    labels.values.push_back(label);
  }
  reader.sizes = {lines.size(), false};
  out.push_back(std::move(labels));
}

// What the lines say of one thing, a value a line; a thing said twice in a line stays as it is.
void join_lines(Reader& reader, const std::vector<Line>& lines) {
  auto& statements = reader.out.statements;
  std::vector<Statement> joined;
  if (reader.sizes.count == 0) say_labels(reader, lines, joined);
  std::vector<bool> taken(statements.size(), false);
  const auto end_of = [&](std::size_t line) {
    return line + 1 < lines.size() ? lines[line + 1].says : statements.size();
  };
  for (std::size_t first = lines.front().says; first < statements.size(); ++first) {
    if (taken[first] || !along_lines(statements[first])) continue;
    Statement list = statements[first];
    list.values.assign(lines.size(), {});
    list.all_sizes = false;
    list.mention = ++reader.mention;
    std::vector<std::size_t> parts;
    bool once = true;
    for (std::size_t line = 0; line < lines.size(); ++line) {
      list.values[line].span = {lines[line].label.end, lines[line].label.end};
      bool found = false;
      for (std::size_t k = lines[line].says; k < end_of(line); ++k) {
        if (!along_lines(statements[k]) || !same_thing(statements[k], list)) continue;
        once = once && !found;
        found = true;
        list.values[line] = statements[k].values.front();
        list.yarn = std::max(list.yarn, statements[k].yarn);
        parts.push_back(k);
      }
    }
    if (!once) continue;
    for (const std::size_t k : parts) taken[k] = true;
    list.span = {std::min(list.span.begin, list.values.front().span.begin),
                 std::max(statements[parts.back()].span.end, list.values.back().span.end)};
    joined.push_back(std::move(list));
  }
  std::size_t kept = lines.front().says;
  for (std::size_t k = kept; k < statements.size(); ++k)
    if (!taken[k]) statements[kept++] = std::move(statements[k]);
  statements.resize(kept);
  for (Statement& list : joined) statements.push_back(std::move(list));
}

// "M   96 cm   6"
bool holds_size_and_figures(const Reader& reader, const Clause& clause) {
  if (clause.headed || clause.first + 2 >= clause.last || reader.letter(clause.first + 1) != gap_shape ||
      !is_label(reader.plain, reader.items.tokens, clause.first) ||
      reader.roles.contains(reader.words(clause.first, clause.first + 1)))
    return false;
  for (std::size_t i = clause.first + 1; i < clause.last; ++i)
    if (reader.letter(i) != gap_shape && (!reader.is_list(i) || reader.letter(i) == label_list_shape))
      return false;
  return true;
}

}  // namespace

bool is_row_of_size(const Reader& reader, const std::vector<Clause>& clauses, std::size_t i) {
  return holds_size_and_figures(reader, clauses[i]) &&
         ((i > 0 && holds_size_and_figures(reader, clauses[i - 1])) ||
          (i + 1 < clauses.size() && holds_size_and_figures(reader, clauses[i + 1])));
}

std::size_t read_size_lines(Reader& reader, const std::vector<Clause>& clauses, std::size_t first) {
  constexpr std::size_t most_lines = 60;
  std::vector<Clause> rest;
  std::vector<Line> lines;
  for (std::size_t i = first; i < clauses.size() && lines.size() < most_lines; ++i) {
    const SizeLabel label = label_of(reader, clauses[i]);
    if (label.behind == 0) break;
    const auto same = [&](const Line& line) { return line.words == label.words; };
    if (std::any_of(lines.begin(), lines.end(), same)) break;
    lines.push_back({label.span, label.words, 0});
    rest.push_back(clauses[i]);
    rest.back().first = label.behind;
    rest.back().headed = false;
    rest.back().topic = Topic::block;
  }
  if (lines.size() < 2) return first;
  for (std::size_t i = 0; i < rest.size(); ++i) {
    lines[i].says = reader.out.statements.size();
    reader.use(clauses[first + i].first, rest[i].first);
    read_clause(reader, rest[i]);
  }
  join_lines(reader, lines);
  return first + rest.size();
}

}  // namespace skeinproof
