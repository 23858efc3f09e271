// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/letter_grammar.h"

namespace skeinproof {
namespace {

namespace grammar {
using namespace letters;

struct system_name : seq<word<Sense::needle_system>, few<2, 'Z', '#', 'h', '-', '.'>, bare> {};
struct size_in_mm : millimetres {};
struct one_needle
    : seq<sor<size_in_mm, system_name>,
          rep_max<4, seq<few<2, '(', '/', ',', '=', ')'>, sor<size_in_mm, system_name>>>, opt<close>> {};
struct lengths : seq<cloth, rep_opt<2, seq<few<2, '/', '(', ')'>, cloth>>, opt<close>> {};
struct type_name : word<Sense::needle_type> {};
struct phrases : sor<one_needle, lengths, type_name> {};
}  // namespace grammar

using letters::Place;

void say_each(const Place& at, std::size_t i, StatementKind kind, PrintedUnit unit, std::size_t first) {
  const auto values = at.reader.values(i);
  for (std::size_t k = 0; k < values.size(); ++k) {
    Statement& statement = at.reader.say(kind, k == 0 ? first : i, i + 1);
    statement.values = {values[k]};
    statement.unit = unit;
    if (values.size() == 1) continue;
    if (k > 0) statement.span.begin = values[k].span.begin;
    if (k + 1 < values.size()) statement.span.end = values[k].span.end;
    if (k + 1 < values.size()) ++at.reader.mention;
  }
}

// The words that say what a needle is for: "for stocking stitch", "body".
std::string purpose_behind(const Place& at) {
  std::size_t i = at.last;
  while (i < at.clause.last && i < at.last + 6 &&
         (at.reader.letter(i) == static_cast<char>(Sense::needle_word) || at.reader.is(i, "for") ||
          at.reader.is(i, "the")))
    ++i;
  std::size_t end = i;
  while (end < at.clause.last && end < i + 5 && at.reader.is_word(end) &&
         at.reader.letter(end) != static_cast<char>(Sense::also) &&
         at.reader.letter(end) != static_cast<char>(Sense::needle_type))
    ++end;
  if (end == i) return {};
  at.reader.use(at.last, end);
  return at.reader.words(i, end);
}

void take_needle(const Place& at) {
  ++at.reader.mention;
  const std::size_t said = at.reader.out.statements.size();
  for (std::size_t i = at.first; i < at.last; ++i) {
    if (!at.reader.is_list(i)) continue;
    if (at.reader.letter(i) == '4') {
      say_each(at, i, StatementKind::needle, PrintedUnit::millimetre, i);
      continue;
    }
    std::size_t system = i;
    while (system > at.first && at.reader.letter(system) != static_cast<char>(Sense::needle_system)) --system;
    say_each(at, i, StatementKind::needle, at.reader.token(system).word->unit, system);
  }
  at.reader.use(at.first, at.last);
  const std::string purpose = purpose_behind(at);
  for (std::size_t k = said; k < at.reader.out.statements.size(); ++k)
    at.reader.out.statements[k].subject = purpose;
}

void take_lengths(const Place& at) {
  ++at.reader.mention;
  for (std::size_t i = at.first; i < at.last; ++i)
    if (at.reader.is_list(i)) say_each(at, i, StatementKind::needle_length, at.reader.list(i).unit, i);
  at.reader.use(at.first, at.last);
}

void take_type(const Place& at) {
  at.reader.say(StatementKind::needle_type, at.first, at.last).words = at.reader.value(at.first);
}

template <class Rule>
struct action : letters::nothing<Rule> {};
template <>
struct action<grammar::one_needle> : letters::calls<take_needle> {};
template <>
struct action<grammar::lengths> : letters::calls<take_lengths> {};
template <>
struct action<grammar::type_name> : letters::calls<take_type> {};

}  // namespace

void read_needles_clause(Reader& reader, const Clause& clause) {
  letters::read_phrases<grammar::phrases, action>(reader, clause);
}

}  // namespace skeinproof
