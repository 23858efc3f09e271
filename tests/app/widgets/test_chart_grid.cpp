// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/chart_grid.h"

#include <gtest/gtest.h>

#include <QSignalSpy>
#include <QTest>

#include "app/document/open_pattern.h"
#include "app/widgets/chart_margin.h"
#include "app/widgets/chart_squares.h"
#include "core/pattern/edits.h"
#include "tests/app/support/quillmarsh.h"

namespace skeinproof {
namespace {

class ChartGridTest : public testing::Test {
 protected:
  ChartGridTest() : grid(open) {
    open.replace(quillmarsh_draft());
    grid.show_chart(open.pattern().charts.front().id);
    grid.resize(600, 900);
    grid.show();
    grid.activateWindow();
    EXPECT_TRUE(QTest::qWaitForWindowActive(&grid));
    grid.setFocus();
  }

  const std::string& round(std::size_t number) const {
    return (*open.pattern().charts.front().rounds)[number - 1];
  }
  ChartSquares& squares() { return *grid.squares(); }
  QPoint middle_of(Square square) {
    return squares().visualRect(squares().squares()->index_of(square)).center();
  }
  void key(Qt::Key code, Qt::KeyboardModifiers held = Qt::NoModifier) {
    QTest::keyClick(&squares(), code, held);
  }

