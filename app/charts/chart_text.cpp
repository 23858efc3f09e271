// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/charts/chart_text.h"

#include <QCoreApplication>
#include <QPainter>

#include "core/units/quantity.h"
#include "core/units/show.h"

namespace skeinproof {

QString chart_unit(const ReaderStyle& reader) {
  return reader.imperial_first ? QCoreApplication::translate("Chart", "yd")
                               : QCoreApplication::translate("Chart", "m");
}
QString chart_figure(double length_m, const ReaderStyle& reader) {
  return QString::fromStdString(
      show_number(reader.imperial_first ? in_yards(metres(length_m)) : length_m, 0, reader.numbers));
}
QString chart_length(double length_m, const ReaderStyle& reader) {
  return chart_figure(length_m, reader) + QLatin1Char(' ') + chart_unit(reader);
}

LegendLine::LegendLine(QPainter& painter, const QRectF& strip, const Ink& ink, const Type& type, double unit)
    : painter_(painter), strip_(strip), ink_(ink), type_(type), unit_(unit), right_(strip.right()) {}

void LegendLine::title(const QString& words) {
  QFont font = type_.body;
  font.setWeight(QFont::DemiBold);
  const QFontMetricsF metrics(font);
  painter_.setFont(font);
  painter_.setPen(ink_.text);
  painter_.drawText(QPointF(strip_.left(), strip_.center().y() + (metrics.ascent() - metrics.descent()) / 2),
                    words);
  strip_.setLeft(strip_.left() + metrics.horizontalAdvance(words) + 16 * unit_);
}

void LegendLine::add(const QString& words, Key key, PartHatch part) {
  const bool quoted = key == Key::dashes;
  const QFont& font = quoted ? type_.words : type_.small;
  const QFontMetricsF metrics(font);
  const double key_width = (key == Key::disc || key == Key::ring ? 9 : key == Key::part ? 14 : 20) * unit_;
  const double width = metrics.horizontalAdvance(words) + key_width + 5 * unit_;
  if (right_ - width < strip_.left()) return;
  painter_.setFont(font);
  painter_.setPen(ink_.text);
  painter_.drawText(QPointF(right_ - metrics.horizontalAdvance(words),
                            strip_.center().y() + (metrics.ascent() - metrics.descent()) / 2),
                    words);
  draw_key(QRectF(right_ - width, strip_.center().y() - 5 * unit_, key_width, 10 * unit_), key, part);
  right_ -= width + 16 * unit_;
}

void LegendLine::draw_key(const QRectF& box, Key key, PartHatch part) {
  const QLineF middle(box.left(), box.center().y(), box.right(), box.center().y());
  painter_.setBrush(Qt::NoBrush);
  switch (key) {
    case Key::disc:
      painter_.setPen(Qt::NoPen);
      painter_.setBrush(ink_.text);
      painter_.drawEllipse(box.center(), 4 * unit_, 4 * unit_);
      break;
    case Key::ring:
      painter_.setPen(QPen(ink_.text, 1.1 * unit_));
      painter_.drawEllipse(box.center(), 3 * unit_, 3 * unit_);
      break;
    case Key::stroke:
      painter_.setPen(QPen(ink_.text, 3 * unit_, Qt::SolidLine, Qt::FlatCap));
      painter_.drawLine(middle);
      break;
    case Key::dashes: {
      QPen dashed(ink_.text, 2 * unit_, Qt::CustomDashLine, Qt::FlatCap);
      dashed.setDashPattern({2, 1.5});
      painter_.setPen(dashed);
      painter_.drawLine(middle);
      break;
    }
    case Key::hatch:
      draw_hatch(painter_, box, Hatch::rising, ink_.edge, unit_);
      painter_.setPen(QPen(ink_.edge, 0.8 * unit_));
      painter_.drawRect(box);
      break;
    case Key::band:
      if (!ink_.paper) painter_.fillRect(box, ink_.band);
      painter_.setPen(QPen(ink_.text, 0.8 * unit_, Qt::DotLine));
      painter_.drawRect(box);
      break;
    case Key::part:
      draw_hatch(painter_, box, part.hatch, ink_.fill, unit_, part.density);
      painter_.setPen(QPen(ink_.edge, 0.8 * unit_));
      painter_.drawRect(box);
      break;
  }
}

}  // namespace skeinproof
