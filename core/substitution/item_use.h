// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "core/need/need_context.h"
#include "core/pattern/item_kind.h"
#include "core/pattern/wearer_age.h"

namespace skeinproof {

// What the yarn of one role is put to, by the need sheet; without pieces, by the fabrics of the pattern.
struct RoleUse {
  RoleId role;
  bool known = false;
  std::set<Structure> structures;
  std::set<PieceId> pieces;
  std::string places;  // lower case: names of its pieces, sections and edges
};

// What the item is and how it is worn and worked.
struct ItemUse {
  ItemKind kind = ItemKind::unknown;
  std::string words;  // lower case: item and title
  WearerAges wearers;
  bool felted = false, near_heat = false;
  bool drapey = false;               // a shawl or the like
  bool steek = false;                // the text cuts one
  bool charted = false;              // some section is worked from a chart, or a fabric is coloured
  std::optional<double> ease_cm;     // finished - to fit, of the size
  std::optional<double> hanging_cm;  // from the shoulder or the neck to the hem
  std::string hanging_because;       // its road, or what is missing
  std::vector<RoleUse> roles;        // as in the pattern
  const RoleUse* of(RoleId role) const;
};

ItemUse item_use(const NeedContext& context, std::size_t size_index);

}  // namespace skeinproof
