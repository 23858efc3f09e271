// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/quantities/need_heads.h"

#include <QEvent>
#include <QFontInfo>
#include <QItemSelectionModel>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "app/pages/quantities/need_model.h"

namespace skeinproof {
namespace {

constexpr double inset = 7;
constexpr double pane_inset = 10;
constexpr double chip_size = 12;
constexpr double least_role_width = 112;
constexpr double scale_room = 116;  // the need curve writes "10 skeins 1,750 m" under the role heads

void write(QPainter& painter, double x, double baseline, const QString& text, const QFont& font,
           const QColor& ink) {
  painter.setFont(font);
  painter.setPen(ink);
  painter.drawText(QPointF(x, baseline), text);
}

QFont semibold(QFont font) {
  font.setWeight(QFont::DemiBold);
  return font;
}

}  // namespace

double size_head_height(double unit) { return 40 * unit; }

void paint_size_head(QPainter& painter, const QRectF& rect, const SizeHead& head, const Ink& ink,
                     const Type& type, double unit) {
  if (!ink.paper) painter.fillRect(rect, head.chosen ? ink.tint : ink.header);
  const QFont strong = semibold(type.small);
  const double right = rect.right() - inset * unit;
  const auto write_right = [&](double baseline, const QString& text, const QFont& font,
                               const QColor& colour) {
    write(painter, right - QFontMetricsF(font, painter.device()).horizontalAdvance(text), baseline, text,
          font, colour);
  };
  write_right(rect.top() + 17 * unit, head.size, strong, ink.text);
  write_right(rect.top() + 33 * unit, head.measure, type.small, ink.muted);
  painter.setPen(
      QPen(head.opens_group ? ink.edge : ink.rule, (ink.paper ? 0.6 : 1) * (head.opens_group ? 1 : 1)));
  painter.drawLine(rect.topLeft(), rect.bottomLeft());
  painter.setPen(QPen(ink.edge, ink.paper ? 0.6 : 1));
  painter.drawLine(rect.bottomLeft(), rect.bottomRight());
}

void paint_role_head(QPainter& painter, const QRectF& rect, const RoleHead& head, const Ink& ink,
                     const Type& type, double unit) {
  if (!ink.paper) painter.fillRect(rect, head.chosen ? ink.tint : ink.header);
  const double left = rect.left() + pane_inset * unit;
  if (!head.has_chip) {
    const QFontMetricsF metrics(type.role_name, painter.device());
    write(painter, left, rect.center().y() + (metrics.ascent() - metrics.descent()) / 2, head.label,
          type.role_name, ink.text);
  } else {
    const double top = rect.top() + std::max(0.0, (rect.height() - 64 * unit) / 2);
    const QRectF chip(left, top + 12 * unit, chip_size * unit, chip_size * unit);
    if (!ink.paper && head.chip.isValid()) painter.fillRect(chip, head.chip);
    if (ink.paper && head.chip.isValid())
      painter.fillRect(chip, QColor::fromHsl(0, 0, head.chip.lightness()));
    painter.setPen(QPen(ink.edge, std::max(ink.paper ? 0.6 : 1.0, unit * 0.8)));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(chip);
    const double room = rect.right() - left - 4 * unit;
    const auto fitted = [&](const QString& text, const QFont& font, double width) {
      return QFontMetricsF(font, painter.device()).elidedText(text, Qt::ElideRight, width);
    };
    write(painter, chip.right() + 6 * unit, top + 23 * unit,
          fitted(head.label, type.role_name, room - (chip_size + 6) * unit), type.role_name, ink.text);
    write(painter, left, top + 41 * unit, fitted(head.shade, type.body, room), type.body, ink.text);
    write(painter, left, top + 57 * unit, fitted(head.put_up, type.small, room), type.small, ink.muted);
  }
  painter.setPen(QPen(ink.rule, ink.paper ? 0.6 : 1));
  painter.drawLine(rect.bottomLeft(), rect.bottomRight());
  painter.setPen(QPen(ink.edge, ink.paper ? 0.6 : 1));
  painter.drawLine(rect.topRight(), rect.bottomRight());
}

SizeHead size_head_at(const QAbstractItemModel& model, int column) {
  SizeHead head;
  head.size = model.headerData(column, Qt::Horizontal, Qt::DisplayRole).toString();
  head.measure = model.headerData(column, Qt::Horizontal, NeedModel::MeasureRole).toString();
  head.opens_group = model.headerData(column, Qt::Horizontal, NeedModel::OpensGroupRole).toBool();
  return head;
}

RoleHead role_head_at(const QAbstractItemModel& model, int row) {
  RoleHead head;
  head.label = model.headerData(row, Qt::Vertical, Qt::DisplayRole).toString();
  head.shade = model.headerData(row, Qt::Vertical, NeedModel::ShadeRole).toString();
  head.put_up = model.headerData(row, Qt::Vertical, NeedModel::PutUpRole).toString();
  const QVariant chip = model.headerData(row, Qt::Vertical, NeedModel::ChipRole);
  head.has_chip = chip.isValid();
  head.chip = chip.value<QColor>();
  return head;
}

double role_head_width(const QAbstractItemModel& model, const Type& type, double unit) {
  double widest = 0;
  for (int row = 0; row < model.rowCount(); ++row) {
    const RoleHead head = role_head_at(model, row);
    widest = std::max({widest,
                       QFontMetricsF(type.role_name).horizontalAdvance(head.label) + (chip_size + 6) * unit,
                       QFontMetricsF(type.body).horizontalAdvance(head.shade),
                       QFontMetricsF(type.small).horizontalAdvance(head.put_up)});
  }
  return std::clamp(widest + (pane_inset + inset) * unit, std::max(least_role_width, scale_room) * unit,
                    190 * unit);
}

NeedHeader::NeedHeader(Qt::Orientation orientation, QWidget* parent) : QHeaderView(orientation, parent) {
  setSectionsClickable(true);
  setHighlightSections(true);
  setSectionResizeMode(QHeaderView::Fixed);
  re_ink();
}

void NeedHeader::setModel(QAbstractItemModel* model) {
  QHeaderView::setModel(model);
  if (model) connect(model, &QAbstractItemModel::headerDataChanged, this, [this] { viewport()->update(); });
}

void NeedHeader::re_ink() {
  ink_ = ink_of(palette());
  type_ = type_of(font());
  unit_ = QFontInfo(font()).pixelSize() / 13.0;
}

void NeedHeader::changeEvent(QEvent* event) {
  re_ink();
  QHeaderView::changeEvent(event);
  viewport()->update();
}

void NeedHeader::paintSection(QPainter* painter, const QRect& rect, int section) const {
  const QModelIndex current = selectionModel() ? selectionModel()->currentIndex() : QModelIndex();
  // A pixel belongs to the section left of or above the line it carries.
  const QRectF area = QRectF(rect).adjusted(0, 0, -1, -1);
  painter->save();
  painter->fillRect(rect, ink_.header);
  if (orientation() == Qt::Horizontal) {
    SizeHead head = size_head_at(*model(), section);
    head.chosen = current.isValid() && current.column() == section;
    paint_size_head(*painter, area, head, ink_, type_, unit_);
  } else {
    RoleHead head = role_head_at(*model(), section);
    head.chosen = current.isValid() && current.row() == section;
    paint_role_head(*painter, area, head, ink_, type_, unit_);
  }
  painter->restore();
}

QSize NeedHeader::sectionSizeFromContents(int) const {
  if (orientation() == Qt::Horizontal)
    return {defaultSectionSize(), static_cast<int>(std::lround(size_head_height(unit_)))};
  return {static_cast<int>(std::lround(role_head_width(*model(), type_, unit_))), defaultSectionSize()};
}

}  // namespace skeinproof
