// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <string_view>

#include "core/base/error.h"
#include "core/fabric/chart.h"

namespace skeinproof {

// Charts as plain text.
//
// A line is a round: "MMAMMA". Words parted by blanks are a round each ("MMMM AAAA MAMA"), but single
// characters parted by blanks, and the cells of a line with tabs, commas or semicolons, are the squares of
// one round. An empty cell, '.', '-', '_', a dash of any length, a middle dot, and a blank between quotation
// marks are no stitch. Round numbers set off at the start or the end of a line ("12 MMAM", "12: MMAM", "Round
// 12: MMAM", "MMAM 12") and lines that number the stitches are understood and left out. Empty lines do not
// count.
enum class RoundOrder {
  by_numbers,  // numbers that fall from line to line say that the last line is round 1; else the first is
  first_line_first,  // the first line is round 1
  last_line_first,   // the last line is round 1, as a chart is drawn
};
enum class StitchOne { right, left };      // where stitch 1 stands in the text
enum class Padding { none, left, right };  // where a narrower round gets its squares of no stitch, as drawn

struct ChartTextOptions {
  RoundOrder order = RoundOrder::by_numbers;
  StitchOne stitch_one = StitchOne::right;
  Padding padding =
      Padding::left;             // stitch 1 stays at the right; `none`: rounds of different width are refused
  bool words_are_rounds = true;  // false: words of one line are groups of squares of one round
};

// A chart without id and name; its colours stand in the order in which they appear and have no role yet.
// Fails, with line and column, at a character that is no symbol (wrong_format), a cell of more than one
// character (wrong_format), rounds of different width where nothing is padded (wrong_count), numbers out of
// order, more symbols or squares than a chart may have (out_of_range) and a text without a round
// (wrong_shape).
Expected<Chart> read_chart_text(std::string_view text, const ChartTextOptions& options = {});

// One round a line, '-' for no stitch; with the same options it reads back as the same rounds.
std::string chart_text(const Chart& chart, const ChartTextOptions& options = {});

}  // namespace skeinproof
