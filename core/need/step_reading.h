// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/base/error.h"
#include "core/need/growth_limits.h"
#include "core/need/need_context.h"

namespace skeinproof {

// What printed skein counts say about the planned lengths behind them. A count k of skeins of L metres,
// rounded up, says that (k - 1) L < planned <= k L; a bound on how fast a colour grows lets every size speak
// for the others.

// Per size, in pattern order; an absent count or extent is unknown and leaves the others to speak. A count of
// 0 says that the size does not use the colour, and nothing about other sizes.
struct StepInput {
  std::vector<std::optional<double>> counts;   // skeins
  std::vector<std::optional<double>> extents;  // area m² or circumference cm
  Metres skein;
  GrowthLimits limits;
};

// A bound and the size (index) whose count sets it: its telling size.
struct StepBound {
  Metres length;
  std::size_t told_by = 0;
};

struct SizeSteps {
  std::optional<int> count;
  std::optional<StepBound> low, high;  // low < planned <= high
  bool known() const { return low && high; }
};

// What would mend a list that contradicts itself: one count one skein up or down, or two neighbours
// exchanged.
struct Mend {
  std::size_t size_index = 0;
  std::optional<std::size_t> exchanged_with;
  std::vector<std::optional<int>> counts;  // the mended list
};

// Two counts that cannot both be right: the size `asks_more` needs more than the size `allows_less` lets it.
struct Clash {
  std::size_t asks_more = 0;
  std::size_t allows_less = 0;
  std::vector<Mend> mends;  // exchanges first, then one skein down and up, in size order
};

struct StepReading {
  Metres skein;
  std::vector<std::optional<double>> extents;  // that it was read over, by size
  GrowthLimits limits;
  GrowthOver over = GrowthOver::area;
  GrowthBand band = GrowthBand::unknown;
  std::vector<SizeSteps> sizes;
  std::optional<Clash> clash;  // then no size's bounds may be used
};

// Fails on a count that is not whole or below 0, on lists of different lengths, on no counts, no put-up
// length or no extents at all, on an extent that is not above 0, and on a band that is upside down or has no
// width: plain proportion gives bounds that look tight and are wrong.
Expected<StepReading> read_steps(const StepInput& input);

// The same from a role's printed counts, its yarn's put-up and its growth band. Extents are fabric areas from
// the need sheet, else from finished measurements, else finished circumferences with their wider band: the
// first that is known for the most sizes.
Expected<StepReading> read_steps(const Pattern& pattern, RoleId role);
Expected<StepReading> read_steps(const NeedContext& context, const Role& role);
// The same from other counts than those in force, one entry per size: a list as it is printed.
Expected<StepReading> read_steps(const NeedContext& context, const Role& role,
                                 const std::vector<std::optional<double>>& counts);

// The interval of a size's own count alone: ((k - 1) L, k L].
struct OwnSteps {
  Metres low, high;
};
std::optional<OwnSteps> own_steps(const StepReading& reading, std::size_t size_index);

// What the last skein of a size supplies, in metres.
struct LastSkeinSupply {
  Metres at_least, at_most;
};
std::optional<LastSkeinSupply> last_skein_supply(const StepReading& reading, std::size_t size_index);

}  // namespace skeinproof
