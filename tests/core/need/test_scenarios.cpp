// SPDX-License-Identifier: GPL-3.0-or-later
// The two sample patterns, worked out by hand and with a separate script from the same stitch counts.
#include <gtest/gtest.h>

#include <vector>

#include "core/need/assessment.h"
#include "tests/support/samples.h"

namespace skeinproof {
namespace {

using testing::lampwick;
using testing::quillmarsh;

struct Truth {
  std::vector<double> knitted_m, planned_m;
  std::vector<int> skeins;
};

void expect_role(const RoleNeed& role, const Truth& truth) {
  ASSERT_EQ(role.sizes.size(), truth.knitted_m.size());
  for (std::size_t i = 0; i < role.sizes.size(); ++i) {
    SCOPED_TRACE(role.label + " size " + std::to_string(i + 1));
    const SizeNeed& need = role.sizes[i];
    ASSERT_TRUE(need.known) << need.missing;
    EXPECT_NEAR(need.knitted.value(), truth.knitted_m[i], 0.1);
    EXPECT_NEAR(need.planned.value(), truth.planned_m[i], 0.1);
    EXPECT_EQ(need.skeins, truth.skeins[i]);
    EXPECT_LE(need.low, need.planned);
    EXPECT_GE(need.high, need.planned);
  }
}

TEST(Scenario, QuillmarshYokeInNineSizesAndFourColours) {
  const Pattern pattern = quillmarsh();
  const Assessment assessment = assess(pattern);
  ASSERT_EQ(assessment.roles.size(), 4u);
  expect_role(assessment.roles[0], {{730.8, 796.4, 915.0, 998.9, 1125.7, 1222.3, 1348.4, 1447.7, 1581.9},
                                    {788.3, 857.2, 981.7, 1069.9, 1202.9, 1304.4, 1436.8, 1541.1, 1682.0},
                                    {5, 5, 6, 7, 7, 8, 9, 9, 10}});
  expect_role(assessment.roles[1], {{172.5, 184.7, 200.8, 213.0, 231.0, 243.2, 261.2, 273.4, 291.4},
                                    {186.4, 199.2, 216.1, 228.9, 247.8, 260.6, 279.5, 292.3, 311.2},
                                    std::vector<int>(9, 2)});
  expect_role(assessment.roles[2], {{71.6, 76.7, 84.3, 89.3, 96.9, 102.0, 109.6, 114.7, 122.3},
                                    {80.4, 85.7, 93.7, 99.0, 107.0, 112.4, 120.3, 125.7, 133.7},
                                    std::vector<int>(9, 1)});
  expect_role(assessment.roles[3], {{40.8, 43.7, 48.0, 50.8, 55.1, 58.0, 62.2, 65.1, 69.4},
                                    {48.1, 51.1, 55.6, 58.6, 63.1, 66.1, 70.6, 73.6, 78.1},
                                    std::vector<int>(9, 1)});
  const std::vector<int> totals = {9, 9, 10, 11, 11, 12, 13, 13, 14};
  for (std::size_t i = 0; i < totals.size(); ++i) EXPECT_EQ(assessment.total_skeins[i], totals[i]);
  const std::vector<double> areas = {.751, .815, .924, 1.002, 1.118, 1.206, 1.322, 1.411, 1.534};
  for (std::size_t i = 0; i < areas.size(); ++i) EXPECT_NEAR(assessment.area_m2[i].value(), areas[i], 0.0006);
  ASSERT_EQ(assessment.length_notes.size(), 1u);
  EXPECT_EQ(assessment.length_notes[0].role, pattern.roles[3].id);
  EXPECT_DOUBLE_EQ(assessment.length_notes[0].at_most.value(), 80);
  EXPECT_TRUE(assessment.not_worked_out.empty());
}

TEST(Scenario, QuillmarshSampleGivesTheLoopLengthBack) {
  Pattern pattern = quillmarsh();
  const auto loop_from = [&](double grams_of_mc) {
    pattern.weighings[0].roles[0].reading = Entered<Grams>{grams(grams_of_mc), ""};
    const Assessment assessment = assess(pattern);
    return assessment.calibrations.at(0).loops.at(0);
  };
  EXPECT_NEAR(loop_from(261.0).loop.value(), 1.498, 0.0005);
  EXPECT_NEAR(loop_from(261.4).loop.value(), 1.500, 0.0005);
  EXPECT_NEAR(loop_from(261.0).widths.value(), 3.89, 0.01);
  EXPECT_TRUE(loop_from(261.0).plausible);
  EXPECT_FALSE(loop_from(200.0).plausible);
}

TEST(Scenario, LampwickSocksInFiveSizes) {
  const Pattern pattern = lampwick();
  const Assessment assessment = assess(pattern);
  ASSERT_EQ(assessment.roles.size(), 2u);
  expect_role(assessment.roles[0],
              {{50.8, 75.4, 104.6, 138.6, 165.6}, {63.8, 89.7, 120.4, 156.0, 184.4}, {1, 1, 1, 1, 1}});
  expect_role(assessment.roles[1],
              {{81.5, 114.6, 153.4, 197.7, 240.0}, {96.1, 130.9, 171.5, 218.1, 262.5}, {1, 1, 1, 2, 2}});
  const SizeNeed& size_4 = assessment.roles[1].sizes[3];
  EXPECT_NEAR(size_4.fraction.value(), 1.0384, 0.0001);  // 218.07 m of 210
  EXPECT_EQ(size_4.last_skein, LastSkein::tips_over);
  const std::vector<double> areas_dm2 = {7.58, 10.97, 14.98, 19.59, 23.68};
  for (std::size_t i = 0; i < areas_dm2.size(); ++i)
    EXPECT_NEAR(assessment.area_m2[i].value() * 100, areas_dm2[i], 0.006);
  // One sock of the pair was on the scale: 12.5 g x 4.2 m/g beside half of 104.6 m.
  EXPECT_NEAR(assessment.calibrations.at(0).weighed.value(), 52.5, 1e-9);
  EXPECT_NEAR(assessment.calibrations.at(0).factor, 1.0, 0.01);
}

TEST(Scenario, StripesOfTheSockDealOutTheCountsOfTheSheet) {
  const Assessment assessment = assess(lampwick());
  // Size 1 leg: 40 rounds of 48 in 6/4 stripes are 1152 and 768 stitches, two socks at 1.2 cm.
  const PartMetres& leg = assessment.roles[0].sizes[0].parts.at(0);
  EXPECT_NEAR(leg.stitches.value(), 2 * 1152 * 0.012, 1e-9);
}

}  // namespace
}  // namespace skeinproof
