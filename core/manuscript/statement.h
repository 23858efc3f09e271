// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/base/enum_words.h"
#include "core/pattern/draft.h"

namespace skeinproof {

// Characters of a text: byte offsets from begin up to end.
struct TextSpan {
  std::size_t begin = 0;
  std::size_t end = 0;
  bool empty() const { return begin == end; }
  bool holds(const TextSpan& other) const { return begin <= other.begin && other.end <= end; }
  bool operator==(const TextSpan&) const = default;
};

// What a statement says. Each says one thing in one unit: "175 m / 191 yd per 50 g" is three.
enum class StatementKind {
  title,
  item,         // words: "pullover", "socks"
  wearer,       // words: "baby", "child", "adult"
  size_labels,  // one value a size
  measurement,  // subject "bust"; qualifier "finished", "to fit" or empty; one value a size
  ease,         // one value, or the least and the most
  sample_size,  // words: a size label
  sample_shades,
  sample_weight,  // subject: role or empty = all
  model_measure,
  yarn_name,
  fibre,  // percent in value 0 (absent where none is printed), words: the fibre as printed
  put_up_length,
  put_up_weight,
  put_up_word,       // words: "skein", "ball"
  yarn_description,  // qualifier: structure, twist, spinning, category, surface, colouring, treatment, other
  yarn_care,
  band_gauge,  // the yarn's own stitches, least and most
  withdrawn,   // words: "no longer made"
  number_of_colours,
  role,          // words: the label; qualifier: the yarn it is said to be in, where several
  shade_name,    // subject: role
  shade_number,  // subject: role
  strands,       // subject: role or yarn; how many held together
  count,         // subject: role; one value a size, unit skeins, grams, metres or yards
  length_note,   // subject: role; qualifier "at most", "about", "used"
  total_count,   // one value a size
  total_length,  // subject: role or empty; what the text equates with a count ("5 skeins / 875 m")
  gauge_stitches,
  gauge_rows,
  gauge_over,    // the stretch they are counted over
  gauge_fabric,  // words: "stocking stitch"
  gauge_state,   // words: "washed"
  gauge_worked,  // words: "rounds", "rows", "flat", "in the round"
  needle,        // subject: what it is for, or empty; unit mm, US, old UK or Japanese
  needle_type,   // words: "circular", "DPNs", "long loop"; subject as needle
  needle_length,
  notion,         // subject: "buttons"; one value a size
  legend_shade,   // subject: role; words: the shade named in the chart key
  legend_symbol,  // words: the symbol; subject: role or empty
  role_mention,   // subject: a role named in the instructions; words: the sentence
  shade_mention,  // subject: a shade named outside the block
  stitches,       // counts in the instructions, one value a size; qualifier "cast on", "underarm", …
  piece_heading,  // words: "Hood"
  care,           // care of the finished item
  extra,          // words: "pompom", "cord", "embroidery"
  caution,        // a caution printed in the text
  phrase,  // qualifier: "catch floats", "steek", "reinforce", "same lot", "drawstring", "inside the hood", …
};
template <>
struct EnumWords<StatementKind> {
  static constexpr auto rows = enum_rows<StatementKind>({
      {StatementKind::title, "title"},
      {StatementKind::item, "item"},
      {StatementKind::wearer, "wearer"},
      {StatementKind::size_labels, "sizes"},
      {StatementKind::measurement, "measurement"},
      {StatementKind::ease, "ease"},
      {StatementKind::sample_size, "size of the sample"},
      {StatementKind::sample_shades, "shades of the sample"},
      {StatementKind::sample_weight, "weight of the sample"},
      {StatementKind::model_measure, "measure of the model"},
      {StatementKind::yarn_name, "yarn"},
      {StatementKind::fibre, "fibre"},
      {StatementKind::put_up_length, "put-up length"},
      {StatementKind::put_up_weight, "put-up weight"},
      {StatementKind::put_up_word, "put-up word"},
      {StatementKind::yarn_description, "yarn description"},
      {StatementKind::yarn_care, "care of the yarn"},
      {StatementKind::band_gauge, "gauge on the band"},
      {StatementKind::withdrawn, "withdrawn"},
      {StatementKind::number_of_colours, "number of colours"},
      {StatementKind::role, "role"},
      {StatementKind::shade_name, "shade"},
      {StatementKind::shade_number, "shade number"},
      {StatementKind::strands, "strands"},
      {StatementKind::count, "count"},
      {StatementKind::length_note, "length note"},
      {StatementKind::total_count, "total"},
      {StatementKind::total_length, "total length"},
      {StatementKind::gauge_stitches, "stitch gauge"},
      {StatementKind::gauge_rows, "row gauge"},
      {StatementKind::gauge_over, "gauge counted over"},
      {StatementKind::gauge_fabric, "fabric of the gauge"},
      {StatementKind::gauge_state, "state of the gauge"},
      {StatementKind::gauge_worked, "gauge flat or round"},
      {StatementKind::needle, "needle"},
      {StatementKind::needle_type, "needle type"},
      {StatementKind::needle_length, "needle length"},
      {StatementKind::notion, "notion"},
      {StatementKind::legend_shade, "shade in the chart key"},
      {StatementKind::legend_symbol, "symbol in the chart key"},
      {StatementKind::role_mention, "role in the instructions"},
      {StatementKind::shade_mention, "shade in the instructions"},
      {StatementKind::stitches, "stitch count"},
      {StatementKind::piece_heading, "heading of a piece"},
      {StatementKind::care, "care"},
      {StatementKind::extra, "extra"},
      {StatementKind::caution, "caution"},
      {StatementKind::phrase, "phrase"},
  });
};

enum class PrintedUnit {
  none,
  metre,
  yard,
  gram,
  ounce,
  kilogram,
  pound,
  centimetre,
  inch,
  millimetre,
  needle_us,
  needle_uk,
  needle_japan,
  percent,
  skein,
  stitch,
  row,
  piece,
};
template <>
struct EnumWords<PrintedUnit> {
  static constexpr auto rows = enum_rows<PrintedUnit>({
      {PrintedUnit::none, ""},
      {PrintedUnit::metre, "m"},
      {PrintedUnit::yard, "yd"},
      {PrintedUnit::gram, "g"},
      {PrintedUnit::ounce, "oz"},
      {PrintedUnit::kilogram, "kg"},
      {PrintedUnit::pound, "lb"},
      {PrintedUnit::centimetre, "cm"},
      {PrintedUnit::inch, "in"},
      {PrintedUnit::millimetre, "mm"},
      {PrintedUnit::needle_us, "US"},
      {PrintedUnit::needle_uk, "UK"},
      {PrintedUnit::needle_japan, "JP"},
      {PrintedUnit::percent, "%"},
      {PrintedUnit::skein, "skeins"},
      {PrintedUnit::stitch, "sts"},
      {PrintedUnit::row, "rows"},
      {PrintedUnit::piece, "pieces"},
  });
};

// One figure of a statement. `number` is absent for a dash or a word ("S"); `half_step` is half of its last
// digit or of its fraction's denominator: 0.5 for "5", 0.05 for "81.5", 0.125 for "35¾".
struct PrintedValue {
  std::optional<double> number;
  double half_step = 0;
  TextSpan span;             // the figure alone
  bool opens_group = false;  // a bracket opens before it
};

// One thing the text says, and the exact characters it came from. May be malformed: eight values for nine
// sizes, fibres that add to 105 %. Never corrected.
struct Statement {
  StatementKind kind = StatementKind::phrase;
  TextPart part = TextPart::block;
  std::string subject;
  std::string qualifier;
  std::string words;
  std::vector<PrintedValue> values;
  PrintedUnit unit = PrintedUnit::none;
  bool all_sizes = false;  // one value that is said of every size
  TextSpan span;           // from its first character to its last
  // Statements of one breath share a number: the metres, yards, grams and ounces of one put-up, the
  // millimetres and the US name of one needle, the two units of one list, a role with its shade and count.
  int mention = 0;
  int yarn = -1;  // index of the yarn it speaks of, in the order they are named; -1 = none
};

// A stretch of the text that was not understood, or that the user told to be nothing.
struct NotUnderstood {
  TextSpan span;
  bool told_nothing = false;
};

struct PartRead {
  TextPart part = TextPart::block;
  PartExtent extent = PartExtent::absent;
  std::string because;  // "headings", "told", "pasted text counts as a block"
};

// A text read: statements in the order of their first characters.
struct Reading {
  std::vector<Statement> statements;
  std::vector<NotUnderstood> not_understood;
  std::vector<PartRead> parts;  // one for each TextPart, in its order

  PartExtent extent(TextPart part) const { return parts.at(static_cast<std::size_t>(part)).extent; }
};

// Of a text in another language, "The text is in German …"; else empty. The parts of such a text are there in
// part only, because "the text is in German".
std::string words_on_language(const Reading& reading);

// The characters of a span; empty where it lies outside the text.
std::string_view words_at(std::string_view text, const TextSpan& span);

}  // namespace skeinproof
