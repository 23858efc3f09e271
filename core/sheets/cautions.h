// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <vector>

#include "core/pattern/pattern.h"

namespace skeinproof {

// The usual cautions that what is known of a pattern calls for: its wearer, item, notions, fibres, surface
// and structures. Each with the rule it comes from. Silence is no all-clear: a pattern says little of its
// use.
std::vector<std::string> cautions_for(const Pattern& pattern);

}  // namespace skeinproof
