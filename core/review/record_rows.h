// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>

#include "core/review/review.h"

namespace skeinproof {

// Which row of `Pattern::queries` belongs to a cause.
std::optional<std::size_t> row_of_cause(const Pattern& pattern, const Review& review, std::size_t cause);
// Fingerprints of what a decision on a finding rests on: its working, its printed words and its statements
// as a whole; then, where it is of sizes, what concerns each of them, in their order.
std::string rests_on(const Review& review, const Finding& finding);
// The finding is the one of the row, in other sizes: of fewer of them, or of those and more.
bool is_narrowed(const Query& query, const Finding& finding);
bool is_widened(const Query& query, const Finding& finding);
// A "keep" rests on the same as it did, in the sizes that are left.
bool rests_still(const Query& query, const Review& review, const Finding& finding);

}  // namespace skeinproof
