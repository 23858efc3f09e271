// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QApplication>
#include <QClipboard>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>

#include "app/document/open_pattern.h"
#include "app/pages/pattern/list_pane.h"
#include "app/pages/pattern/metres_pane.h"
#include "app/pages/pattern/pattern_page.h"
#include "app/pages/pattern/size_bar.h"
#include "app/pages/pattern/start_pane.h"
#include "app/widgets/line_field.h"
#include "app/widgets/size_grid.h"
#include "app/widgets/size_table_model.h"
#include "tests/app/support/quillmarsh.h"

namespace skeinproof {
namespace {

class PatternPageTest : public testing::Test {
 protected:
  PatternPageTest() : page(open, nullptr) {
    page.resize(1280, 800);
    page.show();
    page.activateWindow();
    EXPECT_TRUE(QTest::qWaitForWindowActive(&page));
  }

  static void type(QLineEdit* field, const QString& text) {
    field->setFocus();
    field->selectAll();
    if (text.isEmpty())
      QTest::keyClick(field, Qt::Key_Delete);
    else
      QTest::keyClicks(field, text);
    QTest::keyClick(field, Qt::Key_Return);
  }
  std::vector<std::string> labels() const {
    std::vector<std::string> all;
    for (const Size& size : open.pattern().sizes) all.push_back(size.label);
    return all;
  }
  SizeTableModel& lists() { return *page.lists()->grid()->model(); }
  QString cell(int row, int size) { return lists().cell_text(row, size); }

