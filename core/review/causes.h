// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <vector>

#include "core/review/likely_slips.h"

namespace skeinproof {

// Groups ranked findings by cause: those that one likely slip clears, the slip that explains most first; of
// the rest those that rest first of all on the same statement; else alone. Causes stand in the order of their
// first finding.
std::vector<Cause> causes_of(const SlipSearchInput& input, std::vector<SlipFound> slips);

}  // namespace skeinproof
