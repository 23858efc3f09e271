// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <map>
#include <unordered_map>
#include <vector>

#include "core/fabric/chart.h"
#include "core/need/fabric_loop.h"
#include "core/pattern/pattern.h"

namespace skeinproof {

// A section or an edge that asks yarn of a role.
struct PartUse {
  const Piece* piece = nullptr;
  const Section* section = nullptr;  // or
  const Edge* edge = nullptr;
};

// What every figure of an assessment looks up: worked out once from the document.
class NeedContext {
 public:
  explicit NeedContext(const Pattern& pattern);

  const Pattern& pattern() const { return pattern_; }
  const std::vector<PartUse>& parts_of(RoleId role) const;
  const ChartCensus& census_of(ChartId chart) const;
  const std::map<char, long>& areas_of(ChartId chart) const;
  const FabricLoop& loop_of(FabricId fabric) const;
  const Yarn* main_yarn_of(FabricId fabric) const;
  double constant_of(std::string_view key) const;

 private:
  void gather_uses();
  const Pattern& pattern_;
  std::unordered_map<std::uint32_t, std::vector<PartUse>> uses_;
  std::unordered_map<std::uint32_t, ChartCensus> census_;
  std::unordered_map<std::uint32_t, std::map<char, long>> areas_;  // of charts worked in intarsia
  std::unordered_map<std::uint32_t, FabricLoop> loops_;
  std::unordered_map<std::uint32_t, YarnId> fabric_yarns_;
  std::unordered_map<std::string_view, double> constants_;
};

// The symbols of a chart that stand for a role.
std::string symbols_of(const Chart& chart, RoleId role);

}  // namespace skeinproof
