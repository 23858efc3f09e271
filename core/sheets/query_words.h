// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "core/review/review.h"

namespace skeinproof {

// Words that the query sheet and the sign-off note have in common.
std::string name_of_draft(const Pattern& pattern);
std::string in_one_line(std::string_view words);
std::string counted(std::size_t count, const std::string& word);  // "1 rule", "2 rules"
std::string replacement_words(const std::string& before, const std::string& after);
// What could not be checked, the same reason once: "no need is known (N1, N2)".
std::vector<std::string> reasons_not_checked(const Review& review);

}  // namespace skeinproof
