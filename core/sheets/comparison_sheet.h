// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string_view>
#include <vector>

#include "core/sheets/sheet.h"
#include "core/substitution/candidate_facts.h"

namespace skeinproof {

// The pattern's own yarn and the candidates that are shown, side by side for the size at the bench: facts
// above, consequences below, nothing ranked. More than six candidates go on in further tables. What could not
// be looked at, what is amiss and the usual cautions stand in the foot notes.
Sheet comparison_sheet(const Pattern& pattern, const Assessment& assessment, const HouseStyle& house,
                       std::string_view date = {});

}  // namespace skeinproof
