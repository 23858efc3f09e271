// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/size_table.h"

#include <QAbstractButton>
#include <QClipboard>
#include <QContextMenuEvent>
#include <QGuiApplication>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QMenu>
#include <QMimeData>
#include <QScrollBar>
#include <algorithm>

#include "app/document/open_pattern.h"
#include "app/widgets/count_words.h"
#include "app/widgets/ink.h"
#include "app/widgets/size_list_text.h"
#include "app/widgets/size_table_model.h"
#include "app/widgets/size_table_paint.h"

namespace skeinproof {

namespace {

constexpr auto tabbed_text = "text/tab-separated-values";

}  // namespace

SizeTable::SizeTable(SizeTableModel& model, QWidget* parent)
    : QTableView(parent), model_(model), corner_(new QLabel(this)) {
  setModel(&model_);
  setHorizontalHeader(new SizeHeader(Qt::Horizontal, this));
  setVerticalHeader(new SizeHeader(Qt::Vertical, this));
  setItemDelegate(new SizeCellDelegate(*this));
  setShowGrid(false);
  setCornerButtonEnabled(false);
  setTabKeyNavigation(false);
  setWordWrap(false);
  setSelectionMode(QAbstractItemView::ExtendedSelection);
  setEditTriggers(QAbstractItemView::AnyKeyPressed | QAbstractItemView::EditKeyPressed |
                  QAbstractItemView::DoubleClicked);
  setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
  setAccessibleName(tr("One value per size"));
  corner_->setContentsMargins(scaled(this, 7), 0, 0, 0);
  corner_->setAutoFillBackground(true);
  set_corner(tr("Size"));
  connect(&model_, &QAbstractItemModel::modelReset, this, &SizeTable::fit);
  connect(&model_, &QAbstractItemModel::dataChanged, this, &SizeTable::fit);
  connect(&model_, &QAbstractItemModel::headerDataChanged, this, &SizeTable::fit);
  connect(selectionModel(), &QItemSelectionModel::selectionChanged, this, [this] { viewport()->update(); });
}

void SizeTable::set_corner(const QString& words) { corner_->setText(words); }

void SizeTable::fit() {
  if (fitting_) return;
  fitting_ = true;
  const int columns = model_.columnCount(), rows = model_.rowCount();
  QFont heavy = font();
  heavy.setWeight(QFont::DemiBold);
  const QFontMetrics measure(heavy);
  int widest = scaled(this, 48);
  for (int column = 0; column < columns; ++column) {
    for (const QString& line :
         model_.headerData(column, Qt::Horizontal, Qt::DisplayRole).toString().split(QLatin1Char('\n')))
      widest = std::max(widest, measure.horizontalAdvance(line) + scaled(this, 16));
    for (int row = 0; row < rows; ++row)
      widest = std::max(widest,
                        std::min(measure.horizontalAdvance(model_.cell_text(row, column)) + scaled(this, 14),
                                 scaled(this, 150)));
  }
  const int room = columns > 0 ? viewport()->width() / columns : 0;
  const int width = std::max(widest, std::min(room, scaled(this, 104)));
  for (int column = 0; column < columns; ++column) setColumnWidth(column, width);
  for (int row = 0; row < rows; ++row) setRowHeight(row, scaled(this, 25));
  horizontalHeader()->setFixedHeight(horizontalHeader()->sizeHint().height());
  verticalHeader()->setFixedWidth(verticalHeader()->sizeHint().width());
  updateGeometries();
  horizontalHeader()->viewport()->update();
  verticalHeader()->viewport()->update();
  fitting_ = false;
}

int SizeTable::full_height() const {
  const bool scrolls = horizontalHeader()->length() > viewport()->width();
  return horizontalHeader()->sizeHint().height() + model_.rowCount() * scaled(this, 25) + 2 * frameWidth() +
         (scrolls ? horizontalScrollBar()->sizeHint().height() : 0);
}

void SizeTable::updateGeometries() {
  QTableView::updateGeometries();
  const Ink ink = ink_of(palette());
  QPalette shades = corner_->palette();
  if (shades.color(QPalette::Window) != ink.header || shades.color(QPalette::WindowText) != ink.text) {
    shades.setColor(QPalette::Window, ink.header);
    shades.setColor(QPalette::WindowText, ink.text);
    corner_->setPalette(shades);
  }
  corner_->setGeometry(frameWidth(), frameWidth(), verticalHeader()->width(), horizontalHeader()->height());
}

void SizeTable::resizeEvent(QResizeEvent* event) {
  QTableView::resizeEvent(event);
  fit();
}

void SizeTable::changeEvent(QEvent* event) {
  QTableView::changeEvent(event);
  if (event->type() == QEvent::FontChange) fit();
}

void SizeTable::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
  QTableView::currentChanged(current, previous);
  verticalHeader()->viewport()->update();
  emit current_moved();
}

