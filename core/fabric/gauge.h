// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>

#include "core/base/error.h"
#include "core/fabric/fabric.h"

namespace skeinproof {

// What a gauge says. Each fails with the one thing that is missing or impossible in it.
Expected<Centimetres> stitch_width(const Gauge& gauge);
Expected<Centimetres> row_height(const Gauge& gauge);
// S: stitches in a square centimetre, stitch gauge x row gauge.
Expected<double> stitches_per_cm2(const Gauge& gauge);

// R: rows / stitches over the same length.
Expected<double> loop_shape(const Gauge& gauge);
// Whether stocking stitch of that shape is at rest. Outside 1.15 to 1.45 a swatch was stretched, was not
// stocking stitch, or was counted wrongly (row plain_spread_R of the loop geometry table).
bool at_rest(double loop_shape);

// M: metres of yarn in a square metre of plain cloth, 100 x sqrt(20.5 S), in any yarn. Stands on the middle
// constant whatever the state of the gauge, for estimates before there is a sample.
double metres_per_square_metre(double stitches_per_cm2);

// F: firmness of plain cloth from its gauge, sqrt(tex) / loop with the loop at the middle constant: 6.98 x
// sqrt(S / mu), which people know as 7 x. A calibrated loop goes through `firmness` of the yarn instead.
double firmness_from_gauge(double stitches_per_cm2, MetresPerGram density);

}  // namespace skeinproof
