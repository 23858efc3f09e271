// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/substitution/shelf_search.h"
#include "core/substitution/yarn_character.h"

namespace skeinproof {

// What likeness goes by, made ready once for each yarn, so that a hundred thousand compare in a blink.
enum class SurfaceClass : std::uint8_t { unknown, plain, lustrous, light_halo, marked_halo, uneven };
enum class StructureClass : std::uint8_t { unknown, single, two_ply, many_ply, cabled, chainette, two_kinds };
enum class ColouringClass : std::uint8_t { unknown, one_colour, flecked, variegated };

struct FibrePart {
  std::uint16_t kin = 0;  // row of the fibre table, of the fibre it is a variety of; past the end: words only
  float share = 0;        // of 1
};

struct LikeYarn {
  std::int64_t mg_per_km = 0;    // 0 = not known
  double fibre_volume = 0;       // cm³ in a gram; 0 = not known
  std::vector<FibrePart> parts;  // by kin; empty = no composition
  bool fibres_known = false;     // at least one is in the table
  std::optional<int> care;       // as care_rank
  SurfaceClass surface = SurfaceClass::unknown;
  StructureClass structure = StructureClass::unknown;
  ColouringClass colouring = ColouringClass::unknown;
  AirClass air = AirClass::unstated;
  std::optional<double> price_a_100m;
  std::string currency;  // EUR for €, GBP for £, else as typed
};

LikeYarn like_yarn(const Yarn& yarn);
// `strands` equal ones, and two different ones, held together.
LikeYarn held(const LikeYarn& yarn, int strands);
LikeYarn held_together(const LikeYarn& a, const LikeYarn& b);

// Levels of ShelfLikeness for a yarn and the one asked for.
int fibre_level(const LikeYarn& yarn, const LikeYarn& asked);
int care_level(const LikeYarn& yarn, const LikeYarn& asked);
ShelfLikeness likeness_of(const LikeYarn& yarn, const LikeYarn& asked);

// Percent thicker by the volume of the fibres, or by weight where those are not known of both; percent
// heavier by the metre. Absent where a density is.
struct ThicknessDifference {
  double thicker_pct = 0, heavier_pct = 0;
  bool by_volume = false;
};
std::optional<ThicknessDifference> thickness_difference(const LikeYarn& yarn, const LikeYarn& asked);

// "3 % thicker; mostly the same fibre (75 %); hand wash, stricter; …".
std::string likeness_words(const LikeYarn& yarn, const LikeYarn& asked, const ShelfLikeness& likeness);

}  // namespace skeinproof
