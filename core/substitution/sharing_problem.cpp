// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/substitution/sharing_problem.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/substitution/sharing_sums.h"

namespace skeinproof {
namespace {

constexpr double exact_fit_m = sharing_exact_fit_m;

double length_of(const SharingProblem& problem, const Sharing& sharing, std::size_t s) {
  const double bought = s < sharing.bought.size() ? sharing.bought[s] : 0;
  return problem.supplies[s].usable + bought * problem.supplies[s].skein;
}

struct Pool {
  double need = 0;  // of the role that stays, joins included
  std::vector<std::size_t> supplies;
};
Pool pool_of(const SharingProblem& problem, const Sharing& sharing, std::size_t role) {
  Pool pool;
  pool.need = problem.needs[role];
  for (std::size_t p = 0; p < problem.parts.size(); ++p)
    if (at(problem.parts[p].role) == role && sharing.part_in[p] >= 0) pool.need -= problem.parts[p].need;
  for (std::size_t s = 0; s < problem.supplies.size(); ++s)
    if (sharing.serves[s] == static_cast<int>(role)) pool.supplies.push_back(s);
  if (!pool.supplies.empty()) pool.need += problem.join_m * static_cast<double>(pool.supplies.size() - 1);
  return pool;
}

double given_from(const SharingProblem& problem, const Sharing& sharing, std::size_t s) {
  double given = 0;
  for (std::size_t p = 0; p < problem.parts.size(); ++p)
    if (sharing.part_in[p] == static_cast<int>(s)) given += problem.parts[p].need;
  return given;
}

}  // namespace

bool unlike(const SharingProblem& problem, std::size_t one, std::size_t other) {
  const double a = problem.supplies[one].thickness, b = problem.supplies[other].thickness;
  if (!(a > 0) || !(b > 0)) return false;
  return std::max(a, b) / std::min(a, b) - 1 >= problem.unlike_share;
}

double serving_weight(const SharingProblem& problem, std::size_t supply, std::size_t role) {
  const auto& one = problem.supplies[supply];
  double sum = sharing_weight::yarn;
  if (one.kept_in >= 0 && at(one.kept_in) != role) sum += sharing_weight::moved;
  if (one.unlike[role]) sum += sharing_weight::unlike;
  return sum;
}

int brimful_yarns(const SharingProblem& problem, const std::vector<std::pair<double, double>>& yarns,
                  double need) {
  std::vector<double> more;
  double room = 0;
  int brimful = 0;
  for (const auto& [usable, given] : yarns) {
    if (given > problem.brimful_share * usable + exact_fit_m) {
      room += usable - given;
      ++brimful;
      continue;
    }
    room += problem.brimful_share * usable - given;
    more.push_back((1 - problem.brimful_share) * usable);
  }
  std::sort(more.rbegin(), more.rend());
  for (double one : more) {
    if (room + exact_fit_m >= need) break;
    room += one;
    ++brimful;
  }
  return brimful;
}

bool holds(const SharingProblem& problem, const Sharing& sharing) {
  for (std::size_t p = 0; p < problem.parts.size(); ++p) {
    if (sharing.part_in[p] < 0) continue;
    const std::size_t s = at(sharing.part_in[p]);
    if (sharing.serves[s] == problem.parts[p].role) return false;
    if (!problem.supplies[s].may_serve[at(problem.parts[p].role)]) return false;
    for (std::size_t q = 0; q < p; ++q)
      if (sharing.part_in[q] == sharing.part_in[p] && problem.parts[q].place == problem.parts[p].place)
        return false;
  }
  for (std::size_t s = 0; s < problem.supplies.size(); ++s) {
    if (given_from(problem, sharing, s) > length_of(problem, sharing, s) + exact_fit_m) return false;
    if (sharing.serves[s] >= 0 && !problem.supplies[s].may_serve[at(sharing.serves[s])]) return false;
  }
  for (std::size_t r = 0; r < problem.needs.size(); ++r) {
    const Pool pool = pool_of(problem, sharing, r);
    if (static_cast<int>(pool.supplies.size()) > std::max(1, problem.yarns_a_role)) return false;
    double had = 0;
    for (std::size_t s : pool.supplies)
      had += length_of(problem, sharing, s) - given_from(problem, sharing, s);
    if (had + exact_fit_m < pool.need) return false;
  }
  return true;
}

double weight_of(const SharingProblem& problem, const Sharing& sharing) {
  double sum = 0;
  for (std::size_t p = 0; p < problem.parts.size(); ++p) {
    if (sharing.part_in[p] < 0) continue;
    sum -= sharing_weight::part_left;
    if (problem.supplies[at(sharing.part_in[p])].unlike[at(problem.parts[p].role)])
      sum += sharing_weight::unlike_part;
  }
  for (std::size_t s = 0; s < problem.supplies.size(); ++s) {
    const double given = given_from(problem, sharing, s);
    const int role = sharing.serves[s];
    if (given > 0) sum += sharing_weight::parts_yarn + (role >= 0 ? sharing_weight::also_serves : 0);
    if (role >= 0)
      sum += serving_weight(problem, s, at(role));
    else if (given > problem.brimful_share * length_of(problem, sharing, s) + exact_fit_m)
      sum += sharing_weight::brimful;
  }
  for (std::size_t r = 0; r < problem.needs.size(); ++r) {
    const Pool pool = pool_of(problem, sharing, r);
    std::vector<std::pair<double, double>> yarns;
    for (std::size_t s : pool.supplies)
      yarns.emplace_back(length_of(problem, sharing, s), given_from(problem, sharing, s));
    sum += sharing_weight::brimful * brimful_yarns(problem, yarns, pool.need);
  }
  return sum;
}

std::optional<Sharing> sharing_at_hand(const SharingProblem& problem) {
  Sharing sharing;
  sharing.serves.assign(problem.supplies.size(), -1);
  sharing.part_in.assign(problem.parts.size(), -1);
  sharing.bought.assign(problem.supplies.size(), 0);
  std::vector<std::size_t> roles(problem.needs.size()), by_length(problem.supplies.size());
  std::iota(roles.begin(), roles.end(), 0);
  std::iota(by_length.begin(), by_length.end(), 0);
  std::stable_sort(roles.begin(), roles.end(),
                   [&](std::size_t a, std::size_t b) { return problem.needs[a] > problem.needs[b]; });
  std::stable_sort(by_length.begin(), by_length.end(), [&](std::size_t a, std::size_t b) {
    return problem.supplies[a].usable < problem.supplies[b].usable;
  });
  for (std::size_t r : roles) {
    double rest = problem.needs[r];
    for (int n = 0; rest > exact_fit_m && n < std::max(1, problem.yarns_a_role); ++n) {
      const std::size_t none = problem.supplies.size();
      std::size_t taken = none;
      for (std::size_t s : by_length) {
        if (sharing.serves[s] >= 0 || !problem.supplies[s].may_serve[r]) continue;
        taken = s;  // the longest where none holds it alone
        if (problem.supplies[s].usable >= rest) break;
      }
      if (taken == none) break;
      sharing.serves[taken] = static_cast<int>(r);
      rest -= problem.supplies[taken].usable - (n > 0 ? problem.join_m : 0);
    }
  }
  if (!holds(problem, sharing)) return std::nullopt;
  return sharing;
}

}  // namespace skeinproof
