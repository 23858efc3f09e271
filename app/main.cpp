// SPDX-License-Identifier: GPL-3.0-or-later
#include <QApplication>
#include <QDir>
#include <QLocale>
#include <QPointer>
#include <QSettings>
#include <QStandardPaths>
#include <cstdlib>
#include <exception>
#include <functional>
#include <string_view>

#include "app/bench/appearance.h"
#include "app/bench/icons.h"
#include "app/bench/main_window.h"
#include "app/bench/person_settings.h"
#include "app/bench/samples.h"
#include "app/terminal/terminal.h"
#include "app/version.h"

namespace {

// The last place where a failure nobody expected can be met: unsaved work is put away before anything else.
class Application : public QApplication {
 public:
  using QApplication::QApplication;
  std::function<void()> put_work_away;

  bool notify(QObject* receiver, QEvent* event) override {
    try {
      return QApplication::notify(receiver, event);
    } catch (const std::exception& failure) {
      if (put_work_away) put_work_away();
      qCritical("Unexpected failure: %s. A recovery copy was written.", failure.what());
      std::abort();
    }
  }
};

// A first word that is neither a file nor an option of the window is for the terminal face, which needs no
// display.
bool wants_terminal(int argc, char** argv) {
  if (argc < 2) return false;
  const std::string_view first = argv[1];
  if (first == "--help" || first == "-h" || first == "--version") return true;
  return !first.starts_with('-') && first.find_first_of("./\\") == std::string_view::npos;
}

int run_window(int argc, char** argv) {
  using namespace skeinproof;
  Application application(argc, argv);
  QApplication::setApplicationName(QStringLiteral("Skeinproof"));
  QApplication::setOrganizationName(QStringLiteral("skeinproof"));
  QApplication::setApplicationVersion(QString::fromLatin1(program_version));
  QApplication::setDesktopFileName(QStringLiteral("skeinproof"));
  QApplication::setWindowIcon(program_icon());
  QLocale::setDefault(QLocale::c());  // figures follow the reader's choice, never the machine

  QSettings store;
  PersonSettings settings(store);
  Appearance appearance;
  appearance.set_shades(settings.shades());
  appearance.set_text_percent(settings.text_percent());

  const QString data = QStandardPaths::writableLocation(QStandardPaths::AppDataLocation);
  auto* window = new MainWindow({settings, appearance, platform_dialogs(),
                                 QDir(data).filePath(QStringLiteral("recovery")),
                                 find_samples_folder(QApplication::applicationDirPath()), page_table()});
  application.put_work_away = [kept = QPointer<MainWindow>(window)] {
    if (kept) kept->put_work_away();
  };
  window->show();
  window->offer_recoveries();
  const QStringList arguments = QApplication::arguments();
  if (arguments.size() > 1) window->open_path(arguments.at(1));
  return QApplication::exec();
}

}  // namespace

int main(int argc, char** argv) {
  return wants_terminal(argc, argv) ? skeinproof::run_terminal(argc, argv) : run_window(argc, argv);
}
