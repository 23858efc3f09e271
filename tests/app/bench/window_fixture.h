// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <gtest/gtest.h>

#include <QLineEdit>
#include <QPointer>
#include <QSettings>
#include <QTemporaryDir>
#include <QTest>
#include <QVBoxLayout>
#include <array>
#include <memory>

#include "app/bench/appearance.h"
#include "app/bench/main_window.h"
#include "app/bench/person_settings.h"
#include "app/pages/page.h"
#include "app/widgets/message_bar.h"

namespace skeinproof {

// A page with one field bound to the title.
class TitlePage : public Page {
 public:
  TitlePage(OpenPattern& open, QWidget* parent) : Page(open, parent), field(new QLineEdit) {
    auto* layout = new QVBoxLayout(this);
    layout->addWidget(field);
    connect(field, &QLineEdit::editingFinished, this, [this] {
      open_.apply("title", [this](Pattern& pattern) { pattern.title = field->text().toStdString(); });
    });
  }
  void enter() override { field->setFocus(); }
  bool find_next(const QString& words) override { return field->text().contains(words); }
  std::optional<Sheet> sheet() const override {
    Sheet sheet;
    sheet.title = open_.pattern().title;
    return sheet;
  }
  QString attention() const override { return open_.pattern().title.empty() ? "no title" : ""; }
  QLineEdit* field;
};

class EmptyPage : public Page {
 public:
  EmptyPage(OpenPattern& open, QWidget* parent) : Page(open, parent) { setFocusPolicy(Qt::StrongFocus); }
  bool go_to(std::uint32_t part) override {
    last_part = part;
    return true;
  }
  std::uint32_t last_part = 0;
};

// A real window on a folder of its own, with every question answered by the test.
class WindowTest : public testing::Test {
 protected:
  WindowTest() {
    EXPECT_TRUE(folder.dir.isValid());
    dialogs.save_first = [this](QWidget*, const QString&) {
      ++asked;
      return answer;
    };
    dialogs.overwrite = [](QWidget*, const QString&) { return OverwriteAnswer::cancel; };
    dialogs.path_to_open = [this](QWidget*, const QString&, const QString&) { return path_answer; };
    dialogs.path_to_save = [this](QWidget*, const QString&, const QString&, const QString&) {
      return path_answer;
    };
    dialogs.print = [](QPrinter&, QWidget*) { return false; };
    window = make_window();
  }
  ~WindowTest() override {
    answer = CloseAnswer::discard;
    for (const auto& made : windows)
      if (made) {
        EXPECT_TRUE(QTest::qWaitFor([&] { return !made || !made->desk().is_busy(); }));
        delete made.data();
      }
    appearance.set_shades(Shades::platform);
    appearance.set_text_percent(100);
  }

  QPointer<MainWindow> make_window() {
    QPointer<MainWindow> made(new MainWindow(
        {settings, appearance, dialogs, folder.path("recovery"), folder.path("samples"), pages}));
    windows.push_back(made);
    made->show();
    made->activateWindow();
    EXPECT_TRUE(QTest::qWaitForWindowActive(made));
    return made;
  }
  void set_title(const QString& title) {
    window->open_pattern().apply("title", [&](Pattern& pattern) { pattern.title = title.toStdString(); });
  }
  // Until the worker is done.
  bool settled(MainWindow* of) {
    return QTest::qWaitFor([of] { return !of->desk().is_busy(); });
  }
  bool settled() { return settled(window); }
  bool save_to(const QString& name) {
    path_answer = folder.path(name);
    window->save_as();
    return settled();
  }
  QString bar_text() const { return window->message_bar().accessibleDescription(); }

  struct Folder {
    QTemporaryDir dir;
    QString path(const QString& name) const { return dir.filePath(name); }
  } folder;
  QSettings store{folder.path("settings.ini"), QSettings::IniFormat};
  PersonSettings settings{store};
  Appearance appearance;
  Dialogs dialogs;
  CloseAnswer answer = CloseAnswer::cancel;
  int asked = 0;
  QString path_answer;
  static Page* make_title_page(OpenPattern& open, QWidget* parent) { return new TitlePage(open, parent); }
  static Page* make_empty_page(OpenPattern& open, QWidget* parent) { return new EmptyPage(open, parent); }
  std::array<PageRow, 3> pages{PageRow{"Pattern", &make_title_page}, PageRow{"Pieces", &make_empty_page},
                               PageRow{"Quantities", &make_empty_page}};
  QPointer<MainWindow> window;
  std::vector<QPointer<MainWindow>> windows;
};

}  // namespace skeinproof
