// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <vector>

#include "core/substitution/candidate_facts.h"

namespace skeinproof {

// "must be within the budget", "should be no heavier than 10 % more".
std::string wish_words(const Pattern& pattern, const Wish& wish);

// Fills the answers of every candidate; `facts[0]` is the pattern's own yarn.
void answer_wishes(const Pattern& pattern, std::vector<CandidateFacts>& facts);

// How a candidate stands to all the wishes. Nothing is weighed against anything.
struct WishStanding {
  std::vector<std::size_t> must_not_met, must_not_known, should_not_met, should_not_known;  // wishes
  bool may_be_chosen() const { return must_not_met.empty(); }
};
WishStanding wish_standing(const Pattern& pattern, const CandidateFacts& facts);

// Two candidates that meet what must hold and of which each meets something that the other does not.
struct TradeOff {
  std::size_t one = 0, other = 0;                 // of the facts
  std::vector<std::size_t> only_one, only_other;  // wishes
  std::string words;
};
std::vector<TradeOff> trade_offs(const Pattern& pattern, const std::vector<CandidateFacts>& facts);

}  // namespace skeinproof
