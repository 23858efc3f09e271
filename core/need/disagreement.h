// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <vector>

#include "core/need/assessment.h"
#include "core/need/leftover_verdict.h"

namespace skeinproof {

// The usual reasons why two roads to one length part by more than their errors. Common practice, no source.
enum class DisagreementReason {
  damp,
  notions_left_in,
  one_of_a_pair,
  other_size,
  other_put_up,
  rounded_down,
  generous_counts,
  not_clear,
};
template <>
struct EnumWords<DisagreementReason> {
  static constexpr auto rows = enum_rows<DisagreementReason>(
      {{DisagreementReason::damp, "the sample was damp on the scale"},
       {DisagreementReason::notions_left_in, "buttons or other notions were left on the scale"},
       {DisagreementReason::one_of_a_pair, "one of a pair was taken for both"},
       {DisagreementReason::other_size, "another size was on the scale"},
       {DisagreementReason::other_put_up,
        "the length per 50 g was read as per 100 g, or the other way round"},
       {DisagreementReason::rounded_down, "a printed count was rounded down"},
       {DisagreementReason::generous_counts, "the printed counts hold more spare than usual"},
       {DisagreementReason::not_clear, "none of the usual reasons fits"}});
};

// Two kinds of evidence of one role and size that cannot both be right.
struct Disagreement {
  std::size_t size_index = 0;
  LengthGround one = LengthGround::weighed_sample;
  LengthGround other = LengthGround::stitches;
  double ratio = 1;   // length by `one` / length by `other`; by counts, the nearer bound
  double errors = 0;  // what their errors would allow, as a share; 0 beside counts, whose bounds are hard
  DisagreementReason reason = DisagreementReason::not_clear;
  std::optional<std::size_t> fits_size;  // the other size
};

// Weighed samples beside the stitches of the same pieces in the same size. Every colour of a weighing is
// looked at together, because damp makes all of them heavy and a button only one.
std::vector<Disagreement> sample_disagreements(const NeedContext& context, const Role& role);

// Printed counts beside the need in force, size by size: planned low above what the counts allow, or knitted
// high below what they ask without the greatest allowance. Silent where the list contradicts itself.
std::vector<Disagreement> count_disagreements(const NeedContext& context, const Role& role,
                                              const RoleNeed& need, const StepReading& reading);

}  // namespace skeinproof