void SizeTable::keyPressEvent(QKeyEvent* event) {
  const QModelIndex current = currentIndex();
  if (event->matches(QKeySequence::Copy)) return copy();
  if (event->matches(QKeySequence::Paste)) return paste(QGuiApplication::clipboard()->mimeData());
  const bool plain = (event->modifiers() & ~Qt::KeypadModifier) == Qt::NoModifier;
  if (plain && (event->key() == Qt::Key_Delete || event->key() == Qt::Key_Backspace)) return clear_selected();
  if (plain && (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) && current.isValid() &&
      state() != EditingState && (current.flags() & Qt::ItemIsEditable))
    return edit(current);
  if (event->key() == Qt::Key_Escape && current.isValid() &&
      !current.data(SizeTableModel::bad_text_role).isNull()) {
    model_.give_up_bad_text(current.row(), current.column());
    emit current_moved();
    return;
  }
  QTableView::keyPressEvent(event);
}

bool SizeTable::take_cell(const QModelIndex& index, const QString& text, bool was_typed) {
  const int row = index.row();
  const bool one_value =
      text.trimmed().isEmpty() ||
      read_quantity(model_.rows()[static_cast<std::size_t>(row)].format, model_.open().reader(), text)
          .has_value();
  if (!one_value && is_size_list(text)) {
    emit list_offered(row, text, was_typed);
    return false;
  }
  return model_.setData(index, text, Qt::EditRole);
}

void SizeTable::closeEditor(QWidget* editor, QAbstractItemDelegate::EndEditHint hint) {
  QTableView::closeEditor(editor, hint);
  emit cell_typed(currentIndex().row(), {});
  emit current_moved();
}

bool SizeTable::is_whole_rows() const {
  const auto cells = selectionModel()->selectedIndexes();
  return !cells.isEmpty() && model_.columnCount() > 1 &&
         std::all_of(cells.begin(), cells.end(), [this](const QModelIndex& cell) {
           return selectionModel()->isRowSelected(cell.row(), {});
         });
}

void SizeTable::copy() {
  auto cells = selectionModel()->selectedIndexes();
  if (cells.isEmpty() && currentIndex().isValid()) cells = {currentIndex()};
  if (cells.isEmpty()) return;
  const auto [left, right] = std::minmax_element(
      cells.begin(), cells.end(), [](const auto& a, const auto& b) { return a.column() < b.column(); });
  const int first_column = left->column(), last_column = right->column();
  std::vector<int> rows;
  for (const QModelIndex& cell : cells) rows.push_back(cell.row());
  std::sort(rows.begin(), rows.end());
  rows.erase(std::unique(rows.begin(), rows.end()), rows.end());

  QStringList tabbed, lists;
  QString html = QStringLiteral("<table>");
  for (const int row : rows) {
    QStringList texts;
    html += QStringLiteral("<tr>");
    for (int column = first_column; column <= last_column; ++column) {
      const bool picked = cells.contains(model_.index(row, column));
      texts << (picked ? model_.cell_text(row, column) : QString());
      html += QStringLiteral("<td>") + texts.last().toHtmlEscaped() + QStringLiteral("</td>");
    }
    html += QStringLiteral("</tr>");
    tabbed << texts.join(QLatin1Char('\t'));
    lists << model_.list_text(row);
  }
  // A spreadsheet takes the table; a text takes the list of a whole row as it would be printed.
  auto* mime = new QMimeData;
  mime->setText((is_whole_rows() ? lists : tabbed).join(QLatin1Char('\n')));
  mime->setHtml(html + QStringLiteral("</table>"));
  mime->setData(QLatin1String(tabbed_text), tabbed.join(QLatin1Char('\n')).toUtf8());
  QGuiApplication::clipboard()->setMimeData(mime);
}

