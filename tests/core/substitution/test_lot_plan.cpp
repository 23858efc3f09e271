// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/substitution/lot_plan.h"

#include <gmock/gmock.h>

#include "tests/core/substitution/yarn_at_home.h"

namespace skeinproof::testing {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;

std::vector<LotPlan> plans(const Pattern& pattern) { return lot_plans(pattern, assess(pattern)); }

std::vector<std::string> pieces(const LotOfRole& lot) {
  std::vector<std::string> names;
  for (const LotPiece& piece : lot.pieces) names.push_back(piece.name);
  return names;
}

TEST(LotPlan, SleevesComeFromTheSmallLot) {
  const auto all = plans(quillmarsh_at_home());
  ASSERT_EQ(all.size(), 1u);
  const LotPlan& plan = all.front();
  EXPECT_EQ(plan.label, "MC");
  EXPECT_EQ(plan.cut, LotCut::between_pieces);
  ASSERT_EQ(plan.lots.size(), 2u);
  const LotOfRole &x = plan.lots[0], &y = plan.lots[1];
  EXPECT_EQ(x.lot, "X");
  EXPECT_TRUE(x.first);
  EXPECT_THAT(pieces(x), ElementsAre("Body", "Yoke"));
  double knitted = 0, planned = 0;
  for (const LotPiece& piece : x.pieces) knitted += piece.knitted.value(), planned += piece.planned.value();
  EXPECT_NEAR(knitted, 687.4, 0.05);
  EXPECT_NEAR(planned, 721.8, 0.05);
  EXPECT_NEAR(x.planned.value(), planned + 21, 1e-6);  // 20 m of swatch with 5 %
  EXPECT_NEAR(x.have.value(), 1018.5, 1e-9);
  EXPECT_EQ(y.lot, "Y");
  EXPECT_THAT(pieces(y), ElementsAre("Sleeves"));
  EXPECT_NEAR(y.knitted.value(), 311.5, 0.05);
  EXPECT_NEAR(y.planned.value(), 327.1, 0.05);
  EXPECT_NEAR(y.have.value(), 350, 1e-9);
  EXPECT_GT(y.spare.value(), 0);
  EXPECT_THAT(plan.words, HasSubstr("Sleeves from lot Y (327.1 of 349.7 m)"));
}

TEST(LotPlan, OneLotIsBestWhereItSuffices) {
  Pattern pattern = quillmarsh_at_home();
  pattern.on_hand_size = size_named(pattern, "2");
  const auto all = plans(pattern);
  ASSERT_EQ(all.size(), 1u);
  EXPECT_EQ(all[0].cut, LotCut::one_lot);
  ASSERT_EQ(all[0].lots.size(), 1u);
  EXPECT_EQ(all[0].lots[0].lot, "X");
  EXPECT_NEAR(all[0].lots[0].planned.value(), 857.2, 0.05);
}

TEST(LotPlan, ABandInsideAPieceWhereWholePiecesDoNotFit) {
  Pattern pattern = quillmarsh_at_home();
  pattern.on_hand[0].parts = {{grams(26), ""}};  // 966 m
  pattern.on_hand[1].whole_skeins = Entered<double>{0, ""};
  pattern.on_hand[1].parts = {{grams(35), ""}};  // 122.5 m
  const auto all = plans(pattern);
  ASSERT_EQ(all.size(), 1u);
  // 1069.9 of 1088.5 m: neither sleeves nor yoke fit the small lot, the chart alone does with 110.9 m.
  EXPECT_EQ(all[0].cut, LotCut::between_sections);
  ASSERT_EQ(all[0].lots.size(), 2u);
  EXPECT_THAT(pieces(all[0].lots[1]), ElementsAre("Yoke, chart"));
  EXPECT_NEAR(all[0].lots[1].planned.value(), 35 * 3.017 * 1.05, 0.05);
  EXPECT_THAT(all[0].advice, HasSubstr("alternate two skeins every 2 rounds"));
}

TEST(LotPlan, NotPossibleIsSaid) {
  Pattern pattern = quillmarsh_at_home();
  pattern.on_hand[0].whole_skeins = Entered<double>{3, ""};
  const auto little = plans(pattern);
  ASSERT_EQ(little.size(), 1u);
  EXPECT_EQ(little[0].cut, LotCut::not_possible);
  ASSERT_TRUE(little[0].short_of.has_value());
  EXPECT_NEAR(little[0].short_of->value(), 1069.9 - (3 * 175 + 143.5 - 0.9) - 349.7, 0.05);
  Pattern unknown = quillmarsh_at_home();
  unknown.pieces.clear();
  unknown.weighings.clear();
  const auto none = plans(unknown);
  ASSERT_EQ(none.size(), 1u);
  EXPECT_EQ(none[0].cut, LotCut::not_possible);
  EXPECT_FALSE(none[0].short_of.has_value());
}

TEST(LotPlan, OneLotOfAColourAsksForNone) {
  Pattern pattern = quillmarsh_at_home();
  pattern.on_hand[1].lot = "X";
  EXPECT_TRUE(plans(pattern).empty());
  pattern.on_hand[1].lot = "Y";
  pattern.on_hand[1].used = false;
  EXPECT_TRUE(plans(pattern).empty());
}

}  // namespace
}  // namespace skeinproof::testing
