// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/substitution/given_part.h"

#include "core/pattern/piece_edits.h"

namespace skeinproof {

Metres knitted_in(const Pattern& pattern, const SizeNeed& need, const GivenPart& part) {
  Metres sum;
  for (const PartMetres& one : need.parts) {
    if (one.piece != part.piece || (part.section && one.section != part.section)) continue;
    sum += one.stitches + one.floats;
    if (part.section || !one.edge) continue;
    const PiecePlace place = find_in_pieces(pattern, one.edge.value);
    if (place.edge != nullptr && place.edge->kind != EdgeKind::ends) sum += one.extra;
  }
  return sum;
}

std::string part_name(const Pattern& pattern, const GivenPart& part) {
  const PiecePlace place = find_in_pieces(pattern, part.section ? part.section.value : part.piece.value);
  if (!place) return "a part that is not there";
  const std::string& own = place.section != nullptr ? place.section->name : place.piece->name;
  return own.empty() ? place.piece->name : own;
}

Expected<void> check_part(const Pattern& pattern, const GivenPart& part) {
  const PiecePlace place = find_in_pieces(pattern, part.section ? part.section.value : part.piece.value);
  const bool there = place && place.piece->id == part.piece && place.edge == nullptr &&
                     (place.section != nullptr) == static_cast<bool>(part.section);
  if (!there)
    return failure(ErrorKind::unknown_name, "a part to be given to another yarn that is not in the pattern",
                   "a piece or a section of it");
  return {};
}

}  // namespace skeinproof
