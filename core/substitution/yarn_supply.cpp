// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/substitution/yarn_supply.h"

#include <algorithm>
#include <set>

#include "core/need/constants.h"

namespace skeinproof {
namespace {

bool same_shade(const Shade& one, const Shade& other) {
  return one.name == other.name && one.number == other.number;
}

std::string name_without_lot(const Pattern& pattern, YarnOnHand yarn) {
  yarn.lot.clear();
  return on_hand_name(pattern, yarn);
}

}  // namespace

YarnSupplies yarn_supplies(const Pattern& pattern) {
  YarnSupplies all;
  std::vector<const YarnOnHand*> first;  // of each supply
  std::vector<std::set<std::string>> lots;
  for (const YarnOnHand& yarn : pattern.on_hand) {
    if (!yarn.used) continue;
    const auto length = length_on_hand(pattern, yarn);
    if (!length) {
      all.left_out.push_back(length.error());
      continue;
    }
    std::size_t s = 0;
    while (s < first.size() && (first[s]->yarn != yarn.yarn || !same_shade(first[s]->shade, yarn.shade))) ++s;
    if (s == first.size()) {
      first.push_back(&yarn);
      lots.emplace_back();
      YarnSupply supply;
      supply.yarn = yarn.yarn;
      supply.name = name_without_lot(pattern, yarn);
      supply.role = yarn.role;
      supply.density = length->density;
      all.supplies.push_back(std::move(supply));
    }
    YarnSupply& supply = all.supplies[s];
    if (supply.role != yarn.role) supply.role = {};
    supply.items.push_back(yarn.id);
    supply.length += length->length;
    supply.pieces += length->pieces;
    lots[s].insert(yarn.lot);
    supply.lots = static_cast<int>(lots[s].size());
  }
  const double join_m = constant(pattern, "join_m");
  for (YarnSupply& supply : all.supplies)
    supply.usable = std::max(metres(0), supply.length - metres(join_m * (supply.pieces - 1)));
  return all;
}

}  // namespace skeinproof
