// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <map>
#include <optional>
#include <vector>

#include "core/fabric/chart.h"
#include "core/units/quantity.h"

namespace skeinproof {

// What follows from the census of a chart (`census` itself is declared beside the chart).

// Yarn of every symbol for one repeat: stitches x loop + passed stitches x float. `loop` is the yarn in one
// stitch, `float_per_stitch` the yarn over one passed stitch.
std::map<char, Metres> chart_metres(const ChartCensus& census, Centimetres loop,
                                    Centimetres float_per_stitch);

// One symbol's part of the chart, 0 to 1: of its stitches, and of its yarn with the floats. A colour worked
// seldom takes more of the yarn than of the stitches.
struct ColourShare {
  char symbol = 0;
  double of_stitches = 0;
  double of_yarn = 0;
  bool operator==(const ColourShare&) const = default;
};
// In symbol order; shares of a chart without stitches are 0.
std::vector<ColourShare> colour_shares(const ChartCensus& census, Centimetres loop,
                                       Centimetres float_per_stitch);

// Where two colours touch and how well they part: the share of all colour edges (0 to 1) and the difference
// of their CIE lightness L*, absent where one of them is not known.
struct ColourContrast {
  ColourEdge edge;
  double share = 0;
  std::optional<double> lightness_difference;
  bool operator==(const ColourContrast&) const = default;
};
// In the order of `census.edges`: most edges first.
std::vector<ColourContrast> colour_contrasts(const ChartCensus& census,
                                             const std::map<char, double>& lightness);

}  // namespace skeinproof
