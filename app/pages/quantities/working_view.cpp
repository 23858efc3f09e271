// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/quantities/working_view.h"

#include <QEvent>
#include <QFontInfo>
#include <QHeaderView>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>

namespace skeinproof {
namespace {

constexpr double indent = 11;
constexpr double row_height = 23;
constexpr double narrow_row_height = 38;
constexpr double label_share = 0.55;  // of a narrow row, for the name of the step
constexpr double narrow_below = 360;
constexpr double wide_from = 600;

QFont semibold(QFont font) {
  font.setWeight(QFont::DemiBold);
  return font;
}

}  // namespace

WorkingView::WorkingView(WorkingModel& model, QWidget* parent) : QTreeView(parent), model_(model) {
  setObjectName(QStringLiteral("working"));
  setAccessibleName(tr("Working, step by step"));
  setModel(&model);
  setItemDelegate(new WorkingDelegate(*this));
  setFrameShape(QFrame::NoFrame);
  setUniformRowHeights(true);
  setRootIsDecorated(true);
  setExpandsOnDoubleClick(true);
  setAllColumnsShowFocus(true);
  setSelectionBehavior(QAbstractItemView::SelectRows);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAsNeeded);
  header()->setStretchLastSection(false);
  header()->setSectionsMovable(false);
  header()->setMinimumSectionSize(10);
  connect(&model, &QAbstractItemModel::modelReset, this, &WorkingView::share_width);
  connect(this, &QTreeView::expanded, this, &WorkingView::share_width);
  connect(this, &QTreeView::collapsed, this, &WorkingView::share_width);
  re_ink();
}

void WorkingView::re_ink() {
  ink_ = ink_of(palette());
  type_ = type_of(font());
  unit_ = QFontInfo(font()).pixelSize() / 13.0;
  setIndentation(static_cast<int>(std::lround(indent * unit_)));
  QFont small = type_.small;
  if (header()->font() != small) header()->setFont(small);
  share_width();
}

void WorkingView::share_width() {
  const int all = viewport()->width();
  is_narrow_ = all < narrow_below * unit_;
  const bool wide = all >= wide_from * unit_;
  setColumnHidden(WorkingModel::HowColumn, is_narrow_);
  setColumnHidden(WorkingModel::SourceColumn, !wide);
  double steps = 0, figures = 0;
  const QFontMetricsF strong(semibold(type_.body));
  for (QModelIndex at = model_.index(0, 0); at.isValid(); at = indexBelow(at)) {
    int depth = 1;
    for (QModelIndex up = at.parent(); up.isValid(); up = up.parent()) ++depth;
    steps = std::max(steps, strong.horizontalAdvance(at.data().toString()) + (depth * indent + 10) * unit_);
    figures = std::max(
        figures, strong.horizontalAdvance(at.siblingAtColumn(WorkingModel::FigureColumn).data().toString()) +
                     20 * unit_);
  }
  figures = std::clamp(figures, 70 * unit_, all * 0.45);
  header()->resizeSection(WorkingModel::FigureColumn, static_cast<int>(figures));
  if (is_narrow_) {
    header()->resizeSection(WorkingModel::StepColumn, std::max(40, all - static_cast<int>(figures)));
  } else {
    const double most = std::min(all - figures - 90 * unit_, all * 0.42);
    steps = std::clamp(steps, std::min(110 * unit_, most), std::max(most, 60.0));
    header()->resizeSection(WorkingModel::StepColumn, static_cast<int>(steps));
    const int rest = std::max(40, all - static_cast<int>(steps) - static_cast<int>(figures));
    header()->resizeSection(WorkingModel::HowColumn, wide ? rest * 3 / 5 : rest);
    header()->resizeSection(WorkingModel::SourceColumn, rest - rest * 3 / 5);
  }
  scheduleDelayedItemsLayout();
}

void WorkingView::resizeEvent(QResizeEvent* event) {
  QTreeView::resizeEvent(event);
  share_width();
}

void WorkingView::changeEvent(QEvent* event) {
  QTreeView::changeEvent(event);
  if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange ||
      event->type() == QEvent::StyleChange)
    re_ink();
}

void WorkingView::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
  QTreeView::currentChanged(current, previous);
  viewport()->update();
  emit step_chosen();
}

