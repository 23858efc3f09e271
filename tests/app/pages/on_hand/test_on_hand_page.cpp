// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QApplication>
#include <QCheckBox>
#include <QLineEdit>
#include <QTabWidget>
#include <QTest>

#include "app/document/open_pattern.h"
#include "app/pages/on_hand/amount_text.h"
#include "app/pages/on_hand/become_pane.h"
#include "app/pages/on_hand/on_hand_form.h"
#include "app/pages/on_hand/on_hand_page.h"
#include "app/pages/on_hand/on_hand_table.h"
#include "app/pages/on_hand/verdict_table.h"
#include "app/widgets/bound_fields.h"
#include "app/widgets/figure_list.h"
#include "app/widgets/line_field.h"
#include "app/widgets/part_table.h"
#include "app/widgets/part_table_model.h"
#include "tests/app/support/quillmarsh.h"

namespace skeinproof {
namespace {

YarnOnHand amount(const char* text) {
  YarnOnHand yarn;
  const auto read = read_amount(QString::fromUtf8(text), yarn);
  EXPECT_TRUE(read) << text << ": " << (read ? "" : read.error().message());
  return yarn;
}

TEST(AmountText, SkeinsAndWeights) {
  const YarnOnHand yarn = amount("5 skeins + 41 g");
  EXPECT_EQ(yarn.length_by, LengthBy::skeins_and_weight);
  EXPECT_DOUBLE_EQ(yarn.whole_skeins->value, 5);
  ASSERT_EQ(yarn.parts.size(), 1u);
  EXPECT_DOUBLE_EQ(yarn.parts[0].value.value(), 41);
  EXPECT_EQ(amount_text(yarn, {}), QStringLiteral("5 skeins + 41 g"));
  EXPECT_DOUBLE_EQ(amount("2").whole_skeins->value, 2);
  EXPECT_EQ(amount("44 g and 30 g").parts.size(), 2u);
  EXPECT_EQ(amount_text(amount("1 ball"), {}), QStringLiteral("1 skein"));
}

TEST(AmountText, OtherWaysOfMeasuring) {
  EXPECT_EQ(amount("126 m").length_by, LengthBy::typed_length);
  const YarnOnHand reel = amount("300 turns of 1.5 m");
  EXPECT_EQ(reel.length_by, LengthBy::reel);
  EXPECT_DOUBLE_EQ(reel.turns->value, 300);
  EXPECT_DOUBLE_EQ(reel.circumference->value.value(), 1.5);
  EXPECT_EQ(amount("7 wraps in 1 cm").length_by, LengthBy::wraps);
  for (const char* text :
       {"5 skeins + 41 g", "126 m", "300 turns of 1.5 m", "7 wraps in 1 cm", "44 g + 30 g"})
    EXPECT_EQ(amount_text(amount(text), {}), QString::fromUtf8(text));
}

TEST(AmountText, WhatIsUnclearIsToldAndKeepsWhatWas) {
  YarnOnHand yarn = amount("5 skeins");
  const YarnOnHand before = yarn;
  for (const char* text : {"44 + 30 g", "some", "-3 g", "2 skeins + 3 skeins", "-4 skeins"}) {
    EXPECT_FALSE(read_amount(QString::fromUtf8(text), yarn)) << text;
    EXPECT_EQ(yarn, before) << text;
  }
}

class OnHandPageTest : public testing::Test {
 protected:
  OnHandPageTest() : page(open, nullptr) {
    page.resize(1400, 860);
    page.show();
    open.replace(quillmarsh_draft());
    wait();
  }
  void wait() {
    ASSERT_TRUE(QTest::qWaitFor([this] { return !page.is_busy(); }, 60000));
  }
  const std::vector<VerdictRow>& verdicts() const { return page.verdicts()->verdicts()->rows(); }
  QString cell(int row, int column) const { return page.table()->part_model()->cell_text(row, column); }
  void set(int row, int column, const QVariant& value) {
    page.table()->part_model()->setData(page.table()->part_model()->index(row, column), value, Qt::EditRole);
    wait();
  }
  bool shows(const QString& words) const {
    for (const QString& field : page.form()->shown_fields())
      if (field == words) return true;
    return false;
  }

