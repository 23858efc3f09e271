// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/text.h"
#include "core/manuscript/letter_grammar.h"

namespace skeinproof {
namespace {

namespace grammar {
using namespace letters;

struct joint : one<'/', '(', ')', '='> {};
struct both_systems : seq<cloth, rep_opt<2, seq<rep_opt<2, joint>, cloth>>> {};
struct size_line : seq<word<Sense::size_word>, few<3, ':', '-', '(', '\n', '\t'>, bare> {};
struct ease_behind : seq<both_systems, rep_opt<2, one<')', 'f', 'w'>>, word<Sense::ease>> {};
struct ease_before : seq<word<Sense::ease>, few<2, ':', 'f', '-', 'A', '\t'>, both_systems> {};
struct no_ease : seq<word<Sense::ease>> {};

struct name_word : sor<word<Sense::measure>, word<Sense::measure_end>, word<Sense::fit>, word<Sense::piece>,
                       unknown, word<Sense::of>, word<Sense::to>, word<Sense::worked>, word<Sense::fabric>,
                       word<Sense::cast_on>, word<Sense::measures_word>, word<Sense::item>> {};
struct name : seq<name_word, rep_max<7, seq<opt<one<'/', ','>>, name_word>>> {};
struct unit_note : seq<open, one<'u', 'i', 'F'>, opt<one<'/'>, one<'u', 'i'>>, close> {};
struct measure_line
    : seq<name, opt<unit_note>, few<3, ':', '-', '=', '\t', '\n', 'A'>, sor<both_systems, bare>> {};
struct measure_behind
    : seq<both_systems, few<2, ')', 'i', 'f', '\t'>, opt<word<Sense::fit>>, word<Sense::measure>> {};
struct more : both_systems {};
struct fit_word : sor<word<Sense::fit>, word<Sense::measures_word>> {};
struct phrases
    : sor<size_line, ease_behind, ease_before, measure_line, measure_behind, more, no_ease, fit_word> {};
}  // namespace grammar

using letters::Place;

void take_sizes(const Place& at) {
  Reader& reader = at.reader;
  ++reader.mention;
  const std::size_t i = at.last - 1;
  Statement& statement = reader.say_list(StatementKind::size_labels, at.first, at.last, i);
  reader.sizes = statement.values.size();
  reader.size_labels.clear();
  const FigureList& list = reader.list(i);
  for (std::size_t k = 0; k < list.cells; ++k) {
    const ListCell& cell = reader.items.cells[list.first_cell + k];
    reader.size_labels.emplace_back(reader.plain.text.substr(cell.begin, cell.end - cell.begin));
  }
}

// Says each list of cloth among the tokens.
template <class Fill>
void say_lists(const Place& at, StatementKind kind, Fill&& fill) {
  for (std::size_t i = at.first; i < at.last; ++i) {
    if (!at.reader.is_list(i)) continue;
    Statement& statement = at.reader.say_list(kind, i);
    if (kind == StatementKind::measurement)
      statement.all_sizes = statement.values.size() == 1 && at.reader.sizes != 1;
    fill(statement);
  }
  at.reader.use(at.first, at.last);
}

void take_ease(const Place& at) {
  ++at.reader.mention;
  std::string kind;
  bool any = false;
  for (std::size_t i = at.first; i < at.last; ++i) {
    if (at.reader.letter(i) == static_cast<char>(Sense::ease)) kind = at.reader.value(i);
    any = any || at.reader.is_list(i);
  }
  if (any)
    say_lists(at, StatementKind::ease, [&](Statement& statement) { statement.qualifier = kind; });
  else
    at.reader.say(StatementKind::ease, at.first, at.last).qualifier = kind;
}

// The name without the words that say how it is meant; those are kept for what follows.
std::string measure_name(Reader& reader, std::size_t first, std::size_t last) {
  std::string name;
  for (std::size_t i = first; i < last; ++i) {
    const char c = reader.letter(i);
    if (c == static_cast<char>(Sense::fit) || c == static_cast<char>(Sense::measures_word)) {
      reader.fit = reader.value(i);
      continue;
    }
    if (!reader.is_word(i) && c != '/') continue;
    if (c == static_cast<char>(Sense::of) && name.empty()) continue;
    if (c != '/' && !name.empty() && name.back() != '/') name += ' ';
    name += reader.lower(i);
  }
  return name;
}

void take_measure(const Place& at, std::size_t name_first, std::size_t name_last, bool resets) {
  Reader& reader = at.reader;
  ++reader.mention;
  if (resets && reader.measure.empty()) reader.fit = reader.fit;
  const std::string name = measure_name(reader, name_first, name_last);
  if (!name.empty()) reader.measure = name;
  say_lists(at, StatementKind::measurement, [&](Statement& statement) {
    statement.subject = reader.measure;
    statement.qualifier = reader.fit;
  });
}

bool take_measure_line(const Place& at) {
  std::size_t name_last = at.first;
  PrintedUnit unit = PrintedUnit::none;
  while (name_last < at.last && !at.reader.is_list(name_last)) {
    const Token& token = at.reader.token(name_last);
    if (token.word != nullptr && at.reader.letter(name_last) != 'i' && token.word->unit != PrintedUnit::none)
      unit = token.word->unit;
    ++name_last;
  }
  const bool bare = at.reader.list(at.last - 1).unit == PrintedUnit::none;
  bool named = false;
  for (std::size_t i = at.first; i < name_last; ++i) named = named || at.reader.letter(i) == 'B';
  if (bare && !named) return false;
  const std::size_t said = at.reader.out.statements.size();
  take_measure(at, at.first, name_last, true);
  if (bare)
    for (std::size_t k = said; k < at.reader.out.statements.size(); ++k)
      at.reader.out.statements[k].unit = unit;
  return true;
}
void take_measure_behind(const Place& at) { take_measure(at, at.last - 1, at.last, true); }
bool take_more(const Place& at) {
  if (at.reader.measure.empty()) return false;
  say_lists(at, StatementKind::measurement, [&](Statement& statement) {
    statement.subject = at.reader.measure;
    statement.qualifier = at.reader.fit;
  });
  return true;
}
void take_fit(const Place& at) {
  at.reader.fit = at.reader.value(at.first);
  at.reader.measure.clear();
  at.reader.use(at.first, at.last);
}

template <class Rule>
struct action : letters::nothing<Rule> {};
template <>
struct action<grammar::size_line> : letters::calls<take_sizes> {};
template <>
struct action<grammar::ease_behind> : letters::calls<take_ease> {};
template <>
struct action<grammar::ease_before> : letters::calls<take_ease> {};
template <>
struct action<grammar::no_ease> : letters::calls<take_ease> {};
template <>
struct action<grammar::measure_line> : letters::calls<take_measure_line> {};
template <>
struct action<grammar::measure_behind> : letters::calls<take_measure_behind> {};
template <>
struct action<grammar::more> : letters::calls<take_more> {};
template <>
struct action<grammar::fit_word> : letters::calls<take_fit> {};

}  // namespace

void read_sizes_clause(Reader& reader, const Clause& clause) {
  letters::read_phrases<grammar::phrases, action>(reader, clause);
}

}  // namespace skeinproof
