// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QAbstractItemModelTester>
#include <QApplication>
#include <QClipboard>
#include <QLineEdit>
#include <QMimeData>
#include <QTest>

#include "app/document/open_pattern.h"
#include "app/widgets/size_grid.h"
#include "app/widgets/size_table.h"
#include "app/widgets/size_table_model.h"

namespace skeinproof {
namespace {

// Nine sizes 1 (2, 3, 4) (5, 6, 7, 8, 9) and two roles with printed counts, and a worked-out row under them.
class SizeGridTest : public testing::Test {
 protected:
  SizeGridTest() {
    Pattern pattern = new_pattern();
    pattern.sizes.clear();
    for (int i = 1; i <= 9; ++i)
      pattern.sizes.push_back({SizeId{++pattern.last_id}, std::to_string(i), i == 2 || i == 5});
    pattern.sample_size = pattern.chosen_size = pattern.sizes[4].id;
    for (const char* label : {"MC", "CC1"}) {
      Role role;
      role.id = RoleId{++pattern.last_id};
      role.label = label;
      pattern.roles.push_back(role);
    }
    open.replace(pattern);
    std::vector<SizeRow> rows;
    for (std::size_t i = 0; i < 2; ++i)
      rows.push_back(size_row<double>(
          QString::fromStdString(pattern.roles[i].label), QuantityFormat::number(0, 1000, "skeins"),
          [i](const Pattern& p) {
            return i < p.roles.size() ? p.roles[i].printed_count : PerSize<Entered<double>>();
          },
          [i](Pattern& p, const PerSize<Entered<double>>& list) { p.roles[i].printed_count = list; }));
    rows.push_back(size_row<double>("All", QuantityFormat::number(0, 1000, "skeins"), [](const Pattern& p) {
      PerSize<Entered<double>> sums;
      for (std::size_t s = 0; s < p.sizes.size(); ++s) {
        double sum = 0;
        for (const Role& role : p.roles) sum += role.printed_count.at(s).value_or(Entered<double>{}).value;
        sums.set(s, Entered<double>{sum, ""});
      }
      return sums;
    }));
    tester = std::make_unique<QAbstractItemModelTester>(
        grid.model(), QAbstractItemModelTester::FailureReportingMode::Warning);
    grid.set_rows(std::move(rows));
    grid.resize(900, 300);
    grid.show();
    grid.activateWindow();
    EXPECT_TRUE(QTest::qWaitForWindowActive(&grid));
    grid.table()->setFocus();
    grid.set_current(0, 0);
  }

  QString texts(int row) const {
    QStringList all;
    for (int i = 0; i < grid.model()->columnCount(); ++i) all << grid.model()->cell_text(row, i);
    return all.join(' ');
  }
  QLineEdit* editor() const {
    for (auto* line : grid.table()->viewport()->findChildren<QLineEdit*>())
      if (line->isVisible()) return line;
    return nullptr;
  }
  // Enter in an editor is taken when the editor has seen it, one round of events later.
  void end_editing() {
    QTest::keyClick(editor(), Qt::Key_Return);
    EXPECT_TRUE(QTest::qWaitFor([this] { return !editor(); }));
  }
  void press(Qt::Key key, Qt::KeyboardModifiers with = {}) { QTest::keyClick(grid.table(), key, with); }
  void paste(const QString& text) {
    QApplication::clipboard()->setText(text);
    press(Qt::Key_V, Qt::ControlModifier);
  }
  std::size_t steps() {
    std::size_t count = 0;
    for (; open.can_undo(); ++count) open.undo();
    for (std::size_t i = 0; i < count; ++i) open.redo();
    return count;
  }

