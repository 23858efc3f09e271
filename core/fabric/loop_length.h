// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/base/error.h"
#include "core/fabric/fabric.h"
#include "core/yarn/yarn.h"

namespace skeinproof {

// Yarn in one stitch of a fabric, and how well it is known.
struct LoopLength {
  Centimetres loop;
  std::string how;         // "√(23.1 / 8.84 stitches per cm²)"
  std::string source;      // citation, "typed", "weighed swatch"
  double error_share = 0;  // half width, 9 times in 10 (0.08 = 8 %)
};

// How well loop lengths are known, shares at 9 in 10; from experience and without a source.
struct LoopErrors {
  double plain = 0.08;     // springy stocking stitch of a stated gauge state
  double other = 0.12;     // textured, stranded, without spring, or of unstated state
  double drawn_in = 0.20;  // a fabric that draws in, of which only its own gauge is known
  double weighed = 0.03;   // after weighing
};

// What a loop length may stand on beside the fabric itself.
struct LoopGrounds {
  LoopErrors errors;
  // The gauge of stocking stitch in the same yarn on the same needles, for a fabric that draws in (rib,
  // cable, garter …): its own gauge counts loops that are not at rest.
  const Gauge* plain_gauge = nullptr;
  bool springy = true;                // see `springy`
  std::optional<Metres> swatch_yarn;  // yarn in the weighed swatch, moisture dealt with
  double swatch_error_share = 0;      // of that length, 9 times in 10
  std::optional<double> constant;     // K in force, where the published one is overruled
};

// By the fabric's loop source. Fails with what is missing: a count of the gauge, a typed loop, the yarn or
// the stitches of the swatch.
Expected<LoopLength> loop_length(const Fabric& fabric, const LoopGrounds& grounds = {});

// sqrt(K / S) x the factor of the structure.
Expected<LoopLength> loop_from_gauge(const Gauge& gauge, Structure structure = Structure::plain,
                                     const LoopGrounds& grounds = {});
// Yarn / stitches; the error of weighed loops, or that of the weighing where it is more.
Expected<LoopLength> loop_from_swatch(Metres yarn, double stitches, double error_share = 0,
                                      const LoopErrors& errors = {});

// Whether a yarn is springy enough for the constants measured on wool: less than half of it cotton, linen and
// other plant fibres, silk, viscose and the like. Fibres the table does not know count as springy.
bool springy(const std::vector<FibreShare>& composition);

// Loop length in stitch widths, and whether that is one of a plain fabric: 3.3 to 4.6. Structures that are
// not one loop a stitch are always plausible.
double loop_in_widths(Centimetres loop, Centimetres stitch_width);
bool plausible_loop(double widths, Structure structure = Structure::plain);

// Yarn over one passed stitch: as typed, else none for intarsia, else the stitch width x `slack`, 1.02
// (tight) to 1.10 (loose). Common practice, no source.
struct FloatSlack {
  static constexpr double low = 1.02, typical = 1.06, high = 1.10;
};
Expected<Centimetres> float_per_stitch(const Fabric& fabric, double slack = FloatSlack::typical);

}  // namespace skeinproof
