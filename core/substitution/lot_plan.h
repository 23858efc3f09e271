// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/base/enum_words.h"
#include "core/need/assessment.h"
#include "core/substitution/on_hand_length.h"

namespace skeinproof {

// Pieces to dye lots, so that every visible piece is one lot and a change of lot falls where two pieces meet.

// A piece of one role, all its copies; or where pieces cannot be kept whole, one section of it.
struct LotPiece {
  PieceId piece;
  SectionId section;  // none = the whole piece
  std::string name;   // "Sleeves"
  Metres knitted;     // stitches, floats and edges
  Metres planned;     // with the allowance; swatch and ends stay with the role's first lot
};
struct LotOfRole {
  OnHandId yarn;
  std::string lot;  // "X"
  Metres have, usable;
  std::vector<LotPiece> pieces;
  Metres knitted, planned;  // of its pieces, and of swatch and ends where it is the first lot
  Metres spare;
  bool first = false;  // holds swatch and ends
};

enum class LotCut { one_lot, between_pieces, between_sections, not_possible };
template <>
struct EnumWords<LotCut> {
  static constexpr auto rows =
      enum_rows<LotCut>({{LotCut::one_lot, "one lot does it all"},
                         {LotCut::between_pieces, "every piece in one lot"},
                         {LotCut::between_sections, "a change of lot inside a piece, at a band"},
                         {LotCut::not_possible, "no way to keep the lots apart"}});
};
struct LotPlan {
  RoleId role;
  std::string label;
  SizeId size;
  LotCut cut = LotCut::not_possible;
  std::vector<LotOfRole> lots;     // that are used, the one of the largest piece first
  std::string words;               // "Sleeves from Y (327.1 of 350.0 m); Body and Yoke from X …"
  std::string advice;              // how to mix where pieces cannot be kept whole
  std::optional<Metres> short_of;  // where all lots together do not hold the role
};

// One entry for every role whose used yarn on hand lies in two or more lots, in the size that
// yarn on hand is meant for. Fewest lots; then the pieces that hang apart leave the main lot first: pairs and
// borders in rib before what is worked once. Proven best under these. `assessment` is that of the pattern.
std::vector<LotPlan> lot_plans(const Pattern& pattern, const Assessment& assessment,
                               const NumberStyle& style = {});

}  // namespace skeinproof
