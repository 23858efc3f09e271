// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>

#include "core/need/working.h"
#include "core/pattern/pattern.h"
#include "core/units/show.h"

namespace skeinproof {

// The loop length of a fabric in force, before any weighed sample, and what it stands on.
struct FabricLoop {
  std::optional<Centimetres> loop;  // yarn in one stitch
  std::optional<Centimetres> stitch_width;
  Centimetres float_per_stitch;           // yarn over one passed stitch; 0 where no width is known
  std::optional<double> density_per_cm2;  // stitches per cm², of its own gauge or of the first plain fabric's
  double error = 0;                       // share, 9 in 10
  std::string because;                    // of the error
  bool typed = false;
  std::string missing;  // where there is no loop: what would give one
};

// `yarn` is the yarn the fabric is mostly knitted in; it decides whether the cloth is wool-like.
FabricLoop fabric_loop(const Pattern& pattern, const Fabric& fabric, const Yarn* yarn, Step* step = nullptr,
                       const NumberStyle& style = {});

}  // namespace skeinproof
