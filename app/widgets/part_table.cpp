// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/part_table.h"

#include <QApplication>
#include <QClipboard>
#include <QHeaderView>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QResizeEvent>
#include <QScrollBar>
#include <algorithm>
#include <utility>

#include "app/document/open_pattern.h"
#include "app/widgets/count_words.h"
#include "app/widgets/field_message.h"
#include "app/widgets/flat_header.h"
#include "app/widgets/ink.h"
#include "app/widgets/part_delegate.h"
#include "app/widgets/part_table_model.h"

namespace skeinproof {

PartTable::PartTable(OpenPattern& open, PartList list, std::vector<PartColumn> columns, QWidget* parent)
    : QTableView(parent),
      open_(open),
      model_(new PartTableModel(open, std::move(list), std::move(columns), this)),
      chosen_cell_(new QWidget(viewport())) {
  chosen_cell_->setAttribute(Qt::WA_TransparentForMouseEvents);
  chosen_cell_->hide();
  setHorizontalHeader(new FlatHeader(this));
  setModel(model_);
  setItemDelegate(new PartDelegate(this));
  setShowGrid(false);
  setFrameShape(QFrame::NoFrame);
  setWordWrap(false);
  setSelectionMode(QAbstractItemView::ContiguousSelection);
  setEditTriggers(QAbstractItemView::EditKeyPressed | QAbstractItemView::AnyKeyPressed |
                  QAbstractItemView::DoubleClicked);
  setTabKeyNavigation(false);  // Tab leaves the table; while typing it goes to the next cell
  setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
  verticalHeader()->hide();
  verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
  horizontalHeader()->setMinimumSectionSize(20);
  connect(&open_, &OpenPattern::changed, this, [this] { refresh(); });
  connect(&open_, &OpenPattern::replaced, this, [this] { refresh(true); });
  connect(&open_, &OpenPattern::reader_changed, this, [this] { refresh(); });
  connect(model_, &QAbstractItemModel::dataChanged, this, &PartTable::show_reason);
  dress();
}

std::uint32_t PartTable::current_key() const { return model_->key_at(current_row()); }
int PartTable::current_row() const { return currentIndex().row(); }

bool PartTable::set_current_key(std::uint32_t key) {
  const int row = model_->row_of(key);
  if (row < 0) return false;
  const int column = std::max(0, currentIndex().column());
  setCurrentIndex(model_->index(row, column));
  scrollTo(currentIndex());
  return true;
}

void PartTable::refresh(bool other_rows) {
  const std::uint32_t kept = told_key_;
  const int row = current_row(), column = std::max(0, currentIndex().column()), parts = model_->part_count();
  const bool in_empty_row = row >= 0 && model_->is_empty_row(row);
  const bool typing = state() == EditingState;
  if (model_->follow(other_rows) && model_->rowCount() > 0) {
    int again = other_rows ? -1 : model_->row_of(kept);
    // What was typed in the empty row has become a part; typing goes on there.
    if (!other_rows && in_empty_row && model_->part_count() == parts + 1) again = parts;
    if (again < 0) again = std::clamp(row, 0, std::max(0, model_->part_count() - 1));
    setCurrentIndex(model_->index(again, column));
    // The open cell went with the old rows, and the focus with it.
    editor_went_ = typing;
    if (typing) setFocus();
  }
  if (current_key() != told_key_) emit current_part_changed(told_key_ = current_key());
  fit_columns();
  updateGeometry();
}

void PartTable::closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint) {
  QTableView::closeEditor(std::exchange(editor_went_, false) ? nullptr : editor, hint);
}

void PartTable::add() {
  if (!model_->list().append) return;
  const QModelIndex cell = model_->index(model_->part_count(), 0);
  setFocus();
  setCurrentIndex(cell);
  scrollTo(cell);
  edit(cell);
}

void PartTable::duplicate() {
  const int row = current_row();
  if (!model_->list().duplicate || model_->key_at(row) == 0) return;
  open_.apply(
      tr("duplicate %1 %2").arg(model_->list().part, model_->name_at(row)),
      [this, row](Pattern& pattern) { model_->list().duplicate(pattern, static_cast<std::size_t>(row)); });
  set_current_key(model_->key_at(row + 1));
}

