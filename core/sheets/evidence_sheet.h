// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string_view>

#include "core/need/evidence.h"
#include "core/sheets/sheet.h"

namespace skeinproof {

// How sure each figure is: for every colour the planned length by stitches, by weighed sample and by printed
// counts, from low to high, beside the chance that the skeins suffice. Where roads disagree, and where
// printed counts contradict themselves, the foot notes say so.
Sheet evidence_sheet(const Pattern& pattern, const Assessment& assessment, const HouseStyle& house,
                     std::string_view date = {});

// The tables and notes of it alone, to stand on another sheet.
void add_evidence(Sheet& sheet, const Pattern& pattern, const Assessment& assessment,
                  const HouseStyle& house);

}  // namespace skeinproof
