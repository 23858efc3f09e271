// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fabric/colour_areas.h"

#include <gtest/gtest.h>

namespace skeinproof {
namespace {

Chart flat(std::vector<std::string> rounds) {
  Chart chart;
  chart.worked = Worked::flat;
  chart.rounds = std::move(rounds);
  return chart;
}

TEST(ColourAreas, AMotifOnAGroundIsOneAreaOfEach) {
  const auto areas = colour_areas(flat({"MMMMM", "MAAAM", "MMMMM"}));
  EXPECT_EQ(areas, (std::map<char, long>{{'M', 1}, {'A', 1}}));
}

TEST(ColourAreas, AStripeThroughTheGroundPartsIt) {
  EXPECT_EQ(colour_areas(flat({"MMAMM", "MMAMM"})), (std::map<char, long>{{'M', 2}, {'A', 1}}));
}

TEST(ColourAreas, CornersDoNotTouch) {
  EXPECT_EQ(colour_areas(flat({"AM", "MA"})), (std::map<char, long>{{'M', 2}, {'A', 2}}));
}

TEST(ColourAreas, InTheRoundTheRepeatCloses) {
  Chart chart = flat({"MMAMM", "MMAMM"});
  chart.worked = Worked::in_the_round;
  EXPECT_EQ(colour_areas(chart).at('M'), 1);
}

TEST(ColourAreas, NoStitchIsNoArea) {
  EXPECT_EQ(colour_areas(flat({"--A", "-AA"})), (std::map<char, long>{{'A', 1}}));
  EXPECT_TRUE(colour_areas(flat({})).empty());
}

}  // namespace
}  // namespace skeinproof
