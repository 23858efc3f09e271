// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/change_words.h"

#include <gtest/gtest.h>

#include "core/manuscript/read_manuscript.h"

namespace skeinproof {
namespace {

Review of_text(std::string text) {
  Review review;
  review.reading = read_manuscript(text);
  review.text = std::move(text);
  return review;
}

std::string words_of(const Review& review, const std::string& before, const std::string& after,
                     std::size_t into = 0) {
  const auto at = review.text.find(before);
  return change_words(review, {{{at + into, at + before.size()}, after}});
}

TEST(ChangeWords, SayWhatTheEditDoes) {
  const Review review = of_text("Sizes 1 (2, 3).\nMC: 8, 7 (9) skeins. 175 m / 197 yd. With CC4, rib.");
  EXPECT_EQ(words_of(review, "197", "191"), "change “197” to “191”");
  EXPECT_EQ(words_of(review, "With CC4, ", ""), "take out “With CC4,”");
  EXPECT_EQ(words_of(review, "8, 7", "7, 8"), "exchange “8” and “7”: “8, 7” → “7, 8”");
  EXPECT_EQ(words_of(review, "8, 7", "7, 9"), "change “8, 7” to “7, 9”");
  EXPECT_EQ(words_of(review, "197", "197"), "");
  EXPECT_EQ(change_words(review, {}), "");
}

TEST(ChangeWords, WhatIsPutInShowsTheStatementItGoesInto) {
  const Review review = of_text("Sizes 1 (2, 3).\nMC: 8 (7) skeins.");
  const std::string words = words_of(review, "8 (7", ", 9", 4);
  EXPECT_EQ(words.find("put in “, 9”: “8 (7) skeins” → “8 (7, 9) skeins”"), 0u) << words;
  const Review bare = of_text("Nothing here.");
  EXPECT_EQ(change_words(bare, {{{0, 0}, "1,"}}), "put in “1,”");
}

TEST(ChangeWords, SeveralEditsAreToldTogether) {
  const Review review = of_text("8, 7, 6, 5, 4, 3, 2");
  const auto edit = [](std::size_t at, const char* after) { return TextEdit{{at, at + 1}, after}; };
  EXPECT_EQ(change_words(review, {edit(0, "7"), edit(3, "8")}), "exchange “8” and “7”");
  EXPECT_EQ(change_words(review, {edit(0, "9"), edit(3, "8")}), "change “8” to “9”; change “7” to “8”");
  const std::string many = change_words(
      review, {edit(0, "1"), edit(3, "1"), edit(6, "1"), edit(9, "1"), edit(12, "1"), edit(15, "1")});
  EXPECT_EQ(many, "change “8” to “1”; change “7” to “1”; change “6” to “1”; and 3 more");
}

}  // namespace
}  // namespace skeinproof
