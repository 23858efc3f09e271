// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>

#include "core/need/assessment.h"
#include "core/pattern/house_style.h"
#include "core/units/quantity.h"

namespace skeinproof {

// What stays the same for a role whatever its knitted length.
struct PlanInputs {
  Metres swatch;                 // per strand x strands
  std::optional<Metres> skein;   // length in one skein
  std::optional<double> join_m;  // metres lost at each skein after the first; absent = not counted
  double brimful_share = 0.95;
  double tips_over_share = 0.05;
};

// Fills the layers, the skeins by the house's rounding policy and the last-skein share from the knitted
// length. Planned = (knitted + swatch where the house counts it) x (1 + allowance). Skeins = planned / skein
// rounded up, with a guard of 1e-9 so that exactly k skeins print k; under "unless a hair over" a need of at
// most hair_over_share above k skeins prints k where the allowance left, k L / (N + s) - 1, reaches the
// minimum.
void plan(SizeNeed& need, Metres knitted, const PlanInputs& inputs, const HouseStyle& house);

// Skeins for a planned length; `bare` is knitted + swatch.
int skeins_for(Metres planned, Metres bare, Metres skein, const HouseStyle& house);

// The planned length of a knitted one under the same rules, joins left out.
Metres planned_length(Metres knitted, const PlanInputs& inputs, const HouseStyle& house);

}  // namespace skeinproof
