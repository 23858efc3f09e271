// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <tuple>

#include "core/substitution/integer_plan.h"
#include "core/substitution/sharing_sums.h"

namespace skeinproof {
namespace {

constexpr double exact_fit_m = sharing_exact_fit_m;
constexpr std::size_t most_sets = 2000, most_parts = 10;

// A way to cover a role: the yarns that serve it, and which of its parts it gives away.
struct RoleSet {
  std::size_t role = 0;
  std::vector<std::size_t> supplies;
  unsigned given = 0;  // a bit for each part of the problem
  double weight = 0;
};
// A yarn of its own for some parts.
struct PartSet {
  std::size_t supply = 0;
  unsigned parts = 0;
  double weight = 0;
};

// The problem as a choice among ready-made sets: one for every role, each yarn in one set at most. Every set
// is exact by itself and its weight is known, so the plan is soon proven. Yarns that serve a role give no
// parts here.
class SharingBySets {
 public:
  SharingBySets(const SharingProblem& problem, bool alike) : problem_(problem), alike_(alike) {
    choose_supplies();
    for (std::size_t r = 0; r < problem.needs.size(); ++r)
      if (problem.needs[r] > exact_fit_m) sets_of_role(r);
    if (!problem.parts.empty())
      for (std::size_t s : supplies_) sets_of_parts(s, 0, {s, 0, sharing_weight::parts_yarn}, 0);
  }

  std::optional<Sharing> solve() const {
    IntegerPlan plan;
    std::vector<IntegerPlan::Terms> of_role(problem_.needs.size()), of_supply(problem_.supplies.size()),
        of_part(problem_.parts.size());
    for (const RoleSet& set : roles_) {
      const int column = plan.yes_or_no(set.weight);
      of_role[set.role].emplace_back(column, 1);
      for (std::size_t s : set.supplies) of_supply[s].emplace_back(column, 1);
      add_parts(of_part, set.given, column, 1);
    }
    for (const PartSet& set : parts_) {
      const int column = plan.yes_or_no(set.weight);
      of_supply[set.supply].emplace_back(column, 1);
      add_parts(of_part, set.parts, column, -1);
    }
    for (std::size_t r = 0; r < of_role.size(); ++r) {
      if (!(problem_.needs[r] > exact_fit_m)) continue;
      if (of_role[r].empty()) return std::nullopt;
      plan.equal(of_role[r], 1);
    }
    for (const auto& uses : of_supply)
      if (uses.size() > 1) plan.at_most(uses, 1);
    for (const auto& given : of_part)
      if (!given.empty()) plan.equal(given, 0);
    const auto values = plan.solve();
    return values ? std::optional(read(*values)) : std::nullopt;
  }

 private:
  static void add_parts(std::vector<IntegerPlan::Terms>& of_part, unsigned parts, int column, double sign) {
    for (std::size_t p = 0; p < of_part.size(); ++p)
      if ((parts >> p & 1u) != 0) of_part[p].emplace_back(column, sign);
  }

  // At most so many sets of roles and of parts there are.
  double sets_with(std::size_t supplies) const {
    double subsets = 0, ways = 1;
    for (int n = 1; n <= std::max(1, problem_.yarns_a_role); ++n) {
      if (static_cast<std::size_t>(n) > supplies) break;
      ways *= static_cast<double>(supplies - static_cast<std::size_t>(n) + 1) / n;
      subsets += ways;
    }
    double sum =
        problem_.parts.empty() ? 0 : static_cast<double>(supplies) * std::exp2(problem_.parts.size());
    for (std::size_t r = 0; r < problem_.needs.size(); ++r)
      sum += subsets * std::exp2(std::count_if(problem_.parts.begin(), problem_.parts.end(),
                                               [&](const auto& part) { return at(part.role) == r; }));
    return sum;
  }

  // Where they are too many, those that are kept somewhere and the longest that pass unseen, of each role in
  // turn.
  void choose_supplies() {
    std::size_t most = problem_.supplies.size();
    const std::size_t least = problem_.needs.size() * 2;
    while (most > least && sets_with(most) > static_cast<double>(most_sets)) --most;
    std::vector<std::vector<std::size_t>> by_role(problem_.needs.size());
    for (std::size_t r = 0; r < by_role.size(); ++r) {
      for (std::size_t s = 0; s < problem_.supplies.size(); ++s)
        if (problem_.supplies[s].may_serve[r] && problem_.supplies[s].usable > 0) by_role[r].push_back(s);
      std::stable_sort(by_role[r].begin(), by_role[r].end(), [&](std::size_t a, std::size_t b) {
        const auto rank = [&](std::size_t s) {
          const auto& one = problem_.supplies[s];
          return std::tuple(one.kept_in != static_cast<int>(r), static_cast<bool>(one.unlike[r]),
                            -one.usable);
        };
        return rank(a) < rank(b);
      });
    }
    std::vector<bool> chosen(problem_.supplies.size(), false);
    std::size_t count = 0;
    for (std::size_t i = 0; i < problem_.supplies.size(); ++i)
      for (const auto& ranked : by_role)
        if (i < ranked.size() && count < most && !chosen[ranked[i]]) {
          chosen[ranked[i]] = true;
          ++count;
        }
    for (std::size_t s = 0; s < chosen.size(); ++s)
      if (chosen[s]) supplies_.push_back(s);
  }

