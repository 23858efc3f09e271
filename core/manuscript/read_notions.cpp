// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/text.h"
#include "core/manuscript/phrases.h"

namespace skeinproof {
namespace {

void say_notion(const PhrasePlace& at, std::size_t name_first, std::size_t name_last, std::size_t list) {
  Reader& reader = at.reader;
  if (reader.said(StatementKind::notion)) ++reader.mention;
  const bool counted = list < at.last;
  Statement& statement = counted ? reader.say_list(StatementKind::notion, at.first, at.last, list)
                                 : reader.say(StatementKind::notion, at.first, at.last);
  statement.subject = lower_ascii(reader.words(name_first, name_last));
  if (counted) statement.unit = PrintedUnit::piece;
  statement.all_sizes = statement.values.size() == 1 && reader.sizes.count != 1;
  // "6 buttons, 18 mm across"
  std::size_t size = at.last;
  while (reader.letter(size) == ',' || reader.letter(size) == '(') ++size;
  if (reader.letter(size) != '4' || size >= at.clause.last) return;
  const bool across = reader.is(size + 1, "across") || reader.is(size + 1, "diameter");
  reader.use(size, across ? size + 2 : size + 1);
}

}  // namespace

bool take_counted_notion(const PhrasePlace& at) {
  const Reader& reader = at.reader;
  if (list_shape(reader.list(at.first).unit) != '0') return false;
  // "2 long circulars, buttons": the words between say what kind it is.
  std::size_t name = at.last - 1;
  while (name > at.first + 1 && (reader.is_word(name - 1) || reader.letter(name - 1) == '-')) --name;
  while (name < at.last - 1 && !reader.is_word(name)) ++name;
  say_notion(at, name, at.last, at.first);
  return true;
}

bool take_named_notion(const PhrasePlace& at) {
  const bool enclosed = at.reader.letter(at.last - 1) == ')';
  say_notion(at, at.first, at.first + 1, enclosed ? at.last - 2 : at.last - 1);
  return true;
}

bool take_notion(const PhrasePlace& at) {
  const bool begins = at.first == at.clause.first || at.reader.letter(at.first - 1) == ',' ||
                      at.reader.letter(at.first - 1) == '*';
  const bool lone = at.first == at.clause.first || (begins && at.reader.run == Run::none);
  if (at.clause.topic != Topic::notions && !lone) return false;
  say_notion(at, at.first, at.last, at.last);
  return true;
}

// In the list of notions any words are one.
bool take_any_notion(const PhrasePlace& at) {
  const Reader& reader = at.reader;
  if (at.clause.topic != Topic::notions) return false;
  const bool counted = reader.is_list(at.first);
  say_notion(at, counted ? at.first + 1 : at.first, at.last, counted ? at.first : at.last);
  return true;
}

}  // namespace skeinproof
