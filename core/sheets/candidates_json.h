// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <nlohmann/json_fwd.hpp>

#include "core/need/assessment.h"

namespace skeinproof {

// The candidates of a pattern in the size at the bench, the pattern's own yarn first, shown or not. Keys as
// in DEVELOPERS.md; what is not known is left out.
nlohmann::ordered_json candidates_json(const Pattern& pattern, const Assessment& assessment);

}  // namespace skeinproof
