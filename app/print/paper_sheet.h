// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <vector>

#include "app/print/paper_block.h"
#include "core/sheets/sheet.h"

class QPagedPaintDevice;

namespace skeinproof {

// Lays a sheet and its pictures out on pages in one ink: margins, repeated heads of tables that run
// over a page, page numbers in the foot. The same code for printer and PDF. Returns the number of pages
// painted, 0 where the device could not be written.
int paint_on_paper(QPagedPaintDevice& device, const Sheet& sheet,
                   const std::function<std::vector<PaperBlock>(double width)>& blocks = {},
                   PicturesStand stand = PicturesStand::behind_the_words);

}  // namespace skeinproof
