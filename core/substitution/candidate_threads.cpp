// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/substitution/comparing.h"

namespace skeinproof {
namespace {

void add_strands(const Pattern& pattern, Thread& thread, YarnId id, int strands) {
  const Yarn* yarn = pattern.yarn(id);
  if (yarn != nullptr && strands > 0) thread.strands.emplace_back(yarn, strands);
}

Thread pattern_thread(const Pattern& pattern, const Role& role) {
  Thread thread;
  add_strands(pattern, thread, role.yarn, std::max(1, role.strands));
  return thread;
}

// The row for a role: its own, else the one for every role. Two rows for one role: the first.
const CandidateYarn* row_for(const Candidate& candidate, RoleId role) {
  const CandidateYarn* general = nullptr;
  for (const CandidateYarn& row : candidate.yarns) {
    if (row.role == role) return &row;
    if (!row.role && general == nullptr) general = &row;
  }
  return general;
}

// Roles worked together make one stitch of all their strands.
void lay_together(CandidateThreads& threads) {
  const auto leader = [](const Role& role) { return role.goes_along_with ? role.goes_along_with : role.id; };
  for (auto& one : threads.roles)
    for (const auto& other : threads.roles)
      if (leader(*one.role) == leader(*other.role))
        one.stitch.strands.insert(one.stitch.strands.end(), other.thread.strands.begin(),
                                  other.thread.strands.end());
}

void name_problems(const Candidate& candidate, CandidateThreads& threads) {
  for (auto row = candidate.yarns.begin(); row != candidate.yarns.end(); ++row)
    if (std::any_of(candidate.yarns.begin(), row, [&](const auto& one) { return one.role == row->role; }))
      threads.problems.emplace_back("two yarns are given for one role; the first is taken");
  if (candidate.yarns.empty()) threads.problems.emplace_back("the candidate has no yarn yet");
}

}  // namespace

CandidateThreads own_threads(const Pattern& pattern) {
  CandidateThreads threads;
  for (const Role& role : pattern.roles) {
    threads.roles.push_back({&role, pattern_thread(pattern, role), {}, true});
    if (threads.roles.back().thread.empty()) threads.problems.push_back(role.label + " has no yarn");
  }
  lay_together(threads);
  return threads;
}

CandidateThreads threads_of(const Pattern& pattern, const Candidate& candidate) {
  CandidateThreads threads;
  for (const Role& role : pattern.roles) {
    CandidateThreads::OfRole one{&role, {}, {}, false};
    if (const CandidateYarn* row = row_for(candidate, role.id)) {
      add_strands(pattern, one.thread, row->yarn, row->strands);
      if (row->held_with) add_strands(pattern, one.thread, row->held_with, row->held_with_strands);
      if (one.thread.empty()) threads.problems.push_back(role.label + " has no yarn in it");
    } else {
      one.thread = pattern_thread(pattern, role);
    }
    one.same_as_pattern = one.thread.strands == pattern_thread(pattern, role).strands;
    threads.roles.push_back(std::move(one));
  }
  lay_together(threads);
  name_problems(candidate, threads);
  return threads;
}

}  // namespace skeinproof
