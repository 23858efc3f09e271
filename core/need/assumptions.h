// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string_view>
#include <vector>

#include "core/need/assessment.h"
#include "core/need/constants.h"
#include "core/need/evidence.h"

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
  std::optional<double> chance_before, chance_after;  // that the skeins suffice
  // What the printed counts leave open, upper less lower bound.
  std::optional<Metres> told_before, told_after;

  double planned_share() const;  // 0 where a length is not known
  double high_share() const;
  double chance_points() const;  // after - before; 0 where one of them is not known
  double told_share() const;     // of what was open before
  bool crosses_a_step() const { return skeins_before != skeins_after; }
};

// A pattern as it stands before any constant moves.
struct AsItStands {
  const Pattern& pattern;
  Assessment assessment;
  std::vector<RoleEvidence> evidence;

  explicit AsItStands(const Pattern& now);
};

// A constant moved from the value in force to another, and every need that followed. A need that was or
// became unknown is left out unless its chance or its printed counts moved.
struct ConstantMove {
  double from = 0, to = 0;
  std::vector<NeedMove> needs;

  double largest_planned_share() const;  // with its sign; 0 where no planned length moved
  double largest_high_share() const;
  double largest_chance_points() const;
  double largest_told_share() const;
  std::size_t counts_moved() const;
};
ConstantMove move_constant(const AsItStands& now, std::string_view key, double value);

// A constant a share lower and the same share higher, both within what may be typed.
struct Sensitivity {
  const Constant* constant = nullptr;
  ConstantMove lower, higher;

  double largest_planned_share() const;  // of both, without sign
  double largest_high_share() const;
  double largest_chance_points() const;
  double largest_told_share() const;
  std::size_t counts_moved() const;
};
Sensitivity sensitivity_to(const AsItStands& now, const Constant& constant, double share);

// Constants that move anything, the one that moves a planned length most first, then by what they do to the
// upper bounds, to the chances and to what the printed counts tell. A constant of value 0 has no share to
// move by and is left out.
std::vector<Sensitivity> rank_constants(const AsItStands& now, double share);

}  // namespace skeinproof
