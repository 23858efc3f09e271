// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fabric/chart_edits.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include "tests/core/fabric/yoke_chart.h"

namespace skeinproof {
namespace {

using test::chart_of;
using Rounds = std::vector<std::string>;

Rounds rounds_of(const Expected<Chart>& chart) {
  EXPECT_TRUE(chart) << (chart ? "" : chart.error().message());
  return chart ? *chart->rounds : Rounds{};
}

TEST(ChartEdits, SquareAndRectangle) {
  const Chart chart = chart_of({"MMM", "MMM"});
  EXPECT_EQ(rounds_of(with_square(chart, {1, 2}, 'A')), (Rounds{"MMM", "MMA"}));
  EXPECT_EQ(rounds_of(with_rectangle(chart, {1, 2}, {0, 1}, 'A')), (Rounds{"MAA", "MAA"}));
  EXPECT_EQ(rounds_of(with_square(chart, {0, 0}, no_stitch)), (Rounds{"-MM", "MMM"}));
  EXPECT_EQ(*chart.rounds, (Rounds{"MMM", "MMM"}));
}

TEST(ChartEdits, ANewSymbolJoinsTheColours) {
  const Chart chart = with_square(chart_of({"MMM"}), {0, 0}, 'A').value();
  ASSERT_EQ(chart.colours.size(), 2u);
  EXPECT_EQ(chart.colours[1].symbol, "A");
  EXPECT_EQ(with_square(chart, {0, 1}, 'A').value().colours.size(), 2u);
  EXPECT_EQ(with_square(chart, {0, 1}, no_stitch).value().colours.size(), 2u);
}

TEST(ChartEdits, RefuseWhatIsNoSquareOrSymbol) {
  const Chart chart = chart_of({"MMM", "MMM"});
  EXPECT_EQ(with_square(chart, {2, 0}, 'M').error().kind, ErrorKind::out_of_range);
  EXPECT_EQ(with_square(chart, {0, 3}, 'M').error().kind, ErrorKind::out_of_range);
  EXPECT_EQ(with_rectangle(chart, {0, 0}, {0, 3}, 'M').error().kind, ErrorKind::out_of_range);
  EXPECT_EQ(with_square(chart, {0, 0}, ' ').error().kind, ErrorKind::wrong_format);
  EXPECT_EQ(with_square(chart, {0, 0}, ',').error().kind, ErrorKind::wrong_format);
  EXPECT_EQ(with_square(chart_of({"ABCDEFGHIJKL"}), {0, 0}, 'M').error().kind, ErrorKind::out_of_range);
  EXPECT_FALSE(with_square(Chart{}, {0, 0}, 'M'));
}

TEST(ChartEdits, PatchAndRepeat) {
  const Chart chart = chart_of({"MMMM", "MMMM"});
  EXPECT_EQ(rounds_of(with_patch(chart, {1, 2}, chart_of({"AB-", "BA-"}))), (Rounds{"MMMM", "MMAB"}));
  EXPECT_EQ(with_patch(chart, {0, 0}, chart_of({"AB"})).value().colours.size(), 3u);
  EXPECT_FALSE(with_patch(chart, {0, 4}, chart_of({"AB"})));
  EXPECT_EQ(rounds_of(with_repeated(chart_of({"MMABMMM", "MMMMMMM"}), {0, 2}, {0, 3})),
            (Rounds{"ABABABA", "MMMMMMM"}));
  EXPECT_EQ(rounds_of(with_repeated(chart_of({"MABCMMMM"}), {0, 3}, {0, 1})), (Rounds{"CABCABCA"}));
}

TEST(ChartEdits, RoundsAndColumns) {
  const Chart chart = chart_of({"MA", "AM"});
  EXPECT_EQ(rounds_of(with_round(chart, 1, 'B')), (Rounds{"MA", "BB", "AM"}));
  EXPECT_EQ(rounds_of(with_round(chart, 2, 'M')), (Rounds{"MA", "AM", "MM"}));
  EXPECT_EQ(rounds_of(with_column(chart, 0, no_stitch)), (Rounds{"-MA", "-AM"}));
  EXPECT_EQ(rounds_of(with_column(chart, 2, 'M')), (Rounds{"MAM", "AMM"}));
  EXPECT_EQ(rounds_of(without_round(chart, 0)), (Rounds{"AM"}));
  EXPECT_EQ(rounds_of(without_column(chart, 1)), (Rounds{"M", "A"}));
  EXPECT_FALSE(with_round(chart, 3, 'M'));
  EXPECT_FALSE(with_column(chart, 3, 'M'));
  EXPECT_FALSE(without_round(chart, 2));
  EXPECT_FALSE(without_round(chart_of({"M"}), 0));
  EXPECT_FALSE(without_column(chart_of({"M"}), 0));
}

TEST(ChartEdits, ResizingKeepsStitchOneAndRoundOne) {
  const Chart chart = chart_of({"MAB", "BAM"});
  EXPECT_EQ(rounds_of(resized(chart, 2, 1, 'M')), (Rounds{"AB"}));
  EXPECT_EQ(rounds_of(resized(chart, 4, 3, 'M')), (Rounds{"MMAB", "MBAM", "MMMM"}));
  EXPECT_FALSE(resized(chart, 0, 1, 'M'));
  EXPECT_FALSE(resized(chart, 1, 2001, 'M'));
}

TEST(ChartEdits, MirrorAndTurn) {
  EXPECT_EQ(*mirrored(chart_of({"MAB", "AAM"})).rounds, (Rounds{"BAM", "MAA"}));
  EXPECT_EQ(*upside_down(chart_of({"MAB", "AAM"})).rounds, (Rounds{"AAM", "MAB"}));
}

TEST(ChartEdits, ReplacingASymbolTakesItsRoleAlong) {
  Chart chart = chart_of({"MAB"});
  chart.colours[1].role = RoleId{7};
  const Chart renamed = with_symbol_replaced(chart, 'A', 'X').value();
  EXPECT_EQ(*renamed.rounds, (Rounds{"MXB"}));
  ASSERT_EQ(renamed.colours.size(), 3u);
  EXPECT_EQ(renamed.colours.back(), (ChartColour{"X", RoleId{7}}));
  const Chart merged = with_symbol_replaced(chart, 'B', 'A').value();
  EXPECT_EQ(*merged.rounds, (Rounds{"MAA"}));
  EXPECT_EQ(merged.colours.size(), 2u);
  EXPECT_EQ(merged.colours[1].role, RoleId{7});
  EXPECT_EQ(rounds_of(with_symbol_replaced(chart, 'A', no_stitch)), (Rounds{"M-B"}));
  EXPECT_FALSE(with_symbol_replaced(chart, 'A', '.'));
}

TEST(ChartEdits, AChartReadAgainKeepsItsPlace) {
  Chart old = chart_of({"MA"}, Worked::flat);
  old.id = ChartId{3};
  old.name = "Yoke";
  old.colours[1].role = RoleId{9};
  const Chart fresh = in_place_of(chart_of({"AAB"}), old);
  EXPECT_EQ(fresh.id, ChartId{3});
  EXPECT_EQ(fresh.name, "Yoke");
  EXPECT_EQ(fresh.worked, Worked::flat);
  EXPECT_EQ(fresh.colours[0].role, RoleId{9});
  EXPECT_FALSE(fresh.colours[1].role);
}

RC_GTEST_PROP(ChartEditsProperty, WhatIsPutInComesOut, ()) {
  const auto width = *rc::gen::inRange<std::size_t>(1, 10);
  const auto rounds = *rc::gen::nonEmpty(rc::gen::container<Rounds>(
      rc::gen::container<std::string>(width, rc::gen::elementOf(std::string("MAB-")))));
  const Chart chart = chart_of(rounds);
  const auto round = *rc::gen::inRange<std::size_t>(0, rounds.size() + 1);
  const auto column = *rc::gen::inRange<std::size_t>(0, width + 1);
  RC_ASSERT(*without_round(with_round(chart, round, 'M').value(), round).value().rounds == rounds);
  RC_ASSERT(*without_column(with_column(chart, column, 'M').value(), column).value().rounds == rounds);
  RC_ASSERT(mirrored(mirrored(chart)) == chart);
  RC_ASSERT(upside_down(upside_down(chart)) == chart);
}

}  // namespace
}  // namespace skeinproof
