// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/contradictions.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

namespace skeinproof {
namespace {

using Interval = IntervalSystem::Interval;

std::vector<std::uint64_t> sorted(std::vector<std::uint64_t> sets) {
  std::sort(sets.begin(), sets.end());
  return sets;
}

TEST(Contradictions, TwoUnitsOfOneWidthAndTheStitchesThatMakeIt) {
  IntervalSystem system;
  const auto cm = system.add_quantity(), stitches = system.add_quantity(), density = system.add_quantity();
  system.product(stitches, cm, density, 0.5);
  system.state(cm, {144.5, 145.5});
  system.state(cm, {139.4, 140.0});
  system.state(stitches, {364, 364});
  system.state(density, {2.55, 2.65});
  const SmallestSets found = smallest_contradictions(system);
  EXPECT_TRUE(found.complete);
  EXPECT_EQ(sorted(found.sets), (std::vector<std::uint64_t>{0b0011, 0b1101}));
  EXPECT_TRUE(system.consistent(0b1110));
}

TEST(Contradictions, ASumThatDoesNotAddUpTakesAllOfItsParts) {
  IntervalSystem system;
  std::vector<IntervalSystem::Term> terms;
  for (const double part : {75.0, 30.0}) {
    terms.push_back({1, system.add_quantity()});
    system.state(terms.back().quantity, {part, part});
  }
  system.sum(terms, {100, 100});
  EXPECT_EQ(smallest_contradictions(system).sets, (std::vector<std::uint64_t>{0b11}));
}

TEST(Contradictions, NoneInASystemThatHolds) {
  IntervalSystem system;
  const auto metres = system.add_quantity();
  system.state(metres, {174.5, 175.5});
  system.state(metres, {190.5 * 0.9144, 191.5 * 0.9144});
  const SmallestSets found = smallest_contradictions(system);
  EXPECT_TRUE(found.sets.empty());
  EXPECT_TRUE(found.complete);
}

TEST(Contradictions, TooFewStepsAreSaid) {
  IntervalSystem system;
  const auto one = system.add_quantity();
  for (int i = 0; i < 30; ++i) system.state(one, {i * 10.0, i * 10.0 + 1});
  EXPECT_FALSE(smallest_contradictions(system, 100).complete);
}

// Statements of one quantity contradict each other exactly in the pairs that do not meet.
RC_GTEST_PROP(Contradictions, OfOneQuantityAreThePairsThatDoNotMeet, ()) {
  const auto lows = *rc::gen::container<std::vector<int>>(7, rc::gen::inRange(0, 20));
  IntervalSystem system;
  const auto one = system.add_quantity();
  for (const int low : lows) system.state(one, {low * 1.0, low + 5.0});
  std::vector<std::uint64_t> pairs;
  for (std::size_t i = 0; i < lows.size(); ++i)
    for (std::size_t j = i + 1; j < lows.size(); ++j)
      if (std::abs(lows[i] - lows[j]) > 5) pairs.push_back(std::uint64_t{1} << i | std::uint64_t{1} << j);
  RC_ASSERT(sorted(smallest_contradictions(system).sets) == sorted(pairs));
}

// Whatever the system: each set contradicts itself, and no longer without any one of its members.
RC_GTEST_PROP(Contradictions, NoSetCanSpareAMember, ()) {
  IntervalSystem system;
  std::vector<std::size_t> quantities;
  for (int i = 0; i < 4; ++i) quantities.push_back(system.add_quantity());
  system.sum({{1, quantities[0]}, {1, quantities[1]}, {-1, quantities[2]}}, {0, 0});
  system.product(quantities[3], quantities[0], quantities[1], 0.5);
  for (int i = 0; i < 9; ++i) {
    const int low = *rc::gen::inRange(1, 30);
    system.state(quantities[static_cast<std::size_t>(*rc::gen::inRange(0, 4))], {low * 1.0, low + 2.0});
  }
  for (const std::uint64_t set : smallest_contradictions(system).sets) {
    RC_ASSERT(!system.consistent(set));
    for (std::size_t i = 0; i < 9; ++i)
      if (set >> i & 1) RC_ASSERT(system.consistent(set & ~(std::uint64_t{1} << i)));
  }
}

}  // namespace
}  // namespace skeinproof
