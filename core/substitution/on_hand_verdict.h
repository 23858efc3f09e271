// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/need/evidence.h"
#include "core/need/leftover_verdict.h"
#include "core/substitution/on_hand_length.h"

namespace skeinproof {

// What one kind of evidence says of the yarn held against a role.
struct GroundVerdict {
  Verdict verdict = Verdict::too_close_to_call;
  LengthEvidence evidence;
  std::string words;  // one step of the ladder of wordings
};

// Yarn on hand of one role in one size.
struct RoleOnHand {
  RoleId role;
  std::string label;
  SizeId size;
  std::vector<OnHandId> yarns;     // that count
  std::vector<std::string> names;  // of these
  Metres have, low, high;          // before joins; low and high 9 in 10
  Metres usable;                   // after joins
  int pieces = 0;
  std::optional<Verdict> verdict;  // by the narrowest evidence; absent where nothing is known of the need
  LengthGround ground = LengthGround::printed_counts;
  std::vector<GroundVerdict> grounds;  // every evidence there is, narrowest first
  std::optional<Metres> over;          // usable above what is planned; by counts alone, the most they allow
  std::optional<Metres> short_of;      // usable below what is knitted; by counts alone, the least they allow
  std::string words;                   // "Not enough: short by 12.1 m"
  std::string because;                 // the ladder's wording of the evidence that decides
  std::string settled_by;              // the one fact that would settle it; empty unless too close to call
  std::optional<double> chance;        // that it suffices for knitting and swatch
  std::vector<std::string> notes;      // two lots in one role; a length not known well enough
  std::vector<Error> left_out;         // yarns without a length, each with what is missing
  std::vector<std::string> missing;    // why there is no verdict
};

// The size that yarn on hand is meant for: its own, else the chosen one.
std::optional<std::size_t> on_hand_size_index(const Pattern& pattern);

// One entry for every role that a used yarn is held against, in the order of the pattern; in the size that
// yarn on hand is meant for. `assessment` is that of the pattern. Pure.
std::vector<RoleOnHand> on_hand_verdicts(const Pattern& pattern, const Assessment& assessment,
                                         const NumberStyle& style = {});

}  // namespace skeinproof
