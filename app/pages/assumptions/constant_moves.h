// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <vector>

#include "app/document/reader_style.h"
#include "app/widgets/figure_list.h"
#include "core/need/assumptions.h"

namespace skeinproof {

// What one constant is.
std::vector<FigureRow> constant_rows(const Pattern& pattern, const Constant& constant,
                                     const ReaderStyle& reader);

// The same, and what follows when it is a share smaller and the same share greater: every skein count that
// changes, and the planned length, upper bound, chance and reading of the printed counts that move most.
std::vector<FigureRow> constant_moves(const Pattern& pattern, const Sensitivity& sensitivity,
                                      const ReaderStyle& reader);

}  // namespace skeinproof
