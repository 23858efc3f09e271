// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>

#include "core/need/assessment.h"
#include "core/pattern/pattern.h"

namespace skeinproof {

// What is worked out from a pattern, as one JSON object for other programs. Lengths m, shares 0 to 1, numbers
// unrounded; what is unknown is left out, never null. Keys: DEVELOPERS.md, "assess --json".
std::string assessment_json(const Pattern& pattern, const Assessment& assessment);

}  // namespace skeinproof
