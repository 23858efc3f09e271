// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/need/assessment.h"

namespace skeinproof {

// Changes on the fly: what a knitter or a designer does differently from the pattern as it stands, and what
// that does to every colour. Nothing here touches the pattern; a change becomes part of it only by `adopt`.

// A piece longer, or with a length below 0 shorter, by whole rows: length x rows a centimetre, rounded half
// up.
struct LongerPiece {
  PieceId piece;
  Centimetres by;
  LongerWhere where = LongerWhere::spread;
  SectionId section;  // none: the section of the piece with the most rows worked at a gauge
};

// Rounds more, or below 0 fewer. In a section with widths they go to its longest run. In a chart the given
// round (from 1) is worked so many times more, or rounds from it on are left out; without a round, `role` is
// worked alone that many rounds behind the last round that uses it.
struct ExtraRounds {
  SectionId section;
  int rounds = 0;
  std::optional<int> chart_round;
  RoleId role;
};

// The knitter's own gauge in one fabric; the others follow in proportion. With the counts kept the cloth
// changes its size and N' = N sqrt(S0/S1); with counts chosen again for the same size N' = N sqrt(S1/S0): the
// sign turns round, so it must be said which.
struct OtherGauge {
  FabricId fabric;
  double stitches = 0;
  double rows = 0;
  Centimetres over = centimetres(10);
  CountsAre counts = CountsAre::not_said;
};

// Knitted in another size of the pattern; changes behind it act on that size.
struct OtherSize {
  SizeId size;
};

// A size between two: stitches and rows go apart and are snapped, widths to the multiple that all sizes keep
// and repeats to whole ones, and only then multiplied. `share` is the way from one to the other, 0 to 1.
struct BetweenSizes {
  SizeId from, to;
  double share = 0.5;
};

struct PieceLeftOut {
  PieceId piece;
};

// So many copies more of a piece that is there.
struct PieceAgain {
  PieceId piece;
  int copies = 1;
};

// Ids inside are given anew; its lists follow the sizes of the pattern.
struct PieceAdded {
  Piece piece;
};

// A piece, a section or an edge in another colour, or in another yarn, which then counts as a role of its
// own. Stitches and edges go; ends stay, and so does the swatch.
struct GivenTo {
  std::uint32_t part = 0;
  RoleId from;  // the colour that is given away; none: all of the part, which for a chart is refused
  RoleId to;    // or
  YarnId yarn;
};

using Change = std::variant<LongerPiece, ExtraRounds, OtherGauge, OtherSize, BetweenSizes, PieceLeftOut,
                            PieceAgain, PieceAdded, GivenTo>;

// One colour before and after. All lengths as in SizeNeed; fill = planned / skein.
struct RoleChange {
  RoleId role;
  std::string label;
  SizeNeed before;  // not known where the role is new
  SizeNeed after;
  bool known() const { return after.known; }
  Metres knitted_more;  // after - before; 0 where one of them is not known
  Metres planned_more;
  int skeins_more = 0;
  bool crosses_step = false;          // the count of skeins changes
  std::optional<Metres> beyond_step;  // where it rises: by how much the last skein is needed
};

struct WhatIf {
  std::string size;               // label of the size that came out
  std::vector<RoleChange> roles;  // in the order of the pattern, new ones last
  std::vector<std::string>
      notes;  // one or more lines for each change: what was done in rows, stitches, rounds
  std::optional<int> total_skeins_before, total_skeins_after;
};

// The changes one after the other on a copy. Samples keep saying what they said of the garment as it was
// weighed. Fails at a part, size or colour that the pattern has not (unknown_name), where rows are asked of a
// fabric without a row gauge or of a section without widths, or where it is not said which counts
// (wrong_shape), and where less than nothing would be left or a gauge, a share or a number of rounds is
// impossible (out_of_range).
Expected<WhatIf> apply(const Pattern& pattern, const std::vector<Change>& changes, SizeId size);

enum class AdoptIn { this_size, all_sizes };
struct Adopted {
  Pattern pattern;
  std::vector<std::string> notes;
};

// The pattern with the changes taken into it. Counts are snapped to whole stitches and rows. Colours, charts,
// gauges and pieces are of the whole pattern and change in all sizes whatever `in` says. Another size becomes
// the chosen one, a size between two joins the sizes. Weighed samples of a size that is no longer as it was
// weighed are set aside and said so.
Expected<Adopted> adopt(const Pattern& pattern, const std::vector<Change>& changes, SizeId size, AdoptIn in);

// "Body 5 cm longer", "Neckband in MC": for lists and headings.
std::string change_words(const Pattern& pattern, const Change& change, const NumberStyle& style = {});

}  // namespace skeinproof
