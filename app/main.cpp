// SPDX-License-Identifier: GPL-3.0-or-later
#include <QApplication>
#include <QDir>
#include <QSettings>
#include <QStandardPaths>
#include <string_view>

#include "app/bench/appearance.h"
#include "app/bench/icons.h"
#include "app/bench/main_window.h"
#include "app/bench/person_settings.h"
#include "app/bench/samples.h"
#include "app/terminal/terminal.h"
#include "app/version.h"

namespace {

// A first word that is neither a file nor one of Qt's own options is for the terminal face, which needs no
// display.
bool wants_terminal(int argc, char** argv) {
  if (argc < 2) return false;
  const std::string_view first = argv[1];
  if (first == "--help" || first == "-h" || first == "--version") return true;
  return !first.starts_with('-') && first.find_first_of("./\\") == std::string_view::npos;
}

int run_window(int argc, char** argv) {
  using namespace skeinproof;
  QApplication application(argc, argv);
  QApplication::setApplicationName(QStringLiteral("Skeinproof"));
  QApplication::setOrganizationName(QStringLiteral("skeinproof"));
  QApplication::setApplicationVersion(QString::fromLatin1(skeinproof::program_version));
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
