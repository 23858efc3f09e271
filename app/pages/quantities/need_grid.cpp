// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/quantities/need_grid.h"

#include <QApplication>
#include <QClipboard>
#include <QContextMenuEvent>
#include <QFontInfo>
#include <QHeaderView>
#include <QKeyEvent>
#include <QMenu>
#include <QPainter>
#include <QScrollBar>
#include <algorithm>
#include <cmath>

#include "app/document/reader_style.h"
#include "app/pages/quantities/need_cell_painter.h"
#include "app/pages/quantities/need_heads.h"

namespace skeinproof {
namespace {

int rounded(double pixels) { return static_cast<int>(std::lround(pixels)); }

// Says above the role heads what the four places of a cell mean.
class CornerLegend : public QWidget {
 public:
  explicit CornerLegend(QWidget* parent) : QWidget(parent) { setAttribute(Qt::WA_TransparentForMouseEvents); }

 protected:
  void paintEvent(QPaintEvent*) override {
    const Ink ink = ink_of(palette());
    const Type type = type_of(font());
    const double unit = QFontInfo(font()).pixelSize() / 13.0;
    QPainter painter(this);
    painter.fillRect(rect(), ink.header);
    painter.setPen(ink.muted);
    painter.setFont(type.small);
    const QFontMetricsF metrics(type.small);
    const auto line = [&](double baseline, const QString& left, const QString& right) {
      painter.drawText(QPointF(10 * unit, baseline), left);
      painter.drawText(QPointF(width() - 7 * unit - metrics.horizontalAdvance(right), baseline), right);
    };
    line(17 * unit, NeedGrid::tr("skeins"), NeedGrid::tr("length"));
    line(33 * unit, NeedGrid::tr("“text”"), NeedGrid::tr("last skein"));
    painter.setPen(ink.edge);
    painter.drawLine(0, height() - 1, width(), height() - 1);
    painter.drawLine(width() - 1, 0, width() - 1, height());
  }
};

}  // namespace

NeedGrid::NeedGrid(NeedModel& model, QWidget* parent)
    : QTableView(parent),
      model_(model),
      delegate_(new NeedDelegate(model, this)),
      corner_(new CornerLegend(this)) {
  setObjectName(QStringLiteral("need_grid"));
  setAccessibleName(tr("Quantities, roles by sizes"));
  auto* sizes = new NeedHeader(Qt::Horizontal, this);
  auto* roles = new NeedHeader(Qt::Vertical, this);
  setHorizontalHeader(sizes);
  setVerticalHeader(roles);
  setItemDelegate(delegate_);
  setModel(&model);
  setShowGrid(false);
  setFrameShape(QFrame::NoFrame);
  setCornerButtonEnabled(false);
  setSelectionMode(QAbstractItemView::ContiguousSelection);
  setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
  setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  setEditTriggers(QAbstractItemView::EditKeyPressed | QAbstractItemView::DoubleClicked |
                  QAbstractItemView::AnyKeyPressed);
  setTabKeyNavigation(false);
  setMouseTracking(true);
  connect(delegate_, &NeedDelegate::says, this, &NeedGrid::says);
  connect(horizontalScrollBar(), &QScrollBar::valueChanged, this, &NeedGrid::columns_moved);
  connect(&model, &QAbstractItemModel::modelReset, this, [this] { re_ink(); });
  connect(&model, &QAbstractItemModel::dataChanged, this, [this] { share_width(); });
  connect(&model, &QAbstractItemModel::headerDataChanged, this, [this] { updateGeometries(); });
  re_ink();
}

// First, so that an editor that loses the focus on the way down has nobody to ask.
NeedGrid::~NeedGrid() { delete delegate_; }

void NeedGrid::re_ink() {
  ink_ = ink_of(palette());
  type_ = type_of(font());
  unit_ = QFontInfo(font()).pixelSize() / 13.0;
  delegate_->set_look(ink_, type_, unit_);
  heighten_rows();
  share_width();
  updateGeometries();
}

void NeedGrid::heighten_rows() {
  verticalHeader()->setMinimumSectionSize(1);
  verticalHeader()->setDefaultSectionSize(rounded(need_cell_height(unit_)));
  for (int row = 0; row < model_.rowCount(); ++row)
    verticalHeader()->resizeSection(
        row, rounded(model_.is_total(row) ? total_cell_height(unit_) : need_cell_height(unit_)));
}

void NeedGrid::share_width() {
  const int columns = std::max(1, model_.columnCount());
  const int least = rounded(std::ceil(model_.widest_cell(type_, unit_)));
  const int most = std::max(least, rounded(most_cell_width * unit_));
  const int width = std::clamp(viewport()->width() / columns, least, most);
  horizontalHeader()->setMinimumSectionSize(1);
  horizontalHeader()->setDefaultSectionSize(width);
  emit columns_moved();
}

ChartColumns NeedGrid::columns() const {
  ChartColumns columns;
  columns.left = viewport()->x();
  columns.column_width = horizontalHeader()->defaultSectionSize();
  columns.scrolled = horizontalHeader()->offset();
  columns.width = std::min<double>(viewport()->width(), columns.column_width * model_.columnCount());
  return columns;
}

int NeedGrid::height_of_all_rows() const {
  const bool scrolls = horizontalHeader()->length() > viewport()->width();
  return rounded(size_head_height(unit_)) + verticalHeader()->length() + 2 * frameWidth() +
         (scrolls ? horizontalScrollBar()->sizeHint().height() : 0);
}

QSize NeedGrid::sizeHint() const { return {rounded(700 * unit_), height_of_all_rows()}; }

void NeedGrid::set_is_empty(bool is_empty) {
  is_empty_ = is_empty;
  viewport()->update();
}

void NeedGrid::updateGeometries() {
  QTableView::updateGeometries();
  corner_->setGeometry(0, 0, verticalHeader()->width(), horizontalHeader()->height());
  corner_->raise();
  emit columns_moved();
}

void NeedGrid::resizeEvent(QResizeEvent* event) {
  QTableView::resizeEvent(event);
  share_width();
}

void NeedGrid::changeEvent(QEvent* event) {
  QTableView::changeEvent(event);
  if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange ||
      event->type() == QEvent::StyleChange)
    re_ink();
}

