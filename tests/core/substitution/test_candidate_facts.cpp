// SPDX-License-Identifier: GPL-3.0-or-later
// The candidates of the two sample patterns; every figure was worked out with a separate script from knitted
// lengths, put-ups and the densities of the fibres.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/yarn/thickness.h"
#include "tests/core/substitution/candidates_at_bench.h"

namespace skeinproof {
namespace {

using testing::add;
using testing::band;
using testing::compared;
using ::testing::Contains;
using ::testing::ElementsAre;
using testing::facts_of;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using testing::lampwick;
using testing::quillmarsh;
using ::testing::StartsWith;

struct Truth {
  const char* name;
  std::vector<int> skeins;
  double basket, mass_g, firmness, thickness, gauge_by_mass, gauge_by_volume;
};

void expect_candidate(const CandidateFacts& facts, const Truth& truth) {
  SCOPED_TRACE(truth.name);
  EXPECT_EQ(facts.name, truth.name);
  ASSERT_EQ(facts.roles.size(), truth.skeins.size());
  int total = 0;
  for (std::size_t i = 0; i < truth.skeins.size(); ++i) {
    EXPECT_EQ(facts.roles[i].skeins, truth.skeins[i]) << facts.roles[i].label;
    total += truth.skeins[i];
  }
  EXPECT_EQ(facts.skeins, total);
  ASSERT_TRUE(facts.basket) << facts.basket_words;
  EXPECT_NEAR(*facts.basket, truth.basket, 1e-9);
  EXPECT_EQ(facts.currency, "€");
  ASSERT_TRUE(facts.mass_g && facts.firmness && facts.thickness_by_volume && facts.gauge_by_mass);
  EXPECT_NEAR(*facts.mass_g.value, truth.mass_g, 0.5);
  EXPECT_NEAR(*facts.firmness.value, truth.firmness, 0.05);
  EXPECT_NEAR(*facts.thickness_by_volume.value, truth.thickness, 0.005);
  EXPECT_NEAR(*facts.gauge_by_mass.value, truth.gauge_by_mass, 0.05);
  EXPECT_NEAR(*facts.gauge_by_volume.value, truth.gauge_by_volume, 0.05);
}

TEST(Candidates, OfTheYokeInSizeFive) {
  const auto all = compared(quillmarsh());
  ASSERT_EQ(all.size(), 5u);
  expect_candidate(all[0], {"Oddmere Fieldspun", {7, 2, 1, 1}, 86.90, 431, 11.1, 1, 26, 26});
  expect_candidate(all[1], {"Brindlecote Smooth", {5, 1, 1, 1}, 104, 503, 12.0, 1.08, 24.07, 24.07});
  expect_candidate(all[2], {"Tallowhithe Strand", {10, 2, 1, 1}, 72.80, 580, 12.9, 1.079, 22.41, 24.09});
  expect_candidate(all[3], {"Merrowend Downlight", {8, 2, 1, 1}, 103.20, 452, 11.4, 1.028, 25.40, 25.30});
  expect_candidate(all[4],
                   {"Pillowgate Wisp held double", {12, 3, 2, 1}, 198, 359, 10.1, 0.909, 28.48, 28.61});
  EXPECT_TRUE(all[0].own);
  EXPECT_FALSE(all[4].shown);
}

TEST(Candidates, OfTheSocksInSizeFour) {
  const auto all = compared(lampwick());
  ASSERT_EQ(all.size(), 3u);
  expect_candidate(all[0], {"Nibthorpe Sock", {1, 2}, 18.60, 80, 12.8, 1, 32, 32});
  expect_candidate(all[1], {"Cobbleside", {1, 1}, 23.80, 79, 12.7, 0.994, 32.19, 32.19});
  expect_candidate(all[2], {"Wanderlough Merino", {1, 2}, 15.30, 92, 13.7, 1.052, 29.87, 30.42});
  EXPECT_LT(*all[1].cost_per_metre.value, *all[0].cost_per_metre.value) << "cheaper by the metre …";
  EXPECT_GT(*all[1].basket, *all[0].basket) << "… and a dearer basket";
  EXPECT_EQ(all[0].within_budget, std::nullopt) << "no budget is given";
}

TEST(Candidates, BudgetIsTheBasketsNotTheMetres) {
  const auto all = compared(quillmarsh());
  EXPECT_EQ(all[0].within_budget, true);
  EXPECT_EQ(all[1].within_budget, false);
  EXPECT_EQ(all[2].within_budget, true);
  EXPECT_EQ(all[3].within_budget, false);
  EXPECT_NEAR(*all[0].cost_per_metre.value, 0.0451, 0.00005);
  EXPECT_NEAR(*all[1].cost_per_metre.value, 0.0433, 0.00005);
  EXPECT_EQ(all[1].budget_words, "€14.00 over the budget of €90.00");
}

TEST(Candidates, SaysWhereItIsTightAndWhatASkeinLessWouldLeave) {
  const auto all = compared(quillmarsh());
  EXPECT_THAT(all[1].tight, ElementsAre("MC: the fifth skein is for 2.9 m; four would leave 4.7 % instead of "
                                        "5 %: then 7 skeins, €91.00"));
  EXPECT_EQ(all[1].roles[0].buys[0].last_skein, LastSkein::tips_over);
  EXPECT_NEAR(*all[1].roles[0].buys[0].fraction, 4.010, 0.0005);
  EXPECT_THAT(all[2].tight, IsEmpty());
  EXPECT_THAT(all[1].left_over, Contains("MC: 297 m, 99 g"));
  Pattern brimful = quillmarsh();
  brimful.candidates.clear();
  add(brimful, band("Brim", 241));  // 1202.9 of 1205 m
  EXPECT_THAT(compared(brimful).back().tight, Contains(StartsWith("MC: brimful: 2.1 m to spare")));
}

TEST(Candidates, AHairOverIsRoundedDownWhereTheHouseSaysSo) {
  Pattern pattern = quillmarsh();
  pattern.house_styles.front().rounding = Rounding::up_unless_hair_over;
  const auto all = compared(pattern);
  EXPECT_EQ(all[1].roles[0].skeins, 4);
  EXPECT_NEAR(*all[1].basket, 91, 1e-9);
  EXPECT_THAT(all[1].tight, Contains(HasSubstr("rounded down: 2.9 m")));
}

TEST(Candidates, GaugeWordsGoByTheDistanceFromThePatternsGauge) {
  const auto all = compared(quillmarsh());
  EXPECT_EQ(all[0].gauge_words, "should meet gauge");
  EXPECT_EQ(all[1].gauge_words, "will not be this fabric");
  EXPECT_EQ(all[3].gauge_words, "reachable with a needle change, cloth firmer (F 11.1→11.4)");
  EXPECT_THAT(all[3].needle, StartsWith("begin on 3 mm, not 3.25 mm"));
  EXPECT_THAT(all[1].needle, IsEmpty()) << "no needle makes another fabric this one";
  // 26 sqrt(mu / 3.5) = 25.5 at 3.3667 m in a gram: half a stitch still meets.
  EXPECT_EQ(facts_of(quillmarsh(), band("Near", 50 * 3.5 * (25.51 / 26) * (25.51 / 26))).reach_by_mass,
            GaugeReach::meets);
  EXPECT_EQ(facts_of(quillmarsh(), band("Off", 50 * 3.5 * (25.49 / 26) * (25.49 / 26))).reach_by_mass,
            GaugeReach::needle_change);
  EXPECT_EQ(facts_of(quillmarsh(), band("Far", 50 * 3.5 * (24.49 / 26) * (24.49 / 26))).reach_by_mass,
            GaugeReach::another_fabric);
  const CandidateFacts thin = facts_of(quillmarsh(), band("Thin", 50 * 3.5 * (26.9 / 26) * (26.9 / 26)));
  EXPECT_THAT(thin.gauge_words, HasSubstr("cloth looser (F 11.1→10.7)"));
  EXPECT_THAT(thin.needle, StartsWith("begin on 3.5 mm, not 3.25 mm"));
}

TEST(Candidates, RoadsThatDisagreeAreBothSaid) {
  // Cotton of the pattern's metres in a gram meets the gauge by mass; by volume it is thinner.
  const CandidateFacts facts = facts_of(quillmarsh(), band("Cotton", 175, {{"cotton", 100}}));
  EXPECT_THAT(facts.gauge_words, StartsWith("by mass: should meet gauge; by volume: "));
  EXPECT_LT(*facts.thickness_by_volume.value, *facts.thickness_by_mass.value);
}

TEST(Candidates, TheErrorOfAThicknessFollowsTheSpinning) {
  Yarn yarn = band("Other", 160);
  EXPECT_NEAR(facts_of(quillmarsh(), yarn).thickness_by_mass.error_share, 0.06, 1e-12);
  yarn.spinning = Spinning::worsted;
  EXPECT_NEAR(facts_of(quillmarsh(), yarn).thickness_by_mass.error_share, 0.20, 1e-12);
  yarn.spinning = Spinning::woollen;
  yarn.surface = "brushed";
  EXPECT_THAT(facts_of(quillmarsh(), yarn).thickness_by_mass.because, HasSubstr("brushed for woollen-spun"));
  EXPECT_THAT(compared(quillmarsh())[0].thickness_by_mass.because, HasSubstr("the same yarn"));
}

TEST(Candidates, FirmnessByTheCalibratedLoopStandsBesideThatOfTheGauge) {
  const auto all = compared(quillmarsh());
  EXPECT_NEAR(*all[0].firmness_by_loop.value, 11.3, 0.05);
  EXPECT_THAT(all[0].firmness_by_loop.because, HasSubstr("weighed sample"));
  Pattern typed = quillmarsh();
  typed.weighings.clear();
  EXPECT_THAT(compared(typed)[0].firmness_by_loop.because, HasSubstr("typed"));
  typed.fabrics[0].loop_source = LoopSource::from_gauge;
  EXPECT_FALSE(compared(typed)[0].firmness_by_loop);
}

TEST(Candidates, AYarnForOneRoleLeavesTheOthersInThePatterns) {
  Pattern pattern = quillmarsh();
  pattern.candidates.clear();
  add(pattern, band("Contrast", 100)).yarns.front().role = pattern.roles[2].id;
  const CandidateFacts facts = compared(pattern).back();
  EXPECT_EQ(facts.name, "Contrast");
  EXPECT_TRUE(facts.roles[0].same_as_pattern);
  EXPECT_FALSE(facts.roles[2].same_as_pattern);
  EXPECT_EQ(facts.roles[0].skeins, 7);
  EXPECT_EQ(facts.roles[2].skeins, 2);  // 107.0 of 100 m
  EXPECT_EQ(facts.skeins, 12);
  EXPECT_NEAR(*facts.basket, 10 * 7.90 + 2 * 8, 1e-9);
}

TEST(Candidates, TwoYarnsHeldTogetherAreOneThread) {
  Pattern pattern = quillmarsh();
  pattern.candidates.clear();
  CandidateYarn& row = add(pattern, band("Fine", 350)).yarns.front();
  const YarnId fluff = testing::put(pattern, band("Fluff", 700, {{"mohair", 60}, {"silk", 40}}));
  pattern.candidates.back().yarns.front().held_with = fluff;
  (void)row;
  const CandidateFacts facts = compared(pattern).back();
  EXPECT_EQ(facts.name, "Fine with Fluff");
  // 1 / (1/7 + 1/14) m in a gram.
  EXPECT_NEAR(facts.roles[0].density->value(), 14.0 / 3, 1e-9);
  ASSERT_EQ(facts.roles[0].buys.size(), 2u);
  EXPECT_EQ(facts.roles[0].buys[0].skeins, 4);  // 1202.9 of 350 m
  EXPECT_EQ(facts.roles[0].buys[1].skeins, 2);  // each strand needs the full length
  EXPECT_EQ(facts.roles[0].skeins, 6);
  // Two thirds of the mass are wool, one third mohair and silk.
  const double rho = 1 / (2.0 / 3 / 1.31 + 0.2 / 1.31 + 0.4 / 3 / 1.34);
  EXPECT_NEAR(*facts.thickness_by_volume.value, std::sqrt(3.5 * 1.31 / (14.0 / 3 * rho)), 1e-9);
}

TEST(Candidates, ACandidateInSeveralPutUpsTakesTheCheapestMix) {
  Pattern pattern = quillmarsh();
  pattern.candidates.clear();
  Yarn yarn = band("Mixed", 130);  // €8
  SoldAs large;
  large.put_up.length = Entered<Metres>{metres(1210), {}};
  large.put_up.weight = Entered<Grams>{grams(465), {}};
  large.price = Price{{40, {}}, "EUR"};
  yarn.also_sold = {large};
  add(pattern, yarn);
  const CandidateFacts facts = compared(pattern).back();
  ASSERT_EQ(facts.roles[0].buys[0].put_ups.size(), 1u);
  EXPECT_EQ(facts.roles[0].skeins, 1) << "one cone of €40 instead of ten skeins of €80";
  EXPECT_EQ(facts.roles[1].skeins, 2);
  EXPECT_NEAR(*facts.basket, 40 + 16 + 8 + 8, 1e-9) << "€ and EUR are one currency";
}

TEST(Candidates, StandOnPrintedCountsWhereNothingElseIsKnown) {
  Pattern pattern = quillmarsh();
  pattern.pieces.clear();
  pattern.weighings.clear();
  const auto all = compared(pattern);
  EXPECT_TRUE(all[1].roles[0].at_most);
  EXPECT_THAT(all[1].roles[0].planned.because, HasSubstr("printed counts"));
  EXPECT_EQ(all[0].roles[0].skeins, 7) << "as printed";
  ASSERT_TRUE(all[1].skeins);
  EXPECT_GE(*all[1].roles[0].skeins, 4);
  for (Role& role : pattern.roles) role.printed_count = {};
  const auto none = compared(pattern);
  EXPECT_FALSE(none[1].skeins);
  EXPECT_FALSE(none[1].basket);
  EXPECT_THAT(none[1].basket_words, HasSubstr("not known"));
  EXPECT_TRUE(none[1].thickness_by_volume) << "what needs no length is still known";
  EXPECT_TRUE(none[1].firmness);
}

TEST(Candidates, StrictestCareNamesItsYarn) {
  Pattern pattern = quillmarsh();
  pattern.yarns.front().care = "machine wash 30°";
  pattern.candidates.clear();
  Yarn gentle = band("Gentle", 175);
  add(pattern, gentle).yarns.front().role = pattern.roles[1].id;
  const auto all = compared(pattern);
  EXPECT_EQ(all[0].care_words, "machine wash at 30, because of Oddmere Fieldspun");
  EXPECT_EQ(all[1].care_words, "hand wash, because of Gentle");
}

}  // namespace
}  // namespace skeinproof
