// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/base/describe.h"
#include "core/base/id.h"
#include "core/base/shared.h"
#include "core/fabric/fabric.h"
#include "core/units/entered.h"

namespace skeinproof {

// The square of no stitch.
inline constexpr char no_stitch = '-';

// Which role a symbol of the chart stands for.
struct ChartColour {
  std::string symbol;  // one printable ASCII character other than '-' and space
  RoleId role;

  bool operator==(const ChartColour&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("symbol", self.symbol);
    visit("role", self.role);
  }
};

// The bounds of a chart: beyond them it is a picture of something else.
inline constexpr std::size_t most_chart_symbols = 12;
inline constexpr std::size_t most_chart_squares = 2000;  // a side

// Whether a character may stand for a colour: a printable ASCII character that is neither a blank, nor a mark
// of no stitch, nor punctuation that parts squares in a text: any letter, any figure and # * + = / \ | @ % &
// $ ! ? < > ^ ~
bool is_chart_symbol(char symbol);

// A colour chart. Rounds are stored first worked first; in a round the squares stand as drawn, left to right
// on the right side of the cloth, so that the last one is stitch 1; one ASCII character a square, '-' for no
// stitch. All rounds are equally wide. A repeat closes on itself unless it is worked flat.
struct Chart {
  ChartId id;
  std::string name;
  Worked worked = Worked::in_the_round;
  std::vector<ChartColour> colours;
  Shared<std::vector<std::string>> rounds;

  bool operator==(const Chart&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("id", self.id);
    visit("name", self.name);
    visit("worked", self.worked);
    visit("colours", self.colours);
    visit("rounds", self.rounds);
  }
};

// What one symbol does over the whole chart, or in one round, per repeat.
struct SymbolCount {
  long stitches = 0;  // worked in this colour
  long passed = 0;    // worked in another colour in rounds where this one is carried: used beside others
  long entries = 0;   // rounds that use the colour where the round before did not; the first round counts
  bool operator==(const SymbolCount&) const = default;
};

struct RoundCensus {
  long stitches = 0;                 // squares that are stitches
  std::map<char, long> stitches_of;  // by symbol
  // Longest run of stitches any carried colour passes: over the end of the repeat into the next one, but only
  // to the edge of the cloth when worked flat; and the colour that passes them.
  long longest_float = 0;
  char longest_float_symbol = 0;
  bool operator==(const RoundCensus&) const = default;
};

// Two colours that touch: neighbours in a round (closed over the repeat unless worked flat) and stitches
// above each other in consecutive rounds of as many stitches.
struct ColourEdge {
  char first = 0;  // first < second
  char second = 0;
  long edges = 0;
  bool operator==(const ColourEdge&) const = default;
};

struct ChartCensus {
  std::map<char, SymbolCount> symbols;
  std::vector<RoundCensus> rounds;
  std::vector<ColourEdge> edges;  // most first
  long stitches = 0;
  long neighbour_edges = 0;  // of all edges, those within a round
  long stacked_edges = 0;    // and those between rounds
  long longest_float = 0;
  std::vector<int> longest_float_rounds;  // from 1
  bool operator==(const ChartCensus&) const = default;
};

// Counts a chart; total, never fails (rounds of unequal width are counted as they are, rounds without a
// stitch are passed over). The time grows with the squares.
ChartCensus census(const Chart& chart);

}  // namespace skeinproof
