// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/plan.h"

#include <algorithm>
#include <cmath>

namespace skeinproof {
namespace {

constexpr double exact_fit = 1e-9;
constexpr double most_skeins = 1e6;

int round_up(double fraction) {
  return static_cast<int>(std::min(most_skeins, std::ceil(fraction - exact_fit)));
}

Metres with_swatch(Metres knitted, const PlanInputs& inputs, const HouseStyle& house) {
  return house.swatch_counted ? knitted + inputs.swatch : knitted;
}

}  // namespace

Metres planned_length(Metres knitted, const PlanInputs& inputs, const HouseStyle& house) {
  return with_swatch(knitted, inputs, house) * (1.0 + house.allowance_pct / 100.0);
}

int skeins_for(Metres planned, Metres bare, Metres skein, const HouseStyle& house) {
  const double fraction = planned / skein;
  const int up = round_up(fraction);
  if (house.rounding == Rounding::up || up < 2 || !(bare > metres(0))) return up;
  const int down = up - 1;
  const bool a_hair_over = fraction - down <= house.hair_over_share + exact_fit;
  const double allowance_left = static_cast<double>(down) * skein / bare - 1.0;
  return a_hair_over && allowance_left >= house.minimum_allowance_pct / 100.0 ? down : up;
}

void plan(SizeNeed& need, Metres knitted, const PlanInputs& inputs, const HouseStyle& house) {
  need.known = true;
  need.swatch = house.swatch_counted ? inputs.swatch : metres(0);
  const auto lay = [&](Metres length) {
    need.knitted = length;
    need.planned = planned_length(length, inputs, house);
    need.allowance = need.planned - need.knitted - need.swatch;
  };
  lay(knitted);
  if (!inputs.skein) return;
  const auto count = [&] {
    return skeins_for(need.planned, need.knitted + need.swatch, *inputs.skein, house);
  };
  int skeins = count();
  // A join belongs to the need it is caused by: lengths and count settle together, and only upwards.
  for (int turn = 0; inputs.join_m && turn < 4; ++turn) {
    lay(knitted + metres(*inputs.join_m * std::max(0, skeins - 1)));
    const int again = std::max(skeins, count());
    if (again == skeins) break;
    skeins = again;
  }
  need.skeins = skeins;
  need.fraction = need.planned / *inputs.skein;
  if (const int needed = round_up(*need.fraction); needed > 0) {
    need.last_skein_share = *need.fraction - (needed - 1);
    if (*need.last_skein_share > inputs.brimful_share) need.last_skein = LastSkein::brimful;
    if (*need.last_skein_share < inputs.tips_over_share) need.last_skein = LastSkein::tips_over;
  }
}

}  // namespace skeinproof
