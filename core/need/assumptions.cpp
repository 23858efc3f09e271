// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/assumptions.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <string>
#include <tuple>

#include "core/units/show.h"

namespace skeinproof {
namespace {

// Two lengths that differ by less than this share are the same length worked out twice.
constexpr double same_length = 1e-9;

bool differs(Metres before, Metres after) {
  return std::abs((after - before).value()) > same_length * std::abs(before.value());
}

bool differs(const std::optional<Metres>& before, const std::optional<Metres>& after) {
  if (before && after) return differs(*before, *after);
  return before.has_value() != after.has_value();
}
bool differs(const std::optional<double>& before, const std::optional<double>& after) {
  constexpr double same_chance = 1e-9;
  if (before && after) return std::abs(*after - *before) > same_chance;
  return before.has_value() != after.has_value();
}

bool moved(const NeedMove& need) {
  return differs(need.planned_before, need.planned_after) || differs(need.high_before, need.high_after) ||
         differs(need.chance_before, need.chance_after) || differs(need.told_before, need.told_after) ||
         need.crosses_a_step();
}

std::optional<Metres> left_open(const SizeEvidence& evidence) {
  if (!evidence.printed_counts) return std::nullopt;
  return evidence.printed_counts->high - evidence.printed_counts->low;
}

NeedMove need_move(RoleId role, std::size_t size, const SizeNeed& before, const SizeNeed& after,
                   const SizeEvidence& told_before, const SizeEvidence& told_after) {
  NeedMove move;
  move.role = role;
  move.size = size;
  if (before.known && after.known && before.planned > metres(0)) {
    move.planned_before = before.planned;
    move.planned_after = after.planned;
    move.high_before = before.high;
    move.high_after = after.high;
    move.skeins_before = before.skeins;
    move.skeins_after = after.skeins;
  }
  move.chance_before = told_before.chance_sufficient;
  move.chance_after = told_after.chance_sufficient;
  move.told_before = left_open(told_before);
  move.told_after = left_open(told_after);
  return move;
}

double share_of(Metres before, Metres after) { return before > metres(0) ? after / before - 1 : 0; }

double largest(const std::vector<NeedMove>& needs, double (NeedMove::*measure)() const) {
  double most = 0;
  for (const NeedMove& need : needs)
    if (std::abs((need.*measure)()) > std::abs(most)) most = (need.*measure)();
  return most;
}

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

AsItStands::AsItStands(const Pattern& now)
    : pattern(now), assessment(assess(now)), evidence(gather_evidence(now, assessment)) {}

double NeedMove::planned_share() const { return share_of(planned_before, planned_after); }
double NeedMove::high_share() const { return share_of(high_before, high_after); }
double NeedMove::chance_points() const {
  return chance_before && chance_after ? *chance_after - *chance_before : 0;
}
double NeedMove::told_share() const {
  return told_before && told_after ? share_of(*told_before, *told_after) : 0;
}

double ConstantMove::largest_planned_share() const { return largest(needs, &NeedMove::planned_share); }
double ConstantMove::largest_high_share() const { return largest(needs, &NeedMove::high_share); }
double ConstantMove::largest_chance_points() const { return largest(needs, &NeedMove::chance_points); }
double ConstantMove::largest_told_share() const { return largest(needs, &NeedMove::told_share); }
std::size_t ConstantMove::counts_moved() const {
  return static_cast<std::size_t>(
      std::count_if(needs.begin(), needs.end(), [](const NeedMove& need) { return need.crosses_a_step(); }));
}

ConstantMove move_constant(const AsItStands& now, std::string_view key, double value) {
  ConstantMove move{constant(now.pattern, key), value, {}};
  const Pattern changed = with_constant(now.pattern, key, value);
  const AsItStands then(changed);
  for (std::size_t r = 0; r < now.assessment.roles.size(); ++r) {
    const RoleNeed& before = now.assessment.roles[r];
    for (std::size_t i = 0; i < before.sizes.size(); ++i) {
      const NeedMove need = need_move(before.role, i, before.sizes[i], then.assessment.roles[r].sizes[i],
                                      now.evidence[r].sizes[i], then.evidence[r].sizes[i]);
      if (moved(need)) move.needs.push_back(need);
    }
  }
  return move;
}

namespace {

double larger(const Sensitivity& both, double (ConstantMove::*measure)() const) {
  return std::max(std::abs((both.lower.*measure)()), std::abs((both.higher.*measure)()));
}

}  // namespace

double Sensitivity::largest_planned_share() const {
  return larger(*this, &ConstantMove::largest_planned_share);
}
double Sensitivity::largest_high_share() const { return larger(*this, &ConstantMove::largest_high_share); }
double Sensitivity::largest_chance_points() const {
  return larger(*this, &ConstantMove::largest_chance_points);
}
double Sensitivity::largest_told_share() const { return larger(*this, &ConstantMove::largest_told_share); }
std::size_t Sensitivity::counts_moved() const { return lower.counts_moved() + higher.counts_moved(); }

Sensitivity sensitivity_to(const AsItStands& now, const Constant& row, double share) {
  const double value = constant(now.pattern, row.key);
  const auto to = [&](double factor) {
    return move_constant(now, row.key, std::clamp(value * factor, row.low, row.high));
  };
  return {&row, to(1 - share), to(1 + share)};
}

std::vector<Sensitivity> rank_constants(const AsItStands& now, double share) {
  std::vector<Sensitivity> ranked;
  for (const Constant& row : constants()) {
    Sensitivity one = sensitivity_to(now, row, share);
    if (!one.lower.needs.empty() || !one.higher.needs.empty()) ranked.push_back(std::move(one));
  }
  const auto rank = [](const Sensitivity& one) {
    return std::make_tuple(one.largest_planned_share(), one.largest_high_share(), one.largest_chance_points(),
                           one.largest_told_share());
  };
  std::stable_sort(ranked.begin(), ranked.end(),
                   [&](const Sensitivity& a, const Sensitivity& b) { return rank(a) > rank(b); });
  return ranked;
}

}  // namespace skeinproof
