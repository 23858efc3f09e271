// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fabric/gauge.h"

#include <cassert>
#include <cmath>

#include "core/fabric/relaxation.h"
#include "core/reference/lookup.h"
#include "core/units/show.h"
#include "core/yarn/thickness.h"

namespace skeinproof {
namespace {

Expected<Centimetres> length_of_one(const std::optional<Entered<double>>& count, Centimetres over,
                                    const char* what) {
  if (!count)
    return failure(ErrorKind::not_found, std::string("a gauge without ") + what,
                   std::string(what) + " over a length");
  if (!(count->value > 0) || !std::isfinite(count->value))
    return failure(ErrorKind::out_of_range, exact_number(count->value) + " " + what, "more than 0");
  if (!(over.value() > 0) || !std::isfinite(over.value()))
    return failure(ErrorKind::out_of_range, "a gauge over " + exact_number(over.value()) + " cm",
                   "a length of more than 0");
  return over / count->value;
}

}  // namespace

Expected<Centimetres> stitch_width(const Gauge& gauge) {
  return length_of_one(gauge.stitches, gauge.over.value, "stitches");
}

Expected<Centimetres> row_height(const Gauge& gauge) {
  return length_of_one(gauge.rows, gauge.over.value, "rows");
}

Expected<double> stitches_per_cm2(const Gauge& gauge) {
  const auto width = stitch_width(gauge);
  if (!width) return tl::unexpected(width.error());
  const auto height = row_height(gauge);
  if (!height) return tl::unexpected(height.error());
  return 1 / (width->value() * height->value());
}

Expected<double> loop_shape(const Gauge& gauge) {
  const auto width = stitch_width(gauge);
  if (!width) return tl::unexpected(width.error());
  const auto height = row_height(gauge);
  if (!height) return tl::unexpected(height.error());
  return *width / *height;
}

bool at_rest(double loop_shape) {
  const LoopConstant* spread = loop_constant_by_id("plain_spread_R");
  assert(spread);
  return loop_shape >= *spread->figure.low && loop_shape <= *spread->figure.high;
}

double metres_per_square_metre(double stitches_per_cm2) {
  return 100 * std::sqrt(relaxation(GaugeState::unstated).constant * stitches_per_cm2);
}

double firmness_from_gauge(double stitches_per_cm2, MetresPerGram density) {
  const double loop = std::sqrt(relaxation(GaugeState::unstated).constant / stitches_per_cm2);
  return firmness(density, centimetres(loop));
}

}  // namespace skeinproof
