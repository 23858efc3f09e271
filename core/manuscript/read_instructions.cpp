// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/manuscript/phrases.h"

namespace skeinproof {
namespace {

constexpr std::size_t longest_sentence = 60;  // tokens

std::string sentence(const PhrasePlace& at) {
  return at.reader.words(at.clause.first, std::min(at.clause.last, at.clause.first + longest_sentence));
}

}  // namespace

bool take_stitches(const PhrasePlace& at) {
  Reader& reader = at.reader;
  const std::size_t list = at.last - 1;
  const bool named = at.last - at.first > 1;
  if (named && reader.has(at.first, Sense::sentence_verb) && reader.value(at.first).empty()) return false;
  if (!named && reader.list(list).cells < 2) return false;
  Statement& statement = reader.say_list(StatementKind::stitches, list);
  if (named) statement.qualifier = reader.value(at.first);
  statement.all_sizes = statement.values.size() == 1 && reader.sizes.count != 1;
  // The yarn that stands between: "cast on in MC 56 sts".
  for (std::size_t i = at.first; i < list; ++i)
    if (reader.has(i, Sense::role_label)) take_role_mention({reader, at.clause, i, i + 1});
  reader.use(at.first, at.last);
  return true;
}

bool take_role_mention(const PhrasePlace& at) {
  Statement& statement = at.reader.say(StatementKind::role_mention, at.first, at.last);
  statement.subject = at.reader.words(at.first, at.last);
  statement.words = sentence(at);
  return true;
}

// "With A", "in Peat", "with yarn B": a label of the block is a role, another name a shade.
bool take_named_yarn(const PhrasePlace& at) {
  Reader& reader = at.reader;
  const std::size_t name = at.last - 1;
  const std::string words = reader.words(name, at.last);
  const bool role = reader.roles.contains(words);
  const bool letter = reader.token(name).end - reader.token(name).begin == 1;
  const bool prefixed =
      name > at.first && (reader.has(name - 1, Sense::yarn_word) || reader.has(name - 1, Sense::role_prefix));
  if (!role && letter && !prefixed) return false;
  const std::size_t first = prefixed ? name - 1 : name;
  Statement& statement =
      reader.say(role || letter ? StatementKind::role_mention : StatementKind::shade_mention, first, at.last);
  statement.subject = words;
  statement.words = sentence(at);
  return true;
}

bool take_extra(const PhrasePlace& at) {
  at.reader.say(StatementKind::extra, at.first, at.last).words = at.reader.value(at.first);
  return true;
}

bool take_phrase(const PhrasePlace& at) {
  Statement& statement = at.reader.say(StatementKind::phrase, at.first, at.last);
  statement.qualifier = at.reader.value(at.first);
  statement.words = at.reader.words(at.first, at.last);
  return true;
}

bool take_caution(const PhrasePlace& at) {
  Reader& reader = at.reader;
  if (reader.said(StatementKind::caution)) return true;
  Statement& statement = reader.say(StatementKind::caution, at.clause.first, at.clause.last);
  statement.words = sentence(at);
  return true;
}

bool take_legend_shade(const PhrasePlace& at) {
  Reader& reader = at.reader;
  std::size_t last = at.last;
  while (last < at.clause.last && reader.capital(last) && reader.letter(last) == 'W') ++last;
  Statement& statement = reader.say(StatementKind::legend_shade, at.last - 1, last);
  statement.subject = reader.words(at.first, at.first + 1);
  statement.words = reader.words(at.last - 1, last);
  reader.use(at.first, last);
  return true;
}

bool take_symbol(const PhrasePlace& at) {
  Statement& statement = at.reader.say(StatementKind::legend_symbol, at.first, at.first + 1);
  statement.words = at.reader.words(at.first, at.first + 1);
  statement.subject = at.reader.words(at.last, at.last + 1);
  at.reader.use(at.first, at.last);
  return true;
}

}  // namespace skeinproof
