// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <charconv>
#include <cmath>
#include <limits>

#include "core/units/show.h"

namespace skeinproof {
namespace {

TEST(ShowNumber, rounds_half_up_on_the_decimal_text) {
  EXPECT_EQ(show_number(2.675, 2), "2.68");
  EXPECT_EQ(show_number(1.005, 2), "1.01");
  EXPECT_EQ(show_number(0.5, 0), "1");
  EXPECT_EQ(show_number(1.5, 0), "2");
  EXPECT_EQ(show_number(2.5, 0), "3");
  EXPECT_EQ(show_number(2.4999, 0), "2");
  EXPECT_EQ(show_number(-2.5, 0), "−3");
  EXPECT_EQ(show_number(99.95, 1), "100.0");
  EXPECT_EQ(show_number(9.996, 2), "10.00");
  EXPECT_EQ(show_number(175, 1), "175.0");
  EXPECT_EQ(show_number(-0.001, 2), "0.00");
  EXPECT_EQ(show_number(1e-300, 2), "0.00");
  EXPECT_EQ(show_number(1e22, 0), "10000000000000000000000");
}

TEST(ShowNumber, follows_the_style_and_never_invents) {
  const NumberStyle comma{DecimalMark::comma, FractionStyle::glyph, true};
  const NumberStyle point{DecimalMark::point, FractionStyle::glyph, true};
  EXPECT_EQ(show_number(1203.45, 1, comma), "1\u00a0203,5");
  EXPECT_EQ(show_number(1203.45, 1, point), "1,203.5");
  EXPECT_EQ(show_number(999, 0, point), "999");
  EXPECT_EQ(show_number(1234567, 0, point), "1,234,567");
  EXPECT_EQ(show_number(std::numeric_limits<double>::quiet_NaN(), 2), "–");
  EXPECT_EQ(show_number(std::numeric_limits<double>::infinity(), 2), "–");
}

TEST(ShowFraction, writes_the_nearest_part) {
  const NumberStyle slashed{DecimalMark::point, FractionStyle::slashed, false};
  const NumberStyle decimal{DecimalMark::comma, FractionStyle::decimal, false};
  EXPECT_EQ(show_fraction(47.25, 4), "47¼");
  EXPECT_EQ(show_fraction(47.25, 4, slashed), "47 1/4");
  EXPECT_EQ(show_fraction(47.25, 4, decimal), "47,25");
  EXPECT_EQ(show_fraction(1.76370, 4), "1¾");
  EXPECT_EQ(show_fraction(0.88, 8), "⅞");
  EXPECT_EQ(show_fraction(0.25, 4, slashed), "1/4");
  EXPECT_EQ(show_fraction(0.5, 8), "½");
  EXPECT_EQ(show_fraction(1.9, 4), "2");
  EXPECT_EQ(show_fraction(0.125, 4), "¼");
  EXPECT_EQ(show_fraction(3.0625, 16), "3 1/16");
  EXPECT_EQ(show_fraction(-1.25, 4), "−1¼");
  EXPECT_EQ(show_fraction(0, 4), "0");
  EXPECT_EQ(show_fraction(std::numeric_limits<double>::quiet_NaN(), 4), "–");
}

TEST(RoundHalfUp, goes_to_whole_steps) {
  EXPECT_DOUBLE_EQ(round_half_up(2.5), 3);
  EXPECT_DOUBLE_EQ(round_half_up(-2.5), -3);
  EXPECT_DOUBLE_EQ(round_half_up(2.675, 0.01), 2.68);
  EXPECT_DOUBLE_EQ(round_half_up(78.1, 5), 80);
  EXPECT_DOUBLE_EQ(round_half_up(77.5, 5), 80);
}

TEST(Conversions, are_exact_by_definition) {
  // International yard and pound agreement, 1959: 1 yd = 0.9144 m, 1 lb = 453.59237 g, 1 in = 2.54 cm.
  EXPECT_DOUBLE_EQ(in_yards(metres(0.9144)), 1);
  EXPECT_DOUBLE_EQ(in_ounces(grams(453.59237)), 16);
  EXPECT_DOUBLE_EQ(in_inches(centimetres(2.54)), 1);
}

RC_GTEST_PROP(ExactNumber, reads_back_as_the_same_value, (double value)) {
  RC_PRE(std::isfinite(value));
  const std::string text = exact_number(value);
  double back = 0;
  std::from_chars(text.data(), text.data() + text.size(), back);
  RC_ASSERT(back == value);
  RC_ASSERT(text.find('e') == std::string::npos);
}

}  // namespace
}  // namespace skeinproof
