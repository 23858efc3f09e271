// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/substitution/wishes.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/core/substitution/candidates_at_bench.h"

namespace skeinproof {
namespace {

using testing::compared;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using testing::quillmarsh;
using ::testing::SizeIs;

Wish wish(WishKind kind, WishLevel level = WishLevel::should, std::optional<double> limit = {},
          const std::string& rule = {}) {
  Wish one;
  one.kind = kind;
  one.level = level;
  if (limit) one.limit = Entered<double>{*limit, {}};
  one.rule = rule;
  return one;
}

// Answers of all candidates of the yoke, own yarn first: y, n or ?.
std::string answers(const Wish& one, void (*change)(Pattern&) = nullptr) {
  Pattern pattern = quillmarsh();
  pattern.wishes = {one};
  if (change != nullptr) change(pattern);
  std::string all;
  for (const CandidateFacts& facts : compared(pattern)) {
    EXPECT_FALSE(facts.wishes[0].because.empty());
    all += !facts.wishes[0].met ? '?' : *facts.wishes[0].met ? 'y' : 'n';
  }
  return all;
}

TEST(Wishes, EachIsAnsweredByAFact) {
  EXPECT_EQ(answers(wish(WishKind::within_budget)), "ynynn");
  EXPECT_EQ(answers(wish(WishKind::meets_gauge)), "ynnnn");
  EXPECT_EQ(answers(wish(WishKind::needle_change)), "ynnyn");
  EXPECT_EQ(answers(wish(WishKind::mass_at_most, WishLevel::should, 10)), "ynnyy");
  EXPECT_EQ(answers(wish(WishKind::mass_at_most, WishLevel::should, 17)), "yynyy");
  EXPECT_EQ(answers(wish(WishKind::spare_at_most, WishLevel::should, 16)), "ynyny");
  EXPECT_EQ(answers(wish(WishKind::no_consequence, WishLevel::should, {}, "S5")), "ynyyy");
  EXPECT_EQ(answers(wish(WishKind::no_consequence)), "ynnnn");
  EXPECT_EQ(answers(wish(WishKind::not_wool)), "nnynn");
  EXPECT_EQ(answers(wish(WishKind::one_dye_lot_buy, WishLevel::should, 8)), "yynyn");
}

TEST(Wishes, WhatIsNotKnownIsNeitherMetNorNot) {
  EXPECT_EQ(answers(wish(WishKind::same_care)), "y????") << "no band of the sample names its care";
  EXPECT_EQ(answers(wish(WishKind::within_budget), [](Pattern& pattern) { pattern.budget.reset(); }),
            "?????");
  EXPECT_EQ(answers(wish(WishKind::spare_at_most)), "?????") << "no limit";
  EXPECT_EQ(answers(wish(WishKind::no_consequence, WishLevel::should, {}, "S7")), "yy?y?")
      << "no structure is given of two";
}

TEST(Wishes, SameCareIsNoStricter) {
  EXPECT_EQ(answers(wish(WishKind::same_care),
                    [](Pattern& pattern) {
                      for (Yarn& yarn : pattern.yarns) yarn.care = "machine wash 30°";
                      pattern.yarns[1].care = "hand wash";
                      pattern.yarns[2].care = "machine wash 60°";
                    }),
            "ynyyy");
}

TEST(Wishes, StandingTellsMustFromShould) {
  Pattern pattern = quillmarsh();
  pattern.wishes = {wish(WishKind::within_budget, WishLevel::must), wish(WishKind::not_wool),
                    wish(WishKind::same_care, WishLevel::must),
                    wish(WishKind::meets_gauge, WishLevel::need_not)};
  const auto all = compared(pattern);
  const WishStanding smooth = wish_standing(pattern, all[1]);
  EXPECT_FALSE(smooth.may_be_chosen());
  EXPECT_THAT(smooth.must_not_met, ElementsAre(0u));
  EXPECT_THAT(smooth.must_not_known, ElementsAre(2u));
  EXPECT_THAT(smooth.should_not_met, ElementsAre(1u));
  const WishStanding cotton = wish_standing(pattern, all[2]);
  EXPECT_TRUE(cotton.may_be_chosen());
  EXPECT_THAT(cotton.should_not_met, IsEmpty()) << "the gauge need not hold";
}

TEST(Wishes, TradeOffsAreOnlyAmongThoseThatMayBeChosen) {
  Pattern pattern = quillmarsh();
  pattern.wishes = {wish(WishKind::within_budget, WishLevel::must), wish(WishKind::not_wool),
                    wish(WishKind::mass_at_most, WishLevel::should, 10)};
  const auto all = compared(pattern);
  const auto offs = trade_offs(pattern, all);
  ASSERT_THAT(offs, SizeIs(1));  // the pattern's own against cotton; the others are over the budget
  EXPECT_EQ(offs[0].one, 0u);
  EXPECT_EQ(offs[0].other, 2u);
  EXPECT_THAT(offs[0].only_one, ElementsAre(2u));
  EXPECT_THAT(offs[0].only_other, ElementsAre(1u));
  EXPECT_THAT(offs[0].words, HasSubstr("Tallowhithe Strand: no animal fibre"));
  pattern.wishes.pop_back();
  EXPECT_THAT(trade_offs(pattern, compared(pattern)), IsEmpty()) << "one meets all the other does";
}

TEST(Wishes, AreReadAsSentences) {
  const Pattern pattern = quillmarsh();
  EXPECT_EQ(wish_words(pattern, wish(WishKind::mass_at_most, WishLevel::should, 10)),
            "not heavier than 10 % more than in the pattern's yarn");
  EXPECT_EQ(wish_words(pattern, wish(WishKind::no_consequence, WishLevel::should, {}, "S1")),
            "does not differ by S1");
  EXPECT_EQ(wish_words(pattern, wish(WishKind::one_dye_lot_buy, WishLevel::should, 4)),
            "no colour takes more skeins than 4");
}

}  // namespace
}  // namespace skeinproof
