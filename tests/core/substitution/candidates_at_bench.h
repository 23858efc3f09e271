// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <algorithm>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/pattern/edits.h"
#include "core/substitution/candidate_facts.h"
#include "tests/support/samples.h"

namespace skeinproof::testing {

inline std::vector<FibreShare> fibres(const std::vector<std::pair<std::string, double>>& shares) {
  std::vector<FibreShare> composition;
  for (const auto& [fibre, percent] : shares) composition.push_back({fibre, fibre, {percent, {}}});
  return composition;
}

// A band with everything a rule may ask for, so that a test changes one thing.
inline Yarn band(const std::string& name, double metres_in_50g,
                 const std::vector<std::pair<std::string, double>>& shares = {{"wool", 100}}) {
  Yarn yarn;
  yarn.name = name;
  yarn.composition = fibres(shares);
  yarn.put_up.length = Entered<Metres>{metres(metres_in_50g), {}};
  yarn.put_up.weight = Entered<Grams>{grams(50), {}};
  yarn.spinning = Spinning::woollen;
  yarn.structure = "2-ply";
  yarn.surface = "matte";
  yarn.treatment = "untreated";
  yarn.colouring = "solid";
  yarn.care = "hand wash";
  yarn.price = Price{{8, {}}, "€"};
  return yarn;
}

inline YarnId put(Pattern& pattern, Yarn yarn) {
  yarn.id = take_id<YarnId>(pattern);
  pattern.yarns.push_back(std::move(yarn));
  return pattern.yarns.back().id;
}

inline Candidate& add(Pattern& pattern, const Yarn& yarn, int strands = 1) {
  const YarnId id = put(pattern, yarn);
  add_candidate(pattern, id);
  pattern.candidates.back().yarns.front().strands = strands;
  return pattern.candidates.back();
}

inline std::vector<CandidateFacts> compared(const Pattern& pattern) {
  return compare_candidates(pattern, assess(pattern), bench_size(pattern));
}

// The facts of one yarn as the only candidate.
inline CandidateFacts facts_of(Pattern pattern, const Yarn& yarn, int strands = 1) {
  pattern.candidates.clear();
  add(pattern, yarn, strands);
  return compared(pattern).back();
}

inline std::optional<Consequence> fired(const CandidateFacts& facts, const std::string& id) {
  for (const Consequence& one : facts.consequences)
    if (one.id == id) return one;
  return std::nullopt;
}
inline bool fires(const CandidateFacts& facts, const std::string& id) { return fired(facts, id).has_value(); }
inline bool missed(const CandidateFacts& facts, const std::string& id) {
  return std::any_of(facts.not_looked_at.begin(), facts.not_looked_at.end(), [&](const NotLookedAt& row) {
    return std::find(row.rules.begin(), row.rules.end(), id) != row.rules.end();
  });
}
inline std::vector<std::string> ids(const CandidateFacts& facts) {
  std::vector<std::string> all;
  for (const Consequence& one : facts.consequences) all.push_back(one.id);
  return all;
}

}  // namespace skeinproof::testing
