// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/leftover_verdict.h"

#include <gtest/gtest.h>

#include "tests/support/samples.h"

namespace skeinproof {
namespace {

using testing::quillmarsh;

LengthEvidence from_counts(double low, double high) {
  LengthEvidence evidence;
  evidence.low = metres(low);
  evidence.high = metres(high);
  return evidence;
}

// Planned as the knitted length with 5 m of swatch and 5 % allowance.
LengthEvidence by_stitches(double knitted, double error) {
  const auto planned = [](double length) { return metres((length + 5) * 1.05); };
  return {LengthGround::stitches,
          planned(knitted * (1 - error)),
          planned(knitted * (1 + error)),
          metres(knitted),
          planned(knitted),
          error};
}

Verdict verdict_of(double have_m, const std::vector<LengthEvidence>& evidence, int pieces = 1) {
  const auto verdict = leftover_verdict({metres(have_m), pieces}, evidence, {});
  EXPECT_TRUE(verdict);
  return verdict ? verdict->verdict : Verdict::too_close_to_call;
}

TEST(LeftoverVerdict, CountsSayEnoughAtTheirUpperBound) {
  EXPECT_EQ(verdict_of(1100, {from_counts(1050, 1098.2)}), Verdict::enough);  // six skeins and 50 m
  EXPECT_EQ(verdict_of(157, {from_counts(0, 141.4)}), Verdict::enough);       // a 45 g end
  EXPECT_EQ(verdict_of(1098, {from_counts(1050, 1098.2)}), Verdict::too_close_to_call);
}

TEST(LeftoverVerdict, CountsSayNotEnoughOnlyBelowTheGreatestAllowance) {
  EXPECT_EQ(verdict_of(1000, {from_counts(1050, 1098.2)}), Verdict::too_close_to_call);
  EXPECT_EQ(verdict_of(913.1, {from_counts(1050, 1098.2)}), Verdict::too_close_to_call);
  EXPECT_EQ(verdict_of(913.0, {from_counts(1050, 1098.2)}), Verdict::not_enough);
  EXPECT_EQ(verdict_of(0, {from_counts(0, 141.4)}), Verdict::too_close_to_call);
}

TEST(LeftoverVerdict, TheNarrowestEvidenceDecidesAndIsNamed) {
  const auto cc1 =
      leftover_verdict({metres(259), 2}, {from_counts(202.1, 282.9), by_stitches(213.0, 0.12)}, {});
  ASSERT_TRUE(cc1);
  EXPECT_EQ(cc1->verdict, Verdict::enough);
  EXPECT_EQ(cc1->ground, LengthGround::stitches);
  EXPECT_DOUBLE_EQ(cc1->usable.value(), 258.7);
  EXPECT_TRUE(cc1->settled_by.empty());
  EXPECT_EQ(verdict_of(259, {from_counts(202.1, 282.9)}), Verdict::too_close_to_call);
  EXPECT_EQ(verdict_of(126, {from_counts(0, 141.4)}), Verdict::too_close_to_call);
  EXPECT_EQ(verdict_of(126, {from_counts(0, 141.4), by_stitches(89.3, 0.12)}), Verdict::enough);
  EXPECT_EQ(verdict_of(38.8, {from_counts(0, 141.4), by_stitches(50.8, 0.12)}), Verdict::not_enough);
}

TEST(LeftoverVerdict, StitchesAskForThePlannedAndForTheErrorOfTheKnitted) {
  EXPECT_EQ(verdict_of(56, {by_stitches(50, 0.10)}), Verdict::too_close_to_call);  // planned 57.75
  EXPECT_EQ(verdict_of(58, {by_stitches(50, 0.10)}), Verdict::enough);
  EXPECT_EQ(verdict_of(58, {by_stitches(50, 0.20)}), Verdict::too_close_to_call);  // 50 x 1.2 = 60
  EXPECT_EQ(verdict_of(44.9, {by_stitches(50, 0.10)}), Verdict::not_enough);
}

TEST(LeftoverVerdict, JoinsTakeTheirShareAndOneFactWouldSettleIt) {
  EXPECT_EQ(verdict_of(100, {from_counts(50, 100)}, 1), Verdict::enough);
  EXPECT_EQ(verdict_of(100, {from_counts(50, 100)}, 2), Verdict::too_close_to_call);
  const auto settled = [](LengthEvidence evidence, LengthGround ground, bool row_gauge_missing) {
    evidence.ground = ground;
    LeftoverRules rules;
    rules.row_gauge_missing = row_gauge_missing;
    return leftover_verdict({metres(56), 1}, {evidence}, rules)->settled_by;
  };
  const LengthEvidence close = by_stitches(50, 0.10);
  EXPECT_NE(settled(close, LengthGround::stitches, false).find("grams"), std::string::npos);
  EXPECT_EQ(settled(close, LengthGround::stitches, true), "the row gauge");
  EXPECT_NE(settled(close, LengthGround::weighed_sample, false).find("ribbing"), std::string::npos);
  EXPECT_NE(settled(from_counts(50, 60), LengthGround::printed_counts, false).find("chart"),
            std::string::npos);
}

TEST(LeftoverVerdict, RefusesWhatIsNoYarn) {
  EXPECT_FALSE(leftover_verdict({metres(-1), 1}, {from_counts(0, 10)}, {}));
  EXPECT_FALSE(leftover_verdict({metres(10), 0}, {from_counts(0, 10)}, {}));
  EXPECT_FALSE(leftover_verdict({metres(10), 1}, {}, {}));
}

TEST(LadderOfWords, ExactlyOneStepEach) {
  const Pattern pattern = quillmarsh();
  std::vector<std::string> labels;
  for (const Size& size : pattern.sizes) labels.push_back(size.label);
  const auto reading = read_steps(pattern, pattern.roles[0].id);
  ASSERT_TRUE(reading);
  NumberStyle grouped;
  grouped.group_thousands = true;
  EXPECT_EQ(counts_in_words(*reading, labels, 3, BoundSide::most, grouped),
            "If this colour grows with the garment, size 4 needs at most about 1,100 m, because size 2 "
            "manages with "
            "five skeins");
  EXPECT_EQ(counts_in_words(*reading, labels, 3, BoundSide::least, grouped),
            "The printed counts allow 1,050–1,225 m");
  EXPECT_EQ(counts_in_words(*reading, labels, 8, BoundSide::least, grouped),
            "If this colour grows with the garment, size 9 needs at least about 1,600 m, because size 7 "
            "needs more than "
            "eight skeins");
  EXPECT_EQ(length_in_words(by_stitches(50.8, 0.12)), "From the chart and gauge, about 59 m (52–65)");
  LengthEvidence weighed = by_stitches(50.8, 0.03);
  weighed.ground = LengthGround::weighed_sample;
  EXPECT_EQ(length_in_words(weighed), "From your own weighed piece, 59 m (57–60)");
  EXPECT_EQ(length_in_words(from_counts(0, 141)), "") << "never a bare figure from counts";
}

}  // namespace
}  // namespace skeinproof
