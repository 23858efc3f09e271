// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstddef>

#include "core/base/error.h"
#include "core/fabric/chart.h"

namespace skeinproof {

// Edits on a chart: each takes a chart and gives the edited one, all rounds equally wide. A symbol that the
// chart does not know yet joins its colours without a role. They fail (out_of_range) at a square outside the
// chart, a chart that would become too large, lose its last square or have too many symbols, and
// (wrong_format) at a character that is neither a symbol nor `no_stitch`.

// A square as stored: rounds from 0 with the first worked, stitches from 0 at the left as drawn.
struct Square {
  std::size_t round = 0;
  std::size_t stitch = 0;
  bool operator==(const Square&) const = default;
};

Expected<Chart> with_square(Chart chart, Square at, char symbol);
// Both corners belong to the rectangle, whichever way round they are given.
Expected<Chart> with_rectangle(Chart chart, Square corner, Square opposite, char symbol);
// Lays another chart over this one, its first round and left stitch at `at`; what stands over the edge is
// left out.
Expected<Chart> with_patch(Chart chart, Square at, const Chart& patch);
// Repeats the rectangle sideways over the whole width of its rounds.
Expected<Chart> with_repeated(Chart chart, Square corner, Square opposite);

// A round before a round, or on top where `before` is the number of rounds; likewise a column of stitches.
Expected<Chart> with_round(Chart chart, std::size_t before, char symbol);
Expected<Chart> with_column(Chart chart, std::size_t before, char symbol);
Expected<Chart> without_round(Chart chart, std::size_t round);
Expected<Chart> without_column(Chart chart, std::size_t stitch);
// Grows and shrinks at the left and at the top: stitch 1 and round 1 stay.
Expected<Chart> resized(Chart chart, std::size_t width, std::size_t rounds, char symbol);

Chart mirrored(Chart chart);     // left for right
Chart upside_down(Chart chart);  // first round for last
// Every square of one symbol becomes another; the colour of the old symbol leaves the chart, and its role
// goes with the new one where that has none yet.
Expected<Chart> with_symbol_replaced(Chart chart, char symbol, char by);

// The chart with the id, name, way of working and, by symbol, the roles of another: what a chart read again
// takes over from the one it replaces.
Chart in_place_of(Chart read, const Chart& old);

}  // namespace skeinproof
