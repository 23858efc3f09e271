// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <map>

#include "core/fabric/chart.h"

namespace skeinproof {

// How many separate areas of each symbol a chart has: stitches of one colour that touch at their sides. In
// intarsia each is worked from an end of its own. A chart worked in the round closes over the repeat.
std::map<char, long> colour_areas(const Chart& chart);

}  // namespace skeinproof
