// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/need/assessment.h"
#include "core/need/chance.h"
#include "core/need/disagreement.h"

namespace skeinproof {

// What the chances of one role and size are worked out from.
struct ChanceBasis {
  Metres knitted, swatch;
  NeedErrors need;
  Metres skein;
  SupplyErrors supply;
};
double chance_sufficient(const ChanceBasis& basis, int skeins);
// "97", "more than 99", "fewer than 1": of 100. Nobody may read "always" or "never" into a chance that was
// rounded.
std::string chance_of_100(double chance);
std::optional<int> skeins_for_chance(const ChanceBasis& basis, double wished);

// All that is known of one role in one size, side by side; an absent part is unknown.
struct SizeEvidence {
  std::optional<LengthEvidence> stitches;
  std::optional<LengthEvidence> sample;          // scaled by stitches, else by area or circumference
  std::optional<LengthEvidence> printed_counts;  // where the list does not contradict itself
  std::size_t told_low = 0, told_high = 0;       // sizes that tell the bounds of the printed counts
  std::optional<ChanceBasis> chance_basis;       // from stitches or sample, whichever is in force
  std::optional<double> chance_sufficient;  // of the skeins by the rounding policy; without a need, of the
                                            // printed count by the counts alone
  std::optional<double> chance_printed;     // of the printed count

  std::vector<LengthEvidence> all() const;  // narrowest first
};

struct RoleEvidence {
  RoleId role;
  Expected<StepReading> steps;  // or why the printed counts say nothing
  std::vector<SizeEvidence> sizes;
  std::vector<Disagreement> disagreements;
};

// One entry per role of the assessment, in its order. Pure; reads nothing but its arguments.
std::vector<RoleEvidence> gather_evidence(const Pattern& pattern, const Assessment& assessment);

// What a leftover verdict of a role rests on beside the evidence.
LeftoverRules leftover_rules(const Pattern& pattern, const Role& role);

// The narrowest evidence of a size in one step of the ladder of wordings; empty where nothing is known.
std::string evidence_in_words(const Pattern& pattern, const RoleEvidence& evidence, std::size_t size_index,
                              BoundSide side, const NumberStyle& style = {});

}  // namespace skeinproof