void PartTable::erase() {
  const int row = current_row();
  if (!model_->list().erase || model_->key_at(row) == 0) return;
  const QString name = model_->name_at(row);
  open_.apply(tr("delete %1 %2").arg(model_->list().part, name), [this, row](Pattern& pattern) {
    model_->list().erase(pattern, static_cast<std::size_t>(row));
  });
  emit says(tr("Deleted %1 %2; Undo brings it back.").arg(model_->list().part, name));
}

void PartTable::move(int step) {
  const int row = current_row(), to = row + step;
  if (!model_->list().move || model_->key_at(row) == 0 || to < 0 || to >= model_->part_count()) return;
  const std::uint32_t key = model_->key_at(row);
  open_.apply(tr("move %1 %2").arg(model_->list().part, model_->name_at(row)),
              [this, row, to](Pattern& pattern) {
                model_->list().move(pattern, static_cast<std::size_t>(row), static_cast<std::size_t>(to));
              });
  set_current_key(key);
}

void PartTable::set_height_follows_rows(int least) {
  least_rows_ = least;
  setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  updateGeometry();
}

QSize PartTable::sizeHint() const {
  QSize hint = QTableView::sizeHint();
  if (least_rows_ == 0) return hint;
  const int rows = std::max(least_rows_, model_->rowCount());
  const bool bar = horizontalHeader()->length() > viewport()->width() && viewport()->width() > 0;
  hint.setHeight(horizontalHeader()->sizeHint().height() + rows * verticalHeader()->defaultSectionSize() +
                 2 * frameWidth() + (bar ? horizontalScrollBar()->sizeHint().height() : 0));
  return hint;
}

QSize PartTable::minimumSizeHint() const {
  QSize least = QTableView::minimumSizeHint();
  if (least_rows_ > 0) least.setHeight(sizeHint().height());
  return least;
}

QString PartTable::copied() const {
  const QModelIndexList chosen = selectionModel()->selectedIndexes();
  if (chosen.isEmpty()) return {};
  int top = chosen.first().row(), bottom = top, left = chosen.first().column(), right = left;
  for (const QModelIndex& cell : chosen) {
    top = std::min(top, cell.row());
    bottom = std::max(bottom, cell.row());
    left = std::min(left, cell.column());
    right = std::max(right, cell.column());
  }
  QStringList lines;
  for (int row = top; row <= bottom; ++row) {
    if (model_->is_empty_row(row)) continue;
    QStringList cells;
    for (int column = left; column <= right; ++column) cells << model_->cell_text(row, column);
    lines << cells.join(QLatin1Char('\t'));
  }
  return lines.join(QLatin1Char('\n'));
}

void PartTable::paste(const QString& text) {
  const QModelIndex from = currentIndex();
  if (!from.isValid()) return;
  QStringList lines = QString(text).remove(QLatin1Char('\r')).split(QLatin1Char('\n'));
  while (!lines.isEmpty() && lines.last().isEmpty()) lines.removeLast();
  std::vector<PartTableModel::CellText> cells;
  for (qsizetype line = 0; line < lines.size(); ++line) {
    const QStringList words = lines[line].split(QLatin1Char('\t'));
    for (qsizetype at = 0; at < words.size(); ++at)
      cells.push_back({from.row() + static_cast<int>(line), from.column() + static_cast<int>(at), words[at]});
  }
  if (cells.empty()) return;
  const int unread = model_->write(cells, tr("paste into %1").arg(accessibleName().toLower()));
  emit says(unread == 0 ? tr("Pasted; one step of undo.")
                        : tr("Not read, and kept as typed: %1.")
                              .arg(count_words(static_cast<std::size_t>(unread), tr("cell"), tr("cells"))));
}

void PartTable::clear_cells() {
  std::vector<PartTableModel::CellText> cells;
  for (const QModelIndex& cell : selectionModel()->selectedIndexes()) {
    model_->give_up_bad_text(cell.row(), cell.column());
    if (model_->column(cell.column()).read && !model_->is_empty_row(cell.row()))
      cells.push_back({cell.row(), cell.column(), QString()});
  }
  if (!cells.empty())
    model_->write(cells, tr("clear %1").arg(model_->column(currentIndex().column()).undo_name));
}

