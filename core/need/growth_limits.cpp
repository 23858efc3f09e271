// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/growth_limits.h"

#include <algorithm>
#include <array>
#include <string>

#include "core/base/text.h"
#include "core/need/constants.h"

namespace skeinproof {
namespace {

struct BandKeys {
  GrowthBand band;
  const char* area;
  const char* adult_around;
  const char* child_around;
};
constexpr std::array band_keys = {
    BandKeys{GrowthBand::whole_garment, "growth_whole", "growth_whole_around", "growth_whole_child"},
    BandKeys{GrowthBand::part, "growth_part", "growth_part_around", "growth_part_child"},
    BandKeys{GrowthBand::hardly_grows, "growth_hardly", "growth_hardly_around", "growth_hardly_child"},
    BandKeys{GrowthBand::unknown, "growth_unknown", "growth_unknown_around", "growth_unknown_child"},
};

bool for_a_child(const Pattern& pattern) {
  const std::string wearer = lower_ascii(pattern.wearer);
  constexpr std::array words = {"child", "baby", "babies", "infant", "toddler", "newborn", "kid"};
  return std::any_of(words.begin(), words.end(),
                     [&](const char* word) { return wearer.find(word) != std::string::npos; });
}

}  // namespace

GrowthBand growth_band(const Pattern& pattern, const Role& role) {
  const Role* own = &role;
  for (std::size_t depth = 0; own->growth == GrowthBand::automatic && own->goes_along_with; ++depth) {
    const Role* leader = pattern.role(own->goes_along_with);
    if (leader == nullptr || depth > pattern.roles.size()) break;
    own = leader;
  }
  if (own->growth != GrowthBand::automatic) return own->growth;
  const bool main_colour = !pattern.roles.empty() && pattern.roles.front().id == own->id;
  return main_colour ? GrowthBand::whole_garment : GrowthBand::part;
}

GrowthLimits growth_limits(const Pattern& pattern, GrowthBand band, GrowthOver over) {
  auto row =
      std::find_if(band_keys.begin(), band_keys.end(), [&](const BandKeys& one) { return one.band == band; });
  if (row == band_keys.end()) row = std::prev(band_keys.end());
  const std::string key = over == GrowthOver::area ? row->area
                          : for_a_child(pattern)   ? row->child_around
                                                   : row->adult_around;
  return {constant(pattern, key + "_low"), constant(pattern, key + "_high")};
}

}  // namespace skeinproof
