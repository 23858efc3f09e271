// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/need/assessment.h"
#include "core/need/fixed_and_growing.h"
#include "core/need/need_context.h"
#include "core/need/weighed_sample.h"

namespace skeinproof {

// One road to the knitted length of a size.
struct Road {
  NeedEvidence kind = NeedEvidence::none;
  Metres knitted;
  double error = 0;  // share, 9 in 10
  std::string because;
};

struct ScaledSample {
  Road road;
  std::vector<const SampleLength*> rests_on;  // into the samples given
};

// Where there are no stitches, what was weighed goes from size to size: a sample of this size as it is, else
// the fixed and the growing part of two or more, else the nearest one by fabric area or, weaker, by
// circumference. Samples with something altered are not used: without stitches it cannot be taken off. Absent
// where neither area nor circumference is known on both sides. Common practice, no source.
std::optional<ScaledSample> scaled_sample(const NeedContext& context,
                                          const std::vector<SampleLength>& samples, std::size_t size_index,
                                          Step* step, const NumberStyle& style);

// Why several samples do not tell a fixed part from a growing one; absent where they do, or where there is
// but one.
std::optional<Error> why_not_fixed_and_growing(const NeedContext& context,
                                               const std::vector<SampleLength>& samples);

}  // namespace skeinproof
