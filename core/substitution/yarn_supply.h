// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/substitution/on_hand_length.h"

namespace skeinproof {

// All that lies at home of one shade of one yarn, over its lots: what counts as one yarn when yarn is shared
// out.
struct YarnSupply {
  YarnId yarn;
  std::string name;             // "Soot"
  RoleId role;                  // held against; none where its items name none or two
  std::vector<OnHandId> items;  // more than one: several lots or measurings
  int lots = 1;
  Metres length;  // before joins
  Metres usable;  // after joins of its own pieces
  int pieces = 0;
  std::optional<MetresPerGram> density;
};

struct YarnSupplies {
  std::vector<YarnSupply> supplies;  // in the order of the pattern's yarn on hand
  std::vector<Error> left_out;       // used yarns without a length, each with what is missing
};
YarnSupplies yarn_supplies(const Pattern& pattern);

}  // namespace skeinproof
