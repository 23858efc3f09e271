// SPDX-License-Identifier: GPL-3.0-or-later
#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <limits>

#include "tests/core/substitution/candidates_at_bench.h"

namespace skeinproof {
namespace {

using testing::add;
using testing::band;
using testing::compared;
using ::testing::Contains;
using testing::facts_of;
using ::testing::HasSubstr;
using testing::quillmarsh;

// Several candidates on one copy of the pattern, compared once: the pattern's needs are the slow part.
std::vector<CandidateFacts> compare_all(const std::vector<std::pair<Yarn, int>>& yarns) {
  static const Pattern bare = [] {
    Pattern pattern = quillmarsh();
    pattern.candidates.clear();
    return pattern;
  }();
  static const Assessment assessment = assess(bare);
  Pattern pattern = bare;
  for (const auto& [yarn, strands] : yarns) add(pattern, yarn, strands);
  return compare_candidates(pattern, assessment, 4);
}

double any_length(double low, double high) {
  return low + (high - low) * *rc::gen::inRange(0, 1001) / 1000.0;
}

RC_GTEST_PROP(CandidateProperties, SameCountsAtTheSameGaugeNeedTheSameMetresWhateverTheFibre, ()) {
  const auto fibre = *rc::gen::element<std::string>("wool", "cotton", "flax", "silk", "alpaca", "acrylic");
  const double length = any_length(30, 900);
  const auto all = compare_all({{band("Any", length, {{fibre, 100}}), 1}});
  for (std::size_t i = 0; i < all[0].roles.size(); ++i) {
    RC_ASSERT(*all[1].roles[i].worked.value == *all[0].roles[i].worked.value);
    RC_ASSERT(*all[1].roles[i].planned.value == *all[0].roles[i].planned.value);
  }
  // Grams differ by the metres in a gram alone.
  RC_ASSERT(std::abs(*all[1].mass_g.value * length / 50 - *all[0].mass_g.value * 3.5) < 1e-6);
}

RC_GTEST_PROP(CandidateProperties, EqualStrandsBehaveAsOneOfThatManyTimesTheLinearDensity, ()) {
  const int strands = *rc::gen::inRange(2, 6);
  const double length = any_length(100, 900);
  const auto all = compare_all({{band("Fine", length), strands}, {band("Thick", length / strands), 1}});
  const CandidateFacts &held = all[1], &single = all[2];
  const auto near = [](const Known& a, const Known& b) {
    return a && b && std::abs(*a.value - *b.value) < 1e-9 * std::abs(*b.value);
  };
  RC_ASSERT(near(held.firmness, single.firmness));
  RC_ASSERT(near(held.thickness_by_mass, single.thickness_by_mass));
  RC_ASSERT(near(held.thickness_by_volume, single.thickness_by_volume));
  RC_ASSERT(near(held.gauge_by_volume, single.gauge_by_volume));
  RC_ASSERT(near(held.mass_g, single.mass_g));
  for (std::size_t i = 0; i < held.roles.size(); ++i)
    RC_ASSERT(*held.roles[i].skeins == *single.roles[i].skeins);
}

RC_GTEST_PROP(CandidateProperties, BoughtIsNeverLessThanPlannedAndNeverASkeinTooMuch, ()) {
  const double length = any_length(20, 1500);
  const auto all = compare_all({{band("Any", length), 1}});
  for (const CandidateRole& role : all[1].roles) {
    const YarnToBuy& buy = role.buys.front();
    RC_ASSERT(buy.spare->value() > -1e-6);
    RC_ASSERT(buy.spare->value() < length);
    RC_ASSERT(std::abs(*buy.skeins * length - (buy.planned + *buy.spare).value()) < 1e-6);
  }
}

TEST(CandidateProperties, TwoEqualStrandsDivideTheGaugeByTheRootOfTwo) {
  const auto all = compare_all({{band("Own", 175), 2}});
  EXPECT_NEAR(*all[1].gauge_by_mass.value, 26 / std::sqrt(2.0), 1e-9);
}

TEST(CandidateProperties, APatternHeldDoubleComparesWithOneStrandOfTwiceTheWeight) {
  Pattern pattern = quillmarsh();
  pattern.candidates.clear();
  for (Role& role : pattern.roles) {
    role.strands = 2;
    role.swatch.reset();
  }
  add(pattern, band("Thick", 87.5));
  const auto all = compared(pattern);
  EXPECT_NEAR(*all[1].thickness_by_mass.value, 1, 1e-12);
  EXPECT_NEAR(*all[1].mass_g.value, *all[0].mass_g.value, 1e-6);
  EXPECT_EQ(all[1].skeins, all[0].skeins);
}

TEST(CandidateBadInput, APriceWithoutACurrencyIsNoBasket) {
  Yarn yarn = band("Priced", 175);
  yarn.price->currency.clear();
  const CandidateFacts facts = facts_of(quillmarsh(), yarn);
  EXPECT_FALSE(facts.basket);
  EXPECT_EQ(facts.basket_words, "88.00 without a currency");
  EXPECT_EQ(facts.skeins, 11);
  EXPECT_FALSE(facts.within_budget);
  EXPECT_THAT(facts.problems, Contains(HasSubstr("without a currency")));
}

TEST(CandidateBadInput, MixedCurrenciesAreNeverAddedUp) {
  Pattern pattern = quillmarsh();
  pattern.candidates.clear();
  Yarn yarn = band("Abroad", 175);
  yarn.price->currency = "£";
  add(pattern, yarn).yarns.front().role = pattern.roles[1].id;
  const CandidateFacts facts = compared(pattern).back();
  EXPECT_FALSE(facts.basket);
  EXPECT_THAT(facts.basket_words, HasSubstr("€71.10 + £16.00"));
  EXPECT_EQ(facts.sums.size(), 2u);
  EXPECT_EQ(facts.skeins, 11);
  const CandidateFacts all_in_pounds = facts_of(quillmarsh(), yarn);
  EXPECT_NEAR(*all_in_pounds.basket, 88, 1e-9);
  EXPECT_EQ(all_in_pounds.within_budget, std::nullopt);
  EXPECT_THAT(all_in_pounds.budget_words, HasSubstr("the budget is in €"));
}

TEST(CandidateBadInput, MissingAndImpossibleEntriesAreNamed) {
  Yarn no_length = band("Short", 175);
  no_length.put_up.length.reset();
  const CandidateFacts without = facts_of(quillmarsh(), no_length);
  EXPECT_FALSE(without.skeins);
  EXPECT_FALSE(without.firmness);
  EXPECT_FALSE(without.mass_g);
  EXPECT_THAT(without.basket_words, HasSubstr("not known"));
  EXPECT_FALSE(without.problems.empty());
  Yarn no_price = band("Free", 175);
  no_price.price.reset();
  const CandidateFacts unpriced = facts_of(quillmarsh(), no_price);
  EXPECT_EQ(unpriced.skeins, 11);
  EXPECT_FALSE(unpriced.basket);
  EXPECT_THAT(unpriced.basket_words, HasSubstr("no price of “Free”"));
  Yarn negative = band("Negative", 175);
  negative.price->amount.value = -5;
  EXPECT_THAT(facts_of(quillmarsh(), negative).problems, Contains(HasSubstr("below nothing")));
  Yarn unknown = band("Unknown", 175);
  unknown.composition = {{"", "moonbeam", {100, {}}}};
  const CandidateFacts odd = facts_of(quillmarsh(), unknown);
  EXPECT_TRUE(odd.thickness_by_mass);
  EXPECT_FALSE(odd.thickness_by_volume);
  EXPECT_THAT(odd.gauge_words, HasSubstr("by mass: "));
  Yarn nothing;
  EXPECT_FALSE(facts_of(quillmarsh(), nothing).skeins);
  for (const double length : {0.0, -3.0, std::numeric_limits<double>::infinity(),
                              std::numeric_limits<double>::quiet_NaN(), 1e-300, 1e300}) {
    const CandidateFacts strange = facts_of(quillmarsh(), band("Strange", length));
    EXPECT_EQ(strange.roles.size(), 4u) << length;
  }
}

TEST(CandidateBadInput, PatternsWithNextToNothingInThem) {
  Pattern pattern = new_pattern();
  EXPECT_EQ(compare_candidates(pattern, assess(pattern), 0).size(), 1u);
  add(pattern, band("Lonely", 175));
  EXPECT_EQ(compared(pattern).size(), 2u);
  EXPECT_TRUE(compare_candidates(pattern, assess(pattern), 7).empty()) << "no such size";
  Role role;
  role.id = take_id<RoleId>(pattern);
  role.label = "MC";
  pattern.roles.push_back(role);
  const auto all = compared(pattern);
  EXPECT_THAT(all[0].problems, Contains("MC has no yarn"));
  EXPECT_FALSE(all[1].skeins);
  pattern.candidates.back().yarns.clear();
  EXPECT_THAT(compared(pattern).back().problems, Contains(HasSubstr("no yarn yet")));
}

TEST(CandidateBadInput, AHundredCandidatesAndStrandsBeyondReason) {
  std::vector<std::pair<Yarn, int>> many;
  for (int i = 0; i < 100; ++i) many.push_back({band("Yarn " + std::to_string(i), 100 + i), 1 + i % 4});
  const auto all = compare_all(many);
  ASSERT_EQ(all.size(), 101u);
  for (const CandidateFacts& one : all) EXPECT_TRUE(one.skeins) << one.name;
  const CandidateFacts rope = facts_of(quillmarsh(), band("Rope", 175), 1000000000);
  EXPECT_TRUE(rope.firmness);
}

}  // namespace
}  // namespace skeinproof
