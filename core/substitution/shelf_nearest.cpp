// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/substitution/shelf_nearest.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cstdlib>
#include <tuple>

namespace skeinproof {
namespace {

// Yarns of one density, the likest first; `from[u]` is where those with `unlike` u begin.
struct Group {
  std::int64_t mg_per_km = 0;
  std::vector<std::size_t> members;
  std::array<std::size_t, most_unlike + 2> from{};

  std::span<const std::size_t> with(int unlike) const {
    const auto u = static_cast<std::size_t>(unlike);
    return std::span(members).subspan(from[u], from[u + 1] - from[u]);
  }
};

std::vector<Group> groups_of(std::span<const NearYarn> yarns) {
  std::vector<NearYarn> sorted(yarns.begin(), yarns.end());
  std::sort(sorted.begin(), sorted.end(), [](const NearYarn& a, const NearYarn& b) {
    return std::tie(a.mg_per_km, a.unlike, a.index) < std::tie(b.mg_per_km, b.unlike, b.index);
  });
  std::vector<Group> groups;
  for (const NearYarn& yarn : sorted) {
    assert(yarn.unlike >= 0 && yarn.unlike <= most_unlike);
    if (groups.empty() || groups.back().mg_per_km != yarn.mg_per_km)
      groups.emplace_back().mg_per_km = yarn.mg_per_km;
    Group& group = groups.back();
    group.members.push_back(yarn.index);
    for (int u = yarn.unlike; u <= most_unlike; ++u) ++group.from[static_cast<std::size_t>(u) + 1];
  }
  return groups;
}

// All pairs of one density with another, waiting to be met in the order of how far off they are.
struct Meeting {
  std::int64_t off;
  std::uint32_t a, b;  // groups
  int step;            // where the next partner of `a` lies: below or above `b`
};
bool later(const Meeting& x, const Meeting& y) { return std::llabs(x.off) > std::llabs(y.off); }

class PairSearch {
 public:
  PairSearch(const std::vector<Group>& some, const std::vector<Group>& others, std::int64_t target,
             std::size_t keep)
      : some_(some), others_(others), same_(&some == &others), target_(target), keep_(keep) {}

  std::vector<Nearest> run() {
    start();
    std::vector<Meeting> level;
    while (!heap_.empty() && found_.size() < keep_) {
      const std::int64_t off = std::llabs(heap_.front().off);
      level.clear();
      while (!heap_.empty() && std::llabs(heap_.front().off) == off) {
        std::pop_heap(heap_.begin(), heap_.end(), later);
        const Meeting met = heap_.back();
        heap_.pop_back();
        level.push_back(met);
        add(met.a, static_cast<std::int64_t>(met.b) + met.step, met.step);
      }
      take(level);
    }
    return std::move(found_);
  }

 private:
  // Each density meets its nearest partner from either side; of equal lists only those not below itself.
  void start() {
    auto partner = static_cast<std::int64_t>(others_.size());
    for (std::uint32_t a = 0; a < some_.size(); ++a) {
      const std::int64_t wanted = target_ - some_[a].mg_per_km;
      while (partner > 0 && others_[static_cast<std::size_t>(partner) - 1].mg_per_km >= wanted) --partner;
      const std::int64_t above = same_ ? std::max<std::int64_t>(partner, a) : partner;
      push(a, above, 1);
      push(a, above - 1, -1);
    }
    std::make_heap(heap_.begin(), heap_.end(), later);
  }
  bool push(std::uint32_t a, std::int64_t b, int step) {
    if (b < (same_ ? a : 0) || b >= static_cast<std::int64_t>(others_.size())) return false;
    const auto at = static_cast<std::uint32_t>(b);
    heap_.push_back({some_[a].mg_per_km + others_[at].mg_per_km - target_, a, at, step});
    return true;
  }
  void add(std::uint32_t a, std::int64_t b, int step) {
    if (push(a, b, step)) std::push_heap(heap_.begin(), heap_.end(), later);
  }

  // Of pairs that are as far off, the likest first.
  void take(std::vector<Meeting>& level) {
    std::sort(level.begin(), level.end(),
              [](const Meeting& x, const Meeting& y) { return std::tie(x.a, x.b) < std::tie(y.a, y.b); });
    for (int unlike = 0; unlike <= 2 * most_unlike; ++unlike)
      for (const Meeting& met : level)
        for (int u = std::max(0, unlike - most_unlike); u <= std::min(unlike, most_unlike); ++u)
          if (!take(met, u, unlike - u)) return;
  }
  // False once there are enough.
  bool take(const Meeting& met, int a_unlike, int b_unlike) {
    const bool one_group = same_ && met.a == met.b;
    if (one_group && a_unlike > b_unlike) return true;
    const auto a_members = some_[met.a].with(a_unlike);
    const auto b_members = others_[met.b].with(b_unlike);
    for (std::size_t i = 0; i < a_members.size(); ++i)
      for (std::size_t j = one_group && a_unlike == b_unlike ? i + 1 : 0; j < b_members.size(); ++j) {
        if (found_.size() >= keep_) return false;
        const bool a_thinner = some_[met.a].mg_per_km <= others_[met.b].mg_per_km;
        found_.push_back({met.off, a_unlike + b_unlike, a_thinner ? b_members[j] : a_members[i],
                          a_thinner ? a_members[i] : b_members[j]});
      }
    return true;
  }

  const std::vector<Group>& some_;
  const std::vector<Group>& others_;
  bool same_;
  std::int64_t target_;
  std::size_t keep_;
  std::vector<Meeting> heap_;
  std::vector<Nearest> found_;
};

bool nearer(const Nearest& a, const Nearest& b) {
  return std::make_tuple(std::llabs(a.off), a.unlike) < std::make_tuple(std::llabs(b.off), b.unlike);
}

}  // namespace

std::vector<Nearest> nearest_singles(std::span<const NearYarn> yarns, std::int64_t target, int strands,
                                     std::size_t keep) {
  std::vector<Nearest> all;
  all.reserve(yarns.size());
  for (const NearYarn& yarn : yarns)
    all.push_back({strands * yarn.mg_per_km - target, yarn.unlike, yarn.index, yarn.index});
  const auto before = [](const Nearest& a, const Nearest& b) {
    return nearer(a, b) || (!nearer(b, a) && a.first < b.first);
  };
  const auto end = all.begin() + static_cast<std::ptrdiff_t>(std::min(keep, all.size()));
  std::partial_sort(all.begin(), end, all.end(), before);
  all.erase(end, all.end());
  return all;
}

std::vector<Nearest> nearest_pairs(std::span<const NearYarn> some, std::span<const NearYarn> others,
                                   std::int64_t target, std::size_t keep) {
  const std::vector<Group> a = groups_of(some), b = groups_of(others);
  std::vector<Nearest> found = PairSearch(a, a, target, keep).run();
  const std::vector<Nearest> mixed = PairSearch(a, b, target, keep).run();
  found.insert(found.end(), mixed.begin(), mixed.end());
  std::stable_sort(found.begin(), found.end(), nearer);
  if (found.size() > keep) found.resize(keep);
  return found;
}

}  // namespace skeinproof
