// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

#include "core/fabric/census.h"
#include "tests/core/fabric/yoke_chart.h"

namespace skeinproof {
namespace {

using test::chart_of;
using test::yoke_chart;

TEST(Census, CountsTheYoke) {
  const ChartCensus counted = census(yoke_chart());
  EXPECT_EQ(counted.stitches, 484);
  ASSERT_EQ(counted.symbols.size(), 4u);
  EXPECT_EQ(counted.symbols.at('M'), (SymbolCount{177, 64, 4}));
  EXPECT_EQ(counted.symbols.at('A'), (SymbolCount{101, 68, 4}));
  EXPECT_EQ(counted.symbols.at('B'), (SymbolCount{142, 80, 2}));
  EXPECT_EQ(counted.symbols.at('C'), (SymbolCount{64, 107, 3}));
}

TEST(Census, FindsTheLongestFloatOfTheYoke) {
  const ChartCensus counted = census(yoke_chart());
  EXPECT_EQ(counted.longest_float, 11);
  EXPECT_EQ(counted.longest_float_rounds, (std::vector<int>{8, 18}));
  EXPECT_EQ(counted.rounds.at(7).longest_float_symbol, 'C');
  EXPECT_EQ(counted.rounds.at(0).longest_float, 0);
}

TEST(Census, CountsWhereColoursOfTheYokeTouch) {
  const ChartCensus counted = census(yoke_chart());
  EXPECT_EQ(counted.neighbour_edges, 142);
  EXPECT_EQ(counted.stacked_edges, 130);
  const std::vector<ColourEdge> expected{
      {'A', 'M', 98}, {'B', 'C', 64}, {'A', 'B', 48}, {'C', 'M', 42}, {'B', 'M', 20}};
  EXPECT_EQ(counted.edges, expected);
}

TEST(Census, CountsEveryRoundOfTheYoke) {
  const ChartCensus counted = census(yoke_chart());
  ASSERT_EQ(counted.rounds.size(), 50u);
  EXPECT_EQ(counted.rounds[17].stitches, 12);
  EXPECT_EQ(counted.rounds[17].stitches_of, (std::map<char, long>{{'B', 11}, {'C', 1}}));
  EXPECT_EQ(counted.rounds[26].stitches, 9);
  EXPECT_EQ(counted.rounds[49].stitches, 4);
}

TEST(Census, GivesTheMetresOfARepeat) {
  const auto metres_of = chart_metres(census(yoke_chart()), centimetres(1.56), centimetres(0.40));
  EXPECT_NEAR(metres_of.at('M').value(), 3.017, 0.0005);
  EXPECT_NEAR(metres_of.at('A').value(), 1.848, 0.0005);
  EXPECT_NEAR(metres_of.at('B').value(), 2.535, 0.0005);
  EXPECT_NEAR(metres_of.at('C').value(), 1.426, 0.0005);
}

TEST(Census, TellsYarnShareFromStitchShare) {
  const auto shares = colour_shares(census(yoke_chart()), centimetres(1.56), centimetres(0.40));
  ASSERT_EQ(shares.size(), 4u);
  EXPECT_EQ(shares[2].symbol, 'C');
  EXPECT_NEAR(shares[2].of_stitches, 0.132, 0.0005);
  EXPECT_NEAR(shares[2].of_yarn, 0.162, 0.0005);
  EXPECT_NEAR(shares[3].of_stitches, 0.366, 0.0005);
  EXPECT_NEAR(shares[3].of_yarn, 0.342, 0.0005);
}

TEST(Census, SetsTheLightnessBesideTheEdges) {
  const auto contrasts = colour_contrasts(census(yoke_chart()), {{'M', 24}, {'A', 72}, {'B', 76}});
  ASSERT_EQ(contrasts.size(), 5u);
  EXPECT_NEAR(contrasts[0].share, 98 / 272.0, 1e-12);
  EXPECT_EQ(contrasts[0].lightness_difference, 48);
  EXPECT_FALSE(contrasts[1].lightness_difference);
  EXPECT_EQ(contrasts[2].lightness_difference, 4);
  EXPECT_NEAR(contrasts[2].share, 0.176, 0.0005);
}

TEST(Census, ClosesTheRepeatOnlyInTheRound) {
  const std::vector<std::string> rounds{"BBBBBCBBBBBB"};
  const ChartCensus round = census(chart_of(rounds));
  EXPECT_EQ(round.longest_float, 11);
  EXPECT_EQ(round.neighbour_edges, 2);
  EXPECT_EQ(census(chart_of(rounds, Worked::unstated)), round);
  const ChartCensus flat = census(chart_of(rounds, Worked::flat));
  EXPECT_EQ(flat.longest_float, 6);
  EXPECT_EQ(census(chart_of({"CBBBBB"})).neighbour_edges, 2);
  EXPECT_EQ(census(chart_of({"CBBBBB"}, Worked::flat)).neighbour_edges, 1);
  EXPECT_EQ(flat.symbols, round.symbols);
}

TEST(Census, PassesNothingWhereOneColourWorksAlone) {
  const ChartCensus counted = census(chart_of({"MMMM", "AAAA"}));
  EXPECT_EQ(counted.symbols.at('M'), (SymbolCount{4, 0, 1}));
  EXPECT_EQ(counted.longest_float, 0);
  EXPECT_TRUE(counted.longest_float_rounds.empty());
  EXPECT_EQ(counted.neighbour_edges, 0);
  EXPECT_EQ(counted.stacked_edges, 4);
}

TEST(Census, LeavesSquaresOfNoStitchOut) {
  const ChartCensus padded = census(chart_of({"MMAMMA", "--MAMA", "M-A-MA"}));
  const ChartCensus bare = census(chart_of({"MMAMMA", "MAMA", "MAMA"}));
  EXPECT_EQ(padded, bare);
  EXPECT_EQ(padded.stacked_edges, 0);
}

TEST(Census, CountsNothingInAnEmptyChart) {
  EXPECT_EQ(census(Chart{}), ChartCensus{});
  const ChartCensus blank = census(chart_of({"----", "----"}));
  EXPECT_EQ(blank.stitches, 0);
  EXPECT_TRUE(blank.symbols.empty());
  EXPECT_TRUE(colour_shares(blank, centimetres(1), centimetres(1)).empty());
}

TEST(Census, AnEmptyRoundDoesNotMakeAnEntry) {
  EXPECT_EQ(census(chart_of({"MM", "--", "MM"})).symbols.at('M').entries, 1);
}

std::vector<std::string> any_rounds(const std::string& symbols = "MABC-") {
  const auto width = *rc::gen::inRange<std::size_t>(1, 16);
  return *rc::gen::resize(12, rc::gen::nonEmpty(rc::gen::container<std::vector<std::string>>(
                                  rc::gen::container<std::string>(width, rc::gen::elementOf(symbols)))));
}

RC_GTEST_PROP(CensusProperty, TurningTheRepeatChangesNothing, ()) {
  auto rounds = any_rounds("MABC");
  const ChartCensus before = census(chart_of(rounds));
  const auto turn = *rc::gen::inRange<std::ptrdiff_t>(0, static_cast<std::ptrdiff_t>(rounds.front().size()));
  for (std::string& round : rounds) std::rotate(round.begin(), round.begin() + turn, round.end());
  RC_ASSERT(census(chart_of(rounds)) == before);
}

RC_GTEST_PROP(CensusProperty, TwoRepeatsSideBySideAreTwiceOne, ()) {
  auto rounds = any_rounds();
  const ChartCensus one = census(chart_of(rounds));
  for (std::string& round : rounds) round += round;
  const ChartCensus two = census(chart_of(rounds));
  RC_ASSERT(two.stitches == 2 * one.stitches);
  RC_ASSERT(two.longest_float == one.longest_float);
  RC_ASSERT(two.neighbour_edges == 2 * one.neighbour_edges);
  RC_ASSERT(two.stacked_edges == 2 * one.stacked_edges);
  for (const auto& [symbol, count] : one.symbols)
    RC_ASSERT(two.symbols.at(symbol) == (SymbolCount{2 * count.stitches, 2 * count.passed, count.entries}));
}

RC_GTEST_PROP(CensusProperty, PartsOfAChartAddUpToTheWhole, ()) {
  const auto rounds = any_rounds();
  const auto cut = *rc::gen::inRange<std::ptrdiff_t>(0, static_cast<std::ptrdiff_t>(rounds.size()) + 1);
  const ChartCensus whole = census(chart_of(rounds));
  const ChartCensus below = census(chart_of({rounds.begin(), rounds.begin() + cut}));
  const ChartCensus above = census(chart_of({rounds.begin() + cut, rounds.end()}));
  RC_ASSERT(whole.stitches == below.stitches + above.stitches);
  RC_ASSERT(whole.neighbour_edges == below.neighbour_edges + above.neighbour_edges);
  RC_ASSERT(whole.longest_float == std::max(below.longest_float, above.longest_float));
  for (const auto& [symbol, count] : whole.symbols) {
    const auto part = [symbol = symbol](const ChartCensus& census) {
      const auto found = census.symbols.find(symbol);
      return found == census.symbols.end() ? SymbolCount{} : found->second;
    };
    RC_ASSERT(count.stitches == part(below).stitches + part(above).stitches);
    RC_ASSERT(count.passed == part(below).passed + part(above).passed);
    RC_ASSERT(count.entries <= part(below).entries + part(above).entries);
  }
}

RC_GTEST_PROP(CensusProperty, RenamingSymbolsRenamesTheCounts, ()) {
  auto rounds = any_rounds();
  const ChartCensus before = census(chart_of(rounds));
  const std::map<char, char> renamed{{'M', 'Z'}, {'A', 'Y'}, {'B', 'a'}, {'C', '#'}, {'-', '-'}};
  for (std::string& round : rounds)
    for (char& square : round) square = renamed.at(square);
  const ChartCensus after = census(chart_of(rounds));
  for (const auto& [symbol, count] : before.symbols) RC_ASSERT(after.symbols.at(renamed.at(symbol)) == count);
  RC_ASSERT(after.symbols.size() == before.symbols.size());
  RC_ASSERT(after.neighbour_edges == before.neighbour_edges);
  RC_ASSERT(after.stacked_edges == before.stacked_edges);
  RC_ASSERT(after.longest_float_rounds == before.longest_float_rounds);
}

RC_GTEST_PROP(CensusProperty, EdgesAreNeighboursAndStackedOnes, ()) {
  const ChartCensus counted = census(chart_of(any_rounds()));
  long edges = 0;
  for (const ColourEdge& edge : counted.edges) {
    RC_ASSERT(edge.first < edge.second);
    edges += edge.edges;
  }
  RC_ASSERT(edges == counted.neighbour_edges + counted.stacked_edges);
}

}  // namespace
}  // namespace skeinproof
