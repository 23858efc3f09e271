// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <nlohmann/json_fwd.hpp>

#include "core/need/assessment.h"

namespace skeinproof {

// Adds what is said of yarn on hand: `on_hand`, `lot_plan` and, where there is any, `could_become`. Keys as
// in DEVELOPERS.md; what is not known is left out.
void add_on_hand_json(nlohmann::ordered_json& json, const Pattern& pattern, const Assessment& assessment);

}  // namespace skeinproof
