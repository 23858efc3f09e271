// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <numeric>

#include "core/substitution/integer_plan.h"
#include "core/substitution/sharing_sums.h"

namespace skeinproof {
namespace {

constexpr double exact_fit_m = sharing_exact_fit_m;
// The rows of a plan are loosened by this share, so that no tolerance of its solver hides a plan that just
// fits; what comes out is checked exactly.
constexpr double loosened = 1e-6;
constexpr int most_plans = 200;

// Yarns that no plan needs are left out of it: of yarns that may do the same, so many of the longest as a
// plan could use at all.
std::vector<std::size_t> worth_looking_at(const SharingProblem& problem) {
  std::map<std::vector<bool>, std::vector<std::size_t>> kinds;  // by the roles they may serve
  std::vector<std::size_t> chosen;
  for (std::size_t s = 0; s < problem.supplies.size(); ++s) {
    const auto& supply = problem.supplies[s];
    if (supply.skein > 0) {
      chosen.push_back(s);
      continue;
    }
    if (!(supply.usable > 0)) continue;
    kinds[supply.may_serve].push_back(s);
  }
  const std::size_t most =
      problem.needs.size() * static_cast<std::size_t>(std::max(1, problem.yarns_a_role)) +
      problem.parts.size();
  for (auto& [kind, supplies] : kinds) {
    std::stable_sort(supplies.begin(), supplies.end(), [&](std::size_t a, std::size_t b) {
      return problem.supplies[a].usable > problem.supplies[b].usable;
    });
    supplies.resize(std::min(supplies.size(), most));
    chosen.insert(chosen.end(), supplies.begin(), supplies.end());
  }
  std::sort(chosen.begin(), chosen.end());
  return chosen;
}

enum class Aim { any, least_bought };

// The problem as an integer plan: which yarn serves which role (yes or no), how much of it (an amount), which
// part goes to which yarn, and skeins to buy.
class SharingModel {
 public:
  SharingModel(const SharingProblem& problem, Aim aim)
      : problem_(problem), aim_(aim), supplies_(worth_looking_at(problem)) {
    serve_.assign(problem.supplies.size(), std::vector<int>(problem.needs.size(), -1));
    gives_ = serve_;
    takes_.assign(problem.parts.size(), std::vector<int>(problem.supplies.size(), -1));
    buys_.assign(problem.supplies.size(), -1);
    for (std::size_t s : supplies_) add_supply(s);
    for (std::size_t p = 0; p < problem.parts.size(); ++p) add_part(p);
    for (std::size_t s : supplies_) add_capacity(s);
    for (std::size_t r = 0; r < problem.needs.size(); ++r) add_need(r);
    add_places();
  }

  // What the solver finds is checked; a plan that its tolerances let slip is forbidden and another looked
  // for.
  std::optional<Sharing> solve() {
    for (int turn = 0; turn < most_plans; ++turn) {
      const auto values = plan_.solve();
      if (!values) return std::nullopt;
      Sharing sharing = read(*values);
      if (holds(problem_, sharing)) return sharing;
      forbid(*values);
    }
    return std::nullopt;
  }

 private:
  double joins() const { return problem_.join_m * (std::max(1, problem_.yarns_a_role) - 1); }

  void add_supply(std::size_t s) {
    const auto& supply = problem_.supplies[s];
    double most = supply.usable;
    if (aim_ == Aim::least_bought && supply.skein > 0) {
      const double all = std::accumulate(problem_.needs.begin(), problem_.needs.end(), 0.0);
      const double skeins = std::ceil(all / supply.skein) + 1;
      buys_[s] = plan_.whole(skeins, supply.price > 0 ? supply.price : 1);
      most += skeins * supply.skein;
    }
    IntegerPlan::Terms one_role;
    for (std::size_t r = 0; r < problem_.needs.size(); ++r) {
      if (!supply.may_serve[r] || !(problem_.needs[r] > exact_fit_m)) continue;
      serve_[s][r] = plan_.yes_or_no();
      // No more than the role asks: the tighter this row, the sooner the plan is proven.
      const double asked = std::min(most, problem_.needs[r] + joins());
      gives_[s][r] = plan_.amount(asked);
      plan_.at_most({{gives_[s][r], 1}, {serve_[s][r], -asked}}, 0);
      one_role.emplace_back(serve_[s][r], 1);
    }
    if (one_role.size() > 1) plan_.at_most(one_role, 1);
  }

  void add_part(std::size_t p) {
    const auto& part = problem_.parts[p];
    IntegerPlan::Terms once;
    for (std::size_t s : supplies_) {
      const auto& supply = problem_.supplies[s];
      if (!supply.may_serve[at(part.role)]) continue;
      takes_[p][s] = plan_.yes_or_no();
      once.emplace_back(takes_[p][s], 1);
      // Given to the yarn of its own role it would not be given at all.
      if (serve_[s][at(part.role)] >= 0) plan_.at_most({{takes_[p][s], 1}, {serve_[s][at(part.role)], 1}}, 1);
    }
    if (once.size() > 1) plan_.at_most(once, 1);
  }

