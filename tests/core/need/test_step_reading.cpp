// SPDX-License-Identifier: GPL-3.0-or-later
// Expected bounds were worked out by a separate script from the rule (k_j - 1) L r^g < planned <= k_j L r^g.
#include "core/need/step_reading.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <cmath>

#include "core/need/assessment.h"
#include "core/need/constants.h"
#include "tests/support/samples.h"

namespace skeinproof {
namespace {

using testing::lampwick;
using testing::quillmarsh;

using Values = std::vector<std::optional<double>>;

const Values yoke_areas = {.751, .815, .924, 1.002, 1.118, 1.206, 1.322, 1.411, 1.534};
const Values yoke_mc = {5, 5, 6, 7, 7, 8, 9, 9, 10};
constexpr GrowthLimits whole{0.9, 1.1}, part{0.5, 1.0};

StepReading reading_of(Values counts, Values extents, double skein_m, GrowthLimits limits) {
  auto reading = read_steps({std::move(counts), std::move(extents), metres(skein_m), limits});
  EXPECT_TRUE(reading) << (reading ? "" : reading.error().message());
  return reading ? *reading : StepReading{};
}

struct Told {
  double low_m, high_m;
  std::size_t low_by, high_by;  // from 1
};

void expect_told(const StepReading& reading, std::size_t size, const Told& told, double within = 0.5) {
  SCOPED_TRACE("size " + std::to_string(size));
  const SizeSteps& steps = reading.sizes.at(size - 1);
  ASSERT_TRUE(steps.known());
  EXPECT_NEAR(steps.low->length.value(), told.low_m, within);
  EXPECT_NEAR(steps.high->length.value(), told.high_m, within);
  EXPECT_EQ(steps.low->told_by + 1, told.low_by);
  EXPECT_EQ(steps.high->told_by + 1, told.high_by);
}

void expect_main_colour_of_the_yoke(const StepReading& reading, double within) {
  EXPECT_FALSE(reading.clash);
  expect_told(reading, 1, {764.61, 812.91, 4, 2}, within);
  expect_told(reading, 2, {836.58, 875.00, 4, 2}, within);
  expect_told(reading, 3, {960.45, 1004.56, 4, 2}, within);
  expect_told(reading, 4, {1050.0, 1098.22, 4, 2}, within);
  expect_told(reading, 5, {1164.29, 1225.0, 7, 5}, within);
  expect_told(reading, 6, {1265.48, 1331.47, 7, 5}, within);
  expect_told(reading, 7, {1400.0, 1473.01, 7, 5}, within);
  expect_told(reading, 8, {1484.55, 1575.0, 7, 8}, within);
  expect_told(reading, 9, {1600.53, 1726.67, 7, 8}, within);
}

TEST(StepReading, AMainColourInNineSizes) {
  const StepReading reading = reading_of(yoke_mc, yoke_areas, 175, whole);
  expect_main_colour_of_the_yoke(reading, 0.01);
  const auto own = own_steps(reading, 0);
  ASSERT_TRUE(own);
  EXPECT_DOUBLE_EQ(own->low.value(), 700);
  EXPECT_DOUBLE_EQ(own->high.value(), 875);
  // The seventh skein of size 4 and the fifth of size 2.
  EXPECT_NEAR(last_skein_supply(reading, 3)->at_most.value(), 48.2, 0.1);
  EXPECT_NEAR(last_skein_supply(reading, 1)->at_least.value(), 136.6, 0.1);
}

TEST(StepReading, ReadsTheSampleFromItsNeedSheetAndHoldsEveryTruth) {
  const Pattern pattern = quillmarsh();
  const Assessment truth = assess(pattern);
  for (const RoleNeed& need : truth.roles) {
    const auto reading = read_steps(pattern, need.role);
    ASSERT_TRUE(reading) << reading.error().message();
    EXPECT_EQ(reading->over, GrowthOver::area);
    for (std::size_t i = 0; i < need.sizes.size(); ++i) {
      EXPECT_LT(reading->sizes[i].low->length, need.sizes[i].planned) << need.label << i;
      EXPECT_GE(reading->sizes[i].high->length, need.sizes[i].planned) << need.label << i;
    }
  }
  expect_main_colour_of_the_yoke(*read_steps(pattern, pattern.roles[0].id),
                                 1.5);  // areas to three decimals there
  EXPECT_EQ(read_steps(pattern, pattern.roles[0].id)->band, GrowthBand::whole_garment);
  EXPECT_EQ(read_steps(pattern, pattern.roles[3].id)->band, GrowthBand::part);
}

TEST(StepReading, PlainProportionWouldMissSevenOfNineAndIsRefused) {
  EXPECT_FALSE(read_steps({yoke_mc, yoke_areas, metres(175), {1, 1}}));
  // As near to it as makes no difference: tight, and wrong.
  const StepReading strict = reading_of(yoke_mc, yoke_areas, 175, {1, 1 + 1e-9});
  const RoleNeed truth = assess(quillmarsh()).roles[0];
  int missed = 0;
  for (std::size_t i = 0; i < truth.sizes.size(); ++i) {
    const Metres planned = truth.sizes[i].planned;
    missed += !(strict.sizes[i].low->length < planned && planned <= strict.sizes[i].high->length);
    EXPECT_LT((strict.sizes[i].high->length - strict.sizes[i].low->length).value(), 0.02 * planned.value());
  }
  EXPECT_EQ(missed, 7);
}

TEST(StepReading, OneSkeinInEverySize) {
  const StepReading reading = reading_of(Values(9, 1.0), yoke_areas, 175, part);
  expect_told(reading, 1, {0, 122.45, 1, 9}, 0.01);
  expect_told(reading, 4, {0, 141.44, 4, 9}, 0.01);
  expect_told(reading, 9, {0, 175.0, 9, 9}, 0.01);
}

TEST(StepReading, SocksThatGrowThreefold) {
  const Pattern pattern = lampwick();
  const auto main = read_steps(pattern, pattern.roles[0].id);
  const auto contrast = read_steps(pattern, pattern.roles[1].id);
  ASSERT_TRUE(main && contrast);
  EXPECT_NEAR(main->sizes[0].high->length.value(), 75.3, 0.1);
  EXPECT_EQ(main->sizes[0].high->told_by, 4u);
  EXPECT_NEAR(contrast->sizes[2].low->length.value(), 156.3, 0.1);
  EXPECT_NEAR(contrast->sizes[2].high->length.value(), 210, 1e-9);
  EXPECT_NEAR(last_skein_supply(*contrast, 3)->at_most.value(), 72.1, 0.1);
  const Assessment truth = assess(pattern);
  EXPECT_NEAR(truth.roles[1].sizes[3].planned.value() - 210, 8.1, 0.05);
  for (std::size_t role = 0; role < 2; ++role)
    for (std::size_t i = 0; i < 5; ++i) {
      const SizeSteps& steps = (role == 0 ? *main : *contrast).sizes[i];
      EXPECT_LT(steps.low->length, truth.roles[role].sizes[i].planned);
      EXPECT_GE(steps.high->length, truth.roles[role].sizes[i].planned);
    }
}

TEST(StepReading, TheTwoSizeRuleOfThumb) {
  // The first size with one skein more: its last skein supplies at most k L (r^g - 1).
  const StepReading reading = reading_of(Values{5, 6}, Values{1.0, 1.1}, 175, whole);
  EXPECT_NEAR(last_skein_supply(reading, 1)->at_most.value(), 5 * 175 * (std::pow(1.1, 1.1) - 1), 1e-9);
  // The last of a run on k skeins needs at least (k - 1) L r^g.
  const StepReading run = reading_of(Values{5, 5, 5}, Values{1.0, 1.1, 1.2}, 175, whole);
  EXPECT_NEAR(run.sizes[2].low->length.value(), 4 * 175 * std::pow(1.2, 0.9), 1e-9);
  EXPECT_EQ(run.sizes[2].low->told_by, 0u);
}

TEST(StepReading, ACountRoundedDownLeavesAListThatAgreesAndIsWrong) {
  Values counts(9, 2.0);
  counts[0] = 1;
  const StepReading reading = reading_of(counts, yoke_areas, 175, part);
  EXPECT_FALSE(reading.clash);
  const std::vector<double> upper = {175, 189.9, 215.3}, planned = {186.4, 199.2, 216.1};
  for (std::size_t i = 0; i < 3; ++i) {
    EXPECT_NEAR(reading.sizes[i].high->length.value(), upper[i], 0.05);
    EXPECT_LT(reading.sizes[i].high->length.value(), planned[i]);
  }
}

TEST(StepReading, AListThatContradictsItselfNamesThePairAndWhatMendsIt) {
  const StepReading reading = reading_of(Values{5, 5, 6, 7, 8, 7, 9, 9, 10}, yoke_areas, 175, whole);
  ASSERT_TRUE(reading.clash);
  EXPECT_EQ(reading.clash->asks_more, 4u);
  EXPECT_EQ(reading.clash->allows_less, 5u);
  ASSERT_EQ(reading.clash->mends.size(), 2u);
  EXPECT_EQ(reading.clash->mends[0].size_index, 4u);
  EXPECT_EQ(reading.clash->mends[0].exchanged_with, 5u);
  EXPECT_EQ(reading.clash->mends[0].counts[4], 7);
  EXPECT_EQ(reading.clash->mends[1].size_index, 5u);
  EXPECT_FALSE(reading.clash->mends[1].exchanged_with);
  EXPECT_EQ(reading.clash->mends[1].counts[5], 8);
  EXPECT_FALSE(last_skein_supply(reading, 4));
}

TEST(StepReading, BustAloneHasAWiderBand) {
  Pattern pattern = quillmarsh();
  pattern.pieces.clear();
  const auto reading = read_steps(pattern, pattern.roles[0].id);
  ASSERT_TRUE(reading);
  EXPECT_EQ(reading->over, GrowthOver::circumference);
  EXPECT_EQ(reading->limits, (GrowthLimits{0.9, 1.4}));
  expect_told(*reading, 1, {700.0, 792.34, 1, 2}, 0.01);
  expect_told(*reading, 4, {1050.0, 1123.46, 4, 5}, 0.01);
  expect_told(*reading, 9, {1578.78, 1740.15, 7, 8}, 0.01);
  pattern.wearer = "child";
  EXPECT_EQ(read_steps(pattern, pattern.roles[0].id)->limits, (GrowthLimits{1.6, 2.7}));
  EXPECT_EQ(read_steps(pattern, pattern.roles[1].id)->limits, (GrowthLimits{0.8, 2.7}));
}

TEST(StepReading, TheMainColourIsWholeGarmentUnlessTheUserSaysOtherwise) {
  Pattern pattern = quillmarsh();
  for (Role& role : pattern.roles) role.growth = GrowthBand::automatic;
  EXPECT_EQ(growth_band(pattern, pattern.roles[0]), GrowthBand::whole_garment);
  EXPECT_EQ(growth_band(pattern, pattern.roles[1]), GrowthBand::part);
  pattern.roles[2].goes_along_with = pattern.roles[0].id;
  EXPECT_EQ(growth_band(pattern, pattern.roles[2]), GrowthBand::whole_garment);
  pattern.roles[2].growth = GrowthBand::hardly_grows;
  EXPECT_EQ(growth_band(pattern, pattern.roles[2]), GrowthBand::hardly_grows);
  EXPECT_EQ(growth_limits(pattern, GrowthBand::hardly_grows, GrowthOver::area), (GrowthLimits{0, 0.5}));
  EXPECT_EQ(growth_limits(pattern, GrowthBand::unknown, GrowthOver::area), (GrowthLimits{0, 1.15}));
  pattern.constants.push_back({"growth_whole_high", {1.3, "1.3"}});
  EXPECT_EQ(growth_limits(pattern, GrowthBand::whole_garment, GrowthOver::area), (GrowthLimits{0.9, 1.3}));
  pattern.constants.back().value.value = 0.5;
  EXPECT_FALSE(read_steps(pattern, pattern.roles[0].id)) << "a band upside down";
}

TEST(StepReading, GapsLeaveTheRestWorking) {
  Values counts = yoke_mc;
  counts[0] = std::nullopt;
  const StepReading reading = reading_of(counts, yoke_areas, 175, whole);
  expect_told(reading, 1, {764.61, 812.91, 4, 2}, 0.01);
  EXPECT_FALSE(own_steps(reading, 0));
  Values areas = yoke_areas;
  areas[3] = std::nullopt;
  const StepReading without_area = reading_of(yoke_mc, areas, 175, whole);
  expect_told(without_area, 4, {1050, 1225, 4, 4}, 1e-9);
  EXPECT_EQ(without_area.sizes[2].high->told_by, 1u);
}

TEST(StepReading, ASizeWithoutTheColourSaysNothingAboutTheOthers) {
  Values counts = yoke_mc;
  counts[8] = 0;
  const StepReading reading = reading_of(counts, yoke_areas, 175, whole);
  EXPECT_FALSE(reading.clash);
  EXPECT_EQ(reading.sizes[8].high->length, metres(0));
  expect_told(reading, 8, {1484.55, 1575.0, 7, 8}, 0.01);
}

TEST(StepReading, SaysWhatIsWrongWithItsInput) {
  const auto error_of = [](Values counts, Values areas, double skein, GrowthLimits limits) {
    const auto reading = read_steps({std::move(counts), std::move(areas), metres(skein), limits});
    EXPECT_FALSE(reading);
    return reading ? Error{} : reading.error();
  };
  EXPECT_EQ(error_of({5, 5.5}, {1.0, 1.1}, 175, whole).kind, ErrorKind::wrong_shape);
  EXPECT_EQ(error_of({5, -1.0}, {1.0, 1.1}, 175, whole).kind, ErrorKind::out_of_range);
  EXPECT_EQ(error_of({5}, {1.0, 1.1}, 175, whole).kind, ErrorKind::wrong_count);
  EXPECT_EQ(error_of({5, 5}, {1.0, 1.1}, 0, whole).expected, "the metres in one skein");
  EXPECT_EQ(error_of({5, 5}, {1.0, 1.1}, 175, {1.1, 0.9}).expected, "a lower end below the upper end");
  EXPECT_EQ(error_of({5, 5}, {std::nullopt, std::nullopt}, 175, whole).kind, ErrorKind::not_found);
  EXPECT_EQ(error_of({std::nullopt, std::nullopt}, {1.0, 1.1}, 175, whole).kind, ErrorKind::not_found);
  EXPECT_EQ(error_of({5, 5}, {1.0, 0.0}, 175, whole).kind, ErrorKind::out_of_range);
  EXPECT_EQ(error_of({5, 5}, {1.0, 1.1}, 1e300, whole).kind, ErrorKind::out_of_range);
}

TEST(StepReading, StaysFiniteForSizesOfDifferentWorlds) {
  const StepReading reading = reading_of({1, 7}, {1e-300, 1e300}, 175, {0, 5});
  for (const SizeSteps& size : reading.sizes) {
    EXPECT_TRUE(std::isfinite(size.low->length.value()));
    EXPECT_TRUE(std::isfinite(size.high->length.value()));
  }
}

TEST(StepReading, HoldsTheTruthOfEveryPowerLawWithinTheBand) {
  EXPECT_TRUE(rc::check("bounds hold the planned length", [] {
    const auto share = [](int steps) { return *rc::gen::inRange(0, steps + 1) / static_cast<double>(steps); };
    const auto n = *rc::gen::inRange<std::size_t>(1, 12);
    const double low = 2 * share(1000), high = low + 0.01 + share(1000);
    const double exponent = low + (high - low) * share(1000);
    const double skein = 20 + 400 * share(1000), first = 5 + 4000 * share(1000);
    Values areas, counts;
    std::vector<double> planned;
    for (std::size_t i = 0; i < n; ++i) {
      areas.push_back(0.1 + 2 * share(10000));
      planned.push_back(first * std::pow(*areas[i] / *areas[0], exponent));
      counts.push_back(std::max(1.0, std::ceil(planned[i] / skein)));
      if (i > 0 && *rc::gen::inRange(0, 8) == 0) counts[i] = std::nullopt;
    }
    const auto reading = read_steps({counts, areas, metres(skein), {low, high}});
    RC_ASSERT(reading.has_value());
    RC_ASSERT(!reading->clash.has_value());
    for (std::size_t i = 0; i < n; ++i) {
      RC_ASSERT(reading->sizes[i].low->length.value() < planned[i] * (1 + 1e-9));
      RC_ASSERT(reading->sizes[i].high->length.value() > planned[i] * (1 - 1e-9));
    }
  }));
}

}  // namespace
}  // namespace skeinproof
