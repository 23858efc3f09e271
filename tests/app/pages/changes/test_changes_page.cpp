// SPDX-License-Identifier: GPL-3.0-or-later
// The figures of the changed sample are worked out by a separate script from its stitch counts.
#include <gtest/gtest.h>

#include <QApplication>
#include <QCheckBox>
#include <QLabel>
#include <QListView>
#include <QMenu>
#include <QPushButton>
#include <QRadioButton>
#include <QSet>
#include <QTabWidget>
#include <QTest>

#include "app/document/open_pattern.h"
#include "app/pages/changes/adopt_strip.h"
#include "app/pages/changes/change_form.h"
#include "app/pages/changes/change_list.h"
#include "app/pages/changes/change_words.h"
#include "app/pages/changes/changes_page.h"
#include "app/pages/changes/effect_table.h"
#include "app/pages/changes/on_hand.h"
#include "app/pages/changes/run_out_pane.h"
#include "app/pages/changes/save_skein_pane.h"
#include "app/widgets/figure_list.h"
#include "app/widgets/line_field.h"
#include "app/widgets/part_table.h"
#include "app/widgets/part_table_model.h"
#include "app/widgets/quantity_field.h"
#include "core/need/bench_changes.h"
#include "tests/app/support/quillmarsh.h"

namespace skeinproof {
namespace {

class ChangesPageTest : public testing::Test {
 protected:
  ChangesPageTest() : page(open, nullptr) {
    page.resize(1280, 800);
    page.show_tab(page.run_out());  // the ways to save a skein are searched while they are seen
    page.show();
    open.replace(quillmarsh_draft());
    wait();
  }

  void wait() {
    ASSERT_TRUE(QTest::qWaitFor([this] { return !page.is_busy(); }, 60000));
  }
  void choose(const char* field, const QString& text) {
    auto* list = qobject_cast<ChoiceField*>(page.form()->field(field));
    ASSERT_NE(list, nullptr) << field;
    const int at = list->findText(text);
    ASSERT_GE(at, 0) << text.toStdString();
    list->setCurrentIndex(at);
    emit list->activated(at);
    wait();
  }
  void type(const char* field, const QString& text) {
    auto* line = qobject_cast<QuantityField*>(page.form()->field(field));
    ASSERT_NE(line, nullptr) << field;
    line->setText(text);
    QTest::keyClick(line, Qt::Key_Return);
    wait();
  }
  void answer(CountsAre counts) {
    const auto buttons = page.form()->findChildren<QRadioButton*>();
    ASSERT_EQ(buttons.size(), 2);
    buttons[counts == CountsAre::kept ? 0 : 1]->click();
    wait();
  }
  void add(ChangeKind kind) {
    page.add(kind);
    wait();
  }
  void longer_body() {
    add(ChangeKind::longer_piece);
    choose("piece", QStringLiteral("Body"));
    type("by", QStringLiteral("5 cm"));
  }
  const EffectRow& effect(std::size_t role) const { return page.effect()->effect()->rows()[role]; }
  QString does(int row) const { return page.list()->part_model()->cell_text(row, 2); }
  QString words(int row) const { return page.list()->part_model()->cell_text(row, 1); }
  const BenchChange& change(std::size_t at) const { return open.pattern().changes[at]; }

