// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/pattern/edits.h"
#include "core/pattern/new_from_old.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "core/base/for_each_per_size.h"
#include "core/need/assessment.h"
#include "tests/support/samples.h"

namespace skeinproof {
namespace {

using testing::quillmarsh;

TEST(Edits, ANewPatternKeepsTheRules) { EXPECT_TRUE(check_invariants(new_pattern()).has_value()); }

TEST(Edits, EveryListFollowsAnInsertedSize) {
  Pattern pattern = quillmarsh();
  insert_size(pattern, 4, "4½");
  ASSERT_TRUE(check_invariants(pattern).has_value());
  EXPECT_EQ(pattern.sizes[4].label, "4½");
  EXPECT_TRUE(pattern.sizes[4].opens_group);
  EXPECT_FALSE(pattern.sizes[5].opens_group);
  int lists = 0;
  for_each_per_size(pattern, [&](auto& list) {
    if (list.empty()) return;
    ++lists;
    EXPECT_FALSE(list.at(4).has_value());
    EXPECT_TRUE(list.at(5).has_value());
  });
  EXPECT_GT(lists, 20);
  EXPECT_NEAR(assess(pattern).roles[0].sizes[5].planned.value(), 1202.9, 0.1);
}

TEST(Edits, ErasingTheChosenSizeChoosesANeighbour) {
  Pattern pattern = quillmarsh();
  erase_size(pattern, 4);
  ASSERT_TRUE(check_invariants(pattern).has_value());
  EXPECT_EQ(pattern.chosen_size, pattern.sizes[4].id);
  EXPECT_TRUE(pattern.sizes[4].opens_group);
  EXPECT_NEAR(assess(pattern).roles[0].sizes[4].planned.value(), 1304.4, 0.1);
}

TEST(Edits, TheLastSizeStays) {
  Pattern pattern = new_pattern();
  erase_size(pattern, 0);
  EXPECT_EQ(pattern.sizes.size(), 1u);
}

TEST(Edits, AnErasedRoleLeavesNoReferenceBehind) {
  Pattern pattern = quillmarsh();
  erase_role(pattern, pattern.roles[1].id);
  ASSERT_TRUE(check_invariants(pattern).has_value());
  EXPECT_EQ(pattern.pieces[0].sections[0].role, RoleId{});
  EXPECT_EQ(pattern.weighings[0].roles.size(), 3u);
}

TEST(Edits, ErasedYarnFabricChartAndPieceLeaveAValidDocument) {
  Pattern pattern = quillmarsh();
  erase_yarn(pattern, pattern.yarns[0].id);
  erase_chart(pattern, pattern.charts[0].id);
  erase_piece(pattern, pattern.pieces[1].id);
  erase_fabric(pattern, pattern.fabrics[0].id);
  EXPECT_TRUE(check_invariants(pattern).has_value());
  EXPECT_EQ(pattern.roles[0].yarn, YarnId{});
}

TEST(Edits, ANewPatternFromAnOldOneForgetsWhatWasPrintedAndWeighed) {
  const Pattern fresh = new_from_old(quillmarsh());
  EXPECT_TRUE(check_invariants(fresh).has_value());
  EXPECT_TRUE(fresh.title.empty());
  EXPECT_TRUE(fresh.weighings.empty());
  EXPECT_TRUE(fresh.roles[0].printed_count.empty());
  EXPECT_EQ(fresh.pieces, quillmarsh().pieces);
}

TEST(Invariants, BreachesAreNamed) {
  Pattern pattern = quillmarsh();
  pattern.roles[1].id = pattern.roles[0].id;
  EXPECT_EQ(check_invariants(pattern).error().kind, ErrorKind::broken_invariant);
  pattern = quillmarsh();
  pattern.roles[0].goes_along_with = pattern.roles[0].id;
  EXPECT_FALSE(check_invariants(pattern).has_value());
  pattern = quillmarsh();
  pattern.pieces[0].sections[0].fabric = FabricId{9999};
  EXPECT_FALSE(check_invariants(pattern).has_value());
  pattern = quillmarsh();
  pattern.charts[0].rounds.edit([](auto& rounds) { rounds[3] = "M"; });
  EXPECT_FALSE(check_invariants(pattern).has_value());
}

RC_GTEST_PROP(EditProperties, MovingASizeMovesItsFigures, ()) {
  Pattern pattern = quillmarsh();
  const Assessment before = assess(pattern);
  const auto from = *rc::gen::inRange<std::size_t>(0, 9), to = *rc::gen::inRange<std::size_t>(0, 9);
  move_size(pattern, from, to);
  RC_ASSERT(check_invariants(pattern).has_value());
  const Assessment after = assess(pattern);
  RC_ASSERT(before.roles[0].sizes[from].planned == after.roles[0].sizes[to].planned);
  move_size(pattern, to, from);
  RC_ASSERT(pattern == quillmarsh());
}

RC_GTEST_PROP(EditProperties, InsertThenEraseIsNothing, ()) {
  Pattern pattern = quillmarsh();
  const auto at = *rc::gen::inRange<std::size_t>(0, 10);
  insert_size(pattern, at, "new");
  erase_size(pattern, at);
  pattern.last_id = quillmarsh().last_id;
  RC_ASSERT(pattern == quillmarsh());
}

}  // namespace
}  // namespace skeinproof
