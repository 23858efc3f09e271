// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <set>
#include <vector>

#include "core/review/slip_candidates.h"

namespace skeinproof {

// Parts of the search for slips; `touched` are the statements that findings rest on.

// A value missing or too many, a list one size off, the lists of two roles exchanged, and lists counted by
// another measure: for one of a pair, in another yarn's skeins, in yards for metres.
std::vector<SlipCandidate> list_slips(const ReviewInput& input, const std::set<std::size_t>& touched);
// A role or a shade for another one that the block lists.
std::vector<SlipCandidate> word_slips(const ReviewInput& input, const std::set<std::size_t>& touched);
// The figures and names that the facts hold, where the printed ones differ.
std::vector<SlipCandidate> values_in_force(const ReviewInput& input, const std::set<std::size_t>& touched);

// What the facts in force say in the place of each value of a statement, as it would be printed there; empty
// where they say nothing.
std::vector<std::string> words_in_force(const ReviewInput& input, const Statement& statement);

}  // namespace skeinproof