  OpenPattern open;
  ChangesPage page;
};

TEST_F(ChangesPageTest, WithoutAChangeTheNeedStandsAsItIs) {
  ASSERT_EQ(page.effect()->effect()->rowCount(), 5);
  EXPECT_EQ(effect(0).planned.words(), QStringLiteral("1,202.9"));
  EXPECT_EQ(effect(0).fill.words(), QStringLiteral("6.87"));
  EXPECT_EQ(effect(0).skeins.words(), QStringLiteral("7"));
  EXPECT_EQ(effect(4).skeins.words(), QStringLiteral("11"));
  EXPECT_TRUE(page.attention().isEmpty());
  EXPECT_FALSE(open.can_undo());
}

TEST_F(ChangesPageTest, ALongerBodyCrossesAStep) {
  longer_body();
  EXPECT_EQ(words(0), QStringLiteral("Body 5 cm longer"));
  EXPECT_EQ(does(0), QStringLiteral("MC +79.6 m"));
  EXPECT_EQ(effect(0).planned.words(), QStringLiteral("1,202.9 → 1,286.5"));
  EXPECT_EQ(effect(0).knitted_more, QStringLiteral("+79.6"));
  EXPECT_EQ(effect(0).planned_more, QStringLiteral("+83.5"));
  EXPECT_EQ(effect(0).fill.words(), QStringLiteral("6.87 → 7.35"));
  EXPECT_EQ(effect(0).skeins.words(), QStringLiteral("7 → 8"));
  EXPECT_EQ(effect(0).step(), QStringLiteral("crosses a step: an 8th skein for 61.5 m"));
  EXPECT_FALSE(effect(1).skeins.moves());
  EXPECT_EQ(effect(4).skeins.words(), QStringLiteral("11 → 12"));
  EXPECT_EQ(page.notes(), QStringLiteral("Body, plain: 17 rounds more at 312 sts"));
  EXPECT_EQ(page.attention(), QStringLiteral("1"));
  Pattern bare = open.pattern();
  bare.changes.clear();
  bare.last_id = quillmarsh_draft().last_id;
  EXPECT_EQ(bare, quillmarsh_draft());
}

TEST_F(ChangesPageTest, InchesAreTakenAndYardsShown) {
  ReaderStyle reader = open.reader();
  reader.imperial_first = true;
  open.set_reader(reader);
  add(ChangeKind::longer_piece);
  choose("piece", QStringLiteral("Body"));
  type("by", QStringLiteral("-2"));
  EXPECT_NEAR(change(0).by->value.value(), -5.08, 1e-9);
  EXPECT_EQ(words(0), QStringLiteral("Body 2 in shorter"));
  EXPECT_EQ(effect(0).planned.before, QStringLiteral("1,315.5"));  // 1202.936 m
  EXPECT_EQ(does(0), QStringLiteral("MC −87.0 yd"));               // 17 rounds of 312: 79.56 m
}

TEST_F(ChangesPageTest, AnotherGaugeAsksWhichCountsAndItsSignTurns) {
  add(ChangeKind::other_gauge);
  type("stitches", QStringLiteral("25.5"));
  type("rows", QStringLiteral("33.3"));
  EXPECT_EQ(does(0), QStringLiteral("not whole yet"));
  EXPECT_TRUE(page.form()->problem().contains(QStringLiteral("the sign turns round")));
  EXPECT_FALSE(effect(0).planned.moves());
  for (const QRadioButton* button : page.form()->findChildren<QRadioButton*>())
    EXPECT_FALSE(button->isChecked());
  answer(CountsAre::kept);
  EXPECT_TRUE(page.form()->problem().isEmpty());
  EXPECT_EQ(effect(0).planned.after, QStringLiteral("1,226.9"));
  EXPECT_EQ(effect(0).fill.after, QStringLiteral("7.01"));
  EXPECT_EQ(effect(0).step(), QStringLiteral("crosses a step, tips over: an 8th skein for 1.9 m"));
  answer(CountsAre::chosen_again);
  EXPECT_LT(page.outcome()->what_if->roles[0].planned_more.value(), 0);
  EXPECT_FALSE(effect(0).skeins.moves());
}

TEST_F(ChangesPageTest, AFieldThatIsMissingIsNamedAndTheRestIsMade) {
  longer_body();
  add(ChangeKind::longer_piece);
  EXPECT_EQ(page.form()->problem(), QStringLiteral("No piece: say the piece that grows longer."));
  EXPECT_EQ(does(1), QStringLiteral("not whole yet"));
  EXPECT_EQ(effect(0).planned.after, QStringLiteral("1,286.5"));
  EXPECT_TRUE(page.list()
                  ->model()
                  ->index(1, 2)
                  .data(Qt::AccessibleTextRole)
                  .toString()
                  .contains(QStringLiteral("say the piece")));
}

TEST_F(ChangesPageTest, WhatCannotBeMadeSaysWhyAndTheRestIsMade) {
  add(ChangeKind::extra_rounds);
  choose("section", QStringLiteral("Yoke, chart"));
  type("rounds", QStringLiteral("1"));
  type("chart_round", QStringLiteral("51"));
  EXPECT_EQ(does(0), QStringLiteral("cannot be made"));
  EXPECT_TRUE(page.form()->problem().contains(QStringLiteral("a round from 1 to 50")));
  longer_body();
  EXPECT_EQ(effect(0).planned.after, QStringLiteral("1,286.5"));
  EXPECT_TRUE(page.form()->problem().isEmpty());
  page.list()->set_current_key(change(0).id.value);
  EXPECT_FALSE(page.form()->problem().isEmpty());
  type("chart_round", QStringLiteral("10"));
  EXPECT_TRUE(page.form()->problem().isEmpty());
  EXPECT_EQ(effect(3).knitted_more, QStringLiteral("+4.0"));
}

TEST_F(ChangesPageTest, TypedWordsStayInTheFieldWithTheReason) {
  add(ChangeKind::longer_piece);
  type("by", QStringLiteral("a bit"));
  const auto* by = qobject_cast<QuantityField*>(page.form()->field("by"));
  EXPECT_FALSE(by->message().isEmpty());
  EXPECT_FALSE(change(0).by);
}

TEST_F(ChangesPageTest, LaidAsideItDoesNothingUntilItIsMadeAgain) {
  longer_body();
  page.list()->setCurrentIndex(page.list()->model()->index(0, 1));
  page.list()->setFocus();
  QTest::keyClick(page.list(), Qt::Key_Space);
  wait();
  EXPECT_FALSE(change(0).made);
  EXPECT_EQ(does(0), QStringLiteral("laid aside"));
  EXPECT_FALSE(effect(0).planned.moves());
  EXPECT_TRUE(page.attention().isEmpty());
  QTest::keyClick(page.list(), Qt::Key_Space);
  wait();
  EXPECT_TRUE(effect(0).planned.moves());
}

TEST_F(ChangesPageTest, DelTakesAwayAndInsertOffersTheKinds) {
  longer_body();
  page.list()->duplicate();
  wait();
  EXPECT_EQ(open.pattern().changes.size(), 2u);
  EXPECT_NE(change(0).id, change(1).id);
  page.list()->setCurrentIndex(page.list()->model()->index(1, 1));
  page.list()->setFocus();
  QTest::keyClick(page.list(), Qt::Key_Delete);
  wait();
  EXPECT_EQ(open.pattern().changes.size(), 1u);
  QTest::keyClick(page.list(), Qt::Key_Insert);
  auto* menu = qobject_cast<QMenu*>(QApplication::activePopupWidget());
  ASSERT_NE(menu, nullptr);
  EXPECT_EQ(menu->actions().size(), static_cast<int>(EnumWords<ChangeKind>::rows.size()));
  menu->actions().last()->trigger();
  menu->close();
  wait();
  ASSERT_EQ(open.pattern().changes.size(), 2u);
  EXPECT_EQ(change(1).kind, ChangeKind::given_to);
}

TEST_F(ChangesPageTest, TheyAreMadeInTheirOrderAndMove) {
  longer_body();
  add(ChangeKind::other_size);
  choose("size", QStringLiteral("7"));
  EXPECT_EQ(page.outcome()->what_if->size, "7");
  const double body_first = page.outcome()->what_if->roles[0].planned_more.value();
  page.list()->move(-1);
  wait();
  EXPECT_EQ(change(0).kind, ChangeKind::other_size);
  // Size 7 has 364 stitches around, so its five centimetres take more than those of size 5.
  EXPECT_NE(page.outcome()->what_if->roles[0].planned_more.value(), body_first);
  EXPECT_EQ(does(1), QStringLiteral("MC +92.8 m"));  // 17 x 364 x 1.5 cm
}

TEST_F(ChangesPageTest, OnlyTheFieldsOfTheKindAreShown) {
  const auto shown = [this] {
    QStringList names;
    for (const auto& [name, field] : page.form()->shown_fields()) names << name;
    return names.join(QStringLiteral(", "));
  };
  EXPECT_EQ(shown(), QString());
  add(ChangeKind::longer_piece);
  EXPECT_EQ(shown(), QStringLiteral("Kind, Piece, By, Where"));
  choose("piece", QStringLiteral("Sleeves"));
  EXPECT_EQ(shown(), QStringLiteral("Kind, Piece, Section, By, Where"));
  add(ChangeKind::extra_rounds);
  EXPECT_EQ(shown(), QStringLiteral("Kind, Section, Rounds more"));
  choose("section", QStringLiteral("Yoke, chart"));
  EXPECT_EQ(shown(), QStringLiteral("Kind, Section, Rounds more, At chart round, Or in colour alone"));
  add(ChangeKind::other_gauge);
  EXPECT_EQ(shown(),
            QStringLiteral("Kind, Fabric, Stitches in 10 cm, Rows in 10 cm, Which counts are knitted?"));
  add(ChangeKind::between_sizes);
  EXPECT_EQ(shown(), QStringLiteral("Kind, From size, To size, On the way, %"));
  EXPECT_EQ(page.outcome()->what_if->size, "5–6");
  add(ChangeKind::piece_left_out);
  EXPECT_EQ(shown(), QStringLiteral("Kind, Piece"));
  add(ChangeKind::piece_again);
  EXPECT_EQ(shown(), QStringLiteral("Kind, Piece, Copies more"));
  add(ChangeKind::given_to);
  EXPECT_EQ(shown(), QStringLiteral("Kind, Part, From, Into colour, Or into yarn"));
}

TEST_F(ChangesPageTest, ALetterOpensOneThingAndNoMenu) {
  const auto letter = [](const QString& text) {
    for (qsizetype i = 0; i + 1 < text.size(); ++i)
      if (text[i] == QLatin1Char('&') && text[++i] != QLatin1Char('&')) return text[i].toUpper();
    return QChar();
  };
  for (const auto& [kind, word] : EnumWords<ChangeKind>::rows) {
    add(kind);
    if (kind == ChangeKind::extra_rounds) choose("section", QStringLiteral("Yoke, chart"));
    if (kind == ChangeKind::longer_piece) choose("piece", QStringLiteral("Sleeves"));
    QStringList texts;
    for (const auto* button : page.findChildren<QAbstractButton*>())
      if (button->isVisible()) texts << button->text();
    for (const auto* label : page.findChildren<QLabel*>())
      if (label->isVisible() && label->buddy() != nullptr) texts << label->text();
    for (int tab = 0; tab < page.tabs()->count(); ++tab) texts << page.tabs()->tabText(tab);
    QSet<QChar> used{'F', 'E', 'G', 'V', 'S', 'H'};
    for (const QString& text : texts) {
      const QChar own = letter(text);
      if (own.isNull()) continue;
      EXPECT_FALSE(used.contains(own)) << std::string(word) << ": " << text.toStdString();
      used.insert(own);
    }
    EXPECT_GE(used.size(), 12);
  }
}

TEST_F(ChangesPageTest, ASkeinIsSavedByTheNeckbandInTheMainColour) {
  open.choose_size(0);
  page.show_tab(page.save_skein());
  wait();
  page.save_skein()->choose_role(open.pattern().roles[1].id);
  wait();
  ASSERT_TRUE(page.save_skein()->shown());
  ASSERT_FALSE(page.save_skein()->answers()->rows().empty());
  const FigureRow& first = page.save_skein()->answers()->rows().front();
  EXPECT_EQ(first.name, QStringLiteral("Neckband in MC"));
  EXPECT_EQ(first.figure, QStringLiteral("5.2 m to spare, brimful"));
  page.save_skein()->answers()->view()->setCurrentIndex(
      page.save_skein()->answers()->view()->model()->index(0, 0));
  QTest::keyClick(page.save_skein()->answers()->view(), Qt::Key_Return);
  wait();
  ASSERT_EQ(open.pattern().changes.size(), 1u);
  EXPECT_EQ(words(0), QStringLiteral("Neckband: MC for CC1"));
  EXPECT_EQ(effect(1).planned.after, QStringLiteral("169.8"));
  EXPECT_EQ(effect(1).skeins.words(), QStringLiteral("2 → 1"));
  EXPECT_EQ(effect(1).step(), QStringLiteral("crosses a step, brimful: a skein fewer"));
  EXPECT_EQ(effect(0).planned.after, QStringLiteral("804.9"));
  // The question is now asked of what the bench leaves.
  EXPECT_FALSE(page.save_skein()->shown());
  open.undo();
  wait();
  EXPECT_TRUE(open.pattern().changes.empty());
  EXPECT_EQ(effect(1).skeins.words(), QStringLiteral("2"));
}

TEST_F(ChangesPageTest, FourSkeinsOfTheMainColourRunOutInTheYoke) {
  open.choose_size(0);
  page.show_tab(page.run_out());
  wait();
  page.run_out()->choose_role(open.pattern().roles[0].id);
  LineField* field = page.run_out()->on_hand();
  field->setText(QStringLiteral("4"));
  QTest::keyClick(field, Qt::Key_Return);
  wait();
  EXPECT_EQ(page.run_out()->headline(),
            QStringLiteral("It runs out in Yoke, chart round 36: 2.1 m left, needs 3.0 m"));
  EXPECT_TRUE(page.run_out()->note().contains(QStringLiteral("700.0 m on hand")));
  const auto& turns = page.run_out()->answers()->rows();
  ASSERT_FALSE(turns.empty());
  EXPECT_EQ(turns.front().name, QStringLiteral("10 rounds (2.9 cm) fewer in Body, plain"));
  EXPECT_TRUE(turns.back().how.contains(QStringLiteral("the last place to turn back")));
  for (std::size_t i = 0; i + 1 < turns.size(); ++i)
    EXPECT_FALSE(turns[i].how.contains(QStringLiteral("the last place")));
  page.run_out()->answers()->view()->setCurrentIndex(page.run_out()->answers()->view()->model()->index(0, 0));
  QTest::keyClick(page.run_out()->answers()->view(), Qt::Key_Return);
  wait();
  ASSERT_EQ(open.pattern().changes.size(), 1u);
  EXPECT_EQ(change(0).rounds->value, -10);
  EXPECT_TRUE(page.run_out()->headline().startsWith(QStringLiteral("It lasts:")))
      << page.run_out()->headline().toStdString();
}

TEST_F(ChangesPageTest, WhatIsOnHandIsReadOrRefusedInWords) {
  Pattern pattern = open.pattern();
  const RoleId mc = pattern.roles[0].id;
  const auto length = [&](const char* text) {
    const auto read = read_on_hand(pattern, mc, QString::fromUtf8(text));
    return read ? read->value() : -1;
  };
  EXPECT_DOUBLE_EQ(length("4"), 700);
  EXPECT_DOUBLE_EQ(length("3½ skeins"), 612.5);
  EXPECT_DOUBLE_EQ(length("1 ball"), 175);
  EXPECT_DOUBLE_EQ(length("640 m"), 640);
  EXPECT_NEAR(length("100 yd"), 91.44, 1e-9);
  EXPECT_NEAR(length("50 g"), 175, 1e-9);
  EXPECT_EQ(length("plenty"), -1);
  EXPECT_EQ(length("-2"), -1);
  EXPECT_EQ(length(""), -1);
  pattern.yarns[0].put_up.length.reset();
  EXPECT_EQ(length("4"), -1);
  EXPECT_EQ(length("50 g"), -1);
  EXPECT_DOUBLE_EQ(length("640 m"), 640);
}

TEST_F(ChangesPageTest, TakenIntoThisSizeIsOneStepAndUndoBringsEverythingBack) {
  longer_body();
  add(ChangeKind::piece_left_out);  // not whole: it stays on the bench
  const Pattern before = open.pattern();
  page.ask_to_adopt(AdoptIn::this_size);
  wait();
  ASSERT_TRUE(page.strip()->isVisible());
  EXPECT_TRUE(page.strip()->words().contains(QStringLiteral("Skeins: size 5, MC 7 → 8.")))
      << page.strip()->words().toStdString();
  EXPECT_TRUE(page.strip()->words().contains(QStringLiteral("One change stays on the bench")));
  EXPECT_EQ(open.pattern(), before);
  page.strip()->take_in();
  wait();
  EXPECT_FALSE(page.strip()->isVisible());
  EXPECT_EQ(open.undo_label(), QStringLiteral("take into size 5: Body 5 cm longer"));
  ASSERT_EQ(open.pattern().changes.size(), 1u);
  EXPECT_EQ(change(0).kind, ChangeKind::piece_left_out);
  EXPECT_NEAR(open.assessment().roles[0].sizes[4].planned.value(), 1286.47, 0.005);
  EXPECT_NEAR(open.assessment().roles[0].sizes[0].knitted.value(), 730.77, 0.05);
  open.undo();
  wait();
  EXPECT_EQ(open.pattern(), before);
  EXPECT_EQ(effect(0).planned.after, QStringLiteral("1,286.5"));
}

TEST_F(ChangesPageTest, TakenIntoAllSizesEverySizeFollows) {
  longer_body();
  page.ask_to_adopt(AdoptIn::all_sizes);
  wait();
  EXPECT_TRUE(page.strip()->words().contains(QStringLiteral("Taken into all sizes")));
  page.strip()->take_in();
  wait();
  EXPECT_NEAR(open.assessment().roles[0].sizes[0].knitted.value(), 730.77 + 17 * 212 * 0.015, 0.05);
  EXPECT_TRUE(open.pattern().changes.empty());
}

TEST_F(ChangesPageTest, EscLeavesItAndSoDoesAnotherEdit) {
  longer_body();
  page.ask_to_adopt(AdoptIn::this_size);
  wait();
  QTest::keyClick(page.strip(), Qt::Key_Escape);
  EXPECT_FALSE(page.strip()->isVisible());
  page.ask_to_adopt(AdoptIn::this_size);
  wait();
  ASSERT_TRUE(page.strip()->isVisible());
  open.apply(QStringLiteral("title"), [](Pattern& pattern) { pattern.title = "Other"; });
  EXPECT_FALSE(page.strip()->isVisible());
  page.strip()->take_in();
  EXPECT_EQ(open.undo_label(), QStringLiteral("title"));
  wait();
}

TEST_F(ChangesPageTest, WhatWasJustTypedIsTakenInToo) {
  longer_body();
  auto* by = qobject_cast<QuantityField*>(page.form()->field("by"));
  by->setText(QStringLiteral("10 cm"));
  QTest::keyClick(by, Qt::Key_Return);
  page.ask_to_adopt(AdoptIn::this_size);  // before the ten are worked out
  ASSERT_TRUE(QTest::qWaitFor([this] { return page.strip()->isVisible(); }, 60000));
  EXPECT_TRUE(page.strip()->words().contains(QStringLiteral("34 rounds more")))
      << page.strip()->words().toStdString();
  page.strip()->leave();
}

TEST_F(ChangesPageTest, NothingOnTheBenchIsNothingToTakeIn) {
  QString said;
  QObject::connect(&page, &Page::says, &page, [&said](const QString& words) { said = words; });
  page.ask_to_adopt(AdoptIn::all_sizes);
  wait();
  EXPECT_FALSE(page.strip()->isVisible());
  EXPECT_FALSE(said.isEmpty());
}

TEST_F(ChangesPageTest, WhereTheWindowIsSmallForItsTextWhatTheyDoIsATab) {
  EXPECT_EQ(page.tabs()->count(), 2);
  page.resize(600, 500);
  EXPECT_EQ(page.tabs()->count(), 3);
  EXPECT_TRUE(page.effect()->isVisible());
  page.show_tab(page.run_out());
  EXPECT_FALSE(page.effect()->isVisible());
  longer_body();
  page.ask_to_adopt(AdoptIn::this_size);
  wait();
  EXPECT_TRUE(page.strip()->isVisible());
  page.resize(1280, 800);
  EXPECT_EQ(page.tabs()->count(), 2);
  EXPECT_TRUE(page.effect()->isVisible());
}

TEST_F(ChangesPageTest, PrintsCopiesAndFinds) {
  longer_body();
  const auto sheet = page.sheet();
  ASSERT_TRUE(sheet);
  EXPECT_GE(sheet->parts.size(), 2u);
  EXPECT_EQ(sheet->subtitle, "Changes on the fly, size 5");
  ASSERT_EQ(sheet->foot_notes.size(), 3u);
  EXPECT_EQ(sheet->foot_notes[0], "MC: crosses a step: an 8th skein for 61.5 m");
  EXPECT_EQ(sheet->foot_notes[1], "All colours: a skein more");
  const QString text = page.effect()->as_text();
  EXPECT_TRUE(text.contains(QStringLiteral("MC\t1,125.7 → 1,205.2\t+79.6\t1,202.9 → 1,286.5")))
      << text.toStdString();
  EXPECT_TRUE(page.find_next(QStringLiteral("body 5")));
  EXPECT_FALSE(page.find_next(QStringLiteral("no such words")));
  EXPECT_TRUE(page.go_to(change(0).id.value));
  EXPECT_FALSE(page.go_to(999999));
}

TEST_F(ChangesPageTest, EveryRowReadsAloud) {
  longer_body();
  const QString mc = page.effect()->effect()->index(0, 0).data(Qt::AccessibleTextRole).toString();
  EXPECT_EQ(mc,
            QStringLiteral("MC: planned from 1,202.9 to 1,286.5 m, knitted from 1,125.7 to 1,205.2 m, skeins "
                           "from 7 to 8, filled to from 6.87 to 7.35, crosses a step: an 8th skein for "
                           "61.5 m"));
}

TEST_F(ChangesPageTest, APatternOfNothingSaysWhatIsMissing) {
  open.replace(new_pattern());
  wait();
  EXPECT_EQ(page.effect()->effect()->rowCount(), 0);
  EXPECT_TRUE(page.notes().startsWith(QStringLiteral("No need yet")));
  EXPECT_FALSE(page.sheet());
  add(ChangeKind::other_gauge);
  EXPECT_FALSE(page.form()->problem().isEmpty());
}

TEST(ChangesPage, MayGoWhileItWorks) {
  OpenPattern open;
  open.replace(quillmarsh_draft());
  for (int i = 0; i < 3; ++i) {
    ChangesPage page(open, nullptr);
    page.show();
    page.add(ChangeKind::other_gauge);
    EXPECT_TRUE(page.is_busy());
  }
  QCoreApplication::processEvents();
}

TEST(ChangeWords, OrdinalsAndSteps) {
  EXPECT_EQ(an_ordinal(1), QStringLiteral("a 1st"));
  EXPECT_EQ(an_ordinal(2), QStringLiteral("a 2nd"));
  EXPECT_EQ(an_ordinal(3), QStringLiteral("a 3rd"));
  EXPECT_EQ(an_ordinal(8), QStringLiteral("an 8th"));
  EXPECT_EQ(an_ordinal(11), QStringLiteral("an 11th"));
  EXPECT_EQ(an_ordinal(12), QStringLiteral("a 12th"));
  EXPECT_EQ(an_ordinal(18), QStringLiteral("an 18th"));
  EXPECT_EQ(an_ordinal(21), QStringLiteral("a 21st"));
  EXPECT_EQ(an_ordinal(113), QStringLiteral("a 113th"));
}

TEST(BenchRows, SayTheSameChangesAgain) {
  const Pattern pattern = quillmarsh_draft();
  const PieceId body = pattern.pieces[0].id;
  const Piece& yoke = pattern.pieces[2];
  const std::vector<Change> changes = {
      LongerPiece{body, centimetres(-3), LongerWhere::full_width, pattern.pieces[0].sections[1].id},
      ExtraRounds{yoke.sections[1].id, 2, 10, {}},
      OtherGauge{pattern.fabrics[0].id, 5.1, 6.66, centimetres(2), CountsAre::kept},
      OtherSize{pattern.sizes[2].id},
      BetweenSizes{pattern.sizes[1].id, pattern.sizes[2].id, 0.25},
      PieceLeftOut{body},
      PieceAgain{body, 2},
      GivenTo{pattern.pieces[3].id.value, {}, pattern.roles[0].id, {}},
      GivenTo{yoke.sections[0].id.value, pattern.roles[0].id, {}, pattern.yarns[0].id},
      GivenTo{pattern.pieces[0].edges[0].id.value, {}, pattern.roles[2].id, {}}};
  const auto rows = bench_rows(pattern, changes);
  ASSERT_EQ(rows.size(), changes.size());
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const auto again = change_of(rows[i]);
    ASSERT_TRUE(again) << i;
    ASSERT_EQ(again->index(), changes[i].index());
    if (std::holds_alternative<OtherGauge>(changes[i])) {
      EXPECT_DOUBLE_EQ(std::get<OtherGauge>(*again).stitches, 25.5);
      EXPECT_DOUBLE_EQ(std::get<OtherGauge>(*again).rows, 33.3);
    } else {
      EXPECT_EQ(change_words(pattern, *again), change_words(pattern, changes[i]));
    }
  }
  EXPECT_TRUE(bench_rows(pattern, {PieceAdded{Piece{}}}).empty());
}

}  // namespace
}  // namespace skeinproof
