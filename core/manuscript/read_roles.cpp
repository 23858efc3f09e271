// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/manuscript/phrases.h"
#include "core/manuscript/read_names.h"

namespace skeinproof {
namespace {

bool between(const Reader& reader, std::size_t i) {
  const char c = reader.letter(i);
  return c == ':' || c == '-' || c == '=' || c == ',' || c == '(' || c == gap_shape || c == '.' || c == ')' ||
         c == '"' || c == '/' || reader.is(i, "is") || reader.letter(i) == '#' ||
         reader.has(i, Sense::role_prefix);
}

// Yarn and shade behind a label: "Peat 08", "Oddmere Fieldspun in Peat", "Oddmere Fieldspun, Peat".
void take_shade_behind(Reader& reader, const Clause& clause, std::size_t i) {
  std::size_t first = i;
  while (first < clause.last && first < i + 4 && between(reader, first)) ++first;
  if (first < clause.last && reader.lone_figure(first) && first > i &&
      (reader.letter(first - 1) == '#' || reader.has(first - 1, Sense::role_prefix))) {
    say_shade_number(reader, first - 1, first);
    return;
  }
  std::size_t last = name_end(reader, clause, first);
  if (const std::size_t small = small_shade_end(reader, clause, i); small > i)
    return say_shade(reader, i, small);
  if (last == first) return;
  const std::size_t known = known_yarn_end(reader, first, last);
  std::size_t shade = first;
  if (known > first) {
    say_yarn(reader, first, known);
    shade = known;
  } else if (yarn_follows(reader, clause, last)) {
    return;
  } else {
    const bool parted = reader.has(last, Sense::in) || reader.letter(last) == ',';
    const std::size_t behind = parted ? name_end(reader, clause, last + 1) : last;
    if (parted && behind > last + 1 && !yarn_follows(reader, clause, behind)) {
      say_yarn(reader, first, last);
      shade = last;
    }
  }
  if (shade != first && (reader.has(shade, Sense::in) || reader.letter(shade) == ',')) ++shade;
  last = name_end(reader, clause, shade);
  if (last == shade) return;
  // "MC  FC 22": letters of a shade card belong to the number.
  const Token& word = reader.token(shade);
  const std::string_view letters =
      std::string_view(reader.plain.text).substr(word.begin, word.end - word.begin);
  const bool of_card =
      last == shade + 1 && letters.size() <= 3 && reader.lone_figure(last) &&
      std::all_of(letters.begin(), letters.end(), [](char c) { return c >= 'A' && c <= 'Z'; });
  if (of_card) {
    say_shade_number(reader, shade, last);
    Statement& number = reader.out.statements.back();
    number.words = reader.words(shade, last + 1);
    number.span = reader.span(shade, last + 1);
    return;
  }
  say_shade(reader, shade, last);
  take_number_behind(reader, clause, last);
}

// "Peat 08 (MC)", "Peat no. 08 (MC)", "Peat (08) (MC)"
void take_shade_before(Reader& reader, const Clause& clause, std::size_t open) {
  const auto before = [&](std::size_t i) { return i > clause.first ? reader.letter(i - 1) : '\0'; };
  while (before(open) == gap_shape) --open;
  std::size_t last = open, number = open;
  const bool enclosed = before(open) == ')' && open >= clause.first + 3 && reader.letter(open - 3) == '(';
  const std::size_t figure = enclosed ? open - 1 : open;
  if (figure > clause.first && reader.lone_figure(figure - 1) && !reader.used[figure - 1]) {
    number = last = figure - 1;
    while (before(last) == '#' || before(last) == ',' || before(last) == '.' || before(last) == '(' ||
           (last > clause.first && reader.has(last - 1, Sense::role_prefix)))
      --last;
  }
  const std::size_t first = name_begin(reader, clause, last);
  if (first < last) say_shade(reader, first, last);
  if (number < open) say_shade_number(reader, last, number);
}

// "6 balls: 2 each of Cream (A), ...": of two counts alike the last is of the role; one without a shade is a
// total.
std::size_t first_of_role(Reader& reader) {
  auto& statements = reader.out.statements;
  std::size_t first = reader.waiting.front();
  for (const std::size_t k : reader.waiting) {
    if (k == first || list_shape(statements[k].unit) != list_shape(statements[first].unit)) continue;
    const auto between = statements.begin() + static_cast<std::ptrdiff_t>(first);
    const auto shaded =
        std::find_if(between, statements.begin() + static_cast<std::ptrdiff_t>(k), [](const Statement& one) {
          return one.kind == StatementKind::shade_name || one.kind == StatementKind::shade_number;
        });
    const bool total = shaded == statements.begin() + static_cast<std::ptrdiff_t>(k);
    if (total && statements[first].kind == StatementKind::count)
      statements[first].kind = StatementKind::total_count;
    first = k;
  }
  return first;
}

// Shade and count that stand before their role in this clause.
void give_role_to_waiting(Reader& reader) {
  if (reader.waiting.empty()) return;
  for (std::size_t k = first_of_role(reader); k < reader.out.statements.size(); ++k) {
    Statement& statement = reader.out.statements[k];
    const bool of_role =
        statement.kind == StatementKind::count || statement.kind == StatementKind::shade_name ||
        statement.kind == StatementKind::shade_number || statement.kind == StatementKind::length_note;
    if (of_role && statement.subject.empty()) statement.subject = reader.role;
  }
  reader.waiting.clear();
}

// "2 balls each of Cream (A), Sky (B) and Sand (C)": the count is said of all.
void say_count_of_each(Reader& reader, const Clause& clause, std::size_t behind) {
  if (reader.counted || reader.count_of_each < 0) return;
  for (std::size_t i = behind; i < clause.last && i < behind + 4; ++i)
    if (reader.letter(i) == '6') return;  // it has a count of its own
  Statement count = reader.out.statements[static_cast<std::size_t>(reader.count_of_each)];
  count.subject = reader.role;
  count.mention = reader.mention;
  count.yarn = reader.yarn;
  reader.out.statements.push_back(std::move(count));
  reader.counted = true;
}

bool say_role(const PhrasePlace& at, std::size_t label_first, std::size_t label_last) {
  Reader& reader = at.reader;
  const bool bracketed =
      at.first > at.clause.first && reader.letter(at.first - 1) == '(' && reader.letter(at.last) == ')';
  const bool behind_count = !reader.waiting.empty();
  // "Peat 08: 5 skeins (MC)": the shade was read with the count.
  const bool behind_shade =
      behind_count || (bracketed && reader.role.empty() && reader.said(StatementKind::shade_name) &&
                       reader.used[at.first - 2]);
  if (!behind_shade) ++reader.mention;
  reader.role = reader.words(label_first, label_last);
  reader.roles.insert(reader.role);
  if (behind_shade && !behind_count)
    for (std::size_t k = reader.out.statements.size();
         k-- > 0 && reader.out.statements[k].mention == reader.mention;)
      if (reader.out.statements[k].kind == StatementKind::shade_name ||
          reader.out.statements[k].kind == StatementKind::shade_number)
        reader.out.statements[k].subject = reader.role;
  if (bracketed && !behind_shade) {
    reader.use(at.first, at.last);
    take_shade_before(reader, at.clause, at.first - 1);
  }
  Statement& statement =
      reader.say(StatementKind::role, label_first == at.first ? at.first : label_first, label_last);
  statement.words = reader.role;
  statement.yarn = reader.yarn;
  const std::size_t said = reader.out.statements.size() - 1;
  reader.use(at.first, at.last);
  reader.counted = behind_count;
  give_role_to_waiting(reader);
  const bool shaded = reader.said(StatementKind::shade_name);
  if (!shaded) take_shade_behind(reader, at.clause, at.last);
  reader.out.statements[said].yarn = reader.yarn;
  say_count_of_each(reader, at.clause, at.last);
  return true;
}

// "A Peat  1 skein"
bool counts_behind(const PhrasePlace& at) {
  for (std::size_t i = at.last; i < at.clause.last && i < at.last + 8; ++i)
    if (at.reader.is_list(i) && (at.reader.letter(i) <= '2' || at.reader.letter(i) == '6')) return true;
  return false;
}

}  // namespace

bool take_role(const PhrasePlace& at) { return say_role(at, at.first, at.last); }

// "Main colour (MC)", "Main colour (MC – Denim 32)"
bool take_labelled_role(const PhrasePlace& at) {
  const Reader& reader = at.reader;
  if (reader.run == Run::gauge || reader.run == Run::needles) return false;
  const std::size_t label = reader.letter(at.last - 1) == ')' ? at.last - 2 : at.last - 1;
  if (!reader.has(label, Sense::role_label) && !lone_capital(reader, label)) return false;
  at.reader.use(at.first, label);
  return say_role({at.reader, at.clause, label, at.last}, label, label + 1);
}

bool take_role_words(const PhrasePlace& at) {
  if (at.reader.run == Run::gauge || at.reader.run == Run::needles) return false;
  return say_role(at, at.first, at.last);
}

bool take_prefixed_role(const PhrasePlace& at) {
  const std::size_t label = at.last - 1;
  if (at.reader.is_list(label)) {
    if (at.reader.value(at.first) == "shade" || at.reader.value(at.first) == "number" ||
        !at.reader.lone_figure(label) || is_role_in_brackets(at.reader, at.last))
      return false;
    return say_role(at, at.first, at.last);
  }
  return lone_capital(at.reader, label) && say_role(at, label, at.last);
}

bool take_lone_letter(const PhrasePlace& at) {
  const Reader& reader = at.reader;
  if (!lone_capital(reader, at.first)) return false;
  std::size_t before = at.first;
  while (before > at.clause.first &&
         (reader.letter(before - 1) == gap_shape || reader.letter(before - 1) == '*'))
    --before;
  const auto before_is = [&](std::size_t k, Sense sense) {
    return at.first >= at.clause.first + k && reader.has(at.first - k, sense);
  };
  // "A Peat: 1 skein, B Lichen: 2 skeins"
  const bool goes_on = reader.counted && (reader.letter(at.first - 1) == ',' || before_is(1, Sense::also));
  // "Balls of A: 5"
  const bool counted_of = before_is(1, Sense::of) && before_is(2, Sense::skein_word) && counts_behind(at);
  const bool starts = before == at.clause.first || reader.letter(at.first - 1) == '(' || goes_on;
  const char next = reader.letter(at.last);
  constexpr std::string_view marks = ":-=)\t(.";
  const bool known = reader.roles.contains(reader.words(at.first, at.last));
  const bool before_shade = reader.yarn >= 0 && reader.capital(at.last) && counts_behind(at);
  const bool labels = marks.find(next) != std::string_view::npos || known || before_shade;
  if (!counted_of && !(starts && labels)) return false;
  if (reader.run == Run::gauge || reader.run == Run::needles || reader.run == Run::measures) return false;
  return say_role(at, at.first, at.last);
}

}  // namespace skeinproof
