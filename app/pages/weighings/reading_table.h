// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <functional>
#include <vector>

#include "app/document/open_pattern.h"
#include "app/widgets/figure_list.h"

class QWidget;

namespace skeinproof {

class PartTable;

// The readings of one weighing, a colour a row, and behind them what they come to. `which` says which
// weighing.
PartTable* make_reading_table(OpenPattern& open, std::function<WeighingId()> which, QWidget* parent);

// The calibration of one colour by one weighing; null where there is none.
const Calibration* find_calibration(const Assessment& assessment, WeighingId weighing, RoleId role);

// What the reading of a colour says: its working down to scale and label, the loops it asks for, and what
// they change in every size.
std::vector<FigureRow> reading_figures(const OpenPattern& open, WeighingId weighing, RoleId role);

}  // namespace skeinproof
