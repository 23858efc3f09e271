// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/need_context.h"

#include <set>

#include "core/fabric/colour_areas.h"
#include "core/need/constants.h"

namespace skeinproof {
namespace {

std::set<RoleId> roles_of(const Pattern& pattern, const Section& section) {
  std::set<RoleId> roles;
  if (section.source == StitchSource::chart) {
    if (const Chart* chart = pattern.chart(section.chart))
      for (const ChartColour& colour : chart->colours) roles.insert(colour.role);
  } else if (section.colouring == Colouring::stripes) {
    for (const Stripe& stripe : section.stripes) roles.insert(stripe.role);
  } else {
    roles.insert(section.role);
  }
  return roles;
}

const FabricLoop no_fabric = [] {
  FabricLoop none;
  none.missing = "a fabric";
  return none;
}();

}  // namespace

std::string symbols_of(const Chart& chart, RoleId role) {
  std::string symbols;
  for (const ChartColour& colour : chart.colours)
    if (colour.role == role && colour.symbol.size() == 1) symbols += colour.symbol;
  return symbols;
}

NeedContext::NeedContext(const Pattern& pattern) : pattern_(pattern) {
  for (const Constant& row : constants()) {
    const ConstantOverride* own = own_constant(pattern, row.key);
    constants_[row.key] = own != nullptr ? own->value.value : row.value;
  }
  for (const Chart& chart : pattern.charts) census_[chart.id.value] = census(chart);
  gather_uses();
  for (const Fabric& fabric : pattern.fabrics)
    loops_[fabric.id.value] = fabric_loop(pattern, fabric, main_yarn_of(fabric.id));
}

void NeedContext::gather_uses() {
  for (const Piece& piece : pattern_.pieces) {
    for (const Section& section : piece.sections) {
      const Fabric* fabric = pattern_.fabric(section.fabric);
      const Chart* chart = section.source == StitchSource::chart ? pattern_.chart(section.chart) : nullptr;
      if (chart != nullptr && fabric != nullptr && fabric->structure == Structure::intarsia)
        areas_.try_emplace(chart->id.value, colour_areas(*chart));
      for (RoleId role : roles_of(pattern_, section)) {
        uses_[role.value].push_back(PartUse{&piece, &section, nullptr});
        const Role* found = pattern_.role(role);
        if (found != nullptr && found->yarn) fabric_yarns_.try_emplace(section.fabric.value, found->yarn);
      }
    }
    for (const Edge& edge : piece.edges) uses_[edge.role.value].push_back(PartUse{&piece, nullptr, &edge});
  }
}

const std::vector<PartUse>& NeedContext::parts_of(RoleId role) const {
  static const std::vector<PartUse> none;
  const auto found = uses_.find(role.value);
  return found == uses_.end() ? none : found->second;
}

const ChartCensus& NeedContext::census_of(ChartId chart) const {
  static const ChartCensus none;
  const auto found = census_.find(chart.value);
  return found == census_.end() ? none : found->second;
}

const std::map<char, long>& NeedContext::areas_of(ChartId chart) const {
  static const std::map<char, long> none;
  const auto found = areas_.find(chart.value);
  return found == areas_.end() ? none : found->second;
}

const FabricLoop& NeedContext::loop_of(FabricId fabric) const {
  const auto found = loops_.find(fabric.value);
  return found == loops_.end() ? no_fabric : found->second;
}

const Yarn* NeedContext::main_yarn_of(FabricId fabric) const {
  const auto found = fabric_yarns_.find(fabric.value);
  return found == fabric_yarns_.end() ? nullptr : pattern_.yarn(found->second);
}

double NeedContext::constant_of(std::string_view key) const {
  const auto found = constants_.find(key);
  return found == constants_.end() ? constant(pattern_, key) : found->second;
}

}  // namespace skeinproof
