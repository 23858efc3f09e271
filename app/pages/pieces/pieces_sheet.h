// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "app/document/reader_style.h"
#include "app/pages/pieces/chart_facts.h"
#include "core/pattern/pattern.h"
#include "core/sheets/sheet.h"

namespace skeinproof {

// The pieces with their stitches in every size, the fabrics, and every chart with its census and its squares
// as letters.
Sheet pieces_sheet(const Pattern& pattern, const ReaderStyle& reader);

}  // namespace skeinproof
