// SPDX-License-Identifier: GPL-3.0-or-later
#include <QCloseEvent>
#include <QDateTime>
#include <QFileInfo>
#include <QLabel>

#include "app/bench/focused_text.h"
#include "app/bench/main_window.h"
#include "app/bench/person_settings.h"
#include "app/bench/samples.h"
#include "app/document/file_words.h"
#include "app/pages/page.h"
#include "app/print/print_page.h"
#include "app/widgets/message_bar.h"
#include "core/pattern/new_from_old.h"

namespace skeinproof {

namespace {

QString project_filter() { return MainWindow::tr("Projects (*.skeinproof);;All files (*)"); }
QString json_filter() { return MainWindow::tr("JSON (*.json);;All files (*)"); }
QString pdf_filter() { return MainWindow::tr("PDF (*.pdf)"); }

QString with_suffix(const QString& path, const QString& suffix) {
  return path.isEmpty() || QFileInfo(path).suffix() == suffix ? path : path + QLatin1Char('.') + suffix;
}

// A file name that every system takes, from a title.
QString as_file_name(const QString& title) {
  QString name;
  for (const QChar c : title.simplified()) name += c.isLetterOrNumber() ? c.toLower() : QLatin1Char('-');
  while (name.contains(QLatin1String("--"))) name.replace(QLatin1String("--"), QLatin1String("-"));
  return name;
}

}  // namespace

void MainWindow::after_guard(std::function<void()> then) {
  take_focused_text();
  if (open_.is_saved()) return then();
  switch (around_.dialogs.save_first(this, desk_.title())) {
    case CloseAnswer::cancel:
      return;
    case CloseAnswer::discard:
      return then();
    case CloseAnswer::save:
      save_then([then](bool done) {
        if (done) then();
      });
  }
}

void MainWindow::start_new() {
  after_guard([this] {
    desk_.start_new(new_pattern());
    if (!pages_.empty()) go_to({0, 0}, true);
  });
}

void MainWindow::start_from_this() {
  after_guard([this] {
    const QString old = desk_.title();
    desk_.start_new(new_from_old(open_.pattern()));
    bar_->post(
        {QStringLiteral("from_old"),
         tr("A new pattern with the sizes, yarns, colours, fabrics, charts and pieces of “%1”. Its title, "
            "weighings and printed counts stayed behind.")
             .arg(old),
         {},
         true});
    if (!pages_.empty()) go_to({0, 0}, true);
  });
}

void MainWindow::choose_and_open() {
  after_guard([this] {
    const QString path = around_.dialogs.path_to_open(
        this, tr("Open a project"), tr("Projects (*.skeinproof);;JSON (*.json);;All files (*)"));
    if (!path.isEmpty()) desk_.open(path);
  });
}

void MainWindow::open_path(const QString& path) {
  if (!QFileInfo::exists(path)) {
    around_.settings.drop_recent_file(path);
    tell_failure(Error{ErrorKind::not_found, {}, {}, {}}, path);
    return;
  }
  // A sample stays as it came, whichever way it is asked for.
  const bool is_sample =
      !around_.samples_folder.isEmpty() &&
      QFileInfo(path).canonicalPath() == QFileInfo(around_.samples_folder).canonicalFilePath();
  after_guard([this, path, is_sample] { is_sample ? desk_.open_as_copy(path) : desk_.open(path); });
}

void MainWindow::open_sample(const QString& stem) {
  for (const Sample& sample : samples_in(around_.samples_folder))
    if (sample.stem == stem) {
      after_guard([this, path = sample.path] { desk_.open_as_copy(path); });
      return;
    }
  bar_->post({QStringLiteral("sample"), tr("The sample “%1” is not installed.").arg(stem), {}, true});
}

void MainWindow::save() { save_then({}); }

void MainWindow::save_then(ProjectDesk::Then then) {
  take_focused_text();
  if (desk_.path().isEmpty())
    save_as_then(std::move(then));
  else
    desk_.save(std::move(then));
}

void MainWindow::save_as() { save_as_then({}); }

void MainWindow::save_as_then(ProjectDesk::Then then) {
  take_focused_text();
  const QString suggestion =
      desk_.path().isEmpty() ? as_file_name(desk_.title()) + QStringLiteral(".skeinproof") : desk_.path();
  const QString path =
      with_suffix(around_.dialogs.path_to_save(this, tr("Save the project as"), suggestion, project_filter()),
                  QStringLiteral("skeinproof"));
  if (!path.isEmpty())
    desk_.save_as(path, std::move(then));
  else if (then)
    then(false);
}

void MainWindow::import_json() {
  after_guard([this] {
    const QString path = around_.dialogs.path_to_open(this, tr("Import a project from JSON"), json_filter());
    if (!path.isEmpty()) desk_.open(path);
  });
}

void MainWindow::export_json() {
  take_focused_text();
  const QString path = with_suffix(
      around_.dialogs.path_to_save(this, tr("Export the project as JSON"),
                                   as_file_name(desk_.title()) + QStringLiteral(".json"), json_filter()),
      QStringLiteral("json"));
  if (!path.isEmpty()) desk_.export_json(path);
}

void MainWindow::print_page() {
  Page* page = current_page();
  if (!page || !skeinproof::print_page(*page, this, around_.dialogs.print)) return;
  page->sheet_went_out();
  said_->setText(tr("Sent to the printer"));
}

void MainWindow::page_to_pdf() {
  Page* page = current_page();
  if (!page || !page->sheet()) return;
  const QString suggestion = as_file_name(desk_.title() + ' ' + page->windowTitle()) + QStringLiteral(".pdf");
  const QString path =
      with_suffix(around_.dialogs.path_to_save(this, tr("Save this page as PDF"), suggestion, pdf_filter()),
                  QStringLiteral("pdf"));
  if (path.isEmpty()) return;
  if (!save_pdf(*page, path)) return tell_failure(Error{ErrorKind::system, {}, {}, {}}, path);
  page->sheet_went_out();
  said_->setText(tr("%1 was written").arg(QFileInfo(path).fileName()));
}

void MainWindow::tell_failure(const Error& error, const QString& path) {
  std::vector<MessageBar::Choice> choices;
  if (error.kind == ErrorKind::changed_behind_our_back)
    choices.push_back({tr("&Write over it"), [this] { desk_.save_as(desk_.path()); }});
  const bool of_a_save = error.kind == ErrorKind::changed_behind_our_back ||
                         error.kind == ErrorKind::read_only || error.kind == ErrorKind::locked ||
                         error.kind == ErrorKind::no_space;
  if (of_a_save) choices.push_back({tr("Save under another &name…"), [this] { save_as(); }});
  bar_->post({QStringLiteral("file"), file_failure_words(error, path), std::move(choices), true});
}

void MainWindow::remember_file(const QString& path) {
  bar_->take_back(QStringLiteral("file"));
  if (!path.isEmpty()) around_.settings.add_recent_file(path);
  recovery_.set_path(desk_.path());
  follow();
}

void MainWindow::offer_recoveries() {
  for (const Recovery& found : recovery_.left_behind()) {
    const QString name = found.title.empty() ? tr("Untitled") : QString::fromStdString(found.title);
    const QString when = QDateTime::fromSecsSinceEpoch(found.written_s).toString(tr("d MMMM yyyy, HH:mm"));
    const MessageBar::Choice throw_away{tr("Throw it away"), [this, found] { recovery_.forget(found); }};
    if (found.damage) {
      bar_->post({QString::fromStdString(found.key),
                  tr("A copy of unsaved work is there and cannot be read. %1")
                      .arg(QString::fromStdString(found.damage->message())),
                  {throw_away},
                  true});
      continue;
    }
    bar_->post({QString::fromStdString(found.key),
                tr("“%1” was not saved when the program ended. A copy of %2 is kept.").arg(name, when),
                {{tr("Open the copy"), [this, found] { take_recovery(found); }}, throw_away},
                true});
  }
}

void MainWindow::take_recovery(const Recovery& found) {
  after_guard([this, found] {
    auto pattern = recovery_.read(found);
    if (!pattern) return tell_failure(pattern.error(), QString::fromStdString(found.key));
    desk_.take_recovered(std::move(*pattern), QString::fromStdU16String(found.original.u16string()));
    // The work is unsaved in this window now and has a copy under its own name; then the old one may go.
    if (recovery_.write_now()) recovery_.forget(found);
  });
}

void MainWindow::quit() { close(); }

void MainWindow::closeEvent(QCloseEvent* event) {
  if (desk_.is_busy()) {
    event->ignore();
    desk_.when_idle([this] { close(); });
    return;
  }
  if (!leaving_) {
    take_focused_text();
    if (!open_.is_saved()) {
      event->ignore();
      after_guard([this] {
        leaving_ = true;
        QMetaObject::invokeMethod(
            this, [this] { close(); }, Qt::QueuedConnection);
      });
      return;
    }
  }
  around_.settings.set_window_place(saveGeometry());
  recovery_.drop();
  event->accept();
}

}  // namespace skeinproof
