// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>

#include "core/review/review.h"

namespace skeinproof {

// Which row of `Pattern::queries` belongs to a cause.
std::optional<std::size_t> row_of_cause(const Pattern& pattern, const Review& review, std::size_t cause);
// Fingerprint of what a decision on a finding rests on: its working, its printed words, and its statements.
std::string rests_on(const Review& review, const Finding& finding);

}  // namespace skeinproof
