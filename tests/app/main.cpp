// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QApplication>
#include <QLocale>
#include <QStandardPaths>
#include <string>

namespace {

// Said by the platform plug-in of the tests, not by the program.
constexpr const char* expected_words[] = {
    "This plugin does not support propagateSizeHints()",
    "This plugin does not support raise()",
    "This plugin does not support grabbing the keyboard",
};

// What Qt complains about is a fault of the program: a missing object, a signal that does not fit, a bad
// font.
void fail_on_warning(QtMsgType type, const QMessageLogContext&, const QString& words) {
  if (type != QtWarningMsg && type != QtCriticalMsg) return;
  for (const char* expected : expected_words)
    if (words.contains(QLatin1String(expected))) return;
  ADD_FAILURE() << "Qt says: " << words.toStdString();
}

}  // namespace

int main(int argc, char** argv) {
  qputenv("QT_QPA_PLATFORM", "offscreen");
  testing::InitGoogleTest(&argc, argv);
  QStandardPaths::setTestModeEnabled(true);
  QApplication application(argc, argv);
  QApplication::setApplicationName(QStringLiteral("Skeinproof"));
  QLocale::setDefault(QLocale::c());
  qInstallMessageHandler(fail_on_warning);
  return RUN_ALL_TESTS();
}
