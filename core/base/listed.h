// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <vector>

namespace skeinproof {

// "1", "1 and 4", "1, 4 and 5".
std::string listed(const std::vector<std::string>& words);

}  // namespace skeinproof
