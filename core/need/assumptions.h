// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string_view>
#include <vector>

#include "core/need/assessment.h"
#include "core/need/constants.h"

namespace skeinproof {

// Overwrites a constant of the method for this pattern; absent puts the default back. Fails where the value
// is not between the constant's limits; asserts that the key exists.
Expected<void> set_constant(Pattern& pattern, std::string_view key, std::optional<Entered<double>> value);

// What a need is before and after a constant moved.
struct NeedMove {
  RoleId role;
  std::size_t size = 0;
  Metres planned_before, planned_after;
  Metres high_before, high_after;  // 9 in 10
  std::optional<int> skeins_before, skeins_after;

  double planned_share() const { return planned_after / planned_before - 1; }
  double high_share() const { return high_after / high_before - 1; }
  bool crosses_a_step() const { return skeins_before != skeins_after; }
};

// A constant moved from the value in force to another, and every need that followed. Needs that were or
// became unknown are left out.
struct ConstantMove {
  double from = 0, to = 0;
  std::vector<NeedMove> needs;

  double largest_planned_share() const;  // with its sign; 0 where no planned length moved
  double largest_high_share() const;
  std::size_t counts_moved() const;
};
ConstantMove move_constant(const Pattern& pattern, const Assessment& now, std::string_view key, double value);

// A constant a share lower and the same share higher, both within what may be typed.
struct Sensitivity {
  const Constant* constant = nullptr;
  ConstantMove lower, higher;

  double largest_planned_share() const;  // of both, without sign
  double largest_high_share() const;
  std::size_t counts_moved() const;
};
Sensitivity sensitivity_to(const Pattern& pattern, const Assessment& now, const Constant& constant,
                           double share);

// Constants that move at least one need, the one that moves a planned length most first, then by what they do
// to the upper bounds. A constant of value 0 has no share to move by and is left out.
std::vector<Sensitivity> rank_constants(const Pattern& pattern, const Assessment& now, double share);

}  // namespace skeinproof
