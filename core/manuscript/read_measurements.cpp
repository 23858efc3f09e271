// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/phrases.h"

namespace skeinproof {
namespace {

// Says each list among the tokens.
void say_measures(const PhrasePlace& at, PrintedUnit unit = PrintedUnit::none) {
  Reader& reader = at.reader;
  const StatementKind kind =
      reader.run == Run::sample ? StatementKind::model_measure : StatementKind::measurement;
  for (std::size_t i = at.first; i < at.last; ++i) {
    if (!reader.is_list(i)) continue;
    Statement& statement = reader.say_list(kind, i);
    statement.subject = reader.measure;
    statement.qualifier = reader.fit;
    if (statement.unit == PrintedUnit::none) statement.unit = unit;
    statement.all_sizes = statement.values.size() == 1 && reader.sizes.count != 1;
  }
  reader.use(at.first, at.last);
  if (reader.run != Run::sample) reader.run = Run::measures;
}

bool named_measure(const Reader& reader, std::size_t i) {
  return reader.has(i, Sense::measure) || (reader.has(i, Sense::measure_end) && !reader.value(i).empty());
}

// The name without the words that say how it is meant; those are kept for what follows.
std::string measure_name(Reader& reader, std::size_t first, std::size_t last) {
  std::string name;
  bool fit = false;
  for (std::size_t i = first; i < last; ++i) {
    if (reader.has(i, Sense::fit) || reader.has(i, Sense::measures_word)) {
      if (!reader.value(i).empty()) reader.fit = reader.value(i);
      fit = true;
      continue;
    }
    const bool slash = reader.letter(i) == '/';
    if (!reader.is_word(i) && !slash) continue;
    if (reader.has(i, Sense::unit_word) || reader.has(i, Sense::in) || reader.has(i, Sense::about)) continue;
    if (reader.has(i, Sense::of) && (name.empty() || i + 1 == last)) continue;
    if (!slash && !name.empty() && name.back() != '/') name += ' ';
    name += reader.lower(i);
  }
  // Words of a measurement that says nothing of its fit do not inherit that of the line before.
  if (!fit && !name.empty() && reader.run != Run::measures) reader.fit.clear();
  return name;
}

void name_measure(const PhrasePlace& at, std::size_t first, std::size_t last) {
  ++at.reader.mention;
  const std::string name = measure_name(at.reader, first, last);
  if (!name.empty()) at.reader.measure = name;
}

}  // namespace

bool take_measure_line(const PhrasePlace& at) {
  Reader& reader = at.reader;
  std::size_t list = at.first;
  PrintedUnit unit = PrintedUnit::none;
  bool named = false;
  for (; !reader.is_list(list); ++list) {
    if (reader.has(list, Sense::unit_word) || (reader.has(list, Sense::in) && !reader.is_word(list + 1)))
      unit = reader.token(list).word->unit;
    named = named || named_measure(reader, list);
  }
  const bool bare = reader.list(list).unit == PrintedUnit::none;
  if (!named && (bare || at.clause.topic != Topic::sizes)) return false;
  if (bare && unit == PrintedUnit::none && reader.list(list).cells < 2) return false;
  const bool begins =
      at.first == at.clause.first || reader.letter(at.first - 1) == ',' || reader.letter(at.first - 1) == '*';
  if (!named && (reader.run == Run::sample || !begins)) return false;
  // "to 10 cm" behind stitches, "from 40 cm circular" behind a needle.
  if (!named && (reader.run == Run::gauge || reader.run == Run::needles)) return false;
  std::size_t first = at.first;
  while (first < list && !named_measure(reader, first) && !reader.has(first, Sense::fit) && named &&
         !reader.capital(first))
    ++first;
  name_measure(at, first, list);
  const std::size_t mark = first;
  reader.use(at.first, mark);
  say_measures(at, unit);
  return true;
}

bool take_measure_behind(const PhrasePlace& at) {
  if (!named_measure(at.reader, at.last - 1) || at.reader.run == Run::needles) return false;
  std::size_t first = at.first;
  while (!at.reader.is_word(first) || at.reader.is_list(first) || at.reader.has(first, Sense::in) ||
         at.reader.has(first, Sense::of))
    ++first;
  name_measure(at, first, at.last);
  if (!at.reader.value(at.last - 1).empty() && at.reader.has(at.last - 1, Sense::measure_end))
    at.reader.measure = at.reader.value(at.last - 1);
  say_measures(at);
  return true;
}

bool take_more_measures(const PhrasePlace& at) {
  Reader& reader = at.reader;
  if (reader.run != Run::measures) return false;
  if (reader.measure.empty() && reader.fit.empty() && at.clause.topic != Topic::sizes) return false;
  say_measures(at);
  return true;
}

// "45 x 190 cm"
bool take_measures_by(const PhrasePlace& at) {
  Reader& reader = at.reader;
  if (reader.run == Run::gauge || reader.run == Run::needles) return false;
  if (reader.run != Run::measures) reader.measure.clear();
  say_measures(at, reader.list(at.last - 1).unit);
  return true;
}

bool take_fit(const PhrasePlace& at) {
  Reader& reader = at.reader;
  if (!reader.value(at.first).empty()) reader.fit = reader.value(at.first);
  reader.measure.clear();
  if (reader.run == Run::none) reader.run = Run::measures;
  reader.use(at.first, at.last);
  return true;
}

bool take_ease(const PhrasePlace& at) {
  Reader& reader = at.reader;
  ++reader.mention;
  std::string kind;
  bool any = false;
  for (std::size_t i = at.first; i < at.last; ++i) {
    if (reader.has(i, Sense::ease)) kind = reader.value(i);
    any = any || reader.is_list(i);
  }
  if (!any) reader.say(StatementKind::ease, at.first, at.last).qualifier = kind;
  for (std::size_t i = at.first; i < at.last; ++i) {
    if (!reader.is_list(i)) continue;
    const bool sign = i > at.first && reader.letter(i - 1) == '+';
    reader.say_list(StatementKind::ease, sign ? i - 1 : i, i + 1, i).qualifier = kind;
  }
  reader.use(at.first, at.last);
  return true;
}

}  // namespace skeinproof
