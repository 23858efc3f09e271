// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <cstdint>
#include <vector>

#include "app/widgets/size_row.h"

namespace skeinproof {

class OpenPattern;

// The per-size rows of a piece, section or edge: what is typed, and under it the metres of every role.
std::vector<SizeRow> part_rows(OpenPattern& open, std::uint32_t part);

// Changes whenever `part_rows` would give other rows (not other figures).
QString part_rows_shape(const OpenPattern& open, std::uint32_t part);

}  // namespace skeinproof
