// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/plan.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace skeinproof {
namespace {

PlanInputs skein_of(double metres_in_skein, double swatch_m = 0) {
  PlanInputs inputs;
  inputs.skein = metres(metres_in_skein);
  inputs.swatch = metres(swatch_m);
  return inputs;
}

SizeNeed planned(double knitted_m, const PlanInputs& inputs, const HouseStyle& house = {}) {
  SizeNeed need;
  plan(need, metres(knitted_m), inputs, house);
  return need;
}

HouseStyle no_allowance() {
  HouseStyle house;
  house.allowance_pct = 0;
  return house;
}

TEST(Plan, LayersStandApart) {
  const SizeNeed need = planned(1125.65, skein_of(175, 20));
  EXPECT_DOUBLE_EQ(need.knitted.value(), 1125.65);
  EXPECT_DOUBLE_EQ(need.swatch.value(), 20);
  EXPECT_NEAR(need.allowance.value(), 57.2825, 1e-9);
  EXPECT_NEAR(need.planned.value(), 1202.9325, 1e-9);
  EXPECT_EQ(need.skeins, 7);
  EXPECT_NEAR(need.last_skein_share.value(), 1202.9325 / 175 - 6, 1e-12);
}

TEST(Plan, ExactlySoManySkeinsPrintSoMany) {
  const SizeNeed need = planned(350, skein_of(175), no_allowance());
  EXPECT_EQ(need.skeins, 2);
  EXPECT_DOUBLE_EQ(need.last_skein_share.value(), 1.0);
  EXPECT_EQ(need.last_skein, LastSkein::brimful);
  EXPECT_EQ(planned(350.001, skein_of(175), no_allowance()).skeins, 3);
}

TEST(Plan, AHairOverIsRoundedDownOnlyWhereTheHouseSaysSoAndAllowanceIsLeft) {
  // A need of 6.019 skeins.
  const double planned_m = 6.019 * 175;
  HouseStyle house;
  const double knitted_m = planned_m / 1.05;
  EXPECT_EQ(planned(knitted_m, skein_of(175), house).skeins, 7);
  house.rounding = Rounding::up_unless_hair_over;
  const SizeNeed need = planned(knitted_m, skein_of(175), house);
  EXPECT_EQ(need.skeins, 6);
  EXPECT_NEAR(need.last_skein_share.value(), 0.019, 1e-9);  // of the seventh, which it would need
  house.minimum_allowance_pct = 4.8;
  EXPECT_EQ(planned(knitted_m, skein_of(175), house).skeins, 7);
  house.minimum_allowance_pct = 4;
  house.hair_over_share = 0.01;
  EXPECT_EQ(planned(knitted_m, skein_of(175), house).skeins, 7);
}

TEST(Plan, OneSkeinIsNeverRoundedDownToNone) {
  HouseStyle house = no_allowance();
  house.rounding = Rounding::up_unless_hair_over;
  house.minimum_allowance_pct = -100;
  EXPECT_EQ(planned(1, skein_of(175), house).skeins, 1);
}

TEST(Plan, NothingNeededIsNoSkein) {
  const SizeNeed need = planned(0, skein_of(175), no_allowance());
  EXPECT_EQ(need.skeins, 0);
  EXPECT_FALSE(need.last_skein_share.has_value());
}

TEST(Plan, WithoutAPutUpThereIsLengthAndNoCount) {
  const SizeNeed need = planned(100, PlanInputs{}, no_allowance());
  EXPECT_TRUE(need.known);
  EXPECT_FALSE(need.skeins.has_value());
  EXPECT_FALSE(need.fraction.has_value());
}

TEST(Plan, JoinsAreCountedForEverySkeinAfterTheFirst) {
  PlanInputs inputs = skein_of(100);
  inputs.join_m = 0.3;
  EXPECT_DOUBLE_EQ(planned(250, inputs, no_allowance()).knitted.value(), 250.6);
  // 199.9 m fit two skeins, the join does not.
  const SizeNeed need = planned(199.9, inputs, no_allowance());
  EXPECT_EQ(need.skeins, 3);
  EXPECT_DOUBLE_EQ(need.knitted.value(), 200.5);
}

TEST(Plan, ASwatchTheHouseDoesNotCountStaysOut) {
  HouseStyle house = no_allowance();
  house.swatch_counted = false;
  EXPECT_DOUBLE_EQ(planned(100, skein_of(175, 20), house).planned.value(), 100);
}

RC_GTEST_PROP(PlanProperties, SkeinsHoldThePlanAndOneFewerDoesNot, ()) {
  const double skein_m = *rc::gen::inRange(1, 1000);
  const double knitted_m = *rc::gen::inRange(1, 3000000) / 100.0;
  const SizeNeed need = planned(knitted_m, skein_of(skein_m));
  RC_ASSERT(need.skeins.value() * skein_m >= need.planned.value() * (1 - 1e-8));
  RC_ASSERT((need.skeins.value() - 1) * skein_m < need.planned.value());
  RC_ASSERT(need.last_skein_share.value() > 0);
  RC_ASSERT(need.last_skein_share.value() <= 1 + 1e-8);
}

RC_GTEST_PROP(PlanProperties, MoreKnittingNeverNeedsFewerSkeins, (bool hair_over)) {
  HouseStyle house;
  house.rounding = hair_over ? Rounding::up_unless_hair_over : Rounding::up;
  const double knitted_m = *rc::gen::inRange(1, 300000) / 100.0;
  const double more_m = knitted_m + *rc::gen::inRange(0, 30000) / 100.0;
  const PlanInputs inputs = skein_of(*rc::gen::inRange(10, 500), *rc::gen::inRange(0, 50));
  RC_ASSERT(planned(more_m, inputs, house).skeins.value() >=
            planned(knitted_m, inputs, house).skeins.value());
}

}  // namespace
}  // namespace skeinproof
