// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <vector>

#include "core/need/assessment.h"
#include "core/need/need_context.h"

namespace skeinproof {

// The knitted length of a role in one size, part by part, at the loop lengths in force before any
// calibration. Strands are included.
struct RoleParts {
  std::vector<PartMetres> parts;
  Metres stitches, floats, extra;
  double error = 0;  // share of the whole, 9 in 10
  std::string error_because;
  bool all_loops_typed = true;
  std::string missing;  // the first input that is missing; then the sums are not to be used
  StepPlace missing_place;
  bool worked_out = false;  // some part of the role could be counted, be it to nothing
  bool any() const { return worked_out; }
  Metres total() const { return stitches + floats + extra; }
};

// How the parts are to be worked out.
struct PartsWanted {
  std::size_t size_index = 0;
  const std::vector<WeighedCopies>* only = nullptr;  // null or empty = all copies of all pieces
  double loop_factor = 1;                            // calibration of the loops
  const Step* calibration = nullptr;                 // how the factor came about, for the working
};

RoleParts role_parts(const NeedContext& context, const Role& role, const PartsWanted& wanted,
                     Step* step = nullptr, const NumberStyle& style = {});

}  // namespace skeinproof
