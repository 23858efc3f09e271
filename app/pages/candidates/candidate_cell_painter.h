// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "app/pages/candidates/candidate_rows.h"
#include "app/pages/quantities/need_cell_painter.h"

class QPainter;

namespace skeinproof {

// Draws a cell of the table of candidates into `rect`, or only measures it where there is no painter. Returns
// the height it takes at that width, its room above and below included.
double lay_fact_cell(QPainter* painter, const QRectF& rect, const FactCell& cell, const CellLook& look);

}  // namespace skeinproof
