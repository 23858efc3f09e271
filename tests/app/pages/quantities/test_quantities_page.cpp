// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QAbstractItemModelTester>
#include <QApplication>
#include <QClipboard>
#include <QFile>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QSignalSpy>
#include <QTabWidget>
#include <QTemporaryDir>
#include <QTest>

#include "app/charts/need_curve.h"
#include "app/document/open_pattern.h"
#include "app/pages/quantities/choices_panel.h"
#include "app/pages/quantities/evidence_table.h"
#include "app/pages/quantities/need_grid.h"
#include "app/pages/quantities/need_model.h"
#include "app/pages/quantities/quantities_page.h"
#include "app/pages/quantities/working_model.h"
#include "app/pages/quantities/working_pane.h"
#include "app/pages/quantities/working_view.h"
#include "app/print/print_page.h"
#include "app/widgets/quantity_field.h"
#include "core/pattern/edits.h"
#include "tests/app/support/quillmarsh.h"

namespace skeinproof {
namespace {

class QuantitiesPageTest : public testing::Test {
 protected:
  QuantitiesPageTest() {
    open.replace(quillmarsh_draft());
    page = std::make_unique<QuantitiesPage>(open, nullptr);
    page->resize(1300, 760);
    page->show();
    page->activateWindow();
    EXPECT_TRUE(QTest::qWaitForWindowActive(page.get()));
    page->enter();
  }
  NeedGrid* grid() { return page->grid(); }
  NeedModel* model() { return page->model(); }
  void key(Qt::Key pressed, Qt::KeyboardModifiers with = Qt::NoModifier) {
    QTest::keyClick(grid(), pressed, with);
  }
  QLineEdit* editor() { return grid()->findChild<QLineEdit*>(QStringLiteral("printed_count")); }
  QLineEdit* type_into_cell(const QString& text) {
    key(Qt::Key_F2);
    QLineEdit* line = editor();
    if (!line) return nullptr;
    line->selectAll();
    QTest::keyClicks(line, text);
    QTest::keyClick(line, Qt::Key_Return);
    QCoreApplication::processEvents();  // a view takes the text of its editor from the event loop
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    return editor();
  }
  double printed(std::size_t role, std::size_t size) {
    const auto count = open.pattern().roles[role].printed_count.at(size);
    return count ? count->value : -1;
  }

