// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <vector>

#include "app/document/reader_style.h"
#include "app/widgets/figure_list.h"
#include "core/yarn/yarn.h"

namespace skeinproof {

// What follows from the entries of a yarn, with sources: linear density, thickness, fibres, moisture, what a
// skein may be short by, names of its needle and gauge. What lacks an entry is left out.
std::vector<FigureRow> yarn_figures(const Yarn& yarn, const ReaderStyle& reader);

// "175 m / 50 g" in the reader's first system; dashes for what is missing.
QString put_up_line(const PutUp& put_up, const ReaderStyle& reader);
// The quantity in the system the reader does not use first: "191 yd", "1.76 oz"; empty where absent.
QString other_system(const std::optional<Entered<Metres>>& length, const ReaderStyle& reader);
QString other_system(const std::optional<Entered<Grams>>& weight, const ReaderStyle& reader);

}  // namespace skeinproof
