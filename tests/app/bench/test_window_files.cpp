// SPDX-License-Identifier: GPL-3.0-or-later
#include <QAction>
#include <QDir>
#include <QDragEnterEvent>
#include <QFile>
#include <QMimeData>
#include <QPushButton>

#include "core/file/json.h"
#include "core/file/project_file.h"
#include "core/file/recovery.h"
#include "core/pattern/edits.h"
#include "tests/app/bench/window_fixture.h"

namespace skeinproof {
namespace {

std::filesystem::path as_path(const QString& path) { return path.toStdString(); }

QPushButton* bar_button(MainWindow& window, const QString& text) {
  for (auto* button : window.message_bar().findChildren<QPushButton*>())
    if (!button->isHidden() && button->text() == text) return button;
  return nullptr;
}

TEST_F(WindowTest, SavesAndOpensAgain) {
  set_title("Quillmarsh Yoke");
  ASSERT_TRUE(save_to("one.skeinproof"));
  EXPECT_FALSE(window->isWindowModified());
  EXPECT_EQ(settings.recent_files(), QStringList{folder.path("one.skeinproof")});
  const Pattern saved = window->open_pattern().pattern();
  window->start_new();
  EXPECT_EQ(asked, 0);
  EXPECT_EQ(window->open_pattern().pattern().title, "");
  window->open_path(folder.path("one.skeinproof"));
  ASSERT_TRUE(settled());
  EXPECT_EQ(window->open_pattern().pattern(), saved);
  EXPECT_FALSE(window->open_pattern().can_undo());
  set_title("Second");
  window->save();
  ASSERT_TRUE(settled());
  EXPECT_EQ(open_project(as_path(folder.path("one.skeinproof")))->pattern.title, "Second");
}

TEST_F(WindowTest, WhatIsBeingTypedIsSaved) {
  auto* page = static_cast<TitlePage*>(window->page("Pattern"));
  page->field->setFocus();
  QTest::keyClicks(page->field, "Typed just now");
  ASSERT_TRUE(save_to("typed.skeinproof"));
  EXPECT_EQ(open_project(as_path(folder.path("typed.skeinproof")))->pattern.title, "Typed just now");
}

TEST_F(WindowTest, CloseGuardCancels) {
  set_title("t");
  answer = CloseAnswer::cancel;
  EXPECT_FALSE(window->close());
  EXPECT_EQ(asked, 1);
  EXPECT_TRUE(window->isVisible());
  EXPECT_EQ(window->open_pattern().pattern().title, "t");
}

TEST_F(WindowTest, CloseGuardDiscards) {
  set_title("t");
  answer = CloseAnswer::discard;
  window->close();
  EXPECT_TRUE(QTest::qWaitFor([this] { return !window; }));
}

TEST_F(WindowTest, CloseGuardSavesAndThenCloses) {
  set_title("t");
  answer = CloseAnswer::save;
  path_answer = folder.path("guarded.skeinproof");
  window->close();
  EXPECT_TRUE(QTest::qWaitFor([this] { return !window; }));
  EXPECT_EQ(open_project(as_path(path_answer))->pattern.title, "t");
}

TEST_F(WindowTest, GivingUpTheNameKeepsTheWindow) {
  set_title("t");
  answer = CloseAnswer::save;
  path_answer = "";
  EXPECT_FALSE(window->close());
  EXPECT_TRUE(window->isVisible());
  window->start_new();
  EXPECT_EQ(window->open_pattern().pattern().title, "t");
}

TEST_F(WindowTest, ASaveThatFailsKeepsTheWindowAndSaysWhy) {
  set_title("t");
  answer = CloseAnswer::save;
  path_answer = folder.path("no such folder/x.skeinproof");
  window->close();
  ASSERT_TRUE(settled());
  ASSERT_TRUE(window);
  EXPECT_TRUE(window->isVisible());
  EXPECT_TRUE(window->isWindowModified());
  EXPECT_FALSE(bar_text().isEmpty());
}

TEST_F(WindowTest, NothingUnsavedClosesUnasked) {
  window->close();
  EXPECT_EQ(asked, 0);
  EXPECT_TRUE(QTest::qWaitFor([this] { return !window; }));
}

TEST_F(WindowTest, ASecondWindowOnTheSameFileWorksOnACopy) {
  set_title("t");
  ASSERT_TRUE(save_to("shared.skeinproof"));
  const auto second = make_window();
  second->open_path(folder.path("shared.skeinproof"));
  ASSERT_TRUE(settled(second));
  EXPECT_EQ(second->desk().path(), "");
  EXPECT_EQ(second->open_pattern().pattern().title, "t");
  EXPECT_TRUE(second->message_bar().accessibleDescription().contains("another window"));
  // Nor may it save over the first.
  second->open_pattern().apply("title", [](Pattern& pattern) { pattern.title = "other"; });
  path_answer = folder.path("shared.skeinproof");
  second->save();
  ASSERT_TRUE(settled(second));
  EXPECT_TRUE(second->isWindowModified());
  EXPECT_EQ(open_project(as_path(path_answer))->pattern.title, "t");
  answer = CloseAnswer::discard;
}

TEST_F(WindowTest, AFileChangedBehindOurBackIsNotOverwrittenUnasked) {
  set_title("mine");
  const QString path = folder.path("mine.skeinproof");
  ASSERT_TRUE(save_to("mine.skeinproof"));
  Pattern theirs = new_pattern();
  theirs.title = "theirs";
  SaveOptions over;
  over.replace_existing = true;
  ASSERT_TRUE(save_project(as_path(path), theirs, over));
  set_title("mine again");
  window->save();
  ASSERT_TRUE(settled());
  EXPECT_TRUE(window->isWindowModified());
  EXPECT_EQ(open_project(as_path(path))->pattern.title, "theirs");
  QPushButton* write_over = bar_button(*window, "&Write over it");
  ASSERT_TRUE(write_over) << bar_text().toStdString();
  write_over->click();
  ASSERT_TRUE(settled());
  EXPECT_EQ(open_project(as_path(path))->pattern.title, "mine again");
  EXPECT_FALSE(window->isWindowModified());
}

TEST_F(WindowTest, AFileThatIsNotOursIsRefusedByName) {
  QFile text(folder.path("notes.skeinproof"));
  ASSERT_TRUE(text.open(QIODevice::WriteOnly));
  text.write("a shopping list");
  text.close();
  set_title("mine");
  answer = CloseAnswer::discard;
  window->open_path(text.fileName());
  ASSERT_TRUE(settled());
  EXPECT_TRUE(bar_text().contains("notes.skeinproof")) << bar_text().toStdString();
  EXPECT_EQ(window->open_pattern().pattern().title, "mine");
  window->open_path(folder.path("gone.skeinproof"));
  EXPECT_TRUE(bar_text().contains("gone.skeinproof"));
}

TEST_F(WindowTest, JsonGoesOutAndComesBackAsAnUnnamedProject) {
  set_title("Lampwick");
  path_answer = folder.path("out.json");
  window->export_json();
  ASSERT_TRUE(settled());
  const Pattern before = window->open_pattern().pattern();
  answer = CloseAnswer::discard;
  window->start_new();
  window->import_json();
  ASSERT_TRUE(settled());
  EXPECT_EQ(window->open_pattern().pattern(), before);
  EXPECT_EQ(window->desk().path(), "");
}

TEST_F(WindowTest, SamplesOpenAsCopies) {
  ASSERT_TRUE(QDir().mkpath(folder.path("samples")));
  Pattern sample = new_pattern();
  sample.title = "Sample";
  const QString path = folder.path("samples/small-sample.skeinproof");
  ASSERT_TRUE(save_project(as_path(path), sample));
  emit window->current_page()->wants_command("sample:small-sample");
  ASSERT_TRUE(settled());
  EXPECT_EQ(window->open_pattern().pattern().title, "Sample");
  EXPECT_EQ(window->desk().path(), "");
  EXPECT_TRUE(settings.recent_files().isEmpty());
  window->open_sample("no-such");
  EXPECT_TRUE(bar_text().contains("no-such"));
}

TEST_F(WindowTest, ANewPatternFromThisOneLeavesWhatWasOnlyIts) {
  window->open_pattern().apply("parts", [](Pattern& pattern) {
    pattern.title = "Old";
    const RoleId role = add_role(pattern, "MC");
    (void)role;
    pattern.roles.front().printed_count.set(0, Entered<double>{5, "5"});
    add_weighing(pattern, pattern.sizes.front().id);
  });
  answer = CloseAnswer::discard;
  window->start_from_this();
  const Pattern& fresh = window->open_pattern().pattern();
  EXPECT_EQ(fresh.title, "");
  ASSERT_EQ(fresh.roles.size(), 1U);
  EXPECT_TRUE(fresh.roles.front().printed_count.empty());
  EXPECT_TRUE(fresh.weighings.empty());
  EXPECT_TRUE(bar_text().contains("Old"));
}

TEST_F(WindowTest, DroppedProjectsAreOpened) {
  set_title("t");
  ASSERT_TRUE(save_to("dropped.skeinproof"));
  window->start_new();
  QMimeData data;
  data.setUrls({QUrl::fromLocalFile(folder.path("dropped.skeinproof"))});
  QDragEnterEvent comes(QPoint(9, 9), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
  QApplication::sendEvent(window, &comes);
  EXPECT_TRUE(comes.isAccepted());
  QDropEvent drop(QPointF(9, 9), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
  QApplication::sendEvent(window, &drop);
  EXPECT_TRUE(QTest::qWaitFor([this] { return window->open_pattern().pattern().title == "t"; }));
  QMimeData picture;
  picture.setUrls({QUrl::fromLocalFile(folder.path("picture.png"))});
  QDragEnterEvent enter(QPoint(9, 9), Qt::CopyAction, &picture, Qt::LeftButton, Qt::NoModifier);
  enter.ignore();
  QApplication::sendEvent(window, &enter);
  EXPECT_FALSE(enter.isAccepted());
}

TEST_F(WindowTest, UnsavedWorkReachesARecoveryCopyWithinASecond) {
  QElapsedTimer clock;
  clock.start();
  set_title("kept");
  const auto copies = [this] { return list_recoveries(as_path(folder.path("recovery"))); };
  ASSERT_TRUE(QTest::qWaitFor([&] { return !copies().empty() && copies().front().title == "kept"; }));
  EXPECT_LT(clock.elapsed(), 1000);
  // A living window's copy is offered to nobody; saving takes it away.
  const auto second = make_window();
  second->offer_recoveries();
  EXPECT_TRUE(second->message_bar().messages().empty());
  ASSERT_TRUE(save_to("kept.skeinproof"));
  EXPECT_TRUE(QTest::qWaitFor([&] { return copies().empty(); }));
}

TEST_F(WindowTest, WorkOfAWindowThatDiedIsOffered) {
  Pattern lost = new_pattern();
  lost.title = "Lost";
  ASSERT_TRUE(write_recovery(as_path(folder.path("recovery")), "dead", lost, {}, 1'700'000'000));
  window->offer_recoveries();
  EXPECT_TRUE(bar_text().contains("Lost"));
  ASSERT_TRUE(bar_button(*window, "Open the copy"));
  bar_button(*window, "Open the copy")->click();
  EXPECT_EQ(window->open_pattern().pattern().title, "Lost");
  EXPECT_TRUE(window->isWindowModified());
  const auto left = list_recoveries(as_path(folder.path("recovery")));
  ASSERT_EQ(left.size(), 1U);
  EXPECT_NE(left.front().key, "dead");
}

TEST_F(WindowTest, WorkThatIsNotWantedCanBeThrownAway) {
  ASSERT_TRUE(write_recovery(as_path(folder.path("recovery")), "dead", new_pattern(), {}, 1'700'000'000));
  window->offer_recoveries();
  ASSERT_TRUE(bar_button(*window, "Throw it away"));
  bar_button(*window, "Throw it away")->click();
  EXPECT_TRUE(list_recoveries(as_path(folder.path("recovery"))).empty());
}

}  // namespace
}  // namespace skeinproof
