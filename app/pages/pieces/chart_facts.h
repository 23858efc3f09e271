// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <optional>
#include <vector>

#include "app/document/reader_style.h"
#include "core/fabric/census.h"
#include "core/pattern/pattern.h"

namespace skeinproof {

// What a chart says, as shown beside it, printed and copied.
struct ChartFacts {
  struct Colour {
    char symbol = 0;
    RoleId role;
    QString label;
    long worked = 0, passed = 0, entries = 0;
    std::optional<double> metres;  // a repeat; absent where the fabric says no loop length
    double share_of_stitches = 0;
    std::optional<double> share_of_yarn;
  };
  struct Touch {
    char first = 0, second = 0;
    QString words;  // "MC with CC1"
    long edges = 0;
    double share = 0;
    std::optional<double> lightness_difference;
  };
  std::vector<Colour> colours;  // in the chart's order; those without a stitch left out
  std::vector<Touch> touches;   // most edges first
  ChartCensus census;
  std::optional<Centimetres> loop, float_per_stitch, stitch_width;
  QString fabric;   // its name, empty where none is known
  QString missing;  // why there are no metres
};

// Loop and float are those of the fabric of the section that repeats the chart: `part` where it does, else
// the first.
FabricId fabric_of_chart(const Pattern& pattern, ChartId chart, std::uint32_t part);
ChartFacts chart_facts(const Pattern& pattern, const Chart& chart, const ChartCensus& census,
                       FabricId fabric);

// What a round holds: "B 11 sts, C 1 st", and its longest float in stitches and centimetres.
struct RoundFacts {
  QString held;
  QString note;     // "CC3 passes 11 stitches, a float of 4.2 cm; rounds 8 and 18."
  QString working;  // "1 × 1.56 + 11 × 0.40 = 5.96 cm of CC3 in one repeat of this round"
};
RoundFacts round_facts(const Pattern& pattern, const Chart& chart, const ChartFacts& facts, std::size_t round,
                       const ReaderStyle& reader);

// For babies a long float inside a small garment is a danger; empty for others.
QString float_caution(const Pattern& pattern, const ChartCensus& census);

// All of it as plain text, tab-separated tables.
QString chart_facts_text(const Pattern& pattern, const Chart& chart, const ChartFacts& facts,
                         const ReaderStyle& reader);

QString percent_text(double share, const ReaderStyle& reader, int decimals = 1);
// Metres or yards with three decimals, without the unit.
QString repeat_length_text(double metres, const ReaderStyle& reader);

}  // namespace skeinproof
