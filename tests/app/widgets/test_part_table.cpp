// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QAbstractItemModelTester>
#include <QApplication>
#include <QClipboard>
#include <QLineEdit>
#include <QTest>

#include "app/document/open_pattern.h"
#include "app/widgets/part_table.h"
#include "app/widgets/part_table_model.h"
#include "core/pattern/edits.h"

namespace skeinproof {
namespace {

// Yarns by name, length of a skein and whether they are withdrawn.
class PartTableTest : public testing::Test {
 protected:
  PartTableTest() {
    PartList list = part_list(QStringLiteral("yarn"), QStringLiteral("add a yarn"), &Pattern::yarns);
    list.name = [](const Pattern& pattern, std::size_t row) {
      return QString::fromStdString(pattern.yarns[row].name);
    };
    list.append = [](Pattern& pattern) { add_yarn(pattern, {}); };
    list.erase = [](Pattern& pattern, std::size_t row) { erase_yarn(pattern, pattern.yarns[row].id); };
    list.duplicate = [](Pattern& pattern, std::size_t row) {
      Yarn copy = pattern.yarns[row];
      copy.id = take_id<YarnId>(pattern);
      pattern.yarns.insert(pattern.yarns.begin() + static_cast<std::ptrdiff_t>(row) + 1, copy);
    };
    list.move = [](Pattern& pattern, std::size_t from, std::size_t to) {
      move_part(pattern.yarns, from, to);
    };
    const auto name = text_column(
        QStringLiteral("Yarn"), QStringLiteral("name"),
        [](auto& pattern, std::size_t row) -> auto& { return pattern.yarns[row].name; });
    const auto length = quantity_column<Metres>(
        open, QStringLiteral("Length"), QStringLiteral("length"), QuantityFormat::yarn_length(),
        [](auto& pattern, std::size_t row) -> auto& { return pattern.yarns[row].put_up.length; });
    const auto gone = tick_column(
        QStringLiteral("Withdrawn"), QStringLiteral("withdrawn"),
        [](auto& pattern, std::size_t row) -> auto& { return pattern.yarns[row].withdrawn; });
    table = std::make_unique<PartTable>(open, std::move(list), std::vector<PartColumn>{name, length, gone});
    table->setAccessibleName(QStringLiteral("Yarns"));
    tester = std::make_unique<QAbstractItemModelTester>(
        table->model(), QAbstractItemModelTester::FailureReportingMode::Warning);
    table->resize(600, 300);
    table->show();
    table->activateWindow();
    EXPECT_TRUE(QTest::qWaitForWindowActive(table.get()));
    table->setFocus();
    choose(0, 0);
  }

  void choose(int row, int column) { table->setCurrentIndex(table->model()->index(row, column)); }
  QString cell(int row, int column) const { return table->part_model()->cell_text(row, column); }
  // Types into the chosen cell and presses Enter.
  void type(const QString& text) {
    QTest::keyClick(table.get(), Qt::Key_F2);
    auto* editor = table->findChild<QLineEdit*>();
    ASSERT_NE(editor, nullptr);
    editor->selectAll();
    QTest::keyClicks(editor, text);
    QTest::keyClick(editor, Qt::Key_Return);
    QCoreApplication::processEvents();
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
  }
  const std::vector<Yarn>& yarns() const { return open.pattern().yarns; }

