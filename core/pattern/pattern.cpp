// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/pattern/pattern.h"

#include <algorithm>

namespace skeinproof {
namespace {

template <class Part, class PartId>
const Part* find_part(const std::vector<Part>& parts, PartId id) {
  const auto found =
      std::find_if(parts.begin(), parts.end(), [&](const Part& part) { return part.id == id; });
  return found == parts.end() ? nullptr : &*found;
}

}  // namespace

std::optional<std::size_t> Pattern::size_index(SizeId id) const {
  for (std::size_t i = 0; i < sizes.size(); ++i)
    if (sizes[i].id == id) return i;
  return std::nullopt;
}

std::optional<std::size_t> Pattern::size_index(std::string_view label) const {
  for (std::size_t i = 0; i < sizes.size(); ++i)
    if (sizes[i].label == label) return i;
  return std::nullopt;
}

const Yarn* Pattern::yarn(YarnId id) const { return find_part(yarns, id); }
const Role* Pattern::role(RoleId id) const { return find_part(roles, id); }
const Fabric* Pattern::fabric(FabricId id) const { return find_part(fabrics, id); }
const Chart* Pattern::chart(ChartId id) const { return find_part(charts, id); }
const Piece* Pattern::piece(PieceId id) const { return find_part(pieces, id); }
const Candidate* Pattern::candidate(CandidateId id) const { return find_part(candidates, id); }
const YarnOnHand* Pattern::yarn_on_hand(OnHandId id) const { return find_part(on_hand, id); }

bool Pattern::is_on_bench(YarnId id) const {
  return std::none_of(roles.begin(), roles.end(), [&](const Role& role) { return role.yarn == id; });
}

Pattern new_pattern() {
  Pattern pattern;
  pattern.sizes.push_back(Size{SizeId{1}, "1", false});
  pattern.last_id = 1;
  pattern.sample_size = SizeId{1};
  pattern.chosen_size = SizeId{1};
  pattern.house_styles.emplace_back();
  return pattern;
}

}  // namespace skeinproof
