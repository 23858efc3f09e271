// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/charts/size_chart.h"

#include <QEvent>
#include <QFontInfo>
#include <QMouseEvent>
#include <QResizeEvent>
#include <QtCharts/QChart>
#include <QtCharts/QLegend>
#include <QtCharts/QValueAxis>
#include <algorithm>
#include <cmath>

namespace skeinproof {
namespace {

constexpr double legend_height = 24;
constexpr double foot = 8;

QValueAxis* bare_axis(QChart* chart, Qt::Alignment side) {
  auto* axis = new QValueAxis(chart);
  axis->setVisible(false);
  axis->setRange(0, 1);
  chart->addAxis(axis, side);
  return axis;
}

QFont in_pixels(QFont font, double pixels) {
  font.setPixelSize(static_cast<int>(std::lround(pixels)));
  return font;
}

}  // namespace

std::vector<double> round_marks(double low, double high, int most) {
  std::vector<double> marks;
  if (!(high > low) || most < 1) return marks;
  const double rough = (high - low) / most;
  const double power = std::pow(10, std::floor(std::log10(rough)));
  double step = 10 * power;
  for (const double nice : {1.0, 2.0, 5.0})
    if (nice * power >= rough) {
      step = nice * power;
      break;
    }
  for (double value = std::ceil(low / step) * step; value <= high + step * 1e-9; value += step)
    marks.push_back(value);
  return marks;
}

SizeChart::SizeChart(QWidget* parent)
    : QChartView(new QChart, parent),
      sizes_(bare_axis(chart(), Qt::AlignBottom)),
      values_(bare_axis(chart(), Qt::AlignLeft)) {
  chart()->legend()->hide();
  chart()->setBackgroundVisible(false);
  chart()->setPlotAreaBackgroundVisible(false);
  chart()->setAnimationOptions(QChart::NoAnimation);
  chart()->setMargins({});
  setRenderHint(QPainter::Antialiasing);
  setFrameShape(QFrame::NoFrame);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setFocusPolicy(Qt::NoFocus);
  ink_ = ink_of(palette());
  type_ = type_of(font());
  unit_ = QFontInfo(font()).pixelSize() / 13.0;
}

void SizeChart::set_columns(const ChartColumns& columns) {
  columns_ = columns;
  place();
}

void SizeChart::show_axis(const SizeAxis& axis) {
  axis_ = axis;
  place();
  chart()->removeAllSeries();
  fill();
  setAccessibleName(spoken());
  viewport()->update();
}

void SizeChart::place() {
  const QSizeF size = chart()->size();
  plot_ = QRectF(columns_.left, legend_height * unit_, std::max(1.0, columns_.width),
                 std::max(1.0, size.height() - (legend_height + foot) * unit_));
  chart()->setPlotArea(plot_);
  const double first = columns_.scrolled / columns_.column_width;
  sizes_->setRange(first, first + plot_.width() / columns_.column_width);
  if (high() > low()) values_->setRange(low(), high());
  viewport()->update();
}

int SizeChart::most_marks() const { return std::max(2, static_cast<int>(plot_.height() / (17 * unit_))); }

double SizeChart::x_of(double size) const {
  return plot_.left() + size * columns_.column_width - columns_.scrolled;
}
double SizeChart::y_of(double value) const {
  return plot_.bottom() - (value - values_->min()) / (values_->max() - values_->min()) * plot_.height();
}

void SizeChart::add(QAbstractSeries* series) {
  chart()->addSeries(series);
  series->attachAxis(sizes_);
  series->attachAxis(values_);
}

QPen SizeChart::rule_pen(bool strong) const {
  if (!ink_.paper) return {strong ? ink_.edge : ink_.rule, unit_};
  QPen dotted(ink_.rule, 0.6, Qt::CustomDashLine, Qt::FlatCap);
  dotted.setDashPattern({1, 5});
  return dotted;
}

void SizeChart::drawBackground(QPainter* painter, const QRectF& rect) {
  painter->fillRect(rect, ink_.base);
  const double top = plot_.top() - 4 * unit_;
  const double bottom = plot_.bottom() + foot * unit_;
  painter->save();
  painter->setClipRect(QRectF(plot_.left(), top, plot_.width(), bottom - top));
  if (axis_.chosen < axis_.labels.size() && !ink_.paper)
    painter->fillRect(
        QRectF(x_of(static_cast<double>(axis_.chosen)), top, columns_.column_width, bottom - top), ink_.tint);
  painter->restore();
  QFont strong = type_.small;
  strong.setWeight(QFont::DemiBold);
  for (const ScaleMark& mark : marks()) {
    const double y = y_of(mark.value);
    painter->setPen(rule_pen(mark.strong));
    painter->drawLine(QPointF(plot_.left(), y), QPointF(plot_.right(), y));
    const QFontMetricsF metrics(mark.strong ? strong : type_.small);
    const double baseline = y + (metrics.ascent() - metrics.descent()) / 2;
    const double right = plot_.left() - 7 * unit_;
    const double right_width = metrics.horizontalAdvance(mark.right);
    painter->setFont(mark.strong ? strong : type_.small);
    painter->setPen(ink_.muted);
    painter->drawText(QPointF(right - right_width, baseline), mark.right);
    painter->setPen(ink_.text);
    const double left_width = metrics.horizontalAdvance(mark.left);
    painter->drawText(QPointF(right - right_width - 6 * unit_ - left_width, baseline), mark.left);
  }
  painter->setClipRect(QRectF(plot_.left(), top, plot_.width() + 1, bottom - top));
  for (std::size_t size = 0; size < axis_.opens_group.size(); ++size) {
    if (!axis_.opens_group[size]) continue;
    painter->setPen(QPen(ink_.edge, (ink_.paper ? 0.6 : 1) * unit_));
    painter->drawLine(QPointF(x_of(static_cast<double>(size)), top),
                      QPointF(x_of(static_cast<double>(size)), bottom));
  }
  painter->setClipping(false);
}

void SizeChart::drawForeground(QPainter* painter, const QRectF&) {
  painter->save();
  painter->setRenderHint(QPainter::Antialiasing);
  painter->setClipRect(QRectF(plot_.left(), 0, plot_.width(), plot_.bottom() + foot * unit_));
  draw_over(*painter);
  painter->restore();
  painter->save();
  painter->setRenderHint(QPainter::Antialiasing);
  draw_legend(*painter, QRectF(7 * unit_, 0, plot_.right() - 14 * unit_, legend_height * unit_));
  painter->restore();
}

void SizeChart::resizeEvent(QResizeEvent* event) {
  QChartView::resizeEvent(event);
  place();
}

void SizeChart::changeEvent(QEvent* event) {
  QChartView::changeEvent(event);
  if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange ||
      event->type() == QEvent::StyleChange)
    re_ink();
}

