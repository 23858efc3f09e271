// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/charts/grouped_bars.h"

#include <QHelpEvent>
#include <QPainter>
#include <QToolTip>
#include <algorithm>

#include "app/charts/chart_text.h"
#include "app/charts/hatch.h"

namespace skeinproof {
namespace {

constexpr double group_half_width = 0.36;  // of a column
constexpr double headroom = 1.16;
constexpr double names_room = 32;  // px below the bars
constexpr int most_rules = 6;
constexpr double scale_width = 64;

}  // namespace

void GroupedBars::show_bars(BarsData data) {
  data_ = std::move(data);
  double most = data_.line.value_or(0);
  for (const BarsData::Series& series : data_.series)
    for (const auto& value : series.values) most = std::max(most, value.value_or(0));
  high_ = data_.top ? *data_.top * headroom : most > 0 ? most * headroom : 1;
  setAccessibleName(data_.title);
  setAccessibleDescription(spoken());
  fit_columns();
  show_axis(data_.axis);
}

double GroupedBars::low() const {
  const double names = std::min(names_room * unit(), plot().height() / 2);
  return -high_ * names / std::max(1.0, plot().height() - names);
}

std::vector<ScaleMark> GroupedBars::marks() const {
  std::vector<ScaleMark> marks;
  for (const double value :
       round_marks(0, data_.top.value_or(high_), std::min(most_rules, std::max(2, most_marks() - 1))))
    marks.push_back({value, {}, data_.words ? data_.words(value) : QString(), value == 0});
  return marks;
}

void GroupedBars::fit_columns() {
  const double left = scale_width * unit();
  const double width = std::max(10.0, this->width() - left - 8 * unit());
  const auto columns = static_cast<double>(std::max<std::size_t>(1, data_.axis.labels.size()));
  set_columns({left, width, width / columns, 0});
}

QRectF GroupedBars::bar(std::size_t series, std::size_t column, double value) const {
  const auto count = static_cast<double>(std::max<std::size_t>(1, data_.series.size()));
  const double each = 2 * group_half_width / std::max(2.0, count);  // one bar alone is not as wide as a group
  const double from =
      static_cast<double>(column) + 0.5 - each * count / 2 + each * static_cast<double>(series);
  return {QPointF(x_of(from), y_of(std::max(value, 0.0))),
          QPointF(x_of(from + each * 0.94), y_of(std::min(value, 0.0)))};
}

void GroupedBars::draw_over(QPainter& painter) {
  const QFontMetricsF metrics(type().small);
  const double column_width = x_of(1) - x_of(0);
  painter.setFont(type().small);
  if (data_.line) {
    QPen dashed(ink().text, std::max(1.0, unit()));
    dashed.setDashPattern({4, 3});
    painter.setPen(dashed);
    painter.drawLine(QPointF(plot().left(), y_of(*data_.line)), QPointF(plot().right(), y_of(*data_.line)));
  }
  for (std::size_t column = 0; column < data_.axis.labels.size(); ++column) {
    for (std::size_t at = 0; at < data_.series.size(); ++at) {
      const auto& values = data_.series[at].values;
      const auto value = column < values.size() ? values[column] : std::nullopt;
      const QRectF box = bar(at, column, value.value_or(0));
      if (value) {
        const PartHatch hatch = part_hatch(at, ink().paper);
        painter.fillRect(box, ink().base);
        draw_hatch(painter, box, hatch.hatch, ink().fill, unit(), hatch.density);
        painter.setPen(QPen(ink().edge, 0.8 * unit()));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(box);
      }
      const QString words = !value ? QStringLiteral("–") : data_.words ? data_.words(*value) : QString();
      const double width = metrics.horizontalAdvance(words);
      if (data_.series.size() > 1 && width > box.width() + 2 * unit()) continue;  // the tip says it
      painter.setPen(ink().text);
      write_clear(painter, QPointF(box.center().x() - width / 2, box.top() - 4 * unit()), words, ink());
    }
    // Long names take a second line.
    const QRectF room(x_of(static_cast<double>(column)) + 2 * unit(), y_of(0) + 4 * unit(),
                      column_width - 4 * unit(), plot().bottom() + 6 * unit() - y_of(0));
    painter.setPen(ink().text);
    painter.drawText(room, Qt::AlignHCenter | Qt::AlignTop | Qt::TextWordWrap, data_.axis.labels[column]);
  }
}

void GroupedBars::draw_legend(QPainter& painter, const QRectF& strip) {
  LegendLine(ink(), type(), unit())
      .draw(painter, strip,
            data_.line ? tr("%1; dashed: %2").arg(data_.title, data_.line_words) : data_.title);
}

double draw_series_key(QPainter* painter, const QRectF& room, const QStringList& names, const Ink& ink,
                       const Type& type, double unit) {
  const QFontMetricsF metrics(type.small);
  const double box = 14 * unit, gap = 6 * unit, apart = 18 * unit, line = metrics.height() + 6 * unit;
  double x = room.left(), y = room.top();
  for (qsizetype at = 0; at < names.size(); ++at) {
    const double width = box + gap + metrics.horizontalAdvance(names[at]);
    if (x > room.left() && x + width > room.right()) {
      x = room.left();
      y += line;
    }
    if (painter != nullptr) {
      const QRectF square(x, y + (line - box * 0.8) / 2, box, box * 0.8);
      const PartHatch hatch = part_hatch(static_cast<std::size_t>(at), ink.paper);
      draw_hatch(*painter, square, hatch.hatch, ink.fill, unit, hatch.density);
      painter->setPen(QPen(ink.edge, 0.8 * unit));
      painter->setBrush(Qt::NoBrush);
      painter->drawRect(square);
      painter->setFont(type.small);
      painter->setPen(ink.text);
      painter->drawText(QPointF(x + box + gap, y + (line + metrics.ascent() - metrics.descent()) / 2),
                        names[at]);
    }
    x += width + apart;
  }
  return names.isEmpty() ? 0 : y + line - room.top();
}

void GroupedBars::resizeEvent(QResizeEvent* event) {
  fit_columns();
  SizeChart::resizeEvent(event);
}

void GroupedBars::changeEvent(QEvent* event) {
  SizeChart::changeEvent(event);
  if (event->type() == QEvent::FontChange) fit_columns();
}

QSize GroupedBars::sizeHint() const {
  return {static_cast<int>(360 * unit()), static_cast<int>(230 * unit())};
}

QString GroupedBars::tip_at(const QPointF& position) const {
  for (std::size_t at = 0; at < data_.series.size(); ++at)
    for (std::size_t column = 0; column < data_.series[at].values.size(); ++column) {
      const auto value = data_.series[at].values[column];
      if (value && data_.words && bar(at, column, *value).contains(position))
        return tr("%1, %2: %3").arg(data_.series[at].name, data_.axis.labels[column], data_.words(*value));
    }
  return {};
}

bool GroupedBars::viewportEvent(QEvent* event) {
  if (event->type() != QEvent::ToolTip) return SizeChart::viewportEvent(event);
  const auto* help = static_cast<QHelpEvent*>(event);
  QToolTip::showText(help->globalPos(), tip_at(help->pos()), this);
  return true;
}

QString GroupedBars::spoken() const {
  QStringList all{data_.title};
  for (const BarsData::Series& series : data_.series)
    for (std::size_t column = 0; column < series.values.size(); ++column) {
      const QString value =
          series.values[column] && data_.words ? data_.words(*series.values[column]) : tr("not known");
      const QString place = data_.series.size() > 1 ? tr("%1, %2").arg(series.name, data_.axis.labels[column])
                                                    : data_.axis.labels[column];
      all << tr("%1: %2").arg(place, value);
    }
  if (data_.line) all << data_.line_words;
  return all.join(QStringLiteral("; "));
}

}  // namespace skeinproof
