// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstddef>
#include <vector>

#include "core/review/finding.h"

namespace skeinproof {

// What became of the findings of one text in another. A finding is found again by its key; one of the same
// check and roles in fewer sizes is the same doubt, narrowed. One that grew graver or reaches further counts
// as opened.
struct FindingChange {
  std::vector<std::size_t> closes, stays;  // indices of findings before
  std::vector<std::size_t> opens;          // indices of findings after
};
FindingChange compare_findings(const std::vector<Finding>& before, const std::vector<Finding>& after);

}  // namespace skeinproof