  OpenPattern open;
  OnHandPage page;
};

TEST_F(OnHandPageTest, VerdictsInWordsForTheSizeItIsMeantFor) {
  ASSERT_EQ(verdicts().size(), 4u);
  EXPECT_EQ(verdicts()[0].word, QStringLiteral("Enough"));
  EXPECT_EQ(verdicts()[1].word, QStringLiteral("Enough"));
  EXPECT_EQ(verdicts()[2].word, QStringLiteral("Enough"));
  EXPECT_EQ(verdicts()[3].word, QStringLiteral("Not enough"));
  EXPECT_EQ(verdicts()[3].short_or_over, QStringLiteral("12.1 m short"));
  EXPECT_EQ(page.attention(), QStringLiteral("Not enough"));
  EXPECT_EQ(page.size()->currentText(), QStringLiteral("4"));
  EXPECT_GT(verdicts()[0].have, verdicts()[0].high);
  EXPECT_LT(verdicts()[3].have, verdicts()[3].low);
}

TEST_F(OnHandPageTest, CountsAloneGiveAVerdictToo) {
  open.apply(QStringLiteral("counts only"), [](Pattern& pattern) {
    pattern.pieces.clear();
    pattern.weighings.clear();
    pattern.given_parts.clear();
    pattern.readings.clear();
    pattern.changes.clear();
  });
  wait();
  ASSERT_EQ(verdicts().size(), 4u);
  EXPECT_EQ(verdicts()[2].word, QStringLiteral("Too close to call"));
  EXPECT_FALSE(verdicts()[2].settled_by.isEmpty());
  EXPECT_TRUE(verdicts()[2].has_range);
}

TEST_F(OnHandPageTest, ARowIsTypedByKeyboard) {
  const std::size_t before = open.pattern().on_hand.size();
  page.enter();
  page.table()->add();
  auto* editor = page.table()->viewport()->findChild<QLineEdit*>();
  ASSERT_NE(editor, nullptr);
  QTest::keyClicks(editor, QStringLiteral("Oddmere Fieldspun"));
  QTest::keyClick(editor, Qt::Key_Return);
  QApplication::processEvents();  // a cell takes its text after the key
  wait();
  ASSERT_EQ(open.pattern().on_hand.size(), before + 1);
  const int row = static_cast<int>(before);
  const YarnOnHand& added = open.pattern().on_hand[before];
  EXPECT_EQ(added.yarn, open.pattern().roles.front().yarn);
  for (const Yarn& yarn : open.pattern().yarns) EXPECT_FALSE(yarn.name.empty());
  set(row, 1, QStringLiteral("ember 40"));
  set(row, 3, QStringLiteral("1 skein + 4 g"));
  EXPECT_EQ(open.pattern().on_hand[before].shade.name, "Ember");
  EXPECT_EQ(open.pattern().on_hand[before].role, open.pattern().roles[3].id);
  // 175 m and 4 g of 3.5 m more of CC3: it will do now.
  EXPECT_EQ(verdicts()[3].word, QStringLiteral("Enough"));
  EXPECT_TRUE(page.attention().isEmpty());
  while (open.can_undo()) open.undo();
  wait();
  EXPECT_EQ(open.pattern().on_hand.size(), before);
  EXPECT_EQ(page.attention(), QStringLiteral("Not enough"));
}

TEST_F(OnHandPageTest, ANewNameMakesANewYarnAndItsPutUpIsAsked) {
  const int row = static_cast<int>(open.pattern().on_hand.size());
  set(row, 0, QStringLiteral("Ferncombe Oddments"));
  set(row, 3, QStringLiteral("60 g"));
  EXPECT_EQ(open.pattern().yarns.back().name, "Ferncombe Oddments");
  page.table()->set_current_key(open.pattern().on_hand.back().id.value);
  EXPECT_FALSE(page.form()->problem().isEmpty());
  EXPECT_EQ(cell(row, 6), QStringLiteral("–"));
  auto* band = qobject_cast<LineField*>(page.form()->field("band"));
  ASSERT_NE(band, nullptr);
  ASSERT_TRUE(band->isEnabled());
  band->setText(QStringLiteral("50 g = 200 m"));
  EXPECT_TRUE(band->commit());
  wait();
  EXPECT_TRUE(page.form()->problem().isEmpty());
  EXPECT_TRUE(cell(row, 6).startsWith(QStringLiteral("240.0 m"))) << cell(row, 6).toStdString();
}

TEST_F(OnHandPageTest, OnlyTheFieldsOfTheWayAreShown) {
  page.table()->set_current_key(open.pattern().on_hand.front().id.value);
  EXPECT_TRUE(shows(QStringLiteral("Whole skeins")));
  EXPECT_FALSE(shows(QStringLiteral("Turns")));
  set(0, 4, static_cast<std::uint32_t>(LengthBy::reel));
  EXPECT_FALSE(shows(QStringLiteral("Whole skeins")));
  EXPECT_TRUE(shows(QStringLiteral("Turns")));
  EXPECT_TRUE(page.form()->problem().contains(QStringLiteral("turns"), Qt::CaseInsensitive));
  set(0, 3, QStringLiteral("300 turns"));
  EXPECT_TRUE(page.form()->problem().contains(QStringLiteral("circumference"), Qt::CaseInsensitive))
      << page.form()->problem().toStdString();
  set(0, 4, static_cast<std::uint32_t>(LengthBy::wraps));
  EXPECT_TRUE(shows(QStringLiteral("Wraps in 1 cm")));
  EXPECT_FALSE(shows(QStringLiteral("Weighed")));
}

TEST_F(OnHandPageTest, TwoLotsHaveAPlan) {
  page.tabs()->setCurrentWidget(page.lots());
  QString all;
  for (const FigureRow& row : page.lots()->rows())
    all += row.name + QLatin1Char(' ') + row.how + QLatin1Char('\n');
  EXPECT_TRUE(all.contains(QStringLiteral("Lot X"))) << all.toStdString();
  EXPECT_TRUE(all.contains(QStringLiteral("Lot Y"))) << all.toStdString();
  EXPECT_TRUE(all.contains(QStringLiteral("MC: every piece in one lot"))) << all.toStdString();
}

TEST_F(OnHandPageTest, WhatItCouldBecomeFollowsTheRules) {
  page.tabs()->setCurrentIndex(page.tabs()->indexOf(page.lots()) - 1);
  wait();
  ASSERT_FALSE(page.become()->figures()->rows().empty());
  page.become()->exchange()->click();
  EXPECT_FALSE(open.pattern().sharing.exchange_roles);
  EXPECT_EQ(open.undo_label(), QStringLiteral("yarns keep their roles"));
  PartTable* given = page.become()->given_parts();
  given->part_model()->setData(given->part_model()->index(0, 0), open.pattern().pieces[0].id.value,
                               Qt::EditRole);
  ASSERT_EQ(open.pattern().given_parts.size(), 1u);
  EXPECT_EQ(open.pattern().given_parts[0].piece, open.pattern().pieces[0].id);
  wait();
}

TEST_F(OnHandPageTest, ItIsMeantForAnotherSizeWithUndo) {
  const int at = page.size()->findText(QStringLiteral("1"));
  ASSERT_GE(at, 0);
  page.size()->setCurrentIndex(at);
  emit page.size()->activated(at);
  wait();
  EXPECT_EQ(open.pattern().on_hand_size, open.pattern().sizes[0].id);
  EXPECT_EQ(open.undo_label(), QStringLiteral("yarn on hand meant for size 1"));
  open.undo();
  wait();
  EXPECT_EQ(page.size()->currentText(), QStringLiteral("4"));
}

TEST_F(OnHandPageTest, ItPrintsAndIsFound) {
  const auto sheet = page.sheet();
  ASSERT_TRUE(sheet);
  EXPECT_EQ(sheet->subtitle, "Yarn on hand, size 4");
  EXPECT_GE(sheet->parts.size(), 2u);
  EXPECT_TRUE(page.find_next(QStringLiteral("handspun")));
  EXPECT_EQ(page.table()->current_row(), 4);
  EXPECT_TRUE(page.go_to(open.pattern().on_hand[1].id.value));
  EXPECT_EQ(page.table()->current_row(), 1);
}

TEST(OnHandPage, WithoutYarnOnHandItSaysWhereToBegin) {
  OpenPattern open;
  OnHandPage page(open, nullptr);
  page.resize(1280, 800);
  page.show();
  ASSERT_TRUE(QTest::qWaitFor([&] { return !page.is_busy(); }, 60000));
  EXPECT_TRUE(page.attention().isEmpty());
  EXPECT_FALSE(page.sheet());
  EXPECT_EQ(page.verdicts()->verdicts()->rowCount(), 0);
}

}  // namespace
}  // namespace skeinproof
