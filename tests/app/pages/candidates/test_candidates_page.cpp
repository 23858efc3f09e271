// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QApplication>
#include <QCheckBox>
#include <QClipboard>
#include <QLineEdit>
#include <QTabWidget>
#include <QTemporaryDir>
#include <QTest>

#include "app/document/open_pattern.h"
#include "app/pages/candidates/band_form.h"
#include "app/pages/candidates/buy_pane.h"
#include "app/pages/candidates/candidate_charts.h"
#include "app/pages/candidates/candidate_pane.h"
#include "app/pages/candidates/candidate_table.h"
#include "app/pages/candidates/candidates_page.h"
#include "app/pages/candidates/wishes_pane.h"
#include "app/pages/yarns/yarn_form.h"
#include "app/widgets/figure_list.h"
#include "app/widgets/ink.h"
#include "app/widgets/line_field.h"
#include "app/widgets/part_table.h"
#include "app/widgets/part_table_model.h"
#include "tests/app/support/quillmarsh.h"

namespace skeinproof {
namespace {

class CandidatesPageTest : public testing::Test {
 protected:
  CandidatesPageTest() : page(open, nullptr) {
    page.resize(1280, 800);
    page.show();
    open.replace(quillmarsh_draft());
    open.choose_size(4);
    wait();
  }

  void wait() {
    ASSERT_TRUE(QTest::qWaitFor([this] { return !page.is_busy(); }, 60000));
  }
  const CandidateView& view() const { return page.table()->candidates()->view(); }
  QString said(const QString& row, std::size_t column) const {
    for (const FactRow& each : view().rows)
      if (each.name == row) return each.cells[column].spoken;
    return QStringLiteral("no row ") + row;
  }
  std::size_t column_of(const QString& name) const {
    for (std::size_t at = 0; at < view().heads.size(); ++at)
      if (view().heads[at].name == name) return at;
    ADD_FAILURE() << "no column " << name.toStdString();
    return 0;
  }
  // As typed at the desk: each line, then Enter.
  void type_band(const QStringList& lines) {
    for (const QString& line : lines) {
      auto* field = page.band()->focusWidget();
      ASSERT_NE(field, nullptr);
      // Keys of a plain keyboard only: a sign like that of the euro is put in as a whole.
      if (auto* typed = qobject_cast<QLineEdit*>(field)) typed->insert(line);
      QTest::keyClick(field, Qt::Key_Return);
    }
  }

