// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/yarn/check_yarn.h"

#include <gtest/gtest.h>

namespace skeinproof {
namespace {

FibreShare share(std::string fibre, double percent) { return {fibre, fibre, {percent, {}}}; }

PutUp put_up(std::optional<double> length_m, std::optional<double> weight_g,
             SkeinWord word = SkeinWord::skein) {
  PutUp result;
  if (length_m) result.length = Entered<Metres>{metres(*length_m), {}};
  if (weight_g) result.weight = Entered<Grams>{grams(*weight_g), {}};
  result.word = word;
  return result;
}

std::string first(const std::vector<Error>& problems) {
  return problems.empty() ? "" : problems[0].message();
}

TEST(CheckComposition, is_silent_where_all_is_well) {
  EXPECT_TRUE(check_composition({}).empty());
  EXPECT_TRUE(check_composition({share("wool", 100)}).empty());
  EXPECT_TRUE(check_composition({share("wool", 75), share("polyamide", 25)}).empty());
  EXPECT_TRUE(check_composition({share("wool", 33.3), share("silk", 33.3), share("flax", 33.4)}).empty());
  EXPECT_TRUE(check_composition({share("wool", 33.3), share("silk", 33.3), share("flax", 33.3)}).empty());
}

TEST(CheckComposition, finds_what_cannot_be) {
  EXPECT_EQ(first(check_composition({share("wool", 75), share("polyamide", 30)})),
            "found fibres that add to 105 %, expected 100 %");
  EXPECT_EQ(first(check_composition({share("wool", 100), share("silk", 0)})),
            "found 0 % of “silk”, expected a share of more than 0 and at most 100 %");
  EXPECT_EQ(check_composition({share("wool", 120)}).size(), 2u);
  EXPECT_EQ(first(check_composition({share("wool", 50), share("wool", 50)})),
            "found “wool” twice, expected one share of each fibre");
  EXPECT_EQ(first(check_composition({{"", "moon dust", {100, {}}}})),
            "found “moon dust”, expected the name of a fibre in the table");
  EXPECT_EQ(first(check_composition({{"", " ", {100, {}}}})),
            "found 100 % of nothing, expected the name of a fibre");
  EXPECT_FALSE(check_composition({share("wool", std::numeric_limits<double>::quiet_NaN())}).empty());
}

TEST(CheckPutUp, is_silent_where_all_is_well) {
  EXPECT_TRUE(check_put_up({}).empty());
  EXPECT_TRUE(check_put_up(put_up(175, 50)).empty());
  EXPECT_TRUE(check_put_up(put_up(3000, 1000, SkeinWord::cone)).empty());
  EXPECT_TRUE(check_put_up(put_up(1500, 100)).empty());
}

TEST(CheckPutUp, finds_what_cannot_be) {
  EXPECT_EQ(first(check_put_up(put_up(3000, 300))),
            "found a skein of 3000 m, expected at most 2500 m on one skein");
  EXPECT_EQ(check_put_up(put_up(3000, 50)).size(), 2u);
  EXPECT_EQ(first(check_put_up(put_up(1250, 50))),
            "found 1250 m in 50 g, which is 25 m/g, expected 0.3 to 20 m/g, from roving to thread");
  EXPECT_NE(first(check_put_up(put_up(10, 100))).find("0.1 m/g"), std::string::npos);
  EXPECT_EQ(first(check_put_up(put_up(175, {}))),
            "found a length without a weight, expected both length and weight of one skein, from its band");
  EXPECT_EQ(first(check_put_up(put_up({}, 50))),
            "found a weight without a length, expected both length and weight of one skein, from its band");
  EXPECT_FALSE(check_put_up(put_up(-175, 50)).empty());
  EXPECT_FALSE(check_put_up(put_up(175, 0)).empty());
  EXPECT_FALSE(check_put_up(put_up(10'000, 6000, SkeinWord::cone)).empty());
}

}  // namespace
}  // namespace skeinproof
