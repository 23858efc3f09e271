// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>

#include "core/fabric/fabric.h"

namespace skeinproof {

// K of loop length = sqrt(K / stitch density), dimensionless, by the state the gauge was measured in. Washed,
// wetted and never wetted are the published constants of the loop geometry table; a gauge of unstated state
// takes 20.5, between them.
struct Relaxation {
  double constant = 0;
  std::string source;
};
Relaxation relaxation(GaugeState state);

// Yarn of one stitch of a structure as a multiple of one of stocking stitch in the same yarn on the same
// needles. All of it common practice, no source. Stitches are counted as worked: slipped ones are not.
struct StructureFactor {
  Structure structure;
  double low, typical, high;
  bool draws_in;    // its own gauge is not one of loops at rest: the gauge of stocking stitch serves better
  bool plain_loop;  // one loop a stitch, so that loop length / stitch width means something
};
const StructureFactor& structure_factor(Structure structure);

}  // namespace skeinproof
