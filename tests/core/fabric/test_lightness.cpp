// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fabric/lightness.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <cstdlib>

namespace skeinproof {
namespace {

// L*a*b* of the corners of sRGB under D65 as they follow from IEC 61966-2-1 and ISO/CIE 11664-4 and are
// widely printed; figures from memory.
TEST(Lightness, OfTheCornersOfTheScreen) {
  const struct {
    Srgb colour;
    Lab lab;
  } rows[] = {{{255, 255, 255}, {100, 0, 0}},         {{0, 0, 0}, {0, 0, 0}},
              {{255, 0, 0}, {53.24, 80.09, 67.20}},   {{0, 255, 0}, {87.73, -86.18, 83.18}},
              {{0, 0, 255}, {32.30, 79.19, -107.86}}, {{119, 119, 119}, {50.03, 0, 0}}};
  for (const auto& row : rows) {
    const Lab lab = lab_of(row.colour);
    EXPECT_NEAR(lab.lightness, row.lab.lightness, 0.02);
    EXPECT_NEAR(lab.a, row.lab.a, 0.05);
    EXPECT_NEAR(lab.b, row.lab.b, 0.05);
  }
}

TEST(Lightness, CutsOffWhatNoScreenShows) {
  EXPECT_EQ(srgb_of({100, 0, 0}), (Srgb{255, 255, 255}));
  EXPECT_EQ(srgb_of({150, 0, 0}), (Srgb{255, 255, 255}));
  EXPECT_EQ(srgb_of({-20, 0, 0}), (Srgb{0, 0, 0}));
}

RC_GTEST_PROP(LightnessProperty, ThereAndBackAgain,
              (std::uint8_t red, std::uint8_t green, std::uint8_t blue)) {
  const Srgb colour{red, green, blue};
  const Srgb back = srgb_of(lab_of(colour));
  // The printed matrices have four decimals and are inverse to each other only so far.
  RC_ASSERT(std::abs(back.red - red) <= 1);
  RC_ASSERT(std::abs(back.green - green) <= 1);
  RC_ASSERT(std::abs(back.blue - blue) <= 1);
}

RC_GTEST_PROP(LightnessProperty, GreyHasNoHueAndRises, (std::uint8_t level)) {
  const Lab lab = lab_of({level, level, level});
  RC_ASSERT(std::abs(lab.a) < 0.02);
  RC_ASSERT(std::abs(lab.b) < 0.02);
  RC_PRE(level < 255);
  const auto next = static_cast<std::uint8_t>(level + 1);
  RC_ASSERT(lab_of({next, next, next}).lightness > lab.lightness);
}

}  // namespace
}  // namespace skeinproof
