// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/charts/hatch.h"

#include <QLineF>
#include <QPainter>
#include <QVector>
#include <array>
#include <cmath>

namespace skeinproof {
namespace {

constexpr double spacing = 4;

// Lines through the rectangle, `dx` to the side for each step up, anchored on the page so that neighbours
// match.
void slanted(QVector<QLineF>& lines, const QRectF& rect, double step, double slope) {
  const double height = rect.height();
  const double first = std::floor((rect.left() - height) / step) * step;
  for (double x = first; x <= rect.right() + height; x += step) {
    if (slope > 0)
      lines << QLineF(x, rect.bottom(), x + height, rect.top());
    else
      lines << QLineF(x, rect.top(), x + height, rect.bottom());
  }
}
void straight(QVector<QLineF>& lines, const QRectF& rect, double step, bool upright) {
  if (upright)
    for (double x = std::ceil(rect.left() / step) * step; x < rect.right(); x += step)
      lines << QLineF(x, rect.top(), x, rect.bottom());
  else
    for (double y = std::ceil(rect.top() / step) * step; y < rect.bottom(); y += step)
      lines << QLineF(rect.left(), y, rect.right(), y);
}

void dots(QPainter& painter, const QRectF& rect, const QColor& colour, double step, double unit) {
  painter.setPen(Qt::NoPen);
  painter.setBrush(colour);
  int row = 0;
  for (double y = std::ceil(rect.top() / step) * step; y < rect.bottom(); y += step, ++row)
    for (double x = std::ceil(rect.left() / step) * step + (row % 2 ? step / 2 : 0); x < rect.right();
         x += step)
      painter.drawEllipse(QPointF(x, y), 0.8 * unit, 0.8 * unit);
}

}  // namespace

PartHatch part_hatch(std::size_t part, bool on_paper) {
  static constexpr std::array order = {Hatch::solid,   Hatch::empty,   Hatch::rising, Hatch::dotted,
                                       Hatch::upright, Hatch::crossed, Hatch::level,  Hatch::falling};
  // Solid and empty would look the same again, so the second round starts behind them.
  if (part == 0 && on_paper) return {Hatch::falling, 1.6};
  if (part < order.size()) return {order[part], 1};
  const std::size_t again = (part - order.size()) % (order.size() - 2) + 2;
  return {order[again], 2};
}

void draw_hatch(QPainter& painter, const QRectF& rect, Hatch hatch, const QColor& colour, double unit,
                double density) {
  if (rect.width() <= 0 || rect.height() <= 0 || hatch == Hatch::empty) return;
  if (hatch == Hatch::solid) {
    painter.fillRect(rect, colour);
    return;
  }
  const double step = spacing * unit / density;
  QVector<QLineF> lines;
  painter.save();
  painter.setClipRect(rect, Qt::IntersectClip);
  painter.setRenderHint(QPainter::Antialiasing);
  if (hatch == Hatch::rising || hatch == Hatch::crossed) slanted(lines, rect, step * 1.2, 1);
  if (hatch == Hatch::falling || hatch == Hatch::crossed) slanted(lines, rect, step * 1.2, -1);
  if (hatch == Hatch::upright || hatch == Hatch::level) straight(lines, rect, step, hatch == Hatch::upright);
  if (hatch == Hatch::dotted) dots(painter, rect, colour, step, unit);
  painter.setPen(QPen(colour, 0.8 * unit));
  painter.drawLines(lines);
  painter.restore();
}

}  // namespace skeinproof
