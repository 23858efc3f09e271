// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/causes.h"

#include <algorithm>
#include <map>

namespace skeinproof {
namespace {

constexpr std::size_t most_others = 4;

class Grouping {
 public:
  Grouping(const SlipSearchInput& input, std::vector<SlipFound> slips)
      : input_(input), slips_(std::move(slips)), open_(input.findings.size(), true) {
    // What does not change from round to round settles the order once; the search for the best then keeps the
    // first of equals.
    std::stable_sort(slips_.begin(), slips_.end(), [](const SlipFound& a, const SlipFound& b) {
      if (a.explains != b.explains) return a.explains > b.explains;
      if (a.changed != b.changed) return a.changed < b.changed;
      return a.kind < b.kind;
    });
    confirmed_.assign(slips_.size(), false);
  }

  std::vector<Cause> group() {
    while (const auto best = next_best()) take(*best);
    by_statement();
    std::sort(causes_.begin(), causes_.end(),
              [](const Cause& a, const Cause& b) { return a.findings.front() < b.findings.front(); });
    for (std::size_t i = 0; i < causes_.size(); ++i) causes_[i].id = "c" + std::to_string(i + 1);
    return std::move(causes_);
  }

 private:
  std::size_t still_cleared(const SlipFound& slip) const {
    return static_cast<std::size_t>(std::count_if(slip.slip.clears.begin(), slip.slip.clears.end(),
                                                  [&](std::size_t finding) { return open_[finding]; }));
  }

  // The slip that clears most of what is left. One that does not hold in a full run is struck off.
  std::optional<std::size_t> next_best() {
    for (;;) {
      std::size_t best = slips_.size(), most = 0;
      for (std::size_t i = 0; i < slips_.size(); ++i)
        if (const std::size_t cleared = still_cleared(slips_[i]); cleared > most) {
          best = i;
          most = cleared;
        }
      if (best == slips_.size()) return std::nullopt;
      if (confirmed_[best]) return best;
      const std::size_t expected = slips_[best].slip.clears.size();
      if (!confirm(input_, slips_[best])) slips_[best].slip.clears.clear();
      confirmed_[best] = true;
      if (slips_[best].slip.clears.size() == expected) return best;
    }
  }

  void take(std::size_t best) {
    Cause cause;
    cause.slip = slips_[best].slip;
    for (const std::size_t finding : slips_[best].slip.clears)
      if (open_[finding]) {
        cause.findings.push_back(finding);
        open_[finding] = false;
      }
    cause.others = others(best, cause.findings.front());
    causes_.push_back(std::move(cause));
  }

  std::vector<LikelySlip> others(std::size_t best, std::size_t finding) {
    std::vector<std::size_t> next;
    for (std::size_t i = 0; i < slips_.size(); ++i) {
      const auto& clears = slips_[i].slip.clears;
      if (i != best && std::find(clears.begin(), clears.end(), finding) != clears.end()) next.push_back(i);
    }
    std::stable_sort(next.begin(), next.end(), [&](std::size_t a, std::size_t b) {
      return slips_[a].slip.clears.size() > slips_[b].slip.clears.size();
    });
    std::vector<LikelySlip> found;
    for (const std::size_t i : next) {
      if (found.size() == most_others) break;
      found.push_back(slips_[i].slip);
    }
    return found;
  }

  void by_statement() {
    std::map<std::size_t, std::size_t> cause_of;  // by the statement a finding rests on first
    for (std::size_t i = 0; i < open_.size(); ++i) {
      if (!open_[i]) continue;
      const auto& rests = input_.findings[i].statements;
      if (!rests.empty()) {
        const auto [known, fresh] = cause_of.emplace(rests.front(), causes_.size());
        if (!fresh) {
          causes_[known->second].findings.push_back(i);
          continue;
        }
      }
      causes_.emplace_back();
      causes_.back().findings.push_back(i);
    }
  }

  const SlipSearchInput& input_;
  std::vector<SlipFound> slips_;
  std::vector<bool> open_;       // by finding: not yet in a cause
  std::vector<bool> confirmed_;  // by slip
  std::vector<Cause> causes_;
};

}  // namespace

std::vector<Cause> causes_of(const SlipSearchInput& input, std::vector<SlipFound> slips) {
  return Grouping(input, std::move(slips)).group();
}

}  // namespace skeinproof