  OpenPattern open;
  std::unique_ptr<PartTable> table;
  std::unique_ptr<QAbstractItemModelTester> tester;
};

TEST_F(PartTableTest, TheEmptyRowMakesAPart) {
  ASSERT_EQ(table->model()->rowCount(), 1);
  EXPECT_EQ(table->model()->index(0, 0).data().toString(), QStringLiteral("add a yarn"));
  type(QStringLiteral("Fieldspun"));
  ASSERT_EQ(yarns().size(), 1U);
  EXPECT_EQ(yarns()[0].name, "Fieldspun");
  EXPECT_EQ(open.undo_label(), QStringLiteral("add yarn Fieldspun"));
  EXPECT_EQ(table->model()->rowCount(), 2);
  EXPECT_EQ(table->current_key(), yarns()[0].id.value);
  open.undo();
  EXPECT_TRUE(yarns().empty());
  EXPECT_EQ(table->model()->rowCount(), 1);
}

TEST_F(PartTableTest, NothingTypedInTheEmptyRowMakesNothing) {
  type(QStringLiteral("   "));
  EXPECT_TRUE(yarns().empty());
  EXPECT_FALSE(open.can_undo());
}

TEST_F(PartTableTest, AStepSaysWhatChanged) {
  type(QStringLiteral("Fieldspun"));
  choose(0, 1);
  type(QStringLiteral("191yd"));
  EXPECT_EQ(open.undo_label(), QStringLiteral("length, Fieldspun 191yd"));
  EXPECT_NEAR(yarns()[0].put_up.length->value.value(), 174.6504, 1e-9);
  EXPECT_EQ(cell(0, 1), QStringLiteral("191yd"));
}

TEST_F(PartTableTest, WhatCannotBeReadStaysWithItsReason) {
  type(QStringLiteral("Fieldspun"));
  choose(0, 1);
  type(QStringLiteral("12 parsecs"));
  EXPECT_FALSE(yarns()[0].put_up.length);
  EXPECT_EQ(cell(0, 1), QStringLiteral("12 parsecs"));
  EXPECT_TRUE(table->part_model()->bad_reason(0, 1).contains(QStringLiteral("12 parsecs")));
  EXPECT_TRUE(table->model()
                  ->index(0, 1)
                  .data(Qt::AccessibleTextRole)
                  .toString()
                  .contains(QStringLiteral("expected")));
  // Typed again it starts from the bad text; a good one puts it right.
  choose(0, 1);
  type(QStringLiteral("175 m"));
  EXPECT_TRUE(table->part_model()->bad_reason(0, 1).isEmpty());
  EXPECT_EQ(yarns()[0].put_up.length->value.value(), 175);
}

TEST_F(PartTableTest, EscGivesUpWhatCouldNotBeRead) {
  type(QStringLiteral("Fieldspun"));
  choose(0, 1);
  type(QStringLiteral("50 g"));
  ASSERT_FALSE(table->part_model()->bad_reason(0, 1).isEmpty());
  choose(0, 1);
  table->setFocus();
  QTest::keyClick(table.get(), Qt::Key_Escape);
  EXPECT_TRUE(cell(0, 1).isEmpty());
}

TEST_F(PartTableTest, MovesDuplicatesAndDeletes) {
  for (const char* name : {"A", "B", "C"}) {
    choose(static_cast<int>(yarns().size()), 0);
    type(QString::fromLatin1(name));
  }
  choose(2, 0);
  QTest::keyClick(table.get(), Qt::Key_Up, Qt::AltModifier);
  EXPECT_EQ(yarns()[1].name, "C");
  EXPECT_EQ(table->current_row(), 1);
  EXPECT_EQ(open.undo_label(), QStringLiteral("move yarn C"));
  table->duplicate();
  ASSERT_EQ(yarns().size(), 4U);
  EXPECT_EQ(table->current_row(), 2);
  QTest::keyClick(table.get(), Qt::Key_Delete, Qt::ControlModifier);
  ASSERT_EQ(yarns().size(), 3U);
  EXPECT_EQ(open.undo_label(), QStringLiteral("delete yarn C"));
  // Nothing moves beyond the ends.
  table->set_current_key(yarns()[0].id.value);
  table->move(-1);
  EXPECT_EQ(yarns()[0].name, "A");
}

TEST_F(PartTableTest, ATableFromASpreadsheetIsOneStep) {
  choose(0, 0);
  table->paste(QStringLiteral("Fieldspun\t175 m\tno\r\nDownlight\t167\tyes\r\n"));
  ASSERT_EQ(yarns().size(), 2U);
  EXPECT_EQ(yarns()[1].name, "Downlight");
  EXPECT_EQ(yarns()[1].put_up.length->value.value(), 167);
  EXPECT_TRUE(yarns()[1].withdrawn);
  table->selectAll();
  EXPECT_EQ(table->copied(), QStringLiteral("Fieldspun\t175 m\tno\nDownlight\t167\tyes"));
  open.undo();
  EXPECT_TRUE(yarns().empty());
  EXPECT_FALSE(open.can_undo());
}

TEST_F(PartTableTest, APastedCellThatCannotBeReadIsKeptBesideTheOthers) {
  type(QStringLiteral("Fieldspun"));
  choose(0, 1);
  table->paste(QStringLiteral("heaps\tperhaps"));
  EXPECT_EQ(cell(0, 1), QStringLiteral("heaps"));
  EXPECT_FALSE(table->part_model()->bad_reason(0, 1).isEmpty());
  EXPECT_FALSE(table->part_model()->bad_reason(0, 2).isEmpty());
  EXPECT_FALSE(yarns()[0].withdrawn);
}

TEST_F(PartTableTest, TicksWithTheSpaceBar) {
  type(QStringLiteral("Fieldspun"));
  choose(0, 2);
  table->setFocus();
  QTest::keyClick(table.get(), Qt::Key_Space);
  EXPECT_TRUE(yarns()[0].withdrawn);
  EXPECT_EQ(open.undo_label(), QStringLiteral("withdrawn, Fieldspun yes"));
}

TEST_F(PartTableTest, AnotherDocumentForgetsWhatWasTyped) {
  type(QStringLiteral("Fieldspun"));
  choose(0, 1);
  type(QStringLiteral("heaps"));
  Pattern other = new_pattern();
  add_yarn(other, "Downlight");
  open.replace(other);
  EXPECT_EQ(table->model()->rowCount(), 2);
  EXPECT_TRUE(cell(0, 1).isEmpty());
}

}  // namespace
}  // namespace skeinproof