void WorkingView::keyPressEvent(QKeyEvent* event) {
  if (event->matches(QKeySequence::Copy)) {
    emit copy_asked();
    return;
  }
  QTreeView::keyPressEvent(event);
}

void WorkingView::mousePressEvent(QMouseEvent* event) {
  // The little triangle stands inside the indentation that is drawn here, so the press is ours too.
  const QModelIndex pressed = indexAt(event->position().toPoint()).siblingAtColumn(0);
  if (pressed.isValid() && model_.rowCount(pressed) > 0 &&
      event->position().x() < visualRect(pressed).left() &&
      event->position().x() >= visualRect(pressed).left() - indentation()) {
    setCurrentIndex(pressed);
    setExpanded(pressed, !isExpanded(pressed));
    return;
  }
  QTreeView::mousePressEvent(event);
}

bool WorkingView::is_on_line(const QModelIndex& index) const {
  const QModelIndex wanted = index.siblingAtColumn(0);
  for (QModelIndex at = currentIndex().siblingAtColumn(0); at.isValid(); at = at.parent())
    if (at == wanted) return true;
  return false;
}

void WorkingView::drop_to(const QModelIndex& index) {
  collapseAll();
  expand(model_.index(0, 0));
  for (QModelIndex at = index.parent(); at.isValid(); at = at.parent()) expand(at);
  setCurrentIndex(index);
  scrollTo(index);
  share_width();
}

QPen WorkingView::line_pen(bool heavy) const {
  return heavy ? QPen(ink_.text, 2.2 * unit_, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin)
               : QPen(ink_.edge, std::max(1.0, unit_));
}

