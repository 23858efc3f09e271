// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/bench/dialogs.h"

#include <QCoreApplication>
#include <QFileDialog>
#include <QMessageBox>
#include <QPushButton>

namespace skeinproof {

namespace {

QString say(const char* text) { return QCoreApplication::translate("Dialogs", text); }

CloseAnswer ask_save_first(QWidget* parent, const QString& title) {
  QMessageBox box(QMessageBox::NoIcon, QCoreApplication::applicationName(),
                  say("Save the changes to “%1”?").arg(title),
                  QMessageBox::Save | QMessageBox::Discard | QMessageBox::Cancel, parent);
  box.setInformativeText(say("Without saving they are lost."));
  box.setDefaultButton(QMessageBox::Save);
  switch (box.exec()) {
    case QMessageBox::Save:
      return CloseAnswer::save;
    case QMessageBox::Discard:
      return CloseAnswer::discard;
    default:
      return CloseAnswer::cancel;
  }
}

OverwriteAnswer ask_overwrite(QWidget* parent, const QString& sentence) {
  QMessageBox box(QMessageBox::NoIcon, QCoreApplication::applicationName(), sentence, QMessageBox::Cancel,
                  parent);
  const auto* overwrite = box.addButton(say("&Overwrite"), QMessageBox::DestructiveRole);
  const auto* elsewhere = box.addButton(say("&Save under another name…"), QMessageBox::AcceptRole);
  box.exec();
  if (box.clickedButton() == overwrite) return OverwriteAnswer::overwrite;
  return box.clickedButton() == elsewhere ? OverwriteAnswer::save_elsewhere : OverwriteAnswer::cancel;
}

}  // namespace

Dialogs platform_dialogs() {
  Dialogs dialogs;
  dialogs.save_first = ask_save_first;
  dialogs.overwrite = ask_overwrite;
  dialogs.path_to_open = [](QWidget* parent, const QString& caption, const QString& filter) {
    return QFileDialog::getOpenFileName(parent, caption, {}, filter);
  };
  dialogs.paths_to_open = [](QWidget* parent, const QString& caption, const QString& filter) {
    return QFileDialog::getOpenFileNames(parent, caption, {}, filter);
  };
  dialogs.folder_to_open = [](QWidget* parent, const QString& caption) {
    return QFileDialog::getExistingDirectory(parent, caption);
  };
  dialogs.path_to_save = [](QWidget* parent, const QString& caption, const QString& suggestion,
                            const QString& filter) {
    return QFileDialog::getSaveFileName(parent, caption, suggestion, filter);
  };
  dialogs.print = platform_print_dialog();
  return dialogs;
}

}  // namespace skeinproof
