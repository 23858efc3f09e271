// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>

#include "core/need/need_context.h"

namespace skeinproof {

// Fabric area of the whole item in one size, m². From the need sheet (all stitches / stitch density) where
// every section has its count, else from finished measurements: circumference x length + 2 x sleeve width x
// sleeve length + yoke trapezoid (circumference + neck) / 2 x depth. Common practice, no source.
struct FabricArea {
  double m2 = 0;
  bool from_stitches = false;
};
std::optional<FabricArea> fabric_area(const NeedContext& context, std::size_t size_index);

// Fabric area of all copies of one section in one size, m²; absent where its stitches or their density are
// unknown.
std::optional<double> section_area_m2(const NeedContext& context, const Piece& piece, const Section& section,
                                      std::size_t size_index);

// The finished circumference of a size, cm.
std::optional<double> finished_circumference(const Pattern& pattern, std::size_t size_index);

}  // namespace skeinproof
