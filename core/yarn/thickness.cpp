// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/yarn/thickness.h"

#include <array>
#include <cassert>
#include <cmath>
#include <numbers>

#include "core/base/text.h"
#include "core/reference/lookup.h"
#include "core/yarn/linear_density.h"

namespace skeinproof {

Expected<FibreDensity> fibre_density(const std::vector<FibreShare>& composition) {
  double total = 0, volume = 0, least_volume = 0, most_volume = 0;
  FibreDensity density;
  for (const FibreShare& share : composition) {
    const Fibre* fibre = fibre_by_id(share.fibre);
    if (!fibre)
      return failure(ErrorKind::unknown_name, quoted(share.words),
                     "a fibre whose density is in the fibre table");
    const double percent = share.percent.value;
    if (percent <= 0) continue;
    const double rho = fibre->density.value.value_or(0);
    assert(rho > 0);
    total += percent;
    volume += percent / rho;
    least_volume += percent / fibre->density.high.value_or(rho);
    most_volume += percent / fibre->density.low.value_or(rho);
    density.rows.push_back(fibre);
  }
  if (total <= 0)
    return failure(ErrorKind::not_found, "no fibres", "the fibres of the yarn with their percentages");
  density.g_per_cm3 = total / volume;
  density.low = total / most_volume;
  density.high = total / least_volume;
  return density;
}

const LoopConstant& packing_fraction(Spinning spinning) {
  struct Row {
    Spinning spinning;
    std::string_view id;
  };
  constexpr std::array<Row, 5> rows = {{{Spinning::unstated, "phi_plied_fabric"},
                                        {Spinning::worsted, "phi_worsted"},
                                        {Spinning::semi_worsted, "phi_semi_worsted"},
                                        {Spinning::woollen, "phi_woollen"},
                                        {Spinning::filament, "phi_filament_silk"}}};
  std::string_view id = rows[0].id;
  for (const Row& row : rows)
    if (row.spinning == spinning) id = row.id;
  const LoopConstant* constant = loop_constant_by_id(id);
  assert(constant && constant->figure.value);
  return *constant;
}

Centimetres yarn_diameter(MetresPerGram density, double fibre_g_per_cm3, double packing) {
  const double millimetres =
      std::sqrt(4 * in_tex(density) / (1000 * std::numbers::pi * fibre_g_per_cm3 * packing));
  return centimetres(millimetres / 10);
}

double thickness_ratio(MetresPerGram first, double first_g_per_cm3, MetresPerGram second,
                       double second_g_per_cm3) {
  return std::sqrt(first.value() * first_g_per_cm3 / (second.value() * second_g_per_cm3));
}

double firmness(MetresPerGram density, Centimetres loop) { return std::sqrt(in_tex(density)) / loop.value(); }

}  // namespace skeinproof
