// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/substitution/on_hand_length.h"

#include <gmock/gmock.h>

#include <cmath>

#include "tests/core/substitution/yarn_at_home.h"

namespace skeinproof::testing {
namespace {

using ::testing::HasSubstr;

class LengthAtHome : public ::testing::Test {
 protected:
  void SetUp() override {
    pattern_ = quillmarsh();
    clear_home(pattern_);
    yarn_ = pattern_.roles[0].yarn;  // 175 m in 50 g
  }
  YarnOnHand& of_kind(LengthBy kind) {
    YarnOnHand& yarn = lay(pattern_, yarn_, "Peat", "MC", 0, {});
    yarn.whole_skeins.reset();
    yarn.length_by = kind;
    return yarn;
  }
  static void sample(YarnOnHand& yarn, double length_m, double weight_g) {
    yarn.sampled.push_back({Entered<Metres>{metres(length_m), ""}, Entered<Grams>{grams(weight_g), ""}});
  }
  Error error_of(const YarnOnHand& yarn) {
    const auto length = length_on_hand(pattern_, yarn);
    EXPECT_FALSE(length.has_value());
    return length ? Error{} : length.error();
  }
  Pattern pattern_;
  YarnId yarn_;
};

TEST_F(LengthAtHome, WholeSkeinsByTheLabelAndPartsByTheScale) {
  YarnOnHand& yarn = lay(pattern_, yarn_, "Peat", "MC", 5, {41}, "X");
  yarn.new_skein = Entered<Grams>{grams(50), ""};
  yarn.scale_step = Entered<Grams>{grams(1), ""};
  const auto length = length_on_hand(pattern_, yarn);
  ASSERT_TRUE(length.has_value());
  EXPECT_NEAR(length->length.value(), 5 * 175 + 41 * 3.5, 1e-9);
  EXPECT_EQ(length->pieces, 6);
  // The label errs on all of it, half a step of each reading on the part alone.
  const double scale = 143.5 * std::hypot(0.5 / 41, 0.5 / 50);
  EXPECT_NEAR((length->length - length->low).value(), std::hypot(0.03 * 1018.5, scale), 1e-6);
  EXPECT_NEAR((length->high - length->length).value(), std::hypot(0.05 * 1018.5, scale), 1e-6);
}

TEST_F(LengthAtHome, EveryPartIsAReadingOfItsOwn) {
  YarnOnHand& yarn = lay(pattern_, yarn_, "Lichen", "CC1", 0, {44, 30});
  const auto length = length_on_hand(pattern_, yarn);
  ASSERT_TRUE(length.has_value());
  EXPECT_NEAR(length->length.value(), 259, 1e-9);
  EXPECT_EQ(length->pieces, 2);
  YarnOnHand& heap = lay(pattern_, yarn_, "Lichen", "CC1", 0, {74});
  const auto once = length_on_hand(pattern_, heap);
  ASSERT_TRUE(once.has_value());
  EXPECT_EQ(once->pieces, 1);
  EXPECT_LT((once->high - once->low).value(), (length->high - length->low).value());
}

TEST_F(LengthAtHome, MoistureIsCorrectedByANewSkein) {
  YarnOnHand& yarn = lay(pattern_, yarn_, "Peat", "MC", 0, {30});
  yarn.new_skein = Entered<Grams>{grams(48), ""};
  const auto length = length_on_hand(pattern_, yarn);
  ASSERT_TRUE(length.has_value());
  EXPECT_NEAR(length->length.value(), 30.0 / 48 * 175, 1e-9);
}

TEST_F(LengthAtHome, AReelCountsTurnsLessTheirStretch) {
  YarnOnHand& yarn = of_kind(LengthBy::reel);
  yarn.turns = Entered<double>{120, ""};
  yarn.circumference = Entered<Metres>{metres(1.5), ""};
  yarn.stretch_pct = Entered<double>{6, ""};
  const auto length = length_on_hand(pattern_, yarn);
  ASSERT_TRUE(length.has_value());
  EXPECT_NEAR(length->length.value(), 120 * 1.5 * 0.94, 1e-9);
  EXPECT_TRUE(length->assumed.empty());
  yarn.stretch_pct.reset();
  const auto unmeasured = length_on_hand(pattern_, yarn);
  ASSERT_TRUE(unmeasured.has_value());
  EXPECT_NEAR(unmeasured->length.value(), 180, 1e-9);
  EXPECT_LT(unmeasured->low.value(), 180 * 0.90 + 1e-9);
  ASSERT_EQ(unmeasured->assumed.size(), 1u);
  EXPECT_THAT(unmeasured->assumed[0], HasSubstr("ten turns"));
}

TEST_F(LengthAtHome, SampledLengthsBringTheirSpreadAndTheScale) {
  YarnOnHand& yarn = of_kind(LengthBy::sampled_lengths);
  yarn.parts = {{grams(62), ""}};
  yarn.scale_step = Entered<Grams>{grams(0.1), ""};
  for (double weight : {2.4, 2.5, 2.6, 2.7}) sample(yarn, 7.75, weight);
  const auto length = length_on_hand(pattern_, yarn);
  ASSERT_TRUE(length.has_value());
  const double density = 4 * 7.75 / (2.4 + 2.5 + 2.6 + 2.7);
  EXPECT_NEAR(length->length.value(), 62 * density, 1e-9);
  EXPECT_NEAR(length->density->value(), density, 1e-12);
  // CV of 7.75/2.4, /2.5, /2.6, /2.7 = 5.0721 %, worked out apart.
  const double spread = 0.0507209 / 2, scale = 0.05 / 10.2;
  const auto together = std::find_if(length->lines.begin(), length->lines.end(),
                                     [](const FigureLine& l) { return l.label == "Error of the sample"; });
  ASSERT_NE(together, length->lines.end());
  EXPECT_NEAR(together->value, 100 * std::hypot(spread, scale), 1e-3);
  const double error = std::sqrt(std::pow(1.6448536 * spread, 2) + scale * scale + std::pow(0.05 / 62, 2));
  EXPECT_NEAR(length->low.value() / length->length.value(), 1 - error, 1e-5);
}

// 7.8 m at 3.1 m/g on a scale of 0.1 g, and 78 m on one of 1 g, are the lengths whose scale error is 2 %.
TEST_F(LengthAtHome, ALongerSampleOrAFinerScaleReachTwoPercent) {
  for (const auto& [length_m, step_g] : {std::pair(7.75, 0.1), std::pair(77.5, 1.0)}) {
    YarnOnHand& yarn = of_kind(LengthBy::sampled_lengths);
    yarn.parts = {{grams(100), ""}};
    yarn.scale_step = Entered<Grams>{grams(step_g), ""};
    sample(yarn, length_m, length_m / 3.1);
    const auto length = length_on_hand(pattern_, yarn);
    ASSERT_TRUE(length.has_value());
    const auto scale = std::find_if(length->lines.begin(), length->lines.end(),
                                    [](const FigureLine& l) { return l.label == "Error of the scale"; });
    ASSERT_NE(scale, length->lines.end());
    EXPECT_NEAR(scale->value, 2.0, 1e-9);
  }
}

TEST_F(LengthAtHome, ATypedLengthStands) {
  YarnOnHand& yarn = of_kind(LengthBy::typed_length);
  yarn.length = Entered<Metres>{metres(96), "96 m"};
  const auto length = length_on_hand(pattern_, yarn);
  ASSERT_TRUE(length.has_value());
  EXPECT_NEAR(length->length.value(), 96, 1e-12);
  EXPECT_LT(length->low.value(), 96);
}

TEST_F(LengthAtHome, WrapsAreAThicknessAndNeverALength) {
  YarnOnHand& yarn = of_kind(LengthBy::wraps);
  yarn.wraps_per_cm = Entered<double>{5, ""};
  const Error error = error_of(yarn);
  EXPECT_EQ(error.kind, ErrorKind::wrong_shape);
  EXPECT_THAT(error.message(), HasSubstr("never how long"));
  ASSERT_TRUE(width_of_wrap(yarn).has_value());
  EXPECT_NEAR(width_of_wrap(yarn)->value(), 0.2, 1e-12);
  yarn.wraps_per_cm = Entered<double>{0, ""};
  EXPECT_FALSE(width_of_wrap(yarn).has_value());
}

TEST_F(LengthAtHome, SaysWhatIsAmissAndWhose) {
  YarnOnHand& reel = of_kind(LengthBy::reel);
  reel.turns = Entered<double>{120, ""};
  EXPECT_EQ(error_of(reel).kind, ErrorKind::not_found);
  EXPECT_THAT(error_of(reel).found, HasSubstr("Peat: a reel without a circumference"));
  reel.circumference = Entered<Metres>{metres(1.5), ""};
  for (double stretch : {100.0, 130.0, -4.0}) {
    reel.stretch_pct = Entered<double>{stretch, ""};
    EXPECT_EQ(error_of(reel).kind, ErrorKind::out_of_range);
    EXPECT_THAT(error_of(reel).found, HasSubstr("stretch"));
  }
  YarnOnHand& negative = lay(pattern_, yarn_, "Peat", "MC", 1, {-5}, "X");
  EXPECT_EQ(error_of(negative).kind, ErrorKind::out_of_range);
  EXPECT_THAT(error_of(negative).found, HasSubstr("Peat, lot X: a remainder of −5 g"));
  YarnOnHand& nothing = of_kind(LengthBy::skeins_and_weight);
  EXPECT_EQ(error_of(nothing).kind, ErrorKind::not_found);
  yarn_named(pattern_, yarn_)->put_up.length.reset();
  YarnOnHand& no_band = lay(pattern_, yarn_, "Peat", "MC", 1, {20});
  EXPECT_THAT(error_of(no_band).found, HasSubstr("no length of a skein"));
  YarnOnHand& no_sample = of_kind(LengthBy::sampled_lengths);
  no_sample.parts = {{grams(20), ""}};
  EXPECT_EQ(error_of(no_sample).kind, ErrorKind::not_found);
  sample(no_sample, 10, 0);
  EXPECT_THAT(error_of(no_sample).found, HasSubstr("sample 1 without a weight"));
}

TEST_F(LengthAtHome, AnEndOfNothingIsNoError) {
  YarnOnHand& yarn = lay(pattern_, yarn_, "Peat", "MC", 0, {0});
  const auto length = length_on_hand(pattern_, yarn);
  ASSERT_TRUE(length.has_value());
  EXPECT_EQ(length->length.value(), 0);
  EXPECT_EQ(length->pieces, 1);
}

// Yarn of the same fibres is thicker by the square root of the masses of a metre.
TEST_F(LengthAtHome, ThicknessGoesWithTheRootOfMass) {
  const Yarn& yarn = *pattern_.yarn(yarn_);
  const auto ratio = times_thicker(yarn, metres_per_gram(3.6), yarn, metres_per_gram(4.2));
  ASSERT_TRUE(ratio.has_value());
  EXPECT_NEAR(*ratio, 1.0801, 5e-5);
  EXPECT_FALSE(times_thicker(yarn, std::nullopt, yarn, metres_per_gram(4.2)).has_value());
}

}  // namespace
}  // namespace skeinproof::testing
