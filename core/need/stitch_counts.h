// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/need/working.h"
#include "core/pattern/pattern.h"
#include "core/units/show.h"

namespace skeinproof {

// Stitches of one copy of a section whose source is typed or worked out: rows x (from + to) / 2 summed over
// the runs. Absent where a value is missing; `missing` then names it.
struct StitchCount {
  std::optional<double> stitches;
  std::optional<double> rows;  // worked out only
  std::string missing;
};
StitchCount section_stitches(const Section& section, std::size_t size_index, Step* step = nullptr,
                             const NumberStyle& style = {});

// What one stripe colour gets of a section.
struct StripeShare {
  RoleId role;
  double stitches = 0;
  double stripes = 0;      // how many stripes of it are worked
  double passed_rows = 0;  // rows worked in other colours between its first and its last stripe
};
// Rows are dealt to the stripes in order, over and over; widths between the ends of a run go evenly. Typed
// stitches have no rows and are dealt in the proportion of the stripe rows.
std::vector<StripeShare> stripe_shares(const Section& section, std::size_t size_index);

}  // namespace skeinproof
