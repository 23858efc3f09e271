// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <vector>

#include "core/need/changes.h"

namespace skeinproof {

// The change that lies on the bench. Fails (wrong_shape) where a field that its kind needs is empty: which
// piece, how much longer, which gauge, whether the counts are kept.
Expected<Change> change_of(const BenchChange& row);

// All that are not laid aside, in their order; the first that fails.
Expected<std::vector<Change>> changes_of(const std::vector<BenchChange>& rows);

}  // namespace skeinproof
