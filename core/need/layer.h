// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>

#include "core/need/assessment.h"

namespace skeinproof {

// One layer of a need as it looks in skeins of the role's own yarn. The planned layer is counted by the
// house's rounding policy, the two below it are rounded up; the skein figures are absent where the put-up has
// no length.
struct LayerNeed {
  Metres length;
  std::optional<double> fraction;  // length / skein
  std::optional<int> skeins;
  std::optional<double> last_skein_share;  // in (0, 1]
  LastSkein last_skein = LastSkein::plain;
  std::optional<Metres> bought;     // skeins x skein
  std::optional<Metres> left_over;  // bought - length; below 0 where the policy rounded down
};

// Absent where the need is not known.
std::optional<LayerNeed> layer_need(const Pattern& pattern, RoleId role, const SizeNeed& need, Layer layer);

// Length of one skein of the role's yarn by its label.
std::optional<Metres> skein_length(const Pattern& pattern, RoleId role);

// Whole skeins that hold a length, rounded up.
int whole_skeins(Metres length, Metres skein);

}  // namespace skeinproof