  OpenPattern open;
  ChartGrid grid;
};

TEST_F(ChartGridTest, OpensOnStitchOneOfRoundOne) {
  EXPECT_EQ(squares().current(), (Square{0, 11}));
  EXPECT_EQ(grid.census().stitches, 484);
  EXPECT_EQ(grid.counts()->counts_text(17), "B 11 C 1");
  EXPECT_EQ(grid.counts()->float_text(17), "11");
  EXPECT_EQ(grid.counts()->mark_text(26), "to 9 sts");
  EXPECT_EQ(grid.counts()->mark_text(17), "");
}

TEST_F(ChartGridTest, ALetterPaintsAndMovesOn) {
  squares().set_current({0, 10});
  QTest::keyClicks(&squares(), "bC");
  EXPECT_EQ(round(1), "MMMMMMMMMMBC");
  EXPECT_EQ(squares().current(), (Square{1, 0}));  // on to the round above
  EXPECT_EQ(open.undo_label(), "paint CC3, round 1");
  open.undo();
  EXPECT_EQ(round(1), "MMMMMMMMMMBM");
  open.undo();
  EXPECT_EQ(round(1), "MMMMMMMMMMMM");
  EXPECT_FALSE(open.can_undo());
}

TEST_F(ChartGridTest, ALetterThatIsNoColourPaintsNothingAndIsSaid) {
  QSignalSpy said(&grid, &ChartGrid::says);
  QTest::keyClicks(&squares(), "Z");
  EXPECT_FALSE(open.can_undo());
  ASSERT_EQ(said.count(), 1);
  EXPECT_TRUE(said.front().front().toString().startsWith("Z "));
}

TEST_F(ChartGridTest, ShiftWithTheArrowsSelectsAndALetterFills) {
  squares().set_current({0, 2});
  key(Qt::Key_Left, Qt::ShiftModifier);
  key(Qt::Key_Up, Qt::ShiftModifier);
  QTest::keyClicks(&squares(), "A");
  EXPECT_EQ(round(1), "MAAMMMMMMMMM");
  EXPECT_EQ(round(2), "MAAAMMMAMMMA");
  EXPECT_EQ(open.undo_label(), "fill 4 squares with CC1");
  key(Qt::Key_Delete);
  EXPECT_EQ(round(1), "M--MMMMMMMMM");
  EXPECT_EQ(grid.census().rounds[0].stitches, 10);
  open.undo();
  open.undo();
  EXPECT_FALSE(open.can_undo());
}

TEST_F(ChartGridTest, RRepeatsTheSelectionOverItsRounds) {
  squares().select({0, 4}, {0, 6});
  grid.paste("AAB");
  squares().select({0, 4}, {0, 6});
  QTest::keyClicks(&squares(), "r");
  EXPECT_EQ(round(1), "BAABAABAABAA");
}

TEST_F(ChartGridTest, CopyingAndPastingGivesTheSameSquares) {
  squares().select({7, 4}, {9, 8});
  const QString copied = grid.selected_text();
  EXPECT_EQ(copied, "CCCCC\nBCCCB\nBBCBB\n");
  squares().set_current({0, 0});
  grid.paste(copied);
  EXPECT_EQ(round(1), "BBCBBMMMMMMM");
  EXPECT_EQ(round(3), "CCCCCMAAAMAA");
  EXPECT_EQ(open.undo_label(), "paste 5 × 3 squares");
}

TEST_F(ChartGridTest, WhatIsNoChartIsNotPasted) {
  QSignalSpy said(&grid, &ChartGrid::says);
  grid.paste("MMé");
  EXPECT_FALSE(open.can_undo());
  EXPECT_EQ(said.count(), 1);
}

TEST_F(ChartGridTest, ADragIsOneStrokeAndOneStep) {
  grid.set_brush('C');
  const QPoint from = middle_of({3, 2}), to = middle_of({3, 8});
  QTest::mousePress(squares().viewport(), Qt::LeftButton, {}, from);
  QTest::mouseMove(squares().viewport(), to);
  EXPECT_EQ(grid.census().symbols.at('C').stitches, 64 + 7);  // the census follows the stroke
  EXPECT_FALSE(open.can_undo());
  QTest::mouseRelease(squares().viewport(), Qt::LeftButton, {}, to);
  EXPECT_EQ(round(4), "AACCCCCCCAAA");  // no gap, however quick the hand
  EXPECT_EQ(open.undo_label(), "stroke of CC3");
  open.undo();
  EXPECT_EQ(round(4), "AAAAAAAAAAAA");
  EXPECT_FALSE(open.can_undo());
}

TEST_F(ChartGridTest, WithoutABrushTheMouseOnlySelects) {
  QTest::mouseClick(squares().viewport(), Qt::LeftButton, {}, middle_of({3, 2}));
  EXPECT_EQ(squares().current(), (Square{3, 2}));
  EXPECT_FALSE(open.can_undo());
}

TEST_F(ChartGridTest, RoundsAndStitchesComeAndGo) {
  squares().set_current({0, 0});
  grid.insert_round(true);
  EXPECT_EQ(open.pattern().charts.front().rounds->size(), 51u);
  EXPECT_EQ(squares().current().round, 1u);
  grid.delete_rounds();
  grid.insert_stitch(true);
  EXPECT_EQ(round(1).size(), 13u);
  grid.delete_stitches();
  EXPECT_EQ(open.pattern(), quillmarsh_draft());
  QSignalSpy said(&grid, &ChartGrid::says);
  squares().selectAll();
  grid.delete_rounds();  // the last round stays
  EXPECT_EQ(open.pattern(), quillmarsh_draft());
  EXPECT_EQ(said.count(), 1);
}

TEST_F(ChartGridTest, EverySquareReadsAloud) {
  const QModelIndex index = squares().squares()->index_of({17, 6});
  EXPECT_EQ(index.data(Qt::AccessibleTextRole).toString(), "round 18, stitch 6, CC3 Ember");
}

TEST_F(ChartGridTest, SquaresHaveTheShapeOfAStitch) {
  grid.set_stitch_shape(26.0 / 30.0);
  const QSize size = squares().square_size();
  EXPECT_NEAR(static_cast<double>(size.height()) / size.width(), 26.0 / 30.0, 0.04);
}

TEST(ChartGridEmpty, ShowsNothingAndTakesNothing) {
  OpenPattern open;
  ChartGrid grid(open);
  grid.show_chart(ChartId{});
  grid.show();
  EXPECT_EQ(grid.chart(), nullptr);
  QTest::keyClicks(grid.squares(), "M");
  grid.paste("MM");
  grid.insert_round(true);
  EXPECT_FALSE(open.can_undo());
}

}  // namespace
}  // namespace skeinproof
