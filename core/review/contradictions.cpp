// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/contradictions.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace skeinproof {
namespace {

using Interval = IntervalSystem::Interval;
constexpr double tiny = 1e-9;  // figures are sums and products of decimals
constexpr int most_passes = 30;

Interval meet(const Interval& a, const Interval& b) {
  return {std::max(a.low, b.low), std::min(a.high, b.high)};
}

bool narrow(Interval& quantity, const Interval& to) {
  const Interval less = meet(quantity, {to.low - tiny, to.high + tiny});
  const bool moved = less.low > quantity.low + tiny || less.high < quantity.high - tiny;
  quantity = less;
  return moved;
}

Interval scaled(const Interval& quantity, double times) {
  // 0 x infinity would be no number.
  const auto by = [&](double end) { return times == 0 ? 0 : times * end; };
  return times < 0 ? Interval{by(quantity.high), by(quantity.low)}
                   : Interval{by(quantity.low), by(quantity.high)};
}

double quotient(double a, double b, double of_zero) { return b > 0 ? a / b : of_zero; }

}  // namespace

std::size_t IntervalSystem::add_quantity() { return quantities_++; }

std::size_t IntervalSystem::state(std::size_t quantity, Interval within) {
  if (stated_.size() == most_statements) {
    full_ = true;
    return most_statements;
  }
  stated_.push_back({quantity, within});
  return stated_.size() - 1;
}

void IntervalSystem::sum(std::vector<Term> terms, Interval within) {
  sums_.push_back({std::move(terms), within});
}

void IntervalSystem::product(std::size_t one, std::size_t a, std::size_t b, double slack) {
  products_.push_back({one, a, b, slack});
}

bool IntervalSystem::consistent(std::uint64_t set, std::vector<Interval>* left) const {
  std::vector<Interval> known(quantities_);
  for (std::size_t i = 0; i < stated_.size(); ++i)
    if (set >> i & 1) known[stated_[i].quantity] = meet(known[stated_[i].quantity], stated_[i].within);
  const auto any_empty = [&] {
    return std::any_of(known.begin(), known.end(),
                       [](const Interval& one) { return one.low > one.high + tiny; });
  };
  bool moved = true;
  for (int pass = 0; moved && pass < most_passes && !any_empty(); ++pass) {
    moved = false;
    for (const Sum& sum : sums_)
      for (const Term& term : sum.terms) {
        Interval rest{0, 0};
        for (const Term& other : sum.terms) {
          if (&other == &term) continue;
          const Interval part = scaled(known[other.quantity], other.times);
          rest = {rest.low + part.low, rest.high + part.high};
        }
        const Interval wanted{sum.within.low - rest.high, sum.within.high - rest.low};
        moved = narrow(known[term.quantity], scaled(wanted, 1 / term.times)) || moved;
      }
    for (const Product& product : products_) {
      Interval &one = known[product.one], &a = known[product.a], &b = known[product.b];
      const Interval wide{std::max(0.0, a.low - product.slack), a.high + product.slack};
      const double high = std::isinf(wide.high) || std::isinf(b.high) ? one.high : wide.high * b.high;
      moved = narrow(one, {wide.low * b.low, high}) || moved;
      moved = narrow(b, {quotient(one.low, wide.high, 0), quotient(one.high, wide.low, b.high)}) || moved;
      moved = narrow(a, {quotient(one.low, b.high, 0) - product.slack,
                         quotient(one.high, b.low, a.high) + product.slack}) ||
              moved;
    }
  }
  const bool holds = !any_empty();
  if (left != nullptr) *left = std::move(known);
  return holds;
}

namespace {

// The sets found so far, and the search for one that neither holds a smallest contradiction nor lies inside a
// set known to hold.
class Enumeration {
 public:
  Enumeration(const IntervalSystem& system, std::size_t most_steps) : system_(system), steps_(most_steps) {}

  SmallestSets run() {
    const std::size_t n = system_.statements();
    const std::uint64_t all = n == 64 ? ~std::uint64_t{0} : (std::uint64_t{1} << n) - 1;
    while (const auto seed = unexplored(all, all)) {
      if (consistent(*seed))
        largest_.push_back(grown(*seed, all));
      else
        found_.sets.push_back(shrunk(*seed));
      if (steps_ == 0) break;
    }
    found_.complete = steps_ > 0 && !system_.full();
    return std::move(found_);
  }

 private:
  bool step() {
    if (steps_ == 0) return false;
    --steps_;
    return true;
  }
  bool consistent(std::uint64_t set) { return !step() || system_.consistent(set); }

  // Takes a member out of every contradiction that a set still holds.
  std::optional<std::uint64_t> unexplored(std::uint64_t set, std::uint64_t all) {
    if (!step()) return std::nullopt;
    for (const std::uint64_t contradiction : found_.sets) {
      if ((set & contradiction) != contradiction) continue;
      for (std::uint64_t rest = contradiction; rest != 0; rest &= rest - 1)
        if (const auto seed = unexplored(set & ~(rest & ~(rest - 1)), all)) return seed;
      return std::nullopt;
    }
    const bool known = std::any_of(largest_.begin(), largest_.end(),
                                   [&](std::uint64_t larger) { return (set & ~larger) == 0; });
    return known ? std::nullopt : std::optional<std::uint64_t>(set);
  }

  std::uint64_t grown(std::uint64_t set, std::uint64_t all) {
    for (std::uint64_t rest = all & ~set; rest != 0; rest &= rest - 1) {
      const std::uint64_t more = set | (rest & ~(rest - 1));
      if (consistent(more)) set = more;
    }
    return set;
  }

  std::uint64_t shrunk(std::uint64_t set) {
    for (std::uint64_t rest = set; rest != 0; rest &= rest - 1) {
      const std::uint64_t fewer = set & ~(rest & ~(rest - 1));
      if (!consistent(fewer)) set = fewer;
    }
    return set;
  }

  const IntervalSystem& system_;
  std::size_t steps_;
  SmallestSets found_;
  std::vector<std::uint64_t> largest_;
};

}  // namespace

SmallestSets smallest_contradictions(const IntervalSystem& system, std::size_t most_steps) {
  return Enumeration(system, most_steps).run();
}

}  // namespace skeinproof
