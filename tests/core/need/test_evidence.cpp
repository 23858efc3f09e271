// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/evidence.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>

#include "tests/support/generate_pattern.h"
#include "tests/support/samples.h"

namespace skeinproof {
namespace {

using testing::lampwick;
using testing::quillmarsh;

std::vector<RoleEvidence> evidence_of(const Pattern& pattern) {
  return gather_evidence(pattern, assess(pattern));
}

// The reading of one colour of the sample, changed by a factor and without a new skein beside it.
void weigh(Pattern& pattern, std::size_t role, double factor) {
  WeighedRole& weighed = pattern.weighings[0].roles[role];
  weighed.reading->value *= factor;
  pattern.weighings[0].moisture = Moisture::not_corrected;
}
void weigh_all(Pattern& pattern, double factor) {
  for (std::size_t i = 0; i < pattern.weighings[0].roles.size(); ++i) weigh(pattern, i, factor);
}

DisagreementReason reason_of(const std::vector<RoleEvidence>& evidence, std::size_t role) {
  EXPECT_EQ(evidence[role].disagreements.size(), 1u);
  return evidence[role].disagreements.empty() ? DisagreementReason::not_clear
                                              : evidence[role].disagreements.front().reason;
}

TEST(Evidence, TheSamplesStandSideBySideAndAgree) {
  for (const Pattern& pattern : {quillmarsh(), lampwick()}) {
    const Assessment assessment = assess(pattern);
    const auto all = gather_evidence(pattern, assessment);
    ASSERT_EQ(all.size(), pattern.roles.size());
    for (std::size_t role = 0; role < all.size(); ++role) {
      EXPECT_TRUE(all[role].disagreements.empty()) << pattern.title << role;
      for (std::size_t i = 0; i < pattern.sizes.size(); ++i) {
        const SizeEvidence& size = all[role].sizes[i];
        ASSERT_TRUE(size.stitches && size.sample && size.printed_counts);
        const Metres planned = assessment.roles[role].sizes[i].planned;
        for (const LengthEvidence& one : size.all()) {
          EXPECT_LE(one.low, planned);
          EXPECT_GE(one.high, planned);
        }
      }
    }
  }
}

TEST(Evidence, PrintedCountsNameTheirTellingSizes) {
  const SizeEvidence size_4 = evidence_of(quillmarsh())[0].sizes[3];
  EXPECT_NEAR(size_4.printed_counts->low.value(), 1050, 1e-9);
  EXPECT_NEAR(size_4.printed_counts->high.value(), 1098.2, 1.5);
  EXPECT_EQ(size_4.told_low, 3u);
  EXPECT_EQ(size_4.told_high, 1u);
}

TEST(Evidence, ChancesRestOnWhatIsInForce) {
  Pattern pattern = quillmarsh();
  const auto main_size_5 = [&] { return evidence_of(pattern)[0].sizes[4]; };
  // Weighed on a 0.1 g scale: 3 % at 9 in 10, another hand 3 %, mill yarn 1.5 and 1.5 %.
  const double need = 1125.7 * std::hypot(std::hypot(0.03 / 1.64485, 0.1 / 261.4 / std::sqrt(12.0)), 0.03);
  const double supply = 175 * std::sqrt(49 * 0.015 * 0.015 + 7 * 0.015 * 0.015);
  const double z = (7 * 175 - 1125.7 - 20) / std::hypot(need, supply);
  EXPECT_NEAR(*main_size_5().chance_sufficient, 0.5 * std::erfc(-z / std::sqrt(2.0)), 1e-4);
  EXPECT_EQ(main_size_5().chance_sufficient, main_size_5().chance_printed);
  EXPECT_EQ(skeins_for_chance(*main_size_5().chance_basis, 0.9), 7);
  EXPECT_EQ(skeins_for_chance(*main_size_5().chance_basis, 0.99), 8);

  const double weighed = *main_size_5().chance_sufficient;
  pattern.weighings.clear();
  EXPECT_LT(*main_size_5().chance_sufficient, weighed);
  pattern.roles[0].printed_count.set(4, Entered<double>{6, "6"});
  EXPECT_LT(*main_size_5().chance_printed, 0.2);
  EXPECT_GT(*main_size_5().chance_sufficient, 0.7) << "of the seven skeins it needs";
}

TEST(Evidence, CountsAloneWithABustAndABandStillGiveAVerdict) {
  Pattern pattern = quillmarsh();
  pattern.pieces.clear();
  pattern.weighings.clear();
  const auto all = evidence_of(pattern);
  const SizeEvidence& size_4 = all[0].sizes[3];
  EXPECT_FALSE(size_4.stitches || size_4.sample || size_4.chance_basis);
  EXPECT_NEAR(size_4.printed_counts->high.value(), 1123.46, 0.01);
  EXPECT_GT(*size_4.chance_sufficient, 0.95);
  EXPECT_LT(*size_4.chance_sufficient, 1);
  const auto verdict =
      leftover_verdict({metres(1368.5), 8}, size_4.all(), leftover_rules(pattern, pattern.roles[0]));
  ASSERT_TRUE(verdict);
  EXPECT_EQ(verdict->verdict, Verdict::enough);
  EXPECT_EQ(verdict->ground, LengthGround::printed_counts);
  EXPECT_NEAR(verdict->usable.value(), 1366.4, 1e-9);
  EXPECT_EQ(
      evidence_in_words(pattern, all[0], 3, BoundSide::most).find("If this colour grows with the garment"),
      0u);
}

TEST(Evidence, YarnOnHandForTheFourthSizeOfTheYoke) {
  Pattern pattern = quillmarsh();
  const auto verdict = [&](std::size_t role, OnHand on_hand, bool counts_only) {
    const auto all = evidence_of(pattern);
    const SizeEvidence& size = all[role].sizes[3];
    return leftover_verdict(on_hand, counts_only ? std::vector{*size.printed_counts} : size.all(),
                            leftover_rules(pattern, pattern.roles[role]))
        ->verdict;
  };
  pattern.weighings.clear();  // by the model alone
  EXPECT_EQ(verdict(0, {metres(1368.5), 8}, true), Verdict::enough);
  EXPECT_EQ(verdict(1, {metres(259), 2}, true), Verdict::too_close_to_call);
  EXPECT_EQ(verdict(1, {metres(259), 2}, false), Verdict::enough);
  EXPECT_EQ(verdict(2, {metres(126), 1}, true), Verdict::too_close_to_call);
  EXPECT_EQ(verdict(2, {metres(126), 1}, false), Verdict::enough);
  EXPECT_EQ(verdict(3, {metres(38.8), 1}, true), Verdict::too_close_to_call);
  EXPECT_EQ(verdict(3, {metres(38.8), 1}, false), Verdict::not_enough);
}

TEST(Evidence, AContradictoryListGivesNoIntervalsAndLeavesTheRest) {
  Pattern pattern = quillmarsh();
  pattern.roles[0].printed_count.set(4, Entered<double>{8, "8"});
  pattern.roles[0].printed_count.set(5, Entered<double>{7, "7"});
  const auto all = evidence_of(pattern);
  EXPECT_TRUE(all[0].steps->clash);
  EXPECT_FALSE(all[0].sizes[0].printed_counts);
  EXPECT_TRUE(all[0].sizes[0].stitches && all[0].sizes[0].chance_sufficient);
  EXPECT_TRUE(all[1].sizes[0].printed_counts);
  pattern.roles[1].printed_count.set(2, Entered<double>{1.5, "1.5"});
  const auto broken = evidence_of(pattern);
  EXPECT_FALSE(broken[1].steps);
  EXPECT_TRUE(broken[1].sizes[2].stitches && broken[2].sizes[2].printed_counts);
}

TEST(Evidence, AnyDocumentThatCanBeBuiltIsAnswered) {
  int read = 0;
  EXPECT_TRUE(rc::check("bounds in order and chances between 0 and 1", [&](Pattern pattern) {
    // Counts and sizes as they come can seldom be read; these can.
    Measurement around;
    around.id = MeasurementId{++pattern.last_id};
    for (std::size_t i = 0; i < pattern.sizes.size(); ++i) {
      around.values.set(i, Entered<Centimetres>{centimetres(*rc::gen::inRange(10, 200)), ""});
      for (Role& role : pattern.roles)
        if (*rc::gen::inRange(0, 6) > 0)
          role.printed_count.set(i, Entered<double>{double(*rc::gen::inRange(0, 9)), ""});
    }
    pattern.measurements = {around};
    const Assessment assessment = assess(pattern);
    const auto all = gather_evidence(pattern, assessment);
    RC_ASSERT(all.size() == assessment.roles.size());
    for (const RoleEvidence& role : all)
      for (const SizeEvidence& size : role.sizes) {
        for (const auto& chance : {size.chance_sufficient, size.chance_printed})
          if (chance) RC_ASSERT(*chance >= 0 && *chance <= 1);
        if (!size.printed_counts) continue;
        ++read;
        RC_ASSERT(std::isfinite(size.printed_counts->high.value()));
        RC_ASSERT(size.printed_counts->low <= size.printed_counts->high);
        RC_ASSERT(size.told_low < role.sizes.size() && size.told_high < role.sizes.size());
      }
  }));
  EXPECT_GT(read, 0) << "no list of counts was read at all";
}

TEST(Disagreement, DampMakesEveryColourHeavy) {
  Pattern pattern = quillmarsh();
  weigh_all(pattern, 1.22);
  const auto all = evidence_of(pattern);
  for (std::size_t role = 0; role < 4; ++role)
    EXPECT_EQ(reason_of(all, role), DisagreementReason::damp) << role;
  EXPECT_NEAR(all[0].disagreements[0].ratio, 1.22, 0.01);
  EXPECT_EQ(all[0].disagreements[0].size_index, 2u);
  // A new skein weighed in the same hour is as damp as the sample: then it is not the damp.
  pattern.weighings[0].moisture = Moisture::new_skein;
  for (const RoleEvidence& role : evidence_of(pattern))
    for (const Disagreement& one : role.disagreements) EXPECT_NE(one.reason, DisagreementReason::damp);
}

TEST(Disagreement, NotionsMakeOneColourHeavy) {
  Pattern pattern = quillmarsh();
  weigh(pattern, 1, 1.4);
  const auto all = evidence_of(pattern);
  EXPECT_EQ(reason_of(all, 1), DisagreementReason::notions_left_in);
  EXPECT_TRUE(all[0].disagreements.empty());
}

TEST(Disagreement, OneSockTakenForThePair) {
  Pattern pattern = lampwick();
  pattern.weighings[0].only.clear();
  const auto all = evidence_of(pattern);
  EXPECT_EQ(reason_of(all, 0), DisagreementReason::one_of_a_pair);
  EXPECT_EQ(reason_of(all, 1), DisagreementReason::one_of_a_pair);
}

TEST(Disagreement, AnotherSizeOnTheScale) {
  Pattern pattern = lampwick();
  pattern.weighings[0].size = pattern.sizes[4].id;
  const auto all = evidence_of(pattern);
  EXPECT_EQ(reason_of(all, 0), DisagreementReason::other_size);
  EXPECT_EQ(all[0].disagreements[0].fits_size, 2u);
}

TEST(Disagreement, ALengthPerFiftyGramsReadAsPerHundred) {
  Pattern pattern = quillmarsh();
  pattern.yarns[0].put_up.weight->value = grams(100);
  for (WeighedRole& weighed : pattern.weighings[0].roles) weighed.new_skein->value = grams(100);
  const auto all = evidence_of(pattern);
  for (std::size_t role = 0; role < 4; ++role)
    EXPECT_EQ(reason_of(all, role), DisagreementReason::other_put_up);
}

TEST(Disagreement, CountsRoundedDownOrOfOneSock) {
  Pattern yoke = quillmarsh();
  yoke.roles[1].printed_count.set(0, Entered<double>{1, "1"});
  const auto of_yoke = evidence_of(yoke);
  ASSERT_FALSE(of_yoke[1].disagreements.empty());
  EXPECT_EQ(of_yoke[1].disagreements[0].size_index, 0u);
  EXPECT_EQ(of_yoke[1].disagreements[0].one, LengthGround::printed_counts);
  EXPECT_EQ(of_yoke[1].disagreements[0].reason, DisagreementReason::rounded_down);
  EXPECT_LT(of_yoke[1].disagreements[0].ratio, 1);

  Pattern socks = lampwick();
  for (std::size_t i = 0; i < 5; ++i) socks.roles[1].printed_count.set(i, Entered<double>{1, "1"});
  const auto of_socks = evidence_of(socks);
  ASSERT_FALSE(of_socks[1].disagreements.empty());
  EXPECT_EQ(of_socks[1].disagreements.back().size_index, 4u);
  EXPECT_EQ(of_socks[1].disagreements.back().reason, DisagreementReason::one_of_a_pair);
}

TEST(Disagreement, GenerousCountsAreSaidToBe) {
  Pattern pattern = quillmarsh();
  const RoleNeed need = assess(pattern).roles[0];
  for (std::size_t i = 0; i < 9; ++i)
    pattern.roles[0].printed_count.set(
        i, Entered<double>{std::ceil(1.4 * need.sizes[i].planned.value() / 175), ""});
  const auto all = evidence_of(pattern);
  ASSERT_FALSE(all[0].disagreements.empty());
  EXPECT_EQ(all[0].disagreements[0].reason, DisagreementReason::generous_counts);
  EXPECT_GT(all[0].disagreements[0].ratio, 1);
}

}  // namespace
}  // namespace skeinproof
