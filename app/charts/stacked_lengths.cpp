// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/charts/stacked_lengths.h"

#include <QHelpEvent>
#include <QPainter>
#include <QToolTip>
#include <algorithm>

#include "app/charts/chart_text.h"
#include "app/charts/hatch.h"

namespace skeinproof {
namespace {

constexpr double bar_half_width = 0.28;  // of a column

double sum_at(const StackData& data, std::size_t size) {
  double sum = 0;
  for (const auto& part : data.parts) sum += part.lengths[size];
  return sum;
}

}  // namespace

void StackedLengths::show_stack(StackData data) {
  data_ = std::move(data);
  double most = 0;
  for (std::size_t size = 0; size < data_.axis.labels.size(); ++size)
    if (data_.known[size]) most = std::max(most, sum_at(data_, size));
  high_ = most > 0 ? most * 1.12 : 100;
  show_axis(data_.axis);
}

// The library's bars carry no hatch that prints the same at every resolution, so the parts are drawn over the
// plot; nothing is to be added to the series.
void StackedLengths::fill() {}

std::vector<ScaleMark> StackedLengths::marks() const {
  std::vector<ScaleMark> marks;
  for (const double value : round_marks(0, high_, most_marks()))
    marks.push_back({value, {}, chart_length(value, data_.reader), false});
  return marks;
}

QRectF StackedLengths::bar(std::size_t size, double from, double to) const {
  const double middle = static_cast<double>(size) + 0.5;
  return {QPointF(x_of(middle - bar_half_width), y_of(to)),
          QPointF(x_of(middle + bar_half_width), y_of(from))};
}

void StackedLengths::draw_over(QPainter& painter) {
  painter.setFont(type().small);
  const QFontMetricsF metrics(type().small);
  for (std::size_t size = 0; size < data_.axis.labels.size(); ++size) {
    if (!data_.known[size]) continue;
    double from = 0;
    for (std::size_t part = 0; part < data_.parts.size(); ++part) {
      const double length = data_.parts[part].lengths[size];
      if (length <= 0) continue;
      const QRectF box = bar(size, from, from + length);
      const PartHatch hatch = part_hatch(part, ink().paper);
      painter.fillRect(box, ink().base);
      draw_hatch(painter, box, hatch.hatch, ink().fill, unit(), hatch.density);
      painter.setPen(QPen(ink().edge, 0.8 * unit()));
      painter.setBrush(Qt::NoBrush);
      painter.drawRect(box);
      from += length;
    }
    const QString words = chart_figure(from, data_.reader);
    painter.setPen(ink().text);
    write_clear(painter,
                QPointF(x_of(static_cast<double>(size) + 0.5) - metrics.horizontalAdvance(words) / 2,
                        y_of(from) - 4 * unit()),
                words, ink());
  }
}

void StackedLengths::draw_legend(QPainter& painter, const QRectF& strip) {
  LegendLine legend(ink(), type(), unit());
  for (std::size_t part = 0; part < data_.parts.size(); ++part)
    legend.add(data_.parts[part].name, LegendLine::Key::part, part_hatch(part, ink().paper));
  legend.draw(painter, strip, data_.title);
}

QString StackedLengths::tip_at(const QPointF& position) const {
  for (std::size_t size = 0; size < data_.axis.labels.size(); ++size) {
    if (!data_.known[size]) continue;
    double from = 0;
    for (const auto& part : data_.parts) {
      const double length = part.lengths[size];
      if (length > 0 && bar(size, from, from + length).contains(position))
        return tr("%1, size %2: %3")
            .arg(part.name, data_.axis.labels[size], chart_length(length, data_.reader));
      from += length;
    }
  }
  return {};
}

bool StackedLengths::viewportEvent(QEvent* event) {
  if (event->type() == QEvent::ToolTip) {
    const auto* help = static_cast<QHelpEvent*>(event);
    QToolTip::showText(help->globalPos(), tip_at(help->pos()), this);
    return true;
  }
  return SizeChart::viewportEvent(event);
}

QString StackedLengths::spoken() const {
  QStringList sizes{data_.title};
  for (std::size_t size = 0; size < data_.axis.labels.size() && size < data_.known.size(); ++size) {
    if (!data_.known[size]) {
      sizes << tr("size %1: not known").arg(data_.axis.labels[size]);
      continue;
    }
    QStringList parts;
    for (const auto& part : data_.parts)
      if (part.lengths[size] > 0)
        parts << part.name + QLatin1Char(' ') + chart_length(part.lengths[size], data_.reader);
    sizes << tr("size %1: %2").arg(data_.axis.labels[size], parts.join(QStringLiteral(", ")));
  }
  return sizes.join(QStringLiteral("; "));
}

}  // namespace skeinproof
