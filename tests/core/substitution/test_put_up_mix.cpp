// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/substitution/put_up_mix.h"

#include <gmock/gmock.h>

#include <cstdlib>
#include <random>

#include "core/substitution/integer_plan.h"
#include "tests/core/substitution/yarn_at_home.h"

namespace skeinproof::testing {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;

SoldAs sold(double length_m, std::optional<double> price = {}, const std::string& currency = "€",
            double weight_g = 50) {
  SoldAs one;
  one.put_up.length = Entered<Metres>{metres(length_m), ""};
  one.put_up.weight = Entered<Grams>{grams(weight_g), ""};
  if (price) one.price = Price{{*price, ""}, currency};
  return one;
}

TEST(PutUpMix, OnePutUpIsRoundedUp) {
  const auto mix = cheapest_mix(metres(1202.9), {sold(175, 7.90)});
  ASSERT_TRUE(mix.has_value());
  EXPECT_EQ(mix->skeins, 7);
  EXPECT_NEAR(*mix->cost, 55.30, 1e-9);
  EXPECT_NEAR(mix->left_over.value(), 22.1, 1e-9);
  EXPECT_NEAR(mix->last_skein_share, 1202.9 / 175 - 6, 1e-9);
  EXPECT_EQ(cheapest_mix(metres(350), {sold(175)})->skeins, 2);
  EXPECT_NEAR(cheapest_mix(metres(350), {sold(175)})->last_skein_share, 1, 1e-9);
}

// 1000 m: five of 200 m at 8 cost 40; two of 420 m at 14 and one of 200 m cost 36.
TEST(PutUpMix, PutUpsAreMixedWhereThatIsCheaper) {
  const auto mix = cheapest_mix(metres(1000), {sold(200, 8), sold(420, 14, "EUR", 100)});
  ASSERT_TRUE(mix.has_value());
  EXPECT_NEAR(*mix->cost, 36, 1e-9);
  ASSERT_EQ(mix->counts.size(), 2u);
  EXPECT_EQ(mix->counts[0].skeins, 2);
  EXPECT_EQ(mix->counts[1].skeins, 1);
  EXPECT_EQ(mix->skeins, 3);
  EXPECT_NEAR(mix->left_over.value(), 40, 1e-9);
  EXPECT_TRUE(mix->proven);
}

// At the same price of a metre the fewer skeins win, then the less left over.
TEST(PutUpMix, TiesGoToFewerSkeinsAndThenToLessLeftOver) {
  const auto fewer = cheapest_mix(metres(400), {sold(100, 5), sold(200, 10)});
  EXPECT_EQ(fewer->skeins, 2);
  const auto less = cheapest_mix(metres(310), {sold(200, 10), sold(160, 10), sold(240, 10)});
  EXPECT_EQ(less->skeins, 2);
  EXPECT_NEAR(less->left_over.value(), 10, 1e-9);
}

TEST(PutUpMix, WithoutPricesTheFewestSkeinsAndSaidSo) {
  const auto mix = cheapest_mix(metres(310), {sold(200), sold(160)});
  ASSERT_TRUE(mix.has_value());
  EXPECT_FALSE(mix->by_price);
  EXPECT_FALSE(mix->cost.has_value());
  EXPECT_EQ(mix->skeins, 2);
  EXPECT_NEAR(mix->left_over.value(), 10, 1e-9);
}

TEST(PutUpMix, WhatIsMissingIsNamedAndTheRestCounts) {
  SoldAs without_length = sold(1, 4, "€", 100);
  without_length.put_up.length.reset();
  const auto mix = cheapest_mix(metres(300), {sold(175, 7.90), without_length, sold(90, {}, "", 25)});
  ASSERT_TRUE(mix.has_value());
  EXPECT_NEAR(*mix->cost, 15.80, 1e-9);
  ASSERT_EQ(mix->left_out.size(), 2u);
  EXPECT_THAT(mix->left_out[0].message(), HasSubstr("the put-up of 100 g without a length"));
  EXPECT_THAT(mix->left_out[1].message(), HasSubstr("the put-up of 25 g without a price"));
  EXPECT_FALSE(cheapest_mix(metres(300), {without_length}).has_value());
  EXPECT_FALSE(cheapest_mix(metres(300), {}).has_value());
  EXPECT_FALSE(cheapest_mix(metres(0), {sold(175)}).has_value());
  EXPECT_FALSE(cheapest_mix(metres(1e9), {sold(1)}).has_value());
}

TEST(PutUpMix, TwoCurrenciesAreNoSum) {
  const auto mix = cheapest_mix(metres(300), {sold(175, 7.90, "€"), sold(350, 12, "£")});
  ASSERT_TRUE(mix.has_value());
  EXPECT_FALSE(mix->cost.has_value());
  EXPECT_EQ(mix->skeins, 1);
  ASSERT_EQ(mix->left_out.size(), 1u);
  EXPECT_THAT(mix->left_out[0].found, HasSubstr("€ and £"));
  const auto no_currency = cheapest_mix(metres(300), {sold(175, 7.90, "€"), sold(350, 12, "")});
  ASSERT_EQ(no_currency->left_out.size(), 1u);
  EXPECT_THAT(no_currency->left_out[0].found, HasSubstr("without a currency"));
  EXPECT_TRUE(same_currency("€", " EUR "));
  EXPECT_FALSE(same_currency("€", "£"));
}

struct Worth {
  double cost = 1e300;
  int skeins = 0;
  double left = 0;
};
bool better(const Worth& a, const Worth& b) {
  if (std::abs(a.cost - b.cost) > 1e-9) return a.cost < b.cost;
  if (a.skeins != b.skeins) return a.skeins < b.skeins;
  return a.left < b.left - 1e-9;
}
// Every count of every put-up.
Worth exhaustive(double cover, const std::vector<SoldAs>& put_ups, std::size_t i = 0, Worth sum = {0, 0, 0},
                 double bought = 0) {
  if (i == put_ups.size()) {
    sum.left = bought - cover;
    return bought >= cover - 1e-9 ? sum : Worth{};
  }
  Worth best;
  const double length = put_ups[i].put_up.length->value.value();
  for (int n = 0; n <= static_cast<int>(std::ceil(cover / length)); ++n) {
    const double price = put_ups[i].price ? put_ups[i].price->amount.value : 0;
    const Worth one =
        exhaustive(cover, put_ups, i + 1, {sum.cost + n * price, sum.skeins + n, 0}, bought + n * length);
    if (better(one, best)) best = one;
  }
  return best;
}

double by_integer_plan(double cover, const std::vector<SoldAs>& put_ups) {
  IntegerPlan plan;
  IntegerPlan::Terms lengths;
  for (const SoldAs& one : put_ups) {
    const double length = one.put_up.length->value.value();
    lengths.emplace_back(plan.whole(std::ceil(cover / length), one.price->amount.value), length);
  }
  plan.at_least(lengths, cover);
  const auto counts = plan.solve();
  double cost = 0;
  for (std::size_t i = 0; i < put_ups.size(); ++i) cost += (*counts)[i] * put_ups[i].price->amount.value;
  return cost;
}

int cases(int usual) {
  const char* wished = std::getenv("SKEINPROOF_PLANS");
  return wished != nullptr ? std::atoi(wished) : usual;
}

TEST(PutUpMix, EqualsEveryMixTriedAndASecondFormulation) {
  std::mt19937 random(7);
  const auto any = [&](int low, int high) { return std::uniform_int_distribution<int>(low, high)(random); };
  for (int i = 0; i < cases(300); ++i) {
    const bool priced = any(0, 3) > 0;
    std::vector<SoldAs> put_ups;
    for (int n = any(1, 3); n > 0; --n)
      put_ups.push_back(
          sold(any(4, 40) * 10, priced ? std::optional<double>(any(2, 30) / 2.0) : std::nullopt));
    const double cover = any(1, 1500);
    const auto mix = cheapest_mix(metres(cover), put_ups);
    ASSERT_TRUE(mix.has_value());
    const Worth best = exhaustive(cover, put_ups);
    EXPECT_NEAR(mix->cost.value_or(0), best.cost, 1e-9);
    EXPECT_EQ(mix->skeins, best.skeins);
    EXPECT_NEAR(mix->left_over.value(), best.left, 1e-6);
    if (priced) {
      EXPECT_NEAR(*mix->cost, by_integer_plan(cover, put_ups), 1e-6);
    }
    // Never dearer than the best of one put-up alone.
    for (const SoldAs& one : put_ups)
      if (priced) {
        EXPECT_LE(*mix->cost, *cheapest_mix(metres(cover), {one})->cost + 1e-9);
      }
  }
}

TEST(PutUpMix, ManyPutUpsAtOnePriceOfAMetreEnd) {
  std::vector<SoldAs> put_ups;
  for (double length : {87.0, 131.0, 175.0, 350.0, 437.5, 875.0})
    put_ups.push_back(sold(length, length / 20));
  const auto mix = cheapest_mix(metres(60000), put_ups);
  ASSERT_TRUE(mix.has_value());
  EXPECT_GE(mix->bought.value(), 60000 - 1e-6);
  EXPECT_NEAR(*mix->cost, 3000, 2);
}

TEST(PutUpMix, AHairOverIsCoveredAsTheHouseRounds) {
  Pattern pattern = quillmarsh();
  HouseStyle house = pattern.house();
  const Yarn& yarn = *pattern.yarn(pattern.roles[0].yarn);
  EXPECT_NEAR(length_to_cover(metres(1054), metres(1054 / 1.05), yarn, house).value(), 1054, 1e-9);
  house.rounding = Rounding::up_unless_hair_over;
  house.hair_over_share = 0.03;
  house.minimum_allowance_pct = 4;
  EXPECT_NEAR(length_to_cover(metres(1054), metres(1054 / 1.05), yarn, house).value(), 1050, 1e-9);
}

TEST(BuyOneMore, EveryReasonFiresAndStaysSilent) {
  const Pattern pattern = quillmarsh();
  Yarn yarn = *pattern.yarn(pattern.roles[0].yarn);
  EXPECT_TRUE(reasons_for_spare(pattern, yarn, 7, 0.87, false).empty());
  EXPECT_TRUE(reasons_for_spare(pattern, yarn, 7, 0.90, false).empty());
  EXPECT_THAT(reasons_for_spare(pattern, yarn, 7, 0.91, false),
              ElementsAre(SpareReason::last_skein_nearly_full));
  EXPECT_THAT(reasons_for_spare(pattern, yarn, 7, 0.5, true), ElementsAre(SpareReason::to_be_lengthened));
  yarn.colouring = "hand-dyed, semi-solid";
  EXPECT_TRUE(reasons_for_spare(pattern, yarn, 1, 0.5, false).empty());
  EXPECT_THAT(reasons_for_spare(pattern, yarn, 2, 0.5, false), ElementsAre(SpareReason::hand_dyed));
  yarn.colouring.clear();
  yarn.withdrawn = true;
  EXPECT_THAT(reasons_for_spare(pattern, yarn, 1, 0.5, false), ElementsAre(SpareReason::withdrawn));
}

TEST(BuyOneMore, ABodyToBeLengthenedTakesItsColour) {
  Pattern pattern = quillmarsh();
  BenchChange longer;
  longer.id = take_id<ChangeId>(pattern);
  longer.kind = ChangeKind::longer_piece;
  longer.piece = pattern.pieces[0].id;
  longer.by = Entered<Centimetres>{centimetres(5), ""};
  pattern.changes = {longer};
  const SizeId size = size_named(pattern, "4");
  EXPECT_THAT(lengthened_roles(pattern, size), ElementsAre(role_named(pattern, "MC")));
  pattern.changes[0].made = false;
  EXPECT_TRUE(lengthened_roles(pattern, size).empty());
  pattern.changes[0].made = true;
  pattern.changes[0].by = Entered<Centimetres>{centimetres(-5), ""};
  EXPECT_TRUE(lengthened_roles(pattern, size).empty());
}

}  // namespace
}  // namespace skeinproof::testing
