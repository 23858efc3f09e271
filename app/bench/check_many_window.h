// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QDialog>
#include <array>
#include <deque>
#include <optional>
#include <vector>

#include "app/bench/dialogs.h"
#include "app/document/latest_job.h"
#include "core/sheets/sheet.h"

class QLabel;
class QMimeData;
class QProgressBar;
class QPushButton;
class QTreeWidget;
class QTreeWidgetItem;

namespace skeinproof {

// What the check of one file came to.
struct CheckedRow {
  QString path;
  std::optional<QString> failure;  // why it could not be read
  bool is_project = false;
  std::array<int, 4> counts{};  // causes by the severity of their gravest finding
  QString worst;                // its gravest finding
  int not_understood = 0;
  int not_checked = 0;
};

// A folder, or a file that by its name may hold a project or a text.
bool can_be_checked(const QString& path);
QStringList checkable_paths(const QMimeData* dropped);

// Submissions one under the other with their worst findings; checked one after the other on a thread of its
// own, and each can be opened meanwhile.
class CheckManyWindow : public QDialog {
  Q_OBJECT

 public:
  explicit CheckManyWindow(const Dialogs& dialogs, QWidget* parent = nullptr);

  // Files, and what a folder and those in it hold of projects and texts.
  void add(const QStringList& paths);
  void add_files();
  void add_folder();
  void stop();
  void save_table();
  void open_chosen();

  bool is_busy() const { return job_.is_busy(); }
  QTreeWidget* table() const { return table_; }
  QString progress_words() const;
  Sheet sheet() const;

 signals:
  void wants_open(const QString& path, bool is_project);
  void finished_checking();

 protected:
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dropEvent(QDropEvent* event) override;

 private:
  struct Waiting {
    QString path;
    QTreeWidgetItem* item;
  };
  void check_next();
  void show_row(QTreeWidgetItem* item, const CheckedRow& row);
  void show_progress();

  const Dialogs& dialogs_;
  QTreeWidget* table_;
  QLabel* words_;
  QProgressBar* bar_;
  QPushButton* stop_;
  QPushButton* open_;
  QPushButton* save_;
  std::deque<Waiting> waiting_;
  std::optional<Waiting> at_;  // what is being checked
  int done_ = 0;
  bool stopped_ = false;
  LatestJob<CheckedRow> job_;
};

}  // namespace skeinproof
