// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QRectF>
#include <optional>

#include "app/pages/quantities/need_cell.h"
#include "app/widgets/ink.h"

class QPainter;

namespace skeinproof {

// How a cell is drawn: the same code on screen and on paper. `unit` is what one pixel at a 13 px font has
// become.
struct CellLook {
  const Ink& ink;
  const Type& type;
  double unit = 1;
  bool chosen = false;
};

void paint_need_cell(QPainter& painter, const QRectF& rect, const NeedCell& cell, const CellLook& look);
// The row under the roles: count, the designer's total and what the lists add to.
void paint_total_cell(QPainter& painter, const QRectF& rect, const NeedCell& cell, const CellLook& look);

// The width a cell needs so that nothing in it is cut, whatever its state and language; at least the usual
// one.
double need_cell_width(const NeedCell& cell, const Type& type, double unit);
double need_cell_height(double unit);
double total_cell_height(double unit);
// In quotation marks; a space keeps empty ones apart.
QString in_quotation_marks(const QString& words);

// One skein, filled to the share of the last one that is needed, with ticks where it is nearly empty and
// nearly full; dashed and empty where there is no share.
void paint_skein_bar(QPainter& painter, const QRectF& bar, std::optional<double> share, const CellLook& look);

// Fills with the ink's fill: solid on screen, 45 degree hatch on paper.
void fill_bar(QPainter& painter, const QRectF& rect, const Ink& ink, double unit);

}  // namespace skeinproof