void PartTable::keyPressEvent(QKeyEvent* event) {
  const QModelIndex cell = currentIndex();
  const bool typed_on = cell.isValid() && model_->flags(cell).testFlag(Qt::ItemIsEditable);
  if (event->matches(QKeySequence::Copy)) {
    QApplication::clipboard()->setText(copied());
  } else if (event->matches(QKeySequence::Paste)) {
    paste(QApplication::clipboard()->text());
  } else if (event->modifiers() == Qt::AltModifier &&
             (event->key() == Qt::Key_Up || event->key() == Qt::Key_Down)) {
    move(event->key() == Qt::Key_Up ? -1 : 1);
  } else if (event->modifiers() == Qt::ControlModifier && event->key() == Qt::Key_Delete) {
    erase();
  } else if (event->key() == Qt::Key_Delete || event->key() == Qt::Key_Backspace) {
    clear_cells();
  } else if (event->key() == Qt::Key_Escape && cell.isValid() &&
             cell.data(PartTableModel::bad_text_role).toBool()) {
    model_->give_up_bad_text(cell.row(), cell.column());
  } else if ((event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) && typed_on) {
    // Enter in an open cell comes here too, after the cell has taken it.
    if (state() != EditingState) edit(cell);
  } else {
    QTableView::keyPressEvent(event);
    return;
  }
  event->accept();
}

void PartTable::mousePressEvent(QMouseEvent* event) {
  QTableView::mousePressEvent(event);
  const QModelIndex cell = indexAt(event->position().toPoint());
  // A list opens at one click, and so does the empty row.
  if (event->button() == Qt::LeftButton && cell.isValid() && event->modifiers() == Qt::NoModifier &&
      (model_->column(cell.column()).choose || (model_->is_empty_row(cell.row()) && cell.column() == 0)))
    edit(cell);
}

void PartTable::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
  QTableView::currentChanged(current, previous);
  const std::uint32_t key = model_->key_at(current.row());
  if (key != told_key_) emit current_part_changed(told_key_ = key);
  // The view repaints the two cells; the tint is of their rows.
  if (current.row() != previous.row()) viewport()->update();
  show_reason();
}

void PartTable::scrollContentsBy(int dx, int dy) {
  QTableView::scrollContentsBy(dx, dy);
  show_reason();
}

void PartTable::resizeEvent(QResizeEvent* event) {
  QTableView::resizeEvent(event);
  if (event->size().width() != event->oldSize().width()) fit_columns();
  show_reason();
}

void PartTable::show_reason() {
  const QModelIndex cell = currentIndex();
  const QString reason = cell.isValid() ? model_->bad_reason(cell.row(), cell.column()) : QString();
  chosen_cell_->setVisible(!reason.isEmpty());
  if (!reason.isEmpty()) chosen_cell_->setGeometry(visualRect(cell));
  FieldMessage::show_under(chosen_cell_, reason_, reason);
}

void PartTable::changeEvent(QEvent* event) {
  QTableView::changeEvent(event);
  if (event->type() == QEvent::FontChange || event->type() == QEvent::PaletteChange) dress();
}

void PartTable::dress() {
  verticalHeader()->setDefaultSectionSize(scaled(this, 24));
  horizontalHeader()->setFont(type_of(font()).small);
  horizontalHeader()->setFixedHeight(scaled(this, 24));
  fit_columns();
  updateGeometry();
}

void PartTable::fit_columns() {
  int fixed = 0, growing = 0;
  for (int column = 0; column < model_->columnCount(); ++column)
    if (model_->column(column).stretch > 0)
      ++growing;
    else
      fixed += std::max(sizeHintForColumn(column), horizontalHeader()->sectionSizeHint(column));
  // Where there is no room to grow into, a column keeps a readable width and the table scrolls.
  const int least = scaled(this, 84);
  const bool roomy = viewport()->width() - fixed >= growing * least;
  for (int column = 0; column < model_->columnCount(); ++column) {
    const bool grows = model_->column(column).stretch > 0;
    horizontalHeader()->setSectionResizeMode(column, !grows  ? QHeaderView::ResizeToContents
                                                     : roomy ? QHeaderView::Stretch
                                                             : QHeaderView::Fixed);
    if (grows && !roomy) horizontalHeader()->resizeSection(column, least);
  }
}

}  // namespace skeinproof
