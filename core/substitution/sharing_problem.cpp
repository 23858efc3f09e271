// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/substitution/sharing_problem.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <tuple>

#include "core/substitution/integer_plan.h"

namespace skeinproof {
namespace {

constexpr double exact_fit_m = 1e-6;
// The rows of a plan are loosened by this share, so that no tolerance of its solver hides a plan that just
// fits; what comes out is checked exactly.
constexpr double loosened = 1e-6;
constexpr int most_plans = 200;
constexpr int most_branches = 1000;  // for the least weight; whether there is a plan at all is always proven

namespace weight {
constexpr double parts_yarn = 1000, moved = 30, brimful = 8, unlike = 3, yarn = 1;
constexpr double part_left = 0.1, unlike_part = 0.05;
}  // namespace weight

std::size_t at(int index) { return static_cast<std::size_t>(index); }

bool unlike(const SharingProblem& problem, const SharingProblem::Supply& one,
            const SharingProblem::Supply& other) {
  if (!(one.thickness > 0) || !(other.thickness > 0)) return false;
  const auto [thin, thick] = std::minmax(one.thickness, other.thickness);
  return thick / thin - 1 >= problem.unlike_share;
}

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

// How many yarns of a pool are nearly all needed, where the need is spread so that they are few.
int brimful_yarns(const SharingProblem& problem, const Sharing& sharing, const Pool& pool) {
  std::vector<double> more;
  double room = 0;
  int brimful = 0;
  for (std::size_t s : pool.supplies) {
    const double usable = length_of(problem, sharing, s);
    const double given = given_from(problem, sharing, s);
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
    if (room + exact_fit_m >= pool.need) break;
    room += one;
    ++brimful;
  }
  return brimful;
}

// Yarns that no plan needs are left out of it: of yarns that may do the same, so many of the longest as a
// plan could use at all.
std::vector<std::size_t> worth_looking_at(const SharingProblem& problem, bool for_weight) {
  struct Kind {
    std::vector<bool> may_serve, unlike;
    int kept_in;
    double thickness;
    bool can_be_bought;
    bool operator<(const Kind& other) const {
      return std::tie(may_serve, unlike, kept_in, thickness, can_be_bought) <
             std::tie(other.may_serve, other.unlike, other.kept_in, other.thickness, other.can_be_bought);
    }
  };
  const bool thickness_counts = for_weight && problem.yarns_a_role > 1;
  std::map<Kind, std::vector<std::size_t>> kinds;
  std::vector<std::size_t> chosen;
  for (std::size_t s = 0; s < problem.supplies.size(); ++s) {
    const auto& supply = problem.supplies[s];
    if (supply.skein > 0) {
      chosen.push_back(s);
      continue;
    }
    if (!(supply.usable > 0)) continue;
    Kind kind{supply.may_serve, {}, -1, thickness_counts ? supply.thickness : 0, false};
    if (for_weight) {
      kind.unlike = supply.unlike;
      kind.kept_in = supply.kept_in;
    }
    kinds[kind].push_back(s);
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

// Where there are many, the least weight is looked for among those that a plan at hand uses, those that are
// kept somewhere and the longest that pass unseen.
std::vector<std::size_t> likeliest(const SharingProblem& problem, const std::vector<std::size_t>& all,
                                   const Sharing& ready) {
  constexpr std::size_t most = 10, beside_ready = 2;
  if (all.size() <= most) return all;
  std::vector<std::size_t> chosen;
  const auto choose = [&](std::size_t s) {
    if (std::find(chosen.begin(), chosen.end(), s) == chosen.end()) chosen.push_back(s);
  };
  for (std::size_t s : all)
    if (ready.serves[s] >= 0 || given_from(problem, ready, s) > 0) choose(s);
  const std::size_t wanted = std::max(most, chosen.size() + beside_ready);
  for (std::size_t s : all)
    if (problem.supplies[s].kept_in >= 0 && chosen.size() < wanted) choose(s);
  std::vector<std::size_t> rest = all;
  const auto seen = [&](std::size_t s) {
    const auto& unlike = problem.supplies[s].unlike;
    return std::count(unlike.begin(), unlike.end(), true);
  };
  std::stable_sort(rest.begin(), rest.end(), [&](std::size_t a, std::size_t b) {
    const auto seen_a = seen(a), seen_b = seen(b);
    return seen_a != seen_b ? seen_a < seen_b : problem.supplies[a].usable > problem.supplies[b].usable;
  });
  for (std::size_t s : rest)
    if (chosen.size() < wanted) choose(s);
  std::sort(chosen.begin(), chosen.end());
  return chosen;
}

enum class Aim { any, least_weight, least_bought };

// The problem as an integer plan: which yarn serves which role (yes or no), how much of it (an amount), which
// part goes to which yarn, and skeins to buy.
class SharingModel {
 public:
  SharingModel(const SharingProblem& problem, Aim aim, std::vector<std::size_t> supplies, bool alike)
      : problem_(problem), aim_(aim), supplies_(std::move(supplies)) {
    serve_.assign(problem.supplies.size(), std::vector<int>(problem.needs.size(), -1));
    gives_ = serve_;
    takes_.assign(problem.parts.size(), std::vector<int>(problem.supplies.size(), -1));
    buys_.assign(problem.supplies.size(), -1);
    for (std::size_t s : supplies_) add_supply(s);
    for (std::size_t p = 0; p < problem.parts.size(); ++p) add_part(p);
    for (std::size_t s : supplies_) add_capacity(s);
    for (std::size_t r = 0; r < problem.needs.size(); ++r) add_need(r);
    add_places();
    if (alike) keep_alike();
  }

  // What the solver finds is checked; a plan that its tolerances let slip is forbidden and another looked
  // for.
  std::optional<Sharing> solve() {
    for (int turn = 0; turn < most_plans; ++turn) {
      const auto values = plan_.solve(weighs() ? most_branches : 0);
      if (!values) return std::nullopt;
      Sharing sharing = read(*values);
      if (holds(problem_, sharing)) return sharing;
      forbid(*values);
    }
    return std::nullopt;
  }

 private:
  bool weighs() const { return aim_ == Aim::least_weight; }
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
      serve_[s][r] = plan_.yes_or_no(serve_weight(supply, r));
      // No more than the role asks: the tighter this row, the sooner the plan is proven.
      const double asked = std::min(most, problem_.needs[r] + joins());
      gives_[s][r] = plan_.amount(asked);
      plan_.at_most({{gives_[s][r], 1}, {serve_[s][r], -asked}}, 0);
      one_role.emplace_back(serve_[s][r], 1);
    }
    if (one_role.size() > 1) plan_.at_most(one_role, 1);
  }

  double serve_weight(const SharingProblem::Supply& supply, std::size_t r) const {
    if (!weighs()) return 0;
    double sum = weight::yarn;
    if (supply.kept_in >= 0 && at(supply.kept_in) != r) sum += weight::moved;
    if (supply.unlike[r]) sum += weight::unlike;
    return sum;
  }

  void add_part(std::size_t p) {
    const auto& part = problem_.parts[p];
    IntegerPlan::Terms once;
    for (std::size_t s : supplies_) {
      const auto& supply = problem_.supplies[s];
      if (!supply.may_serve[at(part.role)]) continue;
      const double cost =
          !weighs() ? 0 : (supply.unlike[at(part.role)] ? weight::unlike_part : 0) - weight::part_left;
      takes_[p][s] = plan_.yes_or_no(cost);
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
    int parts_yarn = -1;
    for (std::size_t p = 0; p < problem_.parts.size(); ++p) {
      if (takes_[p][s] < 0) continue;
      all.emplace_back(takes_[p][s], problem_.parts[p].need);
      if (!weighs()) continue;
      if (parts_yarn < 0) parts_yarn = plan_.yes_or_no(weight::parts_yarn);
      plan_.at_most({{takes_[p][s], 1}, {parts_yarn, -1}}, 0);
    }
    if (all.empty()) return;
    IntegerPlan::Terms full = all;
    if (buys_[s] >= 0) full.emplace_back(buys_[s], -supply.skein);
    plan_.at_most(full, supply.usable * (1 + loosened));
    if (!weighs()) return;
    const double last = (1 - problem_.brimful_share) * supply.usable;
    all.emplace_back(plan_.yes_or_no(weight::brimful), -last);
    plan_.at_most(all, problem_.brimful_share * supply.usable);
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

  void keep_alike() {
    for (std::size_t r = 0; r < problem_.needs.size(); ++r)
      for (std::size_t i = 0; i < supplies_.size(); ++i)
        for (std::size_t j = i + 1; j < supplies_.size(); ++j) {
          const std::size_t a = supplies_[i], b = supplies_[j];
          if (serve_[a][r] >= 0 && serve_[b][r] >= 0 &&
              unlike(problem_, problem_.supplies[a], problem_.supplies[b]))
            plan_.at_most({{serve_[a][r], 1}, {serve_[b][r], 1}}, 1);
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
    sum -= weight::part_left;
    if (problem.supplies[at(sharing.part_in[p])].unlike[at(problem.parts[p].role)])
      sum += weight::unlike_part;
  }
  for (std::size_t s = 0; s < problem.supplies.size(); ++s) {
    const auto& supply = problem.supplies[s];
    const double given = given_from(problem, sharing, s);
    const int role = sharing.serves[s];
    if (given > 0) sum += weight::parts_yarn;
    if (role >= 0) {
      sum += weight::yarn;
      if (supply.kept_in >= 0 && supply.kept_in != role) sum += weight::moved;
      if (supply.unlike[at(role)]) sum += weight::unlike;
    } else if (given > problem.brimful_share * supply.usable + exact_fit_m) {
      sum += weight::brimful;
    }
  }
  for (std::size_t r = 0; r < problem.needs.size(); ++r)
    sum += weight::brimful * brimful_yarns(problem, sharing, pool_of(problem, sharing, r));
  return sum;
}

std::optional<Sharing> any_sharing(const SharingProblem& problem) {
  if (auto ready = sharing_at_hand(problem)) return ready;
  return SharingModel(problem, Aim::any, worth_looking_at(problem, false), false).solve();
}

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
  const auto ready = any_sharing(problem);
  if (!ready) return std::nullopt;
  const auto supplies = likeliest(problem, worth_looking_at(problem, true), *ready);
  if (problem.yarns_a_role > 1)
    if (auto alike = SharingModel(problem, Aim::least_weight, supplies, true).solve()) return alike;
  auto best = SharingModel(problem, Aim::least_weight, supplies, false).solve();
  return best ? best : ready;
}

std::optional<Sharing> cheapest_addition(const SharingProblem& problem) {
  SharingProblem by_number = problem;
  const bool all_priced = std::all_of(
      problem.supplies.begin(), problem.supplies.end(),
      [](const SharingProblem::Supply& supply) { return !(supply.skein > 0) || supply.price > 0; });
  if (!all_priced)
    for (auto& supply : by_number.supplies) supply.price = 0;
  return SharingModel(by_number, Aim::least_bought, worth_looking_at(problem, false), false).solve();
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
