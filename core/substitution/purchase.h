// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/substitution/candidate_facts.h"
#include "core/substitution/put_up_mix.h"

namespace skeinproof {

// What stands beside the skeins of a shopping list.

// One skein more of one yarn of one role, to be returned when it is not needed.
struct SpareSkein {
  RoleId role;
  YarnId yarn;
  std::vector<SpareReason> reasons;
  PutUp put_up;  // the shortest that is bought
  std::optional<double> cost;
  std::string currency;
};
std::vector<SpareSkein> spare_skeins(const Pattern& pattern, const CandidateFacts& facts, SizeId size);

// A piece made longer that what is bought of a role still covers.
struct SpareAllows {
  RoleId role;
  PieceId piece;
  Centimetres longer;
  Metres takes;       // knitted, all strands
  std::string words;  // "Body 5 cm longer (72 m)"
};
// For each role of several skeins the piece it is mostly knitted in, 5 cm longer or else 2 cm; only where no
// other role then asks for more than is bought of it.
std::vector<SpareAllows> spare_allows(const Pattern& pattern, const CandidateFacts& facts, SizeId size,
                                      const NumberStyle& style = {});

// What a slightly looser hand costs: half a stitch fewer in 10 cm, counts kept.
struct LooserHand {
  FabricId fabric;
  double stitches = 0, rows = 0;  // in its own gauge
  RoleId role;                    // that takes most
  Metres more;                    // planned, all strands
};
std::optional<LooserHand> looser_hand(const Pattern& pattern, const CandidateFacts& facts, SizeId size);

}  // namespace skeinproof
