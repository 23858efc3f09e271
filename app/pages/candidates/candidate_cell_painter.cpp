// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/candidates/candidate_cell_painter.h"

#include <QFontMetricsF>
#include <QPainter>
#include <QTextLayout>
#include <algorithm>
#include <cmath>

namespace skeinproof {
namespace {

constexpr double inset = 12;
constexpr double room_above = 5;
constexpr double line_gap = 2;
constexpr double indent = 12;
constexpr double mark_height = 46;
constexpr double mark_line = 23;   // of the axis below the top
constexpr double mark_half = 5;    // of the band
constexpr double stroke_half = 7;  // of the mark
constexpr double stroke_width = 3.5;
constexpr double mass_height = 24;
constexpr double mass_bar = 12;
constexpr double skein_line = 20;
constexpr double skein_bar = 8;
constexpr double widest_bar = 110;
constexpr double gap = 8;

QFont semibold(QFont font) {
  font.setWeight(QFont::DemiBold);
  return font;
}

// Stacks what a cell holds from top to bottom.
class CellStack {
 public:
  CellStack(QPainter* painter, const QRectF& rect, const CellLook& look)
      : painter_(painter), look_(look), u_(look.unit) {
    left_ = rect.left() + inset * u_;
    width_ = std::max(40 * u_, rect.width() - 2 * inset * u_);
    top_ = rect.top();
    y_ = top_ + room_above * u_;
  }

  void firmness(const FirmnessMark& mark);
  void mass(const MassBar& bar);
  void skeins(const std::vector<SkeinLine>& lines);
  void words(const FactLine& line);
  double height() const { return y_ - top_ + room_above * u_; }

 private:
  double width_of(const QFont& font, const QString& text) const {
    return painter_ != nullptr ? QFontMetricsF(font, painter_->device()).horizontalAdvance(text)
                               : QFontMetricsF(font).horizontalAdvance(text);
  }
  void write(double x, double baseline, const QString& text, const QFont& font, const QColor& colour) {
    painter_->setFont(font);
    painter_->setPen(colour);
    painter_->drawText(QPointF(x, baseline), text);
  }
  void write_middle(double x, double baseline, const QString& text, const QFont& font, const QColor& colour) {
    const double width = width_of(font, text);
    write(std::clamp(x - width / 2, left_, left_ + width_ - width), baseline, text, font, colour);
  }