  void sets_of_role(std::size_t r) {
    std::vector<std::size_t> own;
    for (std::size_t p = 0; p < problem_.parts.size(); ++p)
      if (at(problem_.parts[p].role) == r) own.push_back(p);
    for (unsigned choice = 0; choice < 1u << own.size(); ++choice) {
      RoleSet set;
      set.role = r;
      double rest = problem_.needs[r];
      for (std::size_t i = 0; i < own.size(); ++i) {
        if ((choice >> i & 1u) == 0) continue;
        set.given |= 1u << own[i];
        set.weight -= sharing_weight::part_left;
        rest -= problem_.parts[own[i]].need;
      }
      if (rest <= exact_fit_m) roles_.push_back(set);
      add_supplies(set, rest, 0);
    }
  }

  // Grows a set by every yarn from there on; each that covers the rest is kept.
  void add_supplies(const RoleSet& set, double rest, std::size_t from) {
    if (set.supplies.size() >= static_cast<std::size_t>(std::max(1, problem_.yarns_a_role))) return;
    for (std::size_t i = from; i < supplies_.size(); ++i) {
      const std::size_t s = supplies_[i];
      if (!problem_.supplies[s].may_serve[set.role]) continue;
      const bool odd = std::any_of(set.supplies.begin(), set.supplies.end(),
                                   [&](std::size_t other) { return unlike(problem_, s, other); });
      if (alike_ && odd) continue;
      RoleSet grown = set;
      grown.supplies.push_back(s);
      keep(grown, rest);
      add_supplies(grown, rest, i + 1);
    }
  }
  void keep(RoleSet set, double rest) {
    const double need = rest + problem_.join_m * static_cast<double>(set.supplies.size() - 1);
    double had = 0;
    std::vector<std::pair<double, double>> yarns;
    for (std::size_t s : set.supplies) {
      had += problem_.supplies[s].usable;
      yarns.emplace_back(problem_.supplies[s].usable, 0);
      set.weight += serving_weight(problem_, s, set.role);
    }
    if (had + exact_fit_m < need) return;
    set.weight += sharing_weight::brimful * brimful_yarns(problem_, yarns, need);
    roles_.push_back(std::move(set));
  }

  void sets_of_parts(std::size_t s, std::size_t from, const PartSet& set, double given) {
    const auto& supply = problem_.supplies[s];
    for (std::size_t p = from; p < problem_.parts.size(); ++p) {
      const auto& part = problem_.parts[p];
      if (!supply.may_serve[at(part.role)] || given + part.need > supply.usable + exact_fit_m) continue;
      bool meets = false;
      for (std::size_t q = 0; q < p; ++q)
        meets = meets || ((set.parts >> q & 1u) != 0 && problem_.parts[q].place == part.place);
      if (meets) continue;
      PartSet grown = set;
      grown.parts |= 1u << p;
      if (supply.unlike[at(part.role)]) grown.weight += sharing_weight::unlike_part;
      parts_.push_back(grown);
      if (given + part.need > problem_.brimful_share * supply.usable + exact_fit_m)
        parts_.back().weight += sharing_weight::brimful;
      sets_of_parts(s, p + 1, grown, given + part.need);
    }
  }

  Sharing read(const std::vector<double>& values) const {
    Sharing sharing;
    sharing.serves.assign(problem_.supplies.size(), -1);
    sharing.part_in.assign(problem_.parts.size(), -1);
    sharing.bought.assign(problem_.supplies.size(), 0);
    for (std::size_t i = 0; i < roles_.size(); ++i)
      if (values[i] > 0.5)
        for (std::size_t s : roles_[i].supplies) sharing.serves[s] = static_cast<int>(roles_[i].role);
    for (std::size_t i = 0; i < parts_.size(); ++i)
      for (std::size_t p = 0; p < problem_.parts.size(); ++p)
        if (values[roles_.size() + i] > 0.5 && (parts_[i].parts >> p & 1u) != 0)
          sharing.part_in[p] = static_cast<int>(parts_[i].supply);
    return sharing;
  }

  const SharingProblem& problem_;
  bool alike_;
  std::vector<std::size_t> supplies_;
  std::vector<RoleSet> roles_;
  std::vector<PartSet> parts_;
};

}  // namespace

std::optional<Sharing> best_sharing(const SharingProblem& problem) {
  // A yarn for given parts outweighs all else, so none is used where it can be done without.
  if (!problem.parts.empty()) {
    SharingProblem whole = problem;
    whole.parts.clear();
    if (auto best = best_sharing(whole)) {
      best->part_in.assign(problem.parts.size(), -1);
      return best;
    }
  }
  if (plainly_impossible(problem)) return std::nullopt;
  if (problem.parts.size() > most_parts) return any_sharing(problem);
  if (problem.yarns_a_role > 1)
    if (auto alike = SharingBySets(problem, true).solve()) return alike;
  auto best = SharingBySets(problem, false).solve();
  return best ? best : any_sharing(problem);
}

}  // namespace skeinproof
