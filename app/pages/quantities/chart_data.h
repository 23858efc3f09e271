// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "app/charts/need_curve.h"
#include "app/charts/stacked_lengths.h"
#include "app/pages/quantities/need_cell.h"

namespace skeinproof {

// What the charts show of an assessment.
NeedCurveData need_curve_data(const NeedCellInput& input, std::size_t role_row, std::size_t chosen_size);
// One role: pieces from the foot, then swatch and allowance as far as the layer goes.
StackData by_piece_data(const NeedCellInput& input, std::size_t role_row, std::size_t chosen_size);
// All roles in one layer.
StackData by_role_data(const NeedCellInput& input, std::size_t chosen_size);

}  // namespace skeinproof
