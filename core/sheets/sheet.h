// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/base/enum_words.h"
#include "core/units/show.h"

namespace skeinproof {

// A sheet to hand over, free of layout: shown, printed or saved by whoever takes it. All text is plain UTF-8
// as typed, never escaped; figures are unrounded and round half up where they are shown.

// Who speaks: the designer's own words, what is worked out, or the ground a figure stands on (scale, label,
// house).
enum class Voice { designer, worked_out, ground };
template <>
struct EnumWords<Voice> {
  static constexpr auto rows = enum_rows<Voice>(
      {{Voice::designer, "designer"}, {Voice::worked_out, "worked-out"}, {Voice::ground, "ground"}});
};

struct Paragraph {
  Voice voice = Voice::worked_out;
  std::string text;
};

enum class Align { left, right };

// Words or a figure; a cell with neither is empty.
struct Cell {
  std::string text;
  std::optional<double> number;
  int decimals = 0;
  std::optional<double> bar;  // 0 to 1: a plain bar under the figure
  std::string remark;         // "tips over": read instead of the figure; files for machines keep the figure
  int indent = 0;             // steps of a tree
  bool strong = false;
  bool repeats = false;  // says the same as the cell above: not read again, kept in files for machines
};
Cell words(std::string text, int indent = 0);
Cell figure(std::optional<double> number, int decimals);  // an absent figure reads "–"
// What a reader sees of a cell.
std::string shown(const Cell& cell, const NumberStyle& style);

struct Column {
  std::string heading;
  Align align = Align::left;
  bool opens_group = false;  // a bracket of the size line opens here
};
struct Row {
  std::vector<Cell> cells;  // no more than columns; missing ones are empty
  bool opens_group = false;
};
struct Table {
  std::string title;
  std::vector<Column> columns;
  std::vector<Row> rows;
};

// Lines whose spaces stand for something, in runs; `mark` says what a run is, in words of letters and
// hyphens.
struct MarkedRun {
  std::string mark, text;
};
struct Lines {
  std::vector<std::vector<MarkedRun>> lines;
};

// Opens a numbered stretch of a sheet; what follows stands under it up to the next one.
struct Heading {
  std::string number, word, text;  // "Q1", "Stop", "MC, sizes 5 and 6"
};

// Boxes to tick with a pen, some with room to write behind them.
struct TickBox {
  std::string text;
  bool room = false;
};
struct Choices {
  std::vector<TickBox> choices;
};

using SheetPart = std::variant<Paragraph, Table, Lines, Heading, Choices>;

struct Sheet {
  std::string title, subtitle;
  std::string date;  // as it shall be printed; empty = none
  std::vector<SheetPart> parts;
  std::vector<std::string> foot_notes;
  NumberStyle numbers;
};

}  // namespace skeinproof
