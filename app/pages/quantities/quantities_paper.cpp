// SPDX-License-Identifier: GPL-3.0-or-later
#include <QFontMetricsF>
#include <QPainter>
#include <algorithm>
#include <cmath>
#include <memory>

#include "app/document/open_pattern.h"
#include "app/pages/quantities/chart_data.h"
#include "app/pages/quantities/choices_panel.h"
#include "app/pages/quantities/need_cell_painter.h"
#include "app/pages/quantities/need_grid.h"
#include "app/pages/quantities/need_heads.h"
#include "app/pages/quantities/need_model.h"
#include "app/pages/quantities/quantities_page.h"
#include "app/print/paper_flow.h"
#include "core/sheets/evidence_sheet.h"

namespace skeinproof {
namespace {

constexpr double font_pixels = 13;    // what the cell's measures are given for
constexpr double least_scale = 0.58;  // 13 px become 7.5 points: nine sizes on A4
constexpr double most_scale = 0.77;   // 10 points
constexpr double chart_height = 240;  // px
constexpr double chart_margin = 116;

// The screen's type at the size the measures are given for, so that paper looks the same whatever the
// reader's text size is.
Type type_on_paper(const QFont& platform) {
  QFont font = platform;
  font.setPixelSize(static_cast<int>(font_pixels));
  font.setHintingPreference(QFont::PreferNoHinting);
  return type_of(font);
}

struct GridOnPaper {
  const NeedModel& model;
  Type type;
  double head_width = 0, cell_width = 0;  // px
  std::vector<int> columns;

  double width() const { return head_width + cell_width * static_cast<double>(columns.size()); }
  double height() const {
    return size_head_height(1) + need_cell_height(1) * (model.rowCount() - 1) + total_cell_height(1) + 2;
  }
};

void paint_grid(QPainter& painter, const GridOnPaper& grid) {
  const Ink ink = paper_ink();
  const CellLook look{ink, grid.type, 1, false};
  const auto column_x = [&](std::size_t i) {
    return grid.head_width + grid.cell_width * static_cast<double>(i);
  };
  for (std::size_t i = 0; i < grid.columns.size(); ++i)
    paint_size_head(painter, QRectF(column_x(i), 0, grid.cell_width, size_head_height(1)),
                    size_head_at(grid.model, grid.columns[i]), ink, grid.type, 1);
  double y = size_head_height(1);
  for (int row = 0; row < grid.model.rowCount(); ++row) {
    const bool total = grid.model.is_total(row);
    const double height = total ? total_cell_height(1) : need_cell_height(1);
    paint_role_head(painter, QRectF(0, y, grid.head_width, height), role_head_at(grid.model, row), ink,
                    grid.type, 1);
    for (std::size_t i = 0; i < grid.columns.size(); ++i) {
      const QRectF cell(column_x(i), y, grid.cell_width, height);
      const NeedCell& shown = grid.model.cell(row, grid.columns[i]);
      if (total)
        paint_total_cell(painter, cell, shown, look);
      else
        paint_need_cell(painter, cell, shown, look);
      const bool opens = size_head_at(grid.model, grid.columns[i]).opens_group;
      painter.setPen(QPen(ink.rule, opens ? 1.2 : 0.4));
      painter.drawLine(cell.topLeft(), cell.bottomLeft());
      painter.setPen(QPen(ink.rule, total || grid.model.is_total(row + 1) ? 1.2 : 0.4));
      painter.drawLine(cell.bottomLeft(), cell.bottomRight());
    }
    y += height;
  }
}

// Draws in the measures of the screen, scaled to fit the width.
PaperBlock scaled_block(double height, double scale, std::function<void(QPainter&)> paint) {
  PaperBlock block;
  block.height = height * scale;
  block.paint = [scale, paint = std::move(paint)](QPainter& painter, const QRectF& rect) {
    painter.translate(rect.topLeft());
    painter.scale(scale, scale);
    paint(painter);
  };
  return block;
}

template <class Chart>
PaperBlock chart_block(std::shared_ptr<Chart> chart, double width, double scale) {
  return scaled_block(chart_height, scale, [chart, width, scale](QPainter& painter) {
    chart->paint_on_paper(painter, QRectF(0, 0, width / scale, chart_height), chart_margin);
  });
}

}  // namespace

std::optional<Sheet> QuantitiesPage::sheet() const {
  Sheet sheet;
  const std::string& title = open_.pattern().title;
  sheet.title = title.empty() ? tr("Quantities").toStdString()
                              : tr("%1: quantities").arg(QString::fromStdString(title)).toStdString();
  sheet.subtitle =
      tr("%1: %2. In each cell: skeins, length in %3, share of the last skein; in quotation marks the text "
         "where it differs.")
          .arg(layer_word(model_->layer()), ChoicesPanel::summary(open_), length_unit_word(open_.reader()))
          .toStdString();
  sheet.numbers = open_.reader().numbers;
  for (const NotWorkedOut& open_point : open_.assessment().not_worked_out)
    sheet.foot_notes.push_back(
        tr("Not checked: %1. %2")
            .arg(QString::fromStdString(open_point.what), QString::fromStdString(open_point.because))
            .toStdString());
  if (model_->any_known()) add_evidence(sheet, open_.pattern(), open_.assessment(), open_.pattern().house());
  return sheet;
}

std::vector<PaperBlock> QuantitiesPage::paper_blocks(double width) const {
  std::vector<PaperBlock> blocks;
  GridOnPaper grid{*model_, type_on_paper(font()), 0, 0, {}};
  grid.head_width = role_head_width(*model_, grid.type, 1);
  grid.cell_width = model_->widest_cell(grid.type, 1);
  // As many sizes beside each other as stay readable; the rest follow below under the same heads.
  const int columns = model_->columnCount();
  const int fitting =
      std::max(1, static_cast<int>((width / least_scale - grid.head_width) / grid.cell_width));
  const int runs = (columns + fitting - 1) / fitting;
  const int in_run = (columns + runs - 1) / std::max(1, runs);
  const double scale = std::min(most_scale, width / (grid.head_width + grid.cell_width * in_run));
  grid.cell_width = std::min((width / scale - grid.head_width) / in_run, 104.0);
  for (int first = 0; first < columns; first += in_run) {
    grid.columns.clear();
    for (int column = first; column < std::min(columns, first + in_run); ++column)
      grid.columns.push_back(column);
    blocks.push_back(
        scaled_block(grid.height(), scale, [grid](QPainter& painter) { paint_grid(painter, grid); }));
  }
  if (!model_->any_known()) return blocks;

  const NeedCellInput shown = input();
  const std::size_t nowhere = static_cast<std::size_t>(-1);  // paper has no chosen size
  for (std::size_t role = 0; role < shown.pattern.roles.size(); ++role) {
    auto curve = std::make_shared<NeedCurve>();
    curve->show_need(need_curve_data(shown, role, nowhere));
    blocks.push_back(chart_block(curve, width, scale));
  }
  for (std::size_t role = 0; role < shown.pattern.roles.size(); ++role) {
    auto pieces = std::make_shared<StackedLengths>();
    pieces->show_stack(by_piece_data(shown, role, nowhere));
    blocks.push_back(chart_block(pieces, width, scale));
  }
  auto roles = std::make_shared<StackedLengths>();
  roles->show_stack(by_role_data(shown, nowhere));
  blocks.push_back(chart_block(roles, width, scale));
  return blocks;
}

}  // namespace skeinproof
