// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <string_view>

#include "core/review/review.h"

namespace skeinproof {

// Words of a query that hold for every finding of a check: what belongs to one finding stands as {words} (its
// printed words), {role}, {size} ("sizes 5 and 6"), {change} (what is proposed), {working} and {query} (the
// check's own words).

// Filled in for one finding; absent where they ask for what it has not.
std::optional<std::string> filled_in(std::string_view words, const Finding& finding, std::string_view text);
// Words written for one finding with what is its own taken out; absent where other figures of it are left.
std::optional<std::string> for_every_finding(std::string_view words, const Finding& finding,
                                             std::string_view text);

}  // namespace skeinproof
