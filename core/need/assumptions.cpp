// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/assumptions.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <string>

#include "core/units/show.h"

namespace skeinproof {
namespace {

// Two lengths that differ by less than this share are the same length worked out twice.
constexpr double same_length = 1e-9;

bool differs(Metres before, Metres after) {
  return std::abs((after - before).value()) > same_length * std::abs(before.value());
}

bool moved(const NeedMove& need) {
  return differs(need.planned_before, need.planned_after) || differs(need.high_before, need.high_after) ||
         need.crosses_a_step();
}

double farther(double one, double other) { return std::abs(other) > std::abs(one) ? other : one; }

Pattern with_constant(const Pattern& pattern, std::string_view key, double value) {
  Pattern changed = pattern;
  auto own = std::find_if(changed.constants.begin(), changed.constants.end(),
                          [&](const ConstantOverride& one) { return one.key == key; });
  if (own == changed.constants.end()) own = changed.constants.insert(own, {std::string(key), {}});
  own->value = {value, {}};
  return changed;
}

}  // namespace

Expected<void> set_constant(Pattern& pattern, std::string_view key, std::optional<Entered<double>> value) {
  const auto rows = constants();
  const auto row =
      std::find_if(rows.begin(), rows.end(), [&](const Constant& one) { return one.key == key; });
  assert(row != rows.end());
  if (!value) {
    std::erase_if(pattern.constants, [&](const ConstantOverride& one) { return one.key == key; });
    return {};
  }
  if (!(value->value >= row->low && value->value <= row->high))
    return failure(ErrorKind::out_of_range, exact_number(value->value),
                   "between " + exact_number(row->low) + " and " + exact_number(row->high));
  pattern = with_constant(pattern, key, value->value);
  std::find_if(pattern.constants.begin(), pattern.constants.end(), [&](const ConstantOverride& one) {
    return one.key == key;
  })->value = *value;
  return {};
}

double ConstantMove::largest_planned_share() const {
  double largest = 0;
  for (const NeedMove& need : needs) largest = farther(largest, need.planned_share());
  return largest;
}
double ConstantMove::largest_high_share() const {
  double largest = 0;
  for (const NeedMove& need : needs) largest = farther(largest, need.high_share());
  return largest;
}
std::size_t ConstantMove::counts_moved() const {
  return static_cast<std::size_t>(
      std::count_if(needs.begin(), needs.end(), [](const NeedMove& need) { return need.crosses_a_step(); }));
}

ConstantMove move_constant(const Pattern& pattern, const Assessment& now, std::string_view key,
                           double value) {
  ConstantMove move{constant(pattern, key), value, {}};
  const Assessment then = assess(with_constant(pattern, key, value));
  for (std::size_t r = 0; r < now.roles.size(); ++r) {
    for (std::size_t i = 0; i < now.roles[r].sizes.size(); ++i) {
      const SizeNeed& before = now.roles[r].sizes[i];
      const SizeNeed& after = then.roles[r].sizes[i];
      if (!before.known || !after.known || !(before.planned.value() > 0)) continue;
      const NeedMove need{now.roles[r].role, i,          before.planned, after.planned,
                          before.high,       after.high, before.skeins,  after.skeins};
      if (moved(need)) move.needs.push_back(need);
    }
  }
  return move;
}

double Sensitivity::largest_planned_share() const {
  return std::max(std::abs(lower.largest_planned_share()), std::abs(higher.largest_planned_share()));
}
double Sensitivity::largest_high_share() const {
  return std::max(std::abs(lower.largest_high_share()), std::abs(higher.largest_high_share()));
}
std::size_t Sensitivity::counts_moved() const { return lower.counts_moved() + higher.counts_moved(); }

Sensitivity sensitivity_to(const Pattern& pattern, const Assessment& now, const Constant& row, double share) {
  const double value = constant(pattern, row.key);
  const auto to = [&](double factor) {
    return move_constant(pattern, now, row.key, std::clamp(value * factor, row.low, row.high));
  };
  return {&row, to(1 - share), to(1 + share)};
}

std::vector<Sensitivity> rank_constants(const Pattern& pattern, const Assessment& now, double share) {
  std::vector<Sensitivity> ranked;
  for (const Constant& row : constants()) {
    Sensitivity one = sensitivity_to(pattern, now, row, share);
    if (!one.lower.needs.empty() || !one.higher.needs.empty()) ranked.push_back(std::move(one));
  }
  std::stable_sort(ranked.begin(), ranked.end(), [](const Sensitivity& a, const Sensitivity& b) {
    if (a.largest_planned_share() != b.largest_planned_share())
      return a.largest_planned_share() > b.largest_planned_share();
    return a.largest_high_share() > b.largest_high_share();
  });
  return ranked;
}

}  // namespace skeinproof
