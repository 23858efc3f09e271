// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "app/pages/candidates/band_lines.h"
#include "app/pages/candidates/candidate_rows.h"

namespace skeinproof {
namespace {

PutUp put_up(const char* text) {
  const auto read = read_put_up(QString::fromUtf8(text));
  EXPECT_TRUE(read) << text << ": " << (read ? "" : read.error().message());
  return read.value_or(PutUp());
}

TEST(BandLines, APutUpIsReadInEitherOrder) {
  for (const char* text : {"50 g = 130 m", "130 m / 50 g", "50g=130m", "130 m per 50 g", "50 g; 130 m",
                           "50 g / 1¾ oz = 130 m / 142 yd"}) {
    const PutUp read = put_up(text);
    ASSERT_TRUE(read.weight && read.length) << text;
    EXPECT_DOUBLE_EQ(read.weight->value.value(), 50) << text;
    EXPECT_DOUBLE_EQ(read.length->value.value(), 130) << text;
  }
}

TEST(BandLines, AFractionOfAnOunceIsNoTwoParts) {
  const PutUp read = put_up("1 3/4 oz = 191 yd");
  ASSERT_TRUE(read.weight && read.length);
  EXPECT_NEAR(read.weight->value.value(), 1.75 * 28.349523125, 1e-9);
  EXPECT_NEAR(read.length->value.value(), 191 * 0.9144, 1e-9);
  EXPECT_EQ(read.length->typed, "191 yd");
}

TEST(BandLines, WhatIsNoPutUpIsToldInWords) {
  for (const char* text : {"50 = 130", "50 g = many m", "sport weight", "-50 g = 130 m"}) {
    const auto read = read_put_up(QString::fromUtf8(text));
    ASSERT_FALSE(read) << text;
    EXPECT_NE(read.error().expected.find("50 g = 130 m"), std::string::npos) << text;
  }
  EXPECT_FALSE(put_up("").weight);
  EXPECT_FALSE(put_up("50 g").length);  // a put-up without a length is told elsewhere, and kept
}

TEST(BandLines, AGaugeIsOneFigureOrARange) {
  const auto one = read_band_gauge(QStringLiteral("23"));
  ASSERT_TRUE(one && one->low);
  EXPECT_DOUBLE_EQ(one->low->value, 23);
  EXPECT_FALSE(one->high);
  for (const char* text : {"24–25", "24-25 sts", "24 to 25 stitches"}) {
    const auto range = read_band_gauge(QString::fromUtf8(text));
    ASSERT_TRUE(range && range->low && range->high) << text;
    EXPECT_DOUBLE_EQ(range->high->value, 25) << text;
  }
  for (const char* text : {"25–24", "loose", "0", "24–25–26"})
    EXPECT_FALSE(read_band_gauge(QString::fromUtf8(text))) << text;
}

TEST(BandLines, APriceKeepsItsCurrency) {
  struct Row {
    const char* text;
    double amount;
    const char* currency;
  };
  for (const Row& row : {Row{"€5.20", 5.2, "€"}, Row{"5,20 €", 5.2, "€"}, Row{"5.20 EUR", 5.2, "EUR"},
                         Row{"SEK 49", 49, "SEK"}}) {
    const auto price = read_price(QString::fromUtf8(row.text));
    ASSERT_TRUE(price && *price) << row.text;
    EXPECT_DOUBLE_EQ((*price)->amount.value, row.amount) << row.text;
    EXPECT_EQ((*price)->currency, row.currency) << row.text;
  }
  EXPECT_EQ(price_text(*read_price(QStringLiteral("5.2 EUR")), {}), QStringLiteral("5.20 EUR"));
  EXPECT_EQ(price_text(*read_price(QStringLiteral("€5.2")), {}), QStringLiteral("€5.20"));
}

TEST(BandLines, APriceWithoutACurrencyIsRefused) {
  for (const char* text : {"5.20", "€5.20 EUR", "dear", "€-3"}) {
    const auto price = read_price(QString::fromUtf8(text));
    ASSERT_FALSE(price) << text;
  }
  const auto price = read_price(QStringLiteral("5.20"));
  EXPECT_NE(price.error().expected.find("currency"), std::string::npos);
  EXPECT_FALSE(*read_price(QString()));
}

}  // namespace
}  // namespace skeinproof
