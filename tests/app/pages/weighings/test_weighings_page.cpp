// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QSignalSpy>
#include <QTest>

#include "app/document/open_pattern.h"
#include "app/pages/changes/change_form.h"
#include "app/pages/weighings/altered_pane.h"
#include "app/pages/weighings/reading_table.h"
#include "app/pages/weighings/weighing_form.h"
#include "app/pages/weighings/weighings_page.h"
#include "app/widgets/part_table.h"
#include "app/widgets/part_table_model.h"
#include "tests/app/support/quillmarsh.h"

namespace skeinproof {
namespace {

class WeighingsPageTest : public testing::Test {
 protected:
  WeighingsPageTest() : page(open, nullptr) {
    page.resize(1280, 800);
    page.show();
  }

  int column(const QString& head) const {
    for (int at = 0; at < page.readings()->model()->columnCount(); ++at)
      if (page.readings()->part_model()->column(at).head == head) return at;
    return -1;
  }
  QString cell(int row, const QString& head) const {
    return page.readings()->part_model()->cell_text(row, column(head));
  }
  bool set(int row, const QString& head, const QString& text) {
    return page.readings()->model()->setData(page.readings()->model()->index(row, column(head)), text,
                                             Qt::EditRole);
  }
  bool set_copies(int row, const QString& text) {
    PartTable* pieces = page.form()->pieces();
    return pieces->model()->setData(pieces->model()->index(row, 1), text, Qt::EditRole);
  }
  const Weighing& weighing() const { return open.pattern().weighings.front(); }

