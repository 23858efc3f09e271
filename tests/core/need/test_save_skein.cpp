// SPDX-License-Identifier: GPL-3.0-or-later
// Figures worked out by a separate script from the stitch counts of the sample patterns.
#include "core/need/save_skein.h"

#include <gtest/gtest.h>

#include <map>

#include "tests/support/samples.h"

namespace skeinproof {
namespace {

using testing::lampwick;
using testing::quillmarsh;

TEST(SaveSkein, NeckbandInTheMainColourSavesTheSecondSkein) {
  const Pattern pattern = quillmarsh();
  const auto saved = save_skein(pattern, pattern.roles[1].id, pattern.sizes[0].id);
  ASSERT_TRUE(saved) << saved.error().message();
  EXPECT_EQ(saved->skeins, 2);
  EXPECT_NEAR(saved->planned.value(), 186.4, 0.05);
  EXPECT_DOUBLE_EQ(saved->step.value(), 175);
  ASSERT_GE(saved->ways.size(), 3u);
  const SavedSkein& best = saved->ways[0];
  EXPECT_EQ(best.words, "Neckband in MC");
  EXPECT_EQ(change_words(pattern, best.changes[0]), "Neckband: MC for CC1");
  EXPECT_EQ(best.kind, SavingKind::piece_in_other_colour);
  EXPECT_NEAR(best.moved.value(), 100 * 10 * 0.0142 + 100 * 0.016, 1e-9);
  EXPECT_NEAR(best.what_if.roles[1].after.planned.value(), 169.8, 0.05);
  EXPECT_NEAR(best.what_if.roles[0].after.planned.value(), 804.9, 0.05);
  EXPECT_EQ(best.what_if.roles[0].after.skeins, 5);
  EXPECT_NEAR(best.spare.value(), 5.2, 0.05);
  EXPECT_TRUE(best.brimful);
  EXPECT_EQ(best.reason.find(
                "CC1 169.8 of 175 m, 5.2 m to spare (brimful); MC 804.9 of 875 m; every measurement stays"),
            0u)
      << best.reason;
}

TEST(SaveSkein, RoundsLeftOutAreTheFewestThatDo) {
  const Pattern pattern = quillmarsh();
  const auto saved = save_skein(pattern, pattern.roles[1].id, pattern.sizes[0].id, 50);
  ASSERT_TRUE(saved);
  int rounds = 0;
  for (const SavedSkein& way : saved->ways)
    if (const auto* fewer = std::get_if<ExtraRounds>(&way.changes.front())) {
      // 10.8 m of 212 x 1.42 cm a round: 3.6, so four rounds of the hem; a third of the cuffs would not do.
      EXPECT_EQ(way.words, "Body, rib, hem: 4 rounds fewer");
      EXPECT_NE(way.reason.find("no row gauge"), std::string::npos);
      rounds += fewer->rounds;
    }
  EXPECT_EQ(rounds, -4);
}

TEST(SaveSkein, NoWayAsksMoreSkeinsOfAnybody) {
  const Pattern pattern = quillmarsh();
  for (std::size_t role : {0, 1})
    for (std::size_t size : {2, 6}) {
      const auto saved = save_skein(pattern, pattern.roles[role].id, pattern.sizes[size].id);
      ASSERT_TRUE(saved);
      std::map<SavingKind, double> last;
      for (const SavedSkein& way : saved->ways) {
        for (const RoleChange& change : way.what_if.roles) EXPECT_LE(change.skeins_more, 0);
        EXPECT_LT(*way.what_if.total_skeins_after, *way.what_if.total_skeins_before);
        EXPECT_GE(way.spare.value(), 0);
        EXPECT_GE(way.moved.value(), last[way.kind]);  // least first among ways of one kind
        last[way.kind] = way.moved.value();
      }
    }
  EXPECT_EQ(pattern, quillmarsh());
}

TEST(SaveSkein, AHairOverIsMendedByARound) {
  // 8.21 skeins in size 7: 36.8 m of 175 are too many for two rounds, but a third of a sleeve or a body holds
  // them.
  const Pattern pattern = quillmarsh();
  const auto saved = save_skein(pattern, pattern.roles[0].id, pattern.sizes[6].id);
  ASSERT_TRUE(saved);
  ASSERT_FALSE(saved->ways.empty());
  const SavedSkein& best = saved->ways[0];
  EXPECT_EQ(best.kind, SavingKind::fewer_rounds);
  EXPECT_NE(best.reason.find("cm shorter"), std::string::npos);
}

TEST(SaveSkein, WhatOtherSizesGainOrLoseIsSaid) {
  const Pattern pattern = quillmarsh();
  const auto saved = save_skein(pattern, pattern.roles[1].id, pattern.sizes[1].id, 1);
  ASSERT_TRUE(saved);
  // Size 2: the cuffs in CC2 save a skein here and in size 1, but in size 9 they fill the second one of CC2.
  ASSERT_FALSE(saved->ways.empty());
  const SavedSkein& cuffs = saved->ways[0];
  EXPECT_EQ(cuffs.words, "Sleeves: CC2 for CC1");
  ASSERT_EQ(cuffs.other_sizes.size(), 2u);
  EXPECT_EQ(cuffs.other_sizes[0].size, pattern.sizes[0].id);
  EXPECT_EQ(cuffs.other_sizes[0].more, -1);
  EXPECT_EQ(cuffs.other_sizes[1].size, pattern.sizes[8].id);
  EXPECT_EQ(cuffs.other_sizes[1].more, 1);
  EXPECT_NE(cuffs.reason.find("in size 9, 1 skein more"), std::string::npos);
}

TEST(SaveSkein, RefusesWhereThereIsNothingToSave) {
  Pattern pattern = quillmarsh();
  EXPECT_FALSE(save_skein(pattern, pattern.roles[3].id, pattern.sizes[0].id));  // one skein
  EXPECT_FALSE(save_skein(pattern, RoleId{999}, pattern.sizes[0].id));
  EXPECT_FALSE(save_skein(pattern, pattern.roles[1].id, SizeId{999}));
  pattern.yarns[0].put_up.length.reset();
  const auto unknown = save_skein(pattern, pattern.roles[1].id, pattern.sizes[0].id);
  ASSERT_FALSE(unknown);
  EXPECT_NE(unknown.error().message().find("length in one skein"), std::string::npos);
}

TEST(SaveSkein, TheSocksContrastColourTipsOver) {
  // 218.1 m planned of 210: 7.7 m knitted must leave the contrast colour, and one ball of the main one holds
  // 210.
  const Pattern socks = lampwick();
  const auto saved = save_skein(socks, socks.roles[1].id, socks.sizes[3].id);
  ASSERT_TRUE(saved) << saved.error().message();
  ASSERT_FALSE(saved->ways.empty());
  for (const SavedSkein& way : saved->ways) EXPECT_GE(way.moved.value(), 7.68);
}

}  // namespace
}  // namespace skeinproof
