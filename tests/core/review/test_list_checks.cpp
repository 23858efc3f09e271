// SPDX-License-Identifier: GPL-3.0-or-later
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/pattern/size_line.h"
#include "tests/core/review/checked_text.h"

namespace skeinproof {
namespace {

using testing::CheckedText;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using testing::lampwick;
using testing::quillmarsh;
using testing::submitted;

using Changes = std::vector<std::pair<std::string, std::string>>;

CheckedText yoke(const Changes& changes = {}) {
  return CheckedText(quillmarsh(), submitted(quillmarsh(), changes));
}
CheckedText socks(const Changes& changes = {}) {
  return CheckedText(lampwick(), submitted(lampwick(), changes));
}
// The yoke with its lists set right.
Changes right_lists() {
  return {{"(8, 7, 9, 9, 10) skeins", "(7, 8, 9, 9, 10) skeins"},
          {"CC1 Lichen 21: 1 (2", "CC1 Lichen 21: 2 (2"},
          {"CC2 Gorse 33: 1 (1, 1, 1) (1, 1, 1, 1)", "CC2 Gorse 33: 1 (1, 1, 1) (1, 1, 1, 1, 1)"}};
}

TEST(ListChecks, L1_NamesTheMissingSizeByItsBrackets) {
  const CheckedText text = yoke();
  ASSERT_THAT(text.where("L1"), ElementsAre("CC2 9"));
  const Finding finding = text.found("L1").front();
  EXPECT_EQ(finding.severity, Severity::stop);
  EXPECT_THAT(text.text_with(finding), HasSubstr("CC2 Gorse 33: 1 (1, 1, 1) (1, 1, 1, 1, 1)."));
  EXPECT_THAT(yoke(right_lists()).where("L1"), IsEmpty());
}

TEST(ListChecks, L1_NamesTheMissingSizeByTheFacts) {
  const CheckedText text = socks();
  ASSERT_THAT(text.where("L1"), ElementsAre(" 4"));
  EXPECT_THAT(text.text_with(text.found("L1").front()), HasSubstr("15.5 (19.5, 23, 27, 30.5) cm"));
  EXPECT_THAT(socks({{"23, 30.5", "23, 27, 30.5"}}).where("L1"), IsEmpty());
}

TEST(ListChecks, L1_OneFigureForAllSizesIsWhole) {
  EXPECT_THAT(socks({{"15.5 (19.5, 23, 30.5) cm", "23 cm"}}).where("L1"), IsEmpty());
}

TEST(ListChecks, L2_ShapeOfTheSizesLine) {
  EXPECT_THAT(yoke().where("L2"), ElementsAre("CC2 "));
  EXPECT_THAT(socks().where("L2"), ElementsAre(" "));
  EXPECT_THAT(yoke(right_lists()).where("L2"), IsEmpty());
  const CheckedText other = socks({{"CC Marigold 204: 1 (1, 1, 1, 1)", "CC Marigold 204: 1 (1, 1) (1, 1)"},
                                   {"23, 30.5", "23, 27, 30.5"}});
  ASSERT_THAT(other.where("L2"), ElementsAre("CC "));
  EXPECT_EQ(other.found("L2").front().severity, Severity::style);
  EXPECT_THAT(other.text_with(other.found("L2").front()), HasSubstr("CC Marigold 204: 1 (1, 1, 1, 1)"));
}

TEST(ListChecks, L2_NothingWhereEverySizeHasALine) {
  EXPECT_THAT(
      CheckedText(new_pattern(), "Small: 5 balls MC\nMedium: 6 balls MC\nLarge: 7 balls MC\n").where("L2"),
      IsEmpty());
}

TEST(ListChecks, L3_ALargerSizeAsksForLess) {
  const CheckedText text = yoke();
  ASSERT_THAT(text.where("L3"), ElementsAre("MC 5,6"));
  const Finding finding = text.found("L3").front();
  EXPECT_EQ(finding.title, "a larger size asks for less: “8, 7”");
  EXPECT_THAT(text.text_with(finding), HasSubstr("5 (5, 6, 7) (7, 8, 9, 9, 10) skeins"));
  EXPECT_THAT(yoke(right_lists()).where("L3"), IsEmpty());
}

TEST(ListChecks, L3_ASizeWithoutTheColourIsNoFall) {
  EXPECT_THAT(yoke({{"CC3 Ember 40: 1 (1, 1, 1)", "CC3 Ember 40: 1 (1, –, 1)"}}).where("L3"),
              ElementsAre("MC 5,6"));
}

TEST(ListChecks, L4_ShowsThePairThatClashesAndWhatMendsIt) {
  const CheckedText text = yoke();
  ASSERT_THAT(text.where("L4"), ElementsAre("MC 5,6"));
  const Finding finding = text.found("L4").front();
  EXPECT_EQ(finding.severity, Severity::ask);
  EXPECT_THAT(finding.evidence, ::testing::Contains(HasSubstr("exchange sizes 5 and 6")));
  EXPECT_THAT(text.text_with(finding), HasSubstr("(7, 8, 9, 9, 10) skeins"));
  EXPECT_THAT(yoke(right_lists()).where("L4"), IsEmpty());
}

TEST(ListChecks, L4_WithoutSizesItCannotRun) {
  const CheckedText text(new_pattern(), "Sizes 1 (2, 3). MC Ash: 2 (3, 4) skeins.");
  EXPECT_TRUE(text.not_checked("L4"));
  EXPECT_THAT(text.where("L4"), IsEmpty());
}

TEST(ListChecks, L5_OneCountForSizesThatGrowTooFar) {
  // 6 skeins in nine sizes: (6 / 5)^(1 / 0.9) = 1.22, and the areas grow by 1.534 / 0.751 = 2.04.
  const CheckedText text =
      yoke({{"5 (5, 6, 7) (8, 7, 9, 9, 10) skeins", "6 (6, 6, 6) (6, 6, 6, 6, 6) skeins"}});
  ASSERT_THAT(text.where("L5"), ElementsAre("MC "));
  EXPECT_THAT(text.found("L5").front().evidence.front(), HasSubstr("below 1.22, and it is 2.04"));
  EXPECT_THAT(text.text_with(text.found("L5").front()), HasSubstr("5 (5, 6, 7) (7, 8, 9, 9, 10) skeins"));
  // Two skeins of a part colour leave room for four times the area; one skein says nothing.
  EXPECT_THAT(yoke(right_lists()).where("L5"), IsEmpty());
}

TEST(ListChecks, L6_NamesTheColourThatWouldMendTheSum) {
  const CheckedText text = yoke();
  EXPECT_THAT(text.where("L6"), ElementsAre("CC1 1", "MC 5", "MC 6", "CC2 9"));
  EXPECT_THAT(text.text_with(text.found("L6").front()), HasSubstr("CC1 Lichen 21: 2 (2"));
  EXPECT_THAT(yoke(right_lists()).where("L6"), IsEmpty());
}

TEST(ListChecks, L6_WithoutATotalItSaysSo) {
  EXPECT_TRUE(socks().not_checked("L6"));
  EXPECT_THAT(socks().where("L6"), IsEmpty());
}

TEST(ListChecks, L7_AListThatSlippedOnePlace) {
  const CheckedText text =
      yoke({{"5 (5, 6, 7) (8, 7, 9, 9, 10) skeins", "5 (5, 5, 6) (7, 7, 8, 9, 9) skeins"}});
  ASSERT_THAT(text.where("L7"), ElementsAre("MC "));
  EXPECT_THAT(text.text_with(text.found("L7").front()), HasSubstr("5 (5, 6, 7) (7, 8, 9, 9, 10) skeins"));
  // Two figures exchanged are no slip of the list, nor is one figure that a move would hide.
  EXPECT_THAT(yoke().where("L7"), IsEmpty());
}

TEST(ListChecks, L8_TwoRowsExchanged) {
  const CheckedText text =
      yoke({{"CC1 Lichen 21: 1 (2, 2, 2) (2, 2, 2, 2, 2)", "CC1 Lichen 21: 1 (1, 1, 1) (1, 1, 1, 1, 1)"},
            {"CC2 Gorse 33: 1 (1, 1, 1) (1, 1, 1, 1)", "CC2 Gorse 33: 2 (2, 2, 2) (2, 2, 2, 2, 2)"}});
  EXPECT_THAT(text.where("L8"), ElementsAre("CC1+CC2 "));
  EXPECT_THAT(yoke(right_lists()).where("L8"), IsEmpty());
}

TEST(ListChecks, L9_OneStepOfNothing) {
  const std::string bust = "81.5 (91, 100, 109) (120, 129, 145, 149, 160) cm";
  const CheckedText text = yoke({{bust, "81.5 (91, 100, 109) (120, 129, 129, 149, 160) cm"}});
  ASSERT_THAT(text.where("L9"), ElementsAre(" 6,7"));
  EXPECT_THAT(text.text_with(text.found("L9").front()), HasSubstr("129, 140, 149"));
  // A plateau of several sizes is meant, and skeins stand still as they like.
  EXPECT_THAT(yoke({{bust, "81.5 (91, 100, 109) (120, 120, 120, 149, 160) cm"}}).where("L9"), IsEmpty());
  EXPECT_THAT(yoke().where("L9"), IsEmpty());
}

TEST(ListChecks, L10_SizesAreUniqueInOrderAndEverywhereTheSame) {
  EXPECT_THAT(socks().where("L10"), IsEmpty());
  EXPECT_EQ(socks({{"Sizes 1 (2, 3, 4, 5)", "Sizes 1 (2, 3, 3, 5)"}}).found("L10").size(), 1u);
  EXPECT_EQ(socks({{"Sizes 1 (2, 3, 4, 5)", "Sizes 1 (3, 2, 4, 5)"}}).found("L10").size(), 1u);
  const Pattern bare = new_pattern();
  EXPECT_EQ(CheckedText(bare, "Sizes S (M, L, XL). Foot length 20 (22, 24, 26) cm.").found("L10").size(), 0u);
  EXPECT_EQ(CheckedText(bare, "Sizes S (L, M, XL). Foot length 20 (22, 24, 26) cm.").found("L10").size(), 1u);
}

TEST(ListChecks, L11_WhatTheSampleIs) {
  EXPECT_THAT(yoke().where("L11"), IsEmpty());
  EXPECT_THAT(socks().where("L11"), IsEmpty()) << "no ease is asked of socks";
  const CheckedText text = yoke({{", 5–10 cm ease; shown in size 3, shades as listed", ""}});
  ASSERT_EQ(text.found("L11").size(), 1u);
  EXPECT_EQ(text.found("L11").front().title,
            "not said: the size of the sample, the shades of the sample and the ease or the model's measure");
  const CheckedText part(quillmarsh(), text.printed().text(),
                         {{TextPart::sizes, PartExtent::quoted_in_part}});
  EXPECT_THAT(part.where("L11"), IsEmpty());
  EXPECT_TRUE(part.not_checked("L11"));
}

}  // namespace
}  // namespace skeinproof
