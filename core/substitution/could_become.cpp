// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/substitution/could_become.h"

#include <algorithm>

#include "core/substitution/sharing_context.h"

namespace skeinproof {
namespace {

// A rung with the sharing its best plan stands on.
struct Climbed {
  LooseRules rules;
  Rung rung;
  std::optional<std::size_t> best_size;
  std::optional<Sharing> sharing;
};

class Ladder {
 public:
  Ladder(const Pattern& pattern, const Assessment& assessment, const NumberStyle& style)
      : context_(pattern, assessment, style), sizes_(pattern.sizes.size()) {}

  Expected<CouldBecome> climb() {
    CouldBecome result;
    if (context_.pattern().roles.empty())
      return failure(ErrorKind::wrong_count, "a pattern without a colour", "a role to be knitted");
    if (context_.supplies().empty()) {
      if (!context_.left_out().empty()) return tl::unexpected<Error>(context_.left_out().front());
      return failure(ErrorKind::not_found, "no yarn on hand", "yarn at home with a length");
    }
    climb_rungs();
    for (const Climbed& one : rungs_) result.rungs.push_back(one.rung);
    const Climbed in_force = under_own_rules();
    result.in_force = in_force.rung;
    result.next = next_size(in_force);
    result.supplies = context_.supplies();
    result.left_out = context_.left_out();
    result.not_looked_at = context_.not_looked_at();
    return result;
  }

 private:
  void climb_rungs() {
    const int yarns = std::max(2, context_.pattern().sharing.yarns_a_role);
    const bool parts = context_.has_parts();
    rungs_.push_back(climb_to({false, false, 1}, Loosening::roles_kept, nullptr));
    rungs_.push_back(climb_to({true, false, 1}, Loosening::roles_exchanged, &rungs_.back()));
    if (parts) rungs_.push_back(climb_to({true, true, 1}, Loosening::parts_given, &rungs_.back()));
    rungs_.push_back(climb_to({true, parts, yarns}, Loosening::yarns_share, &rungs_.back()));
  }

  Climbed under_own_rules() const {
    const SharingRules& own = context_.pattern().sharing;
    const LooseRules rules{own.exchange_roles, context_.has_parts(), std::max(1, own.yarns_a_role)};
    const Climbed* below = nullptr;
    for (const Climbed& one : rungs_) {
      if (one.rules == rules) return one;
      if (rules.holds(one.rules)) below = &one;
    }
    return climb_to(rules, loosening_of(rules), below);
  }
  static Loosening loosening_of(const LooseRules& rules) {
    if (rules.yarns_a_role > 1) return Loosening::yarns_share;
    if (rules.parts) return Loosening::parts_given;
    return rules.exchange ? Loosening::roles_exchanged : Loosening::roles_kept;
  }

  // Under looser rules nothing that was possible is lost, so only larger sizes are asked anew; from there the
  // yarns keep the roles they had on the rung below where they can.
  Climbed climb_to(const LooseRules& rules, Loosening loosening, const Climbed* below) const {
    Climbed climbed;
    climbed.rules = rules;
    climbed.rung.loosening = loosening;
    climbed.rung.words = words_of(rules, loosening);
    const bool had = below != nullptr && below->best_size;
    const std::vector<int> kept = had ? below->sharing->serves : context_.own_roles();
    const std::size_t from = had ? *below->best_size + 1 : 0;
    for (std::size_t i = sizes_; i-- > from && !climbed.best_size;) {
      if (!context_.known(i)) continue;
      const SharingProblem problem = context_.problem(i, rules, kept);
      if (const auto best = best_sharing(problem)) take(climbed, i, problem, *best);
    }
    if (!climbed.best_size && had) {
      climbed.best_size = below->best_size;
      climbed.sharing = below->sharing;
      climbed.rung.best = below->rung.best;
      climbed.rung.roomier = below->rung.roomier;
      // A problem with parts lists them where the one below had none.
      climbed.sharing->part_in.assign(context_.problem(*climbed.best_size, rules, kept).parts.size(), -1);
      for (std::size_t p = 0; p < below->sharing->part_in.size() && p < climbed.sharing->part_in.size(); ++p)
        climbed.sharing->part_in[p] = below->sharing->part_in[p];
    }
    list_sizes(climbed);
    return climbed;
  }

  void take(Climbed& climbed, std::size_t size, const SharingProblem& problem, const Sharing& best) const {
    climbed.best_size = size;
    climbed.sharing = best;
    climbed.rung.best = context_.plan(size, problem, best);
    const int tight = brimful(*climbed.rung.best);
    if (tight == 0) return;
    SharingProblem free = problem;
    for (auto& supply : free.supplies) supply.kept_in = -1;
    const auto other = best_sharing(free);
    if (!other || other->serves == best.serves) return;
    SharingPlan plan = context_.plan(size, free, *other);
    if (brimful(plan) < tight) climbed.rung.roomier = std::move(plan);
  }
  static int brimful(const SharingPlan& plan) {
    return static_cast<int>(std::count_if(plan.shares.begin(), plan.shares.end(),
                                          [](const SharedOut& share) { return share.brimful; }));
  }

  void list_sizes(Climbed& climbed) const {
    if (!climbed.best_size) return;
    for (std::size_t i = 0; i <= *climbed.best_size; ++i) {
      if (!context_.known(i)) continue;
      const SharingProblem problem = context_.problem(i, climbed.rules, {});
      const bool same_way =
          climbed.sharing->part_in.size() == problem.parts.size() && holds(problem, *climbed.sharing);
      if (i == *climbed.best_size || same_way || any_sharing(problem))
        climbed.rung.sizes.push_back(context_.pattern().sizes[i].id);
    }
  }

  static std::string words_of(const LooseRules& rules, Loosening loosening) {
    if (loosening != Loosening::yarns_share || rules.yarns_a_role == 2)
      return std::string(word_of(loosening));
    return std::to_string(rules.yarns_a_role) + " yarns may share a role";
  }

  std::optional<NextSizeUp> next_size(const Climbed& in_force) const {
    std::size_t next = in_force.best_size ? *in_force.best_size + 1 : 0;
    while (next < sizes_ && !context_.known(next)) ++next;
    if (next >= sizes_) return std::nullopt;
    std::vector<SharingContext::Buyable> buyable;
    const SharingProblem problem = context_.with_shop(context_.problem(next, in_force.rules, {}), buyable);
    const auto bought = cheapest_addition(problem);
    if (!bought) return std::nullopt;
    return context_.next_size(next, problem, *bought, buyable);
  }

  SharingContext context_;
  std::size_t sizes_;
  std::vector<Climbed> rungs_;
};

}  // namespace

Expected<CouldBecome> could_become(const Pattern& pattern, const Assessment& assessment,
                                   const NumberStyle& style) {
  return Ladder(pattern, assessment, style).climb();
}

}  // namespace skeinproof
