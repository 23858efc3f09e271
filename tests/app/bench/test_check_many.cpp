// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QApplication>
#include <QDir>
#include <QDropEvent>
#include <QFile>
#include <QMimeData>
#include <QTreeWidget>

#include "app/bench/check_many_window.h"
#include "core/sheets/write_sheet.h"
#include "tests/app/bench/window_fixture.h"

namespace skeinproof {
namespace {

class CheckManyTest : public WindowTest {
 protected:
  QString write(const QString& name, const QByteArray& bytes) {
    const QString path = folder.path(name);
    QDir().mkpath(QFileInfo(path).path());
    QFile file(path);
    EXPECT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(bytes);
    return path;
  }
  void drop(const QStringList& paths) {
    QMimeData data;
    QList<QUrl> urls;
    for (const QString& path : paths) urls << QUrl::fromLocalFile(path);
    data.setUrls(urls);
    QDragEnterEvent comes(QPoint(9, 9), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(window, &comes);
    QDropEvent drop(QPointF(9, 9), Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(window, &drop);
  }
  CheckManyWindow* many() const { return window->findChild<CheckManyWindow*>(); }
  bool done() const {
    return QTest::qWaitFor([this] { return many() != nullptr && !many()->is_busy(); }, 60000);
  }

  const QByteArray wrong = "Sizes 1 (2, 3).\nYarn: Fellmarl (100% wool; 175 m / 197 yd per 50 g skein).\n";
  const QByteArray right = "Sizes 1 (2, 3).\nYarn: Fellmarl (100% wool; 175 m / 191 yd per 50 g skein).\n";
};

TEST_F(CheckManyTest, ADroppedFolderIsATableOfSubmissionsTheGravestFirst) {
  write(QStringLiteral("in/a.txt"), right);
  write(QStringLiteral("in/deep/b.txt"), wrong);
  write(QStringLiteral("in/c.docx"), "no document");
  write(QStringLiteral("in/picture.png"), "no text");
  drop({folder.path(QStringLiteral("in"))});
  ASSERT_TRUE(done());
  const QTreeWidget* table = many()->table();
  ASSERT_EQ(table->topLevelItemCount(), 3);
  EXPECT_EQ(table->topLevelItem(0)->text(0), QStringLiteral("b.txt"));
  EXPECT_NE(table->topLevelItem(0)->text(1), QStringLiteral("0"));
  EXPECT_TRUE(table->topLevelItem(0)->text(5).contains(QStringLiteral("metres and yards differ")));
  QStringList all;
  for (int row = 0; row < 3; ++row) all << table->topLevelItem(row)->text(5);
  EXPECT_EQ(all.filter(QStringLiteral("cannot be read")).size(), 1);
  EXPECT_TRUE(many()->progress_words().contains(QStringLiteral("3 of 3")));
  EXPECT_NE(plain_text(many()->sheet()).find("b.txt"), std::string::npos);
}

TEST_F(CheckManyTest, OneOpensAsTheDraftOfANewPattern) {
  set_title("before");
  answer = CloseAnswer::discard;
  drop({write(QStringLiteral("a.txt"), wrong), write(QStringLiteral("b.txt"), right)});
  ASSERT_TRUE(done());
  many()->open_chosen();
  const OpenPattern& open = window->open_pattern();
  ASSERT_TRUE(QTest::qWaitFor([&] { return open.pattern().draft() != nullptr; }, 60000));
  EXPECT_EQ(open.pattern().title, "");
  EXPECT_EQ(open.pattern().draft()->source, "a.txt");
  EXPECT_EQ(open.pattern().yarns.size(), 1U);
  EXPECT_FALSE(open.is_saved());
  EXPECT_TRUE(open.can_undo());
}

TEST_F(CheckManyTest, StoppingLeavesTheRestUnchecked) {
  QStringList paths;
  for (int i = 0; i < 30; ++i)
    paths << write(QStringLiteral("%1.txt").arg(i, 2, 10, QLatin1Char('0')), right);
  window->check_many();
  many()->add(paths);
  many()->stop();
  ASSERT_TRUE(done());
  EXPECT_TRUE(many()->progress_words().startsWith(QStringLiteral("Stopped")));
  int left = 0;
  for (int row = 0; row < 30; ++row)
    left += many()->table()->topLevelItem(row)->text(5).contains(QStringLiteral("stopped")) ? 1 : 0;
  EXPECT_EQ(left, 29);
}

}  // namespace
}  // namespace skeinproof
