// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fabric/loop_length.h"

#include <algorithm>
#include <cmath>

#include "core/fabric/gauge.h"
#include "core/fabric/relaxation.h"
#include "core/reference/lookup.h"
#include "core/units/show.h"

namespace skeinproof {
namespace {

double error_of_model(Structure structure, GaugeState state, const LoopGrounds& grounds) {
  const bool plain = structure == Structure::plain && grounds.springy && state != GaugeState::unstated;
  return plain ? grounds.errors.plain : grounds.errors.other;
}

LoopLength typed(const Fabric& fabric, const LoopGrounds& grounds) {
  // A typed figure is trusted no more than the model until a weighing backs it.
  return {fabric.typed_loop->value, "typed", "typed",
          error_of_model(fabric.structure, fabric.gauge.state, grounds)};
}

}  // namespace

Expected<LoopLength> loop_from_gauge(const Gauge& gauge, Structure structure, const LoopGrounds& grounds) {
  const StructureFactor& factor = structure_factor(structure);
  const bool borrowed = factor.draws_in && grounds.plain_gauge;
  const Gauge& used = borrowed ? *grounds.plain_gauge : gauge;
  const auto density = stitches_per_cm2(used);
  if (!density) return tl::unexpected(density.error());
  const Relaxation relaxed = relaxation(used.state);
  const double constant = grounds.constant.value_or(relaxed.constant);
  LoopLength length;
  length.loop = centimetres(std::sqrt(constant / *density) * factor.typical);
  length.how = "√(" + exact_number(constant) + " / " + show_number(*density, 2) + " stitches per cm²)";
  if (factor.typical != 1) length.how += " × " + exact_number(factor.typical);
  if (borrowed) length.how += ", by the gauge of stocking stitch";
  length.source = grounds.constant ? "typed" : relaxed.source;
  if (factor.typical != 1) length.source += "; factor of the structure: common practice, no source";
  length.error_share =
      factor.draws_in && !borrowed ? grounds.errors.drawn_in : error_of_model(structure, used.state, grounds);
  return length;
}

Expected<LoopLength> loop_from_swatch(Metres yarn, double stitches, double error_share,
                                      const LoopErrors& errors) {
  if (!(stitches > 0) || !std::isfinite(stitches))
    return failure(ErrorKind::out_of_range, "a swatch of " + exact_number(stitches) + " stitches",
                   "more than 0");
  if (!(yarn.value() > 0) || !std::isfinite(yarn.value()))
    return failure(ErrorKind::out_of_range, exact_number(yarn.value()) + " m of yarn in the swatch",
                   "more than 0");
  return LoopLength{to_centimetres(yarn) / stitches,
                    show_number(yarn.value(), 2) + " m / " + exact_number(stitches) + " stitches",
                    "weighed swatch", std::max(errors.weighed, error_share)};
}

Expected<LoopLength> loop_length(const Fabric& fabric, const LoopGrounds& grounds) {
  switch (fabric.loop_source) {
    case LoopSource::from_gauge:
      return loop_from_gauge(fabric.gauge, fabric.structure, grounds);
    case LoopSource::from_swatch:
      if (!fabric.swatch.stitches)
        return failure(ErrorKind::not_found, "a swatch without stitches", "stitches × rows of the swatch");
      if (!grounds.swatch_yarn)
        return failure(ErrorKind::not_found, "a swatch without yarn",
                       "its weight and the put-up of its yarn");
      return loop_from_swatch(*grounds.swatch_yarn, fabric.swatch.stitches->value, grounds.swatch_error_share,
                              grounds.errors);
    case LoopSource::typed:
      if (!fabric.typed_loop)
        return failure(ErrorKind::not_found, "no loop length", "yarn in one stitch, such as 1.5 cm");
      return typed(fabric, grounds);
  }
  return failure(ErrorKind::not_found, "no loop length", "a gauge, a weighed swatch or a typed one");
}

bool springy(const std::vector<FibreShare>& composition) {
  double all = 0, stiff = 0;
  for (const FibreShare& share : composition) {
    all += share.percent.value;
    const Fibre* fibre = fibre_by_id(share.fibre);
    if (!fibre) continue;
    const bool silk = fibre->id == "silk" || fibre->variety_of == "silk";
    if (silk || fibre->fibre_class == "plant" || fibre->fibre_class == "regenerated")
      stiff += share.percent.value;
  }
  return stiff <= 0 || stiff < all / 2;
}

double loop_in_widths(Centimetres loop, Centimetres stitch_width) { return loop / stitch_width; }

bool plausible_loop(double widths, Structure structure) {
  constexpr double least = 3.3, most = 4.6;
  return !structure_factor(structure).plain_loop || (widths >= least && widths <= most);
}

Expected<Centimetres> float_per_stitch(const Fabric& fabric, double slack) {
  if (fabric.float_per_stitch) return fabric.float_per_stitch->value;
  if (fabric.structure == Structure::intarsia) return Centimetres();
  const auto width = stitch_width(fabric.gauge);
  if (!width) return tl::unexpected(width.error());
  return *width * slack;
}

}  // namespace skeinproof
