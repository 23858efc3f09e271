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

}  // namespace
}  // namespace skeinproof