  OpenPattern open;
  std::unique_ptr<QuantitiesPage> page;
};

TEST_F(QuantitiesPageTest, ModelsKeepTheRules) {
  QAbstractItemModelTester needs(model(), QAbstractItemModelTester::FailureReportingMode::Warning);
  QAbstractItemModelTester steps(page->working()->steps(),
                                 QAbstractItemModelTester::FailureReportingMode::Warning);
  EvidenceTable* evidence = page->findChild<EvidenceTable*>();
  ASSERT_TRUE(evidence);
  QAbstractItemModelTester ways(evidence->evidence(),
                                QAbstractItemModelTester::FailureReportingMode::Warning);
  EXPECT_EQ(model()->rowCount(), 5);
  EXPECT_EQ(model()->columnCount(), 9);
  open.apply("one size less", [](Pattern& pattern) { erase_size(pattern, 3); });
  EXPECT_EQ(model()->columnCount(), 8);
  open.apply("one role less", [](Pattern& pattern) { erase_role(pattern, pattern.roles[3].id); });
  EXPECT_EQ(model()->rowCount(), 4);
  open.undo();
  open.undo();
  EXPECT_EQ(model()->columnCount(), 9);
}

TEST_F(QuantitiesPageTest, HeadsNameSizeAndRole) {
  EXPECT_EQ(model()->headerData(0, Qt::Horizontal, Qt::DisplayRole), "1");
  EXPECT_EQ(model()->headerData(1, Qt::Horizontal, Qt::DisplayRole), "(2");
  EXPECT_EQ(model()->headerData(8, Qt::Horizontal, Qt::DisplayRole), "9)");
  EXPECT_EQ(model()->headerData(4, Qt::Horizontal, NeedModel::MeasureRole), "120 cm");
  EXPECT_EQ(model()->headerData(0, Qt::Vertical, NeedModel::ShadeRole), "Peat 08");
  EXPECT_EQ(model()->headerData(0, Qt::Vertical, NeedModel::PutUpRole), "skein 175 m");
  EXPECT_EQ(model()->headerData(4, Qt::Vertical, Qt::DisplayRole), "All roles");
}

TEST_F(QuantitiesPageTest, ArrowsMoveAndTheChosenSizeFollows) {
  EXPECT_EQ(grid()->currentIndex().column(), 4);
  key(Qt::Key_Right);
  EXPECT_EQ(open.chosen_size_index(), 5U);
  EXPECT_FALSE(open.can_undo()) << "looking at a size is no edit";
  key(Qt::Key_Home);
  EXPECT_EQ(open.chosen_size_index(), 0U);
  key(Qt::Key_End, Qt::ControlModifier);
  EXPECT_EQ(grid()->currentIndex(), model()->index(4, 8));
  open.choose_size(2);
  EXPECT_EQ(grid()->currentIndex(), model()->index(4, 2));
}

TEST_F(QuantitiesPageTest, AWrongListStaysInTheCellAndChangesNothing) {
  QLineEdit* line = type_into_cell("5 (5, 6, 7) (7, 8, 9, 9)");
  ASSERT_TRUE(line) << "the editor stays open";
  EXPECT_EQ(line->text(), "5 (5, 6, 7) (7, 8, 9, 9)");
  EXPECT_FALSE(line->accessibleDescription().isEmpty());
  EXPECT_FALSE(open.can_undo());
  page->working()->view()->setFocus();
  EXPECT_TRUE(editor()) << "leaving the cell loses nothing";
  QTest::keyClick(line, Qt::Key_Escape);
  EXPECT_FALSE(open.can_undo());
  EXPECT_EQ(printed(0, 4), 8);
}

TEST_F(QuantitiesPageTest, WordsAreNoCount) {
  EXPECT_FALSE(model()->problem_with(model()->index(0, 0), "many").isEmpty());
  EXPECT_FALSE(model()->setData(model()->index(0, 0), "many", Qt::EditRole));
  EXPECT_TRUE(model()->problem_with(model()->index(0, 0), "").isEmpty())
      << "an empty cell is an absent count";
}

TEST_F(QuantitiesPageTest, CopyGivesTabsAndPasteFillsARectangle) {
  grid()->setCurrentIndex(model()->index(0, 0));
  grid()->selectionModel()->select(QItemSelection(model()->index(0, 0), model()->index(1, 2)),
                                   QItemSelectionModel::ClearAndSelect);
  QTest::keyClick(grid(), Qt::Key_C, Qt::ControlModifier);
  EXPECT_EQ(QApplication::clipboard()->text(), "5\t5\t6\n2\t2\t2");

  QApplication::clipboard()->setText("4\t4\r\n3\t3\r\n");
  grid()->setCurrentIndex(model()->index(2, 3));
  QTest::keyClick(grid(), Qt::Key_V, Qt::ControlModifier);
  EXPECT_EQ(printed(2, 3), 4);
  EXPECT_EQ(printed(2, 4), 4);
  EXPECT_EQ(printed(3, 4), 3);
  EXPECT_EQ(printed(3, 5), 1);
  open.undo();
  EXPECT_EQ(printed(2, 3), 1);
  EXPECT_FALSE(open.can_undo());

  QApplication::clipboard()->setText("1\tmany");
  QTest::keyClick(grid(), Qt::Key_V, Qt::ControlModifier);
  EXPECT_FALSE(open.can_undo()) << "what cannot be read fills nothing";
}

TEST_F(QuantitiesPageTest, LayersChangeFiguresAndWorking) {
  EXPECT_EQ(model()->cell(1, 0).count, "2");
  page->choose_layer(Layer::knitted);
  EXPECT_EQ(model()->cell(1, 0).count, "1");
  EXPECT_EQ(model()->cell(0, 4).length, "1,126");
  EXPECT_TRUE(page->working()->answer_text().contains("1,126 m of 1,225"));
  page->choose_layer(Layer::with_swatch);
  EXPECT_EQ(model()->cell(1, 0).count, "2");
  EXPECT_EQ(model()->cell(1, 0).length, "178");
}

TEST_F(QuantitiesPageTest, TheWorkingOfTheCellStandsBesideIt) {
  EXPECT_TRUE(page->working()->answer_text().contains("7 skeins"));
  EXPECT_TRUE(page->working()->answer_text().contains("1,203 m of 1,225; 22 m left over"));
  const WorkingModel* steps = page->working()->steps();
  const WorkingView* view = page->working()->view();
  const QModelIndex ground = view->currentIndex();
  ASSERT_TRUE(ground.isValid());
  EXPECT_EQ(steps->rowCount(ground), 0) << "the line ends on the ground";
  EXPECT_NE(steps->step(ground)->ground, Ground::none);
  EXPECT_TRUE(view->is_on_line(steps->index(0, 0)));
  EXPECT_TRUE(view->isExpanded(ground.parent()));
  grid()->setCurrentIndex(model()->index(1, 0));
  EXPECT_TRUE(page->working()->answer_text().contains("2 skeins"));
}

TEST_F(QuantitiesPageTest, RightAndLeftOpenAndCloseAStep) {
  WorkingView* view = page->working()->view();
  const QModelIndex top = page->working()->steps()->index(0, 0);
  view->setFocus();
  view->setCurrentIndex(top);
  QTest::keyClick(view, Qt::Key_Left);
  EXPECT_FALSE(view->isExpanded(top));
  QTest::keyClick(view, Qt::Key_Right);
  EXPECT_TRUE(view->isExpanded(top));
}

TEST_F(QuantitiesPageTest, TheWorkingIsCopiedAsText) {
  QTest::keyClick(grid(), Qt::Key_C, Qt::ControlModifier | Qt::ShiftModifier);
  const QString text = QApplication::clipboard()->text();
  EXPECT_TRUE(text.startsWith("Working of MC Peat 08, size 5, planned\n7 skeins"));
  EXPECT_TRUE(text.contains("1202.94 m") || text.contains("1,202.94 m")) << text.toStdString();
}

TEST_F(QuantitiesPageTest, AStepLeadsToItsPlace) {
  QSignalSpy places(page.get(), &Page::wants_place);
  auto* go = [&]() -> QAbstractButton* {
    for (auto* button : page->working()->findChildren<QAbstractButton*>())
      if (button->text().startsWith("Show on")) return button;
    return nullptr;
  }();
  ASSERT_TRUE(go);
  go->click();
  ASSERT_EQ(places.count(), 1);
  EXPECT_FALSE(places[0][0].toString().isEmpty());
}

TEST_F(QuantitiesPageTest, ColumnsOfGridAndCurveStandUnderEachOther) {
  for (const int width : {1300, 1180, 900}) {
    page->resize(width, 760);
    QCoreApplication::processEvents();
    const int column = 4;
    const int in_grid =
        grid()->viewport()->mapTo(page.get(), QPoint(grid()->columnViewportPosition(column), 0)).x() +
        grid()->columnWidth(column) / 2;
    const ChartColumns columns = grid()->columns();
    const int in_chart = page->curve()->mapTo(page.get(), QPoint()).x() +
                         static_cast<int>(page->curve()->plot().left() +
                                          (column + 0.5) * columns.column_width - columns.scrolled);
    EXPECT_NEAR(in_grid, in_chart, 1) << "at " << width;
  }
}

TEST_F(QuantitiesPageTest, ChoicesAreStepsOfUndo) {
  auto* choices = page->findChild<ChoicesPanel*>();
  ASSERT_TRUE(choices);
  choices->show();
  choices->allowance()->setFocus();
  choices->allowance()->selectAll();
  QTest::keyClicks(choices->allowance(), "10");
  QTest::keyClick(choices->allowance(), Qt::Key_Return);
  EXPECT_EQ(open.pattern().house().allowance_pct, 10);
  EXPECT_EQ(model()->cell(0, 4).length, "1,260");
  EXPECT_TRUE(ChoicesPanel::summary(open).startsWith("10 %"));
  open.undo();
  EXPECT_EQ(model()->cell(0, 4).length, "1,203");
}

TEST_F(QuantitiesPageTest, FindsGoesAndCallsForAttention) {
  EXPECT_TRUE(page->find_next("Ember"));
  EXPECT_EQ(grid()->currentIndex().row(), 3);
  EXPECT_FALSE(page->find_next("no such words"));
  EXPECT_TRUE(page->go_to(open.pattern().roles[1].id.value));
  EXPECT_EQ(grid()->currentIndex().row(), 1);
  EXPECT_TRUE(page->go_to(open.pattern().sizes[7].id.value));
  EXPECT_EQ(open.chosen_size_index(), 7U);
  EXPECT_FALSE(page->go_to(999999));
  EXPECT_EQ(page->attention(), "");
  open.apply("no pieces", [](Pattern& pattern) {
    pattern.pieces.clear();
    pattern.weighings.clear();
  });
  EXPECT_EQ(page->attention(), "not checked");
}

TEST_F(QuantitiesPageTest, AnEmptyPatternSaysWhatIsMissing) {
  open.replace(new_pattern());
  EXPECT_FALSE(model()->any_known());
  bool said = false;
  for (const QLabel* label : page->findChildren<QLabel*>())
    said = said || (label->isVisible() && label->text().startsWith("No need yet"));
  EXPECT_TRUE(said);
  EXPECT_EQ(model()->rowCount(), 1);
}

TEST_F(QuantitiesPageTest, StandsInSmallWindowsAndAtTwiceTheText) {
  QFont twice = page->font();
  twice.setPixelSize(26);
  page->setFont(twice);
  page->resize(1150, 760);
  QCoreApplication::processEvents();
  EXPECT_TRUE(page->findChild<QTabWidget*>()->isAncestorOf(page->working())) << "the working became a tab";
  EXPECT_GE(grid()->viewport()->height(), 128) << "a whole row is seen";
  EXPECT_GT(grid()->viewport()->width() / grid()->columnWidth(0), 3);
}

TEST_F(QuantitiesPageTest, ReInksWithThePalette) {
  const QImage light = grid()->grab().toImage();
  EXPECT_FALSE(page->curve()->ink().dark);
  QPalette dark(QColor(0x29, 0x2b, 0x2d));
  dark.setColor(QPalette::Base, QColor(0x1c, 0x1e, 0x20));
  dark.setColor(QPalette::Text, QColor(0xe7, 0xe7, 0xe3));
  dark.setColor(QPalette::WindowText, QColor(0xe7, 0xe7, 0xe3));
  page->setPalette(dark);
  EXPECT_TRUE(page->curve()->ink().dark);
  const QImage image = grid()->grab().toImage();
  EXPECT_LT(qGray(image.pixel(image.width() - 8, image.height() - 8)),
            qGray(light.pixel(light.width() - 8, light.height() - 8)));
}

TEST_F(QuantitiesPageTest, SavesAsPdf) {
  QTemporaryDir folder;
  const QString path = folder.filePath("quantities.pdf");
  ASSERT_TRUE(save_pdf(*page, path));
  QFile file(path);
  ASSERT_TRUE(file.open(QIODevice::ReadOnly));
  const QByteArray bytes = file.readAll();
  EXPECT_TRUE(bytes.startsWith("%PDF"));
  EXPECT_GT(bytes.size(), 20000);
  EXPECT_FALSE(save_pdf(*page, folder.filePath("no such folder/quantities.pdf")));
}

TEST_F(QuantitiesPageTest, CountsChancesAndStitchesStandSideBySide) {
  EvidenceTable* evidence = page->findChild<EvidenceTable*>();
  ASSERT_TRUE(evidence);
  open.apply(QStringLiteral("counts"), [](Pattern& pattern) {
    const double counts[] = {5, 5, 6, 7, 7, 8, 9, 9, 10};
    for (std::size_t i = 0; i < 9; ++i) pattern.roles[0].printed_count.set(i, Entered<double>{counts[i], {}});
  });
  page->grid()->setCurrentIndex(page->model()->index(0, 3));
  const auto& rows = evidence->evidence()->shown().rows;
  const auto counted =
      std::find_if(rows.begin(), rows.end(), [](const EvidenceRow& row) { return !row.planned; });
  ASSERT_NE(counted, rows.end());
  EXPECT_EQ(counted->because, QStringLiteral("least told by size 4, most told by size 2"));
  EXPECT_NEAR(counted->low, 1050, 1e-9);
  EXPECT_NEAR(counted->high, 1098.2, 1.5);
  EXPECT_EQ(counted->skeins_text, QStringLiteral("6–7"));
  const auto labels = page->working()->findChildren<QLabel*>();
  EXPECT_TRUE(std::any_of(labels.begin(), labels.end(), [](const QLabel* label) {
    return label->text().endsWith(QStringLiteral("; the skeins suffice in more than 99 of 100"));
  }));
}

}  // namespace
}  // namespace skeinproof
