// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/yarn/linear_density.h"

#include <cassert>

namespace skeinproof {

Expected<MetresPerGram> linear_density(const PutUp& put_up) {
  if (!put_up.length) return failure(ErrorKind::not_found, "no length", "the length of one skein");
  if (!put_up.weight) return failure(ErrorKind::not_found, "no weight", "the weight of one skein");
  if (put_up.length->value.value() <= 0 || put_up.weight->value.value() <= 0)
    return failure(ErrorKind::out_of_range, "a skein of nothing", "a length and a weight of more than zero");
  return put_up.length->value / put_up.weight->value;
}

double in_tex(MetresPerGram density) { return 1000 / density.value(); }
MetresPerGram from_tex(double tex) { return metres_per_gram(1000 / tex); }
double metric_count(MetresPerGram density) { return density.value(); }
double metres_per_100g(MetresPerGram density) { return 100 * density.value(); }
double yards_per_ounce(MetresPerGram density) { return density.value() * grams_per_ounce / metres_per_yard; }

double in_count(const CountSystem& system, MetresPerGram density) {
  const double tex = in_tex(density);
  return system.direct ? tex / system.tex_constant : system.tex_constant / tex;
}
MetresPerGram from_count(const CountSystem& system, double number) {
  return from_tex(system.direct ? system.tex_constant * number : system.tex_constant / number);
}

MetresPerGram held_together(std::span<const MetresPerGram> strands) {
  assert(!strands.empty());
  double grams_per_metre = 0;
  for (MetresPerGram strand : strands) grams_per_metre += 1 / strand.value();
  return metres_per_gram(1 / grams_per_metre);
}

MetresPerGram plied(MetresPerGram end, int ends, double take_up) {
  assert(ends > 0);
  return end / (ends * (1 + take_up));
}

}  // namespace skeinproof