  using Labels = std::vector<std::string>;
  OpenPattern open;
  PatternPage page;
};

TEST_F(PatternPageTest, TypingATitleIsOneStep) {
  page.title()->setFocus();
  QTest::keyClicks(page.title(), QStringLiteral("Marsh Hat"));
  EXPECT_EQ(open.pattern().title, "Marsh Hat");
  EXPECT_EQ(open.undo_label(), QStringLiteral("title"));
  open.undo();
  EXPECT_EQ(open.pattern().title, "");
  EXPECT_FALSE(open.can_undo());
  EXPECT_TRUE(page.title()->text().isEmpty());
}

TEST_F(PatternPageTest, OneLineNamesTheSizes) {
  type(page.sizes()->line(), QStringLiteral("1 (2, 3, 4) (5, 6, 7, 8, 9)"));
  EXPECT_EQ(labels(), (Labels{"1", "2", "3", "4", "5", "6", "7", "8", "9"}));
  EXPECT_TRUE(open.pattern().sizes[4].opens_group);
  EXPECT_EQ(open.undo_label(), QStringLiteral("sizes 1 (2, 3, 4) (5, 6, 7, 8, 9)"));
  EXPECT_EQ(page.sizes()->line()->text(), QStringLiteral("1 (2, 3, 4) (5, 6, 7, 8, 9)"));
  EXPECT_EQ(lists().columnCount(), 9);
  EXPECT_TRUE(page.sizes()->preview().startsWith(QStringLiteral("nine sizes")));
}

TEST_F(PatternPageTest, ThePreviewSaysWhatALineWouldDo) {
  type(page.sizes()->line(), QStringLiteral("1 (2, 3)"));
  page.sizes()->line()->selectAll();
  QTest::keyClicks(page.sizes()->line(), QStringLiteral("S (M)"));
  EXPECT_TRUE(page.sizes()->preview().contains(QStringLiteral("two sizes")));
  EXPECT_TRUE(page.sizes()->preview().contains(QStringLiteral("renames 2")));
  EXPECT_TRUE(page.sizes()->preview().contains(QStringLiteral("takes 1 off the end")));
  EXPECT_EQ(labels(), (Labels{"1", "2", "3"}));
  QTest::keyClick(page.sizes()->line(), Qt::Key_Escape);
  EXPECT_EQ(page.sizes()->line()->text(), QStringLiteral("1 (2, 3)"));
  EXPECT_EQ(labels(), (Labels{"1", "2", "3"}));
}

TEST_F(PatternPageTest, ABadLineStaysWithItsReason) {
  type(page.sizes()->line(), QStringLiteral("1 (2, 2)"));
  EXPECT_EQ(labels(), Labels{"1"});
  EXPECT_EQ(page.sizes()->line()->text(), QStringLiteral("1 (2, 2)"));
  EXPECT_FALSE(page.sizes()->line()->message().isEmpty());
  EXPECT_EQ(page.sizes()->line()->accessibleDescription(), page.sizes()->line()->message());
  EXPECT_FALSE(open.can_undo());
}

TEST_F(PatternPageTest, ListsFollowTheSizes) {
  open.replace(quillmarsh_draft());
  page.lists()->grid()->set_current(0, 2);
  ASSERT_EQ(open.chosen_size_index(), 2U);
  page.sizes()->insert_before();
  ASSERT_EQ(labels().size(), 10U);
  EXPECT_EQ(labels()[2], "10");
  EXPECT_EQ(labels()[3], "3");
  EXPECT_TRUE(cell(0, 2).isEmpty());
  EXPECT_EQ(cell(0, 3), QStringLiteral("100"));
  EXPECT_FALSE(open.pattern().roles[0].printed_count.at(2));
  EXPECT_EQ(open.pattern().roles[0].printed_count.at(3)->value, 6);

  type(page.sizes()->name(), QStringLiteral("2½"));
  EXPECT_EQ(labels()[2], "2½");
  EXPECT_EQ(open.undo_label(), QStringLiteral("rename size 10 to 2½"));

  open.choose_size(3);
  page.sizes()->move(-1);
  EXPECT_EQ(labels()[2], "3");
  EXPECT_EQ(cell(0, 2), QStringLiteral("100"));
  EXPECT_EQ(open.chosen_size_index(), 2U);

  open.choose_size(3);
  page.sizes()->erase();
  EXPECT_EQ(labels(), (Labels{"1", "2", "3", "4", "5", "6", "7", "8", "9"}));
  while (open.can_undo()) open.undo();
  open.choose_size(4);
  EXPECT_EQ(open.pattern(), quillmarsh_draft());
}

TEST_F(PatternPageTest, ShrinkingIsUndone) {
  open.replace(quillmarsh_draft());
  type(page.sizes()->line(), QStringLiteral("1 (2, 3)"));
  EXPECT_EQ(lists().columnCount(), 3);
  EXPECT_EQ(open.undo_label(), QStringLiteral("sizes 1 (2, 3)"));
  open.undo();
  EXPECT_FALSE(open.can_undo());
  open.choose_size(4);
  EXPECT_EQ(open.pattern(), quillmarsh_draft());
  EXPECT_EQ(cell(0, 8), QStringLiteral("160"));
}

TEST_F(PatternPageTest, ANameStandsOnce) {
  type(page.sizes()->line(), QStringLiteral("S (M, L)"));
  open.choose_size(1);
  type(page.sizes()->name(), QStringLiteral("L"));
  EXPECT_EQ(labels(), (Labels{"S", "M", "L"}));
  EXPECT_TRUE(page.sizes()->name()->message().contains(QStringLiteral("“L”")));
  type(page.sizes()->name(), QString());
  EXPECT_FALSE(page.sizes()->name()->message().isEmpty());
  EXPECT_EQ(labels(), (Labels{"S", "M", "L"}));
}

TEST_F(PatternPageTest, TheLastSizeStays) {
  page.sizes()->erase();
  EXPECT_EQ(labels(), Labels{"1"});
}

TEST_F(PatternPageTest, TheFirstRowMakesAMeasurement) {
  type(page.sizes()->line(), QStringLiteral("1 (2, 3)"));
  ASSERT_EQ(page.lists()->rows().front().kind, ListRow::Kind::first_measurement);
  page.lists()->grid()->set_current(0, 0);
  type(page.lists()->grid()->line(), QStringLiteral("81.5 (91, 100)"));
  ASSERT_EQ(open.pattern().measurements.size(), 1U);
  EXPECT_EQ(open.pattern().measurements[0].kind, MeasurementKind::circumference);
  EXPECT_EQ(open.pattern().measurements[0].values.at(1)->value.value(), 91);
  ASSERT_EQ(page.lists()->rows()[1].kind, ListRow::Kind::other_system);
  EXPECT_EQ(cell(1, 0), QStringLiteral("32"));
  EXPECT_EQ(cell(1, 1), QStringLiteral("35¾"));
  EXPECT_FALSE(lists().is_editable(1));
}

TEST_F(PatternPageTest, AListOfTheWrongLengthChangesNothing) {
  open.replace(quillmarsh_draft());
  page.lists()->grid()->set_current(0, 4);
  type(page.lists()->grid()->line(), QStringLiteral("81.5 (91, 100, 109) (120, 129, 140, 149)"));
  EXPECT_EQ(open.pattern(), quillmarsh_draft());
  EXPECT_EQ(page.lists()->grid()->line()->text(), QStringLiteral("81.5 (91, 100, 109) (120, 129, 140, 149)"));
  EXPECT_FALSE(page.lists()->grid()->message().isEmpty());
}

TEST_F(PatternPageTest, AReaderOfInchesSeesCentimetresBelow) {
  open.replace(quillmarsh_draft());
  ReaderStyle reader;
  reader.imperial_first = true;
  open.set_reader(reader);
  EXPECT_EQ(cell(1, 0), QStringLiteral("81.5"));
}

TEST_F(PatternPageTest, MeasurementsAndNotionsComeGoAndMove) {
  open.replace(quillmarsh_draft());
  const std::size_t before = open.pattern().measurements.size();
  page.lists()->add_measurement();
  ASSERT_EQ(open.pattern().measurements.size(), before + 1);
  const MeasurementId made = open.pattern().measurements.back().id;
  EXPECT_EQ(open.undo_label(), QStringLiteral("add measurement"));
  page.lists()->move_row(-1);
  EXPECT_EQ(open.pattern().measurements[before - 1].id, made);
  page.lists()->erase_row();
  EXPECT_EQ(open.pattern().measurements.size(), before);

  page.lists()->add_notion();
  ASSERT_EQ(open.pattern().notions.size(), 1U);
  const int row = page.lists()->grid()->current_row();
  EXPECT_EQ(page.lists()->rows()[static_cast<std::size_t>(row)].kind, ListRow::Kind::notion);
  type(page.lists()->grid()->line(), QStringLiteral("6 (6, 6, 7) (7, 7, 8, 8, 8)"));
  EXPECT_EQ(open.pattern().notions[0].count.at(8)->value, 8);
  while (open.can_undo()) open.undo();
  open.choose_size(4);
  EXPECT_EQ(open.pattern(), quillmarsh_draft());
}

TEST_F(PatternPageTest, APastedTableMakesMeasurements) {
  page.lists()->paste(
      QStringLiteral("Size\tS\tM\tL\n"
                     "bust (in)\t32\t35 3/4\t39¼\n"
                     "bust to fit\t76\t84\t92\n"
                     "upper arm\t30\t32\n"));
  EXPECT_EQ(labels(), (Labels{"S", "M", "L"}));
  const auto& all = open.pattern().measurements;
  ASSERT_EQ(all.size(), 2U);
  EXPECT_EQ(all[0].name, "bust");
  EXPECT_NEAR(all[0].values.at(1)->value.value(), 35.75 * 2.54, 1e-9);
  EXPECT_EQ(all[1].fit, Fit::to_fit);
  EXPECT_EQ(all[1].values.at(2)->value.value(), 92);
  EXPECT_TRUE(page.lists()->message().contains(QStringLiteral("upper arm")))
      << page.lists()->message().toStdString();
  EXPECT_EQ(open.undo_label(), QStringLiteral("paste table of measurements"));
  open.undo();
  EXPECT_FALSE(open.can_undo());
}

TEST_F(PatternPageTest, WhatIsNoTableIsNotTaken) {
  page.lists()->paste(QStringLiteral("\n  \n"));
  EXPECT_FALSE(page.lists()->message().isEmpty());
  EXPECT_FALSE(open.can_undo());
}

TEST_F(PatternPageTest, TheWayInFollowsTheWork) {
  ASSERT_TRUE(page.start()->isVisible());
  EXPECT_FALSE(page.start()->steps()[1]->is_done());
  QSignalSpy places(&page, &Page::wants_place);
  QSignalSpy commands(&page, &Page::wants_command);
  page.start()->steps()[2]->click();
  ASSERT_EQ(places.size(), 1);
  EXPECT_EQ(places[0][0].toString(), QStringLiteral("Yarns"));
  page.start()->steps()[0]->click();
  ASSERT_EQ(places.size(), 2);
  EXPECT_EQ(places[1][0].toString(), QStringLiteral("Queries"));
  for (auto* button : page.start()->findChildren<QPushButton*>())
    if (button->text().contains(QStringLiteral("Yoke"))) button->click();
  ASSERT_EQ(commands.size(), 1);
  EXPECT_EQ(commands[0][0].toString(), QStringLiteral("sample:quillmarsh-yoke"));
  page.start()->steps()[1]->click();
  EXPECT_TRUE(page.sizes()->line()->hasFocus());
  type(page.sizes()->line(), QStringLiteral("1 (2, 3)"));
  EXPECT_TRUE(page.start()->steps()[1]->is_done());
  open.replace(quillmarsh_draft());
  EXPECT_FALSE(page.start()->isVisible());
}

TEST_F(PatternPageTest, ABabysPatternShowsTheUsualCautions) {
  EXPECT_TRUE(page.cautions().isEmpty());
  open.apply(QStringLiteral("wearer"), [](Pattern& pattern) {
    pattern.wearer = "baby";
    pattern.item = "cardigan";
    pattern.notions.push_back({"buttons", {}, {}});
  });
  EXPECT_FALSE(page.cautions().isEmpty());
}

TEST_F(PatternPageTest, FindsAndGoesToItsParts) {
  open.replace(quillmarsh_draft());
  EXPECT_TRUE(page.go_to(open.pattern().sizes[6].id.value));
  EXPECT_EQ(open.chosen_size_index(), 6U);
  EXPECT_TRUE(page.go_to(open.pattern().measurements[1].id.value));
  EXPECT_FALSE(page.go_to(0));
  EXPECT_FALSE(page.go_to(999999));
  EXPECT_TRUE(page.find_next(QStringLiteral("bust")));
  EXPECT_FALSE(page.find_next(QStringLiteral("no such words")));
}

TEST_F(PatternPageTest, PrintsWhatItShows) {
  open.replace(quillmarsh_draft());
  const auto sheet = page.sheet();
  ASSERT_TRUE(sheet);
  EXPECT_EQ(sheet->title, "Quillmarsh Yoke");
  const Table* table = nullptr;
  for (const SheetPart& part : sheet->parts)
    if (const auto* found = std::get_if<Table>(&part); found != nullptr && found->columns.size() == 10)
      table = found;
  ASSERT_NE(table, nullptr);
  EXPECT_EQ(table->rows[0].cells[1].text, "81.5");
}

class MetresPaneTest : public PatternPageTest {
 protected:
  MetresPaneTest() { page.show_metres(true); }
  MetresPane& pane() { return *page.metres(); }
};

TEST_F(MetresPaneTest, ANewSkeinOfTheSameHourCancelsTheMoisture) {
  EXPECT_TRUE(pane().reading()->hasFocus());
  type(pane().reading(), QStringLiteral("261.4 g"));
  EXPECT_EQ(pane().answer(), QStringLiteral("–"));
  type(pane().length(), QStringLiteral("175 m"));
  type(pane().weight(), QStringLiteral("50"));
  type(pane().new_skein(), QStringLiteral("50 g"));
  EXPECT_EQ(pane().answer(), QStringLiteral("915 m"));
  EXPECT_FALSE(pane().humidity()->isEnabled());
  EXPECT_TRUE(pane().range().contains(QStringLiteral("9 times in 10")));
  EXPECT_TRUE(pane().as_text().contains(QStringLiteral("915 m")));
  // A question is no part of the document.
  EXPECT_FALSE(open.can_undo());
}

TEST_F(MetresPaneTest, DampAirMakesAWeightMeanLess) {
  type(pane().reading(), QStringLiteral("100"));
  type(pane().length(), QStringLiteral("175 m"));
  type(pane().weight(), QStringLiteral("50"));
  type(pane().fibres(), QStringLiteral("100% wool"));
  const auto metres_at = [&](const QString& humidity) {
    type(pane().humidity(), humidity);
    return pane().answer().chopped(2).toDouble();
  };
  const double dry = metres_at(QStringLiteral("40")), damp = metres_at(QStringLiteral("75"));
  EXPECT_GT(dry, damp + 5);
}

TEST_F(MetresPaneTest, SaysWhatIsMissing) {
  type(pane().reading(), QStringLiteral("100"));
  EXPECT_EQ(pane().answer(), QStringLiteral("–"));
  EXPECT_FALSE(pane().range().isEmpty());
  EXPECT_TRUE(pane().as_text().isEmpty());
  type(pane().reading(), QStringLiteral("a heap"));
  EXPECT_EQ(pane().reading()->text(), QStringLiteral("a heap"));
  EXPECT_FALSE(pane().reading()->message().isEmpty());
}

}  // namespace
}  // namespace skeinproof
