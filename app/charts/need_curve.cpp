// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/charts/need_curve.h"

#include <QPainter>
#include <QtCharts/QAreaSeries>
#include <QtCharts/QLineSeries>
#include <QtCharts/QScatterSeries>
#include <algorithm>
#include <cmath>
#include <limits>

#include "app/charts/chart_text.h"
#include "app/charts/hatch.h"

namespace skeinproof {
namespace {

constexpr double bought_half_width = 0.37;  // of a column
constexpr double left_over_half_width = 6;

int whole_steps(double step_count, int most) {
  for (int power = 1;; power *= 10)
    for (const int nice : {1, 2, 5})
      if (step_count / (nice * power) <= most) return nice * power;
}

}  // namespace

NeedCurve::NeedCurve(QWidget* parent) : SizeChart(parent) { setObjectName(QStringLiteral("need_curve")); }

void NeedCurve::show_need(NeedCurveData data) {
  data_ = std::move(data);
  measure();
  show_axis(data_.axis);
}

void NeedCurve::measure() {
  double least = std::numeric_limits<double>::max();
  double most = 0;
  for (const auto& point : data_.points) {
    if (!point.known) continue;
    least = std::min({least, point.knitted, point.low > 0 ? point.low : point.knitted});
    most = std::max({most, point.planned, point.high, point.bought.value_or(0),
                     point.words_skeins && data_.skein ? *point.words_skeins * *data_.skein : 0});
  }
  if (most <= 0) {
    low_ = 0;
    high_ = data_.skein.value_or(100);
    return;
  }
  const double step = data_.skein.value_or(most / 5);
  const double first = std::floor(least / step + 1e-9);
  low_ = first <= 0 ? 0 : (first - 0.25) * step;
  // Room above for the word over the highest step.
  high_ = most + std::max(step * 0.35, (most - low_) * 0.08);
}

void NeedCurve::add_band(std::size_t from, std::size_t to) {
  auto* lower = new QLineSeries(this);
  auto* upper = new QLineSeries(this);
  for (std::size_t size = from; size < to; ++size) {
    lower->append(static_cast<double>(size) + 0.5, data_.points[size].low);
    upper->append(static_cast<double>(size) + 0.5, data_.points[size].high);
  }
  auto* band = new QAreaSeries(upper, lower);
  lower->setParent(band);
  upper->setParent(band);
  QColor fill = ink().band;
  fill.setAlphaF(ink().paper ? 0 : 0.55F);
  band->setBrush(fill);
  band->setPen(QPen(ink().text, 0.8 * unit(), Qt::DotLine));
  add(band);
}

void NeedCurve::add_line(std::size_t from, std::size_t to, double NeedCurveData::Point::*value,
                         bool planned) {
  auto* line = new QLineSeries;
  auto* marks = new QScatterSeries;
  for (std::size_t size = from; size < to; ++size) {
    line->append(static_cast<double>(size) + 0.5, data_.points[size].*value);
    marks->append(static_cast<double>(size) + 0.5, data_.points[size].*value);
  }
  line->setPen(planned ? QPen(ink().text, 1.8 * unit()) : QPen(ink().text, 1.1 * unit(), Qt::DashLine));
  marks->setMarkerSize((planned ? 9 : 6) * unit());
  marks->setBrush(planned ? ink().text : ink().base);
  marks->setPen(planned ? QPen(ink().base, 1.2 * unit()) : QPen(ink().text, 1.1 * unit()));
  add(line);
  add(marks);
}

void NeedCurve::fill() {
  const auto& points = data_.points;
  for (std::size_t from = 0; from < points.size();) {
    if (!points[from].known) {
      ++from;
      continue;
    }
    std::size_t to = from;
    while (to < points.size() && points[to].known) ++to;
    if (points[from].high > points[from].low) add_band(from, to);
    add_line(from, to, &NeedCurveData::Point::knitted, false);
    add_line(from, to, &NeedCurveData::Point::planned, true);
    from = to;
  }
}

std::vector<ScaleMark> NeedCurve::marks() const {
  std::vector<ScaleMark> marks;
  if (!data_.skein) {
    for (const double value : round_marks(low_, high_, most_marks()))
      marks.push_back({value, {}, chart_length(value, data_.reader), false});
    return marks;
  }
  const double skein = *data_.skein;
  const int first = static_cast<int>(std::ceil(low_ / skein - 1e-9));
  const int last = static_cast<int>(std::floor(high_ / skein + 1e-9));
  const int step = whole_steps(last - first + 1, most_marks());
  std::optional<double> chosen;
  if (axis().chosen < data_.points.size()) chosen = data_.points[axis().chosen].bought;
  for (int skeins = first; skeins <= last; ++skeins) {
    const bool strong = chosen && std::abs(*chosen - skeins * skein) < skein * 1e-6;
    if (skeins % step != 0 && !strong) continue;
    marks.push_back({skeins * skein, skeins == 1 ? tr("1 skein") : tr("%1 skeins").arg(skeins),
                     chart_length(skeins * skein, data_.reader), strong});
  }
  return marks;
}

void NeedCurve::draw_bought(QPainter& painter, std::size_t size) {
  const auto& point = data_.points[size];
  const double middle = static_cast<double>(size) + 0.5;
  const double x = x_of(middle);
  const double y = y_of(*point.bought);
  const QRectF left_over(QPointF(x - left_over_half_width * unit(), y),
                         QPointF(x + left_over_half_width * unit(), y_of(point.planned)));
  if (left_over.height() > 2 * unit()) {
    draw_hatch(painter, left_over, Hatch::rising, ink().edge, unit());
    painter.setPen(QPen(ink().edge, 0.8 * unit()));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(left_over);
  }
  painter.setPen(QPen(ink().text, 3 * unit(), Qt::SolidLine, Qt::FlatCap));
  painter.drawLine(QPointF(x_of(middle - bought_half_width), y),
                   QPointF(x_of(middle + bought_half_width), y));
  painter.setFont(type().small);
  painter.setPen(ink().text);
  const double left = *point.bought - point.planned;
  const QString words = left >= 0 ? tr("%1 left").arg(chart_figure(left, data_.reader))
                                  : tr("%1 short").arg(chart_figure(-left, data_.reader));
  write_clear(painter, QPointF(x_of(middle - bought_half_width), y - 5 * unit()), words, ink());
}

void NeedCurve::draw_words(QPainter& painter, std::size_t size) {
  const auto& point = data_.points[size];
  const double middle = static_cast<double>(size) + 0.5;
  const double y = y_of(*point.words_skeins * *data_.skein);
  const bool above = !point.bought || *point.words_skeins * *data_.skein >= *point.bought;
  QPen dashed(ink().text, 2 * unit(), Qt::CustomDashLine, Qt::FlatCap);
  dashed.setDashPattern({2, 1.5});
  painter.setPen(dashed);
  painter.drawLine(QPointF(x_of(middle - bought_half_width), y),
                   QPointF(x_of(middle + bought_half_width), y));
  painter.setPen(ink().text);
  painter.setFont(type().words);
  const QString words = QStringLiteral("“%1”").arg(*point.words_skeins);
  const QFontMetricsF metrics(type().words);
  painter.drawText(QPointF(x_of(middle + bought_half_width) - metrics.horizontalAdvance(words),
                           above ? y - 4 * unit() : y + metrics.ascent() + 2 * unit()),
                   words);
}

void NeedCurve::draw_over(QPainter& painter) {
  for (std::size_t size = 0; size < data_.points.size(); ++size) {
    if (!data_.points[size].known) continue;
    if (data_.points[size].bought) draw_bought(painter, size);
    if (data_.points[size].words_skeins && data_.skein) draw_words(painter, size);
  }
}

void NeedCurve::draw_legend(QPainter& painter, const QRectF& strip) {
  LegendLine legend(ink(), type(), unit());
  bool text_differs = false, left_over = false, band = false;
  for (const auto& point : data_.points) {
    text_differs = text_differs || point.words_skeins.has_value();
    left_over = left_over || point.bought.has_value();
    band = band || point.high > point.low;
  }
  legend.add(tr("planned"), LegendLine::Key::disc);
  legend.add(tr("knitted"), LegendLine::Key::ring);
  if (left_over) legend.add(tr("bought"), LegendLine::Key::stroke);
  if (left_over) legend.add(tr("left over, %1").arg(chart_unit(data_.reader)), LegendLine::Key::hatch);
  if (text_differs) legend.add(tr("“the text”"), LegendLine::Key::dashes);
  if (band) legend.add(tr("9 in 10"), LegendLine::Key::band);
  legend.draw(painter, strip, data_.role);
}

QString NeedCurve::spoken() const {
  QStringList parts{tr("Need curve of %1").arg(data_.role)};
  for (std::size_t size = 0; size < data_.points.size() && size < data_.axis.labels.size(); ++size) {
    const auto& point = data_.points[size];
    parts << (point.known ? tr("size %1: planned %2, knitted %3")
                                .arg(data_.axis.labels[size], chart_length(point.planned, data_.reader),
                                     chart_length(point.knitted, data_.reader))
                          : tr("size %1: not known").arg(data_.axis.labels[size]));
  }
  return parts.join(QStringLiteral("; "));
}

}  // namespace skeinproof
