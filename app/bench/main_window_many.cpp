// SPDX-License-Identifier: GPL-3.0-or-later
#include <QDropEvent>
#include <QFileInfo>
#include <QLabel>
#include <QMimeData>
#include <QtConcurrent>

#include "app/bench/check_many_window.h"
#include "app/bench/main_window.h"
#include "app/pages/page.h"
#include "app/widgets/message_bar.h"
#include "core/file/submission_file.h"

namespace skeinproof {
namespace {

bool is_project_path(const QString& path) {
  const QString suffix = QFileInfo(path).suffix().toLower();
  return suffix == QLatin1String("skeinproof") || suffix == QLatin1String("json");
}

}  // namespace

void MainWindow::dragEnterEvent(QDragEnterEvent* event) {
  if (!checkable_paths(event->mimeData()).isEmpty()) event->acceptProposedAction();
}

void MainWindow::dropEvent(QDropEvent* event) {
  const QStringList paths = checkable_paths(event->mimeData());
  if (paths.isEmpty()) return;
  event->acceptProposedAction();
  // The other program waits until the drop is taken; questions come after that.
  QMetaObject::invokeMethod(
      this, [this, paths] { take_dropped(paths); }, Qt::QueuedConnection);
}

// One project is opened, one text goes to the page that has a use for it; anything else is checked.
void MainWindow::take_dropped(const QStringList& paths) {
  const QString& first = paths.front();
  if (paths.size() == 1 && is_project_path(first)) return open_path(first);
  if (paths.size() == 1 && QFileInfo(first).isFile() && current_page() && current_page()->take_file(first))
    return;
  check_files(paths);
}

void MainWindow::check_many() { check_files({}); }

void MainWindow::check_files(const QStringList& paths) {
  if (!check_many_) {
    check_many_ = new CheckManyWindow(around_.dialogs, this);
    check_many_->setAttribute(Qt::WA_DeleteOnClose);
    connect(check_many_, &CheckManyWindow::wants_open, this, [this](const QString& path, bool is_project) {
      is_project ? open_path(path) : start_from_submission(path);
    });
  }
  check_many_->show();
  check_many_->raise();
  check_many_->activateWindow();
  if (!paths.isEmpty()) check_many_->add(paths);
}

void MainWindow::start_from_submission(const QString& path) {
  after_guard([this, path] {
    said_->setText(tr("Reading %1 …").arg(QFileInfo(path).fileName()));
    const quint64 state = open_.state();
    QtConcurrent::run([path] {
      return read_submission(std::filesystem::path(path.toStdU16String()));
    }).then(this, [this, path, state](Expected<SubmissionFile> file) {
      if (!file) return tell_failure(file.error(), path);
      if (state != open_.state()) {
        said_->setText(
            tr("%1 was not opened: the pattern was changed meanwhile.").arg(QFileInfo(path).fileName()));
        return;
      }
      said_->clear();
      desk_.start_new(new_pattern());
      open_.apply(tr("take over %1").arg(QFileInfo(path).fileName()),
                  [&](Pattern& pattern) { pattern = std::move(file->pattern); });
      show_page(QStringLiteral("Queries"));
      raise();
      activateWindow();
    });
  });
}

}  // namespace skeinproof
