// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/manuscript/letter_grammar.h"

namespace skeinproof {
namespace {

namespace grammar {
using namespace letters;

struct cast_on_count
    : seq<word<Sense::cast_on>, rep_opt<4, sor<one<'w', 'R', 'i', '@', 'A', ','>>>, stitches> {};
struct stitch_count : stitches {};
struct role_mark : word<Sense::role_label> {};
struct named_letter
    : seq<sor<word<Sense::with>, word<Sense::in>, word<Sense::role_prefix>, word<Sense::yarn_word>>,
          one<'W'>> {};
struct extra_word : word<Sense::extra> {};
struct phrase_word : word<Sense::phrase> {};
struct caution_word : word<Sense::caution> {};
struct in_text
    : sor<cast_on_count, stitch_count, role_mark, named_letter, extra_word, phrase_word, caution_word> {};

struct shade_of_role : seq<word<Sense::role_label>, few<3, ':', '-', '=', '(', ','>, one<'W'>> {};
struct symbol_of_role : seq<sor<unknown, bare, one<'x', '.', '-', '+', '*', '?', '/'>>, one<'=', ':'>,
                            word<Sense::role_label>> {};
struct in_legend : sor<symbol_of_role, shade_of_role, role_mark> {};
}  // namespace grammar

using letters::Place;

void take_stitches(const Place& at) {
  Reader& reader = at.reader;
  const std::size_t i = at.last - 1;
  const bool named = reader.letter(at.first) == static_cast<char>(Sense::cast_on);
  Statement& statement = reader.say_list(StatementKind::stitches, i);
  if (named) statement.qualifier = reader.value(at.first);
  reader.use(at.first, at.last);
}
bool take_lone_stitches(const Place& at) {
  if (at.reader.list(at.first).cells < 2) return false;
  take_stitches(at);
  return true;
}
void take_role_mention(const Place& at) {
  Statement& statement = at.reader.say(StatementKind::role_mention, at.first, at.last);
  statement.subject = at.reader.words(at.first, at.last);
  statement.words = at.reader.words(at.clause.first, std::min(at.clause.last, at.clause.first + 60));
}
bool take_named(const Place& at) {
  const std::size_t i = at.last - 1;
  const std::string name = at.reader.words(i, i + 1);
  const bool role = std::find(at.reader.roles.begin(), at.reader.roles.end(), name) != at.reader.roles.end();
  Statement& statement =
      at.reader.say(role ? StatementKind::role_mention : StatementKind::shade_mention, i, i + 1);
  statement.subject = name;
  statement.words = at.reader.words(at.clause.first, std::min(at.clause.last, at.clause.first + 60));
  return true;
}
void take_extra(const Place& at) {
  at.reader.say(StatementKind::extra, at.first, at.last).words = at.reader.value(at.first);
}
void take_phrase(const Place& at) {
  Statement& statement = at.reader.say(StatementKind::phrase, at.first, at.last);
  statement.qualifier = at.reader.value(at.first);
  statement.words = at.reader.words(at.first, at.last);
}
void take_caution(const Place& at) {
  at.reader.say(StatementKind::caution, at.first, at.last).words = at.reader.words(at.first, at.last);
}

void take_legend_shade(const Place& at) {
  Reader& reader = at.reader;
  std::size_t last = at.last;
  while (last < at.clause.last && reader.is_word(last) && reader.token(last).capital) ++last;
  Statement& statement = reader.say(StatementKind::legend_shade, at.last - 1, last);
  statement.subject = reader.words(at.first, at.first + 1);
  statement.words = reader.words(at.last - 1, last);
  reader.use(at.first, last);
}
void take_symbol(const Place& at) {
  Statement& statement = at.reader.say(StatementKind::legend_symbol, at.first, at.first + 1);
  statement.words = at.reader.words(at.first, at.first + 1);
  statement.subject = at.reader.words(at.last - 1, at.last);
  at.reader.use(at.first, at.last);
}

template <class Rule>
struct action : letters::nothing<Rule> {};
template <>
struct action<grammar::cast_on_count> : letters::calls<take_stitches> {};
template <>
struct action<grammar::stitch_count> : letters::calls<take_lone_stitches> {};
template <>
struct action<grammar::role_mark> : letters::calls<take_role_mention> {};
template <>
struct action<grammar::named_letter> : letters::calls<take_named> {};
template <>
struct action<grammar::extra_word> : letters::calls<take_extra> {};
template <>
struct action<grammar::phrase_word> : letters::calls<take_phrase> {};
template <>
struct action<grammar::caution_word> : letters::calls<take_caution> {};
template <>
struct action<grammar::shade_of_role> : letters::calls<take_legend_shade> {};
template <>
struct action<grammar::symbol_of_role> : letters::calls<take_symbol> {};

}  // namespace

void read_text_clause(Reader& reader, const Clause& clause) {
  ++reader.mention;
  letters::read_phrases<grammar::in_text, action>(reader, clause);
  reader.use(clause.first, clause.last);
}

void read_legend_clause(Reader& reader, const Clause& clause) {
  ++reader.mention;
  letters::read_phrases<grammar::in_legend, action>(reader, clause);
}

}  // namespace skeinproof