  // What a yarn gives over all is no more than there is of it.
  void add_capacity(std::size_t s) {
    const auto& supply = problem_.supplies[s];
    IntegerPlan::Terms all;
    for (int amount : gives_[s])
      if (amount >= 0) all.emplace_back(amount, 1);
    for (std::size_t p = 0; p < problem_.parts.size(); ++p)
      if (takes_[p][s] >= 0) all.emplace_back(takes_[p][s], problem_.parts[p].need);
    if (all.empty()) return;
    if (buys_[s] >= 0) all.emplace_back(buys_[s], -supply.skein);
    plan_.at_most(all, supply.usable * (1 + loosened));
  }

  void add_need(std::size_t r) {
    const double need = problem_.needs[r];
    if (!(need > exact_fit_m)) return;
    IntegerPlan::Terms sum, yarns;
    double given = 0;
    for (std::size_t s : supplies_) {
      if (serve_[s][r] < 0) continue;
      sum.emplace_back(gives_[s][r], 1);
      sum.emplace_back(serve_[s][r], -problem_.join_m);
      yarns.emplace_back(serve_[s][r], 1);
    }
    for (std::size_t p = 0; p < problem_.parts.size(); ++p) {
      if (at(problem_.parts[p].role) != r) continue;
      given += problem_.parts[p].need;
      for (std::size_t s : supplies_)
        if (takes_[p][s] >= 0) sum.emplace_back(takes_[p][s], problem_.parts[p].need);
    }
    plan_.at_least(sum, need * (1 - loosened) - problem_.join_m);
    plan_.at_most(yarns, std::max(1, problem_.yarns_a_role));
    if (given < need - exact_fit_m) plan_.at_least(yarns, 1);
  }

  void add_places() {
    for (std::size_t p = 0; p < problem_.parts.size(); ++p)
      for (std::size_t q = p + 1; q < problem_.parts.size(); ++q) {
        if (problem_.parts[p].place != problem_.parts[q].place) continue;
        for (std::size_t s : supplies_)
          if (takes_[p][s] >= 0 && takes_[q][s] >= 0)
            plan_.at_most({{takes_[p][s], 1}, {takes_[q][s], 1}}, 1);
      }
  }

  Sharing read(const std::vector<double>& values) const {
    const auto yes = [&](int column) { return column >= 0 && values[at(column)] > 0.5; };
    Sharing sharing;
    sharing.serves.assign(problem_.supplies.size(), -1);
    sharing.part_in.assign(problem_.parts.size(), -1);
    sharing.bought.assign(problem_.supplies.size(), 0);
    for (std::size_t s : supplies_) {
      for (std::size_t r = 0; r < problem_.needs.size(); ++r)
        if (yes(serve_[s][r])) sharing.serves[s] = static_cast<int>(r);
      for (std::size_t p = 0; p < problem_.parts.size(); ++p)
        if (yes(takes_[p][s])) sharing.part_in[p] = static_cast<int>(s);
      if (buys_[s] >= 0) sharing.bought[s] = static_cast<int>(values[at(buys_[s])]);
    }
    return sharing;
  }

  void forbid(const std::vector<double>& values) {
    IntegerPlan::Terms differs;
    double yes = 0;
    const auto one = [&](int column) {
      if (column < 0) return;
      const bool on = values[at(column)] > 0.5;
      differs.emplace_back(column, on ? -1 : 1);
      yes += on ? 1 : 0;
    };
    for (std::size_t s : supplies_) {
      for (int column : serve_[s]) one(column);
      for (std::size_t p = 0; p < problem_.parts.size(); ++p) one(takes_[p][s]);
    }
    plan_.at_least(differs, 1 - yes);
  }

  const SharingProblem& problem_;
  Aim aim_;
  IntegerPlan plan_;
  std::vector<std::size_t> supplies_;
  std::vector<std::vector<int>> serve_, gives_, takes_;  // columns, -1 = none
  std::vector<int> buys_;
};

}  // namespace

bool plainly_impossible(const SharingProblem& problem) {
  double all = 0, asked = 0;
  for (const auto& supply : problem.supplies) all += supply.usable;
  for (std::size_t r = 0; r < problem.needs.size(); ++r) {
    asked += problem.needs[r];
    std::vector<double> longest;
    for (const auto& supply : problem.supplies)
      if (supply.may_serve[r]) longest.push_back(supply.usable);
    std::sort(longest.begin(), longest.end(), std::greater<>());
    longest.resize(std::min(longest.size(), static_cast<std::size_t>(std::max(1, problem.yarns_a_role))));
    double most = std::accumulate(longest.begin(), longest.end(), 0.0);
    for (const auto& part : problem.parts)
      if (at(part.role) == r) most += part.need;
    if (most + exact_fit_m < problem.needs[r]) return true;
  }
  return all + exact_fit_m * static_cast<double>(problem.needs.size() + 1) < asked;
}

std::optional<Sharing> any_sharing(const SharingProblem& problem) {
  if (plainly_impossible(problem)) return std::nullopt;
  if (auto ready = sharing_at_hand(problem)) return ready;
  return SharingModel(problem, Aim::any).solve();
}

std::optional<Sharing> cheapest_addition(const SharingProblem& problem) {
  SharingProblem by_number = problem;
  const bool all_priced = std::all_of(
      problem.supplies.begin(), problem.supplies.end(),
      [](const SharingProblem::Supply& supply) { return !(supply.skein > 0) || supply.price > 0; });
  if (!all_priced)
    for (auto& supply : by_number.supplies) supply.price = 0;
  return SharingModel(by_number, Aim::least_bought).solve();
}

}  // namespace skeinproof
