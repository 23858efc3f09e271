// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/base/error.h"
#include "core/need/assessment.h"
#include "core/need/need_context.h"
#include "core/need/role_parts.h"

namespace skeinproof {

// The length of one role in one weighing.
struct SampleLength {
  const Weighing* weighing = nullptr;
  std::size_t size_index = 0;
  Metres length;     // on the scale, notions off, moisture handled
  Metres low, high;  // its own interval
  double error = 0;  // share at 9 in 10 for scaling from it: weighed error or the scale's, with the moisture
};

// Every used weighing of a role that can be turned into a length; what cannot is named in `problems`.
std::vector<SampleLength> sample_lengths(const NeedContext& context, const Role& role,
                                         std::vector<NotWorkedOut>* problems = nullptr);

// What of a role was on the scale, by the sheet: of that size, or what a sample was knitted as. A tester's
// longer body or other gauge is laid on a copy first, so that the rest speaks of the hand alone.
RoleParts parts_on_scale(const NeedContext& context, const Role& role, const Weighing& weighing,
                         std::size_t size_index);
RoleParts parts_on_scale(const NeedContext& context, const Role& role, const SampleLength& sample);

// The factor by which a sample's length asks the role's loops to be longer or shorter than they are in force:
// (length - floats - edges - ends) / sum(stitches x loop). Absent where nothing of the role was on the scale.
std::optional<double> loop_factor(const SampleLength& sample, const RoleParts& model);

// All calibrations of the document.
std::vector<Calibration> calibrations(const NeedContext& context, std::vector<NotWorkedOut>* problems);

// The calibration in force for a role: its samples weighed by the inverse square of their errors. Several
// narrow the error; where they scatter more than their errors allow, it grows by the ratio of the two (Birge
// 1932, Phys. Rev. 40, 207; from memory).
struct RoleCalibration {
  double factor = 1;
  double error = 0;
  std::vector<SampleLength> samples;
  std::vector<double> weights;  // of the samples, adding to 1
};
std::optional<RoleCalibration> role_calibration(const NeedContext& context, const Role& role);

// The working of a calibration factor down to the scale, the label and the sheet.
Step calibration_step(const NeedContext& context, const Role& role, const RoleCalibration& calibration,
                      const NumberStyle& style);
// The working of the length on the scale.
Step sample_step(const NeedContext& context, const Role& role, const SampleLength& sample,
                 const NumberStyle& style);

}  // namespace skeinproof