void WorkingView::drawRow(QPainter* painter, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const {
  if (index.siblingAtColumn(0) == currentIndex().siblingAtColumn(0))
    painter->fillRect(option.rect, ink_.tint);
  QStyleOptionViewItem plain = option;
  plain.palette.setColor(QPalette::Highlight, ink_.tint);
  plain.palette.setColor(QPalette::HighlightedText, ink_.text);
  plain.showDecorationSelected = true;
  QTreeView::drawRow(painter, plain, index);
}

// Each level is a hanging line: down from a step past its parts, with a stub to each part. The part of it
// that leads to the chosen step is drawn heavy; at the ground it ends in a foot.
void WorkingView::drawBranches(QPainter* painter, const QRect& rect, const QModelIndex& index) const {
  painter->save();
  painter->setRenderHint(QPainter::Antialiasing);
  const double step = indentation();
  // On the line of the step's name, which stands above its How in a narrow pane.
  const double middle = rect.top() + rect.height() * (is_narrow_ ? label_share / 2 : 0.5);
  const double own_x = rect.left() + rect.width() - step / 2;
  const bool on_line = is_on_line(index);

  QModelIndex at = index;
  double x = own_x - step;
  bool own_level = true;
  for (QModelIndex parent = at.parent(); parent.isValid(); at = parent, parent = parent.parent(), x -= step) {
    const int rows = model_.rowCount(parent);
    const bool last = at.row() == rows - 1;
    // The line beside later parts is heavy while the chosen step hangs further down this level.
    int heavy_row = -1;
    for (int row = 0; row < rows; ++row)
      if (is_on_line(model_.index(row, 0, parent))) heavy_row = row;
    const bool heavy_above = heavy_row >= at.row();
    const bool heavy_below = heavy_row > at.row();
    if (own_level) {
      painter->setPen(line_pen(heavy_above));
      painter->drawLine(QPointF(x, rect.top()), QPointF(x, middle));
      painter->setPen(line_pen(on_line));
      const bool leaf = model_.rowCount(index) == 0;
      painter->drawLine(QPointF(x, middle),
                        QPointF(own_x + (leaf ? step / 2 - 2 * unit_ : -3 * unit_), middle));
    }
    if (!last) {
      painter->setPen(line_pen(heavy_below));
      painter->drawLine(QPointF(x, own_level ? middle : rect.top()), QPointF(x, rect.bottom() + 1));
    }
    own_level = false;
  }

  if (model_.rowCount(index) > 0) {
    const bool open = isExpanded(index);
    if (open) {
      int heavy_row = -1;
      for (int row = 0; row < model_.rowCount(index); ++row)
        if (is_on_line(model_.index(row, 0, index))) heavy_row = row;
      painter->setPen(line_pen(heavy_row >= 0));
      painter->drawLine(QPointF(own_x, middle), QPointF(own_x, rect.bottom() + 1));
    }
    const double size = 3.6 * unit_;
    QPainterPath triangle;
    if (open) {
      triangle.moveTo(own_x - size, middle - size * 0.6);
      triangle.lineTo(own_x + size, middle - size * 0.6);
      triangle.lineTo(own_x, middle + size * 0.8);
    } else {
      triangle.moveTo(own_x - size * 0.6, middle - size);
      triangle.lineTo(own_x - size * 0.6, middle + size);
      triangle.lineTo(own_x + size * 0.9, middle);
    }
    triangle.closeSubpath();
    painter->fillPath(triangle, ink_.text);
  } else {
    const Step* leaf = model_.step(index);
    if (leaf && leaf->ground != Ground::none) {
      painter->setPen(QPen(ink_.text, (on_line ? 3.2 : 1.6) * unit_, Qt::SolidLine, Qt::FlatCap));
      painter->drawLine(QPointF(own_x - 2 * unit_, middle), QPointF(own_x + step / 2 - 1 * unit_, middle));
    }
  }
  painter->restore();
}

void WorkingDelegate::paint_how(QPainter& painter, const QRectF& rect, const QModelIndex& index) const {
  const QString ground = index.data(WorkingModel::GroundRole).toString();
  const QFontMetricsF metrics(view_.type().small);
  const QFontMetricsF strong(semibold(view_.type().small));
  const double baseline = rect.center().y() + (metrics.ascent() - metrics.descent()) / 2;
  double x = rect.left();
  if (!ground.isEmpty()) {
    painter.setFont(semibold(view_.type().small));
    painter.setPen(view_.ink().text);
    painter.drawText(QPointF(x, baseline), ground);
    x += strong.horizontalAdvance(ground) + 8 * view_.unit();
  }
  painter.setFont(view_.type().small);
  painter.setPen(view_.ink().muted);
  const QString how = index.siblingAtColumn(WorkingModel::HowColumn).data().toString();
  painter.drawText(QPointF(x, baseline), metrics.elidedText(how, Qt::ElideRight, rect.right() - x));
}

void WorkingDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                            const QModelIndex& index) const {
  const bool on_line = view_.is_on_line(index);
  const QFont font = on_line ? semibold(view_.type().body) : view_.type().body;
  const QFontMetricsF metrics(font);
  const double unit = view_.unit();
  QRectF rect = option.rect;
  painter->save();
  if (index.column() == WorkingModel::HowColumn) {
    paint_how(*painter, rect.adjusted(6 * unit, 0, -4 * unit, 0), index);
  } else if (index.column() == WorkingModel::SourceColumn) {
    painter->setFont(view_.type().small);
    painter->setPen(view_.ink().muted);
    painter->drawText(rect.adjusted(6 * unit, 0, -4 * unit, 0), Qt::AlignVCenter | Qt::AlignLeft,
                      QFontMetricsF(view_.type().small)
                          .elidedText(index.data().toString(), Qt::ElideRight, rect.width() - 10 * unit));
  } else {
    if (view_.is_narrow()) rect.setHeight(rect.height() * label_share);
    const double baseline = rect.center().y() + (metrics.ascent() - metrics.descent()) / 2;
    const QString text = index.data().toString();
    painter->setFont(font);
    painter->setPen(view_.ink().text);
    if (index.column() == WorkingModel::FigureColumn)
      painter->drawText(QPointF(rect.right() - 10 * unit - metrics.horizontalAdvance(text), baseline), text);
    else
      painter->drawText(QPointF(rect.left() + 2 * unit, baseline),
                        metrics.elidedText(text, Qt::ElideRight, rect.width() - 2 * unit));
    if (view_.is_narrow() && index.column() == WorkingModel::StepColumn)
      paint_how(*painter,
                QRectF(rect.left() + 2 * unit, rect.bottom() - 2 * unit, rect.width() - 4 * unit, 16 * unit),
                index);
  }
  painter->restore();
}

QSize WorkingDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
  QSize size = QStyledItemDelegate::sizeHint(option, index);
  size.setHeight(
      static_cast<int>(std::lround((view_.is_narrow() ? narrow_row_height : row_height) * view_.unit())));
  return size;
}

}  // namespace skeinproof
