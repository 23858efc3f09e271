// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QLabel>
#include <QPushButton>

#include "app/widgets/message_bar.h"

namespace skeinproof {
namespace {

QPushButton* button(const MessageBar& bar, const QString& text) {
  for (auto* found : bar.findChildren<QPushButton*>())
    if (found->text() == text && !found->isHidden()) return found;
  return nullptr;
}

TEST(MessageBar, ShowsTheLatestMessageAndThenTheOneBehindIt) {
  MessageBar bar;
  EXPECT_TRUE(bar.isHidden());
  int taken = 0;
  bar.post({"behind", "Two", {}, true});
  bar.post({"latest", "One", {{"Take it", [&taken] { ++taken; }}}, false});
  EXPECT_FALSE(bar.isHidden());
  EXPECT_EQ(bar.accessibleDescription(), "One");
  EXPECT_FALSE(button(bar, "Close this message"));
  ASSERT_TRUE(button(bar, "Take it"));
  button(bar, "Take it")->click();
  EXPECT_EQ(taken, 1);
  EXPECT_EQ(bar.accessibleDescription(), "Two");
  ASSERT_TRUE(button(bar, "Close this message"));
  button(bar, "Close this message")->click();
  EXPECT_TRUE(bar.isHidden());
}

TEST(MessageBar, AMessageOfTheSameKeyTakesThePlaceOfTheEarlier) {
  MessageBar bar;
  bar.post({"file", "One", {}, true});
  bar.post({"file", "Two", {}, true});
  EXPECT_EQ(bar.messages().size(), 1U);
  EXPECT_EQ(bar.accessibleDescription(), "Two");
  bar.take_back("other");
  EXPECT_FALSE(bar.isHidden());
  bar.take_back("file");
  EXPECT_TRUE(bar.isHidden());
}

TEST(MessageBar, AChoiceMayPostAnotherMessage) {
  MessageBar bar;
  bar.post({"a", "One", {{"Go", [&bar] { bar.post({"a", "Two", {}, true}); }}}, false});
  button(bar, "Go")->click();
  EXPECT_EQ(bar.accessibleDescription(), "Two");
}

}  // namespace
}  // namespace skeinproof
