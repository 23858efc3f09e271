// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/need/assessment.h"

namespace skeinproof {

// How far a length of yarn goes, in the words of the pattern. Everything here is knitted length alone: no
// swatch and no allowance.

// A step of the work in the order it is knitted: a round (or a row), an edge, or a section whose stitches are
// typed as one sum. `round` counts from 1 in its section, which for a chart is the round of the chart; 0 for
// an edge and for a typed sum.
struct WorkStep {
  PieceId piece;
  SectionId section;
  EdgeId edge;
  int copy = 1;
  int copies = 1;
  int round = 0;
  int rounds = 0;
  bool in_chart = false;
  Metres needs;
};

// The steps of one colour in one size in the order of the pieces given, else in that of the pattern; in a
// piece its cast-on, its sections, then its other edges, one copy after another. They add up to the knitted
// need of these pieces, joins of skeins left out. Fails where the size, the colour or a piece is not in the
// pattern (unknown_name), where a piece is given twice (wrong_count) and where the need is not known by
// stitches (wrong_shape).
Expected<std::vector<WorkStep>> work_steps(const Pattern& pattern, RoleId role, SizeId size,
                                           const std::vector<PieceId>& order = {});

// "Sleeves 1 of 2, plain, round 40", "Yoke, chart round 36".
std::string work_step_words(const Pattern& pattern, const WorkStep& step);

// A plain section of that colour alone that could be shortened so that the yarn lasts.
struct TurnBack {
  PieceId piece;
  SectionId section;
  int copies = 1;
  int rounds_fewer = 0;                // in each copy
  int after_round = 0;                 // of the first copy: the last round after which that still works
  std::optional<Centimetres> shorter;  // where the fabric has a row gauge
  Metres saves;                        // over all copies
  std::string words;                   // "10 rounds (2.9 cm) fewer in Body, plain: decide after round 90"
};

struct RunOut {
  Metres on_hand, needs;
  Metres spare;  // on hand - needs
  bool lasts() const { return !fails_in.has_value(); }
  std::optional<WorkStep> fails_in;  // the first step that cannot be finished
  Metres left_before;                // what is left as that step begins
  std::string where;                 // "Yoke, chart round 36"; empty where it lasts
  std::string words;                 // "Yoke, chart round 36: 2.1 m left, needs 3.0 m"
  std::vector<TurnBack> turn_backs;  // in the order of the work; the last is the last place to turn back
};
Expected<RunOut> run_out(const Pattern& pattern, RoleId role, SizeId size, Metres on_hand,
                         const std::vector<PieceId>& order = {}, const NumberStyle& style = {});

// The same over steps that are at hand, which may be another knitter's own.
RunOut run_out(const Pattern& pattern, RoleId role, const std::vector<WorkStep>& steps, Metres on_hand,
               const NumberStyle& style = {});

// Whole rounds that a weight still gives: floor(grams x density x 100 / (stitches x loop)). Fails
// (out_of_range) where one of them is not above 0; a weight of 0 gives none.
Expected<int> rounds_left(Grams weight, MetresPerGram density, double stitches, Centimetres loop);

// Metres on hand of a role.
struct OnHandLength {
  RoleId role;
  Metres length;
};

// The last size in pattern order for which every given colour has its need in that layer; absent where there
// is none. A size that is not known counts as not covered.
std::optional<SizeId> largest_size(const Pattern& pattern, const std::vector<OnHandLength>& on_hand,
                                   Layer layer = Layer::planned);

// The largest whole number of repeats of a chart section for which every given colour lasts, all else in that
// size being as it is: a scarf, a border, a blanket. Fails where the section is no chart or has no repeats in
// that size.
struct LargestRepeats {
  int repeats = 0;
  RoleId held_back_by;  // the colour that would not do one more
};
Expected<LargestRepeats> largest_repeats(const Pattern& pattern, SectionId section, SizeId size,
                                         const std::vector<OnHandLength>& on_hand);

// A shape that grows evenly from a first row: a triangle from its point, a shawl from its neck. Its yarn goes
// with the square of the rows, so a fraction q of it is gone at sqrt(q) of the rows of a triangle (an exact
// sum of an arithmetic series; geometry, no source needed).
double share_of_rows_at(double share_of_yarn);
// Whole rows that a length gives: first_row stitches, then `more_a_row` more in each. Fails (out_of_range)
// where the stitches or the loop are not above 0, or where the shape would shrink.
Expected<int> rows_of_growing_shape(Metres length, double first_row, double more_a_row, Centimetres loop);

}  // namespace skeinproof
