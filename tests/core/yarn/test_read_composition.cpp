// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "core/yarn/check_yarn.h"
#include "core/yarn/read_composition.h"

using namespace skeinproof;

TEST(ReadComposition, SharesAndWords) {
  const auto read = read_composition("75% superwash wool, 25 % polyamide");
  ASSERT_TRUE(read) << read.error().message();
  ASSERT_EQ(read->size(), 2U);
  EXPECT_EQ((*read)[0].percent.value, 75);
  EXPECT_EQ((*read)[0].words, "superwash wool");
  EXPECT_FALSE((*read)[0].fibre.empty());
  EXPECT_EQ((*read)[1].percent.value, 25);
  EXPECT_EQ((*read)[1].fibre, "polyamide");
  EXPECT_EQ(composition_text(*read), "75% superwash wool, 25% polyamide");
}

TEST(ReadComposition, OneFibreNeedsNoShare) {
  const auto read = read_composition("wool");
  ASSERT_TRUE(read);
  ASSERT_EQ(read->size(), 1U);
  EXPECT_EQ((*read)[0].percent.value, 100);
  EXPECT_EQ((*read)[0].fibre, "wool");
  EXPECT_TRUE(read_composition("")->empty());
}

TEST(ReadComposition, DecimalCommasAndOtherOrders) {
  const auto read = read_composition("67,5% wool + 32,5% silk");
  ASSERT_TRUE(read) << read.error().message();
  EXPECT_EQ((*read)[0].percent.value, 67.5);
  EXPECT_EQ((*read)[1].percent.value, 32.5);
  const auto behind = read_composition("cotton 70%; linen 30%");
  ASSERT_TRUE(behind) << behind.error().message();
  EXPECT_EQ((*behind)[1].percent.value, 30);
  EXPECT_EQ((*behind)[1].words, "linen");
}

TEST(ReadComposition, KeepsWhatTheTablesDoNotKnowAndWhatDoesNotAddUp) {
  const auto read = read_composition("75% wool, 30% moonfluff");
  ASSERT_TRUE(read);
  EXPECT_TRUE((*read)[1].fibre.empty());
  EXPECT_EQ((*read)[1].words, "moonfluff");
  EXPECT_FALSE(check_composition(*read).empty());
}

TEST(ReadComposition, RefusesSharesWithoutSignOrWords) {
  EXPECT_FALSE(read_composition("75 wool"));
  EXPECT_FALSE(read_composition("75%"));
  EXPECT_FALSE(read_composition("wool, silk"));
  EXPECT_FALSE(read_composition("x% wool"));
}
