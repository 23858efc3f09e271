// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/pieces/pieces_page.h"

#include <gtest/gtest.h>

#include <QComboBox>
#include <QPlainTextEdit>
#include <QSignalSpy>
#include <QTableView>
#include <QTest>
#include <QTreeView>

#include "app/document/open_pattern.h"
#include "app/pages/pieces/census_pane.h"
#include "app/pages/pieces/chart_import.h"
#include "app/pages/pieces/chart_pane.h"
#include "app/pages/pieces/fabrics_pane.h"
#include "app/pages/pieces/part_pane.h"
#include "app/pages/pieces/paste_list.h"
#include "app/pages/pieces/piece_tree_model.h"
#include "app/widgets/chart_grid.h"
#include "app/widgets/line_field.h"
#include "app/widgets/part_table.h"
#include "app/widgets/quantity_field.h"
#include "app/widgets/size_grid.h"
#include "app/widgets/size_table_model.h"
#include "core/pattern/piece_edits.h"
#include "tests/app/support/quillmarsh.h"

namespace skeinproof {
namespace {

class PiecesPageTest : public testing::Test {
 protected:
  PiecesPageTest() : page(filled(open), nullptr) {
    page.resize(1290, 800);
    page.show();
    page.activateWindow();
    EXPECT_TRUE(QTest::qWaitForWindowActive(&page));
    page.enter();
  }

  static OpenPattern& filled(OpenPattern& open) {
    open.replace(quillmarsh_draft());
    return open;
  }
  const Piece& piece(std::size_t at) const { return open.pattern().pieces[at]; }
  const Section& section(std::string_view name) const {
    for (const Piece& each : open.pattern().pieces)
      for (const Section& found : each.sections)
        if (found.name == name) return found;
    ADD_FAILURE() << "no section " << name;
    return piece(0).sections.front();
  }
  QString cell(std::uint32_t part, PieceTreeModel::Column column) const {
    const auto* model = static_cast<const PieceTreeModel*>(page.tree()->model());
    const QModelIndex index = model->index_of(part);
    return index.siblingAtColumn(column).data().toString();
  }
  QString row(const QString& label) const {
    const SizeTableModel& model = *page.part_pane()->grid()->model();
    for (int at = 0; at < model.rowCount(); ++at)
      if (model.headerData(at, Qt::Vertical, Qt::DisplayRole).toString() == label) return model.list_text(at);
    return QStringLiteral("no row ") + label;
  }

