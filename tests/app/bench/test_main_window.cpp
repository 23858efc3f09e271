// SPDX-License-Identifier: GPL-3.0-or-later
#include <QAction>
#include <QApplication>
#include <QLabel>
#include <QMenuBar>
#include <QPushButton>

#include "app/bench/page_list.h"
#include "app/bench/page_table.h"
#include "app/bench/shortcut_list.h"
#include "app/bench/tool_row.h"
#include "core/pattern/edits.h"
#include "tests/app/bench/window_fixture.h"

namespace skeinproof {
namespace {

TEST_F(WindowTest, SaysTitleAndWhetherItIsSaved) {
  EXPECT_TRUE(window->windowTitle().startsWith("Untitled[*]"));
  set_title("Quillmarsh Yoke");
  EXPECT_EQ(window->windowTitle(), "Quillmarsh Yoke[*] — Skeinproof");
  EXPECT_TRUE(window->isWindowModified());
  window->undo();
  EXPECT_FALSE(window->isWindowModified());
}

TEST_F(WindowTest, UndoIsNamedAndReachesEveryPage) {
  EXPECT_FALSE(window->action("undo")->isEnabled());
  auto* page = static_cast<TitlePage*>(window->current_page());
  QTest::keyClicks(page->field, "Lampwick");
  QTest::keyClick(page->field, Qt::Key_Return);
  EXPECT_EQ(window->action("undo")->text(), "&Undo title");
  window->show_page("Pieces");
  QTest::keyClick(window, Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(window->open_pattern().pattern().title, "");
  EXPECT_EQ(window->action("redo")->text(), "&Redo title");
  QTest::keyClick(window, Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
  EXPECT_EQ(window->open_pattern().pattern().title, "Lampwick");
}

TEST_F(WindowTest, GoesToPagesAndBack) {
  QTest::keyClick(window, Qt::Key_2, Qt::ControlModifier);
  EXPECT_EQ(window->current_page(), window->page("Pieces"));
  QTest::keyClick(window, Qt::Key_3, Qt::ControlModifier);
  EXPECT_EQ(window->findChild<PageList*>()->current(), 2);
  QTest::keyClick(window, Qt::Key_Left, Qt::AltModifier);
  EXPECT_EQ(window->current_page(), window->page("Pieces"));
  QTest::keyClick(window, Qt::Key_Right, Qt::AltModifier);
  EXPECT_EQ(window->current_page(), window->page("Quantities"));
  emit window->page("Quantities")->wants_place("Pieces", 42);
  EXPECT_EQ(static_cast<EmptyPage*>(window->page("Pieces"))->last_part, 42U);
}

TEST_F(WindowTest, GoToAndFindShareOneField) {
  window->open_pattern().apply("sizes", [](Pattern& pattern) { insert_size(pattern, 1, "XL"); });
  QTest::keyClick(window, Qt::Key_G, Qt::ControlModifier);
  QLineEdit* field = window->findChild<ToolRow*>()->field();
  ASSERT_EQ(QApplication::focusWidget(), field);
  QTest::keyClicks(field, "size xl");
  QTest::keyClick(field, Qt::Key_Return);
  EXPECT_EQ(window->open_pattern().chosen_size_index(), 1U);
  set_title("Lampwick");
  static_cast<TitlePage*>(window->current_page())->field->setText("Lampwick");
  QTest::keyClick(window, Qt::Key_F, Qt::ControlModifier);
  QTest::keyClicks(field, "lighthouse");
  QTest::keyClick(field, Qt::Key_Return);
  bool told = false;
  for (const QLabel* label : window->findChildren<QLabel*>())
    told |= label->text().contains("“lighthouse” is not on");
  EXPECT_TRUE(told);
  EXPECT_TRUE(window->action("find_next")->isEnabled());
}

TEST_F(WindowTest, PanesTakeTurns) {
  window->show_page("Pattern");
  std::vector<QWidget*> seen;
  for (int i = 0; i < 3; ++i) {
    QTest::keyClick(window, Qt::Key_F6);
    seen.push_back(QApplication::focusWidget());
  }
  const auto* page = static_cast<TitlePage*>(window->page("Pattern"));
  EXPECT_TRUE(std::find(seen.begin(), seen.end(), page->field) != seen.end());
  EXPECT_TRUE(std::find(seen.begin(), seen.end(), window->findChild<PageList*>()) != seen.end());
  QTest::keyClick(window, Qt::Key_F6, Qt::ShiftModifier);
  EXPECT_EQ(QApplication::focusWidget(), seen[1]);
}

TEST_F(WindowTest, TheChosenSizeMovesByKeyWithoutAStepOfUndo) {
  window->open_pattern().apply("sizes", [](Pattern& pattern) { insert_size(pattern, 1, "2"); });
  QTest::keyClick(window, Qt::Key_PageDown, Qt::ControlModifier);
  EXPECT_EQ(window->open_pattern().chosen_size_index(), 1U);
  QTest::keyClick(window, Qt::Key_PageDown, Qt::ControlModifier);
  EXPECT_EQ(window->open_pattern().chosen_size_index(), 1U);
  QTest::keyClick(window, Qt::Key_PageUp, Qt::ControlModifier);
  EXPECT_EQ(window->open_pattern().chosen_size_index(), 0U);
  EXPECT_EQ(window->open_pattern().undo_label(), "sizes");
}

TEST_F(WindowTest, EveryFontFollowsTheTextSize) {
  const double usual = window->font().pointSizeF();
  const int row = window->findChild<PageList*>()->sizeHintForRow(0);
  for (int i = 0; i < 10; ++i) QTest::keyClick(window, Qt::Key_Plus, Qt::ControlModifier);
  EXPECT_EQ(appearance.text_percent(), 200);
  ASSERT_TRUE(QTest::qWaitFor([&] { return window->font().pointSizeF() >= 1.8 * usual; }));
  for (const QWidget* widget : window->findChildren<QWidget*>())
    EXPECT_GE(widget->font().pointSizeF(), 1.8 * usual) << widget->metaObject()->className();
  EXPECT_NEAR(window->findChild<PageList*>()->sizeHintForRow(0), 2 * row, 2);
  EXPECT_EQ(settings.text_percent(), 200);
  QTest::keyClick(window, Qt::Key_0, Qt::ControlModifier);
  EXPECT_TRUE(QTest::qWaitFor([&] { return window->font().pointSizeF() == usual; }));
  for (int i = 0; i < 60; ++i) window->smaller_text();
  EXPECT_EQ(appearance.text_percent(), smallest_text_percent);
}

TEST_F(WindowTest, LightDarkAndNumberStyleAreKeptForThePerson) {
  window->use_dark_shades();
  EXPECT_TRUE(window->action("dark_shades")->isChecked());
  EXPECT_FALSE(window->action("light_shades")->isChecked());
  EXPECT_EQ(settings.shades(), Shades::dark);
  EXPECT_LT(QApplication::palette().color(QPalette::Window).lightness(), 100);
  window->use_comma();
  window->use_imperial_first();
  EXPECT_EQ(window->open_pattern().reader().numbers.mark, DecimalMark::comma);
  EXPECT_TRUE(settings.reader().imperial_first);
  const auto again = make_window();
  EXPECT_TRUE(again->open_pattern().reader().imperial_first);
  EXPECT_TRUE(again->uses_comma());
  EXPECT_FALSE(window->open_pattern().can_undo());
}

TEST_F(WindowTest, AttentionStandsBesideThePage) {
  const auto* list = window->findChild<PageList*>();
  const auto spoken = [&] { return list->model()->index(0, 0).data(Qt::AccessibleTextRole).toString(); };
  EXPECT_EQ(spoken(), "Pattern, no title");
  set_title("t");
  EXPECT_EQ(spoken(), "Pattern");
}

TEST_F(WindowTest, OnlyWhatCanBeDoneIsEnabled) {
  EXPECT_TRUE(window->action("pdf")->isEnabled());
  window->show_page("Pieces");
  EXPECT_FALSE(window->action("pdf")->isEnabled());
  EXPECT_FALSE(window->action("print")->isEnabled());
  EXPECT_FALSE(window->action("larger_size")->isEnabled());
  EXPECT_FALSE(window->action("find_next")->isEnabled());
}

TEST_F(WindowTest, ThePageOfAllShortcutsListsEveryCommandThatHasOne) {
  const ShortcutList list({}, window);
  const QString text = list.as_text();
  for (const Command& command : command_table())
    for (const QKeySequence& keys : shortcuts_of(command))
      EXPECT_TRUE(text.contains(keys.toString(QKeySequence::NativeText))) << command.id;
}

// The pages of the program: none of their keys takes one of the window's.
TEST_F(WindowTest, NoPageTakesAKeyOfTheWindow) {
  QStringList taken;
  for (const Command& command : command_table())
    for (const QKeySequence& keys : shortcuts_of(command)) taken << keys.toString();
  OpenPattern open;
  for (const PageRow& row : page_table()) {
    QWidget parent;
    const Page* page = row.make(open, &parent);
    QStringList own;
    for (const QAction* action : page->findChildren<QAction*>())
      for (const QKeySequence& keys : action->shortcuts()) {
        EXPECT_FALSE(taken.contains(keys.toString())) << row.name << ": " << keys.toString().toStdString();
      }
  }
}

}  // namespace
}  // namespace skeinproof
