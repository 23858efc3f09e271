// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/fabric_loop.h"

#include <algorithm>

#include "core/fabric/gauge.h"
#include "core/fabric/loop_length.h"
#include "core/fabric/relaxation.h"
#include "core/need/constants.h"
#include "core/yarn/weigh.h"

namespace skeinproof {
namespace {

const Fabric* first_plain_fabric(const Pattern& pattern) {
  const auto found = std::find_if(pattern.fabrics.begin(), pattern.fabrics.end(), [](const Fabric& fabric) {
    return fabric.structure == Structure::plain && stitches_per_cm2(fabric.gauge).has_value();
  });
  return found == pattern.fabrics.end() ? nullptr : &*found;
}

Expected<WeighedLength> swatch_length(const Swatch& swatch, const Yarn& yarn) {
  WeighedYarn input;
  input.reading = swatch.weight ? swatch.weight->value : grams(0);
  input.put_up = yarn.put_up;
  input.composition = yarn.composition;
  input.spinning = yarn.spinning;
  input.market = yarn.market;
  if (swatch.new_skein) input.new_skein = swatch.new_skein->value;
  if (swatch.humidity_pct) input.humidity_pct = swatch.humidity_pct->value;
  if (swatch.scale_step) input.scale_step = swatch.scale_step->value;
  return weighed_length(input);
}

const char* relaxation_key(GaugeState state) {
  switch (state) {
    case GaugeState::never_wetted:
      return "k_never_wetted";
    case GaugeState::wetted:
      return "k_wetted";
    case GaugeState::washed:
      return "k_washed";
    case GaugeState::unstated:
      break;
  }
  return "k_unstated";
}

LoopErrors errors_in_force(const Pattern& pattern) {
  const auto share = [&](std::string_view key) { return constant(pattern, key) / 100; };
  return {share("error_plain_pct"), share("error_textured_pct"), share("error_drawn_in_pct"),
          share("error_weighed_pct")};
}

Ground ground_of(LoopSource source) {
  switch (source) {
    case LoopSource::from_swatch:
      return Ground::swatch;
    case LoopSource::from_gauge:
      return Ground::gauge;
    case LoopSource::typed:
      return Ground::sheet;
  }
  return Ground::none;
}

}  // namespace

FabricLoop fabric_loop(const Pattern& pattern, const Fabric& fabric, const Yarn* yarn, Step* step,
                       const NumberStyle& style) {
  FabricLoop result;
  const Fabric* plain = first_plain_fabric(pattern);
  const auto own_density = stitches_per_cm2(fabric.gauge);
  if (own_density)
    result.density_per_cm2 = *own_density;
  else if (plain != nullptr)
    result.density_per_cm2 = *stitches_per_cm2(plain->gauge);
  if (const auto width = stitch_width(fabric.gauge)) result.stitch_width = *width;
  if (const auto over = float_per_stitch(fabric, constant(pattern, "float_slack")))
    result.float_per_stitch = *over;
  result.typed = fabric.loop_source == LoopSource::typed;

  LoopGrounds grounds;
  if (plain != nullptr && plain != &fabric) grounds.plain_gauge = &plain->gauge;
  grounds.springy = yarn == nullptr || springy(yarn->composition);
  grounds.errors = errors_in_force(pattern);
  const GaugeState state = grounds.plain_gauge != nullptr && structure_factor(fabric.structure).draws_in
                               ? grounds.plain_gauge->state
                               : fabric.gauge.state;
  if (const ConstantOverride* own = own_constant(pattern, relaxation_key(state)))
    grounds.constant = own->value.value;
  const Yarn* swatch_yarn = fabric.swatch.yarn ? pattern.yarn(fabric.swatch.yarn) : yarn;
  if (fabric.loop_source == LoopSource::from_swatch && swatch_yarn != nullptr) {
    if (const auto length = swatch_length(fabric.swatch, *swatch_yarn)) {
      grounds.swatch_yarn = length->length;
      grounds.swatch_error_share = std::max((length->high - length->length) / length->length,
                                            (length->length - length->low) / length->length);
    }
  }
  const auto loop = loop_length(fabric, grounds);
  if (!loop) {
    result.missing = "a loop length of “" + fabric.name + "”: " + loop.error().message();
    return result;
  }
  result.loop = loop->loop;
  result.error = loop->error_share;
  result.because = loop->source;
  if (step != nullptr) {
    step->label = "Loop length ℓ";
    step->how = loop->how.empty() ? fabric.name : fabric.name + ", " + loop->how;
    step->figure = loop->loop.value();
    step->unit = FigureUnit::centimetres;
    step->decimals = 3;
    step->ground = ground_of(fabric.loop_source);
    step->source = loop->source;
    step->place = {"Pieces", fabric.id.value};
  }
  (void)style;
  return result;
}

}  // namespace skeinproof
