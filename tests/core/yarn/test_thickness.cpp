// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/yarn/thickness.h"

#include <gtest/gtest.h>

#include "core/yarn/linear_density.h"

namespace skeinproof {
namespace {

FibreShare share(std::string fibre, double percent) { return {fibre, fibre, {percent, {}}}; }

// Densities of Morton & Hearle, Physical Properties of Textile Fibres, 2008, Table 5.1: wool 1.31,
// nylon 1.14.
TEST(FibreDensity, of_a_blend_adds_volumes) {
  EXPECT_DOUBLE_EQ(fibre_density({share("wool", 100)})->g_per_cm3, 1.31);
  const auto blend = fibre_density({share("wool", 75), share("polyamide", 25)});
  EXPECT_NEAR(blend->g_per_cm3, 1 / (0.75 / 1.31 + 0.25 / 1.14), 1e-12);
  EXPECT_LE(blend->low, blend->g_per_cm3);
  EXPECT_GE(blend->high, blend->g_per_cm3);
  EXPECT_EQ(blend->rows.size(), 2u);
  // Shares that do not add to 100 are taken of their sum.
  EXPECT_NEAR(fibre_density({share("wool", 75), share("polyamide", 30)})->g_per_cm3,
              105 / (75 / 1.31 + 30 / 1.14), 1e-12);
}

TEST(FibreDensity, is_not_guessed) {
  EXPECT_EQ(fibre_density({}).error().kind, ErrorKind::not_found);
  EXPECT_EQ(fibre_density({share("wool", 0)}).error().kind, ErrorKind::not_found);
  EXPECT_EQ(fibre_density({{"", "moon dust", {100, {}}}}).error().found, "“moon dust”");
}

TEST(Thickness, needs_less_length_of_a_denser_fibre_for_the_same_diameter) {
  const double ratio = thickness_ratio(metres_per_gram(3.5), 1.31, metres_per_gram(3.5), 1.52);
  EXPECT_NEAR(ratio, std::sqrt(1.31 / 1.52), 1e-12);
  const double d = yarn_diameter(metres_per_gram(2.25), 1.31, 0.25).value();
  const double same = yarn_diameter(metres_per_gram(2.25 * 1.31 / 1.52), 1.52, 0.25).value();
  EXPECT_NEAR(d, same, 1e-15);
}

TEST(Packing, follows_the_spinning) {
  EXPECT_EQ(packing_fraction(Spinning::worsted).id, "phi_worsted");
  EXPECT_EQ(packing_fraction(Spinning::unstated).id, "phi_plied_fabric");
  EXPECT_LT(*packing_fraction(Spinning::woollen).figure.value,
            *packing_fraction(Spinning::semi_worsted).figure.value);
  EXPECT_LT(*packing_fraction(Spinning::semi_worsted).figure.value,
            *packing_fraction(Spinning::worsted).figure.value);
  EXPECT_LT(*packing_fraction(Spinning::worsted).figure.value,
            *packing_fraction(Spinning::filament).figure.value);
}

TEST(Firmness, is_root_tex_over_loop) {
  EXPECT_NEAR(firmness(metres_per_gram(2.5), centimetres(2)), 10, 1e-12);
}

}  // namespace
}  // namespace skeinproof
