// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>
#include <malloc.h>

#include <QSignalSpy>

#include "app/document/open_pattern.h"
#include "core/file/json.h"
#include "core/file/whole_file.h"

namespace skeinproof {
namespace {

OpenPattern::Edit titled(std::string title) {
  return [title](Pattern& pattern) { pattern.title = title; };
}

TEST(OpenPattern, UndoesAndRedoesEveryStepInOrder) {
  OpenPattern open;
  for (const char* title : {"a", "b", "c"}) open.apply(QString("title %1").arg(title), titled(title));
  EXPECT_EQ(open.undo_label(), "title c");
  open.undo();
  open.undo();
  EXPECT_EQ(open.pattern().title, "a");
  EXPECT_EQ(open.redo_label(), "title b");
  open.redo();
  EXPECT_EQ(open.pattern().title, "b");
  open.undo();
  open.undo();
  EXPECT_FALSE(open.can_undo());
  open.undo();
  EXPECT_EQ(open.pattern(), new_pattern());
}

TEST(OpenPattern, DropsAnEditThatChangesNothing) {
  OpenPattern open;
  QSignalSpy changed(&open, &OpenPattern::changed);
  EXPECT_FALSE(open.apply("nothing", [](Pattern&) {}));
  EXPECT_FALSE(open.can_undo());
  EXPECT_EQ(changed.count(), 0);
  open.apply("title", titled("a"));
  open.apply("the same again", titled("a"));
  EXPECT_EQ(open.undo_label(), "title");
  EXPECT_EQ(changed.count(), 1);
}

TEST(OpenPattern, MergesTypingInOneFieldOnly) {
  OpenPattern open;
  open.apply("title", titled("q"), "title");
  open.apply("title", titled("qu"), "title");
  open.apply(
      "item", [](Pattern& pattern) { pattern.item = "p"; }, "item");
  open.apply("title", titled("qui"), "title");
  open.undo();
  EXPECT_EQ(open.pattern().title, "qu");
  open.undo();
  EXPECT_EQ(open.pattern().item, "");
  EXPECT_EQ(open.pattern().title, "qu");
  open.undo();
  EXPECT_EQ(open.pattern().title, "");
}

TEST(OpenPattern, DoesNotMergeAcrossUndoOrAcrossASave) {
  OpenPattern open;
  open.apply("title", titled("a"), "title");
  open.apply("title", titled("ab"), "title");
  open.mark_saved();
  open.apply("title", titled("abc"), "title");
  EXPECT_FALSE(open.is_saved());
  open.undo();
  EXPECT_EQ(open.pattern().title, "ab");
  EXPECT_TRUE(open.is_saved());
  open.apply("title", titled("abd"), "title");
  open.undo();
  EXPECT_EQ(open.pattern().title, "ab");
}

TEST(OpenPattern, AnEditAfterUndoForgetsWhatCouldBeRedone) {
  OpenPattern open;
  open.apply("a", titled("a"));
  open.apply("b", titled("b"));
  open.undo();
  open.apply("c", titled("c"));
  EXPECT_FALSE(open.can_redo());
  open.undo();
  EXPECT_EQ(open.pattern().title, "a");
}

TEST(OpenPattern, KeepsTheDocumentWhereAnEditBreaksARule) {
  OpenPattern open;
  QSignalSpy changed(&open, &OpenPattern::changed);
  const auto refused = open.apply("no size", [](Pattern& pattern) { pattern.sizes.clear(); });
  ASSERT_TRUE(refused);
  EXPECT_EQ(refused->kind, ErrorKind::broken_invariant);
  EXPECT_EQ(open.pattern(), new_pattern());
  EXPECT_FALSE(open.can_undo());
  EXPECT_EQ(changed.count(), 0);
}

TEST(OpenPattern, SavedIsAStateAndNotAFlag) {
  OpenPattern open;
  QSignalSpy saved(&open, &OpenPattern::saved_changed);
  EXPECT_TRUE(open.is_saved());
  open.apply("a", titled("a"));
  const quint64 written = open.state();
  open.apply("b", titled("b"));
  open.mark_saved(written);  // a save that ended after a further edit
  EXPECT_FALSE(open.is_saved());
  open.undo();
  EXPECT_TRUE(open.is_saved());
  open.undo();
  EXPECT_FALSE(open.is_saved());
  EXPECT_GE(saved.count(), 3);
  open.replace(new_pattern());
  EXPECT_TRUE(open.is_saved());
  EXPECT_FALSE(open.can_undo());
  open.mark_unsaved();
  EXPECT_FALSE(open.is_saved());
}

TEST(OpenPattern, ChoosingASizeIsNoStepOfUndo) {
  OpenPattern open;
  open.apply("sizes", [](Pattern& pattern) {
    pattern.sizes.push_back({SizeId{++pattern.last_id}, "2", false});
  });
  open.choose_size(1);
  EXPECT_EQ(open.chosen_size_index(), 1U);
  EXPECT_EQ(open.undo_label(), "sizes");
  open.choose_size(7);
  EXPECT_EQ(open.chosen_size_index(), 1U);
}

TEST(OpenPattern, WhatHappenedOutsideIsKeptInEveryStepAndIsNone) {
  OpenPattern open;
  open.apply("a", titled("a"));
  open.apply("b", titled("b"));
  open.undo();
  open.mark_saved();
  const quint64 before = open.state();
  QSignalSpy changed(&open, &OpenPattern::changed);
  QSignalSpy saved(&open, &OpenPattern::saved_changed);
  open.keep_in_every_step([](Pattern& pattern) { pattern.note = "sent"; });
  EXPECT_EQ(changed.count(), 1);
  EXPECT_EQ(saved.count(), 1);
  EXPECT_FALSE(open.is_saved());
  EXPECT_NE(open.state(), before);
  EXPECT_EQ(open.undo_label(), "a");
  EXPECT_EQ(open.redo_label(), "b");
  open.redo();
  EXPECT_EQ(open.pattern().title, "b");
  EXPECT_EQ(open.pattern().note, "sent");
  while (open.can_undo()) open.undo();
  EXPECT_EQ(open.pattern().title, "");
  EXPECT_EQ(open.pattern().note, "sent");
  // What would break an invariant, or changes nothing, is not kept.
  open.keep_in_every_step([](Pattern& pattern) { pattern.sizes.clear(); });
  EXPECT_EQ(open.pattern().sizes.size(), 1U);
  const auto signals_so_far = changed.count();
  open.keep_in_every_step([](Pattern&) {});
  EXPECT_EQ(changed.count(), signals_so_far);
}

TEST(OpenPattern, TenThousandEditsOfAWholePatternStaySmall) {
  const auto text = read_whole_file(SKEINPROOF_SOURCE_DIR "/sample-data/projects/quillmarsh-yoke.json");
  ASSERT_TRUE(text);
  auto pattern = pattern_from_json(*text);
  ASSERT_TRUE(pattern) << pattern.error().message();
  ASSERT_GE(pattern->roles.size(), 4U);

  OpenPattern open;
  open.replace(*pattern);
  const auto before = mallinfo2().uordblks;
  for (int i = 0; i < 10'000; ++i)
    open.apply("count", [i](Pattern& p) {
      auto& role = p.roles[static_cast<std::size_t>(i) % p.roles.size()];
      role.printed_count.set(static_cast<std::size_t>(i) % p.sizes.size(),
                             Entered<double>{static_cast<double>(i + 100), std::to_string(i + 100)});
    });
  EXPECT_LT((mallinfo2().uordblks - before) / 1'000'000, 200U);
  for (int i = 0; i < 10'000; ++i) open.undo();
  EXPECT_FALSE(open.can_undo());
  EXPECT_EQ(open.pattern(), *pattern);
}

}  // namespace
}  // namespace skeinproof
