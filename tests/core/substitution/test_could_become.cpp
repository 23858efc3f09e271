// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/substitution/could_become.h"

#include <gmock/gmock.h>

#include <random>

#include "tests/core/substitution/yarn_at_home.h"

namespace skeinproof::testing {
namespace {

using ::testing::AnyOf;
using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

CouldBecome become(const Pattern& pattern) {
  auto result = could_become(pattern, assess(pattern));
  if (!result) throw std::runtime_error(result.error().message());
  return std::move(*result);
}

std::vector<std::string> labels(const Pattern& pattern, const std::vector<SizeId>& sizes) {
  std::vector<std::string> all;
  for (SizeId size : sizes) all.push_back(pattern.sizes[*pattern.size_index(size)].label);
  return all;
}

const SharedOut& share(const SharingPlan& plan, const std::string& what) {
  for (const SharedOut& one : plan.shares)
    if (one.what == what) return one;
  throw std::runtime_error("nothing shared out for " + what);
}

std::vector<std::string> names(const CouldBecome& result, const SharedOut& share) {
  std::vector<std::string> all;
  for (std::size_t s : share.supplies) all.push_back(result.supplies[s].name);
  return all;
}

TEST(CouldBecome, SocksWithEveryYarnInItsOwnRole) {
  const Pattern pattern = lampwick_at_home();
  const CouldBecome result = become(pattern);
  ASSERT_EQ(result.rungs.size(), 4u);
  const Rung& kept = result.rungs[0];
  EXPECT_EQ(kept.loosening, Loosening::roles_kept);
  EXPECT_THAT(labels(pattern, kept.sizes), ElementsAre("1", "2"));
  EXPECT_THAT(names(result, share(*kept.best, "MC")), ElementsAre("Soot"));
  EXPECT_THAT(names(result, share(*kept.best, "CC")), ElementsAre("Marigold"));
}

TEST(CouldBecome, SocksWithRolesExchangedAreBrimful) {
  const Pattern pattern = lampwick_at_home();
  const CouldBecome result = become(pattern);
  const Rung& exchanged = result.rungs[1];
  EXPECT_THAT(labels(pattern, exchanged.sizes), ElementsAre("1", "2", "3"));
  const SharedOut &mc = share(*exchanged.best, "MC"), &cc = share(*exchanged.best, "CC");
  EXPECT_THAT(names(result, mc), ElementsAre("Marigold"));
  EXPECT_NEAR(mc.needed.value(), 120.4, 0.05);
  EXPECT_NEAR(mc.had.value(), 159.6, 1e-6);
  EXPECT_THAT(names(result, cc), ElementsAre("Soot"));
  EXPECT_NEAR(cc.needed.value(), 171.5, 0.05);
  EXPECT_NEAR(cc.had.value(), 172.2, 1e-6);
  EXPECT_TRUE(cc.brimful);
  EXPECT_FALSE(mc.brimful);
  EXPECT_THAT(exchanged.best->warnings, Contains(HasSubstr("Soot brimful by 0.7 m")));
}

TEST(CouldBecome, SocksWithHeelsAndToesInAThirdYarn) {
  const Pattern pattern = lampwick_at_home();
  const CouldBecome result = become(pattern);
  const Rung& given = result.rungs[2];
  EXPECT_THAT(labels(pattern, given.sizes), ElementsAre("1", "2", "3", "4"));
  const SharedOut& mc = share(*given.best, "MC");
  EXPECT_THAT(names(result, mc), ElementsAre("Marigold"));
  EXPECT_NEAR(mc.needed.value(), 156.0, 0.05);
  const SharedOut& cc = share(*given.best, "CC");
  EXPECT_THAT(names(result, cc), ElementsAre("Soot"));
  EXPECT_NEAR(cc.needed.value(), 143.6, 0.05);
  EXPECT_NEAR(cc.had.value(), 172.2, 1e-6);
  const SharedOut& slate = share(*given.best, "heel flap, heel turn and toe");
  EXPECT_THAT(names(result, slate), ElementsAre("Slate"));
  EXPECT_NEAR(slate.needed.value(), 74.5, 0.05);
  EXPECT_NEAR(slate.had.value(), 88.0, 1e-6);
  EXPECT_EQ(slate.role, role_named(pattern, "CC"));
  // With the roles as they were nothing is brimful.
  ASSERT_TRUE(given.roomier.has_value());
  EXPECT_THAT(names(result, share(*given.roomier, "MC")), ElementsAre("Soot"));
  for (const SharedOut& one : given.roomier->shares) EXPECT_FALSE(one.brimful);
}

// Toes alone leave 190.6 m of the contrast colour, more than the longest yarn.
TEST(CouldBecome, ToesAloneAreNotEnough) {
  Pattern pattern = lampwick_at_home();
  pattern.given_parts.erase(pattern.given_parts.begin(), pattern.given_parts.begin() + 2);
  const CouldBecome result = become(pattern);
  EXPECT_THAT(labels(pattern, result.rungs[2].sizes), ElementsAre("1", "2", "3"));
}

TEST(CouldBecome, SocksOfFourColoursAreTheLargest) {
  const Pattern pattern = lampwick_at_home();
  const CouldBecome result = become(pattern);
  const Rung& shared = result.rungs[3];
  EXPECT_THAT(labels(pattern, shared.sizes), ElementsAre("1", "2", "3", "4", "5"));
  ASSERT_EQ(shared.best->shares.size(), 2u);
  const SharedOut &mc = share(*shared.best, "MC"), &cc = share(*shared.best, "CC");
  EXPECT_THAT(names(result, mc), ElementsAre("Slate", "Teal"));
  EXPECT_NEAR(mc.needed.value(), 184.4, 0.05);
  EXPECT_NEAR(mc.had.value(), 196.0, 1e-6);
  EXPECT_THAT(names(result, cc), ElementsAre("Soot", "Marigold"));
  EXPECT_NEAR(cc.needed.value(), 262.5, 0.05);
  EXPECT_NEAR(cc.had.value(), 331.8, 1e-6);
  EXPECT_NEAR(mc.spare.value(), 196.0 - 0.30 - mc.needed.value(), 1e-6);
  EXPECT_THAT(shared.best->warnings, Contains(HasSubstr("S10: Teal is 8 % thicker than Soot and Marigold")));
}

TEST(CouldBecome, TheSamplesRulesDecideWhatIsInForce) {
  Pattern pattern = lampwick_at_home();
  EXPECT_EQ(become(pattern).in_force.loosening, Loosening::parts_given);
  pattern.sharing.yarns_a_role = 2;
  const CouldBecome loose = become(pattern);
  EXPECT_THAT(labels(pattern, {loose.in_force.best->size}), ElementsAre("5"));
  EXPECT_FALSE(loose.next.has_value());  // nothing larger is knitted
  pattern.sharing = {false, 1, {}};
  pattern.given_parts.clear();
  const CouldBecome tight = become(pattern);
  EXPECT_THAT(labels(pattern, tight.in_force.sizes), ElementsAre("1", "2"));
  EXPECT_EQ(tight.rungs.size(), 3u);
  // With heels and toes given away but no exchange, size 4 all the same.
  Pattern kept = lampwick_at_home();
  kept.sharing.exchange_roles = false;
  const CouldBecome own = become(kept);
  EXPECT_THAT(labels(kept, {own.in_force.best->size}), ElementsAre("4"));
  EXPECT_THAT(names(own, share(*own.in_force.best, "MC")), ElementsAre("Soot"));
}

TEST(CouldBecome, ThicknessLimitKeepsYarnsOut) {
  Pattern pattern = lampwick_at_home();
  pattern.sharing.yarns_a_role = 2;
  pattern.sharing.thickness_limit_pct = Entered<double>{5, ""};
  const CouldBecome result = become(pattern);
  EXPECT_THAT(labels(pattern, {result.in_force.best->size}), Not(ElementsAre("5")));
  for (const SharedOut& one : result.in_force.best->shares)
    EXPECT_THAT(names(result, one), Not(Contains("Teal")));
  pattern.sharing.thickness_limit_pct = Entered<double>{10, ""};
  EXPECT_THAT(labels(pattern, {become(pattern).in_force.best->size}), ElementsAre("5"));
}

TEST(CouldBecome, NamesTheNextThingToBuy) {
  Pattern pattern = lampwick_at_home();
  pattern.given_parts.clear();
  const CouldBecome result = become(pattern);
  EXPECT_THAT(labels(pattern, {result.in_force.best->size}), ElementsAre("3"));
  ASSERT_TRUE(result.next.has_value());
  EXPECT_THAT(labels(pattern, {result.next->size}), ElementsAre("4"));
  ASSERT_EQ(result.next->buys.size(), 1u);
  const ToBuy& ball = result.next->buys.front();
  EXPECT_EQ(ball.skeins, 1);
  EXPECT_NEAR(*ball.cost, 6.20, 1e-9);
  EXPECT_THAT(ball.name, AnyOf("Soot", "Marigold"));
  EXPECT_THAT(result.next->words, HasSubstr("For size 4: 1 ball of Nibthorpe Sock"));
  // What is bought makes that size.
  Pattern bought = pattern;
  for (YarnOnHand& yarn : bought.on_hand)
    if (yarn.shade.name == ball.name) yarn.whole_skeins = Entered<double>{1, ""};
  EXPECT_THAT(labels(bought, {become(bought).in_force.best->size}), Contains("4"));
}

TEST(CouldBecome, PulloverOfFourColours) {
  const Pattern pattern = quillmarsh_at_home();
  const CouldBecome result = become(pattern);
  ASSERT_EQ(result.supplies.size(), 4u);
  EXPECT_EQ(result.supplies[0].lots, 2);
  // 38.8 m of the fourth colour are short of every size; exchanged with 126 m nothing else is.
  EXPECT_THAT(result.rungs[0].sizes, IsEmpty());
  ASSERT_TRUE(result.next.has_value());
  EXPECT_THAT(result.next->words, HasSubstr("Oddmere Fieldspun"));
}

TEST(CouldBecome, MoreYarnNeverMakesASmallerBest) {
  std::mt19937 random(3);
  const auto any = [&](int low, int high) { return std::uniform_int_distribution<int>(low, high)(random); };
  Pattern pattern = lampwick_at_home();
  const Assessment assessment = assess(pattern);
  const auto best = [&] {
    const auto result = could_become(pattern, assessment);
    if (!result || !result->in_force.best) return -1;
    return static_cast<int>(*pattern.size_index(result->in_force.best->size));
  };
  for (int turn = 0; turn < 5; ++turn) {
    pattern.on_hand.clear();
    pattern.sharing.yarns_a_role = any(1, 2);
    pattern.sharing.exchange_roles = any(0, 1) == 1;
    int before = -1;
    for (int n = 0; n < 6; ++n) {
      lay(pattern, pattern.roles[0].yarn, "Shade " + std::to_string(n),
          any(0, 2) == 0 ? "" : pattern.roles[static_cast<std::size_t>(any(0, 1))].label, 0,
          {static_cast<double>(any(5, 60))});
      const int now = best();
      EXPECT_GE(now, before);
      before = now;
    }
  }
}

TEST(CouldBecome, WhatIsAmissIsNamedAndTheRestCounts) {
  Pattern pattern = lampwick_at_home();
  YarnOnHand& reel = lay(pattern, pattern.roles[0].yarn, "Heather", "", 0, {});
  reel.length_by = LengthBy::reel;
  reel.turns = Entered<double>{50, ""};
  pattern.given_parts.push_back(pattern.given_parts.front());
  pattern.given_parts.push_back({PieceId{999}, {}});
  const CouldBecome result = become(pattern);
  EXPECT_EQ(result.left_out.size(), 3u);
  EXPECT_THAT(labels(pattern, {result.in_force.best->size}), ElementsAre("4"));
  pattern.on_hand.clear();
  EXPECT_FALSE(could_become(pattern, assess(pattern)).has_value());
}

}  // namespace
}  // namespace skeinproof::testing
