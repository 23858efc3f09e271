// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/yarn/weigh.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

namespace skeinproof {
namespace {

WeighedYarn wool_on_scale(double reading_g) {
  WeighedYarn yarn;
  yarn.reading = grams(reading_g);
  yarn.put_up.length = Entered<Metres>{metres(100), {}};
  yarn.put_up.weight = Entered<Grams>{grams(50), {}};
  yarn.composition = {{"wool", "wool", {100, {}}}};
  yarn.spinning = Spinning::worsted;
  yarn.market = Market::europe;
  yarn.scale_step = grams(0.1);
  return yarn;
}

bool assumes(const WeighedLength& length, std::string_view words) {
  for (const auto& sentence : length.assumed)
    if (sentence.find(words) != std::string::npos) return true;
  return false;
}

// International Critical Tables: wool at 40 % relative humidity holds 10.8 %; European allowance of combed
// wool 18.25 %.
TEST(WeighedLength, corrects_for_a_stated_humidity) {
  WeighedYarn yarn = wool_on_scale(18.4);
  yarn.humidity_pct = 40;
  const auto length = weighed_length(yarn);
  ASSERT_TRUE(length);
  EXPECT_NEAR(length->length.value(), 39.27, 0.01);
  EXPECT_LT(length->low.value(), 39.27);
  EXPECT_GT(length->high.value(), 39.28);
  EXPECT_NEAR(length->scale.shorter, 0.5 * 0.1 / 18.4, 1e-12);
  EXPECT_GT(length->moisture.shorter, 0);
  EXPECT_EQ(length->lines.back().value, length->length.value());
  EXPECT_FALSE(assumes(*length, "moisture"));
}

TEST(WeighedLength, a_new_skein_cancels_the_air) {
  WeighedYarn yarn = wool_on_scale(18.4);
  yarn.new_skein = grams(46.85);
  yarn.humidity_pct = 40;  // not needed
  const auto length = weighed_length(yarn);
  ASSERT_TRUE(length);
  EXPECT_NEAR(length->length.value(), 18.4 / 46.85 * 100, 1e-9);
  EXPECT_EQ(length->moisture, ErrorShare{});
  EXPECT_NEAR(length->scale.longer, std::hypot(0.05 / 18.4, 0.05 / 46.85), 1e-12);
  // A reading 3 % off in both cancels as well.
  yarn.reading *= 1.03;
  yarn.new_skein = *yarn.new_skein * 1.03;
  EXPECT_NEAR(weighed_length(yarn)->length.value(), length->length.value(), 1e-9);
  yarn.put_up.weight.reset();
  EXPECT_TRUE(weighed_length(yarn));
}

TEST(WeighedLength, uncorrected_is_wide_and_says_so) {
  const auto length = weighed_length(wool_on_scale(18.4));
  ASSERT_TRUE(length);
  EXPECT_DOUBLE_EQ(length->length.value(), 36.8);
  EXPECT_TRUE(assumes(*length, "moisture not corrected"));
  // The corrected answers of a dry and a damp room lie within.
  for (double humidity : {30.0, 70.0}) {
    WeighedYarn corrected = wool_on_scale(18.4);
    corrected.humidity_pct = humidity;
    const double exact = weighed_length(corrected)->length.value();
    EXPECT_GT(exact, length->low.value());
    EXPECT_LT(exact, length->high.value());
  }
}

TEST(WeighedLength, fears_wool_where_the_fibres_are_not_known) {
  WeighedYarn unknown = wool_on_scale(18.4);
  unknown.composition.clear();
  const auto length = weighed_length(unknown);
  ASSERT_TRUE(length);
  EXPECT_TRUE(assumes(*length, "fibres not known"));
  WeighedYarn polyester = wool_on_scale(18.4);
  polyester.composition = {{"polyester", "polyester", {100, {}}}};
  EXPECT_LT(weighed_length(polyester)->moisture.longer, length->moisture.longer / 4);
}

TEST(WeighedLength, unknown_spinning_and_market_widen_the_interval) {
  WeighedYarn known = wool_on_scale(18.4);
  known.humidity_pct = 40;
  WeighedYarn unknown = known;
  unknown.spinning = Spinning::unstated;
  unknown.market = Market::unstated;
  const auto narrow = weighed_length(known), wide = weighed_length(unknown);
  EXPECT_GT(wide->moisture.shorter + wide->moisture.longer,
            narrow->moisture.shorter + narrow->moisture.longer + 0.03);
  EXPECT_TRUE(assumes(*wide, "spinning not stated"));
  EXPECT_TRUE(assumes(*wide, "market not stated"));
}

TEST(WeighedLength, takes_notions_off_and_weighs_their_error) {
  WeighedYarn yarn = wool_on_scale(30);
  yarn.notions = grams(10);
  const auto length = weighed_length(yarn);
  EXPECT_DOUBLE_EQ(length->length.value(), 40);
  EXPECT_NEAR(length->scale.shorter, std::sqrt(2.0) * 0.05 / 20, 1e-12);
}

TEST(WeighedLength, a_coarse_scale_costs_what_it_costs) {
  WeighedYarn yarn = wool_on_scale(14);
  yarn.scale_step = grams(1);
  EXPECT_NEAR(weighed_length(yarn)->scale.shorter, 0.0357, 0.0001);
  yarn.scale_step.reset();
  EXPECT_NEAR(weighed_length(yarn)->scale.shorter, 0.0357, 0.0001);
  EXPECT_TRUE(assumes(*weighed_length(yarn), "scale step not stated"));
}

TEST(WeighedLength, label_tolerance_is_mill_spun_unless_stated) {
  WeighedYarn yarn = wool_on_scale(18.4);
  EXPECT_EQ(weighed_length(yarn)->label, (ErrorShare{0.03, 0.05}));
  yarn.label = ErrorShare{0, 0};
  EXPECT_EQ(weighed_length(yarn)->label, ErrorShare{});
}

TEST(WeighedLength, says_what_is_missing_or_impossible) {
  const auto fails = [](auto&& change) {
    WeighedYarn yarn = wool_on_scale(18.4);
    change(yarn);
    const auto length = weighed_length(yarn);
    return length ? std::string("no failure") : length.error().message();
  };
  EXPECT_EQ(fails([](WeighedYarn& y) { y.reading = grams(0); }),
            "found no weight, expected grams on the scale");
  EXPECT_EQ(fails([](WeighedYarn& y) { y.notions = grams(20); }),
            "found notions of 20 g, expected less than the 18.4 g on the scale");
  EXPECT_NE(fails([](WeighedYarn& y) { y.put_up.length.reset(); }).find("the length of one skein"),
            std::string::npos);
  EXPECT_NE(fails([](WeighedYarn& y) { y.put_up.weight.reset(); }).find("or a new skein"), std::string::npos);
  EXPECT_NE(fails([](WeighedYarn& y) { y.new_skein = grams(0); }).find("new skein of no weight"),
            std::string::npos);
  EXPECT_NE(fails([](WeighedYarn& y) { y.scale_step = grams(-1); }).find("scale step"), std::string::npos);
  EXPECT_NE(fails([](WeighedYarn& y) { y.humidity_pct = 140; }).find("0 to 100"), std::string::npos);
  EXPECT_NE(fails([](WeighedYarn& y) {
              y.humidity_pct = 40;
              y.composition.clear();
            }).find("the fibres of the yarn"),
            std::string::npos);
}

RC_GTEST_PROP(WeighedLength, grows_with_the_reading_and_stays_in_its_interval, ()) {
  WeighedYarn yarn = wool_on_scale(*rc::gen::inRange(1, 9000) / 10.0);
  if (*rc::gen::arbitrary<bool>()) yarn.humidity_pct = *rc::gen::inRange(0, 101);
  if (*rc::gen::arbitrary<bool>()) yarn.new_skein = grams(*rc::gen::inRange(300, 700) / 10.0);
  if (*rc::gen::arbitrary<bool>()) yarn.market = Market::unstated;
  if (*rc::gen::arbitrary<bool>()) yarn.spinning = Spinning::unstated;
  const auto length = weighed_length(yarn);
  RC_ASSERT(length.has_value());
  RC_ASSERT(length->low <= length->length);
  RC_ASSERT(length->length <= length->high);
  RC_ASSERT(length->low.value() >= 0);
  WeighedYarn more = yarn;
  more.reading *= 2;
  RC_ASSERT(std::abs(weighed_length(more)->length / length->length - 2) < 1e-12);
}

}  // namespace
}  // namespace skeinproof
