// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/letter_grammar.h"

namespace skeinproof {
namespace {

namespace grammar {
using namespace letters;

struct stitch_count : stitches {};
struct row_count : rows {};
struct slashed : seq<bare> {};                  // "24/32"
struct square : seq<bare, one<'x'>, cloth> {};  // "10 x 10 cm"
struct per_inch : seq<word<Sense::per>, one<'u', 'i'>> {};
struct over : cloth {};
struct fabric_name : word<Sense::fabric> {};
struct state_word : word<Sense::gauge_state> {};
struct worked_word : word<Sense::worked> {};
struct phrases
    : sor<stitch_count, row_count, square, slashed, per_inch, over, fabric_name, state_word, worked_word> {};
}  // namespace grammar

using letters::Place;

bool said(const Reader& reader, StatementKind kind) {
  for (std::size_t k = reader.out.statements.size();
       k-- > 0 && reader.out.statements[k].mention == reader.mention;)
    if (reader.out.statements[k].kind == kind) return true;
  return false;
}

void say_worked(const Place& at) {
  const FigureList& list = at.reader.list(at.first);
  if (list.unit_word == nullptr) return;
  Statement& statement = at.reader.say(StatementKind::gauge_worked, at.first, at.last);
  statement.words = list.unit_word->value;
  const ListCell& cell = at.reader.items.cells[list.first_cell + list.cells - 1];
  std::uint32_t begin = cell.end;
  while (begin < list.end && (at.reader.plain.text[begin] == ' ' || at.reader.plain.text[begin] == ')'))
    ++begin;
  statement.span = at.reader.plain.as_came(begin, list.end);
}

void take_stitches(const Place& at) {
  if (said(at.reader, StatementKind::gauge_stitches)) ++at.reader.mention;
  at.reader.say_list(StatementKind::gauge_stitches, at.first);
}
void take_rows(const Place& at) {
  if (said(at.reader, StatementKind::gauge_rows)) ++at.reader.mention;
  at.reader.say_list(StatementKind::gauge_rows, at.first);
  say_worked(at);
}
bool take_slashed(const Place& at) {
  const FigureList& list = at.reader.list(at.first);
  const auto values = at.reader.values(at.first);
  if (!list.slashed || values.size() != 2) return false;
  if (said(at.reader, StatementKind::gauge_stitches)) ++at.reader.mention;
  for (int k = 0; k < 2; ++k) {
    Statement& statement =
        at.reader.say(k == 0 ? StatementKind::gauge_stitches : StatementKind::gauge_rows, at.first, at.last);
    statement.values = {values[static_cast<std::size_t>(k)]};
    statement.unit = k == 0 ? PrintedUnit::stitch : PrintedUnit::row;
    statement.span = statement.values.front().span;
  }
  return true;
}
void take_over(const Place& at) {
  at.reader.say_list(StatementKind::gauge_over, at.first, at.last, at.last - 1);
}
bool take_per_inch(const Place& at) {
  const Token& token = at.reader.token(at.last - 1);
  if (token.word == nullptr ||
      (token.word->unit != PrintedUnit::inch && token.word->unit != PrintedUnit::centimetre))
    return false;
  Statement& statement = at.reader.say(StatementKind::gauge_over, at.last - 1, at.last);
  statement.unit = token.word->unit;
  statement.values = {{1.0, 0, statement.span, false}};
  at.reader.use(at.first, at.last);
  return true;
}
void take_fabric(const Place& at) {
  at.reader.say(StatementKind::gauge_fabric, at.first, at.last).words = at.reader.words(at.first, at.last);
}
void take_state(const Place& at) {
  at.reader.say(StatementKind::gauge_state, at.first, at.last).words = at.reader.words(at.first, at.last);
}
void take_worked(const Place& at) {
  at.reader.say(StatementKind::gauge_worked, at.first, at.last).words = at.reader.value(at.first);
}

template <class Rule>
struct action : letters::nothing<Rule> {};
template <>
struct action<grammar::stitch_count> : letters::calls<take_stitches> {};
template <>
struct action<grammar::row_count> : letters::calls<take_rows> {};
template <>
struct action<grammar::square> : letters::calls<take_over> {};
template <>
struct action<grammar::slashed> : letters::calls<take_slashed> {};
template <>
struct action<grammar::per_inch> : letters::calls<take_per_inch> {};
template <>
struct action<grammar::over> : letters::calls<take_over> {};
template <>
struct action<grammar::fabric_name> : letters::calls<take_fabric> {};
template <>
struct action<grammar::state_word> : letters::calls<take_state> {};
template <>
struct action<grammar::worked_word> : letters::calls<take_worked> {};

}  // namespace

void read_gauge_clause(Reader& reader, const Clause& clause) {
  ++reader.mention;
  letters::read_phrases<grammar::phrases, action>(reader, clause);
}

}  // namespace skeinproof
