// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/chart_margin.h"

#include <QMouseEvent>
#include <QPainter>
#include <algorithm>

#include "app/widgets/chart_squares.h"
#include "app/widgets/ink.h"

namespace skeinproof {

ChartMargin::ChartMargin(ChartSquares& squares, Side side, QWidget* parent)
    : QWidget(parent), squares_(squares), side_(side) {
  setAccessibleName(side == numbers ? tr("Round numbers") : tr("Stitches and floats of every round"));
}

void ChartMargin::show_census(const ChartCensus& census) {
  census_ = census;
  update();
}

QFont ChartMargin::small() const {
  QFont font = type_of(this->font()).small;
  font.setPixelSize(
      std::max(7, std::min(QFontMetrics(font).height(), squares_.square_size().height()) * 5 / 6));
  return font;
}

QString ChartMargin::counts_text(std::size_t round) const {
  if (round >= census_.rounds.size()) return {};
  QString text;
  for (const ChartColour& colour : squares_.squares()->chart().colours) {
    const auto count =
        census_.rounds[round].stitches_of.find(colour.symbol.empty() ? no_stitch : colour.symbol.front());
    if (count == census_.rounds[round].stitches_of.end()) continue;
    if (!text.isEmpty()) text += QLatin1Char(' ');
    text += QString::fromStdString(colour.symbol) + QLatin1Char(' ') + QString::number(count->second);
  }
  return text;
}

QString ChartMargin::mark_text(std::size_t round) const {
  if (round == 0 || round >= census_.rounds.size()) return {};
  const long now = census_.rounds[round].stitches;
  return now == census_.rounds[round - 1].stitches ? QString() : tr("to %1 sts").arg(now);
}

QString ChartMargin::float_text(std::size_t round) const {
  const long stitches = round < census_.rounds.size() ? census_.rounds[round].longest_float : 0;
  return stitches > 0 ? QString::number(stitches) : QString();
}

QString ChartMargin::number_text(std::size_t round, bool current) const {
  const std::size_t number = round + 1;
  return current || number == 1 || number % 5 == 0 ? QString::number(number) : QString();
}

int ChartMargin::wanted_width() const {
  QFont font = small();
  font.setWeight(QFont::DemiBold);
  const QFontMetrics metrics(font);
  const int pad = scaled(this, 8);
  if (side_ == numbers)
    return metrics.horizontalAdvance(QString::number(std::max<std::size_t>(10, census_.rounds.size()))) +
           2 * pad;
  int held = metrics.horizontalAdvance(tr("Stitches"));
  for (std::size_t round = 0; round < census_.rounds.size(); ++round) {
    const QString mark = mark_text(round);
    const int beside = mark.isEmpty() ? 0 : metrics.horizontalAdvance(mark) + pad;
    held = std::max(held, metrics.horizontalAdvance(counts_text(round)) + beside);
  }
  return held + metrics.horizontalAdvance(tr("Float")) + 4 * pad;
}

void ChartMargin::paint_round(QPainter& painter, std::size_t round, const QRect& area, bool current) const {
  const Ink ink = ink_of(palette());
  QFont font = small();
  if (current) {
    painter.fillRect(area, ink.tint);
    font.setWeight(QFont::DemiBold);
  }
  painter.setFont(font);
  const QRect inner = area.adjusted(scaled(this, 8), 0, -scaled(this, 8), 0);
  if (side_ == numbers) {
    painter.setPen(current ? ink.text : ink.muted);
    painter.drawText(inner, Qt::AlignRight | Qt::AlignVCenter, number_text(round, current));
    return;
  }
  painter.setPen(ink.text);
  const QFontMetrics metrics(font);
  const int float_width = metrics.horizontalAdvance(tr("Float")) + scaled(this, 8);
  const int mark_width = metrics.horizontalAdvance(mark_text(round));
  const QString held =
      metrics.elidedText(counts_text(round), Qt::ElideRight, inner.width() - float_width - mark_width);
  painter.drawText(inner, Qt::AlignLeft | Qt::AlignVCenter, held);
  painter.setPen(ink.muted);
  painter.drawText(inner.adjusted(0, 0, -float_width, 0), Qt::AlignRight | Qt::AlignVCenter,
                   mark_text(round));
  const bool is_long = round < census_.rounds.size() && census_.rounds[round].longest_float >= long_float;
  font.setWeight(is_long ? QFont::DemiBold : QFont::Normal);
  painter.setFont(font);
  painter.setPen(is_long ? ink.text : ink.muted);
  painter.drawText(inner, Qt::AlignRight | Qt::AlignVCenter, float_text(round));
}

void ChartMargin::paintEvent(QPaintEvent* event) {
  QPainter painter(this);
  painter.fillRect(event->rect(), ink_of(palette()).base);
  const int rows = squares_.squares()->rowCount();
  if (rows == 0) return;
  const std::size_t current = squares_.current().round;
  for (int row = std::max(0, squares_.rowAt(0)); row < rows; ++row) {
    const int y = squares_.rowViewportPosition(row);
    if (y > height()) break;
    const auto round = static_cast<std::size_t>(rows - 1 - row);
    paint_round(painter, round, QRect(0, y, width(), squares_.square_size().height()), round == current);
  }
}

void ChartMargin::mousePressEvent(QMouseEvent* event) {
  const int row = squares_.rowAt(static_cast<int>(event->position().y()));
  if (row < 0) return;
  const auto round = static_cast<std::size_t>(squares_.squares()->rowCount() - 1 - row);
  squares_.setFocus();
  squares_.set_current({round, squares_.current().stitch});
}

}  // namespace skeinproof