void SizeChart::re_ink() {
  ink_ = ink_of(palette());
  type_ = type_of(font());
  unit_ = QFontInfo(font()).pixelSize() / 13.0;
  show_axis(SizeAxis(axis_));
}

void SizeChart::mousePressEvent(QMouseEvent* event) {
  const double size = (event->position().x() - plot_.left() + columns_.scrolled) / columns_.column_width;
  if (event->position().x() >= plot_.left() && size >= 0 && size < static_cast<double>(axis_.labels.size()))
    emit size_clicked(static_cast<std::size_t>(size));
}

void SizeChart::paint_on_paper(QPainter& painter, const QRectF& target, double margin) {
  ink_ = paper_ink();
  unit_ = 1;
  type_ = type_of(in_pixels(font(), 13));
  const QSize size = target.size().toSize();
  resize(size);
  chart()->resize(target.size());
  scene()->setSceneRect(QRectF(QPointF(), target.size()));
  const double width = target.width() - margin;
  columns_ = {margin, width, width / std::max<double>(1, static_cast<double>(axis_.labels.size())), 0};
  show_axis(SizeAxis(axis_));
  scene()->update();
  render(&painter, target, QRect(QPoint(), size), Qt::IgnoreAspectRatio);
}

}  // namespace skeinproof
