// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <vector>

#include "app/document/reader_style.h"
#include "app/widgets/figure_list.h"
#include "core/need/assumptions.h"

namespace skeinproof {

// What one constant is, and what the needs do when it is a share smaller and the same share greater: every
// skein count that changes, and the planned length and upper bound that move most. `now` is the assessment of
// `pattern`.
std::vector<FigureRow> constant_moves(const Pattern& pattern, const Assessment& now, const Constant& constant,
                                      double share, const ReaderStyle& reader);

}  // namespace skeinproof
