// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/phrases.h"

namespace skeinproof {
namespace {

// Whether a stretch of cloth that stitches or rows may be counted over stands near behind them.
bool counted_over(const PhrasePlace& at) {
  bool joined = false;
  for (std::size_t i = at.last; i < at.clause.last && i < at.last + 9; ++i) {
    const char c = at.reader.letter(i);
    joined = joined || c == '=' || c == '/' || c == '(' || at.reader.has(i, Sense::over) ||
             at.reader.has(i, Sense::per) || at.reader.has(i, Sense::to) || at.reader.has(i, Sense::in);
    if (joined && (c == '3' || at.reader.has(i, Sense::unit_word))) return true;
    if (c == '.' || c == '1' || c == '2' || c == '5' || c == '6') return false;
  }
  // "22 sts, 28 rows"
  const std::size_t other = at.reader.letter(at.last) == ',' ? at.last + 1 : at.last;
  const bool bare = at.first == at.clause.first && other + 1 >= at.clause.last;
  if (bare && at.reader.letter(at.first) == '7' && at.reader.letter(other) == '8') return true;
  // "10 cm = 26 sts"
  return at.first >= at.clause.first + 2 && at.reader.letter(at.first - 2) == '3';
}

bool starts_gauge(const PhrasePlace& at) {
  Reader& reader = at.reader;
  if (reader.run == Run::gauge) return true;
  if (!counted_over(at)) return false;
  reader.run = Run::gauge;
  return true;
}

// How the rows of a list are called.
void say_worked(const PhrasePlace& at) {
  const FigureList& list = at.reader.list(at.first);
  if (list.unit_word == nullptr || list.unit_word->value.empty()) return;
  Statement& statement = at.reader.say(StatementKind::gauge_worked, at.first, at.last);
  statement.words = list.unit_word->value;
  const PlainText& plain = at.reader.plain;
  std::uint32_t begin = at.reader.items.cells[list.first_cell + list.cells - 1].end;
  while (begin + 1 < list.end &&
         (plain.text[begin] == ' ' || plain.text[begin] == ')' || plain.text[begin] == '-'))
    ++begin;
  statement.span = plain.as_came(begin, list.end);
}

bool in_gauge(const PhrasePlace& at) { return at.reader.run == Run::gauge; }

}  // namespace

bool take_gauge_stitches(const PhrasePlace& at) {
  if (!starts_gauge(at)) return false;
  if (at.reader.said(StatementKind::gauge_stitches)) ++at.reader.mention;
  at.reader.say_list(StatementKind::gauge_stitches, at.first);
  return true;
}

bool take_gauge_rows(const PhrasePlace& at) {
  if (!starts_gauge(at)) return false;
  if (at.reader.said(StatementKind::gauge_rows)) ++at.reader.mention;
  at.reader.say_list(StatementKind::gauge_rows, at.first);
  say_worked(at);
  return true;
}

bool take_gauge_slashed(const PhrasePlace& at) {
  Reader& reader = at.reader;
  const auto values = reader.figures(at.first);
  if (!in_gauge(at) || !reader.list(at.first).slashed || values.size() != 2) return false;
  if (reader.said(StatementKind::gauge_stitches)) ++reader.mention;
  constexpr std::pair<StatementKind, PrintedUnit> parts[] = {
      {StatementKind::gauge_stitches, PrintedUnit::stitch}, {StatementKind::gauge_rows, PrintedUnit::row}};
  for (std::size_t k = 0; k < 2; ++k) {
    Statement& statement = reader.say(parts[k].first, at.first, at.last);
    statement.values = {values[k]};
    statement.unit = parts[k].second;
    statement.span = values[k].span;
  }
  return true;
}

bool take_gauge_over(const PhrasePlace& at) {
  if (!in_gauge(at) || at.reader.list(at.last - 1).cells > 2) return false;
  if (at.last - at.first > 1) {  // "10 x 10 cm"
    Statement& statement = at.reader.say_list(StatementKind::gauge_over, at.first, at.last, at.last - 1);
    auto first = at.reader.figures(at.first);
    statement.values.insert(statement.values.begin(), first.begin(), first.end());
    return true;
  }
  at.reader.say_list(StatementKind::gauge_over, at.first);
  return true;
}

bool take_gauge_per_inch(const PhrasePlace& at) {
  const std::size_t word = at.last - 1;
  const PrintedUnit unit = at.reader.token(word).word->unit;
  if (!in_gauge(at) || list_shape(unit) != '3') return false;
  Statement& statement = at.reader.say(StatementKind::gauge_over, word, at.last);
  statement.unit = unit;
  statement.values = {{1.0, 0, statement.span, false}};
  at.reader.use(at.first, at.last);
  return true;
}

bool take_gauge_fabric(const PhrasePlace& at) {
  if (!in_gauge(at)) return false;
  at.reader.say(StatementKind::gauge_fabric, at.first, at.last).words = at.reader.words(at.first, at.last);
  return true;
}

bool take_gauge_state(const PhrasePlace& at) {
  if (!in_gauge(at)) return false;
  at.reader.say(StatementKind::gauge_state, at.first, at.last).words = at.reader.words(at.first, at.last);
  return true;
}

bool take_gauge_worked(const PhrasePlace& at) {
  if (!in_gauge(at)) return false;
  at.reader.say(StatementKind::gauge_worked, at.first, at.last).words = at.reader.value(at.first);
  return true;
}

bool take_band_gauge(const PhrasePlace& at) {
  if (at.reader.value(at.first) != "band") return false;
  at.reader.say_list(StatementKind::band_gauge, at.first, at.last, at.last - 1).yarn = at.reader.yarn;
  return true;
}

}  // namespace skeinproof
