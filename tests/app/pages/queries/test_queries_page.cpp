// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QApplication>
#include <QClipboard>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QSignalSpy>
#include <QTabWidget>
#include <QTableWidget>
#include <QTest>
#include <QTreeWidget>

#include "app/document/open_pattern.h"
#include "app/pages/queries/draft_intake.h"
#include "app/pages/queries/drafts_view.h"
#include "app/pages/queries/finding_detail.h"
#include "app/pages/queries/finding_tree.h"
#include "app/pages/queries/findings_pane.h"
#include "app/pages/queries/manuscript_pane.h"
#include "app/pages/queries/manuscript_view.h"
#include "app/pages/queries/queries_page.h"
#include "app/pages/queries/statement_list.h"
#include "app/pages/queries/statement_strip.h"
#include "app/widgets/bound_fields.h"
#include "app/widgets/figure_list.h"
#include "app/widgets/ink.h"
#include "core/sheets/write_sheet.h"
#include "tests/support/samples.h"

namespace skeinproof {
namespace {

class QueriesPageTest : public ::testing::Test {
 protected:
  QueriesPageTest() : page(open, nullptr) {
    page.resize(1500, 900);
    page.show();
    open.replace(testing::quillmarsh());
    wait();
  }
  void wait() {
    ASSERT_TRUE(QTest::qWaitFor([this] { return !page.intake()->is_busy(); }, 120000));
    QSignalSpy reviewed(page.desk(), &ReviewDesk::reviewed);
    while (!page.desk()->is_up_to_date()) ASSERT_TRUE(reviewed.wait(120000));
  }
  const Reviewed& latest() const { return *page.desk()->latest(); }
  std::size_t cause_of(const std::string& check, const std::string& role = {}) const {
    for (std::size_t cause = 0; cause < latest().review.causes.size(); ++cause)
      for (std::size_t index : latest().review.causes[cause].findings) {
        const Finding& finding = latest().review.findings[index];
        if (finding.check == check && (role.empty() || finding.roles == std::vector<std::string>{role}))
          return cause;
      }
    return static_cast<std::size_t>(-1);
  }
  void choose(const std::string& check, const std::string& role = {}) {
    page.tree()->choose(cause_of(check, role));
    ASSERT_EQ(page.tree()->chosen(), cause_of(check, role));
  }
  QString rows() const { return page.detail()->figures()->as_text(); }

