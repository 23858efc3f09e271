// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/changes/effect_table.h"

#include <QApplication>
#include <QClipboard>
#include <QFontInfo>
#include <QHeaderView>
#include <QKeyEvent>
#include <QPainter>
#include <QScrollBar>
#include <QStyledItemDelegate>
#include <algorithm>
#include <cmath>

#include "app/pages/quantities/need_cell_painter.h"
#include "app/widgets/flat_header.h"
#include "app/widgets/ink.h"

namespace skeinproof {
namespace {

constexpr double row_height = 42;
constexpr double total_height = 30;
constexpr double bar_width = 110;
constexpr double inset = 7;
constexpr double bar_height = 8;
constexpr double chip_side = 12;
constexpr double first_baseline = 18;
constexpr double second_baseline = 34;
constexpr double total_baseline = 20;

double unit_of_font(const QFont& font) { return QFontInfo(font).pixelSize() / 13.0; }

QFont semibold(QFont font) {
  font.setWeight(QFont::DemiBold);
  return font;
}

struct Look {
  Ink ink;
  Type type;
  double unit;
};

double width_of(const QFont& font, const QString& text) {
  return QFontMetricsF(font).horizontalAdvance(text);
}

double content_width(const EffectModel& model, int row, int column, const Type& type, double unit) {
  const EffectRow& shown = model.rows()[static_cast<std::size_t>(row)];
  const QFont heavy = semibold(type.body);
  double width = 0;
  if (column == EffectModel::Colour)
    width = (shown.is_total ? 0 : (chip_side + inset) * unit) +
            std::max(width_of(heavy, shown.colour), width_of(type.small, shown.shade));
  else if (column == EffectModel::Step)
    width = std::max(width_of(heavy, shown.state), width_of(type.small, shown.detail));
  else if (model.figures(row, column) != nullptr)
    width = width_of(heavy, model.cell_text(row, column));
  else
    width = width_of(type.body, model.cell_text(row, column));
  return width + (2 * inset + 2) * unit;
}

class EffectDelegate : public QStyledItemDelegate {
 public:
  EffectDelegate(EffectModel& model, QObject* parent) : QStyledItemDelegate(parent), model_(model) {}

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const Look look{ink_of(option.palette), type_of(option.font), unit_of_font(option.font)};
    const auto* view = qobject_cast<const QTableView*>(option.widget);
    const bool chosen = option.state.testFlag(QStyle::State_Selected);
    const EffectRow& row = model_.rows()[static_cast<std::size_t>(index.row())];
    painter->save();
    painter->fillRect(option.rect, chosen ? look.ink.tint : row.is_total ? look.ink.header : look.ink.base);
    const QRectF cell = QRectF(option.rect).adjusted(inset * look.unit, 0, -inset * look.unit, 0);
    if (index.column() == EffectModel::Colour)
      paint_colour(*painter, cell, row, look);
    else if (index.column() == EffectModel::Step)
      paint_step(*painter, cell, row, look);
    else
      paint_figures(*painter, cell, index, row, look);
    if (index.column() == EffectModel::Fill && !row.is_total)
      paint_skein_bar(
          *painter,
          QRectF(cell.left(), option.rect.top() + 27 * look.unit, cell.width(), bar_height * look.unit),
          row.share, {look.ink, look.type, look.unit, false});
    painter->setPen(row.is_total ? look.ink.edge : look.ink.rule);
    if (row.is_total) painter->drawLine(option.rect.topLeft(), option.rect.topRight());
    painter->setPen(look.ink.rule);
    painter->drawLine(option.rect.bottomLeft(), option.rect.bottomRight());
    if (view != nullptr && view->hasFocus() && view->currentIndex() == index) {
      painter->setPen(QPen(look.ink.focus, 2));
      painter->drawRect(option.rect.adjusted(1, 1, -1, -2));
    }
    painter->restore();
  }

 private:
  static void write(QPainter& painter, double x, double baseline, const QString& text, const QFont& font,
                    const QColor& colour) {
    painter.setFont(font);
    painter.setPen(colour);
    painter.drawText(QPointF(x, baseline), text);
  }

  static void paint_colour(QPainter& painter, QRectF cell, const EffectRow& row, const Look& look) {
    if (row.chip.isValid()) {
      const QRectF chip(cell.left(), cell.top() + 7.5 * look.unit, chip_side * look.unit,
                        chip_side * look.unit);
      painter.fillRect(chip, row.chip);
      painter.setPen(look.ink.edge);
      painter.drawRect(chip);
    }
    if (!row.is_total) cell.setLeft(cell.left() + (chip_side + inset) * look.unit);
    const double baseline = row.is_total ? total_baseline : first_baseline;
    write(painter, cell.left(), cell.top() + baseline * look.unit, row.colour, semibold(look.type.body),
          look.ink.text);
    const QString shade = QFontMetricsF(look.type.small).elidedText(row.shade, Qt::ElideRight, cell.width());
    write(painter, cell.left(), cell.top() + second_baseline * look.unit, shade, look.type.small,
          look.ink.muted);
  }

