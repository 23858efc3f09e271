// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/read_names.h"

#include <algorithm>

#include "core/base/text.h"
#include "core/manuscript/phrases.h"

namespace skeinproof {
namespace {

constexpr std::size_t longest_name = 8;  // words of a name

// Words that begin a line and are no part of a name.
bool leads_name(const Reader& reader, std::size_t i) {
  constexpr Sense leads[] = {Sense::yarn_word,   Sense::with,       Sense::per,          Sense::of,
                             Sense::role_prefix, Sense::measure,    Sense::shown,        Sense::in,
                             Sense::size_word,   Sense::total,      Sense::used,         Sense::text_word,
                             Sense::to,          Sense::fit,        Sense::colours_word, Sense::sentence_verb,
                             Sense::needle_word, Sense::gauge_word, Sense::key_word,     Sense::for_what,
                             Sense::about};
  return std::any_of(std::begin(leads), std::end(leads), [&](Sense sense) { return reader.has(i, sense); });
}

// Words that begin a sentence.
bool begins_sentence(const Reader& reader, std::size_t i) {
  constexpr std::string_view words[] = {
      "i",   "i'm",  "i've",   "it",  "it's", "the",  "you", "this", "they", "we", "if", "these", "there",
      "use", "note", "please", "all", "any",  "hold", "see", "my",   "your", "an", "as", "at"};
  return reader.letter(i) == 'W' && std::any_of(std::begin(words), std::end(words),
                                                [&](std::string_view word) { return reader.is(i, word); });
}

bool in_name(const Reader& reader, std::size_t i) {
  return reader.capital(i) && !begins_sentence(reader, i) && !reader.used[i] &&
         !reader.has(i, Sense::role_label) && !reader.has(i, Sense::role_words) &&
         !reader.has(i, Sense::skein_word);
}

int known_yarn(const Reader& reader, const std::string& lower) {
  const auto found = reader.yarn_by_name.find(lower);
  return found == reader.yarn_by_name.end() ? -1 : found->second;
}

bool shade_prefix(const Reader& reader, std::size_t i) {
  return reader.letter(i) == '#' || (reader.has(i, Sense::role_prefix) && reader.value(i) != "colour");
}

}  // namespace

bool lone_capital(const Reader& reader, std::size_t i) {
  const Token& token = reader.token(i);
  return token.end - token.begin == 1 && token.capital;
}

bool is_role_in_brackets(const Reader& reader, std::size_t i) {
  return reader.letter(i) == '(' && reader.letter(i + 2) == ')' &&
         (reader.has(i + 1, Sense::role_label) || lone_capital(reader, i + 1));
}

std::size_t name_begin(const Reader& reader, const Clause& clause, std::size_t last) {
  std::size_t first = last;
  while (first > clause.first && first + longest_name > last && in_name(reader, first - 1)) --first;
  while (first < last && leads_name(reader, first)) ++first;
  return first;
}

std::size_t name_end(const Reader& reader, const Clause& clause, std::size_t first) {
  std::size_t last = first;
  while (last < clause.last && last < first + longest_name && in_name(reader, last)) ++last;
  return last;
}

std::size_t known_yarn_end(const Reader& reader, std::size_t first, std::size_t last) {
  if (reader.yarn_by_name.empty()) return first;
  for (std::size_t end = last; end > first; --end)
    if (known_yarn(reader, lower_ascii(reader.words(first, end))) >= 0) return end;
  return first;
}

namespace {

bool ply_follows(const Reader& reader, std::size_t i) {
  return reader.lone_figure(i) &&
         (reader.is(i + 1, "ply") || (reader.letter(i + 1) == '-' && reader.is(i + 2, "ply")));
}

// "(a woollen-spun 2-ply, 100% wool, ...)"
bool bracket_holds_fibres(const Reader& reader, const Clause& clause, std::size_t open) {
  const std::size_t end = std::min(clause.last, open + 16);
  for (std::size_t i = open + 1; i < end && reader.letter(i) != ')'; ++i)
    if (reader.letter(i) == '5') return true;
  return false;
}

}  // namespace

bool yarn_follows(const Reader& reader, const Clause& clause, std::size_t i) {
  if (ply_follows(reader, i)) i += reader.letter(i + 1) == '-' ? 3 : 2;
  if (reader.letter(i) == '(' && bracket_holds_fibres(reader, clause, i)) return true;
  const std::size_t end = std::min(clause.last, i + 5);
  for (; i < end; ++i) {
    const char c = reader.letter(i);
    if (c == '5' || (c == '0' && reader.has(i + 1, Sense::fibre))) return true;
    if (c == '1' || c == '2') {
      if (reader.list(i).cells != 1) return false;
      // A put-up has both; one alone is how much is needed.
      const std::size_t near = std::min(clause.last, i + 9);
      for (std::size_t k = i + 1; k < near && !reader.has(k, Sense::at_most) && !reader.has(k, Sense::used);
           ++k)
        if ((reader.letter(k) == '1' || reader.letter(k) == '2') && reader.letter(k) != c) return true;
      return reader.has(i + 1, Sense::skein_word);
    }
    if (reader.has(i, Sense::fibre) || (reader.has(i, Sense::description) && !reader.used[i])) {
      // "superwash merino 100%"
      for (std::size_t k = i + 1; k < std::min(clause.last, i + 4); ++k) {
        if (reader.letter(k) == '5') return true;
        if (!reader.is_word(k)) break;
      }
      return false;
    }
    const bool between = c == '(' || c == ',' || c == ':' || c == '-' || c == '\n' || c == gap_shape ||
                         c == '"' || c == '*' || c == '=' || reader.has(i, Sense::about) ||
                         reader.has(i, Sense::per) || reader.is(i, "is");
    if (!between) return false;
  }
  return false;
}

namespace {

// "A: 3 skeins of Tidewater Linen": what the clause said before is of the yarn it names.
void give_yarn_to_mention(Reader& reader) {
  auto& statements = reader.out.statements;
  for (std::size_t k = reader.clause_says; k < statements.size(); ++k) {
    if (statements[k].mention != reader.mention && statements[k].yarn >= 0) continue;
    switch (statements[k].kind) {
      case StatementKind::role:
      case StatementKind::shade_name:
      case StatementKind::shade_number:
      case StatementKind::strands:
      case StatementKind::count:
      case StatementKind::length_note:
        statements[k].yarn = reader.yarn;
        break;
      default:
        break;
    }
  }
}

}  // namespace

void say_yarn(Reader& reader, std::size_t first, std::size_t last) {
  Statement& statement = reader.say(StatementKind::yarn_name, first, last);
  statement.words = reader.words(first, last);
  const std::string lower = lower_ascii(statement.words);
  reader.yarn = known_yarn(reader, lower);
  if (reader.yarn < 0) {
    reader.yarn = reader.yarns++;
    reader.yarn_by_name.emplace(lower, reader.yarn);
  }
  statement.yarn = reader.yarn;
  if (!reader.yarn_found) give_yarn_to_mention(reader);
  reader.yarn_found = true;
  reader.yarn_bare = true;
}

std::size_t small_shade_end(const Reader& reader, const Clause& clause, std::size_t first) {
  constexpr std::string_view other[] = {"as", "is", "are", "see", "then", "from", "if", "but", "at", "the"};
  constexpr std::string_view ends = ",(:;.\t-\n&";
  const auto shade_word = [&](std::size_t i) {
    return i < clause.last && reader.letter(i) == 'w' && !reader.used[i] &&
           std::none_of(std::begin(other), std::end(other), [&](auto word) { return reader.is(i, word); });
  };
  if (clause.topic == Topic::text || first == 0 || !reader.is_list(first - 1)) return first;
  std::size_t last = first;
  while (last < first + 3 && shade_word(last)) ++last;
  const bool ended =
      last >= clause.last || reader.is_list(last) || ends.find(reader.letter(last)) != ends.npos;
  return ended ? last : first;
}

void say_shade(Reader& reader, std::size_t first, std::size_t last) {
  // "MC Peat: 5 skeins, Lichen: 2 skeins": another shade is of no role yet.
  if (reader.counted && reader.said(StatementKind::shade_name)) {
    ++reader.mention;
    reader.role.clear();
    reader.counted = false;
  }
  if (reader.role.empty() && reader.said(StatementKind::shade_name)) ++reader.mention;
  Statement& statement = reader.say(StatementKind::shade_name, first, last);
  statement.words = reader.words(first, last);
  statement.subject = reader.role;
  statement.yarn = reader.yarn;
}

void say_shade_number(Reader& reader, std::size_t first, std::size_t i) {
  Statement& statement = reader.say(StatementKind::shade_number, i, i + 1);
  statement.words = reader.words(i, i + 1);
  statement.subject = reader.role;
  statement.yarn = reader.yarn;
  reader.use(first, i + 1);
}

std::size_t take_number_behind(Reader& reader, const Clause& clause, std::size_t i) {
  std::size_t at = i;
  bool prefixed = false;
  while (at < clause.last && at < i + 5) {
    const char c = reader.letter(at);
    const bool prefix = shade_prefix(reader, at) || (prefixed && c == '.');
    if (!prefix && c != '(' && c != ',' && c != '"' && c != gap_shape) break;
    prefixed = prefixed || prefix;
    ++at;
  }
  if (at >= clause.last || !reader.lone_figure(at) || ply_follows(reader, at)) return i;
  const bool enclosed = at == i + 1 && reader.letter(i) == '(' && reader.letter(at + 1) == ')';
  const bool quoted = at == i + 1 && reader.letter(i) == '"';
  if (at != i && !prefixed && !enclosed && !quoted) return i;
  const bool counts =
      reader.letter(at + 1) == 'x' && !(reader.letter(at + 2) == '0' && reader.list(at + 2).cells > 1);
  if (!prefixed && !enclosed && (counts || reader.has(at + 1, Sense::skein_word))) return i;
  say_shade_number(reader, i, at);
  return at + 1;
}

void find_yarn(Reader& reader, const Clause& clause, std::size_t phrase, std::size_t phrase_end) {
  std::size_t last = phrase;
  while (last > clause.first && last + 5 > phrase && !reader.used[last - 1]) {
    const char c = reader.letter(last - 1);
    const bool between = c == '(' || c == ',' || c == ':' || c == '-' || c == '=' || c == gap_shape ||
                         c == '"' || reader.has(last - 1, Sense::about) || reader.has(last - 1, Sense::per);
    if (!between) break;
    --last;
  }
  const std::size_t first = name_begin(reader, clause, last);
  if (first < last) return say_yarn(reader, first, last);
  const std::size_t behind = phrase_end + 1, end = name_end(reader, clause, behind);
  if (reader.has(phrase_end, Sense::of) && end > behind && reader.role.empty() && !reader.yarn_found &&
      (reader.yarn < 0 || ply_follows(reader, end) || yarn_follows(reader, clause, end))) {
    say_yarn(reader, behind, end);
  } else if (reader.yarn < 0) {
    reader.yarn = reader.yarns++;
  }
}

// "shade 08", "Colour: Moss 210", "colorway Gosling", "no. 12": behind the word for it.
bool take_shade(const PhrasePlace& at) {
  Reader& reader = at.reader;
  const std::size_t i = at.last - 1;
  if (reader.value(at.first) == "number" && !reader.is_list(i)) return false;
  if (reader.is_list(i)) {
    if (!reader.lone_figure(i) || reader.run == Run::needles || reader.run == Run::gauge) return false;
    if (reader.value(at.first) == "number" && reader.role.empty() && reader.yarn < 0) return false;
    // "Peat no. 08 (MC)": the role takes its shade.
    const std::size_t behind = reader.letter(at.last) == gap_shape ? at.last + 1 : at.last;
    if (is_role_in_brackets(reader, behind)) return false;
    say_shade_number(reader, at.first, i);
    // "Colour: 14 Duckling"
    const std::size_t bracket = reader.letter(i + 1) == '(' ? i + 2 : i + 1;
    std::size_t last = name_end(reader, at.clause, bracket);
    if (last == bracket && bracket == i + 2 && reader.letter(bracket) == 'w' &&
        reader.letter(bracket + 1) == ')')
      ++last;
    if (last == bracket) last = small_shade_end(reader, at.clause, bracket);
    if (last > bracket) say_shade(reader, bracket, last);
    return true;
  }
  const std::size_t last = name_end(reader, at.clause, i);
  if (last == i) return false;
  reader.use(at.first, i);
  say_shade(reader, i, last);
  take_number_behind(reader, at.clause, last);
  return true;
}

namespace {

// Whether what stands before a name makes it a shade: "in Peat", "skeins Peat", "of Peat".
bool shade_before(const Reader& reader, const Clause& clause, std::size_t i) {
  while (i > clause.first && (reader.letter(i - 1) == '"' || reader.letter(i - 1) == gap_shape)) --i;
  if (i == clause.first) return false;
  const char c = reader.letter(i - 1);
  return c == '6' || reader.has(i - 1, Sense::in) || reader.has(i - 1, Sense::of) ||
         reader.has(i - 1, Sense::skein_word) || reader.has(i - 1, Sense::shown);
}

// Whether a count stands behind a name, with a number of the shade between or without.
bool count_follows(const Reader& reader, const Clause& clause, std::size_t i) {
  const std::size_t end = std::min(clause.last, i + 7);
  for (; i < end; ++i) {
    const char c = reader.letter(i);
    if (c == '6') return true;
    if ((c == '0' || c == '2' || c == '1') && reader.list(i).cells > 1) return true;
    const bool between = c == '0' || c == ':' || c == ',' || c == '-' || c == '#' || c == '(' || c == ')' ||
                         c == 'x' || c == '.' || c == gap_shape || c == '"' || c == '=' ||
                         reader.has(i, Sense::role_prefix) || reader.has(i, Sense::skein_word) ||
                         reader.has(i, Sense::about);
    if (!between) return false;
  }
  return false;
}

// "YARN  Skelda Shetland": behind the heading without a mark.
bool begins_heading(const Reader& reader, const Clause& clause, std::size_t first) {
  while (first > clause.first && reader.letter(first - 1) == gap_shape) --first;
  return clause.headed && first == clause.first + 1 && reader.has(clause.first, Sense::yarn_word);
}

// Shades of one breath: "Clay, Loam and Chalk".
void say_shades(Reader& reader, const Clause& clause, std::size_t first, std::size_t last) {
  for (;;) {
    say_shade(reader, first, last);
    last = take_number_behind(reader, clause, last);
    if (reader.letter(last) != ',' && !reader.has(last, Sense::also)) return;
    const std::size_t next = last + 1, end = name_end(reader, clause, next);
    if (end == next || reader.has(next, Sense::role_label) || yarn_follows(reader, clause, end) ||
        count_follows(reader, clause, end))
      return;
    first = next;
    last = end;
  }
}

// "They are called Pipistrelle Mitts": the name of the pattern where no title led the text.
bool take_title_in_text(Reader& reader, std::size_t first, std::size_t last) {
  if (last - first < 2 || !reader.has(last - 1, Sense::item)) return false;
  for (const Statement& statement : reader.out.statements)
    if (statement.kind == StatementKind::title || statement.kind == StatementKind::item) return false;
  reader.say(StatementKind::title, first, last).words = reader.words(first, last);
  Statement& item = reader.say(StatementKind::item, last - 1, last);
  item.words = reader.value(last - 1).empty() ? reader.lower(last - 1) : std::string(reader.value(last - 1));
  return true;
}

}  // namespace

bool take_name(const PhrasePlace& at) {
  Reader& reader = at.reader;
  std::size_t first = at.first;
  if (!reader.capital(first) || leads_name(reader, first)) return false;
  const std::size_t last = name_end(reader, at.clause, first);
  if (last == first) return false;
  if (const std::size_t known = known_yarn_end(reader, first, last); known > first) {
    say_yarn(reader, first, known);
    const std::size_t shade = reader.letter(known) == ',' ? known + 1 : known;
    const std::size_t end = name_end(reader, at.clause, shade);
    if (end > shade && !yarn_follows(reader, at.clause, end)) say_shades(reader, at.clause, shade, end);
    return true;
  }
  // "Larkfield Worsted in Juniper (100% wool)"
  const bool in_yarn = reader.yarn_bare && first > at.clause.first && reader.has(first - 1, Sense::in);
  if (!in_yarn && yarn_follows(reader, at.clause, last)) {
    say_yarn(reader, first, last);
    return true;
  }
  if (last == first + 1 && lone_capital(reader, first)) return false;
  const bool before = shade_before(reader, at.clause, first);
  if (reader.run == Run::sample && !reader.yarn_found) {
    std::size_t end = last;
    while ((reader.letter(end) == ',' || reader.has(end, Sense::also)) &&
           name_end(reader, at.clause, end + 1) > end + 1)
      end = name_end(reader, at.clause, end + 1);
    reader.say(StatementKind::sample_shades, first, end).words = reader.words(first, end);
    return true;
  }
  const bool begins = first == at.clause.first || reader.letter(first - 1) == ':' ||
                      reader.letter(first - 1) == '*' || reader.letter(first - 1) == '"' ||
                      reader.letter(first - 1) == '-' || reader.is(first - 1, "is") ||
                      reader.letter(first - 1) == '.' || begins_heading(reader, at.clause, first);
  // "Yarn: 12 balls (600 g) Skarn Chunky"
  const bool counted_before = reader.yarn < 0 && at.clause.headed && !reader.waiting.empty() &&
                              (reader.letter(first - 1) == ')' || reader.is_list(first - 1));
  if (reader.yarn >= 0 && before) {
    say_shades(reader, at.clause, first, last);
    return true;
  }
  const bool of_yarn_heading =
      at.clause.headed && at.clause.topic == Topic::block && !reader.yarn_found && begins;
  const bool counts = count_follows(reader, at.clause, last) || ply_follows(reader, last);
  if (reader.yarn < 0 && (before || of_yarn_heading || counted_before || (counts && begins))) {
    say_yarn(reader, first, last);
    return true;
  }
  if (reader.yarn >= 0 && of_yarn_heading && !counts) {
    say_yarn(reader, first, last);
    return true;
  }
  if (reader.yarn >= 0 && ply_follows(reader, last)) {
    say_yarn(reader, first, last);
    return true;
  }
  if (reader.yarn >= 0 && counts) {
    say_shades(reader, at.clause, first, last);
    return true;
  }
  return take_title_in_text(reader, first, last);
}

}  // namespace skeinproof
