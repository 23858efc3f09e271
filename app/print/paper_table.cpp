// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/print/paper_table.h"

#include <QFontMetricsF>
#include <algorithm>
#include <vector>

#include "app/charts/hatch.h"

namespace skeinproof {
namespace {

constexpr double cell_inset = 4;
constexpr double row_gap = 2.5;
constexpr double least_words = 70;
constexpr double indent_step = 9;
constexpr double bar_height = 5;
constexpr double hairline = 0.6;

QString from(const std::string& text) { return QString::fromStdString(text); }

struct Layout {
  PaperFlow& flow;
  const Table& table;
  const NumberStyle& numbers;
  std::vector<double> widths;  // by column of the table

  const Cell* cell(std::size_t row, std::size_t column) const {
    const auto& cells = table.rows[row].cells;
    return column < cells.size() ? &cells[column] : nullptr;
  }
  QString text(const Cell& shown_cell) const { return from(shown(shown_cell, numbers)); }
  const QFont& font(const Cell& shown_cell) const {
    return shown_cell.strong ? flow.type().strong : flow.type().body;
  }
  bool is_right(std::size_t column) const { return table.columns[column].align == Align::right; }
};

double natural_width(const Layout& layout, std::size_t column) {
  double widest =
      QFontMetricsF(layout.flow.type().strong).horizontalAdvance(from(layout.table.columns[column].heading));
  for (std::size_t row = 0; row < layout.table.rows.size(); ++row)
    if (const Cell* cell = layout.cell(row, column))
      widest = std::max(widest, QFontMetricsF(layout.font(*cell)).horizontalAdvance(layout.text(*cell)) +
                                    cell->indent * indent_step);
  return widest + 2 * cell_inset + 1;
}

// Figures keep their width; words share what is left.
std::vector<double> column_widths(const Layout& layout) {
  std::vector<double> widths;
  double all = 0, words = 0;
  for (std::size_t column = 0; column < layout.table.columns.size(); ++column) {
    widths.push_back(natural_width(layout, column));
    all += widths.back();
    if (!layout.is_right(column)) words += widths.back();
  }
  const double over = all - layout.flow.width();
  if (over <= 0 || words <= 0) return widths;
  for (std::size_t column = 0; column < widths.size(); ++column)
    if (!layout.is_right(column))
      widths[column] = std::max(std::min(widths[column], least_words), widths[column] * (1 - over / words));
  return widths;
}

// Runs of columns that fit the width; each but the first takes the first column along.
std::vector<std::vector<std::size_t>> column_runs(const Layout& layout) {
  std::vector<std::vector<std::size_t>> runs;
  double used = 0;
  for (std::size_t column = 0; column < layout.widths.size(); ++column) {
    if (runs.empty() ||
        (used + layout.widths[column] > layout.flow.width() + 0.5 && runs.back().size() > 1)) {
      runs.emplace_back();
      used = 0;
      if (column > 0) {
        runs.back().push_back(0);
        used = layout.widths[0];
      }
    }
    runs.back().push_back(column);
    used += layout.widths[column];
  }
  return runs;
}

QRectF wrapped(const QFont& font, const QString& text, double width) {
  return QFontMetricsF(font).boundingRect(QRectF(0, 0, width, 1e5), Qt::TextWordWrap, text);
}

double row_height(const Layout& layout, std::size_t row, const std::vector<std::size_t>& columns) {
  double height = QFontMetricsF(layout.flow.type().body).height();
  for (const std::size_t column : columns)
    if (const Cell* cell = layout.cell(row, column)) {
      const double width = layout.widths[column] - 2 * cell_inset - cell->indent * indent_step;
      const double lines = wrapped(layout.font(*cell), layout.text(*cell), std::max(width, 10.0)).height();
      height = std::max(height, lines + (cell->bar ? bar_height + 2 : 0));
    }
  return height + 2 * row_gap;
}

void draw_cell(const Layout& layout, const Cell& cell, std::size_t column, const QRectF& rect) {
  QPainter& painter = layout.flow.painter();
  const QRectF inside = rect.adjusted(cell_inset + cell.indent * indent_step, row_gap, -cell_inset, -row_gap);
  painter.setFont(layout.font(cell));
  painter.setPen(layout.flow.ink().text);
  painter.drawText(
      inside, (layout.is_right(column) ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignTop | Qt::TextWordWrap,
      layout.text(cell));
  if (!cell.bar) return;
  const QRectF bar(inside.left(), inside.bottom() - bar_height, inside.width(), bar_height);
  QRectF filled = bar;
  filled.setWidth(bar.width() * std::clamp(*cell.bar, 0.0, 1.0));
  draw_hatch(painter, filled, Hatch::rising, layout.flow.ink().text, 0.75);
  painter.setPen(QPen(layout.flow.ink().text, hairline));
  painter.setBrush(Qt::NoBrush);
  painter.drawRect(bar);
}

void draw_rule(PaperFlow& flow, double y, double width, double weight = hairline) {
  flow.painter().setPen(QPen(flow.ink().text, weight));
  flow.painter().drawLine(QPointF(flow.left(), y), QPointF(flow.left() + width, y));
}

// A line between the columns where a bracket of the sizes opens.
void draw_brackets(const Layout& layout, const std::vector<std::size_t>& columns, double top, double bottom) {
  double x = layout.flow.left();
  layout.flow.painter().setPen(QPen(layout.flow.ink().text, hairline));
  for (const std::size_t column : columns) {
    if (layout.table.columns[column].opens_group)
      layout.flow.painter().drawLine(QPointF(x, top), QPointF(x, bottom));
    x += layout.widths[column];
  }
}

void write_head(const Layout& layout, const std::vector<std::size_t>& columns, double run_width) {
  PaperFlow& flow = layout.flow;
  const double height = QFontMetricsF(flow.type().strong).height() + 2 * row_gap;
  double x = flow.left();
  flow.painter().setFont(flow.type().strong);
  flow.painter().setPen(flow.ink().text);
  for (const std::size_t column : columns) {
    const QRectF cell(x + cell_inset, flow.y() + row_gap, layout.widths[column] - 2 * cell_inset, height);
    flow.painter().drawText(cell, (layout.is_right(column) ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignTop,
                            from(layout.table.columns[column].heading));
    x += layout.widths[column];
  }
  draw_brackets(layout, columns, flow.y(), flow.y() + height);
  flow.advance(height);
  draw_rule(flow, flow.y(), run_width, 1);
}

void write_run(const Layout& layout, const std::vector<std::size_t>& columns) {
  PaperFlow& flow = layout.flow;
  double run_width = 0;
  for (const std::size_t column : columns) run_width += layout.widths[column];
  const double head = QFontMetricsF(flow.type().strong).height() + 2 * row_gap;
  flow.make_room(head + (layout.table.rows.empty() ? 0 : row_height(layout, 0, columns)));
  write_head(layout, columns, run_width);
  for (std::size_t row = 0; row < layout.table.rows.size(); ++row) {
    const double height = row_height(layout, row, columns);
    if (flow.make_room(height)) write_head(layout, columns, run_width);
    if (layout.table.rows[row].opens_group) draw_rule(flow, flow.y(), run_width, 1);
    double x = flow.left();
    for (const std::size_t column : columns) {
      if (const Cell* cell = layout.cell(row, column))
        draw_cell(layout, *cell, column, QRectF(x, flow.y(), layout.widths[column], height));
      x += layout.widths[column];
    }
    draw_brackets(layout, columns, flow.y(), flow.y() + height);
    flow.advance(height);
    draw_rule(flow, flow.y(), run_width, 0.25);
  }
  flow.advance(10);
}

}  // namespace

void write_table(PaperFlow& flow, const Table& table, const NumberStyle& numbers) {
  if (table.columns.empty()) return;
  Layout layout{flow, table, numbers, {}};
  layout.widths = column_widths(layout);
  if (!table.title.empty()) {
    const double line = QFontMetricsF(flow.type().head).height();
    flow.make_room(line * 4);
    flow.write(from(table.title), flow.type().head, flow.left(), flow.width());
    flow.advance(2);
  }
  for (const auto& columns : column_runs(layout)) write_run(layout, columns);
}

}  // namespace skeinproof
