// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/letter_grammar.h"

namespace skeinproof {
namespace {

namespace grammar {
using namespace letters;

struct counted : seq<any_list, rep_opt<4, sor<unknown, millimetres, cloth, one<'x', '(', ')', '/'>>>,
                     word<Sense::notion>> {};
struct named : seq<word<Sense::notion>, few<3, ':', '-', '\t', 'x'>, bare> {};
struct alone : word<Sense::notion> {};
struct phrases : sor<counted, named, alone> {};
}  // namespace grammar

using letters::Place;

void take_counted(const Place& at) {
  Statement& statement = at.reader.say_list(StatementKind::notion, at.first, at.last, at.first);
  statement.subject = at.reader.lower(at.last - 1);
  statement.unit = PrintedUnit::piece;
}
void take_named(const Place& at) {
  Statement& statement = at.reader.say_list(StatementKind::notion, at.first, at.last, at.last - 1);
  statement.subject = at.reader.lower(at.first);
  statement.unit = PrintedUnit::piece;
}
void take_alone(const Place& at) {
  Statement& statement = at.reader.say(StatementKind::notion, at.first, at.last);
  statement.subject = at.reader.lower(at.first);
}

template <class Rule>
struct action : letters::nothing<Rule> {};
template <>
struct action<grammar::counted> : letters::calls<take_counted> {};
template <>
struct action<grammar::named> : letters::calls<take_named> {};
template <>
struct action<grammar::alone> : letters::calls<take_alone> {};

}  // namespace

void read_notions_clause(Reader& reader, const Clause& clause) {
  letters::read_phrases<grammar::phrases, action>(reader, clause);
}

void read_care_clause(Reader& reader, const Clause& clause) {
  for (std::size_t i = clause.first; i < clause.last; ++i)
    if (reader.letter(i) == static_cast<char>(Sense::care))
      reader.say(StatementKind::care, i, i + 1).words = reader.words(i, i + 1);
}

}  // namespace skeinproof
