// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/fabric/fabric.h"
#include "core/review/check.h"

namespace skeinproof {

// One gauge as printed: what stands in one breath. Pointers are into the reading; null = not printed.
struct PrintedGauge {
  int mention = 0;
  const Statement* stitches = nullptr;
  const Statement* rows = nullptr;
  const Statement* fabric = nullptr;
  const Statement* state = nullptr;   // of its own breath, else one said of no gauge in particular
  const Statement* worked = nullptr;  // the same
  const Statement* over = nullptr;    // of its own breath, else of the gauge before it; centimetres if both
  std::optional<Structure> structure;
  double over_cm = 10;  // 4 inches count as 10 cm
  bool per_inch = false;

  std::optional<double> stitches_per_10_cm() const;
  std::optional<double> rows_per_10_cm() const;
  const Statement& first() const { return stitches ? *stitches : *rows; }
  std::vector<const Statement*> all() const;  // stitches, rows, fabric, over: what is printed of them
  // Whether both speak of the same cloth: named alike, or neither named.
  bool same_fabric(const PrintedGauge& other) const;
};

// In the order of the text. A breath that holds neither stitches nor rows is no gauge.
std::vector<PrintedGauge> printed_gauges(const PrintedView& printed);
// The gauge printed for a fabric: named so or of its structure; where one gauge alone stands there and names
// no fabric, it is that of plain cloth.
const PrintedGauge* gauge_of(const std::vector<PrintedGauge>& gauges, const Fabric& fabric);

// The structure that words name: "stockinette", "stranded pattern"; absent where none is named.
std::optional<Structure> structure_of(std::string_view words);

// The figure of a statement of one value; the mean of a range.
std::optional<double> figure_of(const Statement* statement);

}  // namespace skeinproof
