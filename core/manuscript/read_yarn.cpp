// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/base/text.h"
#include "core/manuscript/phrases.h"
#include "core/manuscript/read_names.h"

namespace skeinproof {
namespace {

constexpr std::size_t longest_fibre = 6;  // tokens of a fibre's words

bool ends_fibre(const Reader& reader, std::size_t i) {
  constexpr Sense ends[] = {Sense::also,       Sense::per,         Sense::about,    Sense::role_label,
                            Sense::role_words, Sense::in,          Sense::with,     Sense::of,
                            Sense::to,         Sense::number_word, Sense::yarn_word};
  if (!reader.is_word(i)) return true;
  return std::any_of(std::begin(ends), std::end(ends), [&](Sense sense) { return reader.has(i, sense); });
}

// "4 balls of Marl DK (200 m per 100 g)": the words are a name.
bool names_yarn(const PhrasePlace& at) {
  const Reader& reader = at.reader;
  if (!reader.capital(at.first)) return false;
  std::size_t before = at.first;
  while (before > at.clause.first &&
         (reader.letter(before - 1) == ':' || reader.letter(before - 1) == gap_shape))
    --before;
  const bool begins = before == at.clause.first || reader.has(before - 1, Sense::of) ||
                      reader.has(before - 1, Sense::yarn_word) || reader.letter(before - 1) == '6';
  const std::size_t end = name_end(reader, at.clause, at.first);
  return begins && end > at.first + 1 && yarn_follows(reader, at.clause, end);
}

}  // namespace

bool take_fibre(const PhrasePlace& at) {
  Reader& reader = at.reader;
  const std::size_t i = at.first;
  std::size_t first = i + 1, last = first;
  while (last < at.clause.last && last < i + longest_fibre && !ends_fibre(reader, last)) {
    ++last;
    // "100% wool single" ends with the fibre where a word of the yarn's making follows it.
    if (reader.has(last - 1, Sense::fibre) && reader.has(last, Sense::description)) break;
  }
  if (last == first) {  // "wool 75%"
    first = last = i;
    while (first > at.clause.first && first + longest_fibre > i && !ends_fibre(reader, first - 1) &&
           !reader.used[first - 1] && (first == i || !reader.capital(first - 1) || reader.capital(i - 1)))
      --first;
  }
  find_yarn(reader, at.clause, std::min(first, i), std::max(last, i + 1));
  reader.yarn_bare = false;
  Statement& statement = reader.say_list(StatementKind::fibre, std::min(first, i), std::max(last, i + 1), i);
  statement.words = reader.words(first, last);
  statement.unit = PrintedUnit::percent;
  statement.yarn = reader.yarn;
  return true;
}

bool take_description(const PhrasePlace& at) {
  Reader& reader = at.reader;
  if (reader.run == Run::gauge || reader.run == Run::needles) return false;
  // "Merle Fingering or any aran yarn" says nothing of the one named.
  const bool of_another = reader.yarn_found && at.first > at.clause.first && reader.is(at.first - 1, "any");
  if (names_yarn(at) || of_another) return false;
  const bool weight = at.last - at.first == 2 && reader.is(at.first + 1, "weight");
  const std::size_t last = weight ? at.last : at.first + 1;
  Statement& statement = reader.say(StatementKind::yarn_description, at.first, last);
  statement.qualifier = reader.value(at.first);
  statement.words = reader.words(at.first, last);
  const std::string lower = lower_ascii(statement.words);
  if (lower.ends_with("weight") && lower.size() > 7) statement.words.resize(statement.words.size() - 7);
  statement.yarn = reader.yarn;
  return true;
}

bool take_ply(const PhrasePlace& at) {
  Reader& reader = at.reader;
  std::size_t word = at.first;
  while (!reader.has(word, Sense::description)) ++word;
  if (!reader.is(word, "ply") && !reader.is(word, "plies") && !reader.is(word, "plied")) return false;
  if (reader.is_list(at.first) && reader.list(at.first).cells != 1) return false;
  const bool weight = reader.is(word + 1, "weight") && word + 1 < at.last;
  const std::size_t last = weight ? word + 2 : word + 1;
  Statement& statement = reader.say(StatementKind::yarn_description, at.first, last);
  statement.qualifier = weight ? "category" : "structure";
  statement.words = reader.words(at.first, word + 1);
  statement.yarn = reader.yarn;
  return true;
}

bool take_care(const PhrasePlace& at) {
  Reader& reader = at.reader;
  const bool of_yarn = reader.yarn_found && at.first > at.clause.first;
  Statement& statement =
      reader.say(of_yarn ? StatementKind::yarn_care : StatementKind::care, at.first, at.last);
  statement.words = reader.words(at.first, at.last);
  if (of_yarn) statement.yarn = reader.yarn;
  return true;
}

bool take_withdrawn(const PhrasePlace& at) {
  Statement& statement = at.reader.say(StatementKind::withdrawn, at.first, at.last);
  statement.words = at.reader.words(at.first, at.last);
  statement.yarn = at.reader.yarn;
  return true;
}

bool take_strands(const PhrasePlace& at) {
  Reader& reader = at.reader;
  const std::size_t word = at.last - 1;
  const bool counted = at.last - at.first == 2;
  if (!counted && reader.is(word, "strands")) return false;
  Statement& statement = reader.say(StatementKind::strands, at.first, at.last);
  statement.words = reader.words(at.first, at.last);
  statement.subject = reader.role;
  statement.yarn = reader.yarn;
  if (counted && reader.is_list(at.first)) {
    statement.values = reader.figures(at.first);
  } else if (const std::string_view number = reader.value(counted ? at.first : word); !number.empty()) {
    statement.values = {{static_cast<double>(number.front() - '0'), 0, statement.span, false}};
  }
  return true;
}

bool take_colours(const PhrasePlace& at) {
  Reader& reader = at.reader;
  const std::size_t i = at.last - 2;
  auto values = reader.is_list(i) ? reader.figures(i) : std::vector<PrintedValue>{};
  if (values.empty()) values = {{std::stod(std::string(reader.value(i))), 0, reader.span(i, i + 1), false}};
  if (values.size() != 1) return false;
  reader.say(StatementKind::number_of_colours, at.first, at.last).values = std::move(values);
  return true;
}

}  // namespace skeinproof
