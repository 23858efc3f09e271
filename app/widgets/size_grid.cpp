// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/size_grid.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QVBoxLayout>

#include "app/document/open_pattern.h"
#include "app/widgets/count_words.h"
#include "app/widgets/ink.h"
#include "app/widgets/size_list_text.h"
#include "app/widgets/size_table.h"
#include "app/widgets/size_table_model.h"

namespace skeinproof {

SizeGrid::SizeGrid(OpenPattern& open, QWidget* parent)
    : QWidget(parent),
      open_(open),
      model_(new SizeTableModel(open, this)),
      table_(new SizeTable(*model_, this)),
      line_bar_(new QWidget(this)),
      line_label_(new QLabel),
      line_(new QLineEdit),
      line_count_(new QLabel),
      message_(new QLabel(this)) {
  line_label_->setBuddy(line_);
  line_->installEventFilter(this);
  line_->setAccessibleName(tr("The row as a list"));
  message_->setWordWrap(true);
  message_->setTextFormat(Qt::PlainText);
  message_->hide();
  auto* bar = new QHBoxLayout(line_bar_);
  bar->addWidget(line_label_);
  bar->addWidget(line_, 1);
  bar->addWidget(line_count_);
  auto* layout = new QVBoxLayout(this);
  layout->setContentsMargins(0, 0, 0, 0);
  layout->setSpacing(0);
  layout->addWidget(table_, 1);
  layout->addWidget(line_bar_);
  layout->addWidget(message_);
  setFocusProxy(table_);

  connect(table_, &SizeTable::current_moved, this, [this] {
    show_line();
    emit current_changed(current_row(), current_size());
  });
  connect(table_, &SizeTable::list_offered, this, &SizeGrid::offer_list);
  connect(table_, &SizeTable::said, this, [this](const QString& words, bool bad) {
    if (bad) set_message(words, true);
    emit says(words);
  });
  connect(table_, &SizeTable::cell_typed, this, [this](int row, const QString& text) {
    if (row >= 0 && is_size_list(text))
      preview(row, text);
    else
      set_message({}, false);
  });
  connect(line_, &QLineEdit::textEdited, this, [this](const QString& text) {
    kept_lines_[line_name_] = text;
    preview(line_row_, text);
  });
  connect(line_, &QLineEdit::returnPressed, this, [this] {
    if (take_line()) table_->setFocus();
  });
  connect(&open_, &OpenPattern::replaced, this, [this] { kept_lines_.clear(); });
  connect(&open_, &OpenPattern::changed, this, &SizeGrid::show_line);
  connect(&open_, &OpenPattern::reader_changed, this, &SizeGrid::show_line);
  connect(model_, &QAbstractItemModel::columnsInserted, this, &SizeGrid::fit);
  connect(model_, &QAbstractItemModel::columnsRemoved, this, &SizeGrid::fit);
}

void SizeGrid::set_rows(std::vector<SizeRow> rows) {
  const int row = std::max(0, current_row());
  model_->set_rows(std::move(rows));
  // Another document may have come with the rows: its chosen size is the column, not the one before.
  if (model_->rowCount() > 0) set_current(std::min(row, model_->rowCount() - 1), open_.chosen_size_index());
  fit();
  show_line();
}

void SizeGrid::set_second_line(std::function<QString(const Pattern&, std::size_t)> line) {
  model_->set_second_line(std::move(line));
  fit();
}

void SizeGrid::set_corner(const QString& words) { table_->set_corner(words); }
void SizeGrid::set_line_editor_visible(bool visible) { line_bar_->setVisible(visible); }

void SizeGrid::set_height_follows_rows(bool follows) {
  follows_rows_ = follows;
  fit();
}

int SizeGrid::current_row() const { return table_->currentIndex().row(); }

std::size_t SizeGrid::current_size() const {
  return static_cast<std::size_t>(std::max(0, table_->currentIndex().column()));
}

void SizeGrid::set_current(int row, std::size_t size_index) {
  table_->setCurrentIndex(model_->index(row, static_cast<int>(size_index)));
}

QString SizeGrid::message() const { return message_->text(); }

void SizeGrid::show_line() {
  const int row = current_row();
  line_row_ = row;
  const bool there = row >= 0 && row < model_->rowCount();
  line_->setEnabled(there && model_->is_editable(row));
  line_name_ = there ? model_->undo_name(row) : QString();
  line_label_->setText(there ? model_->rows()[static_cast<std::size_t>(row)].label : QString());
  if (!there) {
    line_->clear();
    line_count_->clear();
    set_message({}, false);
    return;
  }
  const auto kept = kept_lines_.find(line_name_);
  if (kept != kept_lines_.end()) {
    if (line_->text() != kept->second) line_->setText(kept->second);
    preview(row, kept->second);
    return;
  }
  const QString list = model_->list_text(row);
  if (line_->text() != list) line_->setText(list);
  line_count_->setText(
      count_words(static_cast<std::size_t>(model_->columnCount()), tr("value"), tr("values")));
  const QString reason = table_->currentIndex().data(SizeTableModel::bad_text_role).toString();
  set_message(reason, !reason.isEmpty());
}

ListForSizes SizeGrid::read_line(int row, const QString& text) const {
  return read_list_for_sizes(text, model_->rows()[static_cast<std::size_t>(row)].format, open_.reader(),
                             open_.pattern());
}

void SizeGrid::preview(int row, const QString& text) {
  if (text.trimmed().isEmpty()) {
    set_message(tr("Enter clears the row"), false);
    return;
  }
  const ListForSizes list = read_line(row, text);
  line_count_->setText(count_words(list.values.size(), tr("value"), tr("values")));
  const QString words = understood(list, open_.pattern());
  if (list.reason.isEmpty())
    set_message(tr("Understood %1. Enter fills the row.").arg(words), false);
  else
    set_message(words.isEmpty() ? list.reason : tr("%1 Understood %2.").arg(list.reason, words), true);
}

void SizeGrid::offer_list(int row, const QString& text, bool was_typed) {
  set_current(row, current_size());
  kept_lines_[model_->undo_name(row)] = text;
  show_line();
  // A list typed into a cell has been previewed while it was typed; one that does not fit waits in the line.
  if (was_typed && take_line()) return;
  line_bar_->show();
  line_->setFocus();
  line_->selectAll();
}

bool SizeGrid::take_line() {
  if (line_row_ < 0 || !model_->is_editable(line_row_)) return false;
  const QString text = line_->text();
  std::vector<QString> values(static_cast<std::size_t>(model_->columnCount()));
  if (!text.trimmed().isEmpty()) {
    const ListForSizes list = read_line(line_row_, text);
    if (!list.reason.isEmpty()) {
      kept_lines_[line_name_] = text;
      preview(line_row_, text);
      return false;
    }
    values = list.values;
  }
  kept_lines_.erase(line_name_);
  std::vector<SizeTableModel::CellText> cells;
  for (int size = 0; size < model_->columnCount(); ++size)
    cells.push_back({line_row_, size, values[static_cast<std::size_t>(size)]});
  model_->write(cells, line_name_);
  show_line();
  return true;
}

void SizeGrid::set_message(const QString& message, bool bad) {
  if (message_->text() == message && message_is_bad_ == bad) return;
  message_is_bad_ = bad;
  message_->setText(message);
  message_->setVisible(!message.isEmpty());
  line_->setAccessibleDescription(message);
  fit_message();
}

void SizeGrid::fit_message() {
  message_->setContentsMargins(scaled(this, 12), 0, scaled(this, 12), scaled(this, 6));
  QFont small = type_of(font()).small;
  if (message_is_bad_) small.setWeight(QFont::DemiBold);
  message_->setFont(small);
}

bool SizeGrid::eventFilter(QObject* watched, QEvent* event) {
  if (watched == line_ && event->type() == QEvent::KeyPress &&
      static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape && kept_lines_.erase(line_name_) > 0) {
    show_line();
    return true;
  }
  return QWidget::eventFilter(watched, event);
}

void SizeGrid::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() != QEvent::FontChange) return;
  fit_message();
  fit();
}

void SizeGrid::fit() {
  table_->fit();
  const int height = table_->full_height();
  table_->setMinimumHeight(follows_rows_ ? height : 0);
  table_->setMaximumHeight(follows_rows_ ? height : QWIDGETSIZE_MAX);
}

}  // namespace skeinproof
