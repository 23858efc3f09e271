// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/stitch_counts.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <numeric>

namespace skeinproof {
namespace {

PerSize<Entered<double>> one(double value) { return PerSize<Entered<double>>({Entered<double>{value, ""}}); }

Section shaped(std::vector<ShapeRun> runs) {
  Section section;
  section.source = StitchSource::worked_out;
  section.runs = std::move(runs);
  return section;
}

const RoleId mc{1}, cc{2};

TEST(StitchCounts, AStraightRunIsWidthTimesRows) {
  EXPECT_EQ(section_stitches(shaped({{one(312), {}, one(107)}}), 0).stitches, 33384);
}

TEST(StitchCounts, ATaperTakesTheMeanWidth) {
  // Sleeve from 60 to 104 stitches in 128 rows, then 10 rows at full width.
  const Section sleeve = shaped({{one(60), one(104), one(128)}, {one(104), {}, one(10)}});
  EXPECT_EQ(section_stitches(sleeve, 0).stitches, 11536);
}

TEST(StitchCounts, WhatIsMissingIsNamed) {
  EXPECT_EQ(section_stitches(shaped({{one(10), {}, {}}}), 0).missing, "its rows");
  EXPECT_EQ(section_stitches(shaped({{{}, {}, one(10)}}), 0).missing, "its stitches across");
  EXPECT_EQ(section_stitches(Section{}, 0).missing, "its stitches");
  EXPECT_FALSE(section_stitches(shaped({}), 0).missing.empty());
}

TEST(StripeShares, RowsAreDealtInOrder) {
  Section leg = shaped({{one(48), {}, one(43)}});
  leg.colouring = Colouring::stripes;
  leg.stripes = {{mc, {6, ""}}, {cc, {4, ""}}};
  const auto shares = stripe_shares(leg, 0);
  ASSERT_EQ(shares.size(), 2u);
  EXPECT_DOUBLE_EQ(shares[0].stitches, 48 * 27);  // 4 x 6 rows and 3 of the last stripe
  EXPECT_DOUBLE_EQ(shares[1].stitches, 48 * 16);
  EXPECT_DOUBLE_EQ(shares[0].stripes, 5);
  EXPECT_DOUBLE_EQ(shares[1].stripes, 4);
  EXPECT_DOUBLE_EQ(shares[0].passed_rows, 16);
  EXPECT_DOUBLE_EQ(shares[1].passed_rows, 18);
}

TEST(StripeShares, TypedStitchesAreDealtInProportion) {
  Section section;
  section.stitches = one(1000);
  section.colouring = Colouring::stripes;
  section.stripes = {{mc, {3, ""}}, {cc, {1, ""}}};
  const auto shares = stripe_shares(section, 0);
  EXPECT_DOUBLE_EQ(shares.at(0).stitches, 750);
  EXPECT_DOUBLE_EQ(shares.at(1).stitches, 250);
}

TEST(StripeShares, AStripeOfNoRowsDealsNothing) {
  Section section = shaped({{one(48), {}, one(40)}});
  section.colouring = Colouring::stripes;
  section.stripes = {{mc, {0, ""}}};
  EXPECT_TRUE(stripe_shares(section, 0).empty());
  section.stripes.clear();
  EXPECT_TRUE(stripe_shares(section, 0).empty());
}

RC_GTEST_PROP(StripeProperties, StripesTogetherAreTheWholeSection, ()) {
  const auto small = [] { return static_cast<double>(*rc::gen::inRange(1, 60)); };
  std::vector<ShapeRun> runs;
  for (int i = *rc::gen::inRange(1, 4); i > 0; --i)
    runs.push_back({one(small()), one(small()), one(small())});
  Section section = shaped(runs);
  section.colouring = Colouring::stripes;
  for (int i = *rc::gen::inRange(1, 5); i > 0; --i)
    section.stripes.push_back(
        {*rc::gen::element(mc, cc), {static_cast<double>(*rc::gen::inRange(1, 9)), ""}});
  const auto shares = stripe_shares(section, 0);
  const double sum = std::accumulate(shares.begin(), shares.end(), 0.0,
                                     [](double s, const StripeShare& share) { return s + share.stitches; });
  RC_ASSERT(std::abs(sum - section_stitches(section, 0).stitches.value()) < 1e-6);
}

}  // namespace
}  // namespace skeinproof
