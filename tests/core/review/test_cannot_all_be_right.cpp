// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/cannot_all_be_right.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "core/need/assessment.h"
#include "tests/support/samples.h"

namespace skeinproof {
namespace {

using testing::lampwick;
using testing::quillmarsh;

using Sets = std::set<std::set<std::string>>;

const Contradiction* about(const CannotAllBeRight& all, const std::string& what) {
  const auto found = std::find_if(all.contradictions.begin(), all.contradictions.end(),
                                  [&](const Contradiction& one) { return one.about == what; });
  return found == all.contradictions.end() ? nullptr : &*found;
}

Sets sets_of(const Contradiction& one) {
  Sets sets;
  for (const auto& members : one.sets) {
    std::set<std::string> words;
    for (const std::size_t member : members) words.insert(one.figures[member].words);
    sets.insert(std::move(words));
  }
  return sets;
}

std::string dropped(const Contradiction& one) { return one.drop ? one.figures[*one.drop].words : ""; }

TEST(CannotAllBeRight, OneWidthOfTheYokeStandsAgainstAllOthers) {
  const Pattern pattern = quillmarsh();
  const auto all = cannot_all_be_right(pattern, assess(pattern));
  EXPECT_TRUE(all.complete);
  const Contradiction* bust = about(all, "bust, size 7");
  ASSERT_NE(bust, nullptr);
  EXPECT_EQ(sets_of(*bust), (Sets{{"145 cm", "55 in"}, {"364 sts", "26 sts/10 cm", "145 cm"}}));
  EXPECT_EQ(dropped(*bust), "145 cm");
  EXPECT_EQ(bust->rest_agree_on, "140 cm");
  EXPECT_EQ(about(all, "bust, size 6"), nullptr);
}

TEST(CannotAllBeRight, CountsAgainstTheTotalAndTheNeed) {
  const Pattern pattern = quillmarsh();
  const auto all = cannot_all_be_right(pattern, assess(pattern));
  const Contradiction* first = about(all, "skeins of size 1");
  ASSERT_NE(first, nullptr);
  EXPECT_EQ(first->sets.size(), 2u);
  EXPECT_EQ(first->drop ? first->figures[*first->drop].source : "", "CC1");
  EXPECT_EQ(first->rest_agree_on, "2 skeins");
  EXPECT_EQ(about(all, "skeins of size 2"), nullptr);
}

TEST(CannotAllBeRight, OneSetAloneLeavesTheChoiceOpen) {
  const Pattern pattern = quillmarsh();
  const auto all = cannot_all_be_right(pattern, assess(pattern));
  const Contradiction* length = about(all, "Oddmere Fieldspun, length of a skein");
  ASSERT_NE(length, nullptr);
  EXPECT_EQ(sets_of(*length), (Sets{{"175 m", "197 yd"}}));
  EXPECT_FALSE(length->drop.has_value());
}

TEST(CannotAllBeRight, TheSocks) {
  const Pattern pattern = lampwick();
  const auto all = cannot_all_be_right(pattern, assess(pattern));
  const Contradiction* foot = about(all, "foot circumference, size 4");
  ASSERT_NE(foot, nullptr);
  EXPECT_EQ(dropped(*foot), "23.5 cm");
  EXPECT_EQ(foot->rest_agree_on, "22.5 cm");
  const Contradiction* fibre = about(all, "Nibthorpe Sock, fibre content");
  ASSERT_NE(fibre, nullptr);
  EXPECT_EQ(fibre->sets.size(), 1u);
}

TEST(CannotAllBeRight, NothingInWhatTheFactsPrint) {
  for (const Pattern& sample : {quillmarsh(), lampwick()}) {
    Pattern clean = sample;
    clean.drafts = {};
    EXPECT_TRUE(cannot_all_be_right(clean, assess(clean)).contradictions.empty());
  }
}

TEST(CannotAllBeRight, TooFewStepsAreSaid) {
  const Pattern pattern = quillmarsh();
  EXPECT_FALSE(cannot_all_be_right(pattern, assess(pattern), 3).complete);
}

}  // namespace
}  // namespace skeinproof
