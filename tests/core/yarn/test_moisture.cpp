// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/yarn/moisture.h"

#include <gtest/gtest.h>

#include "core/reference/lookup.h"

namespace skeinproof {
namespace {

FibreShare share(std::string fibre, double percent) { return {fibre, fibre, {percent, {}}}; }
const Fibre& fibre(std::string_view id) { return *fibre_by_id(id); }

TEST(Regain, is_linear_between_the_points_of_the_curve) {
  EXPECT_DOUBLE_EQ(regain(fibre("wool"), 40).pct, 10.8);
  EXPECT_NEAR(regain(fibre("wool"), 45).pct, 11.8, 1e-12);
  EXPECT_DOUBLE_EQ(regain(fibre("wool"), 0).pct, 0);
  EXPECT_DOUBLE_EQ(regain(fibre("wool"), 100).pct, 33.3);
  EXPECT_LT(regain(fibre("wool"), 45).low_pct, 11.8);
  EXPECT_GT(regain(fibre("wool"), 45).high_pct, 11.8);
  EXPECT_TRUE(regain(fibre("wool"), 45).assumed.empty());
  EXPECT_TRUE(regain(fibre("wool_superwash"), 45).assumed.empty());
  EXPECT_TRUE(regain(fibre("polyamide"), 45).assumed.empty());
}

TEST(Regain, of_a_fibre_without_a_curve_is_its_kins_and_says_so) {
  const auto mohair = regain(fibre("mohair"), 65);
  EXPECT_DOUBLE_EQ(mohair.pct, 16.0);
  EXPECT_LE(mohair.low_pct, 13.0);  // what mohair itself is known to hold at 65 %
  ASSERT_EQ(mohair.assumed.size(), 1u);
  EXPECT_NE(mohair.assumed[0].find("that of wool stands in"), std::string::npos);
  EXPECT_DOUBLE_EQ(regain(fibre("lyocell"), 50).pct, regain(fibre("viscose"), 50).pct);
  EXPECT_DOUBLE_EQ(regain(fibre("hemp"), 50).pct, regain(fibre("flax"), 50).pct);
  EXPECT_DOUBLE_EQ(regain(fibre("polypropylene"), 50).pct, regain(fibre("polyester"), 50).pct);
}

TEST(Regain, and_allowance_are_known_of_every_fibre) {
  for (const Fibre& row : fibres())
    for (double humidity : {0.0, 33.3, 65.0, 100.0}) {
      const auto held = regain(row, humidity);
      EXPECT_LE(held.low_pct, held.pct) << row.id;
      EXPECT_GE(held.high_pct, held.pct) << row.id;
      for (Spinning spinning : {Spinning::unstated, Spinning::worsted, Spinning::woollen, Spinning::filament})
        for (Market market : {Market::unstated, Market::europe, Market::united_states}) {
          const auto allowed = allowance(row, spinning, market);
          EXPECT_LE(allowed.low_pct, allowed.pct) << row.id;
          EXPECT_GE(allowed.high_pct, allowed.pct) << row.id;
          EXPECT_FALSE(allowed.source.empty()) << row.id;
        }
    }
}

// Regulation (EU) 1007/2011, Annex IX: wool combed 18.25, carded 17.00; polyamide staple 6.25, filament 5.75;
// cotton 8.5, mercerised 10.5. ASTM D1909: wool 13.6.
TEST(Allowance, follows_spinning_and_market) {
  const auto pct = [](std::string_view id, Spinning spinning, Market market) {
    return allowance(*fibre_by_id(id), spinning, market).pct;
  };
  EXPECT_EQ(pct("wool", Spinning::worsted, Market::europe), 18.25);
  EXPECT_EQ(pct("wool", Spinning::woollen, Market::europe), 17.0);
  EXPECT_EQ(pct("wool", Spinning::semi_worsted, Market::europe), 17.0);
  EXPECT_EQ(pct("wool", Spinning::worsted, Market::united_states), 13.6);
  EXPECT_EQ(pct("polyamide", Spinning::worsted, Market::europe), 6.25);
  EXPECT_EQ(pct("polyamide", Spinning::filament, Market::europe), 5.75);
  EXPECT_EQ(pct("cotton", Spinning::filament, Market::europe), 8.5);
  EXPECT_EQ(pct("cotton_mercerised", Spinning::worsted, Market::europe), 10.5);
  const auto unknown = allowance(fibre("wool"), Spinning::unstated, Market::unstated);
  EXPECT_EQ(unknown.low_pct, 13.6);
  EXPECT_EQ(unknown.pct, 17.0);
  EXPECT_EQ(unknown.high_pct, 18.25);
  EXPECT_EQ(unknown.assumed.size(), 2u);
  EXPECT_TRUE(allowance(fibre("wool"), Spinning::worsted, Market::europe).assumed.empty());
}

TEST(Allowance, of_a_fibre_without_one_says_what_stands_in) {
  EXPECT_EQ(allowance(fibre("nettle"), Spinning::unstated, Market::europe).pct, 12.0);
  EXPECT_FALSE(allowance(fibre("nettle"), Spinning::unstated, Market::europe).assumed.empty());
  const auto lyocell = allowance(fibre("lyocell"), Spinning::unstated, Market::united_states);
  EXPECT_EQ(lyocell.pct, 13.0);
  EXPECT_FALSE(lyocell.assumed.empty());
}

TEST(LabelGram, weighs_less_in_a_dry_room) {
  const std::vector<FibreShare> wool = {share("wool", 100)};
  const auto dry = label_gram(wool, Spinning::worsted, Market::europe, 40);
  EXPECT_NEAR(dry->on_scale, 1.108 / 1.1825, 1e-12);
  EXPECT_NEAR(dry->dry, 1 / 1.1825, 1e-12);
  EXPECT_LT(dry->low, dry->on_scale);
  EXPECT_GT(dry->high, dry->on_scale);
  const auto damp = label_gram(wool, Spinning::worsted, Market::europe, 80);
  EXPECT_GT(damp->on_scale, 1);
  // Wool moves about 10 % between 30 and 80 %, cotton about 5 %.
  const auto shift = [](const char* id) {
    const std::vector<FibreShare> one = {share(id, 100)};
    return label_gram(one, Spinning::worsted, Market::europe, 80)->on_scale /
           label_gram(one, Spinning::worsted, Market::europe, 30)->on_scale;
  };
  EXPECT_NEAR(shift("wool"), 1.10, 0.01);
  EXPECT_NEAR(shift("cotton"), 1.05, 0.01);
}

TEST(LabelGram, refuses_what_it_cannot_know) {
  EXPECT_EQ(label_gram({}, Spinning::worsted, Market::europe, 40).error().kind, ErrorKind::not_found);
  EXPECT_EQ(label_gram({{"", "moon dust", {100, {}}}}, Spinning::worsted, Market::europe, 40).error().kind,
            ErrorKind::unknown_name);
  for (double humidity : {-1.0, 101.0, std::numeric_limits<double>::quiet_NaN()})
    EXPECT_EQ(label_gram({share("wool", 100)}, Spinning::worsted, Market::europe, humidity).error().kind,
              ErrorKind::out_of_range);
}

}  // namespace
}  // namespace skeinproof