  OpenPattern open;
  WeighingsPage page;
};

TEST_F(WeighingsPageTest, AnEmptyPageOffersARow) {
  EXPECT_EQ(page.weighing_table()->model()->rowCount(), 1);
  EXPECT_FALSE(page.readings()->isEnabled());
  EXPECT_FALSE(page.sheet());
  EXPECT_TRUE(page.figures()->rows().empty());
}

TEST_F(WeighingsPageTest, TheSampleCalibratesTheLoops) {
  open.replace(quillmarsh_draft());
  ASSERT_EQ(page.form()->weighing(), weighing().id);
  // 261.4 g × 3.5 m/g; the loop that 54,360 stitches of MC ask for beside 99.6 m in the chart.
  EXPECT_EQ(cell(0, QStringLiteral("Length")), QStringLiteral("914.9 m"));
  EXPECT_EQ(cell(0, QStringLiteral("Loop")), QStringLiteral("1.500 cm"));
  EXPECT_EQ(cell(0, QStringLiteral("In widths")), QStringLiteral("3.90"));
  EXPECT_EQ(cell(0, QStringLiteral("Against stitches")), QStringLiteral("0.0 %"));
  ASSERT_TRUE(set(0, QStringLiteral("Reading"), QStringLiteral("261 g")));
  EXPECT_EQ(open.undo_label(), QStringLiteral("reading, MC 261 g"));
  EXPECT_EQ(cell(0, QStringLiteral("Loop")), QStringLiteral("1.498 cm"));
  EXPECT_TRUE(page.attention().isEmpty());
}

TEST_F(WeighingsPageTest, ALoopThatCannotBeAsksForALook) {
  open.replace(quillmarsh_draft());
  QSignalSpy told(&page, &Page::attention_changed);
  ASSERT_TRUE(set(0, QStringLiteral("Reading"), QStringLiteral("400 g")));
  EXPECT_FALSE(page.attention().isEmpty());
  EXPECT_EQ(told.size(), 1);
  EXPECT_TRUE(cell(0, QStringLiteral("In widths")).contains(QStringLiteral("not plausible")));
  open.undo();
  EXPECT_TRUE(page.attention().isEmpty());
}

TEST_F(WeighingsPageTest, TheFiguresGoDownToTheScale) {
  open.replace(quillmarsh_draft());
  page.readings()->set_current_key(open.pattern().roles[0].id.value);
  const auto& rows = page.figures()->rows();
  const auto has = [&](const QString& words) {
    return std::any_of(rows.begin(), rows.end(), [&](const FigureRow& row) {
      return row.name.contains(words) || row.how.contains(words);
    });
  };
  EXPECT_TRUE(has(QStringLiteral("261.4 g")));
  EXPECT_TRUE(has(QStringLiteral("plausible")));
  EXPECT_TRUE(has(QStringLiteral("Size 9")));
}

TEST_F(WeighingsPageTest, ARowMakesAWeighingOfTheSampleSize) {
  Pattern pattern = quillmarsh_draft();
  pattern.weighings.clear();
  open.replace(pattern);
  PartTable* table = page.weighing_table();
  ASSERT_TRUE(
      table->model()->setData(table->model()->index(0, 0), QStringLiteral("first swatch"), Qt::EditRole));
  ASSERT_EQ(open.pattern().weighings.size(), 1U);
  EXPECT_EQ(weighing().size, pattern.sample_size);
  EXPECT_EQ(open.undo_label(), QStringLiteral("add weighing first swatch"));
  EXPECT_TRUE(page.readings()->isEnabled());
  ASSERT_TRUE(set(1, QStringLiteral("Reading"), QStringLiteral("57.4")));
  EXPECT_EQ(weighing().roles[1].reading->value.value(), 57.4);
  EXPECT_FALSE(set(1, QStringLiteral("Reading"), QStringLiteral("20 m")));
  EXPECT_EQ(cell(1, QStringLiteral("Reading")), QStringLiteral("20 m"));
  EXPECT_EQ(weighing().roles[1].reading->value.value(), 57.4);
}

TEST_F(WeighingsPageTest, PiecesOnTheScale) {
  open.replace(quillmarsh_draft());
  ASSERT_EQ(open.pattern().pieces[1].copies, 2);
  ASSERT_TRUE(set_copies(1, QStringLiteral("1")));
  EXPECT_EQ(weighing().only.size(), open.pattern().pieces.size());
  EXPECT_EQ(copies_weighed(weighing(), open.pattern().pieces[1]), 1);
  ASSERT_TRUE(set_copies(1, QStringLiteral("2")));
  EXPECT_TRUE(weighing().only.empty());
  for (int row = 1; row < static_cast<int>(open.pattern().pieces.size()); ++row)
    ASSERT_TRUE(set_copies(row, QStringLiteral("0"))) << row;
  EXPECT_EQ(weighing().only.size(), 1U);
  EXPECT_FALSE(set_copies(0, QStringLiteral("0")));
  EXPECT_EQ(weighing().only.size(), 1U);
}

TEST_F(WeighingsPageTest, MoistureIsCorrectedByWhatIsKnown) {
  open.replace(quillmarsh_draft());
  EXPECT_FALSE(page.form()->humidity()->isEnabled());
  const QString with_skein = cell(0, QStringLiteral("9 in 10"));
  open.apply(QStringLiteral("moisture"),
             [](Pattern& pattern) { pattern.weighings[0].moisture = Moisture::not_corrected; });
  EXPECT_NE(cell(0, QStringLiteral("9 in 10")), with_skein);
  open.apply(QStringLiteral("moisture"),
             [](Pattern& pattern) { pattern.weighings[0].moisture = Moisture::humidity; });
  EXPECT_TRUE(page.form()->humidity()->isEnabled());
  // Without the humidity there is nothing to correct by: said, not guessed.
  EXPECT_EQ(cell(0, QStringLiteral("Length")), QStringLiteral("–"));
  ASSERT_FALSE(page.figures()->rows().empty());
  EXPECT_TRUE(page.figures()->rows().front().how.contains(QStringLiteral("humidity")));
  open.apply(QStringLiteral("humidity"), [](Pattern& pattern) {
    pattern.weighings[0].humidity_pct = Entered<double>{80, {}};
  });
  EXPECT_NE(cell(0, QStringLiteral("Length")), QStringLiteral("–"));
  EXPECT_NE(cell(0, QStringLiteral("Length")), QStringLiteral("914.9 m"));
}

TEST_F(WeighingsPageTest, AnUnusedWeighingSaysNothing) {
  open.replace(quillmarsh_draft());
  open.apply(QStringLiteral("use weighing"), [](Pattern& pattern) { pattern.weighings[0].used = false; });
  EXPECT_EQ(cell(0, QStringLiteral("Length")), QStringLiteral("–"));
}

TEST_F(WeighingsPageTest, ARepeatedWeighingHasItsOwnReadings) {
  open.replace(quillmarsh_draft());
  page.weighing_table()->duplicate();
  ASSERT_EQ(open.pattern().weighings.size(), 2U);
  EXPECT_EQ(page.form()->weighing(), open.pattern().weighings[1].id);
  ASSERT_TRUE(set(0, QStringLiteral("Reading"), QStringLiteral("262 g")));
  EXPECT_EQ(open.pattern().weighings[0].roles[0].reading->value.value(), 261.4);
  EXPECT_EQ(open.pattern().weighings[1].roles[0].reading->value.value(), 262);
}

TEST_F(WeighingsPageTest, GoesToFindsAndPrints) {
  open.replace(quillmarsh_draft());
  EXPECT_TRUE(page.go_to(weighing().id.value));
  EXPECT_FALSE(page.go_to(0));
  EXPECT_TRUE(page.find_next(QStringLiteral("designer")));
  const auto sheet = page.sheet();
  ASSERT_TRUE(sheet);
  EXPECT_GE(sheet->parts.size(), 3U);
}

TEST_F(WeighingsPageTest, WhatATesterKnittedOtherwiseIsTakenOff) {
  open.replace(quillmarsh_draft());
  AlteredPane* altered = page.altered();
  ASSERT_TRUE(altered->isEnabled());
  const Metres before = open.assessment().roles.front().sizes.front().knitted;
  const double factor = open.assessment().calibrations.front().factor;
  altered->add(ChangeKind::longer_piece);
  ASSERT_EQ(weighing().altered.size(), 1U);
  EXPECT_EQ(find_change(open.pattern(), weighing().altered.front().id), &weighing().altered.front());
  EXPECT_TRUE(open.pattern().changes.empty());
  open.apply("ten centimetres more", [](Pattern& pattern) {
    pattern.weighings.front().altered.front().piece = pattern.pieces.front().id;
    pattern.weighings.front().altered.front().by = Entered<Centimetres>{centimetres(10), {}};
  });
  // The same grams were more stitches, so each took less.
  EXPECT_LT(open.assessment().calibrations.front().factor, 0.97 * factor);
  altered->list()->erase();
  EXPECT_TRUE(weighing().altered.empty());
  EXPECT_EQ(open.assessment().roles.front().sizes.front().knitted, before);
  page.weighing_table()->erase();
  EXPECT_FALSE(altered->isEnabled());
}

}  // namespace
}  // namespace skeinproof
