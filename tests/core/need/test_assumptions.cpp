// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/assumptions.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/support/samples.h"

namespace skeinproof {
namespace {

using testing::lampwick;
using testing::quillmarsh;

// Loops from the washed gauge instead of typed ones, so that the constant of the loop bears everything.
Pattern from_gauge() {
  Pattern pattern = lampwick();
  for (Fabric& fabric : pattern.fabrics) {
    fabric.loop_source = LoopSource::from_gauge;
    fabric.typed_loop.reset();
  }
  pattern.basis = Basis::stitches;
  return pattern;
}

TEST(Assumptions, AValueOutsideItsLimitsIsRefusedAndChangesNothing) {
  Pattern pattern = quillmarsh();
  const Pattern before = pattern;
  const auto refused = set_constant(pattern, "join_m", Entered<double>{7, "7"});
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().found, "7");
  EXPECT_EQ(refused.error().expected, "between 0 and 5");
  EXPECT_EQ(pattern, before);
  EXPECT_FALSE(set_constant(pattern, "join_m", Entered<double>{std::nan(""), "nan"}));
  EXPECT_EQ(pattern, before);
}

TEST(Assumptions, AnOwnValueIsKeptAsTypedAndTheDefaultComesBack) {
  Pattern pattern = quillmarsh();
  const Pattern before = pattern;
  ASSERT_TRUE(set_constant(pattern, "join_m", Entered<double>{0.5, "½"}));
  EXPECT_EQ(constant(pattern, "join_m"), 0.5);
  EXPECT_EQ(own_constant(pattern, "join_m")->value.typed, "½");
  ASSERT_TRUE(set_constant(pattern, "join_m", Entered<double>{0.4, "0.4"}));
  EXPECT_EQ(pattern.constants.size(), before.constants.size() + 1);
  ASSERT_TRUE(set_constant(pattern, "join_m", std::nullopt));
  EXPECT_EQ(pattern, before);
}

TEST(Assumptions, NeedGoesWithTheRootOfTheLoopConstant) {
  const Pattern pattern = from_gauge();
  const Assessment now = assess(pattern);
  const double k = constant(pattern, "k_washed");
  const ConstantMove move = move_constant(AsItStands(pattern), "k_washed", k * 1.21);
  EXPECT_EQ(move.from, k);
  ASSERT_FALSE(move.needs.empty());
  for (const NeedMove& need : move.needs) {
    const SizeNeed& before = now.roles[need.role == now.roles[0].role ? 0 : 1].sizes[need.size];
    double stitches = 0;
    for (const PartMetres& part : before.parts) stitches += part.stitches.value();
    // √1.21 = 1.1 on the yarn in stitches; cast-on, ends and swatch stay.
    EXPECT_NEAR((need.planned_after - need.planned_before).value(), 0.1 * stitches * 1.05, 1e-6);
  }
}

TEST(Assumptions, TheSkeinsThatCrossAStepAreCounted) {
  const Pattern pattern = from_gauge();
  const Assessment now = assess(pattern);
  const ConstantMove move = move_constant(AsItStands(pattern), "k_washed", 12.0);
  std::size_t fewer = 0;
  Pattern thin = pattern;
  ASSERT_TRUE(set_constant(thin, "k_washed", Entered<double>{12.0, "12"}));
  const Assessment then = assess(thin);
  for (std::size_t r = 0; r < now.roles.size(); ++r)
    for (std::size_t i = 0; i < now.roles[r].sizes.size(); ++i)
      fewer += *then.roles[r].sizes[i].skeins < *now.roles[r].sizes[i].skeins ? 1u : 0u;
  EXPECT_GT(fewer, 0u);
  EXPECT_EQ(move.counts_moved(), fewer);
  EXPECT_LT(move.largest_planned_share(), 0);
}

TEST(Assumptions, TheLargestMoveComesFirstAndWhatMovesNothingIsLeftOut) {
  const Pattern pattern = from_gauge();
  const std::vector<Sensitivity> ranked = rank_constants(AsItStands(pattern), 0.10);
  ASSERT_GE(ranked.size(), 2u);
  EXPECT_EQ(ranked.front().constant->key, "k_washed");
  for (std::size_t i = 1; i < ranked.size(); ++i)
    EXPECT_GE(ranked[i - 1].largest_planned_share(), ranked[i].largest_planned_share());
  for (const Sensitivity& one : ranked)
    EXPECT_NE(one.constant->key, "k_never_wetted");  // the gauge was washed
}

TEST(Assumptions, AnErrorMovesBoundsAndChancesAlone) {
  const Pattern pattern = from_gauge();
  std::size_t moved = 0;
  for (const Sensitivity& one : rank_constants(AsItStands(pattern), 0.10)) {
    if (!one.constant->key.starts_with("error_")) continue;
    ++moved;
    EXPECT_EQ(one.largest_planned_share(), 0);
    EXPECT_GT(one.largest_high_share() + one.largest_chance_points(), 0);
    EXPECT_GE(one.higher.largest_high_share(), one.lower.largest_high_share());
  }
  EXPECT_GT(moved, 0u);
}

TEST(Assumptions, AnotherHandMovesTheChancesAlone) {
  const Pattern pattern = quillmarsh();
  const AsItStands now(pattern);
  const ConstantMove move = move_constant(now, "sigma_hand_pct", 6);
  ASSERT_FALSE(move.needs.empty());
  EXPECT_EQ(move.largest_planned_share(), 0);
  EXPECT_EQ(move.largest_high_share(), 0);
  EXPECT_LT(move.largest_chance_points(), -0.01);
}

TEST(Assumptions, AWiderGrowthBandLeavesMoreOpen) {
  const Pattern pattern = quillmarsh();
  const ConstantMove move = move_constant(AsItStands(pattern), "growth_whole_high", 1.3);
  ASSERT_FALSE(move.needs.empty());
  EXPECT_EQ(move.largest_planned_share(), 0);
  EXPECT_GT(move.largest_told_share(), 0);
}

}  // namespace
}  // namespace skeinproof