  OpenPattern open;
  CandidatesPage page;
};

TEST_F(CandidatesPageTest, ThePatternsYarnStandsFirstAndThreeOfFourBesideIt) {
  ASSERT_EQ(view().heads.size(), 4u);
  EXPECT_EQ(view().heads[0].name, QStringLiteral("Oddmere Fieldspun"));
  EXPECT_EQ(view().heads[0].note, QStringLiteral("the pattern’s yarn"));
  EXPECT_EQ(view().heads[1].name, QStringLiteral("Brindlecote Smooth"));
  EXPECT_EQ(shown_words(open.pattern()), QStringLiteral("pattern and 3 of 4"));
  EXPECT_EQ(page.attention(), QStringLiteral("4"));
  EXPECT_FALSE(open.can_undo());
}

TEST_F(CandidatesPageTest, FactsStandAboveTheRuleAndConsequencesBelow) {
  std::size_t heading = 0;
  for (std::size_t row = 0; row < view().rows.size(); ++row)
    if (view().rows[row].kind == FactRow::Kind::heading) heading = row;
  ASSERT_GT(heading, 8u);
  for (std::size_t row = 0; row < view().rows.size(); ++row)
    EXPECT_EQ(view().rows[row].kind == FactRow::Kind::consequences, row > heading);
  EXPECT_TRUE(said(QStringLiteral("To buy"), 0).contains(QStringLiteral("€86.90")));
  EXPECT_TRUE(said(QStringLiteral("To buy"), 1).contains(QStringLiteral("€104.00")));
  EXPECT_TRUE(said(QStringLiteral("Firmness"), 1).startsWith(QStringLiteral("12.0")));
  EXPECT_TRUE(said(QStringLiteral("Garment mass"), 1).startsWith(QStringLiteral("503 g, +17 %")));
  EXPECT_TRUE(said(QStringLiteral("Skeins and last skein"), 1).contains(QStringLiteral("tips over")));
}

TEST_F(CandidatesPageTest, AtMostThreeConsequencesUntilEnterAsksForAll) {
  open.apply(QStringLiteral("a yarn unlike the pattern’s"), [](Pattern& pattern) {
    Yarn yarn = *pattern.yarn(pattern.candidates[1].yarns.front().yarn);
    yarn.name = "Ferncombe Slub";
    yarn.structure = "single";
    yarn.twist = "softly twisted";
    yarn.surface = "thick and thin";
    yarn.colouring = "variegated";
    add_candidate_yarn(pattern, yarn, {}, 1);
  });
  wait();
  const std::size_t column = column_of(QStringLiteral("Ferncombe Slub"));
  const std::size_t all = page.facts().back().consequences.size();
  ASSERT_GT(all, 3u);
  EXPECT_TRUE(
      said(QStringLiteral("Will differ"), column).contains(QStringLiteral("and %1 more").arg(all - 3)));
  EXPECT_FALSE(said(QStringLiteral("Will differ"), column).contains(QStringLiteral("rule S")));
  for (std::size_t row = 0; row < view().rows.size(); ++row)
    if (view().rows[row].name == QStringLiteral("Will differ"))
      page.table()->setCurrentIndex(
          page.table()->candidates()->index(static_cast<int>(row), static_cast<int>(column)));
  QTest::keyClick(page.table(), Qt::Key_Return);
  const QString whole = said(QStringLiteral("Will differ"), column);
  EXPECT_FALSE(whole.contains(QStringLiteral("more (Enter)")));
  EXPECT_EQ(whole.count(QStringLiteral("rule S")), static_cast<qsizetype>(all));
  EXPECT_EQ(whole.count(QStringLiteral("Settle it by: ")), static_cast<qsizetype>(all));
  EXPECT_EQ(page.table()->currentIndex().column(), static_cast<int>(column));
}

TEST_F(CandidatesPageTest, OnlyRowsThatDiffer) {
  const std::size_t before = view().rows.size();
  page.only_what_differs()->setChecked(true);
  EXPECT_LE(view().rows.size(), before);
  for (const FactRow& row : view().rows) {
    if (row.kind == FactRow::Kind::heading) continue;
    bool differs = false;
    for (const FactCell& cell : row.cells) differs = differs || cell.spoken != row.cells.front().spoken;
    EXPECT_TRUE(differs) << row.name.toStdString();
  }
}

TEST_F(CandidatesPageTest, ABallBandIsTypedLineByLine) {
  const std::size_t before = open.pattern().candidates.size();
  page.table()->setFocus();
  QTest::keyClick(page.table(), Qt::Key_Insert);
  ASSERT_TRUE(page.band()->isVisible());
  type_band({QStringLiteral("Ferncombe Plain"), QStringLiteral("100% wool"), QStringLiteral("50 g = 150 m"),
             QStringLiteral("24"), QStringLiteral("€6.40"), QStringLiteral("woollen-spun 2-ply"),
             QStringLiteral("hand wash"), QString(), QString()});
  EXPECT_FALSE(page.band()->isVisible());
  ASSERT_EQ(open.pattern().candidates.size(), before + 1);
  const Candidate& added = open.pattern().candidates.back();
  ASSERT_EQ(added.yarns.size(), 1u);
  const Yarn* yarn = open.pattern().yarn(added.yarns.front().yarn);
  ASSERT_NE(yarn, nullptr);
  EXPECT_EQ(yarn->name, "Ferncombe Plain");
  EXPECT_DOUBLE_EQ(yarn->put_up.length->value.value(), 150);
  EXPECT_EQ(yarn->spinning, Spinning::woollen);
  EXPECT_EQ(yarn->structure, "2-ply");
  EXPECT_EQ(yarn->price->currency, "€");
  EXPECT_TRUE(open.pattern().is_on_bench(yarn->id));
  wait();
  EXPECT_EQ(page.table()->current_candidate(), added.id);
  // 1,202.9 m of MC in skeins of 150 m are 8.02: nine.
  EXPECT_TRUE(said(QStringLiteral("Skeins and last skein"), column_of(QStringLiteral("Ferncombe Plain")))
                  .startsWith(QStringLiteral("MC 9 skeins")));
  EXPECT_EQ(open.undo_label(), QStringLiteral("add candidate Ferncombe Plain"));
  open.undo();
  EXPECT_EQ(open.pattern(), [this] {
    Pattern as_opened = quillmarsh_draft();
    as_opened.chosen_size = open.pattern().chosen_size;
    return as_opened;
  }());
  EXPECT_FALSE(open.can_undo());
}

TEST_F(CandidatesPageTest, WhatCannotBeReadHoldsTheFormAndLosesNothing) {
  page.add_candidate();
  type_band({QStringLiteral("Ferncombe Plain"), QStringLiteral("100% wool"), QStringLiteral("50 = 150")});
  EXPECT_EQ(page.band()->focusWidget(), page.band()->line("put_up"));
  EXPECT_FALSE(page.band()->line("put_up")->message().isEmpty());
  EXPECT_FALSE(page.band()->add());
  EXPECT_EQ(page.band()->line("name")->text(), QStringLiteral("Ferncombe Plain"));
  EXPECT_FALSE(open.can_undo());
  page.band()->line("put_up")->setText(QStringLiteral("50 g"));
  EXPECT_TRUE(page.band()->line("put_up")->commit());
  EXPECT_TRUE(page.band()->problem().contains(QStringLiteral("length")));  // told, and still taken
  QTest::keyClick(page.band(), Qt::Key_Escape);
  EXPECT_FALSE(page.band()->isVisible());
  EXPECT_FALSE(open.can_undo());
}

TEST_F(CandidatesPageTest, AYarnForOneColourOnlyAndTwoStrands) {
  page.tabs()->setCurrentWidget(page.candidates());
  ASSERT_TRUE(page.candidates()->show_candidate(open.pattern().candidates[1].id));
  PartTable* yarns = page.candidates()->yarns();
  ASSERT_EQ(yarns->part_model()->part_count(), 1);
  yarns->part_model()->setData(yarns->part_model()->index(0, 2), QStringLiteral("2"), Qt::EditRole);
  yarns->part_model()->setData(yarns->part_model()->index(0, 0), open.pattern().roles[1].id.value,
                               Qt::EditRole);
  const CandidateYarn& row = open.pattern().candidates[1].yarns.front();
  EXPECT_EQ(row.strands, 2);
  EXPECT_EQ(row.role, open.pattern().roles[1].id);
  wait();
  std::size_t column = 0;
  for (std::size_t at = 0; at < view().heads.size(); ++at)
    if (view().heads[at].candidate == open.pattern().candidates[1].id) column = at;
  ASSERT_GT(column, 0u);
  // Only CC1 changes; the others stay as the pattern has them.
  EXPECT_TRUE(
      said(QStringLiteral("Skeins and last skein"), column).startsWith(QStringLiteral("MC 7 skeins")));
  open.undo();
  open.undo();
  EXPECT_EQ(open.pattern().candidates[1].yarns.front().strands, 1);
}

TEST_F(CandidatesPageTest, AnotherPutUpWithItsPrice) {
  page.tabs()->setCurrentWidget(page.candidates());
  page.candidates()->show_candidate(open.pattern().candidates[1].id);
  PartTable* put_ups = page.candidates()->put_ups();
  put_ups->part_model()->setData(put_ups->part_model()->index(0, 0), QStringLiteral("100 g = 260 m"),
                                 Qt::EditRole);
  put_ups->part_model()->setData(put_ups->part_model()->index(0, 2), QStringLiteral("€9.00"), Qt::EditRole);
  const Yarn* yarn = open.pattern().yarn(open.pattern().candidates[1].yarns.front().yarn);
  ASSERT_EQ(yarn->also_sold.size(), 1u);
  EXPECT_DOUBLE_EQ(yarn->also_sold[0].put_up.length->value.value(), 260);
  ASSERT_TRUE(yarn->also_sold[0].price);
  EXPECT_DOUBLE_EQ(yarn->also_sold[0].price->amount.value, 9);
  put_ups->part_model()->setData(put_ups->part_model()->index(0, 2), QStringLiteral("9.00"), Qt::EditRole);
  EXPECT_TRUE(put_ups->part_model()->bad_reason(0, 2).contains(QStringLiteral("currency")));
}

TEST_F(CandidatesPageTest, HidingAColumnIsOneStepOfUndo) {
  PartTable* list = page.candidates()->list();
  list->part_model()->setData(list->part_model()->index(0, 1), Qt::Unchecked, Qt::CheckStateRole);
  wait();
  EXPECT_EQ(view().heads.size(), 3u);
  EXPECT_EQ(shown_words(open.pattern()), QStringLiteral("pattern and 2 of 4"));
  open.undo();
  wait();
  EXPECT_EQ(view().heads.size(), 4u);
}

TEST_F(CandidatesPageTest, WishesSayWhoMeetsThemAndTheBudgetWantsACurrency) {
  page.tabs()->setCurrentWidget(page.wishes());
  PartTable* wishes = page.wishes()->wishes();
  wishes->part_model()->setData(wishes->part_model()->index(0, 1),
                                static_cast<std::uint32_t>(WishKind::within_budget), Qt::EditRole);
  wishes->part_model()->setData(wishes->part_model()->index(0, 0),
                                static_cast<std::uint32_t>(WishLevel::must), Qt::EditRole);
  ASSERT_EQ(open.pattern().wishes.size(), 1u);
  wait();
  const QString met = wishes->part_model()->cell_text(0, 4);
  EXPECT_TRUE(met.contains(QStringLiteral("Tallowhithe Strand"))) << met.toStdString();
  EXPECT_FALSE(met.contains(QStringLiteral("Brindlecote Smooth"))) << met.toStdString();
  EXPECT_FALSE(page.wishes()->standing()->rows().empty());
  LineField* budget = page.wishes()->budget();
  budget->setText(QStringLiteral("120"));
  EXPECT_FALSE(budget->commit());
  EXPECT_TRUE(budget->message().contains(QStringLiteral("currency")));
  budget->setText(QStringLiteral("€120"));
  EXPECT_TRUE(budget->commit());
  EXPECT_DOUBLE_EQ(open.pattern().budget->amount.value, 120);
  wait();
  EXPECT_TRUE(wishes->part_model()->cell_text(0, 4).contains(QStringLiteral("Brindlecote Smooth")));
}

TEST_F(CandidatesPageTest, TheShoppingListIsOfTheChosenCandidate) {
  page.tabs()->setCurrentWidget(page.buy());
  wait();
  EXPECT_TRUE(page.buy()->list_text().contains(QStringLiteral("Oddmere Fieldspun")));
  page.buy()->choose_candidate(open.pattern().candidates[0].id);
  wait();
  EXPECT_TRUE(page.buy()->list_text().contains(QStringLiteral("Brindlecote Smooth")));
  const auto rows = page.buy()->figures()->rows();
  ASSERT_EQ(rows.size(), 5u);
  EXPECT_EQ(rows[0].figure, QStringLiteral("5"));
  EXPECT_TRUE(rows.back().how.contains(QStringLiteral("€104.00")));
  QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("list.txt"));
  page.buy()->set_path_question([&](QWidget*, const QString&, const QString&) { return path; });
  page.buy()->save_list();
  QFile file(path);
  ASSERT_TRUE(file.open(QIODevice::ReadOnly));
  EXPECT_TRUE(QString::fromUtf8(file.readAll()).contains(QStringLiteral("Brindlecote Smooth")));
  ASSERT_TRUE(page.sheet());
  EXPECT_EQ(page.sheet()->title, page.buy()->sheet()->title);
}

TEST_F(CandidatesPageTest, ChartsByCandidateAndOverAllSizes) {
  page.tabs()->setCurrentWidget(page.charts());
  wait();
  ASSERT_EQ(page.charts()->charts().size(), 4u);
  const BarsData cost = page.charts()->charts()[0]->data();
  ASSERT_EQ(cost.series.size(), 1u);
  ASSERT_EQ(cost.series[0].values.size(), 4u);
  EXPECT_NEAR(*cost.series[0].values[1], 104.0, 1e-9);
  EXPECT_NEAR(*cost.line, 90, 1e-9);
  page.charts()->show_over(CandidateCharts::Over::sizes);
  const BarsData mass = page.charts()->charts()[1]->data();
  ASSERT_EQ(mass.series.size(), 4u);
  ASSERT_EQ(mass.series[0].values.size(), 9u);
  EXPECT_LT(*mass.series[0].values[0], *mass.series[0].values[8]);
  EXPECT_EQ(page.paper_blocks(500).size(), 5u);  // and the key to the hatches
  page.charts()->show_over(CandidateCharts::Over::candidates);
  EXPECT_EQ(page.paper_blocks(500).size(), 4u);
}

TEST_F(CandidatesPageTest, TheTableIsCopiedAndFoundAndSpoken) {
  page.table()->setFocus();
  QTest::keyClick(page.table(), Qt::Key_C, Qt::ControlModifier);
  const QString text = QApplication::clipboard()->text();
  EXPECT_TRUE(text.contains(QStringLiteral("Tallowhithe Strand")));
  EXPECT_TRUE(text.contains(QStringLiteral("To buy\t")));
  EXPECT_TRUE(page.find_next(QStringLiteral("linen")));
  EXPECT_EQ(page.table()->current_candidate(), open.pattern().candidates[1].id);
  EXPECT_TRUE(page.table()
                  ->currentIndex()
                  .data(Qt::AccessibleTextRole)
                  .toString()
                  .startsWith(QStringLiteral("Tallowhithe Strand, ")));
}

TEST(CandidatesPage, WithoutAPatternItSaysWhereToBegin) {
  OpenPattern open;
  CandidatesPage page(open, nullptr);
  page.resize(1280, 800);
  page.show();
  ASSERT_TRUE(QTest::qWaitFor([&] { return !page.is_busy(); }, 60000));
  EXPECT_TRUE(page.attention().isEmpty());
  EXPECT_FALSE(page.sheet());
  page.add_candidate();
  page.band()->line("name")->setText(QStringLiteral("Ferncombe Plain"));
  EXPECT_TRUE(page.band()->add());
  ASSERT_TRUE(QTest::qWaitFor([&] { return !page.is_busy(); }, 60000));
  EXPECT_EQ(open.pattern().candidates.size(), 1u);
}

TEST_F(CandidatesPageTest, AHundredCandidatesStandAndScroll) {
  open.apply(QStringLiteral("many"), [](Pattern& pattern) {
    for (int number = 0; number < 96; ++number) {
      Yarn yarn = pattern.yarns.front();
      yarn.name = "Ferncombe " + std::to_string(number);
      add_candidate_yarn(pattern, yarn, {}, 1);
    }
  });
  wait();
  EXPECT_EQ(view().heads.size(), 100u);  // one of the sample's four is not shown
  EXPECT_GE(page.table()->columnWidth(50), scaled(&page, 200));
}

}  // namespace
}  // namespace skeinproof