void NeedGrid::paintEvent(QPaintEvent* event) {
  QTableView::paintEvent(event);
  if (!is_empty_) return;
  QPainter painter(viewport());
  QPen dotted(ink_.edge, 1, Qt::DotLine);
  painter.setPen(dotted);
  painter.drawRect(QRect(3, 3, std::min(viewport()->width(), horizontalHeader()->length()) - 7,
                         std::min(viewport()->height(), verticalHeader()->length()) - 7));
}

void NeedGrid::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
  QTableView::currentChanged(current, previous);
  horizontalHeader()->viewport()->update();
  verticalHeader()->viewport()->update();
  if (current.isValid()) emit current_moved(current.row(), current.column());
}

void NeedGrid::copy(bool lengths) {
  QModelIndexList chosen = selectedIndexes();
  if (chosen.isEmpty() && currentIndex().isValid()) chosen << currentIndex();
  if (chosen.isEmpty()) return;
  QApplication::clipboard()->setText(model_.copy_text(chosen, lengths));
  emit says(lengths ? tr("Lengths copied.") : tr("Counts copied."));
}

void NeedGrid::paste() {
  const QModelIndexList chosen = selectedIndexes();
  QModelIndex first = currentIndex();
  for (const QModelIndex& index : chosen)
    if (index.row() < first.row() || index.column() < first.column())
      first = model_.index(std::min(first.row(), index.row()), std::min(first.column(), index.column()));
  const QString problem = model_.paste(first, QApplication::clipboard()->text());
  emit says(problem.isEmpty() ? tr("Printed counts pasted; undo takes them back as one step.") : problem);
}

void NeedGrid::keyPressEvent(QKeyEvent* event) {
  if (event->matches(QKeySequence::Copy)) return copy(false);
  if (event->matches(QKeySequence::Paste)) return paste();
  const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
  if (enter && event->modifiers() == Qt::NoModifier && state() != EditingState && currentIndex().isValid()) {
    edit(currentIndex());
    return;
  }
  if (event->key() == Qt::Key_Delete && currentIndex().isValid()) {
    model_.setData(currentIndex(), QString(), Qt::EditRole);
    return;
  }
  QTableView::keyPressEvent(event);
}

void NeedGrid::contextMenuEvent(QContextMenuEvent* event) {
  QMenu menu(this);
  menu.addAction(tr("Type the printed count…"), this, [this] { edit(currentIndex()); });
  menu.addSeparator();
  menu.addAction(tr("Copy counts"), this, [this] { copy(false); });
  menu.addAction(tr("Copy lengths"), this, [this] { copy(true); });
  menu.addAction(tr("Paste printed counts"), this, [this] { paste(); });
  menu.exec(event->globalPos());
}

}  // namespace skeinproof
