// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <QStringList>
#include <functional>

#include "app/print/print_page.h"

class QWidget;

namespace skeinproof {

enum class CloseAnswer { save, discard, cancel };
enum class OverwriteAnswer { overwrite, save_elsewhere, cancel };

// Every question that stops the work, in one place, so that tests answer instead of waiting for a person. An
// empty path means that the person gave up.
struct Dialogs {
  std::function<CloseAnswer(QWidget*, const QString& title)> save_first;
  std::function<OverwriteAnswer(QWidget*, const QString& sentence)> overwrite;
  std::function<QString(QWidget*, const QString& caption, const QString& filter)> path_to_open;
  std::function<QStringList(QWidget*, const QString& caption, const QString& filter)> paths_to_open;
  std::function<QString(QWidget*, const QString& caption)> folder_to_open;
  std::function<QString(QWidget*, const QString& caption, const QString& suggestion, const QString& filter)>
      path_to_save;
  PrintQuestion print;
};

// The platform's own dialogs.
Dialogs platform_dialogs();

}  // namespace skeinproof
