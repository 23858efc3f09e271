// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <iterator>
#include <utility>

#include "core/manuscript/phrases.h"
#include "core/manuscript/read_names.h"

namespace skeinproof {
namespace {

bool stands(const Reader& reader, Sense sense, std::size_t first, std::size_t last) {
  for (std::size_t i = first; i < last; ++i)
    if (reader.has(i, sense)) return true;
  return false;
}

bool near_list(const Reader& reader, std::size_t i) {
  return reader.is_list(i) || reader.has(i, Sense::role_label);
}

// What a length beside a count says, by the words about it; empty where it is what the count equals.
std::string note_words(const PhrasePlace& at) {
  const Reader& reader = at.reader;
  std::size_t from = at.first, to = at.last;
  while (from > at.clause.first && from + 8 > at.first && !near_list(reader, from - 1) &&
         reader.letter(from - 1) != ')')
    --from;
  while (to < at.clause.last && to < at.last + 5 && reader.letter(to) != ')' && reader.letter(to) != '(' &&
         !near_list(reader, to))
    ++to;
  if (stands(reader, Sense::at_most, from, to)) return "at most";
  for (std::size_t i = from; i < to; ++i)
    if (reader.has(i, Sense::used)) return std::string(reader.value(i));
  return stands(reader, Sense::about, from, to) ? "about" : "";
}

void say_put_up(Reader& reader, const Clause& clause, std::size_t first, std::size_t last) {
  find_yarn(reader, clause, first, last);
  reader.yarn_bare = false;
  for (std::size_t i = first; i < last; ++i) {
    const char c = reader.letter(i);
    if (c == '1' || c == '2') {
      reader.say_list(c == '1' ? StatementKind::put_up_length : StatementKind::put_up_weight, i).yarn =
          reader.yarn;
    } else if (reader.has(i, Sense::skein_word)) {
      Statement& statement = reader.say(StatementKind::put_up_word, i, i + 1);
      statement.words = reader.value(i);
      statement.yarn = reader.yarn;
    }
  }
  reader.use(first, last);
}

// "7 hanks / 1190 m in size 1": what is said of one size only.
bool of_one_size(const Reader& reader, std::size_t i) {
  for (std::size_t k = i + 1; k < i + 7; ++k) {
    if (reader.has(k, Sense::size_word))
      return reader.letter(k + 1) == label_list_shape && reader.list(k + 1).cells == 1;
    if (reader.letter(k) != '/' && reader.letter(k) != '1' && reader.letter(k) != '(' &&
        reader.letter(k) != ')' && !reader.has(k, Sense::in) && !reader.has(k, Sense::for_what) &&
        reader.letter(k) != '=')
      return false;
  }
  return false;
}

void say_note(Reader& reader, std::size_t i, const std::string& note) {
  Statement& statement =
      reader.say_list(note.empty() ? StatementKind::total_length : StatementKind::length_note, i);
  statement.subject = reader.role;
  statement.qualifier = note;
  statement.yarn = reader.yarn;
  statement.all_sizes = statement.values.size() == 1 && reader.sizes.count != 1 && !of_one_size(reader, i);
}

// "(55% wool, 45% cotton, 185 m)": behind the fibres in their bracket.
bool in_composition(const PhrasePlace& at) {
  const Reader& reader = at.reader;
  bool fibres = false;
  for (std::size_t i = at.first; i > at.clause.first && i + 24 > at.first; --i) {
    const char c = reader.letter(i - 1);
    fibres = fibres || c == '5';
    if (c == '(') return fibres;
    if (c == ')' || c == '6' || c == '0') return false;
  }
  return false;
}

// "181 m per ball", "50 g each"
bool is_per_skein(const PhrasePlace& at) {
  const Reader& reader = at.reader;
  if (!reader.has(at.last, Sense::per)) return false;
  return reader.has(at.last + 1, Sense::skein_word) ||
         (reader.is(at.last, "each") && reader.letter(at.last - 1) == '2' && !reader.is_word(at.last + 1));
}

void say_note(Reader& reader, std::size_t i, const std::string& note);

// "Approx. 100 m of A is used for the border": a note of a role of the block.
bool take_length_of_role(const PhrasePlace& at) {
  Reader& reader = at.reader;
  const std::size_t name = at.last + 1;
  if (!reader.has(at.last, Sense::of) || name >= at.clause.last) return false;
  const std::string label = reader.words(name, name + 1);
  if (!reader.roles.contains(label)) return false;
  const std::string note = note_words({reader, at.clause, at.first, name + 1});
  if (note.empty()) return false;
  const std::string role = std::exchange(reader.role, label);
  ++reader.mention;
  for (std::size_t i = at.first; i < at.last; ++i)
    if (reader.letter(i) == '1') say_note(reader, i, note);
  reader.role = role;
  reader.use(at.first, name + 1);
  return true;
}

bool is_total(const Reader& reader, std::size_t last) {
  if (reader.totals) return true;
  while (reader.letter(last) == ')' || reader.letter(last) == ',') ++last;
  return reader.has(last, Sense::total);
}

// "7-8 balls of colour 04 and 1-1 balls of colour 11": a second count of one unit is of what follows.
void begin_next_role(Reader& reader, std::size_t i) {
  const auto counts = [](PrintedUnit unit) { return unit == PrintedUnit::none ? PrintedUnit::skein : unit; };
  if (!reader.counted || counts(reader.list(i).unit) != counts(reader.counted_in)) return;
  ++reader.mention;
  reader.role.clear();
  reader.counted = false;
}

void say_count(Reader& reader, std::size_t i) {
  const bool total = is_total(reader, i + 1);
  if (!total) begin_next_role(reader, i);
  if (!total && reader.role.empty() && reader.said(StatementKind::count) &&
      reader.out.statements.back().kind != StatementKind::count)
    ++reader.mention;
  Statement& statement = reader.say_list(total ? StatementKind::total_count : StatementKind::count, i);
  if (statement.unit == PrintedUnit::none) statement.unit = PrintedUnit::skein;
  statement.all_sizes = statement.values.size() == 1 && reader.sizes.count != 1;
  if (total) return;
  statement.subject = reader.role;
  statement.yarn = reader.yarn;
  // "Peat 204, 1, 1, 2": the number of the shade before as many figures as there are sizes, or as the row of
  // the table above has.
  const FigureList& list = reader.list(i);
  const bool row = list.spaced && reader.columns > 1;
  const std::size_t sizes = reader.sizes.count > 0 ? reader.sizes.count : row ? reader.columns : 0;
  if (sizes > 0 && statement.values.size() == sizes + 1 && !list.bracketed &&
      (reader.said(StatementKind::shade_name) || (row && !reader.role.empty())) &&
      !reader.said(StatementKind::shade_number)) {
    const TextSpan number = statement.values.front().span;
    statement.values.erase(statement.values.begin());
    statement.span.begin = statement.values.front().span.begin;
    Statement shade = statement;
    shade.kind = StatementKind::shade_number;
    shade.values.clear();
    shade.unit = PrintedUnit::none;
    shade.all_sizes = false;
    shade.span = number;
    const std::size_t cell = reader.list(i).first_cell;
    shade.words = reader.plain.text.substr(reader.items.cells[cell].begin,
                                           reader.items.cells[cell].end - reader.items.cells[cell].begin);
    reader.out.statements.insert(std::prev(reader.out.statements.end()), std::move(shade));
  }
  if (list.spaced) reader.columns = reader.out.statements.back().values.size();
  reader.counted_in = reader.list(i).unit;
  if (reader.is(i + 1, "each")) reader.count_of_each = static_cast<int>(reader.out.statements.size()) - 1;
  if (reader.role.empty())
    reader.waiting.push_back(reader.out.statements.size() - 1);
  else
    reader.counted = true;
}

}  // namespace

bool take_amounts(const PhrasePlace& at) {
  Reader& reader = at.reader;
  bool lengths = false, weights = false, several = false;
  for (std::size_t i = at.first; i < at.last; ++i) {
    if (!reader.is_list(i)) continue;
    lengths = lengths || reader.letter(i) == '1';
    weights = weights || reader.letter(i) == '2';
    several = several || reader.values(i).size() > 1;
  }
  if (reader.run == Run::sample && !(lengths && weights)) {
    // Lengths that a sample took are for no statement, and are left to be told.
    if (!lengths) reader.use(at.first, at.last);
    for (std::size_t i = at.first; i < at.last; ++i)
      if (reader.letter(i) == '2') {
        Statement& statement = reader.say_list(StatementKind::sample_weight, i);
        std::size_t role = i;  // "261 g MC", "MC 261 g"
        while (role + 4 > i && role > at.clause.first && !near_list(reader, role - 1)) --role;
        if (reader.has(i + 1, Sense::role_label))
          statement.subject = reader.words(i + 1, i + 2);
        else if (role > at.clause.first && reader.has(role - 1, Sense::role_label))
          statement.subject = reader.words(role - 1, role);
      }
    return true;
  }
  if (lengths && !weights && take_length_of_role(at)) return true;
  const bool beside = reader.counted || (!reader.waiting.empty() && reader.role.empty());
  const std::string note = beside ? note_words(at) : "";
  const bool both = lengths && weights;
  const bool needed = !both && (reader.yarn < 0 || (!reader.yarn_found && !at.clause.headed &&
                                                    reader.role.empty() && reader.has(at.last, Sense::of)));
  const bool told = is_per_skein(at) || ((!beside || note.empty() || note == "about") && in_composition(at));
  const bool put_up = told || (both ? note.empty() && !reader.totals
                                    : !beside && !needed && reader.role.empty() && !reader.totals);
  const bool by_word = !several && weights && !lengths && reader.has(at.last - 1, Sense::skein_word);
  if (!several && (put_up || by_word)) {
    say_put_up(reader, at.clause, at.first, at.last);
    return true;
  }
  // "18, 19, 21 g (at most 80 m / 87 yd)": how much, and then what is said of it.
  std::string said = note;
  for (std::size_t i = at.first; i < at.last; ++i) {
    if (reader.letter(i) != '1' && reader.letter(i) != '2') continue;
    const bool noted = reader.counted || (!reader.waiting.empty() && reader.role.empty());
    if (noted && !beside)
      if (const std::string words = note_words({reader, at.clause, i, i + 1}); !words.empty()) said = words;
    if (reader.letter(i) == '1' && (beside || reader.totals || (noted && !said.empty())))
      say_note(reader, i, said);
    else
      say_count(reader, i);
  }
  reader.use(at.first, at.last);
  return true;
}

bool take_counted_by_weight(const PhrasePlace& at) {
  say_count(at.reader, at.first);
  for (std::size_t i = at.first + 1; i < at.last; ++i)
    if (at.reader.letter(i) == '2') {
      say_put_up(at.reader, at.clause, i, at.last);
      break;
    }
  at.reader.use(at.first, at.last);
  return true;
}

bool take_count(const PhrasePlace& at) {
  if (of_one_size(at.reader, at.first)) {
    at.reader.totals = true;
    return false;
  }
  say_count(at.reader, at.first);
  return true;
}

bool take_figures(const PhrasePlace& at) {
  Reader& reader = at.reader;
  const FigureList& list = reader.list(at.first);
  if (reader.run == Run::needles || reader.run == Run::gauge) return false;
  if (reader.totals) {
    say_count(reader, at.first);
    return true;
  }
  if (reader.counted) return false;
  // "Sand 22 (C)": a number of the role behind.
  if (reader.lone_figure(at.first) && is_role_in_brackets(reader, at.last)) return false;
  const bool several = reader.values(at.first).size() > 1;
  const bool shaded = reader.said(StatementKind::shade_name) || reader.yarn_found;
  if (reader.role.empty() && !(several && shaded)) return false;
  if (!several && list.slashed) return false;
  say_count(reader, at.first);
  return true;
}

bool take_total_word(const PhrasePlace& at) {
  at.reader.totals = true;
  at.reader.role.clear();
  at.reader.use(at.first, at.last);
  return true;
}

}  // namespace skeinproof
