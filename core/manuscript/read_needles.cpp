// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/phrases.h"

namespace skeinproof {
namespace {

// A statement for each figure: "3.25, 3.5 mm" is two needles.
void say_each(Reader& reader, StatementKind kind, PrintedUnit unit, std::size_t first, std::size_t list) {
  const auto values = reader.figures(list);
  for (std::size_t k = 0; k < values.size(); ++k) {
    Statement& statement = reader.say(kind, k == 0 ? first : list, list + 1);
    statement.values = {values[k]};
    statement.unit = unit;
    if (k > 0) statement.span.begin = values[k].span.begin;
    if (k + 1 < values.size()) {
      statement.span.end = values[k].span.end;
      ++reader.mention;
    }
  }
}

// The words that say what a needle is for: "for stocking stitch", "body".
std::string purpose_behind(const PhrasePlace& at) {
  const Reader& reader = at.reader;
  std::size_t i = at.last;
  bool said = false;
  while (i < at.clause.last && i < at.last + 6 &&
         (reader.has(i, Sense::needle_word) || reader.has(i, Sense::for_what) || reader.is(i, "the"))) {
    said = said || reader.has(i, Sense::for_what);
    ++i;
  }
  std::size_t end = i;
  while (end < at.clause.last && end < i + 5 && reader.is_word(end) && !reader.has(end, Sense::also) &&
         !reader.has(end, Sense::needle_type) && !reader.has(end, Sense::with) &&
         !reader.has(end, Sense::over) && !reader.has(end, Sense::notion))
    ++end;
  if (end == i || (!said && reader.run == Run::gauge)) return {};
  at.reader.use(at.last, end);
  return reader.words(i, end);
}

// "Main needles 4 mm", "Ribs: 3.5 mm": the words of the clause between its marks.
std::string purpose_before(const PhrasePlace& at) {
  const Reader& reader = at.reader;
  std::size_t last = at.first;
  while (last > at.clause.first &&
         (reader.letter(last - 1) == ':' || reader.has(last - 1, Sense::needle_word)))
    --last;
  std::size_t first = last;
  while (first > at.clause.first && first + 4 > last && reader.is_word(first - 1) &&
         !reader.used[first - 1] && !reader.has(first - 1, Sense::also) &&
         !reader.has(first - 1, Sense::of) && !reader.has(first - 1, Sense::needle_word) &&
         !reader.has(first - 1, Sense::with) && !reader.has(first - 1, Sense::needle_type) &&
         !reader.is(first - 1, "pair"))
    --first;
  if (first == last || last == at.first) return {};
  at.reader.use(first, last);
  return reader.words(first, last);
}

// "1 pair each of 4 mm": of how many needles the text speaks is no fact.
void use_pair_before(const PhrasePlace& at) {
  Reader& reader = at.reader;
  std::size_t first = at.first;
  const auto before = [&](auto test) { return first > at.clause.first && test(first - 1); };
  if (before([&](std::size_t i) { return reader.has(i, Sense::of); })) --first;
  if (before([&](std::size_t i) { return reader.is(i, "each"); })) --first;
  if (!before([&](std::size_t i) { return reader.is(i, "pair") || reader.is(i, "set"); })) return;
  --first;
  if (before([&](std::size_t i) { return reader.lone_figure(i); })) --first;
  reader.use(first, at.first);
}

bool near_needles(const PhrasePlace& at) {
  if (at.reader.run == Run::needles) return true;
  for (std::size_t i = at.last; i < at.clause.last && i < at.last + 6; ++i)
    if (at.reader.has(i, Sense::needle_word)) return true;
  return false;
}

bool of_notion(const PhrasePlace& at) {
  for (std::size_t i = at.last; i < at.clause.last && i < at.last + 3; ++i) {
    if (at.reader.has(i, Sense::notion) || at.reader.is(i, "across") || at.reader.is(i, "diameter"))
      return true;
    if (!at.reader.is_word(i)) return false;
  }
  return false;
}

}  // namespace

bool take_needle(const PhrasePlace& at) {
  Reader& reader = at.reader;
  if (of_notion(at)) return false;
  const bool numbered = reader.has(at.first, Sense::role_prefix);
  if (numbered && (reader.value(at.first) != "number" || !near_needles(at))) return false;
  if (reader.said(StatementKind::notion)) return false;
  ++reader.mention;
  const std::size_t said = reader.out.statements.size();
  for (std::size_t i = at.first; i < at.last; ++i) {
    if (!reader.is_list(i)) continue;
    if (reader.letter(i) == '4') {
      say_each(reader, StatementKind::needle, PrintedUnit::millimetre, i, i);
      continue;
    }
    std::size_t system = i;
    while (system > at.first && !reader.has(system, Sense::needle_system) &&
           !reader.has(system, Sense::role_prefix))
      --system;
    const bool old = reader.has(system, Sense::role_prefix);
    say_each(reader, StatementKind::needle, old ? PrintedUnit::needle_uk : reader.token(system).word->unit,
             system, i);
  }
  reader.use(at.first, at.last);
  use_pair_before(at);
  std::string purpose = purpose_behind(at);
  if (purpose.empty()) purpose = purpose_before(at);
  for (std::size_t k = said; k < reader.out.statements.size(); ++k)
    reader.out.statements[k].subject = purpose;
  if (reader.run != Run::gauge) reader.run = Run::needles;
  return true;
}

bool take_needle_length(const PhrasePlace& at) {
  Reader& reader = at.reader;
  bool near_type = false;
  for (std::size_t i = at.last; i < at.clause.last && i < at.last + 4; ++i) {
    near_type = near_type || reader.has(i, Sense::needle_type);
    if (reader.is_word(i) && !reader.has(i, Sense::also)) break;
  }
  if (reader.run != Run::needles && !near_type) return false;
  ++reader.mention;
  for (std::size_t i = at.first; i < at.last; ++i)
    if (reader.is_list(i)) say_each(reader, StatementKind::needle_length, reader.list(i).unit, i, i);
  reader.use(at.first, at.last);
  return true;
}

bool take_needle_type(const PhrasePlace& at) {
  at.reader.say(StatementKind::needle_type, at.first, at.last).words = at.reader.value(at.first);
  if (at.reader.run == Run::none) at.reader.run = Run::needles;
  return true;
}

}  // namespace skeinproof
