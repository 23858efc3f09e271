// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "core/pattern/pattern.h"

namespace skeinproof {

// The usual cautions that what is known of a pattern calls for: its wearer, item, notions, fibres, surface
// and structures. Each with the rule it comes from. Silence is no all-clear: a pattern says little of its
// use.
std::vector<std::string> cautions_for(const Pattern& pattern);
// The same with these yarns in place of the pattern's.
std::vector<std::string> cautions_for(const Pattern& pattern, const std::vector<const Yarn*>& yarns);

// Said with cautions: what the law of the place and a licensed test ask for comes first.
std::string_view law_comes_first();

}  // namespace skeinproof
