// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/read_roles.h"

#include <algorithm>

#include "core/base/text.h"
#include "core/manuscript/read_yarn.h"

namespace skeinproof {
namespace {

bool mark(char c) {
  return c == ':' || c == '-' || c == '=' || c == ',' || c == '(' || c == '\t' || c == '.' || c == ')';
}

bool shade_prefix(const Reader& reader, std::size_t i) {
  return reader.letter(i) == '#' || (reader.letter(i) == static_cast<char>(Sense::role_prefix));
}

void say_shade(Reader& reader, std::size_t first, std::size_t last) {
  Statement& statement = reader.say(StatementKind::shade_name, first, last);
  statement.words = reader.words(first, last);
  statement.subject = reader.role;
  statement.yarn = reader.yarn;
}

void say_number(Reader& reader, std::size_t first, std::size_t i) {
  Statement& statement = reader.say(StatementKind::shade_number, i, i + 1);
  statement.words = reader.words(i, i + 1);
  statement.subject = reader.role;
  statement.yarn = reader.yarn;
  reader.use(first, i + 1);
}

// "08", "#08", ", shade 08" behind a shade's name; gives the token behind it.
std::size_t take_number(Reader& reader, const Clause& clause, std::size_t i) {
  std::size_t at = i;
  bool prefixed = false;
  while (at < clause.last && at < i + 4 && (mark(reader.letter(at)) || shade_prefix(reader, at))) {
    prefixed = prefixed || shade_prefix(reader, at);
    ++at;
  }
  if (at != i && !prefixed) return i;
  if (at >= clause.last || reader.letter(at) != '0' || reader.list(at).cells != 1) return i;
  if (reader.letter(at + 1) == 'x') return i;
  say_number(reader, i, at);
  return at + 1;
}

// The longest name of a yarn read before with which these words begin: where it ends, or `first`.
std::size_t known_yarn_end(const Reader& reader, std::size_t first, std::size_t last) {
  for (std::size_t end = std::min(last, first + 6); end > first; --end)
    if (known_yarn(reader, reader.words(first, end)) >= 0) return end;
  return first;
}

// A composition or a put-up stands behind a name within a few tokens: it is a yarn.
bool yarn_follows(const Reader& reader, const Clause& clause, std::size_t i) {
  const std::size_t end = std::min(clause.last, i + 4);
  for (; i < end; ++i) {
    const char c = reader.letter(i);
    if (c == '5' || ((c == '1' || c == '2') && reader.list(i).cells == 1)) return true;
    if (c != '(' && c != ',' && c != ':' && c != '-' && c != '\n' && c != '\t' &&
        c != static_cast<char>(Sense::about) && c != static_cast<char>(Sense::per))
      return false;
  }
  return false;
}

// Yarn and shade behind a label: "Peat 08", "Oddmere Fieldspun in Peat", "Oddmere Fieldspun Peat 08".
void take_shade_behind(Reader& reader, const Clause& clause, std::size_t i) {
  std::size_t at = i;
  while (at < clause.last && at < i + 3 && (mark(reader.letter(at)) || shade_prefix(reader, at))) ++at;
  std::size_t last = name_end(reader, clause, at);
  if (last == at) {
    if (at > i && shade_prefix(reader, at - 1)) take_number(reader, clause, i);
    return;
  }
  const std::size_t yarn_end = known_yarn_end(reader, at, last);
  const bool in_shade =
      reader.letter(last) == static_cast<char>(Sense::in) && name_end(reader, clause, last + 1) > last + 1;
  if (yarn_end > at) {
    say_yarn(reader, at, yarn_end);
    at = yarn_end;
  } else if (in_shade) {
    say_yarn(reader, at, last);
    at = last;
  } else if (yarn_follows(reader, clause, last)) {
    return;
  }
  if (reader.letter(at) == static_cast<char>(Sense::in) || (at == yarn_end && reader.letter(at) == ',')) ++at;
  last = name_end(reader, clause, at);
  if (last > at) say_shade(reader, at, last);
  take_number(reader, clause, last);
}

bool take_shade_before(Reader& reader, const Clause& clause, std::size_t open) {
  std::size_t last = open;
  std::size_t number = last;
  if (last > clause.first && reader.letter(last - 1) == '0' && !reader.used[last - 1] &&
      reader.list(last - 1).cells == 1) {
    number = --last;
    while (last > clause.first && (shade_prefix(reader, last - 1) || reader.letter(last - 1) == ',' ||
                                   reader.letter(last - 1) == '.'))
      --last;
  }
  const std::size_t first = name_before(reader, clause, last);
  if (first == last) return false;
  say_shade(reader, first, last);
  if (number < open) say_number(reader, last, number);
  return true;
}

}  // namespace

void take_role(Reader& reader, const Clause& clause, std::size_t first, std::size_t last,
               std::size_t label_first, std::size_t label_last) {
  const bool behind_count = !reader.waiting.empty() && !reader.counted;
  if (!behind_count) ++reader.mention;
  const std::string label = reader.words(label_first, label_last);
  Statement& statement = reader.say(StatementKind::role, label_first, label_last);
  statement.words = label;
  statement.yarn = reader.yarn;
  reader.use(first, last);
  if (std::find(reader.roles.begin(), reader.roles.end(), label) == reader.roles.end())
    reader.roles.push_back(label);
  reader.role = label;
  reader.counted = behind_count;
  for (const std::size_t waiting : reader.waiting) reader.out.statements[waiting].subject = label;
  reader.waiting.clear();
  const bool bracketed =
      first > clause.first && reader.letter(first - 1) == '(' && reader.letter(last) == ')';
  if (bracketed && take_shade_before(reader, clause, first - 1)) return;
  take_shade_behind(reader, clause, last);
}

void take_count(Reader& reader, const Clause& clause, std::size_t first, std::size_t last) {
  static_cast<void>(clause);
  const bool total = reader.totals || reader.letter(last) == static_cast<char>(Sense::total);
  Statement& statement = reader.say_list(total ? StatementKind::total_count : StatementKind::count, first);
  if (statement.unit == PrintedUnit::none) statement.unit = PrintedUnit::skein;
  statement.all_sizes = statement.values.size() == 1 && reader.sizes != 1;
  if (total) return;
  statement.subject = reader.role;
  statement.yarn = reader.yarn;
  if (reader.role.empty()) reader.waiting.push_back(reader.out.statements.size() - 1);
  reader.counted = true;
  if (reader.role.empty()) reader.counted = false;
}

bool take_figures(Reader& reader, const Clause& clause, std::size_t i) {
  const FigureList& list = reader.list(i);
  if (reader.totals) {
    take_count(reader, clause, i, i + 1);
    return true;
  }
  if (list.cells == 1 && i > clause.first && shade_prefix(reader, i - 1) && !reader.role.empty()) {
    say_number(reader, i, i);
    return true;
  }
  if (reader.role.empty() && list.cells < 2) return false;
  if (reader.counted) return false;
  take_count(reader, clause, i, i + 1);
  return true;
}

bool take_name(Reader& reader, const Clause& clause, std::size_t i) {
  if (!reader.token(i).capital || reader.used[i]) return false;
  const std::size_t last = name_end(reader, clause, i);
  const std::size_t yarn_end = known_yarn_end(reader, i, last);
  if (yarn_end == i) return false;
  say_yarn(reader, i, yarn_end);
  return true;
}

}  // namespace skeinproof
