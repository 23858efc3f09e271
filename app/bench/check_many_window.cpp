// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/bench/check_many_window.h"

#include <QDateTime>
#include <QDir>
#include <QDirIterator>
#include <QDropEvent>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QMimeData>
#include <QProgressBar>
#include <QPushButton>
#include <QTreeWidget>
#include <QVBoxLayout>

#include "app/print/save_sheet.h"
#include "app/widgets/flow_layout.h"
#include "app/widgets/ink.h"
#include "app/widgets/quantity_text.h"
#include "core/file/submission_file.h"

namespace skeinproof {
namespace {

enum Column {
  file_column,
  stop_column,
  ask_column,
  note_column,
  style_column,
  worst_column,
  unread_column,
  unchecked_column,
  column_count
};
constexpr int path_role = Qt::UserRole, project_role = Qt::UserRole + 1, rank_role = Qt::UserRole + 2;
constexpr int most_files = 5000;

const QStringList& endings() {
  static const QStringList all = {QStringLiteral("*.txt"),  QStringLiteral("*.md"),
                                  QStringLiteral("*.html"), QStringLiteral("*.htm"),
                                  QStringLiteral("*.odt"),  QStringLiteral("*.docx"),
                                  QStringLiteral("*.json"), QStringLiteral("*.skeinproof")};
  return all;
}

// Sorts figures as figures, the gravest files by all they have.
class FileItem : public QTreeWidgetItem {
 public:
  using QTreeWidgetItem::QTreeWidgetItem;
  bool operator<(const QTreeWidgetItem& other) const override {
    const int column = treeWidget()->sortColumn();
    if (column == stop_column) return data(0, rank_role).toLongLong() < other.data(0, rank_role).toLongLong();
    if (column == file_column || column == worst_column) return text(column) < other.text(column);
    return text(column).toInt() < other.text(column).toInt();
  }
};

CheckedRow checked(const QString& path) {
  CheckedRow row;
  row.path = path;
  const auto found = check_file(std::filesystem::path(path.toStdU16String()));
  if (!found) {
    row.failure = sentence_of(found.error());
    return row;
  }
  const Review& review = found->review;
  row.is_project = found->file.is_project;
  for (const Cause& cause : review.causes)
    ++row.counts[static_cast<std::size_t>(review.findings[cause.findings.front()].severity)];
  if (!review.findings.empty()) {
    const Finding& worst = review.findings.front();
    QStringList place;
    for (const std::string& role : worst.roles) place << QString::fromStdString(role);
    row.worst = (place.isEmpty() ? QString() : place.join(QStringLiteral(", ")) + QStringLiteral(": ")) +
                QString::fromStdString(worst.title);
  }
  for (const NotUnderstood& one : review.reading.not_understood)
    row.not_understood += one.told_nothing ? 0 : 1;
  row.not_checked = static_cast<int>(review.not_checked.size());
  return row;
}

}  // namespace

bool can_be_checked(const QString& path) {
  const QFileInfo file(path);
  return file.isDir() || QDir::match(endings(), file.fileName());
}

QStringList checkable_paths(const QMimeData* dropped) {
  QStringList paths;
  for (const QUrl& url : dropped->urls())
    if (url.isLocalFile() && can_be_checked(url.toLocalFile())) paths << url.toLocalFile();
  return paths;
}

CheckManyWindow::CheckManyWindow(const Dialogs& dialogs, QWidget* parent)
    : QDialog(parent),
      dialogs_(dialogs),
      table_(new QTreeWidget),
      words_(new QLabel),
      bar_(new QProgressBar),
      stop_(new QPushButton(tr("&Stop"))),
      open_(new QPushButton(tr("&Open"))),
      save_(new QPushButton(tr("Save &table…"))),
      job_([this](CheckedRow row) {
        if (at_) show_row(at_->item, row);
        at_.reset();
        ++done_;
        check_next();
      }) {
  setWindowTitle(tr("Check many"));
  setAcceptDrops(true);
  table_->setAccessibleName(tr("Submissions"));
  table_->setHeaderLabels({tr("File"), tr("Stop"), tr("Ask"), tr("Note"), tr("Style"), tr("Worst finding"),
                           tr("Not understood"), tr("Not checked")});
  table_->setRootIsDecorated(false);
  table_->setUniformRowHeights(true);
  table_->setAllColumnsShowFocus(true);
  table_->header()->setStretchLastSection(false);
  table_->header()->setSectionResizeMode(worst_column, QHeaderView::Stretch);
  for (int at = 0; at < column_count; ++at)
    if (at != worst_column) table_->resizeColumnToContents(at);
  words_->setTextFormat(Qt::PlainText);
  words_->setWordWrap(true);
  bar_->setTextVisible(false);
  auto* buttons = new QWidget;
  auto* line = new FlowLayout(buttons);
  line->setSpacing(scaled(this, 6));
  auto* files = new QPushButton(tr("Add &files…"));
  auto* folder = new QPushButton(tr("Add a fol&der…"));
  auto* close = new QPushButton(tr("&Close"));
  for (QPushButton* button : {files, folder, stop_, save_, open_, close}) {
    button->setAutoDefault(false);
    line->addWidget(button);
  }
  auto* column = new QVBoxLayout(this);
  column->addWidget(table_, 1);
  column->addWidget(words_);
  column->addWidget(bar_);
  column->addWidget(buttons);
  connect(files, &QPushButton::clicked, this, &CheckManyWindow::add_files);
  connect(folder, &QPushButton::clicked, this, &CheckManyWindow::add_folder);
  connect(stop_, &QPushButton::clicked, this, &CheckManyWindow::stop);
  connect(save_, &QPushButton::clicked, this, &CheckManyWindow::save_table);
  connect(open_, &QPushButton::clicked, this, &CheckManyWindow::open_chosen);
  connect(close, &QPushButton::clicked, this, &QWidget::close);
  connect(table_, &QTreeWidget::itemActivated, this, &CheckManyWindow::open_chosen);
  connect(table_, &QTreeWidget::currentItemChanged, this, &CheckManyWindow::show_progress);
  resize(scaled(this, 900), scaled(this, 480));
  show_progress();
}

void CheckManyWindow::add(const QStringList& paths) {
  QStringList files;
  for (const QString& path : paths) {
    if (!QFileInfo(path).isDir()) {
      files << path;
      continue;
    }
    QStringList inside;
    QDirIterator each(path, endings(), QDir::Files, QDirIterator::Subdirectories);
    while (each.hasNext() && inside.size() < most_files) inside << each.next();
    inside.sort(Qt::CaseInsensitive);
    files += inside;
  }
  stopped_ = false;
  table_->setSortingEnabled(false);
  for (const QString& path : files) {
    auto* item = new FileItem(table_, QStringList{QFileInfo(path).fileName()});
    item->setToolTip(file_column, QDir::toNativeSeparators(path));
    item->setData(0, path_role, path);
    item->setText(worst_column, tr("waiting"));
    for (int at : {stop_column, ask_column, note_column, style_column, unread_column, unchecked_column})
      item->setTextAlignment(at, Qt::AlignRight | Qt::AlignVCenter);
    waiting_.push_back({path, item});
  }
  table_->resizeColumnToContents(file_column);
  table_->setColumnWidth(file_column, std::min(table_->columnWidth(file_column), scaled(this, 240)));
  for (int at : {stop_column, ask_column, note_column, style_column, unread_column, unchecked_column})
    table_->resizeColumnToContents(at);
  if (table_->currentItem() == nullptr && table_->topLevelItemCount() > 0)
    table_->setCurrentItem(table_->topLevelItem(0));
  if (files.isEmpty() && !paths.isEmpty()) words_->setText(tr("Nothing to check is in there."));
  if (!is_busy()) check_next();
}

void CheckManyWindow::dragEnterEvent(QDragEnterEvent* event) {
  if (!checkable_paths(event->mimeData()).isEmpty()) event->acceptProposedAction();
}

void CheckManyWindow::dropEvent(QDropEvent* event) {
  event->acceptProposedAction();
  add(checkable_paths(event->mimeData()));
}

void CheckManyWindow::add_files() {
  add(dialogs_.paths_to_open(
      this, tr("Files to check"),
      tr("Texts and projects (%1);;All files (*)").arg(endings().join(QLatin1Char(' ')))));
}

void CheckManyWindow::add_folder() {
  const QString path = dialogs_.folder_to_open(this, tr("Folder to check"));
  if (!path.isEmpty()) add({path});
}

void CheckManyWindow::check_next() {
  if (waiting_.empty()) {
    table_->setSortingEnabled(true);
    table_->sortByColumn(stop_column, Qt::DescendingOrder);
    show_progress();
    emit finished_checking();
    return;
  }
  at_ = waiting_.front();
  waiting_.pop_front();
  at_->item->setText(worst_column, tr("being checked …"));
  job_.ask([path = at_->path] { return checked(path); });
  show_progress();
}

void CheckManyWindow::stop() {
  for (const Waiting& left : waiting_) left.item->setText(worst_column, tr("not checked: stopped"));
  stopped_ = stopped_ || !waiting_.empty();
  waiting_.clear();
  show_progress();
}

void CheckManyWindow::show_row(QTreeWidgetItem* item, const CheckedRow& row) {
  item->setData(0, project_role, row.is_project);
  if (row.failure) {
    item->setText(worst_column, tr("cannot be read: %1").arg(*row.failure));
    item->setToolTip(worst_column, item->text(worst_column));
    return;
  }
  qlonglong rank = 0;
  for (std::size_t i = 0; i < row.counts.size(); ++i) {
    item->setText(stop_column + static_cast<int>(i), QString::number(row.counts[i]));
    rank = rank * 10000 + row.counts[i];
  }
  item->setData(0, rank_role, rank);
  QFont weight = font();
  weight.setBold(row.counts[0] > 0);
  item->setFont(stop_column, weight);
  item->setText(worst_column, row.worst.isEmpty() ? tr("nothing found") : row.worst);
  item->setToolTip(worst_column, item->text(worst_column));
  item->setText(unread_column, QString::number(row.not_understood));
  item->setText(unchecked_column, QString::number(row.not_checked));
  item->setData(0, Qt::AccessibleTextRole,
                tr("%1: %2 Stop, %3 Ask, %4 Note; %5")
                    .arg(item->text(file_column))
                    .arg(row.counts[0])
                    .arg(row.counts[1])
                    .arg(row.counts[2])
                    .arg(item->text(worst_column)));
}

void CheckManyWindow::show_progress() {
  const int all = table_->topLevelItemCount();
  bar_->setRange(0, std::max(1, all));
  bar_->setValue(done_);
  bar_->setVisible(is_busy() || !waiting_.empty());
  stop_->setEnabled(!waiting_.empty());
  open_->setEnabled(table_->currentItem() != nullptr);
  save_->setEnabled(all > 0);
  words_->setText(
      all == 0   ? tr("Add files or a folder, or drop them on the window.")
      : at_      ? tr("%1 of %2 checked; now %3").arg(done_).arg(all).arg(QFileInfo(at_->path).fileName())
      : stopped_ ? tr("Stopped: %1 of %2 checked.").arg(done_).arg(all)
                 : tr("%1 of %2 checked.").arg(done_).arg(all));
}

QString CheckManyWindow::progress_words() const { return words_->text(); }

void CheckManyWindow::open_chosen() {
  const QTreeWidgetItem* item = table_->currentItem();
  if (item == nullptr) return;
  const QString path = item->data(0, path_role).toString();
  // One that is not checked yet is told by its content.
  const QVariant project = item->data(0, project_role);
  emit wants_open(path, project.isValid() ? project.toBool()
                                          : is_project_or_json(std::filesystem::path(path.toStdU16String())));
}

Sheet CheckManyWindow::sheet() const {
  Table table;
  for (int column = 0; column < column_count; ++column)
    table.columns.push_back({table_->headerItem()->text(column).toStdString(),
                             column == file_column || column == worst_column ? Align::left : Align::right,
                             false});
  for (int row = 0; row < table_->topLevelItemCount(); ++row) {
    Row line;
    for (int column = 0; column < column_count; ++column) {
      const QString text = table_->topLevelItem(row)->text(column);
      const bool is_figure = column != file_column && column != worst_column && !text.isEmpty();
      line.cells.push_back(is_figure ? figure(text.toInt(), 0) : words(text.toStdString()));
    }
    table.rows.push_back(std::move(line));
  }
  Sheet sheet;
  sheet.title = tr("Submissions checked").toStdString();
  sheet.subtitle = words_->text().toStdString();
  sheet.date = QDate::currentDate().toString(Qt::ISODate).toStdString();
  sheet.parts.emplace_back(std::move(table));
  return sheet;
}

void CheckManyWindow::save_table() {
  const QString path = dialogs_.path_to_save(
      this, tr("Save the table"), tr("checked.csv"),
      tr("Comma separated (*.csv);;Workbook (*.xlsx);;PDF (*.pdf);;HTML (*.html);;Text (*.txt)"));
  if (path.isEmpty()) return;
  const auto saved = save_sheet(sheet(), path.toStdString(), QDateTime::currentSecsSinceEpoch());
  words_->setText(saved ? tr("Saved %1").arg(path) : sentence_of(saved.error()));
}

}  // namespace skeinproof
