// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/layer.h"

#include "core/need/constants.h"
#include "core/need/plan.h"

namespace skeinproof {
namespace {

// The same counting as the plan's, with nothing added.
SizeNeed counted_bare(const Pattern& pattern, Metres length, Metres skein) {
  HouseStyle bare;
  bare.allowance_pct = 0;
  bare.swatch_counted = false;
  bare.rounding = Rounding::up;
  PlanInputs inputs;
  inputs.skein = skein;
  inputs.brimful_share = constant(pattern, "brimful_share");
  inputs.tips_over_share = constant(pattern, "tips_over_share");
  SizeNeed need;
  plan(need, length, inputs, bare);
  return need;
}

}  // namespace

std::optional<Metres> skein_length(const Pattern& pattern, RoleId role_id) {
  const Role* role = pattern.role(role_id);
  const Yarn* yarn = role ? pattern.yarn(role->yarn) : nullptr;
  if (!yarn || !yarn->put_up.length || !(yarn->put_up.length->value > metres(0))) return std::nullopt;
  return yarn->put_up.length->value;
}

int whole_skeins(Metres length, Metres skein) {
  HouseStyle up;
  up.rounding = Rounding::up;
  return skeins_for(length, length, skein, up);
}

std::optional<LayerNeed> layer_need(const Pattern& pattern, RoleId role, const SizeNeed& need, Layer layer) {
  if (!need.known) return std::nullopt;
  LayerNeed shown;
  shown.length = layer == Layer::knitted       ? need.knitted
                 : layer == Layer::with_swatch ? need.knitted + need.swatch
                                               : need.planned;
  const auto skein = skein_length(pattern, role);
  if (!skein) return shown;
  const SizeNeed counted = layer == Layer::planned ? need : counted_bare(pattern, shown.length, *skein);
  shown.fraction = counted.fraction;
  shown.skeins = counted.skeins;
  shown.last_skein_share = counted.last_skein_share;
  shown.last_skein = counted.last_skein;
  if (shown.skeins) {
    shown.bought = static_cast<double>(*shown.skeins) * *skein;
    shown.left_over = *shown.bought - shown.length;
  }
  return shown;
}

}  // namespace skeinproof
