// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>

namespace skeinproof {

// One line of how a figure came about, in the order it was worked out.
struct FigureLine {
  std::string label;   // "Scale reading of a whole skein"
  double value = 0;    // in `unit`, unrounded
  std::string unit;    // "g", "m", "%", "m/g", empty for a ratio
  std::string how;     // "42.28 g dry × 1.108"
  std::string source;  // citation, "label", "scale", or "common practice, no source"
};

}  // namespace skeinproof
