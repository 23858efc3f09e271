// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/yarn/linear_density.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <array>
#include <cmath>

#include "core/reference/lookup.h"

namespace skeinproof {
namespace {

PutUp put_up(double length_m, double weight_g) {
  PutUp result;
  result.length = Entered<Metres>{metres(length_m), {}};
  result.weight = Entered<Grams>{grams(weight_g), {}};
  return result;
}

TEST(LinearDensity, follows_from_the_put_up) {
  const MetresPerGram density = *linear_density(put_up(175, 50));
  EXPECT_DOUBLE_EQ(density.value(), 3.5);
  EXPECT_NEAR(in_tex(density), 285.714, 0.001);
  EXPECT_DOUBLE_EQ(metric_count(density), 3.5);
  EXPECT_DOUBLE_EQ(metres_per_100g(density), 350);
  EXPECT_NEAR(yards_per_ounce(density), 3.5 * 28.349523125 / 0.9144, 1e-12);
}

TEST(LinearDensity, says_what_is_missing) {
  PutUp incomplete = put_up(175, 50);
  incomplete.weight.reset();
  EXPECT_EQ(linear_density(incomplete).error().found, "no weight");
  EXPECT_EQ(linear_density({}).error().found, "no length");
  EXPECT_EQ(linear_density(put_up(0, 50)).error().kind, ErrorKind::out_of_range);
}

TEST(HeldTogether, adds_grams_a_metre) {
  const std::array<MetresPerGram, 2> alike = {metres_per_gram(8.4), metres_per_gram(8.4)};
  EXPECT_DOUBLE_EQ(held_together(alike).value(), 4.2);
  const std::array<MetresPerGram, 2> unlike = {metres_per_gram(4), metres_per_gram(12)};
  EXPECT_DOUBLE_EQ(held_together(unlike).value(), 3);
  const std::array<MetresPerGram, 1> single = {metres_per_gram(3.5)};
  EXPECT_DOUBLE_EQ(held_together(single).value(), 3.5);
}

RC_GTEST_PROP(Counts, go_there_and_back, ()) {
  const auto& system = count_systems()[*rc::gen::inRange<std::size_t>(0, count_systems().size())];
  const double mu = *rc::gen::inRange(1, 20'000) / 1000.0;
  const double back = from_count(system, in_count(system, metres_per_gram(mu))).value();
  RC_ASSERT(std::abs(back / mu - 1) < 1e-12);
}

RC_GTEST_PROP(Counts, bigger_is_thicker_only_where_direct, ()) {
  const auto& system = count_systems()[*rc::gen::inRange<std::size_t>(0, count_systems().size())];
  const double thin = in_count(system, metres_per_gram(8));
  const double thick = in_count(system, metres_per_gram(2));
  RC_ASSERT((thick > thin) == system.direct);
}

}  // namespace
}  // namespace skeinproof
