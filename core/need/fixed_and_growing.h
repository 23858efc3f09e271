// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <vector>

#include "core/base/error.h"
#include "core/units/quantity.h"

namespace skeinproof {

// Where there are no stitches, two samples or testers of different sizes part what a colour takes into what
// is the same in every size and what grows with the fabric: N = fixed + growing x extent. Common practice, no
// source.
struct GrowthSample {
  double extent = 0;  // fabric area m² or circumference cm
  Metres length;      // knitted
  double error = 0;   // share, 9 in 10
  std::string size;   // label, for messages
};
struct FixedAndGrowing {
  Metres fixed;
  double growing = 0;  // metres for each m² or cm
  Metres at(double extent) const { return fixed + metres(growing * extent); }
};

// Least squares, each sample by the inverse square of its error. Fails on fewer than two samples
// (wrong_count), on extents that hardly differ (wrong_shape), and where the larger size took less or the
// smaller one too little for any fixed part (out_of_range): then one of them does not say what it seems to.
Expected<FixedAndGrowing> fixed_and_growing(const std::vector<GrowthSample>& samples);

}  // namespace skeinproof
