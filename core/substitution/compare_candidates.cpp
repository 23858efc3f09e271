// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/base/text.h"
#include "core/need/cautions.h"
#include "core/substitution/consequence_rules.h"
#include "core/substitution/wishes.h"

namespace skeinproof {
namespace {

// The name that was given, else those of its yarns.
std::string name_of(const CandidateThreads& threads, const std::string& given) {
  if (!given.empty()) return given;
  std::vector<std::string> names;
  for (const auto& role : threads.roles)
    if (!role.thread.empty() && !role.same_as_pattern &&
        std::find(names.begin(), names.end(), role.thread.name()) == names.end())
      names.push_back(role.thread.name());
  if (names.empty())
    for (const auto& role : threads.roles)
      if (!role.thread.empty() && std::find(names.begin(), names.end(), role.thread.name()) == names.end())
        names.push_back(role.thread.name());
  return names.empty() ? "no yarn" : join(names, " + ");
}

std::vector<const Yarn*> yarns_of(const CandidateThreads& threads) {
  std::vector<const Yarn*> yarns;
  for (const auto& role : threads.roles)
    for (const auto& [yarn, strands] : role.thread.strands)
      if (std::find(yarns.begin(), yarns.end(), yarn) == yarns.end()) yarns.push_back(yarn);
  return yarns;
}

// The pattern's own cloth was washed where its gauge says so.
bool own_was_washed(const Comparing& comparing) {
  return comparing.cloth != nullptr && comparing.cloth->gauge.state == GaugeState::washed;
}

struct Side {
  const CandidateThreads& threads;
  bool washed_swatch;
};

void work_out(const Comparing& comparing, const Side& own, const CandidateFacts* own_facts, const Side& side,
              CandidateFacts& facts) {
  facts.problems = side.threads.problems;
  fill_lengths_and_buys(comparing, side.threads, facts);
  fill_basket(comparing, facts);
  fill_tight_and_left_over(comparing, facts);
  fill_cloth(comparing, side.threads, own.threads, facts);
  fill_whole(comparing, side.threads, own_facts, facts);
  fill_care(side.threads, facts);
  const RuleInput input{comparing, own.threads,       side.threads, own_facts != nullptr ? *own_facts : facts,
                        facts,     side.washed_swatch};
  if (!facts.roles.empty()) draw_consequences(input, facts);
  facts.cautions = cautions_for(comparing.pattern, yarns_of(side.threads));
}

}  // namespace

std::vector<CandidateFacts> compare_candidates(const Pattern& pattern, const Assessment& assessment,
                                               std::size_t size_index) {
  std::vector<CandidateFacts> all;
  if (size_index >= pattern.sizes.size()) return all;
  const Comparing comparing(pattern, assessment, size_index);
  const CandidateThreads own = own_threads(pattern);
  const Side own_side{own, own_was_washed(comparing)};
  all.reserve(pattern.candidates.size() + 1);
  CandidateFacts& own_facts = all.emplace_back();
  own_facts.own = true;
  own_facts.name = name_of(own, {});
  work_out(comparing, own_side, nullptr, own_side, own_facts);
  for (const Candidate& candidate : pattern.candidates) {
    const CandidateThreads threads = threads_of(pattern, candidate);
    CandidateFacts facts;
    facts.id = candidate.id;
    facts.shown = candidate.shown;
    facts.name = name_of(threads, candidate.name);
    work_out(comparing, own_side, &all.front(), {threads, candidate.washed_swatch}, facts);
    all.push_back(std::move(facts));
  }
  answer_wishes(pattern, all);
  return all;
}

std::size_t bench_size(const Pattern& pattern) {
  if (const auto chosen = pattern.size_index(pattern.chosen_size)) return *chosen;
  return pattern.size_index(pattern.sample_size).value_or(0);
}

std::string not_looked_at_words(const std::vector<NotLookedAt>& rows) {
  if (rows.empty()) return {};
  std::vector<std::string> words;
  for (const NotLookedAt& row : rows) words.push_back(join(row.rules, ", ") + " (" + row.because + ")");
  return "not looked at: " + join(words, "; ");
}

}  // namespace skeinproof
