// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <utility>
#include <vector>

#include "core/substitution/sharing_problem.h"

namespace skeinproof {

// What the ways of solving a problem of sharing have in common.

inline constexpr double sharing_exact_fit_m = 1e-6;

// What speaks against a sharing; our own order, common practice, no source.
namespace sharing_weight {
inline constexpr double also_serves = 100'000, parts_yarn = 1000, moved = 30, brimful = 8, unlike = 3,
                        yarn = 1, part_left = 0.1, unlike_part = 0.05;
}  // namespace sharing_weight

inline std::size_t at(int index) { return static_cast<std::size_t>(index); }

// Whether two yarns differ in thickness so that it shows.
bool unlike(const SharingProblem& problem, std::size_t one, std::size_t other);
// Of one yarn in one role.
double serving_weight(const SharingProblem& problem, std::size_t supply, std::size_t role);
// How many of a role's yarns are nearly all needed, where the need is spread so that they are few. Of each
// yarn what is usable and what it gives elsewhere.
int brimful_yarns(const SharingProblem& problem, const std::vector<std::pair<double, double>>& yarns,
                  double need);

// More is asked of a role than its longest yarns and all its parts, or of all roles than there is: seen
// without a plan. False says nothing.
bool plainly_impossible(const SharingProblem& problem);

}  // namespace skeinproof
