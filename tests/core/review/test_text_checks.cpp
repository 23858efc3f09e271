// SPDX-License-Identifier: GPL-3.0-or-later
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/core/review/checked_text.h"

namespace skeinproof {
namespace {

using testing::CheckedText;
using ::testing::Contains;
using ::testing::ElementsAre;
using testing::HandReading;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using testing::lampwick;
using testing::quillmarsh;
using testing::submitted;

using Changes = std::vector<std::pair<std::string, std::string>>;

CheckedText socks(const Changes& changes = {}) {
  return CheckedText(lampwick(), submitted(lampwick(), changes));
}

TEST(TextChecks, T1_NotionsInEverySize) {
  EXPECT_EQ(CheckedText(lampwick(), submitted(lampwick()) + "\nButtons: 5 (5, 6, 6)").found("T1").size(), 1u);
  EXPECT_THAT(CheckedText(lampwick(), submitted(lampwick()) + "\nButtons: 5 (5, 6, 6, 7)").where("T1"),
              IsEmpty());
  EXPECT_THAT(CheckedText(lampwick(), submitted(lampwick()) + "\nButtons: 5").where("T1"), IsEmpty());
}

TEST(TextChecks, T1_NothingWhereTheSizesAreNotKnown) {
  EXPECT_THAT(CheckedText(new_pattern(), "MC Peat: 5 (5, 6) balls\nNotions: 5 (5, 6) buttons").where("T1"),
              IsEmpty());
}

TEST(TextChecks, T1_AsManyButtonsAsButtonholes) {
  const auto both = [](const std::string& holes) {
    HandReading hand("Sizes 1 (2, 3, 4, 5). Buttons: 5 (5, 6, 6, 7). Buttonholes: " + holes);
    hand.list(StatementKind::size_labels, "1 (2, 3, 4, 5)");
    hand.list(StatementKind::notion, "5 (5, 6, 6, 7)", "buttons");
    hand.list(StatementKind::notion, holes, "buttonholes");
    return CheckedText(lampwick(), hand);
  };
  EXPECT_THAT(both("5 (5, 6, 7, 7)").where("T1"), ElementsAre(" 4"));
  EXPECT_THAT(both("5 (5, 6, 6, 7)").where("T1"), IsEmpty());
}

TEST(TextChecks, T2_OnlyOnceAStyleIsChosen) {
  EXPECT_THAT(socks().where("T2"), IsEmpty());
  EXPECT_TRUE(socks().not_checked("T2"));
}

TEST(TextChecks, T2_FactsAsTheHouseWritesThem) {
  Pattern pattern = lampwick();
  pattern.house_styles.front().shade_number = ShadeNumber::with_number_sign;
  const CheckedText text(pattern, submitted(pattern));
  ASSERT_THAT(text.where("T2"), Contains("MC "));
  for (const Finding& finding : text.found("T2")) {
    EXPECT_EQ(finding.severity, Severity::style);
    if (finding.roles == std::vector<std::string>{"MC"}) {
      EXPECT_THAT(text.text_with(finding), HasSubstr("MC Soot #204"));
    }
  }
  const CheckedText written(pattern, submitted(pattern, {{"MC Soot 204", "MC Soot #204"}}));
  EXPECT_THAT(written.where("T2"), ::testing::Not(Contains("MC ")));
}

TEST(TextChecks, T2_PutUpsBracketsAndFractions) {
  Pattern pattern = quillmarsh();
  HouseStyle& house = pattern.house_styles.front();
  house.systems = SystemOrder::metric_only;
  const Changes right = {{"175 m / 197 yd per 50 g / 1¾ oz skein", "175 m per 50 g skein"}};
  const auto titles = [&](const Changes& changes) {
    std::vector<std::string> all;
    for (const Finding& finding : CheckedText(pattern, submitted(pattern, changes)).found("T2"))
      all.push_back(finding.title);
    return all;
  };
  EXPECT_THAT(titles({}), Contains(HasSubstr("put-up written otherwise")));
  EXPECT_THAT(titles(right), ::testing::Not(Contains(HasSubstr("put-up written otherwise"))));
  house.brackets = SizeBrackets::one_bracket;
  EXPECT_THAT(titles(right), Contains(HasSubstr("list written otherwise")));
}

TEST(TextChecks, T3_SaidTwiceAndNotAlike) {
  EXPECT_THAT(socks().where("T3"), IsEmpty());
  const std::string again = submitted(lampwick()) + "\nThe sample is shown in size 4.\n";
  EXPECT_EQ(CheckedText(lampwick(), again).found("T3").size(), 1u);
  const std::string alike = submitted(lampwick()) + "\nThe sample is shown in size 3.\n";
  EXPECT_THAT(CheckedText(lampwick(), alike).where("T3"), IsEmpty());
}

Pattern in_two_drafts(const Changes& second) {
  Pattern pattern = lampwick();
  pattern.drafts.edit([&](std::vector<Draft>& drafts) {
    Draft next = drafts.back();
    next.id = DraftId{++pattern.last_id};
    next.name = "draft 2";
    next.text = submitted(pattern, second);
    drafts.push_back(next);
  });
  return pattern;
}

TEST(TextChecks, T4_WhatDependsOnAChangeMovesWithIt) {
  EXPECT_TRUE(socks().not_checked("T4"));
  const Changes gauge = {{"32 sts and 24 rounds", "28 sts and 36 rounds"}};
  const auto found = CheckedText(in_two_drafts(gauge)).found("T4");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_THAT(found.front().title, HasSubstr("the gauge changed"));
  EXPECT_THAT(found.front().evidence, Contains(HasSubstr("as before: ")));
  const Changes both = {{"32 sts and 24 rounds", "28 sts and 36 rounds"},
                        {"CC Marigold 204: 1 (1, 1, 1, 1)", "CC Marigold 204: 1 (1, 1, 2, 2)"}};
  EXPECT_THAT(CheckedText(in_two_drafts(both)).where("T4"), IsEmpty());
  EXPECT_THAT(CheckedText(in_two_drafts({})).where("T4"), IsEmpty());
}

TEST(TextChecks, T5_MetresWhereTheHouseWantsThem) {
  EXPECT_THAT(socks().where("T5"), IsEmpty());
  Pattern pattern = lampwick();
  pattern.house_styles.front().metres_line = true;
  const CheckedText text(pattern, submitted(pattern));
  ASSERT_THAT(text.where("T5"), ElementsAre("MC ", "CC "));
  EXPECT_EQ(text.found("T5").front().evidence.front(), "offered: MC 64 (90, 121, 157, 185) m");
  const std::string counts = "CC Marigold 204: 1 (1, 1, 1, 1) ball";
  const CheckedText there(pattern,
                          submitted(pattern, {{counts, "CC Marigold 204: 97 (131, 172, 219, 263) m"}}));
  EXPECT_THAT(there.where("T5"), ElementsAre("MC "));
}

}  // namespace
}  // namespace skeinproof
