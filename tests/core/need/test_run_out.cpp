// SPDX-License-Identifier: GPL-3.0-or-later
// Figures worked out by a separate script from the stitch counts of the sample patterns.
#include "core/need/run_out.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/pattern/edits.h"
#include "core/pattern/piece_edits.h"
#include "tests/support/samples.h"

namespace skeinproof {
namespace {

using testing::lampwick;
using testing::quillmarsh;

TEST(RunOut, FourSkeinsOfTheMainColourEndInTheYokeChart) {
  const Pattern pattern = quillmarsh();
  const auto result = run_out(pattern, pattern.roles[0].id, pattern.sizes[0].id, metres(700));
  ASSERT_TRUE(result) << result.error().message();
  ASSERT_FALSE(result->lasts());
  EXPECT_EQ(result->fails_in->round, 36);
  EXPECT_TRUE(result->fails_in->in_chart);
  EXPECT_NEAR(result->left_before.value(), 2.134, 0.0005);
  EXPECT_NEAR(result->fails_in->needs.value(), 2.957, 0.0005);
  EXPECT_NEAR(result->spare.value(), 700 - 730.77, 0.05);
  EXPECT_EQ(result->words, "Yoke, chart round 36: 2.1 m left, needs 3.0 m");
  ASSERT_EQ(result->turn_backs.size(), 3u);
  const TurnBack& body = result->turn_backs[0];
  EXPECT_EQ(body.rounds_fewer, 10);
  EXPECT_EQ(body.after_round, 90);
  EXPECT_NEAR(body.shorter->value(), 2.94, 0.005);
  EXPECT_EQ(body.words, "10 rounds (2.9 cm) fewer in Body, plain: decide after round 90");
  // The last place: 30.8 m are seven yoke rounds of 336 x 1.5 cm, so after the fifth of twelve.
  EXPECT_EQ(result->turn_backs.back().piece, pattern.pieces[2].id);
  EXPECT_EQ(result->turn_backs.back().rounds_fewer, 7);
  EXPECT_EQ(result->turn_backs.back().after_round, 5);
}

TEST(RunOut, EachTurningPlaceDoesIt) {
  const Pattern pattern = quillmarsh();
  const auto result = run_out(pattern, pattern.roles[0].id, pattern.sizes[0].id, metres(700));
  ASSERT_TRUE(result);
  for (const TurnBack& back : result->turn_backs) {
    Pattern shorter = pattern;
    double left_out = back.rounds_fewer;
    auto& runs = find_section(shorter, back.section)->runs;
    for (auto run = runs.rbegin(); run != runs.rend() && left_out > 0; ++run) {
      const double had = run->rows.at(0)->value, taken = std::min(had, left_out);
      // A taper that ends sooner ends narrower.
      if (run->to.at(0)) {
        const double from = run->from.at(0)->value, to = run->to.at(0)->value;
        run->to.set(0, Entered<double>{from + (to - from) * (had - taken) / had, ""});
      }
      run->rows.set(0, Entered<double>{had - taken, ""});
      left_out -= taken;
    }
    const auto again = run_out(shorter, pattern.roles[0].id, pattern.sizes[0].id, metres(700));
    ASSERT_TRUE(again);
    EXPECT_TRUE(again->lasts()) << back.words << " then " << again->words;
  }
}

TEST(RunOut, TheOrderOfThePiecesMovesThePlace) {
  const Pattern pattern = quillmarsh();
  const std::vector<PieceId> order = {pattern.pieces[1].id, pattern.pieces[0].id, pattern.pieces[2].id};
  const auto result = run_out(pattern, pattern.roles[0].id, pattern.sizes[0].id, metres(300), order);
  ASSERT_TRUE(result);
  // Sleeves take 267.81 m, a body round 3.18 m: ten rounds are done with the 32.19 m that remain.
  EXPECT_EQ(result->words.substr(0, 21), "Body, plain, round 11");
  EXPECT_FALSE(run_out(pattern, pattern.roles[0].id, pattern.sizes[0].id, metres(300), {order[0], order[0]}));
  EXPECT_FALSE(run_out(pattern, pattern.roles[0].id, pattern.sizes[0].id, metres(300), {PieceId{999}}));
}

TEST(RunOut, TheSecondSleeveIsNamed) {
  const Pattern pattern = quillmarsh();
  const auto result = run_out(pattern, pattern.roles[0].id, pattern.sizes[0].id, metres(318 + 133.905 + 10));
  ASSERT_TRUE(result);
  EXPECT_EQ(result->fails_in->copy, 2);
  EXPECT_EQ(result->words.substr(0, 15), "Sleeves 2 of 2,");
}

TEST(RunOut, StepsAddUpToTheKnittedNeed) {
  for (const Pattern& pattern : {quillmarsh(), lampwick()}) {
    const Assessment assessment = assess(pattern);
    for (const RoleNeed& role : assessment.roles)
      for (std::size_t i = 0; i < pattern.sizes.size(); ++i) {
        const auto steps = work_steps(pattern, role.role, pattern.sizes[i].id);
        ASSERT_TRUE(steps) << steps.error().message();
        double sum = 0;
        for (const WorkStep& step : *steps) sum += step.needs.value();
        EXPECT_NEAR(sum, role.sizes[i].knitted.value(), 1e-6);
        const auto enough = run_out(pattern, role.role, pattern.sizes[i].id, role.sizes[i].knitted);
        EXPECT_TRUE(enough->lasts()) << enough->words;
        const auto short_of =
            run_out(pattern, role.role, pattern.sizes[i].id, role.sizes[i].knitted - metres(0.01));
        EXPECT_FALSE(short_of->lasts());
      }
  }
}

TEST(RunOut, StripesTakeYarnOnlyInTheirOwnRounds) {
  const Pattern socks = lampwick();
  const auto steps = work_steps(socks, socks.roles[1].id, socks.sizes[0].id);
  ASSERT_TRUE(steps);
  // The leg is knitted six rounds in the main colour, then four in the other at 48 stitches of 1.2 cm.
  std::vector<double> leg;
  for (const WorkStep& step : *steps)
    if (step.copy == 1 && step.rounds == 40) leg.push_back(step.needs.value());
  ASSERT_GE(leg.size(), 10u);
  EXPECT_EQ(leg[5], 0);
  EXPECT_NEAR(leg[6], 48 * 0.012, 1e-9);
  EXPECT_NEAR(leg[9], 48 * 0.012, 1e-9);
}

TEST(RunOut, WhatCannotBeIsRefused) {
  const Pattern pattern = quillmarsh();
  EXPECT_FALSE(run_out(pattern, RoleId{999}, pattern.sizes[0].id, metres(1)));
  EXPECT_FALSE(run_out(pattern, pattern.roles[0].id, SizeId{999}, metres(1)));
  EXPECT_FALSE(run_out(pattern, pattern.roles[0].id, pattern.sizes[0].id, metres(-1)));
  const Pattern empty = new_pattern();
  Pattern bare = empty;
  const RoleId role = add_role(bare, "MC");
  EXPECT_FALSE(run_out(bare, role, bare.sizes[0].id, metres(1)));
}

TEST(WhatIsLeft, WholeRounds) {
  // 41 g at 3.5 m/g are 143.5 m; a round of 312 at 1.5 cm takes 4.68 m: 30.66.
  EXPECT_EQ(rounds_left(grams(41), metres_per_gram(3.5), 312, centimetres(1.5)).value(), 30);
  EXPECT_EQ(rounds_left(grams(0), metres_per_gram(3.5), 312, centimetres(1.5)).value(), 0);
  EXPECT_FALSE(rounds_left(grams(41), metres_per_gram(3.5), 0, centimetres(1.5)));
  EXPECT_FALSE(rounds_left(grams(-1), metres_per_gram(3.5), 312, centimetres(1.5)));
}

TEST(LargestThatLasts, SizeByTheLayerAsked) {
  const Pattern pattern = quillmarsh();
  const RoleId mc = pattern.roles[0].id, cc3 = pattern.roles[3].id;
  // 1000 m: size 4 knits 998.9 but plans 1069.9; size 3 plans 981.7.
  EXPECT_EQ(largest_size(pattern, {{mc, metres(1000)}}, Layer::knitted), pattern.sizes[3].id);
  EXPECT_EQ(largest_size(pattern, {{mc, metres(1000)}}), pattern.sizes[2].id);
  EXPECT_EQ(largest_size(pattern, {{mc, metres(1000)}, {cc3, metres(50)}}), pattern.sizes[0].id);
  EXPECT_FALSE(largest_size(pattern, {{mc, metres(100)}}));
  EXPECT_FALSE(largest_size(pattern, {}));
}

TEST(LargestThatLasts, RepeatsOfAChart) {
  const Pattern pattern = quillmarsh();
  const SectionId chart = pattern.pieces[2].sections[1].id;
  // CC3 a repeat 1.4264 m beside 0.9 m for entries: 60 m are (60 - 0.9) / 1.4264 = 41.4.
  const auto by_one =
      largest_repeats(pattern, chart, pattern.sizes[4].id, {{pattern.roles[3].id, metres(60)}});
  ASSERT_TRUE(by_one) << by_one.error().message();
  EXPECT_EQ(by_one->repeats, 41);
  // CC2 a repeat 2.5352 m beside 0.6 m: 80 m are 31.3.
  const auto by_two = largest_repeats(pattern, chart, pattern.sizes[4].id,
                                      {{pattern.roles[3].id, metres(60)}, {pattern.roles[2].id, metres(80)}});
  ASSERT_TRUE(by_two);
  EXPECT_EQ(by_two->repeats, 31);
  EXPECT_EQ(by_two->held_back_by, pattern.roles[2].id);
  EXPECT_EQ(
      largest_repeats(pattern, chart, pattern.sizes[4].id, {{pattern.roles[0].id, metres(100)}})->repeats, 0);
  EXPECT_FALSE(largest_repeats(pattern, pattern.pieces[0].sections[0].id, pattern.sizes[4].id,
                               {{pattern.roles[3].id, metres(60)}}));
}

TEST(GrowingShapes, HalfTheYarnOfATriangleIsGoneAtSevenTenthsOfItsRows) {
  EXPECT_NEAR(share_of_rows_at(0.5), 0.7071, 0.0001);
  // 1 + 2 + … + 200 = 20,100 stitches of 1.5 cm = 301.5 m.
  EXPECT_EQ(rows_of_growing_shape(metres(301.5), 1, 1, centimetres(1.5)).value(), 200);
  EXPECT_EQ(rows_of_growing_shape(metres(301.4), 1, 1, centimetres(1.5)).value(), 199);
  EXPECT_NEAR(rows_of_growing_shape(metres(150.75), 1, 1, centimetres(1.5)).value() / 200.0, std::sqrt(0.5),
              0.005);
  EXPECT_EQ(rows_of_growing_shape(metres(143.5), 312, 0, centimetres(1.5)).value(), 30);
  EXPECT_EQ(rows_of_growing_shape(metres(0), 3, 2, centimetres(1.5)).value(), 0);
  EXPECT_FALSE(rows_of_growing_shape(metres(10), 0, 2, centimetres(1.5)));
  EXPECT_FALSE(rows_of_growing_shape(metres(10), 5, -1, centimetres(1.5)));
}

}  // namespace
}  // namespace skeinproof
