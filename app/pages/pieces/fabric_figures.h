// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <vector>

#include "app/document/reader_style.h"
#include "app/widgets/figure_list.h"
#include "core/need/assessment.h"
#include "core/pattern/pattern.h"

namespace skeinproof {

// What follows from a fabric's gauge, loop source and swatch, each figure with how it comes about and its
// source. What lacks an entry is left out.
std::vector<FigureRow> fabric_figures(const Pattern& pattern, const Fabric& fabric,
                                      const Assessment& assessment, const ReaderStyle& reader);

// "26 × 34 in 10 cm"; dashes for what is missing.
QString gauge_line(const Gauge& gauge, const ReaderStyle& reader);
// "1.500 cm", or a dash.
QString loop_line(const Pattern& pattern, const Fabric& fabric, const ReaderStyle& reader);

}  // namespace skeinproof
