// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/quantities/need_cell_painter.h"

#include <QFontMetricsF>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "app/charts/hatch.h"

namespace skeinproof {
namespace {

constexpr double cell_width = 84;
constexpr double cell_height = 64;
constexpr double inset = 7;
constexpr double words_inset = 4;
constexpr double count_baseline = 23;
constexpr double length_baseline = 22;
constexpr double word_baseline = 41;
constexpr double bar_top = 49;
constexpr double bar_height = 8;
constexpr double tick_height = 2.5;
constexpr double ticks_at[] = {0.05, 0.95};

constexpr double gap = 8;

QFont semibold(QFont font) {
  font.setWeight(QFont::DemiBold);
  return font;
}

// The designer's words are a little smaller in a cell than elsewhere.
QFont words_font(const Type& type) {
  constexpr double smaller = 12.5 / 14;
  QFont font = type.words;
  if (font.pointSizeF() > 0)
    font.setPointSizeF(font.pointSizeF() * smaller);
  else
    font.setPixelSize(std::max(1, static_cast<int>(std::lround(font.pixelSize() * smaller))));
  return font;
}

void write_left(QPainter& painter, double x, double baseline, const QString& text, const QFont& font,
                const QColor& colour) {
  painter.setFont(font);
  painter.setPen(colour);
  painter.drawText(QPointF(x, baseline), text);
}
void write_right(QPainter& painter, double right, double baseline, const QString& text, const QFont& font,
                 const QColor& colour) {
  write_left(painter, right - QFontMetricsF(font, painter.device()).horizontalAdvance(text), baseline, text,
             font, colour);
}

}  // namespace

QString in_quotation_marks(const QString& words) {
  return QStringLiteral("“%1”").arg(words.isEmpty() ? QStringLiteral("\u2002") : words);
}

void fill_bar(QPainter& painter, const QRectF& rect, const Ink& ink, double unit) {
  if (rect.width() <= 0) return;
  if (ink.paper)
    draw_hatch(painter, rect, Hatch::rising, ink.text, unit);
  else
    painter.fillRect(rect, ink.fill);
}

void paint_skein_bar(QPainter& painter, const QRectF& bar, std::optional<double> share,
                     const CellLook& look) {
  if (share) {
    QRectF filled = bar;
    filled.setWidth(bar.width() * std::clamp(*share, 0.0, 1.0));
    fill_bar(painter, filled, look.ink, look.unit);
  }
  QPen outline(look.ink.edge, std::max(1.0, look.unit * (look.ink.paper ? 0.8 : 1)));
  if (!share) outline.setDashPattern({2, 2});
  painter.setPen(outline);
  painter.setBrush(Qt::NoBrush);
  painter.drawRect(bar);
  if (!share) return;
  for (const double at : ticks_at) {
    const double x = bar.left() + bar.width() * at;
    painter.drawLine(QPointF(x, bar.top() - tick_height * look.unit), QPointF(x, bar.top()));
  }
}

double need_cell_height(double unit) { return cell_height * unit; }

double need_cell_width(const NeedCell& cell, const Type& type, double unit) {
  const auto width = [](const QFont& font, const QString& text) {
    return QFontMetricsF(font).horizontalAdvance(text);
  };
  const double figures = width(type.count, cell.count) + gap * unit + width(type.body, cell.length);
  const bool plain = cell.state == NeedCell::State::plain;
  double words = width(plain ? type.small : semibold(type.small), cell.word);
  if (cell.words) {
    const double before = inset - words_inset;
    words += width(words_font(type), in_quotation_marks(*cell.words)) + (3 - before) * unit;
  }
  return std::max(cell_width * unit, std::max(figures, words) + 2 * inset * unit);
}

double total_cell_height(double unit) { return 30 * unit; }

void paint_need_cell(QPainter& painter, const QRectF& rect, const NeedCell& cell, const CellLook& look) {
  const double u = look.unit;
  const double left = rect.left() + inset * u;
  const double right = rect.right() - inset * u;
  // A row made taller keeps its figures together in the middle.
  const double top = rect.top() + std::max(0.0, (rect.height() - cell_height * u) / 2);
  painter.save();
  write_left(painter, left, top + count_baseline * u, cell.count, look.type.count, look.ink.text);
  write_right(painter, right, top + length_baseline * u, cell.length, look.type.body, look.ink.text);
  const bool plain = cell.state == NeedCell::State::plain;
  write_right(painter, right, top + word_baseline * u, cell.word,
              plain ? look.type.small : semibold(look.type.small), plain ? look.ink.muted : look.ink.text);
  if (cell.words) {
    write_left(painter, rect.left() + words_inset * u, top + word_baseline * u,
               in_quotation_marks(*cell.words), words_font(look.type), look.ink.text);
  }
  const bool checked = cell.state != NeedCell::State::not_checked;
  paint_skein_bar(painter, QRectF(left, top + bar_top * u, right - left, bar_height * u),
                  checked ? std::optional(cell.share) : std::nullopt, look);
  painter.restore();
}

void paint_total_cell(QPainter& painter, const QRectF& rect, const NeedCell& cell, const CellLook& look) {
  const double u = look.unit;
  QFont total = look.type.role_name;
  const QFontMetricsF metrics(total, painter.device());
  const double baseline = rect.center().y() + (metrics.ascent() - metrics.descent()) / 2;
  painter.save();
  double x = rect.left() + inset * u;
  write_left(painter, x, baseline, cell.count, total, look.ink.text);
  x += metrics.horizontalAdvance(cell.count) + 3 * u;
  if (cell.words) {
    const QString words = in_quotation_marks(*cell.words);
    write_left(painter, x, baseline, words, look.type.words, look.ink.text);
    x += QFontMetricsF(look.type.words, painter.device()).horizontalAdvance(words);
  }
  // Where both do not fit, the designer's total goes first; the tip says the rest.
  const double word_width = QFontMetricsF(look.type.small, painter.device()).horizontalAdvance(cell.word);
  if (!cell.word.isEmpty() && x + word_width < rect.right() - inset * u)
    write_right(painter, rect.right() - inset * u, baseline, cell.word, look.type.small, look.ink.muted);
  painter.restore();
}

}  // namespace skeinproof
