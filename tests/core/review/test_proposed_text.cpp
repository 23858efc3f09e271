// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/proposed_text.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/review/statement_along.h"
#include "tests/support/samples.h"

namespace skeinproof {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using testing::quillmarsh;

class Proposals : public ::testing::Test {
 protected:
  void look() {
    found = review(pattern, assess(pattern));
    proposed = proposed_text(found, record_of(pattern, found));
  }
  std::size_t cause_of(std::string_view check) const {
    for (std::size_t c = 0; c < found.causes.size(); ++c)
      for (const std::size_t f : found.causes[c].findings)
        if (found.findings[f].check == check) return c;
    ADD_FAILURE() << check;
    return 0;
  }
  StatementAlong along(std::string_view words) const {
    const auto statement = statement_at(found.reading, found.text.find(words) + 2);
    EXPECT_TRUE(statement);
    return statement_along(pattern, found, *statement, proposed.edits);
  }

  Pattern pattern = quillmarsh();
  Review found;
  ProposedText proposed;
};

TEST_F(Proposals, StandInTheTextAndAreMarked) {
  look();
  EXPECT_THAT(proposed.text, HasSubstr("5 (5, 6, 7) (7, 8, 9, 9, 10) skeins"));
  EXPECT_THAT(proposed.text, HasSubstr("175 m / 191 yd"));
  EXPECT_THAT(proposed.text, HasSubstr("CC2 Gorse 33: 1 (1, 1, 1) (1, 1, 1, 1, 1)."));
  ASSERT_EQ(proposed.changes.size(), proposed.edits.size());
  for (std::size_t i = 0; i < proposed.changes.size(); ++i)
    EXPECT_EQ(words_at(proposed.text, proposed.changes[i].span), proposed.edits[i].after);
  EXPECT_EQ(edited(found.text, proposed.edits), proposed.text);
}

TEST_F(Proposals, LeaveOutWhatIsKept) {
  look();
  keep(pattern, found, cause_of("P1"), {"the band says so", "", ""});
  look();
  EXPECT_THAT(proposed.text, HasSubstr("175 m / 197 yd"));
}

TEST_F(Proposals, OfTwoThatMeetTheGraverIsLaid) {
  Review review;
  review.text = "8, 7";
  review.findings.resize(2);
  review.findings[0].proposal = {{{0, 1}, "7"}, {{3, 4}, "8"}};
  review.findings[1].proposal = {{{3, 4}, "9"}};
  review.causes = {{"c1", {0}, {}, {}}, {"c2", {1}, {}, {}}};
  const ProposedText both = proposed_text(review, record_of(new_pattern(), review));
  EXPECT_EQ(both.text, "7, 8");
  EXPECT_THAT(both.left_out, ElementsAre(1U));
}

TEST_F(Proposals, AStatementIsLaidAlongTheSizes) {
  look();
  const StatementAlong mc = along("5 (5, 6, 7) (8, 7");
  EXPECT_THAT(mc.columns, ElementsAre("1", "2", "3", "4", "5", "6", "7", "8", "9"));
  EXPECT_THAT(mc.submitted, ElementsAre("5", "5", "6", "7", "8", "7", "9", "9", "10"));
  EXPECT_THAT(mc.read, ElementsAre("5", "5", "6", "7", "8", "7", "9", "9", "10"));
  EXPECT_THAT(mc.proposed, ElementsAre("5", "5", "6", "7", "7", "8", "9", "9", "10"));
  EXPECT_EQ(mc.count_words, "9 values for 9 sizes");
  EXPECT_THAT(mc.name, HasSubstr("MC"));
  const StatementAlong short_list = along("1 (1, 1, 1) (1, 1, 1, 1).");
  EXPECT_EQ(short_list.count_words, "8 values for 9 sizes");
  EXPECT_EQ(short_list.proposed.size(), 9U);
  const StatementAlong bust = along("32 (35¾");
  EXPECT_EQ(bust.submitted[1], "35¾");
  EXPECT_EQ(bust.read[1], "35.75");
  EXPECT_EQ(bust.in_force.size(), 9U);
}

TEST_F(Proposals, AsSubmittedIsBeforeTheReplies) {
  look();
  ASSERT_TRUE(accept(pattern, found, cause_of("L3"), {}));
  look();
  const StatementAlong mc = along("5 (5, 6, 7) (7, 8");
  EXPECT_THAT(mc.submitted, ElementsAre("5", "5", "6", "7", "8", "7", "9", "9", "10"));
  EXPECT_THAT(mc.read, ElementsAre("5", "5", "6", "7", "7", "8", "9", "9", "10"));
  const StatementAlong put_up = along("197 yd");
  EXPECT_THAT(put_up.columns, ::testing::IsEmpty());
  EXPECT_THAT(put_up.submitted, ElementsAre("197"));
  EXPECT_THAT(put_up.in_force, ElementsAre("191"));
  EXPECT_THAT(put_up.proposed, ElementsAre("191"));
}

}  // namespace
}  // namespace skeinproof
