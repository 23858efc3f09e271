// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "app/print/paper_flow.h"
#include "core/sheets/sheet.h"

namespace skeinproof {

// A table on paper: its head again on every page, wrapped words, figures whole. Columns that do not fit the
// width follow below, beside the first column once more.
void write_table(PaperFlow& flow, const Table& table, const NumberStyle& numbers);

}  // namespace skeinproof
