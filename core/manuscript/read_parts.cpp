// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/read_parts.h"

#include <algorithm>

namespace skeinproof {
namespace {

struct Heading {
  Sense sense;
  Topic topic;
  TextPart part;
};
constexpr Heading heading_rows[] = {
    {Sense::size_word, Topic::sizes, TextPart::sizes},
    {Sense::measures_word, Topic::sizes, TextPart::sizes},
    {Sense::yarn_word, Topic::block, TextPart::block},
    {Sense::gauge_word, Topic::gauge, TextPart::gauge},
    {Sense::needle_word, Topic::needles, TextPart::needles},
    {Sense::notions_word, Topic::notions, TextPart::block},
    {Sense::text_word, Topic::text, TextPart::text},
    {Sense::key_word, Topic::legend, TextPart::legend},
    {Sense::chart_word, Topic::chart, TextPart::charts},
    {Sense::schematic_word, Topic::schematic, TextPart::schematic},
    {Sense::care_heading, Topic::care, TextPart::block},
};

bool abbreviation(const Reader& reader, std::size_t dot) {
  if (dot == 0 || !reader.token(dot).glued) return false;
  const Token& before = reader.token(dot - 1);
  const char next = reader.letter(dot + 1);
  if (next == '\n' || next == '\0') return false;
  const bool capital_next = reader.is_word(dot + 1) && reader.token(dot + 1).capital;
  if (reader.is_list(dot + 1) && reader.token(dot + 1).glued) return true;
  if (before.word == nullptr) return false;
  const bool shortened = before.word->sense == Sense::about || before.word->sense == Sense::at_most ||
                         before.word->value == "number" || before.word->unit != PrintedUnit::none;
  return shortened && (!capital_next || before.word->sense == Sense::about);
}

// The heading a clause begins with, where a word of one stands there as a heading.
const Heading* heading_at(const Reader& reader, std::size_t first, std::size_t last) {
  while (first < last &&
         (reader.letter(first) == '*' || reader.letter(first) == '#' || reader.letter(first) == '-'))
    ++first;
  if (first >= last || !reader.token(first).capital) return nullptr;
  for (const Heading& row : heading_rows) {
    if (reader.letter(first) != static_cast<char>(row.sense)) continue;
    if (row.sense == Sense::yarn_word && reader.letter(first + 1) == 'W' &&
        reader.token(first + 1).end - reader.token(first + 1).begin == 1)
      return nullptr;  // "Yarn A" is a role
    return &row;
  }
  return nullptr;
}

bool has(const Reader& reader, const Clause& clause, std::string_view letters, std::size_t within = 400) {
  const std::size_t end = std::min(clause.last, clause.first + within);
  return std::string_view(reader.letters).substr(clause.first, end - clause.first).find_first_of(letters) !=
         std::string_view::npos;
}
// Stitches counted over a stretch.
bool is_gauge(const Reader& reader, const Clause& clause) {
  for (std::size_t i = clause.first; i < clause.last; ++i) {
    if (reader.letter(i) != '7' && reader.letter(i) != '8') continue;
    bool joined = false;
    for (std::size_t k = i + 1; k < clause.last && k < i + 8; ++k) {
      const char c = reader.letter(k);
      joined = joined || c == '=' || c == 'V' || c == 'P' || c == 'd';
      if (joined && (c == '3' || (c == 'u' || c == 'i'))) return true;
    }
  }
  return false;
}
bool is_put_up(const Reader& reader, const Clause& clause) {
  return has(reader, clause, "5") || (has(reader, clause, "1") && has(reader, clause, "2"));
}
bool starts_with(const Reader& reader, const Clause& clause, Sense sense, std::size_t within) {
  for (std::size_t i = clause.first; i < clause.last && i < clause.first + within; ++i)
    if (reader.letter(i) == static_cast<char>(sense)) return true;
  return false;
}

Topic topic_of(const Reader& reader, const Clause& clause, Topic section, bool headed) {
  if (section == Topic::text || section == Topic::legend || section == Topic::chart) return section;
  if (starts_with(reader, clause, Sense::shown, 4) || starts_with(reader, clause, Sense::model, 2))
    return Topic::sample;
  if (headed) return section;
  if (is_put_up(reader, clause)) return Topic::block;
  if (is_gauge(reader, clause)) return Topic::gauge;
  if (section == Topic::gauge || section == Topic::needles || section == Topic::notions) {
    if (section != Topic::needles || !has(reader, clause, "6R")) return section;
  }
  if (has(reader, clause, "4Q")) return Topic::needles;
  if (has(reader, clause, "6Rr")) return Topic::block;
  if (has(reader, clause, "3") && has(reader, clause, "BFE")) return Topic::sizes;
  if (starts_with(reader, clause, Sense::total, 2)) return Topic::block;
  if (has(reader, clause, "O") && section == Topic::none) return Topic::notions;
  return section == Topic::none ? Topic::block : section;
}

}  // namespace

std::vector<Clause> read_clauses(const Reader& reader, Headings& headings) {
  std::vector<Clause> clauses;
  Topic section = Topic::none, outer = Topic::none;
  bool quoted = false;
  const std::size_t count = reader.letters.size();
  for (std::size_t i = 0; i < count;) {
    Clause clause;
    clause.first = i;
    clause.quoted = quoted;
    const Heading* heading = quoted ? nullptr : heading_at(reader, i, count);
    char end = '\0';
    bool opened = false;
    for (; i < count; ++i) {
      end = reader.letter(i);
      if (end == '\n' || end == ';') break;
      if (end == '.' && !abbreviation(reader, i)) break;
      if (end == '"') {
        // A quotation behind a heading is a part quoted; any other is passed over.
        const bool behind = heading != nullptr && !quoted && i <= clause.first + 3;
        if (behind || quoted) {
          opened = behind;
          break;
        }
      }
    }
    clause.last = i;
    if (heading != nullptr) {
      section = heading->topic;
      const auto part = static_cast<std::size_t>(heading->part);
      headings.said[part] = true;
      (opened ? headings.quoted : headings.whole)[part] = true;
      if (heading->topic == Topic::notions || heading->topic == Topic::care) headings.whole[part] = false;
    }
    clause.topic = topic_of(reader, clause, section, heading != nullptr);
    if (clause.last > clause.first) clauses.push_back(clause);
    if (end == '"') {
      if (opened) {
        quoted = true;
        outer = Topic::none;
      } else if (quoted) {
        quoted = false;
        section = outer;
      }
    }
    ++i;
  }
  return clauses;
}

void read_parts(Reader& reader, const Headings& headings, const std::vector<PartTold>& told) {
  std::array<bool, 8> stated{};
  for (const Statement& statement : reader.out.statements)
    stated[static_cast<std::size_t>(statement.part)] = true;
  for (std::size_t k = 0; k < 8; ++k) {
    PartRead read;
    read.part = static_cast<TextPart>(k);
    const bool by_statement =
        read.part == TextPart::sizes || read.part == TextPart::gauge || read.part == TextPart::needles;
    if (headings.whole[k]) {
      read.extent = PartExtent::whole;
      read.because = "heading";
    } else if (headings.quoted[k]) {
      read.extent = PartExtent::quoted_in_part;
      read.because = "quotation";
    } else if (by_statement && stated[k]) {
      read.extent = PartExtent::whole;
      read.because = "its own statements";
    } else if (read.part == TextPart::block && !reader.items.tokens.empty()) {
      read.extent = PartExtent::whole;
      read.because = "pasted text counts as a block";
    } else if (stated[k]) {
      read.extent = PartExtent::quoted_in_part;
      read.because = "its own statements";
    }
    for (const PartTold& word : told)
      if (word.part == read.part) {
        read.extent = word.extent;
        read.because = "told";
      }
    reader.out.parts.push_back(read);
  }
}

}  // namespace skeinproof