  QPainter* painter_;
  const CellLook& look_;
  double u_, left_, width_, top_, y_;
};

void CellStack::firmness(const FirmnessMark& mark) {
  const double top = y_;
  y_ += mark_height * u_;
  if (painter_ == nullptr) return;
  const Ink& ink = look_.ink;
  const auto x_of = [&](double value) {
    return left_ + width_ * (value - mark.axis_low) / (mark.axis_high - mark.axis_low);
  };
  const double middle = top + mark_line * u_;
  painter_->setPen(QPen(ink.edge, std::max(1.0, u_)));
  painter_->drawLine(QPointF(left_, middle), QPointF(left_ + width_, middle));
  const QRectF band(QPointF(x_of(mark.low), middle - mark_half * u_),
                    QPointF(x_of(mark.high), middle + mark_half * u_));
  painter_->setBrush(ink.band);
  painter_->setPen(QPen(ink.text, std::max(1.0, u_)));
  painter_->drawRect(band);
  painter_->setBrush(Qt::NoBrush);
  painter_->setPen(QPen(ink.edge, std::max(1.0, u_)));
  painter_->drawLine(QPointF(band.left(), middle), QPointF(band.right(), middle));
  if (mark.own) {
    QPen dashed(ink.text, std::max(1.0, u_));
    dashed.setDashPattern({2, 2});
    painter_->setPen(dashed);
    painter_->drawLine(QPointF(x_of(*mark.own), middle - (mark_half + 4) * u_),
                       QPointF(x_of(*mark.own), middle + (mark_half + 4) * u_));
  }
  painter_->fillRect(QRectF(x_of(mark.value) - stroke_width / 2 * u_, middle - stroke_half * u_,
                            stroke_width * u_, 2 * stroke_half * u_),
                     ink.text);
  write_middle(x_of(mark.value), middle - (stroke_half + 3) * u_, mark.value_words,
               semibold(look_.type.small), ink.text);
  const double foot = middle + (stroke_half + 13) * u_;
  write_middle(x_of(mark.low), foot, mark.low_words, look_.type.small, ink.muted);
  write_middle(x_of(mark.high), foot, mark.high_words, look_.type.small, ink.muted);
  const double between = x_of(mark.high) - x_of(mark.low);
  if (width_of(look_.type.small, mark.low_words + mark.range_words + mark.high_words) < between)
    write_middle(x_of((mark.low + mark.high) / 2), foot, mark.range_words, look_.type.small, ink.muted);
}

void CellStack::mass(const MassBar& bar) {
  const double top = y_;
  y_ += mass_height * u_;
  if (painter_ == nullptr) return;
  const Ink& ink = look_.ink;
  const double middle = top + mass_height / 2 * u_;
  const QFontMetricsF metrics(look_.type.body, painter_->device());
  const double baseline = middle + (metrics.ascent() - metrics.descent()) / 2;
  const double figure =
      std::max(width_of(look_.type.body, QStringLiteral("1,000 g")), width_of(look_.type.body, bar.figure));
  const double more =
      std::max(width_of(look_.type.body, QStringLiteral("+35 %")), width_of(look_.type.body, bar.more));
  write(left_, baseline, bar.figure, look_.type.body, ink.text);
  write(left_ + width_ - width_of(look_.type.body, bar.more), baseline, bar.more, look_.type.body, ink.text);
  const double from = left_ + figure + gap * u_;
  const double length = std::max(0.0, left_ + width_ - more - gap * u_ - from);
  fill_bar(*painter_, QRectF(from, middle - mass_bar / 2 * u_, length * bar.share, mass_bar * u_), ink, u_);
  if (bar.own_share <= 0 || length <= 0) return;
  QPen dashed(ink.text, std::max(1.0, 1.4 * u_));
  dashed.setDashPattern({2, 1.5});
  const double x = from + length * bar.own_share;
  // On the bar itself the dashes stand on the ground's colour.
  painter_->setPen(QPen(ink.base, std::max(1.0, 1.4 * u_)));
  painter_->drawLine(QPointF(x, middle - (mass_bar / 2 + 3) * u_),
                     QPointF(x, middle + (mass_bar / 2 + 3) * u_));
  painter_->setPen(dashed);
  painter_->drawLine(QPointF(x, middle - (mass_bar / 2 + 3) * u_),
                     QPointF(x, middle + (mass_bar / 2 + 3) * u_));
}

void CellStack::skeins(const std::vector<SkeinLine>& lines) {
  const QFont heavy = semibold(look_.type.body), strong_word = semibold(look_.type.small);
  double role = 0, count = 0, word = 0;
  for (const SkeinLine& line : lines) {
    role = std::max(role, width_of(look_.type.small, line.role));
    count = std::max(count, width_of(heavy, line.count));
    word = std::max(word, width_of(line.strong ? strong_word : look_.type.small, line.word));
  }
  const double bar_left = left_ + role + gap * u_ + count + gap * u_;
  const double bar_width = std::clamp(left_ + width_ - word - gap * u_ - bar_left, 0.0, widest_bar * u_);
  for (const SkeinLine& line : lines) {
    const double top = y_;
    y_ += skein_line * u_;
    if (painter_ == nullptr) continue;
    const double middle = top + skein_line / 2 * u_;
    const QFontMetricsF metrics(look_.type.small, painter_->device());
    const double baseline = middle + (metrics.ascent() - metrics.descent()) / 2;
    write(left_, baseline, line.role, look_.type.small, look_.ink.text);
    write(bar_left - gap * u_ - width_of(heavy, line.count), baseline, line.count, heavy, look_.ink.text);
    const QFont& font = line.strong ? strong_word : look_.type.small;
    write(left_ + width_ - width_of(font, line.word), baseline, line.word, font,
          line.strong ? look_.ink.text : look_.ink.muted);
    if (bar_width > 4 * u_)
      paint_skein_bar(*painter_, QRectF(bar_left, middle - skein_bar / 2 * u_, bar_width, skein_bar * u_),
                      line.share, look_);
  }
}

void CellStack::words(const FactLine& line) {
  QString text;
  QList<QTextLayout::FormatRange> formats;
  for (const FactWords& run : line.runs) {
    QTextLayout::FormatRange range;
    range.start = static_cast<int>(text.size());
    range.length = static_cast<int>(run.text.size());
    const bool quiet = run.weight == FactWords::Weight::quiet;
    range.format.setForeground(quiet ? look_.ink.muted : look_.ink.text);
    range.format.setFont(quiet                                     ? look_.type.small
                         : run.weight == FactWords::Weight::strong ? semibold(look_.type.body)
                                                                   : look_.type.body);
    formats.push_back(range);
    text += run.text;
  }
  const double step = (line.indented ? indent : 0) * u_ + (line.boxed ? 5 * u_ : 0);
  QTextLayout layout(text, look_.type.body, painter_ != nullptr ? painter_->device() : nullptr);
  QTextOption option;
  option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
  layout.setTextOption(option);
  layout.setFormats(formats);
  double height = 0, widest = 0;
  layout.beginLayout();
  for (QTextLine row = layout.createLine(); row.isValid(); row = layout.createLine()) {
    row.setLineWidth(width_ - step - (line.boxed ? 5 * u_ : 0));
    row.setPosition(QPointF(0, height));
    height += row.height();
    widest = std::max(widest, row.naturalTextWidth());
  }
  layout.endLayout();
  const double above = line.boxed ? 4 * u_ : 0;
  if (painter_ != nullptr) {
    layout.draw(painter_, QPointF(left_ + step, y_ + above));
    if (line.boxed) {
      QPen dotted(look_.ink.edge, std::max(1.0, u_));
      dotted.setStyle(Qt::DotLine);
      painter_->setPen(dotted);
      painter_->setBrush(Qt::NoBrush);
      painter_->drawRect(QRectF(left_, y_ + 2 * u_, widest + 10 * u_, height + 4 * u_));
    }
  }
  y_ += height + line_gap * u_ + (line.boxed ? 8 * u_ : 0);
}

}  // namespace

double lay_fact_cell(QPainter* painter, const QRectF& rect, const FactCell& cell, const CellLook& look) {
  CellStack stack(painter, rect, look);
  if (painter != nullptr) painter->save();
  if (cell.firmness) stack.firmness(*cell.firmness);
  if (cell.mass) stack.mass(*cell.mass);
  if (!cell.skeins.empty()) stack.skeins(cell.skeins);
  for (const FactLine& line : cell.lines) stack.words(line);
  if (painter != nullptr) painter->restore();
  return stack.height();
}

}  // namespace skeinproof
