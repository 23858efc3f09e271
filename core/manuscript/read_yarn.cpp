// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/read_yarn.h"

#include <algorithm>

#include "core/base/text.h"

namespace skeinproof {
namespace {

bool ends_fibre(const Reader& reader, std::size_t i) {
  const char c = reader.letter(i);
  return !reader.is_word(i) || c == static_cast<char>(Sense::also) || c == static_cast<char>(Sense::per) ||
         c == static_cast<char>(Sense::about) || c == static_cast<char>(Sense::role_label) ||
         c == static_cast<char>(Sense::role_words) || c == static_cast<char>(Sense::in) ||
         c == static_cast<char>(Sense::with);
}

}  // namespace

// Capitalised words that stand in one run before a token: where the run begins.
std::size_t name_before(const Reader& reader, const Clause& clause, std::size_t last) {
  std::size_t first = last;
  while (first > clause.first && reader.is_word(first - 1) && reader.token(first - 1).capital &&
         !reader.used[first - 1] && reader.letter(first - 1) != static_cast<char>(Sense::role_label) &&
         reader.letter(first - 1) != static_cast<char>(Sense::role_words))
    --first;
  while (first < last) {
    const char c = reader.letter(first);
    if (c != static_cast<char>(Sense::yarn_word) && c != static_cast<char>(Sense::with) &&
        c != static_cast<char>(Sense::per) && c != static_cast<char>(Sense::of))
      break;
    ++first;
  }
  return first;
}

std::size_t name_end(const Reader& reader, const Clause& clause, std::size_t first) {
  std::size_t last = first;
  while (last < clause.last && reader.is_word(last) && reader.token(last).capital && !reader.used[last] &&
         reader.letter(last) != static_cast<char>(Sense::role_label))
    ++last;
  return last;
}

int known_yarn(const Reader& reader, std::string_view name) {
  const std::string wanted = lower_ascii(name);
  for (std::size_t k = 0; k < reader.yarns.size(); ++k)
    if (!reader.yarns[k].empty() && lower_ascii(reader.yarns[k]) == wanted) return static_cast<int>(k);
  return -1;
}

void say_yarn(Reader& reader, std::size_t first, std::size_t last) {
  const std::string name = reader.words(first, last);
  reader.yarn = known_yarn(reader, name);
  if (reader.yarn < 0) {
    reader.yarn = static_cast<int>(reader.yarns.size());
    reader.yarns.push_back(name);
  }
  reader.yarn_found = true;
  Statement& statement = reader.say(StatementKind::yarn_name, first, last);
  statement.words = name;
  statement.yarn = reader.yarn;
}

// The yarn that a composition or a put-up at `i` speaks of: the one named before it in its clause, else the
// one at hand, else one without a name.
void find_yarn(Reader& reader, const Clause& clause, std::size_t i) {
  if (reader.yarn_found) return;
  reader.yarn_found = true;
  std::size_t last = i;
  while (last > clause.first && !reader.used[last - 1]) {
    const char c = reader.letter(last - 1);
    if (c != '(' && c != ',' && c != ':' && c != '-' && c != '=' && c != '\t' &&
        c != static_cast<char>(Sense::about) && c != static_cast<char>(Sense::per))
      break;
    --last;
  }
  const std::size_t first = name_before(reader, clause, last);
  if (first < last) {
    say_yarn(reader, first, last);
  } else if (reader.yarn < 0) {
    reader.yarn = static_cast<int>(reader.yarns.size());
    reader.yarns.emplace_back();
  }
}

void take_fibre(Reader& reader, const Clause& clause, std::size_t i) {
  std::size_t first = i + 1, last = first;
  while (last < clause.last && last < i + 6 && !ends_fibre(reader, last)) ++last;
  if (last == first) {  // "wool 75%"
    last = i;
    first = i;
    while (first > clause.first && first + 5 > i && !ends_fibre(reader, first - 1) &&
           !reader.used[first - 1] && (reader.token(first - 1).capital == reader.token(i - 1).capital))
      --first;
  }
  find_yarn(reader, clause, std::min(first, i));
  Statement& statement = reader.say_list(StatementKind::fibre, std::min(first, i), std::max(last, i + 1), i);
  statement.words = reader.words(first, last);
  statement.yarn = reader.yarn;
}

void take_put_up(Reader& reader, const Clause& clause, std::size_t first, std::size_t last) {
  find_yarn(reader, clause, first);
  for (std::size_t i = first; i < last; ++i) {
    const char c = reader.letter(i);
    if (c == '1' || c == '2')
      reader.say_list(c == '1' ? StatementKind::put_up_length : StatementKind::put_up_weight, i).yarn =
          reader.yarn;
    if (c == static_cast<char>(Sense::skein_word)) {
      Statement& statement = reader.say(StatementKind::put_up_word, i, i + 1);
      statement.words = reader.value(i);
      statement.yarn = reader.yarn;
    }
  }
  reader.use(first, last);
}

void take_description(Reader& reader, std::size_t first, std::size_t last, std::size_t word) {
  Statement& statement = reader.say(StatementKind::yarn_description, first, last);
  statement.qualifier = reader.value(word);
  statement.words = reader.words(first, last);
  const std::string lower = lower_ascii(statement.words);
  if (lower.ends_with(" weight")) {
    statement.words.resize(statement.words.size() - 7);
    statement.qualifier = "category";
  }
  statement.yarn = reader.yarn;
}

}  // namespace skeinproof
