// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QApplication>
#include <QClipboard>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QSignalSpy>
#include <QTest>
#include <QTreeWidget>

#include "app/document/open_pattern.h"
#include "app/pages/queries/finding_detail.h"
#include "app/pages/queries/finding_tree.h"
#include "app/pages/queries/manuscript_view.h"
#include "app/pages/queries/queries_page.h"
#include "app/widgets/figure_list.h"
#include "core/sheets/write_sheet.h"
#include "tests/support/samples.h"

namespace skeinproof {
namespace {

class QueriesPageTest : public ::testing::Test {
 protected:
  QueriesPageTest() : page(open, nullptr) {
    page.resize(1280, 800);
    page.show();
    open.replace(testing::quillmarsh());
    wait();
  }
  void wait() {
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
  EXPECT_TRUE(rows().contains(QStringLiteral("“8, 7” → “7, 8”")));
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
  EXPECT_TRUE(asked.contains(QStringLiteral("CC2: 8 values for 9 sizes"))) << asked.toStdString();
  EXPECT_NE(open.pattern(), before);
  open.undo();
  EXPECT_EQ(open.pattern(), before);
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