void SizeTable::paste(const QMimeData* from) {
  const QModelIndex current = currentIndex();
  if (!from || !current.isValid()) return;
  const QString text = from->hasFormat(QLatin1String(tabbed_text))
                           ? QString::fromUtf8(from->data(QLatin1String(tabbed_text)))
                           : from->text();
  if (text.isEmpty()) return;
  const QString line = text.trimmed();
  const bool one_line = !line.contains(QLatin1Char('\n')) && !text.contains(QLatin1Char('\t'));
  if (one_line && model_.is_editable(current.row())) {
    take_cell(current, line, false);
    return;
  }
  paste_table(text);
}

void SizeTable::paste_table(const QString& text) {
  const QModelIndex current = currentIndex();
  const PastedTable table = read_pasted_table(text, model_.columnCount());
  const int rows = static_cast<int>(table.size());
  const int columns = rows > 0 ? static_cast<int>(table.front().size()) : 0;
  const int first_column = columns == model_.columnCount() ? 0 : current.column();
  if (current.row() + rows > model_.rowCount() || first_column + columns > model_.columnCount()) {
    emit said(tr("Nothing was pasted: the clipboard holds %1 × %2 cells, from here %3 × %4 fit.")
                  .arg(rows)
                  .arg(columns)
                  .arg(model_.rowCount() - current.row())
                  .arg(model_.columnCount() - first_column),
              true);
    return;
  }
  std::vector<SizeTableModel::CellText> cells;
  for (int row = 0; row < rows; ++row) {
    if (!model_.is_editable(current.row() + row)) {
      emit said(tr("Nothing was pasted: “%1” is worked out and cannot be typed.")
                    .arg(model_.rows()[static_cast<std::size_t>(current.row() + row)].label),
                true);
      return;
    }
    for (int column = 0; column < columns; ++column)
      cells.push_back({current.row() + row, first_column + column,
                       table[static_cast<std::size_t>(row)][static_cast<std::size_t>(column)]});
  }
  const int bad =
      model_.write(cells, rows == 1 ? model_.undo_name(current.row()) : tr("pasting %1 rows").arg(rows));
  emit current_moved();
  const QString done = tr("%1 × %2 cells pasted").arg(rows).arg(columns);
  emit said(bad == 0 ? done
                     : tr("%1; what could not be read stays underlined: %2")
                           .arg(done, count_words(static_cast<std::size_t>(bad), tr("cell"), tr("cells"))),
            bad > 0);
}

void SizeTable::clear_selected() {
  std::vector<SizeTableModel::CellText> cells;
  for (const QModelIndex& cell : selectionModel()->selectedIndexes())
    cells.push_back({cell.row(), cell.column(), {}});
  if (cells.empty()) return;
  model_.write(cells, tr("clearing %1").arg(model_.undo_name(cells.front().row)));
  emit current_moved();
}

void SizeTable::contextMenuEvent(QContextMenuEvent* event) {
  QMenu menu(this);
  menu.addAction(tr("&Copy"), QKeySequence::Copy, this, &SizeTable::copy);
  menu.addAction(tr("Copy the row as a &list"), this,
                 [this] { QGuiApplication::clipboard()->setText(model_.list_text(currentIndex().row())); })
      ->setEnabled(currentIndex().isValid());
  menu.addAction(tr("&Paste"), QKeySequence::Paste, this,
                 [this] { paste(QGuiApplication::clipboard()->mimeData()); });
  menu.addAction(tr("Cl&ear"), QKeySequence::Delete, this, &SizeTable::clear_selected);
  menu.exec(event->globalPos());
}

}  // namespace skeinproof
