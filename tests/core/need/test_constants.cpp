// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/constants.h"

#include <gtest/gtest.h>

#include <set>

#include "core/fabric/loop_length.h"
#include "core/fabric/relaxation.h"

namespace skeinproof {
namespace {

TEST(Constants, EachHasItsOwnKeyASourceAndADefaultThatMayBeTyped) {
  std::set<std::string_view> keys;
  for (const Constant& row : constants()) {
    EXPECT_TRUE(keys.insert(row.key).second) << row.key;
    EXPECT_FALSE(row.source.empty()) << row.key;
    EXPECT_FALSE(row.confidence.empty()) << row.key;
    EXPECT_LE(row.low, row.value) << row.key;
    EXPECT_GE(row.high, row.value) << row.key;
  }
}

TEST(Constants, TheLoopLawIsThatOfThePublishedTable) {
  const Pattern pattern = new_pattern();
  EXPECT_EQ(constant(pattern, "k_never_wetted"), relaxation(GaugeState::never_wetted).constant);
  EXPECT_EQ(constant(pattern, "k_wetted"), relaxation(GaugeState::wetted).constant);
  EXPECT_EQ(constant(pattern, "k_washed"), relaxation(GaugeState::washed).constant);
  EXPECT_EQ(constant(pattern, "k_unstated"), relaxation(GaugeState::unstated).constant);
}

TEST(Constants, ErrorsOfLoopLengthsAreThoseOfTheFabricRoom) {
  const Pattern pattern = new_pattern();
  const LoopErrors errors;
  EXPECT_DOUBLE_EQ(constant(pattern, "error_plain_pct") / 100, errors.plain);
  EXPECT_DOUBLE_EQ(constant(pattern, "error_textured_pct") / 100, errors.other);
  EXPECT_DOUBLE_EQ(constant(pattern, "error_drawn_in_pct") / 100, errors.drawn_in);
  EXPECT_DOUBLE_EQ(constant(pattern, "error_weighed_pct") / 100, errors.weighed);
}

TEST(Constants, ThePatternsOwnValueGoesFirst) {
  Pattern pattern = new_pattern();
  EXPECT_EQ(own_constant(pattern, "join_m"), nullptr);
  pattern.constants.push_back({"join_m", {0.5, "0.5"}});
  EXPECT_EQ(constant(pattern, "join_m"), 0.5);
}

}  // namespace
}  // namespace skeinproof
