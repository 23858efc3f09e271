// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <vector>

#include "core/base/error.h"
#include "core/reference/tables.h"
#include "core/yarn/yarn.h"

namespace skeinproof {

// Density of the fibres of a yarn, without the air between them, g/cm³: 1/rho = sum of share/rho. Shares are
// taken of their sum. `rows` are the fibres it rests on. Fails where there is no fibre or one that the table
// does not know.
struct FibreDensity {
  double g_per_cm3 = 0, low = 0, high = 0;
  std::vector<const Fibre*> rows;
};
Expected<FibreDensity> fibre_density(const std::vector<FibreShare>& composition);

// Share of the yarn's cross-section that is fibre, inside the fabric, by how it was spun.
const LoopConstant& packing_fraction(Spinning spinning);

// d = sqrt(4 tex / (1000 pi rho phi)) mm, rho in g/cm³, phi the packing fraction.
Centimetres yarn_diameter(MetresPerGram density, double fibre_g_per_cm3, double packing);

// How many times thicker a second yarn is than a first of the same packing: sqrt(mu_1 rho_1 / (mu_2 rho_2)).
double thickness_ratio(MetresPerGram first, double first_g_per_cm3, MetresPerGram second,
                       double second_g_per_cm3);

// Firmness (tightness factor) of a fabric: sqrt(tex) / loop length in cm.
double firmness(MetresPerGram density, Centimetres loop);

}  // namespace skeinproof
