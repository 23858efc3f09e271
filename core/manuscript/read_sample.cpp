// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/letter_grammar.h"

namespace skeinproof {
namespace {

namespace grammar {
using namespace letters;

struct shown_word : word<Sense::shown> {};
struct of_size : seq<word<Sense::size_word>, few<2, ':', '-'>, sor<bare, unknown>> {};
struct grams : seq<weight, opt<seq<few<3, 'f', 'i', '('>, word<Sense::role_label>>>> {};
struct role_grams : seq<word<Sense::role_label>, few<3, ':', '-', '=', 'A'>, weight> {};
struct body : cloth {};
struct ease_with : seq<cloth, rep_opt<2, seq<few<2, '/', '('>, cloth>>, few<2, ')', 'f'>, word<Sense::ease>> {
};
struct as_listed : seq<sor<word<Sense::colours_word>, word<Sense::role_prefix>>, one<'w'>, one<'w'>> {};
struct name : one<'W'> {};
struct phrases : sor<ease_with, of_size, role_grams, grams, body, as_listed, shown_word, name> {};
}  // namespace grammar

using letters::Place;

void take_shown(const Place& at) { at.reader.use(at.first, at.last); }

bool take_size(const Place& at) {
  const std::size_t i = at.last - 1;
  if (at.reader.is_list(i) && at.reader.list(i).cells != 1) return false;
  Statement& statement = at.reader.say(StatementKind::sample_size, i, i + 1);
  statement.words = at.reader.words(i, i + 1);
  at.reader.use(at.first, at.last);
  return true;
}

void take_grams(const Place& at) {
  std::size_t list = at.first, role = at.last;
  for (std::size_t i = at.first; i < at.last; ++i) {
    if (at.reader.letter(i) == '2') list = i;
    if (at.reader.letter(i) == static_cast<char>(Sense::role_label)) role = i;
  }
  Statement& statement = at.reader.say_list(StatementKind::sample_weight, at.first, at.last, list);
  if (role < at.last) statement.subject = at.reader.words(role, role + 1);
}

bool take_body(const Place& at) {
  bool of_model = false;
  for (std::size_t i = at.clause.first; i < at.clause.last && i < at.clause.first + 200; ++i)
    of_model = of_model || at.reader.letter(i) == static_cast<char>(Sense::model);
  if (!of_model) return false;
  at.reader.say_list(StatementKind::model_measure, at.first);
  return true;
}

void take_ease(const Place& at) {
  for (std::size_t i = at.first; i < at.last; ++i)
    if (at.reader.is_list(i))
      at.reader.say_list(StatementKind::ease, i).qualifier = at.reader.value(at.last - 1);
  at.reader.use(at.first, at.last);
}

void take_as_listed(const Place& at) {
  at.reader.say(StatementKind::sample_shades, at.first, at.last).words = at.reader.words(at.first, at.last);
}

// "Soot and Marigold"
bool take_shades(const Place& at) {
  Reader& reader = at.reader;
  if (reader.used[at.first]) return false;
  std::size_t last = at.first;
  for (std::size_t i = at.first; i < at.clause.last; ++i) {
    const char c = reader.letter(i);
    if (reader.is_word(i) && reader.token(i).capital && c != static_cast<char>(Sense::size_word)) {
      last = i + 1;
    } else if (c != ',' && c != '&' && c != '(' && c != ')' && c != '0' &&
               c != static_cast<char>(Sense::role_label)) {
      break;
    }
  }
  reader.say(StatementKind::sample_shades, at.first, last).words = reader.words(at.first, last);
  return true;
}

template <class Rule>
struct action : letters::nothing<Rule> {};
template <>
struct action<grammar::shown_word> : letters::calls<take_shown> {};
template <>
struct action<grammar::of_size> : letters::calls<take_size> {};
template <>
struct action<grammar::grams> : letters::calls<take_grams> {};
template <>
struct action<grammar::role_grams> : letters::calls<take_grams> {};
template <>
struct action<grammar::body> : letters::calls<take_body> {};
template <>
struct action<grammar::ease_with> : letters::calls<take_ease> {};
template <>
struct action<grammar::as_listed> : letters::calls<take_as_listed> {};
template <>
struct action<grammar::name> : letters::calls<take_shades> {};

}  // namespace

void read_sample_clause(Reader& reader, const Clause& clause) {
  ++reader.mention;
  letters::read_phrases<grammar::phrases, action>(reader, clause);
}

}  // namespace skeinproof