  OpenPattern open;
  PiecesPage page;
};

TEST_F(PiecesPageTest, ListsPiecesWithWhatTheyAreMadeOf) {
  EXPECT_EQ(page.tree()->model()->rowCount(), 4);
  const std::uint32_t taper = section("plain, taper").id.value;
  EXPECT_EQ(cell(taper, PieceTreeModel::fabric), "plain");
  EXPECT_EQ(cell(taper, PieceTreeModel::yarn), "MC");
  EXPECT_EQ(cell(taper, PieceTreeModel::copies), "2");
  EXPECT_EQ(cell(taper, PieceTreeModel::rounds), "138");
  EXPECT_EQ(cell(taper, PieceTreeModel::stitches), "11,536");
  const std::uint32_t chart = section("chart").id.value;
  EXPECT_EQ(cell(chart, PieceTreeModel::yarn), "four");
  EXPECT_EQ(cell(chart, PieceTreeModel::rounds), "50");
  EXPECT_EQ(cell(chart, PieceTreeModel::stitches), "38 × 484");
}

TEST_F(PiecesPageTest, AChartSectionShowsWhatItTakesInEverySize) {
  page.choose_part(section("chart").id.value);
  EXPECT_EQ(row("Stitches in"), "336 (360, 396, 420) (456, 480, 516, 540, 576)");
  EXPECT_EQ(row("Stitches out"), "112 (120, 132, 140) (152, 160, 172, 180, 192)");
  // 38 × 3.017 m; MC is carried and never cut.
  EXPECT_TRUE(row("MC m").contains("(114.7,")) << row("MC m").toStdString();
  EXPECT_EQ(page.part_pane()->grid()->current_row(), 1);  // the cursor waits in the repeats
}

TEST_F(PiecesPageTest, AListTypedInTheLineFillsTheRowAsOneStep) {
  page.choose_part(section("chart").id.value);
  SizeGrid* grid = page.part_pane()->grid();
  grid->line()->setFocus();
  grid->line()->selectAll();
  QTest::keyClicks(grid->line(), "29 (31, 33, 35) (38, 40, 43, 45, 48)");
  QTest::keyClick(grid->line(), Qt::Key_Return);
  EXPECT_EQ(section("chart").repeats.at(0)->value, 29);
  EXPECT_EQ(row("Stitches in"), "348 (372, 396, 420) (456, 480, 516, 540, 576)");
  open.undo();
  EXPECT_EQ(section("chart").repeats.at(0)->value, 28);
  EXPECT_FALSE(open.can_undo());
}

TEST_F(PiecesPageTest, AddsRenamesMovesAndDeletesByKeyboard) {
  page.choose_part(piece(0).sections[0].id.value);
  QTest::keyClick(page.tree(), Qt::Key_Insert);
  ASSERT_EQ(piece(0).sections.size(), 3u);
  auto* editor = qobject_cast<QLineEdit*>(QApplication::focusWidget());
  ASSERT_NE(editor, nullptr);  // the name is being typed
  editor->selectAll();
  QTest::keyClicks(editor, "facing");
  QTest::keyClick(editor, Qt::Key_Return);
  // Enter in an editor is taken when the editor has seen it, one round of events later.
  ASSERT_TRUE(QTest::qWaitFor([&] { return piece(0).sections[2].name == "facing"; }));
  EXPECT_EQ(open.undo_label(), "name facing");
  page.tree()->setFocus();
  QTest::keyClick(page.tree(), Qt::Key_Up, Qt::AltModifier);
  EXPECT_EQ(piece(0).sections[1].name, "facing");
  EXPECT_EQ(page.current_part(), piece(0).sections[1].id.value);
  QTest::keyClick(page.tree(), Qt::Key_Delete);
  EXPECT_EQ(piece(0).sections.size(), 2u);
  EXPECT_EQ(open.undo_label(), "delete facing");
  while (open.can_undo()) open.undo();
  EXPECT_EQ(open.pattern(), quillmarsh_draft());
}

TEST_F(PiecesPageTest, CopiesAreWholeNumbers) {
  auto* model = page.tree()->model();
  QSignalSpy said(&page, &Page::says);
  const QModelIndex sleeves = model->index(1, PieceTreeModel::copies);
  EXPECT_FALSE(model->setData(sleeves, "many", Qt::EditRole));
  EXPECT_FALSE(model->setData(sleeves, "1.5", Qt::EditRole));
  EXPECT_EQ(said.count(), 2);
  EXPECT_FALSE(open.can_undo());
  EXPECT_TRUE(model->setData(sleeves, "4", Qt::EditRole));
  EXPECT_EQ(piece(1).copies, 4);
  EXPECT_EQ(open.undo_label(), "copies of Sleeves, 4");
}

TEST_F(PiecesPageTest, StripesAreTypedAsTheyAreSaid) {
  const SectionId id = section("plain rounds").id;
  page.choose_part(id.value);
  page.part_pane()->set_colouring(PartPane::stripes_choice);
  EXPECT_EQ(section("plain rounds").colouring, Colouring::stripes);
  LineField* stripes = page.part_pane()->stripes();
  ASSERT_TRUE(stripes->isVisible());
  stripes->setFocus();
  QTest::keyClicks(stripes, "MC 6, XX 4");
  QTest::keyClick(stripes, Qt::Key_Return);
  EXPECT_TRUE(stripes->message().contains("XX"));
  EXPECT_EQ(stripes->text(), "MC 6, XX 4");  // nothing typed is lost
  stripes->selectAll();
  QTest::keyClicks(stripes, "MC 6, CC1 4");
  QTest::keyClick(stripes, Qt::Key_Return);
  ASSERT_EQ(section("plain rounds").stripes.size(), 2u);
  EXPECT_EQ(cell(id.value, PieceTreeModel::yarn), "MC, CC1");
}

TEST_F(PiecesPageTest, RunsOfRowsAreAddedAndGoOnWhereTheLastEnded) {
  page.choose_part(section("plain, taper").id.value);
  page.part_pane()->add_run();
  ASSERT_EQ(section("plain, taper").runs.size(), 3u);
  EXPECT_EQ(section("plain, taper").runs[2].from.at(4)->value, 104);
  EXPECT_EQ(row("From, 3"), "82 (86, 92, 96) (104, 108, 116, 120, 128)");
  page.part_pane()->remove_run();
  EXPECT_EQ(section("plain, taper").runs.size(), 2u);
}

TEST_F(PiecesPageTest, TheCensusFollowsTheSquares) {
  page.choose_part(section("chart").id.value);
  QTableView* colours = page.census()->colours();
  EXPECT_EQ(colours->model()->index(3, 1).data().toString(), "64");
  EXPECT_EQ(colours->model()->index(3, 4).data().toString(), "1.426");
  EXPECT_EQ(colours->model()->index(4, 1).data().toString(), "484");
  page.charts()->grid()->paint('C');
  EXPECT_EQ(colours->model()->index(3, 1).data().toString(), "65");
  EXPECT_TRUE(page.census()->text().contains("CC3\t65"));
}

TEST_F(PiecesPageTest, ATextBecomesAChartWithItsYarns) {
  ChartImport* import = page.charts()->import_text("MMAM\nMAAM\nAM");
  ASSERT_TRUE(import->chart().has_value());
  EXPECT_EQ(*import->chart()->rounds, (std::vector<std::string>{"MMAM", "MAAM", "--AM"}));
  EXPECT_EQ(import->chart()->colours[1].role, open.pattern().roles[1].id);  // as A is in the other chart
  import->order()->setCurrentIndex(2);
  EXPECT_EQ(import->chart()->rounds->front(), "--AM");
  import->text()->setPlainText("MMAM\nM?é");
  EXPECT_FALSE(import->chart().has_value());
  EXPECT_TRUE(import->summary().startsWith("Line 2, column 3")) << import->summary().toStdString();
  import->text()->setPlainText("AB\nBA");
  import->accept();
  ASSERT_EQ(open.pattern().charts.size(), 2u);
  EXPECT_EQ(page.charts()->chart_id(), open.pattern().charts[1].id);
  open.undo();
  EXPECT_EQ(open.pattern().charts.size(), 1u);
}

TEST_F(PiecesPageTest, APictureBecomesTheSameChart) {
  ChartImport* import =
      page.charts()->import_file(SKEINPROOF_SOURCE_DIR "/sample-data/charts/quillmarsh-yoke.png");
  ASSERT_NE(import, nullptr);
  ASSERT_TRUE(import->chart().has_value());
  const Chart& read = *import->chart();
  const Chart& known = open.pattern().charts.front();
  ASSERT_EQ(read.rounds->size(), known.rounds->size());
  // The letters may differ; the squares of one yarn are the same ones.
  const auto role_at = [](const Chart& chart, std::size_t round, std::size_t stitch) {
    for (const ChartColour& colour : chart.colours)
      if (colour.symbol.front() == (*chart.rounds)[round][stitch]) return colour.role.value;
    return 0u;
  };
  for (std::size_t round = 0; round < 50; ++round)
    for (std::size_t stitch = 0; stitch < 12; ++stitch)
      ASSERT_EQ(role_at(read, round, stitch), role_at(known, round, stitch)) << round << ' ' << stitch;
  import->reject();
  EXPECT_FALSE(open.can_undo());
}

TEST_F(PiecesPageTest, WhatIsNoChartFileIsSaid) {
  QSignalSpy said(&page, &Page::says);
  EXPECT_EQ(page.charts()->import_file("no/such/file.png"), nullptr);
  EXPECT_EQ(said.count(), 1);
}

TEST_F(PiecesPageTest, APastedListIsShownBeforeItIsTaken) {
  PasteListDialog* ask = page.paste_list("Pocket\nlining 1 (2, 3, 4) (5, 6, 7, 8)");
  EXPECT_TRUE(ask->message().startsWith("Line 2:"));
  ask->text()->setPlainText("Pocket\nlining 1 (2, 3, 4) (5, 6, 7, 8, 9)");
  EXPECT_EQ(ask->list().size(), 1u);
  ask->accept();
  EXPECT_EQ(open.pattern().pieces.back().name, "Pocket");
  open.undo();
  EXPECT_EQ(open.pattern(), quillmarsh_draft());
}

TEST_F(PiecesPageTest, GoesToEveryKindOfPart) {
  const Pattern& pattern = open.pattern();
  EXPECT_TRUE(page.go_to(pattern.pieces[3].edges[0].id.value));
  EXPECT_EQ(page.current_part(), pattern.pieces[3].edges[0].id.value);
  EXPECT_TRUE(page.go_to(pattern.fabrics[2].id.value));
  EXPECT_EQ(page.fabrics()->fabric_id(), pattern.fabrics[2].id);
  EXPECT_TRUE(page.fabrics()->isVisible());
  EXPECT_TRUE(page.go_to(pattern.charts[0].id.value));
  EXPECT_FALSE(page.go_to(pattern.sizes[0].id.value));
}

TEST_F(PiecesPageTest, FindsAndGoesRound) {
  EXPECT_TRUE(page.find_next("rib"));
  const std::uint32_t first = page.current_part();
  EXPECT_EQ(first, section("rib, hem").id.value);
  EXPECT_TRUE(page.find_next("rib"));
  EXPECT_NE(page.current_part(), first);
  EXPECT_FALSE(page.find_next("tassel"));
}

TEST_F(PiecesPageTest, FabricsTakeTheirLoopFromTheGauge) {
  page.show_fabrics(true);
  page.fabrics()->show_fabric(open.pattern().fabrics[0].id);
  QuantityField* loop = nullptr;
  for (auto* field : page.fabrics()->findChildren<QuantityField*>())
    if (field->accessibleName() == "yarn in a stitch") loop = field;
  ASSERT_NE(loop, nullptr);
  ASSERT_TRUE(loop->isVisible());
  loop->setFocus();
  loop->selectAll();
  QTest::keyClicks(loop, "15 mm");
  QTest::keyClick(loop, Qt::Key_Return);
  EXPECT_NEAR(open.pattern().fabrics[0].typed_loop->value.value(), 1.5, 1e-12);
  EXPECT_EQ(open.pattern().fabrics[0].typed_loop->typed, "15 mm");
  EXPECT_EQ(open.undo_label(), "yarn in a stitch, plain 15 mm");
}

TEST_F(PiecesPageTest, EveryWidgetThatTakesTheKeyboardHasAName) {
  for (auto* widget : page.findChildren<QWidget*>()) {
    const bool asks = qobject_cast<QComboBox*>(widget) != nullptr ||
                      qobject_cast<QLineEdit*>(widget) != nullptr ||
                      qobject_cast<QAbstractItemView*>(widget) != nullptr;
    if (!asks || widget->focusPolicy() == Qt::NoFocus || !widget->isVisible()) continue;
    EXPECT_FALSE(widget->accessibleName().isEmpty()) << widget->metaObject()->className();
  }
}

TEST(PiecesPageEmpty, SaysWhatIsMissingAndStartsFromNothing) {
  OpenPattern open;
  PiecesPage page(open, nullptr);
  page.resize(1290, 800);
  page.show();
  EXPECT_EQ(page.tree()->model()->rowCount(), 0);
  page.add_section();  // makes its piece
  ASSERT_EQ(open.pattern().pieces.size(), 1u);
  EXPECT_EQ(open.pattern().pieces[0].sections.size(), 1u);
  EXPECT_TRUE(page.part_pane()->lines().contains("fabric"));
  page.delete_part();
  EXPECT_TRUE(open.pattern().pieces[0].sections.empty());
  page.delete_part();
  EXPECT_TRUE(open.pattern().pieces.empty());
  page.charts()->add_chart("motif", 6, 8);
  EXPECT_EQ(open.pattern().charts.front().rounds->size(), 8u);
  while (open.can_undo()) open.undo();
  EXPECT_EQ(open.pattern(), new_pattern());
}

TEST(PiecesPageNarrow, TheCensusBecomesATabWhereThereIsNoRoom) {
  OpenPattern open;
  open.replace(quillmarsh_draft());
  PiecesPage page(open, nullptr);
  page.resize(1300, 800);
  page.show();
  EXPECT_TRUE(page.census()->isVisible());
  page.resize(900, 700);
  EXPECT_TRUE(page.charts()->isVisible());
  EXPECT_FALSE(page.census()->isVisible());
  page.resize(1300, 800);
  EXPECT_TRUE(page.census()->isVisible());
  EXPECT_TRUE(page.charts()->isVisible());
}

}  // namespace
}  // namespace skeinproof
