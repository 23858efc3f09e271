// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/read_parts.h"

#include <algorithm>
#include <iterator>

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
    {Sense::schematic_word, Topic::sizes, TextPart::schematic},
    {Sense::care_heading, Topic::care, TextPart::block},
};

// A point that ends a word, not a sentence.
bool abbreviation(const Reader& reader, std::size_t dot) {
  if (dot == 0 || !reader.token(dot).glued) return false;
  const Token& before = reader.token(dot - 1);
  const char next = reader.letter(dot + 1);
  if (next == '\n' || next == '\0') return false;
  const bool capital_next = reader.capital(dot + 1);
  if (reader.token(dot + 1).glued && (reader.is_list(dot + 1) || reader.is_word(dot + 1))) return true;
  if (before.word == nullptr) return false;
  if (before.word->sense == Sense::role_prefix && reader.is_list(dot + 1)) return true;  // "Col. 12"
  const bool about = before.word->sense == Sense::about || before.word->value == "number";
  return about ||
         ((before.word->sense == Sense::at_most || before.word->unit != PrintedUnit::none) && !capital_next);
}

bool starts_line(const Reader& reader, std::size_t i) {
  while (i > 0 && (reader.letter(i - 1) == gap_shape || reader.letter(i - 1) == '*')) --i;
  return i == 0 || reader.letter(i - 1) == '\n';
}

// The heading a clause begins with.
const Heading* heading_at(const Reader& reader, std::size_t first) {
  constexpr std::string_view marks = "*#-\t(";
  while (first < reader.letters.size() && marks.find(reader.letter(first)) != std::string_view::npos) ++first;
  const char next = reader.letter(first + 1);
  const bool capital = reader.capital(first);
  const bool small = starts_line(reader, first) &&
                     (next == ':' || next == '-' || next == '\n' || reader.is_list(first + 1) ||
                      reader.has(first + 1, Sense::needle_system) || reader.is(first + 1, "is") ||
                      reader.is(first + 1, "are"));
  if (!reader.is_word(first) || !(capital || small)) return nullptr;
  for (const Heading& row : heading_rows) {
    if (!reader.has(first, row.sense)) continue;
    if (reader.value(first) == "band") return nullptr;
    const bool letter = next == 'W' && reader.token(first + 1).end - reader.token(first + 1).begin == 1;
    if (row.sense == Sense::yarn_word && letter) return nullptr;  // "Yarn A" is a role
    if (row.sense == Sense::chart_word && (letter || !(next == ':' || next == '\n' || next == '"')))
      return nullptr;
    if (row.sense == Sense::care_heading && next != ':' && next != '\n') return nullptr;
    return &row;
  }
  return nullptr;
}

// A line that says nothing but the name of a piece.
bool is_piece_heading(const Reader& reader, std::size_t first, std::size_t last) {
  if (first == last || last - first > 4 || !starts_line(reader, first) || !reader.capital(first))
    return false;
  if (reader.letter(last) != '\n') return false;
  bool piece = false;
  for (std::size_t i = first; i < last; ++i) {
    if (!reader.is_word(i)) return false;
    piece =
        piece || reader.has(i, Sense::piece) || reader.has(i, Sense::measure) || reader.has(i, Sense::item);
  }
  return piece;
}

constexpr std::size_t looked_at = 400;  // tokens of a clause in which its topic shows

bool has(const Reader& reader, const Clause& clause, std::string_view letters) {
  const std::size_t end = std::min(clause.last, clause.first + looked_at);
  return std::string_view(reader.letters).substr(clause.first, end - clause.first).find_first_of(letters) !=
         std::string_view::npos;
}
bool is_put_up(const Reader& reader, const Clause& clause) {
  return has(reader, clause, "5") || (has(reader, clause, "1") && has(reader, clause, "2"));
}

// Whether a clause tells what to do: "Cast on 52 sts", "With CC, work ...".
bool instructs(const Reader& reader, const Clause& clause) {
  std::size_t first = clause.first;
  for (; first < clause.last && !reader.is_word(first); ++first)
    if (reader.letter(first) == '6') return false;  // "5 balls, worked with two strands"
  constexpr Sense begins[] = {Sense::sentence_verb, Sense::extra, Sense::cast_on};
  if (std::any_of(std::begin(begins), std::end(begins),
                  [&](Sense sense) { return reader.has(first, sense); }))
    return true;
  if (reader.has(first, Sense::phrase) && reader.value(first) != "same lot") return true;
  if (reader.has(first, Sense::with) && reader.capital(first) && !is_put_up(reader, clause)) return true;
  return has(reader, clause, "n") && !is_put_up(reader, clause);
}

