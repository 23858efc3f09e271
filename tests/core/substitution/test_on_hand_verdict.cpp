// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/substitution/on_hand_verdict.h"

#include <gmock/gmock.h>

#include "tests/core/substitution/yarn_at_home.h"

namespace skeinproof::testing {
namespace {

using ::testing::HasSubstr;

std::vector<RoleOnHand> verdicts(const Pattern& pattern) {
  return on_hand_verdicts(pattern, assess(pattern));
}

const GroundVerdict* by(const RoleOnHand& role, LengthGround ground) {
  for (const GroundVerdict& one : role.grounds)
    if (one.evidence.ground == ground) return &one;
  return nullptr;
}

TEST(OnHandVerdict, YokePulloverInSizeFour) {
  const auto roles = verdicts(quillmarsh_at_home());
  ASSERT_EQ(roles.size(), 4u);
  const RoleOnHand &mc = roles[0], &cc1 = roles[1], &cc2 = roles[2], &cc3 = roles[3];

  EXPECT_EQ(mc.verdict, Verdict::enough);
  EXPECT_NEAR(mc.have.value(), 1368.5, 1e-9);
  EXPECT_EQ(mc.pieces, 8);
  EXPECT_NEAR(mc.usable.value(), 1368.5 - 7 * 0.30, 1e-9);
  ASSERT_NE(by(mc, LengthGround::printed_counts), nullptr);
  EXPECT_EQ(by(mc, LengthGround::printed_counts)->verdict, Verdict::enough);
  EXPECT_NEAR(by(mc, LengthGround::printed_counts)->evidence.high.value(), 1098, 1);

  EXPECT_EQ(cc1.verdict, Verdict::enough);
  EXPECT_NEAR(cc1.have.value(), 259, 1e-9);
  ASSERT_NE(by(cc1, LengthGround::printed_counts), nullptr);
  EXPECT_EQ(by(cc1, LengthGround::printed_counts)->verdict, Verdict::too_close_to_call);
  EXPECT_NEAR(by(cc1, LengthGround::printed_counts)->evidence.low.value(), 202, 1);
  EXPECT_NEAR(by(cc1, LengthGround::printed_counts)->evidence.high.value(), 283, 1);
  EXPECT_NEAR(by(cc1, LengthGround::stitches)->evidence.planned.value(), 228.9, 0.05);

  EXPECT_EQ(cc2.verdict, Verdict::enough);
  EXPECT_NEAR(cc2.have.value(), 126, 1e-9);
  EXPECT_EQ(by(cc2, LengthGround::printed_counts)->verdict, Verdict::too_close_to_call);
  EXPECT_NEAR(by(cc2, LengthGround::printed_counts)->evidence.high.value(), 141, 1);

  EXPECT_EQ(cc3.verdict, Verdict::not_enough);
  EXPECT_NEAR(cc3.have.value(), 38.8, 0.06);
  ASSERT_TRUE(cc3.short_of.has_value());
  EXPECT_NEAR(cc3.short_of->value(), 12.1, 0.05);
  EXPECT_THAT(cc3.words, HasSubstr("Not enough: short by 12.1 m"));
  EXPECT_FALSE(cc3.over.has_value());
  ASSERT_TRUE(cc3.chance.has_value());
  EXPECT_LT(*cc3.chance, 0.01);
  EXPECT_GT(mc.chance.value_or(0), 0.95);
}

TEST(OnHandVerdict, CountsAloneNameTheFactThatSettles) {
  Pattern pattern = quillmarsh_at_home();
  pattern.pieces.clear();
  pattern.weighings.clear();
  const auto roles = verdicts(pattern);
  ASSERT_EQ(roles.size(), 4u);
  EXPECT_EQ(roles[0].verdict, Verdict::enough);
  EXPECT_EQ(roles[0].ground, LengthGround::printed_counts);
  EXPECT_EQ(roles[1].verdict, Verdict::too_close_to_call);
  EXPECT_THAT(roles[1].settled_by, HasSubstr("stitches of this colour"));
  EXPECT_THAT(roles[1].because, HasSubstr("needs at most about"));
}

TEST(OnHandVerdict, OnlyUsedYarnOfARoleCounts) {
  Pattern pattern = quillmarsh_at_home();
  pattern.on_hand[1].used = false;
  pattern.on_hand[4].role = {};
  const auto roles = verdicts(pattern);
  ASSERT_EQ(roles.size(), 3u);
  EXPECT_NEAR(roles[0].have.value(), 1018.5, 1e-9);
  EXPECT_EQ(roles[0].verdict, Verdict::too_close_to_call);  // 998.9 knitted, 1069.9 planned
  EXPECT_EQ(roles[0].yarns.size(), 1u);
}

TEST(OnHandVerdict, AYarnWithoutALengthIsNamedAndTheRestCounts) {
  Pattern pattern = quillmarsh_at_home();
  pattern.on_hand[1].length_by = LengthBy::reel;
  pattern.on_hand[1].turns = Entered<double>{100, ""};
  const auto roles = verdicts(pattern);
  ASSERT_EQ(roles.size(), 4u);
  ASSERT_EQ(roles[0].left_out.size(), 1u);
  EXPECT_THAT(roles[0].left_out[0].message(), HasSubstr("Peat, lot Y: a reel without a circumference"));
  EXPECT_NEAR(roles[0].have.value(), 1018.5, 1e-9);
}

TEST(OnHandVerdict, NoNeedNoVerdict) {
  Pattern pattern = quillmarsh_at_home();
  pattern.pieces.clear();
  pattern.weighings.clear();
  pattern.drafts = {};
  for (Role& role : pattern.roles) role.printed_count = {};
  const auto roles = verdicts(pattern);
  ASSERT_EQ(roles.size(), 4u);
  EXPECT_FALSE(roles[0].verdict.has_value());
  EXPECT_FALSE(roles[0].missing.empty());
  EXPECT_NEAR(roles[0].have.value(), 1368.5, 1e-9);
}

TEST(OnHandVerdict, TwoLotsAreNoted) {
  const auto roles = verdicts(quillmarsh_at_home());
  ASSERT_FALSE(roles[0].notes.empty());
  EXPECT_THAT(roles[0].notes.back(), HasSubstr("2 dye lots"));
}

// The chosen size serves where no size of its own is said.
TEST(OnHandVerdict, SizeOfItsOwnOrTheChosenOne) {
  Pattern pattern = quillmarsh_at_home();
  EXPECT_EQ(on_hand_size_index(pattern), pattern.size_index("4"));
  pattern.on_hand_size = {};
  EXPECT_EQ(on_hand_size_index(pattern), pattern.size_index("5"));
  EXPECT_EQ(pattern.sizes[*pattern.size_index(verdicts(pattern)[0].size)].label, "5");
}

}  // namespace
}  // namespace skeinproof::testing