  static void paint_step(QPainter& painter, const QRectF& cell, const EffectRow& row, const Look& look) {
    const double baseline = row.is_total ? total_baseline : first_baseline;
    write(painter, cell.left(), cell.top() + baseline * look.unit, row.state, semibold(look.type.body),
          look.ink.text);
    const QString detail =
        QFontMetricsF(look.type.small).elidedText(row.detail, Qt::ElideRight, cell.width());
    write(painter, cell.left(), cell.top() + second_baseline * look.unit, detail, look.type.small,
          look.ink.text);
  }

  // What was, in the quiet ink, and what it becomes.
  void paint_figures(QPainter& painter, const QRectF& cell, const QModelIndex& index, const EffectRow& row,
                     const Look& look) const {
    const double baseline = cell.top() + (row.is_total ? total_baseline : first_baseline) * look.unit;
    const BeforeAfter* figures = model_.figures(index.row(), index.column());
    const bool moves = figures != nullptr && figures->moves();
    const QFont font = moves || row.is_total ? semibold(look.type.body) : look.type.body;
    const QString last = moves ? figures->after : model_.cell_text(index.row(), index.column());
    double x = cell.right() - width_of(font, last);
    write(painter, x, baseline, last, font, look.ink.text);
    if (!moves) return;
    const QString first = figures->before + QStringLiteral(" → ");
    x -= width_of(look.type.body, first);
    write(painter, x, baseline, first, look.type.body, look.ink.muted);
  }

  EffectModel& model_;
};

}  // namespace

EffectTable::EffectTable(QWidget* parent) : QTableView(parent), model_(new EffectModel(this)) {
  setObjectName(QStringLiteral("effect"));
  setAccessibleName(tr("What the changes do"));
  setHorizontalHeader(new FlatHeader(this));
  setModel(model_);
  setItemDelegate(new EffectDelegate(*model_, this));
  setShowGrid(false);
  setFrameShape(QFrame::NoFrame);
  setSelectionBehavior(QAbstractItemView::SelectRows);
  setSelectionMode(QAbstractItemView::SingleSelection);
  setEditTriggers(QAbstractItemView::NoEditTriggers);
  setTabKeyNavigation(false);
  setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);  // it is as high as its rows
  setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
  verticalHeader()->hide();
  horizontalHeader()->setSectionResizeMode(QHeaderView::Fixed);
  horizontalHeader()->setMinimumSectionSize(1);
  dress();
}

void EffectTable::show_rows(std::vector<EffectRow> rows, const QString& unit) {
  model_->show(std::move(rows), unit);
  share_height();
  share_width();
  updateGeometry();
}

void EffectTable::share_height() {
  const auto& rows = model_->rows();
  for (std::size_t row = 0; row < rows.size(); ++row)
    verticalHeader()->resizeSection(static_cast<int>(row),
                                    scaled(this, rows[row].is_total ? total_height : row_height));
}

QString EffectTable::as_text() const {
  QStringList lines, head;
  for (int column = 0; column < model_->columnCount(); ++column)
    head << model_->headerData(column, Qt::Horizontal, Qt::DisplayRole).toString();
  lines << head.join(QLatin1Char('\t'));
  for (int row = 0; row < model_->rowCount(); ++row) {
    QStringList cells;
    for (int column = 0; column < model_->columnCount(); ++column) cells << model_->cell_text(row, column);
    lines << cells.join(QLatin1Char('\t'));
  }
  return lines.join(QLatin1Char('\n'));
}

int EffectTable::whole_height() const {
  const bool bar = horizontalHeader()->length() > viewport()->width();
  return horizontalHeader()->height() + verticalHeader()->length() + 2 +
         (bar ? horizontalScrollBar()->sizeHint().height() : 0);
}

void EffectTable::keyPressEvent(QKeyEvent* event) {
  if (!event->matches(QKeySequence::Copy)) {
    QTableView::keyPressEvent(event);
    return;
  }
  QApplication::clipboard()->setText(as_text());
  event->accept();
}

void EffectTable::resizeEvent(QResizeEvent* event) {
  QTableView::resizeEvent(event);
  share_width();
  if (event->size().width() != event->oldSize().width()) emit width_changed();
}

void EffectTable::changeEvent(QEvent* event) {
  QTableView::changeEvent(event);
  if (event->type() == QEvent::FontChange || event->type() == QEvent::PaletteChange) dress();
}

void EffectTable::dress() {
  verticalHeader()->setMinimumSectionSize(1);
  verticalHeader()->setDefaultSectionSize(scaled(this, row_height));
  horizontalHeader()->setFont(type_of(font()).small);
  horizontalHeader()->setFixedHeight(scaled(this, 24));
  share_height();
  share_width();
  updateGeometry();
}

// Columns as wide as their words; what is left goes to the words about the step.
void EffectTable::share_width() {
  const Type type = type_of(font());
  const double unit = unit_of_font(font());
  int taken = 0;
  for (int column = 0; column < EffectModel::ColumnCount; ++column) {
    double width = horizontalHeader()->sectionSizeHint(column);
    for (int row = 0; row < model_->rowCount(); ++row)
      width = std::max(width, content_width(*model_, row, column, type, unit));
    int pixels = static_cast<int>(std::ceil(width));
    if (column == EffectModel::Fill) pixels = std::max(pixels, scaled(this, bar_width));
    if (column == EffectModel::Step) pixels = std::max(pixels, viewport()->width() - taken);
    horizontalHeader()->resizeSection(column, pixels);
    taken += pixels;
  }
}

}  // namespace skeinproof
