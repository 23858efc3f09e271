// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/charts/chart_text.h"

#include <QCoreApplication>
#include <QFontMetricsF>
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

void write_clear(QPainter& painter, const QPointF& baseline, const QString& words, const Ink& ink) {
  if (ink.paper) {
    // Black rules would strike the figures out.
    const QFontMetricsF metrics(painter.font());
    painter.fillRect(QRectF(baseline.x() - 1, baseline.y() - metrics.capHeight() - 1,
                            metrics.horizontalAdvance(words) + 2, metrics.capHeight() + 2),
                     ink.base);
  }
  painter.drawText(baseline, words);
}

LegendLine::LegendLine(const Ink& ink, const Type& type, double unit) : ink_(ink), type_(type), unit_(unit) {}

void LegendLine::add(const QString& words, Key key, PartHatch part) {
  Entry entry{words, key, part, 20 * unit_, 0};
  if (key == Key::disc || key == Key::ring) entry.key_width = 9 * unit_;
  if (key == Key::part) entry.key_width = 14 * unit_;
  entry.width = entry.key_width + 5 * unit_ + QFontMetricsF(font_of(entry)).horizontalAdvance(words);
  entries_.push_back(entry);
}

void LegendLine::draw(QPainter& painter, const QRectF& strip, const QString& title) const {
  const double gap = 16 * unit_;
  const auto baseline = [&](const QFont& font) {
    const QFontMetricsF metrics(font);
    return strip.center().y() + (metrics.ascent() - metrics.descent()) / 2;
  };
  QFont strong = type_.body;
  strong.setWeight(QFont::DemiBold);
  painter.setFont(strong);
  painter.setPen(ink_.text);
  painter.drawText(QPointF(strip.left(), baseline(strong)), title);
  const double room = strip.width() - QFontMetricsF(strong).horizontalAdvance(title) - gap;
  double used = -gap;
  std::size_t fitting = 0;
  while (fitting < entries_.size() && used + gap + entries_[fitting].width <= room)
    used += gap + entries_[fitting++].width;
  double x = strip.right() - used;
  for (std::size_t i = 0; i < fitting; ++i) {
    const Entry& entry = entries_[i];
    draw_key(painter, QRectF(x, strip.center().y() - 5 * unit_, entry.key_width, 10 * unit_), entry);
    painter.setFont(font_of(entry));
    painter.setPen(ink_.text);
    painter.drawText(QPointF(x + entry.key_width + 5 * unit_, baseline(font_of(entry))), entry.words);
    x += entry.width + gap;
  }
}

void LegendLine::draw_key(QPainter& painter, const QRectF& box, const Entry& entry) const {
  const QLineF middle(box.left(), box.center().y(), box.right(), box.center().y());
  painter.setBrush(Qt::NoBrush);
  switch (entry.key) {
    case Key::disc:
      painter.setPen(Qt::NoPen);
      painter.setBrush(ink_.text);
      painter.drawEllipse(box.center(), 4 * unit_, 4 * unit_);
      break;
    case Key::ring:
      painter.setPen(QPen(ink_.text, 1.1 * unit_));
      painter.drawEllipse(box.center(), 3 * unit_, 3 * unit_);
      break;
    case Key::stroke:
      painter.setPen(QPen(ink_.text, 3 * unit_, Qt::SolidLine, Qt::FlatCap));
      painter.drawLine(middle);
      break;
    case Key::dashes: {
      QPen dashed(ink_.text, 2 * unit_, Qt::CustomDashLine, Qt::FlatCap);
      dashed.setDashPattern({2, 1.5});
      painter.setPen(dashed);
      painter.drawLine(middle);
      break;
    }
    case Key::hatch:
      draw_hatch(painter, box, Hatch::rising, ink_.edge, unit_);
      painter.setPen(QPen(ink_.edge, 0.8 * unit_));
      painter.drawRect(box);
      break;
    case Key::band:
      if (!ink_.paper) painter.fillRect(box, ink_.band);
      painter.setPen(QPen(ink_.text, 0.8 * unit_, Qt::DotLine));
      painter.drawRect(box);
      break;
    case Key::part:
      draw_hatch(painter, box, entry.part.hatch, ink_.fill, unit_, entry.part.density);
      painter.setPen(QPen(ink_.edge, 0.8 * unit_));
      painter.drawRect(box);
      break;
  }
}

}  // namespace skeinproof