Topic topic_of(const Reader& reader, const Clause& clause, Topic section) {
  if (section == Topic::legend || section == Topic::chart) return section;
  std::size_t first = clause.first;
  while (first < clause.last && !reader.is_word(first) && !reader.is_list(first)) ++first;
  if (reader.has(first, Sense::care)) return Topic::care;
  if (reader.has(first, Sense::caution)) return Topic::text;
  if (section == Topic::text) return section;
  if (clause.headed) return section;
  if (instructs(reader, clause)) return Topic::text;
  if (is_put_up(reader, clause)) return Topic::block;
  if (section == Topic::notions && has(reader, clause, "46R7")) return Topic::none;
  return section;
}

// "Peat; 1, 1, 2 balls", "1 ball; at most 70 m", an indented line "needs 240 m": said of the role before it.
bool counts_on(const Reader& reader, const Clause& clause, bool behind_semicolon) {
  const bool indented = reader.letter(clause.first) == gap_shape;
  const std::size_t i = indented ? clause.first + 1 : clause.first;
  const bool noted = reader.has(i, Sense::about) || reader.has(i, Sense::at_most) ||
                     reader.has(i, Sense::used) || reader.has(i, Sense::all_sizes);
  if (!behind_semicolon) return indented && noted;
  return noted || reader.letter(i) == '0' || reader.letter(i) == '1' || reader.letter(i) == '2' ||
         reader.letter(i) == '6';
}

// A line that ends within a bracket goes on in the next one, where the bracket closes there.
bool goes_on(const Reader& reader, std::size_t first, std::size_t line_end) {
  if (line_end > first + looked_at) return false;
  for (std::size_t k = line_end + 1; k < reader.letters.size() && k < line_end + 60; ++k) {
    if (reader.letter(k) == ')') return true;
    if (reader.letter(k) == '\n' || reader.letter(k) == '(') return false;
  }
  return false;
}

}  // namespace

std::vector<Clause> read_clauses(Reader& reader, Headings& headings) {
  std::vector<Clause> clauses;
  Topic section = Topic::none;
  bool quoted = false, schematic = false;
  char before = '\n';  // what ended the clause before
  const std::size_t count = reader.letters.size();
  for (std::size_t i = 0; i < count;) {
    Clause clause;
    clause.first = i;
    const Heading* heading = quoted ? nullptr : heading_at(reader, i);
    const bool may_quote =
        heading != nullptr &&
        (heading->topic == Topic::text || heading->topic == Topic::legend || heading->topic == Topic::chart);
    char end = '\0';
    bool opened = false;
    int depth = 0;
    for (; i < count; ++i) {
      end = reader.letter(i);
      if (end == '(') ++depth;
      if (end == ')') --depth;
      if (end == '\n' &&
          !(depth > 0 && reader.letter(i + 1) != '\n' && i + 1 < count && goes_on(reader, clause.first, i)))
        break;
      if (end == ';' && depth <= 0) break;
      if (end == '.' && depth <= 0 && !abbreviation(reader, i)) break;
      if (end == '"' && (quoted || (may_quote && i <= clause.first + 4))) {
        opened = !quoted;
        break;
      }
    }
    clause.last = i;
    if (heading != nullptr) {
      section = heading->topic;
      clause.headed = true;
      const auto part = static_cast<std::size_t>(heading->part);
      const bool of_part = heading->topic != Topic::notions && heading->topic != Topic::care;
      if (of_part) (opened ? headings.quoted : headings.whole)[part] = true;
      schematic = heading->part == TextPart::schematic;
    }
    if (!quoted && heading == nullptr && is_piece_heading(reader, clause.first, clause.last) &&
        !clauses.empty()) {
      ++reader.mention;
      reader.say(StatementKind::piece_heading, clause.first, clause.last).words =
          reader.words(clause.first, clause.last);
      section = Topic::text;
      headings.whole[static_cast<std::size_t>(TextPart::text)] = true;
    }
    clause.schematic = schematic;
    clause.goes_on = heading == nullptr && counts_on(reader, clause, before == ';');
    before = end;
    clause.topic = topic_of(reader, clause, section);
    // A yarn ends the part before it, and its colours follow.
    if (clause.topic == Topic::block) section = Topic::block;
    if (clause.last > clause.first) clauses.push_back(clause);
    if (end == '"') {
      if (quoted) section = Topic::none;
      quoted = opened;
    }
    ++i;
  }
  return clauses;
}

void read_parts(Reader& reader, const Headings& headings, const std::vector<PartTold>& told) {
  std::array<bool, text_parts> stated{};
  for (const Statement& statement : reader.out.statements)
    stated[static_cast<std::size_t>(statement.part)] = true;
  for (std::size_t k = 0; k < text_parts; ++k) {
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
    if (!reader.other_language.empty() && read.extent == PartExtent::whole) {
      read.extent = PartExtent::quoted_in_part;
      read.because = "the text is in " + std::string(reader.other_language);
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
