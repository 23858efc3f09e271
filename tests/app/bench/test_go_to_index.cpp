// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "app/bench/go_to_index.h"
#include "app/bench/places.h"
#include "core/pattern/edits.h"

namespace skeinproof {
namespace {

TEST(GoTo, FindsSizesRolesPiecesAndPages) {
  Pattern pattern = new_pattern();
  pattern.sizes.front().label = "M";
  const RoleId role = add_role(pattern, "MC");
  pattern.roles.front().shade.name = "Peat";
  const PieceId piece = add_piece(pattern, "Yoke");
  const QStringList pages{"Pieces", "Quantities"};
  const auto targets = go_to_targets(pattern, pages);

  ASSERT_TRUE(best_target(targets, "size m"));
  EXPECT_EQ(best_target(targets, "size m")->page, "");
  EXPECT_EQ(best_target(targets, "size m")->part, pattern.sizes.front().id.value);
  ASSERT_TRUE(best_target(targets, "peat"));
  EXPECT_EQ(best_target(targets, "peat")->part, role.value);
  EXPECT_EQ(best_target(targets, " yok ")->part, piece.value);
  EXPECT_EQ(best_target(targets, "quant")->page, "Quantities");
  EXPECT_FALSE(best_target(targets, "lighthouse"));
  EXPECT_FALSE(best_target(targets, " "));
}

TEST(GoTo, OffersNoPlaceOnAPageThatIsNotThere) {
  Pattern pattern = new_pattern();
  add_piece(pattern, "Yoke");
  EXPECT_FALSE(best_target(go_to_targets(pattern, {"Yarns"}), "yoke"));
}

TEST(GoTo, FindsCandidatesAndYarnOnHand) {
  Pattern pattern = new_pattern();
  const YarnId yarn = add_yarn(pattern, "Ferncombe Plain");
  const CandidateId candidate = add_candidate(pattern, yarn);
  const OnHandId on_hand = add_on_hand(pattern, yarn);
  pattern.on_hand.front().shade.name = "Moss";
  const auto targets = go_to_targets(pattern, {"Yarns", "Candidates", "On hand"});
  ASSERT_TRUE(best_target(targets, "ferncombe"));
  EXPECT_EQ(best_target(targets, "ferncombe")->page, "Candidates");
  EXPECT_EQ(best_target(targets, "ferncombe")->part, candidate.value);
  ASSERT_TRUE(best_target(targets, "moss"));
  EXPECT_EQ(best_target(targets, "moss")->page, "On hand");
  EXPECT_EQ(best_target(targets, "moss")->part, on_hand.value);
}

TEST(Places, GoBackAndForward) {
  Places places;
  EXPECT_FALSE(places.back());
  places.went_to({0, 0});
  places.went_to({1, 0});
  places.went_to({1, 0});
  places.went_to({2, 7});
  EXPECT_EQ(places.back(), (WindowPlace{1, 0}));
  EXPECT_EQ(places.back(), (WindowPlace{0, 0}));
  EXPECT_FALSE(places.can_go_back());
  EXPECT_EQ(places.forward(), (WindowPlace{1, 0}));
  places.went_to({3, 0});
  EXPECT_FALSE(places.can_go_forward());
  EXPECT_EQ(places.back(), (WindowPlace{1, 0}));
}

}  // namespace
}  // namespace skeinproof