  OpenPattern open;
  SizeGrid grid{open};
  std::unique_ptr<QAbstractItemModelTester> tester;
};

TEST_F(SizeGridTest, TypingStartsEditingAndEnterTakesIt) {
  QTest::keyClicks(grid.table(), "5");
  ASSERT_TRUE(editor());
  end_editing();
  EXPECT_EQ(open.pattern().roles[0].printed_count.at(0)->value, 5);
  EXPECT_EQ(open.undo_label(), "MC, size 1");
  EXPECT_EQ(grid.line()->text(), "5 (–, –, –) (–, –, –, –, –)");
}

TEST_F(SizeGridTest, TabGoesFromCellToCellWhileEditing) {
  press(Qt::Key_F2);
  for (const char* text : {"5", "6", "7"}) {
    ASSERT_TRUE(editor());
    QTest::keyClicks(editor(), text);
    QTest::keyClick(editor(), Qt::Key_Tab);
  }
  ASSERT_TRUE(editor());
  EXPECT_EQ(grid.current_size(), 3U);
  QTest::keyClick(editor(), Qt::Key_Backtab);
  EXPECT_EQ(grid.current_size(), 2U);
  ASSERT_TRUE(editor());
  QTest::keyClick(editor(), Qt::Key_Escape);
  EXPECT_EQ(texts(0).trimmed(), "5 6 7");
}

TEST_F(SizeGridTest, TabLeavesTheGridWhileNotEditing) {
  press(Qt::Key_Tab);
  EXPECT_EQ(QApplication::focusWidget(), grid.line());
}

TEST_F(SizeGridTest, ArrowsHomeAndEndMove) {
  press(Qt::Key_Right);
  press(Qt::Key_Down);
  EXPECT_EQ(grid.current_row(), 1);
  EXPECT_EQ(grid.current_size(), 1U);
  press(Qt::Key_End);
  EXPECT_EQ(grid.current_size(), 8U);
  press(Qt::Key_Home);
  EXPECT_EQ(grid.current_size(), 0U);
  EXPECT_EQ(grid.current_row(), 1);
  press(Qt::Key_End, Qt::ControlModifier);
  EXPECT_EQ(grid.current_row(), 2);
  EXPECT_EQ(grid.current_size(), 8U);
  press(Qt::Key_Home, Qt::ControlModifier);
  EXPECT_EQ(grid.current_row(), 0);
  EXPECT_EQ(grid.current_size(), 0U);
}

TEST_F(SizeGridTest, AListTypedInOneCellFillsTheRowAsOneStep) {
  grid.set_current(0, 4);
  press(Qt::Key_Return);
  ASSERT_TRUE(editor());
  QTest::keyClicks(editor(), "5 (5, 6, 7) (8, 7, 9, 9, 10)");
  EXPECT_TRUE(grid.message().contains("1: 5 · 2: 5 · 3: 6")) << grid.message().toStdString();
  EXPECT_FALSE(open.can_undo());
  end_editing();
  EXPECT_EQ(texts(0), "5 5 6 7 8 7 9 9 10");
  EXPECT_EQ(steps(), 1U);
  EXPECT_EQ(grid.line()->text(), "5 (5, 6, 7) (8, 7, 9, 9, 10)");
}

TEST_F(SizeGridTest, AListOfTheWrongLengthStaysAndChangesNothing) {
  const QString eight = "5 (5, 6, 7) (8, 7, 9, 9)";
  press(Qt::Key_F2);
  QTest::keyClicks(editor(), eight);
  end_editing();
  EXPECT_FALSE(open.can_undo());
  EXPECT_EQ(texts(0).trimmed(), "");
  EXPECT_EQ(grid.line()->text(), eight);
  EXPECT_TRUE(grid.message().startsWith("eight values for nine sizes")) << grid.message().toStdString();
  EXPECT_EQ(grid.line()->accessibleDescription(), grid.message());
  // It stays while another row is looked at and another edit is made.
  grid.set_current(1, 0);
  EXPECT_NE(grid.line()->text(), eight);
  open.apply("title", [](Pattern& pattern) { pattern.title = "t"; });
  grid.set_current(0, 0);
  EXPECT_EQ(grid.line()->text(), eight);
  // Put right, it is taken.
  grid.line()->setFocus();
  QTest::keyClick(grid.line(), Qt::Key_End);
  QTest::keyClick(grid.line(), Qt::Key_Backspace);
  QTest::keyClicks(grid.line(), ", 10)");
  QTest::keyClick(grid.line(), Qt::Key_Return);
  EXPECT_EQ(texts(0), "5 5 6 7 8 7 9 9 10");
  EXPECT_EQ(grid.message(), "");
}

TEST_F(SizeGridTest, APastedListIsPreviewedFirst) {
  paste("5 (5, 6, 7) (8, 7, 9, 9, 10)\n");
  EXPECT_FALSE(open.can_undo());
  EXPECT_EQ(QApplication::focusWidget(), grid.line());
  EXPECT_TRUE(grid.message().contains("9: 10"));
  QTest::keyClick(grid.line(), Qt::Key_Return);
  EXPECT_EQ(texts(0), "5 5 6 7 8 7 9 9 10");
  EXPECT_EQ(QApplication::focusWidget(), grid.table());
}

TEST_F(SizeGridTest, EscapeGivesUpAList) {
  paste("5 (5, 6)");
  QTest::keyClick(grid.line(), Qt::Key_Escape);
  EXPECT_EQ(grid.line()->text(), "");
  EXPECT_EQ(grid.message(), "");
  EXPECT_FALSE(open.can_undo());
}

TEST_F(SizeGridTest, ARectanglePastesAsOneStep) {
  grid.set_current(0, 2);
  paste("6\t7\t8\n2\t2,0\t3\n");
  EXPECT_EQ(texts(0), "  6 7 8    ");
  EXPECT_EQ(texts(1), "  2 2,0 3    ");
  EXPECT_EQ(steps(), 1U);
  open.undo();
  EXPECT_EQ(texts(0).trimmed(), "");
}

TEST_F(SizeGridTest, SpreadsheetsBringLabelsColumnsAndLineEnds) {
  paste("MC\t5\t5\t6\t7\t8\t7\t9\t9\t10\r\nCC1\t1\t2\t2\t2\t2\t2\t2\t2\t2\r\n");
  EXPECT_EQ(texts(0), "5 5 6 7 8 7 9 9 10");
  EXPECT_EQ(texts(1), "1 2 2 2 2 2 2 2 2");
  grid.set_current(1, 0);
  paste("2\n2\n2\n2\n3\n3\n3\n3\n3\n");
  EXPECT_EQ(texts(1), "2 2 2 2 3 3 3 3 3");
  EXPECT_EQ(steps(), 2U);
}

TEST_F(SizeGridTest, ARectangleThatDoesNotFitPastesNothing) {
  grid.set_current(0, 7);
  paste("6\t7\t8\n2\t2\t3");
  EXPECT_FALSE(open.can_undo());
  EXPECT_TRUE(grid.message().contains("2 × 3")) << grid.message().toStdString();
  grid.set_current(1, 0);
  paste("1\t2\n3\t4");  // the second line would fall on worked-out figures
  EXPECT_FALSE(open.can_undo());
  EXPECT_FALSE(grid.message().isEmpty());
}

TEST_F(SizeGridTest, ABadCellStaysUnderlinedWithItsReason) {
  paste("5\tfive\t6");
  EXPECT_EQ(texts(0).trimmed(), "5 five 6");
  EXPECT_FALSE(open.pattern().roles[0].printed_count.at(1));
  const QModelIndex bad = grid.model()->index(0, 1);
  EXPECT_FALSE(bad.data(SizeTableModel::bad_text_role).toString().isEmpty());
  EXPECT_TRUE(bad.data(Qt::AccessibleTextRole).toString().contains("Not taken"));
  grid.set_current(0, 1);
  EXPECT_EQ(grid.message(), bad.data(SizeTableModel::bad_text_role).toString());
  press(Qt::Key_Escape);
  EXPECT_EQ(grid.model()->cell_text(0, 1), "");
}

TEST_F(SizeGridTest, ABadFigureTypedInACellIsNotLost) {
  press(Qt::Key_F2);
  QTest::keyClicks(editor(), "12 parsecs");
  end_editing();
  EXPECT_FALSE(open.can_undo());
  EXPECT_EQ(grid.model()->cell_text(0, 0), "12 parsecs");
  EXPECT_FALSE(grid.message().isEmpty());
  press(Qt::Key_F2);
  EXPECT_EQ(editor()->text(), "12 parsecs");
  editor()->selectAll();
  QTest::keyClicks(editor(), "12");
  end_editing();
  EXPECT_EQ(open.pattern().roles[0].printed_count.at(0)->value, 12);
}

TEST_F(SizeGridTest, CopyingGivesTabsAndAWholeRowGivesTheListToo) {
  paste("5\t5\t6\t7\t8\t7\t9\t9\t10");
  grid.table()->clearSelection();
  grid.set_current(0, 3);
  press(Qt::Key_Right, Qt::ShiftModifier);
  press(Qt::Key_C, Qt::ControlModifier);
  EXPECT_EQ(QApplication::clipboard()->text(), "7\t8");
  grid.table()->selectRow(0);
  press(Qt::Key_C, Qt::ControlModifier);
  EXPECT_EQ(QApplication::clipboard()->text(), "5 (5, 6, 7) (8, 7, 9, 9, 10)");
  EXPECT_TRUE(QApplication::clipboard()->mimeData()->html().contains("<td>10</td>"));
  // What was copied pastes back as it was.
  grid.set_current(1, 0);
  press(Qt::Key_V, Qt::ControlModifier);
  EXPECT_EQ(texts(1), texts(0));
}

TEST_F(SizeGridTest, DeleteClearsTheChosenCellsAsOneStep) {
  paste("5\t5\t6\t7\t8\t7\t9\t9\t10");
  grid.table()->selectRow(0);
  press(Qt::Key_Delete);
  EXPECT_TRUE(open.pattern().roles[0].printed_count.empty());
  EXPECT_EQ(steps(), 2U);
}

TEST_F(SizeGridTest, WorkedOutRowsCannotBeTyped) {
  grid.set_current(2, 0);
  press(Qt::Key_F2);
  EXPECT_FALSE(editor());
  QTest::keyClicks(grid.table(), "5");
  EXPECT_FALSE(editor());
  press(Qt::Key_Delete);
  EXPECT_FALSE(open.can_undo());
  EXPECT_FALSE(grid.line()->isEnabled());
}

TEST_F(SizeGridTest, FollowsTheSizesAndKeepsDecimalCommasApart) {
  ReaderStyle reader;
  reader.numbers.mark = DecimalMark::comma;
  open.set_reader(reader);
  paste("1,5\t2\t2,5\t3\t3\t3\t3\t3\t4");
  EXPECT_EQ(grid.line()->text(), "1,5 (2; 2,5; 3) (3; 3; 3; 3; 4)");
  grid.line()->setFocus();
  const auto before = open.pattern().roles[0].printed_count;
  EXPECT_TRUE(grid.take_line());
  EXPECT_EQ(open.pattern().roles[0].printed_count.at(2)->value, 2.5);
  EXPECT_EQ(open.pattern().roles[0].printed_count.size(), before.size());
  open.apply("fewer sizes", [](Pattern& pattern) {
    pattern.sizes.pop_back();
    for (Role& role : pattern.roles) role.printed_count.erase_size(8);
  });
  EXPECT_EQ(grid.model()->columnCount(), 8);
  EXPECT_EQ(grid.model()->headerData(7, Qt::Horizontal, Qt::DisplayRole).toString(), "8)");
  open.undo();
  EXPECT_EQ(grid.model()->columnCount(), 9);
}

TEST_F(SizeGridTest, SaysEachCellInWords) {
  paste("5\t5");
  EXPECT_EQ(grid.model()->index(0, 1).data(Qt::AccessibleTextRole).toString(), "MC, size 2: 5");
  EXPECT_EQ(grid.model()->index(0, 5).data(Qt::AccessibleTextRole).toString(), "MC, size 6: nothing typed");
}

}  // namespace
}  // namespace skeinproof
