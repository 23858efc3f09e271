// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/pieces/share_picture.h"

#include <QEvent>
#include <QFontMetricsF>
#include <QPaintEvent>
#include <QPainter>
#include <QStringList>
#include <algorithm>
#include <cmath>

namespace skeinproof {

SharePicture::SharePicture(QWidget* parent) : QWidget(parent) {
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  setAccessibleName(tr("Share of stitches and share of yarn"));
}

void SharePicture::show_rows(std::vector<Row> rows) {
  rows_ = std::move(rows);
  QStringList spoken;
  for (const Row& row : rows_) spoken << row.label + QLatin1Char(' ') + row.words;
  setAccessibleDescription(spoken.join(QStringLiteral(", ")));
  updateGeometry();
  update();
}

QSize SharePicture::sizeHint() const {
  return {scaled(this, 340), static_cast<int>((static_cast<double>(rows_.size()) + 1.2) * scaled(this, 25))};
}

QSize SharePicture::minimumSizeHint() const { return {scaled(this, 240), sizeHint().height()}; }

double SharePicture::draw(QPainter& painter, const Ink& ink, const std::vector<Row>& rows, double width,
                          double row_height) {
  const QFontMetricsF metrics(painter.font());
  double label = 0, figures = 0, most = 0.1;
  QFont strong = painter.font();
  const QFont plain = strong;
  strong.setWeight(QFont::DemiBold);
  for (const Row& row : rows) {
    label = std::max(label, metrics.horizontalAdvance(row.label));
    figures = std::max(figures, QFontMetricsF(strong).horizontalAdvance(row.words));
    most = std::max({most, row.stitches, row.yarn});
  }
  most = std::min(1.0, std::ceil(most * 10) / 10);
  const double left = label + row_height, right = std::max(left + row_height, width - figures - row_height);
  const auto x_of = [&](double share) { return left + (right - left) * share / most; };
  const double bottom = static_cast<double>(rows.size()) * row_height;
  const int tenths = static_cast<int>(std::lround(most * 10));
  const int every = tenths > 5 ? 2 : 1;
  for (int tenth = 0; tenth <= tenths; tenth += every) {
    painter.setPen(ink.rule);
    painter.drawLine(QPointF(x_of(tenth / 10.0), row_height * 0.2), QPointF(x_of(tenth / 10.0), bottom));
    painter.setPen(ink.muted);
    const QString mark =
        QString::number(10 * tenth) + (tenth + every > tenths ? QStringLiteral(" %") : QString());
    painter.drawText(QRectF(x_of(tenth / 10.0) - 40, bottom, 80, row_height),
                     Qt::AlignHCenter | Qt::AlignVCenter, mark);
  }
  const double radius = row_height * 0.2;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const Row& row = rows[i];
    const double y = (static_cast<double>(i) + 0.5) * row_height;
    painter.setPen(ink.text);
    painter.drawText(QRectF(0, y - row_height / 2, label + 1, row_height), Qt::AlignLeft | Qt::AlignVCenter,
                     row.label);
    painter.setFont(row.strong ? strong : plain);
    painter.drawText(QRectF(right, y - row_height / 2, width - right, row_height),
                     Qt::AlignRight | Qt::AlignVCenter, row.words);
    painter.setFont(plain);
    painter.setPen(QPen(ink.text, radius * 0.45));
    painter.drawLine(QPointF(x_of(row.stitches), y), QPointF(x_of(row.yarn), y));
    painter.setPen(QPen(ink.text, radius * 0.3));
    painter.setBrush(ink.base);
    painter.drawEllipse(QPointF(x_of(row.stitches), y), radius, radius);
    painter.setBrush(ink.text);
    painter.drawEllipse(QPointF(x_of(row.yarn), y), radius * 0.8, radius * 0.8);
    painter.setBrush(Qt::NoBrush);
  }
  return bottom + row_height;
}

void SharePicture::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setFont(font());
  draw(painter, ink_of(palette()), rows_, width(), scaled(this, 25));
}

void SharePicture::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::FontChange) updateGeometry();
}

}  // namespace skeinproof