  OpenPattern open;
  QueriesPage page;
};

TEST_F(QueriesPageTest, TheFindingsStandUnderTheirSeverity) {
  ASSERT_EQ(page.tree()->topLevelItemCount(), 4);
  EXPECT_TRUE(page.tree()->topLevelItem(0)->text(0).startsWith(QStringLiteral("Stop")));
  EXPECT_EQ(page.tree()->topLevelItem(0)->childCount(), 8);
  EXPECT_EQ(page.attention(), QStringLiteral("12 open"));
  EXPECT_EQ(page.manuscript()->margin_words(1), QStringLiteral("Q2"));
}

TEST_F(QueriesPageTest, AFindingOpensToItsWorkingAndLikelySlip) {
  choose("L3");
  EXPECT_TRUE(rows().contains(QStringLiteral("size 6 needs 1304.4 m, 8 skeins"))) << rows().toStdString();
  EXPECT_TRUE(rows().contains(QStringLiteral("exchange “8” and “7”")));
  EXPECT_TRUE(rows().contains(QStringLiteral("total line")));
  choose("G11");
  EXPECT_TRUE(rows().contains(QStringLiteral("Cannot all be right"))) << rows().toStdString();
}

TEST_F(QueriesPageTest, TakingTheChangeClosesTheCauseAndUndoOpensIt) {
  choose("L3");
  page.detail()->take_change();
  wait();
  EXPECT_EQ(cause_of("L3"), static_cast<std::size_t>(-1));
  EXPECT_NE(latest().review.text.find("(7, 8, 9, 9, 10)"), std::string::npos);
  EXPECT_NE(open.pattern().draft()->text.find("(8, 7, 9, 9, 10)"), std::string::npos);
  open.undo();
  wait();
  EXPECT_NE(cause_of("L3"), static_cast<std::size_t>(-1));
}

TEST_F(QueriesPageTest, AnAnswerIsRehearsedBeforeItIsRecorded) {
  choose("N1", "CC1");
  QLineEdit* answer = page.detail()->answer_field();
  QSignalSpy rehearsed(page.detail(), &FindingDetail::rehearsed);
  answer->setFocus();
  answer->selectAll();
  QTest::keyClicks(answer, QStringLiteral("2"));
  ASSERT_TRUE(rehearsed.count() > 0 || rehearsed.wait(60000));
  EXPECT_TRUE(page.detail()->rehearsal_words().contains(QStringLiteral("N1")));
  EXPECT_TRUE(page.detail()->rehearsal_words().contains(QStringLiteral("L6")));
  EXPECT_TRUE(page.detail()->rehearsal_words().contains(QStringLiteral("opens nothing")));
  EXPECT_TRUE(open.pattern().queries.empty());
  QTest::keyClick(answer, Qt::Key_Return);
  wait();
  EXPECT_EQ(cause_of("N1", "CC1"), static_cast<std::size_t>(-1));
}

TEST_F(QueriesPageTest, KeepingNeedsAReasonAndCanBeTakenBack) {
  choose("R12");
  page.detail()->keep();
  EXPECT_TRUE(open.pattern().queries.empty());
  page.detail()->reason_field()->setText(QStringLiteral("tone on tone is wanted"));
  page.detail()->keep();
  wait();
  EXPECT_EQ(latest().record.decisions[cause_of("R12")].state, DecisionState::kept);
  EXPECT_EQ(page.attention(), QStringLiteral("11 open"));
  page.tree()->show_only(QueriesShown::kept, {}, {});
  choose("R12");
  EXPECT_TRUE(rows().contains(QStringLiteral("tone on tone is wanted")));
  page.detail()->reopen();
  wait();
  EXPECT_EQ(page.attention(), QStringLiteral("12 open"));
}

TEST_F(QueriesPageTest, TickingPutsAFindingOnTheSheet) {
  const auto sheet = [&] { return QString::fromStdString(plain_text(*page.sheet())); };
  EXPECT_FALSE(sheet().contains(QStringLiteral("hardly differ in lightness")));
  choose("R12");
  QTest::keyClick(page.tree(), Qt::Key_Space);
  wait();
  EXPECT_TRUE(sheet().contains(QStringLiteral("hardly differ in lightness")));
}

TEST_F(QueriesPageTest, WhatIsReadAndNotCheckedIsListed) {
  page.manuscript_pane()->tabs()->setCurrentWidget(page.manuscript_pane()->statements());
  EXPECT_GT(page.statements()->topLevelItemCount(), 40);
  const auto& not_checked = latest().review.not_checked;
  EXPECT_TRUE(std::any_of(not_checked.begin(), not_checked.end(),
                          [](const NotChecked& one) { return one.check == "T4"; }));
}

TEST_F(QueriesPageTest, APastedTextIsTheNextDraft) {
  QApplication::clipboard()->setText(QStringLiteral("MC Peat 08: 5 (5, 6, 7) (7, 8, 9, 9, 10) skeins."));
  page.paste_draft();
  wait();
  ASSERT_EQ(open.pattern().drafts->size(), 2u);
  EXPECT_EQ(open.pattern().draft()->name, "draft 2");
  EXPECT_EQ(latest().review.text, "MC Peat 08: 5 (5, 6, 7) (7, 8, 9, 9, 10) skeins.");
  open.undo();
  wait();
  EXPECT_EQ(open.pattern().drafts->size(), 1u);
  QApplication::clipboard()->clear();
  page.paste_draft();
  EXPECT_EQ(open.pattern().drafts->size(), 1u);
}

TEST_F(QueriesPageTest, WhatWasReadIsTakenOverAfterALook) {
  QString asked;
  page.set_questions({}, [&](QWidget*, const QString& changes) {
    asked = changes;
    return true;
  });
  const Pattern before = open.pattern();
  page.take_over();
  EXPECT_FALSE(page.manuscript_pane()->progress_words().isEmpty());
  wait();
  EXPECT_TRUE(page.manuscript_pane()->progress_words().isEmpty());
  EXPECT_TRUE(asked.contains(QStringLiteral("CC2: 8 values for 9 sizes"))) << asked.toStdString();
  EXPECT_NE(open.pattern(), before);
  open.undo();
  EXPECT_EQ(open.pattern(), before);
}

TEST_F(QueriesPageTest, ALongTextIsTakenInWhileThePageIsWorkedOn) {
  std::string text;
  while (text.size() < 2'000'000) text += "<p>With MC, knit to the end of the round, and rest.</p>\n";
  page.intake()->add(QByteArray::fromStdString(text), QStringLiteral("long.html"));
  EXPECT_TRUE(page.intake()->is_busy());
  EXPECT_TRUE(page.manuscript_pane()->progress_words().contains(QStringLiteral("long.html")));
  // An edit made meanwhile is kept, and so is a second text.
  open.apply(QStringLiteral("title"), [](Pattern& pattern) { pattern.title = "typed meanwhile"; });
  page.intake()->add("Yarn: Fellmarl.", {});
  ASSERT_TRUE(QTest::qWaitFor([this] { return !page.intake()->is_busy(); }, 120000));
  EXPECT_EQ(open.pattern().title, "typed meanwhile");
  ASSERT_EQ(open.pattern().drafts->size(), 3u);
  EXPECT_EQ(open.pattern().drafts->at(1).source, "long.html");
  EXPECT_EQ(open.pattern().draft()->text, "Yarn: Fellmarl.");
  open.undo();
  open.undo();
  EXPECT_EQ(open.pattern().drafts->size(), 1u);
  wait();
}

TEST_F(QueriesPageTest, WhatIsTakenInCanBeGivenUp) {
  std::string text;
  while (text.size() < 2'000'000) text += "<p>With MC, knit to the end of the round, and rest.</p>\n";
  page.intake()->add(QByteArray::fromStdString(text), QStringLiteral("long.html"));
  page.intake()->add("Yarn: Fellmarl.", {});
  QSignalSpy said(&page, &Page::says);
  page.intake()->stop();
  EXPECT_FALSE(page.intake()->is_busy());
  EXPECT_EQ(said.count(), 1);
  page.intake()->add("Yarn: Oddmere.", {});
  EXPECT_TRUE(page.intake()->is_busy());
  wait();
  ASSERT_EQ(open.pattern().drafts->size(), 2u);
  EXPECT_EQ(open.pattern().draft()->text, "Yarn: Oddmere.");
}

TEST_F(QueriesPageTest, TheButtonThatTookADraftInHandsOnToTheFindings) {
  page.activateWindow();
  ASSERT_TRUE(QTest::qWaitForWindowActive(&page));
  page.manuscript_pane()->start();
  page.intake()->add("Yarn: Fellmarl (100% wool; 175 m / 197 yd per 50 g skein).", {});
  wait();
  EXPECT_TRUE(page.tree()->hasFocus());
  // Who types is left alone.
  page.detail()->reason_field()->setFocus();
  page.intake()->add("Yarn: Oddmere.", {});
  wait();
  EXPECT_TRUE(page.detail()->reason_field()->hasFocus());
}

TEST_F(QueriesPageTest, AFileThatCannotBeReadSaysSoAndChangesNothing) {
  QSignalSpy said(&page, &Page::says);
  page.intake()->add("PK, and then nothing", QStringLiteral("broken.docx"));
  wait();
  ASSERT_EQ(said.count(), 1);
  EXPECT_EQ(open.pattern().drafts->size(), 1u);
}

TEST_F(QueriesPageTest, NumbersAreKeptOnceTheSheetWentOut) {
  const std::size_t before = cause_of("P1");
  const std::string number = latest().record.decisions[before].number;
  const std::string later = latest().record.decisions[cause_of("R1")].number;
  page.copy_sheet();
  EXPECT_TRUE(QApplication::clipboard()->text().contains(QString::fromStdString(number)));
  EXPECT_FALSE(open.can_undo());
  EXPECT_FALSE(open.is_saved());
  wait();
  choose("P1");
  page.detail()->take_change();
  wait();
  EXPECT_EQ(cause_of("P1"), static_cast<std::size_t>(-1));
  EXPECT_EQ(latest().record.decisions[cause_of("R1")].number, later);
  open.undo();
  wait();
  EXPECT_EQ(latest().record.decisions[cause_of("P1")].number, number);
  EXPECT_TRUE(latest().record.decisions[cause_of("P1")].asked);
}

TEST_F(QueriesPageTest, OnlyTheQuerySheetAsks) {
  QTabWidget* tabs = page.findings_pane()->tabs();
  tabs->setCurrentWidget(page.findings_pane()->drafts());
  page.sheet_went_out();
  EXPECT_TRUE(open.pattern().queries.empty());
  tabs->setCurrentIndex(0);
  page.sheet_went_out();
  EXPECT_FALSE(open.pattern().queries.empty());
}

TEST_F(QueriesPageTest, AsProposedHasTheChangesLaidIn) {
  page.manuscript_pane()->tabs()->setCurrentWidget(page.manuscript_pane()->proposed());
  QPlainTextEdit* proposed = page.manuscript_pane()->proposed();
  EXPECT_TRUE(proposed->toPlainText().contains(QStringLiteral("175 m / 191 yd")));
  const auto marks = proposed->extraSelections();
  EXPECT_EQ(static_cast<std::size_t>(marks.size()), latest().proposed.changes.size());
  EXPECT_TRUE(std::any_of(marks.begin(), marks.end(), [](const QTextEdit::ExtraSelection& mark) {
    return mark.cursor.selectedText() == QStringLiteral("191");
  }));
}

TEST_F(QueriesPageTest, TheStatementUnderTheCursorStandsAlongTheSizes) {
  const auto strip = [&](int row, int column) {
    return page.manuscript_pane()->strip()->table()->item(row, column)->text();
  };
  choose("L3");
  EXPECT_TRUE(page.manuscript_pane()->strip()->title().contains(QStringLiteral("9 values for 9 sizes")));
  EXPECT_EQ(strip(0, 4), QStringLiteral("8"));
  EXPECT_EQ(strip(3, 4), QStringLiteral("7"));
  EXPECT_EQ(strip(3, 5), QStringLiteral("8"));
  page.manuscript()->go_to(latest().review.text.find("32 (35¾") + 4);
  EXPECT_EQ(strip(0, 1), QStringLiteral("35¾"));
  EXPECT_EQ(strip(1, 1), QStringLiteral("35.75"));
}

TEST_F(QueriesPageTest, WhatWasNotUnderstoodCanBeToldAndTakenBack) {
  QApplication::clipboard()->setText(
      QStringLiteral("Sizes 1 (2, 3).\nMC Peat 08: 5 (5, 6) skeins.\nThe Brumble Zorp of 12 Quix."));
  page.paste_draft();
  wait();
  StatementList* list = page.manuscript_pane()->statements();
  page.manuscript_pane()->tabs()->setCurrentWidget(list);
  ASSERT_FALSE(latest().review.reading.not_understood.empty());
  list->next_not_understood();
  list->kinds()->setCurrentIndex(list->kinds()->findText(QStringLiteral("count")));
  emit list->kinds()->chosen(0);
  EXPECT_FALSE(list->whose()->isHidden());
  list->tell();
  EXPECT_TRUE(open.pattern().draft()->tellings.empty()) << "a count is of a colour";
  list->whose()->setText(QStringLiteral("CC1"));
  list->tell();
  ASSERT_EQ(open.pattern().draft()->tellings.size(), 1u);
  EXPECT_EQ(open.pattern().draft()->tellings[0].means, "count");
  EXPECT_EQ(open.pattern().draft()->tellings[0].of, "CC1");
  wait();
  const auto told = [&](const Statement& one) {
    return one.kind == StatementKind::count && one.subject == "CC1";
  };
  const auto& statements = latest().review.reading.statements;
  EXPECT_TRUE(std::any_of(statements.begin(), statements.end(), told));
  for (int row = 0; row < list->table()->topLevelItemCount(); ++row)
    if (list->table()->topLevelItem(row)->text(1) == QStringLiteral("count, told"))
      list->table()->setCurrentItem(list->table()->topLevelItem(row));
  list->take_back();
  EXPECT_TRUE(open.pattern().draft()->tellings.empty());
  wait();
}

TEST_F(QueriesPageTest, TwoDraftsStandBesideEachOther) {
  QString text = QString::fromStdString(open.pattern().draft()->text);
  page.intake()->add(text.replace(QStringLiteral("197 yd"), QStringLiteral("191 yd")).toUtf8(), {});
  wait();
  DraftsView* drafts = page.findings_pane()->drafts();
  QSignalSpy compared(drafts, &DraftsView::compared);
  page.findings_pane()->tabs()->setCurrentWidget(drafts);
  ASSERT_TRUE(compared.count() > 0 || compared.wait(60000));
  const QTreeWidgetItem* statements = drafts->table()->topLevelItem(0);
  ASSERT_EQ(statements->childCount(), 1);
  EXPECT_TRUE(statements->child(0)->text(2).contains(QStringLiteral("197")));
  EXPECT_TRUE(statements->child(0)->text(3).contains(QStringLiteral("191")));
  EXPECT_EQ(drafts->table()->topLevelItem(3)->childCount(), 1) << drafts->summary().toStdString();
  ASSERT_TRUE(page.sheet());
  EXPECT_TRUE(QString::fromStdString(plain_text(*page.sheet())).contains(QStringLiteral("197")));
  compared.clear();
  drafts->compare_blocks();
  ASSERT_TRUE(compared.wait(60000));
  EXPECT_TRUE(drafts->summary().contains(QStringLiteral("Struck through")));
  EXPECT_FALSE(drafts->words()->toPlainText().isEmpty());
}

TEST_F(QueriesPageTest, InANarrowWindowTheFindingThenBothBecomeTabs) {
  EXPECT_FALSE(page.findings_pane()->detail_in_tab());
  page.resize(scaled(&page, 1100), 700);
  EXPECT_TRUE(page.findings_pane()->detail_in_tab());
  EXPECT_TRUE(page.manuscript()->isVisible());
  EXPECT_TRUE(page.tree()->isVisible());
  QTest::keyClick(page.tree(), Qt::Key_Return);
  EXPECT_TRUE(page.detail()->isVisible());
  page.resize(scaled(&page, 700), 600);
  EXPECT_NE(page.manuscript()->isVisible(), page.findings_pane()->isVisible());
  EXPECT_LE(page.minimumSizeHint().width(), page.width());
  page.resize(scaled(&page, 1400), 900);
  EXPECT_TRUE(page.manuscript()->isVisible());
  EXPECT_TRUE(page.tree()->isVisible());
  EXPECT_TRUE(page.detail()->isVisible());
}

TEST_F(QueriesPageTest, WithoutADraftTheBlockItselfIsChecked) {
  Pattern pattern = testing::quillmarsh();
  pattern.drafts = {};
  open.replace(std::move(pattern));
  wait();
  EXPECT_NE(latest().review.text.find("Oddmere Fieldspun"), std::string::npos);
  EXPECT_TRUE(page.attention().isEmpty());
}

}  // namespace
}  // namespace skeinproof
