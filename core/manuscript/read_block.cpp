// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/letter_grammar.h"
#include "core/manuscript/read_roles.h"
#include "core/manuscript/read_yarn.h"

namespace skeinproof {
namespace {

namespace grammar {
using namespace letters;

struct amount : sor<yarn_length, weight> {};
struct amount_joint : one<'/', '(', ')', '=', 'P', 'A', 'S', 'f', 'd', '-', 'x', ',', 'i', '.', 'L'> {};
struct amounts : seq<amount, rep_max<7, seq<rep_opt<4, amount_joint>, amount>>,
                     opt<seq<opt<close>, word<Sense::skein_word>>>> {};
struct counted_by_weight : seq<bare, opt<one<'x'>>, weight, rep_opt<2, seq<few<2, '/', '(', ')'>, weight>>,
                               opt<close>, word<Sense::skein_word>> {};
struct count : skeins {};
struct figures : bare {};
struct total_word : word<Sense::total> {};

struct single_label : one<'W'> {};
struct role_in_words : seq<word<Sense::role_words>, opt<bare>,
                           opt<seq<open, sor<word<Sense::role_label>, single_label>, close>>> {};
struct prefixed_role : seq<sor<word<Sense::role_prefix>, word<Sense::yarn_word>>, sor<single_label, bare>> {};
struct role_mark : word<Sense::role_label> {};
struct lone_letter : single_label {};

struct strand_words : seq<opt<bare>, word<Sense::strands>> {};
struct ply : seq<sor<bare, one<'w'>>, opt<one<'-'>>, word<Sense::description>, opt<one<'w'>>> {};
struct described : seq<word<Sense::description>, opt<one<'w'>>> {};
struct care_words : seq<word<Sense::care>, opt<seq<one<'w'>, bare, opt<one<'?'>>, opt<one<'W'>>>>> {};
struct gone : word<Sense::withdrawn> {};
struct colours : seq<opt<word<Sense::in>>, sor<bare, unknown>, word<Sense::colours_word>> {};
struct name : any_word {};
struct phrases
    : sor<percent, counted_by_weight, amounts, count, strand_words, ply, figures, total_word, role_in_words,
          prefixed_role, role_mark, lone_letter, described, care_words, gone, colours, name> {};
}  // namespace grammar

using letters::Place;

void on_fibre(const Place& at) { take_fibre(at.reader, at.clause, at.first); }

bool word_near(const Place& at, Sense sense, std::size_t first, std::size_t last) {
  for (std::size_t i = first; i < last; ++i)
    if (at.reader.letter(i) == static_cast<char>(sense)) return true;
  return false;
}

// What a length beside a count says, by the words about it; empty where it is what the count equals.
std::string note_words(const Place& at) {
  const std::size_t first = at.first >= at.clause.first + 4 ? at.first - 4 : at.clause.first;
  std::size_t from = at.first;
  while (from > first && !at.reader.is_list(from - 1) &&
         at.reader.letter(from - 1) != static_cast<char>(Sense::role_label))
    --from;
  std::size_t to = at.last;
  while (to < at.clause.last && to < at.last + 4 && at.reader.letter(to) != ')' && !at.reader.is_list(to))
    ++to;
  if (word_near(at, Sense::at_most, from, to)) return "at most";
  for (std::size_t i = from; i < to; ++i)
    if (at.reader.letter(i) == static_cast<char>(Sense::used)) return std::string(at.reader.value(i));
  return word_near(at, Sense::about, from, to) ? "about" : "";
}

void on_amounts(const Place& at) {
  Reader& reader = at.reader;
  bool lengths = false, weights = false, several = false;
  for (std::size_t i = at.first; i < at.last; ++i) {
    if (!reader.is_list(i)) continue;
    lengths = lengths || reader.letter(i) == '1';
    weights = weights || reader.letter(i) == '2';
    several = several || reader.values(i).size() > 1;
  }
  const bool beside_count = !reader.role.empty() && reader.counted;
  const std::string note = beside_count ? note_words(at) : "";
  if (!several && !beside_count && reader.role.empty() && !reader.totals) {
    take_put_up(reader, at.clause, at.first, at.last);
    return;
  }
  if (!several && lengths && weights && note.empty() && !reader.totals) {
    take_put_up(reader, at.clause, at.first, at.last);
    return;
  }
  for (std::size_t i = at.first; i < at.last; ++i) {
    if (reader.letter(i) == '1' && (beside_count || reader.totals)) {
      Statement& statement =
          reader.say_list(note.empty() ? StatementKind::total_length : StatementKind::length_note, i);
      statement.subject = reader.role;
      statement.qualifier = note;
      statement.yarn = reader.yarn;
      statement.all_sizes = statement.values.size() == 1 && reader.sizes != 1;
    } else if (reader.letter(i) == '1' || reader.letter(i) == '2') {
      take_count(reader, at.clause, i, i + 1);
    }
  }
  reader.use(at.first, at.last);
}

bool on_counted_by_weight(const Place& at) {
  take_count(at.reader, at.clause, at.first, at.first + 1);
  for (std::size_t i = at.first + 1; i < at.last; ++i)
    if (at.reader.letter(i) == '2' || at.reader.letter(i) == static_cast<char>(Sense::skein_word)) {
      take_put_up(at.reader, at.clause, i, at.last);
      break;
    }
  return true;
}

void on_count(const Place& at) { take_count(at.reader, at.clause, at.first, at.last); }
bool on_figures(const Place& at) { return take_figures(at.reader, at.clause, at.first); }
void on_total(const Place& at) {
  at.reader.totals = true;
  at.reader.use(at.first, at.last);
}
bool on_role_words(const Place& at) {
  std::size_t label = at.last;
  if (at.reader.letter(at.last - 1) == ')') label = at.last - 2;
  if (label < at.last) {
    take_role(at.reader, at.clause, at.first, at.last, label, label + 1);
  } else {
    take_role(at.reader, at.clause, at.first, at.last, at.first, at.last);
  }
  return true;
}
bool lone_capital(const Reader& reader, std::size_t i) {
  const Token& token = reader.token(i);
  return token.end - token.begin == 1 && token.capital;
}
bool on_prefixed_role(const Place& at) {
  const std::size_t label = at.last - 1;
  const bool letter = at.reader.letter(label) == 'W';
  if (letter ? !lone_capital(at.reader, label) : at.reader.value(at.first) != "colour") return false;
  take_role(at.reader, at.clause, at.first, at.last, letter ? label : at.first, at.last);
  return true;
}
void on_role(const Place& at) { take_role(at.reader, at.clause, at.first, at.last, at.first, at.last); }
bool on_lone_letter(const Place& at) {
  if (!lone_capital(at.reader, at.first)) return false;
  const bool starts = at.first == at.clause.first || at.reader.letter(at.first - 1) == '(';
  const char next = at.reader.letter(at.last);
  if (!starts || (next != ':' && next != '-' && next != '=' && next != ')' && next != '\t' && next != '('))
    return false;
  on_role(at);
  return true;
}
bool on_strands(const Place& at) {
  const std::size_t word = at.last - 1;
  const bool figure = at.last - at.first == 2;
  if (!figure && at.reader.value(word).empty() && !at.reader.is(word, "held together")) return false;
  Statement& statement = figure ? at.reader.say_list(StatementKind::strands, at.first, at.last, at.first)
                                : at.reader.say(StatementKind::strands, at.first, at.last);
  statement.unit = PrintedUnit::none;
  statement.words = at.reader.words(at.first, at.last);
  if (!figure && !at.reader.value(word).empty())
    statement.values = {{at.reader.value(word) == "2" ? 2.0 : 3.0, 0, statement.span, false}};
  statement.subject = at.reader.role;
  statement.yarn = at.reader.yarn;
  return true;
}
bool on_ply(const Place& at) {
  std::size_t word = at.first;
  while (at.reader.letter(word) != static_cast<char>(Sense::description)) ++word;
  if (!at.reader.is(word, "ply") && !at.reader.is(word, "plies")) return false;
  if (at.reader.yarn < 0) return false;
  const bool weight = word + 1 < at.last && at.reader.is(word + 1, "weight");
  take_description(at.reader, at.first, weight ? at.last : word + 1, word);
  return true;
}
bool on_described(const Place& at) {
  if (at.reader.yarn < 0) return false;
  const bool weight = at.last - at.first == 2 && at.reader.is(at.first + 1, "weight");
  take_description(at.reader, at.first, weight ? at.last : at.first + 1, at.first);
  return true;
}
void on_care(const Place& at) {
  Statement& statement =
      at.reader.say(at.reader.yarn < 0 ? StatementKind::care : StatementKind::yarn_care, at.first, at.last);
  statement.words = at.reader.words(at.first, at.last);
  statement.yarn = at.reader.yarn;
}
void on_gone(const Place& at) {
  Statement& statement = at.reader.say(StatementKind::withdrawn, at.first, at.last);
  statement.words = at.reader.words(at.first, at.last);
  statement.yarn = at.reader.yarn;
}
bool on_colours(const Place& at) {
  constexpr std::string_view numbers[] = {"one", "two",   "three", "four", "five",
                                          "six", "seven", "eight", "nine", "ten"};
  const std::size_t i = at.last - 2;
  if (at.reader.is_list(i)) {
    at.reader.say_list(StatementKind::number_of_colours, at.first, at.last, i).unit = PrintedUnit::none;
    return true;
  }
  for (std::size_t k = 0; k < std::size(numbers); ++k) {
    if (!at.reader.is(i, numbers[k])) continue;
    Statement& statement = at.reader.say(StatementKind::number_of_colours, at.first, at.last);
    statement.values = {{static_cast<double>(k + 1), 0, at.reader.span(i, i + 1), false}};
    return true;
  }
  return false;
}
bool on_name(const Place& at) { return take_name(at.reader, at.clause, at.first); }

template <class Rule>
struct action : letters::nothing<Rule> {};
template <>
struct action<letters::percent> : letters::calls<on_fibre> {};
template <>
struct action<grammar::counted_by_weight> : letters::calls<on_counted_by_weight> {};
template <>
struct action<grammar::amounts> : letters::calls<on_amounts> {};
template <>
struct action<grammar::count> : letters::calls<on_count> {};
template <>
struct action<grammar::figures> : letters::calls<on_figures> {};
template <>
struct action<grammar::total_word> : letters::calls<on_total> {};
template <>
struct action<grammar::role_in_words> : letters::calls<on_role_words> {};
template <>
struct action<grammar::prefixed_role> : letters::calls<on_prefixed_role> {};
template <>
struct action<grammar::role_mark> : letters::calls<on_role> {};
template <>
struct action<grammar::lone_letter> : letters::calls<on_lone_letter> {};
template <>
struct action<grammar::strand_words> : letters::calls<on_strands> {};
template <>
struct action<grammar::ply> : letters::calls<on_ply> {};
template <>
struct action<grammar::described> : letters::calls<on_described> {};
template <>
struct action<grammar::care_words> : letters::calls<on_care> {};
template <>
struct action<grammar::gone> : letters::calls<on_gone> {};
template <>
struct action<grammar::colours> : letters::calls<on_colours> {};
template <>
struct action<grammar::name> : letters::calls<on_name> {};

}  // namespace

void read_block_clause(Reader& reader, const Clause& clause) {
  reader.yarn_found = false;
  reader.totals = false;
  reader.role.clear();
  reader.counted = false;
  reader.waiting.clear();
  ++reader.mention;
  letters::read_phrases<grammar::phrases, action>(reader, clause);
}

}  // namespace skeinproof
