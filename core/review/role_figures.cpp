// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/role_figures.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/base/text.h"
#include "core/need/layer.h"
#include "core/review/finding_words.h"
#include "core/review/item_and_wearer.h"
#include "core/review/printed_words.h"

namespace skeinproof {
namespace {

// Sizes are matched by label, or by their order where the labels are others but as many.
std::vector<std::optional<std::size_t>> sizes_in_force(const ReviewInput& input) {
  const auto& labels = input.printed.size_labels();
  std::vector<std::optional<std::size_t>> sizes;
  for (const std::string& label : labels) sizes.push_back(input.pattern.size_index(label));
  const bool none =
      std::none_of(sizes.begin(), sizes.end(), [](const auto& size) { return size.has_value(); });
  if (none && labels.size() == input.pattern.sizes.size())
    for (std::size_t i = 0; i < sizes.size(); ++i) sizes[i] = i;
  return sizes;
}

void take_put_up(const ReviewInput& input, RoleFigures& role) {
  if (role.fact != nullptr)
    if (const Yarn* yarn = input.pattern.yarn(role.fact->yarn)) {
      if (yarn->put_up.length) role.skein_m = yarn->put_up.length->value.value();
      if (yarn->put_up.weight) role.skein_g = yarn->put_up.weight->value.value();
    }
  const int index = role.printed->yarn;
  if (index < 0 || static_cast<std::size_t>(index) >= input.printed.yarns().size()) return;
  const PrintedYarn& yarn = input.printed.yarns()[static_cast<std::size_t>(index)];
  if (!role.skein_m) role.skein_m = yarn.metres;
  if (!role.skein_g) role.skein_g = yarn.grams;
}

// Counts in grams or metres by role, metric before imperial.
std::map<std::string_view, const Statement*> measured_counts(const PrintedView& printed) {
  std::map<std::string_view, const Statement*> found;
  for (const Statement* count : printed.all(StatementKind::count)) {
    const bool metric = count->unit == PrintedUnit::metre || count->unit == PrintedUnit::gram;
    const bool imperial = count->unit == PrintedUnit::yard || count->unit == PrintedUnit::ounce;
    if (!metric && !imperial) continue;
    const auto [at, added] = found.emplace(count->subject, count);
    const bool was_imperial = at->second->unit == PrintedUnit::yard || at->second->unit == PrintedUnit::ounce;
    if (!added && metric && was_imperial) at->second = count;
  }
  return found;
}

std::optional<double> metres_of(double figure, PrintedUnit unit, const RoleFigures& role) {
  const auto by_weight = [&](double grams) -> std::optional<double> {
    if (!role.skein_m || !role.skein_g || !(*role.skein_g > 0)) return std::nullopt;
    return grams * *role.skein_m / *role.skein_g;
  };
  switch (unit) {
    case PrintedUnit::metre:
      return figure;
    case PrintedUnit::yard:
      return figure * metres_per_yard;
    case PrintedUnit::gram:
      return by_weight(figure);
    case PrintedUnit::ounce:
      return by_weight(figure * grams_per_ounce);
    default:
      return std::nullopt;
  }
}

std::vector<std::optional<double>> measurement_behind(const ReviewInput& input, const Statement& list) {
  const auto sizes = sizes_in_force(input);
  const bool to_fit = list.qualifier == "to fit";
  const std::string subject = compared(list.subject);
  std::vector<std::optional<double>> values(sizes.size());
  for (const Measurement& measurement : input.pattern.measurements) {
    if ((measurement.fit == Fit::to_fit) != to_fit || compared(measurement.name) != subject) continue;
    for (std::size_t i = 0; i < sizes.size(); ++i)
      if (const auto* value = sizes[i] ? measurement.values.find(*sizes[i]) : nullptr)
        values[i] = list.unit == PrintedUnit::inch ? in_inches(value->value) : value->value.value();
    return values;
  }
  return values;
}

std::optional<double> total_in_force(const ReviewInput& input, std::size_t size) {
  if (const auto* typed = input.pattern.printed_total.find(size)) return typed->value;
  if (size < input.assessment.total_skeins.size() && input.assessment.total_skeins[size])
    return *input.assessment.total_skeins[size];
  return std::nullopt;
}

}  // namespace

const SizeNeed* RoleFigures::need_at(std::size_t printed_size) const {
  if (need == nullptr || printed_size >= in_force.size() || !in_force[printed_size]) return nullptr;
  const std::size_t size = *in_force[printed_size];
  if (size >= need->sizes.size() || !need->sizes[size].known) return nullptr;
  return need->sizes[size].knitted > metres(0) ? &need->sizes[size] : nullptr;
}

std::optional<double> RoleFigures::printed_skeins(std::size_t printed_size) const {
  if (!printed->count) return std::nullopt;
  const PrintedValue* value = value_at(*printed->count, printed_size);
  return value != nullptr ? value->number : std::nullopt;
}

std::optional<int> RoleFigures::count_in_force(std::size_t printed_size) const {
  const auto stated = printed_skeins(printed_size);
  if (fact != nullptr && printed_size < in_force.size() && in_force[printed_size])
    if (const auto* count = fact->printed_count.find(*in_force[printed_size]))
      if (!stated || count->value != *stated) return static_cast<int>(std::lround(count->value));
  const SizeNeed* known = need_at(printed_size);
  return known != nullptr ? known->skeins : std::nullopt;
}

std::optional<int> RoleFigures::skeins_needed(std::size_t printed_size) const {
  const SizeNeed* known = need_at(printed_size);
  if (known == nullptr || !skein_m || !(*skein_m > 0)) return std::nullopt;
  return whole_skeins(known->planned, metres(*skein_m));
}

std::vector<RoleFigures> role_figures(const ReviewInput& input) {
  std::vector<RoleFigures> all;
  const auto sizes = sizes_in_force(input);
  const auto measured = measured_counts(input.printed);
  for (const PrintedRole& printed : input.printed.roles()) {
    RoleFigures role;
    role.printed = &printed;
    role.in_force = sizes;
    if (printed.fact) {
      role.fact = input.pattern.role(printed.fact);
      for (const RoleNeed& need : input.assessment.roles)
        if (need.role == printed.fact) role.need = &need;
      for (const RoleEvidence& evidence : input.evidence)
        if (evidence.role == printed.fact) role.evidence = &evidence;
    }
    if (const auto at = measured.find(printed.label); at != measured.end()) role.measured = at->second;
    take_put_up(input, role);
    all.push_back(std::move(role));
  }
  return all;
}

std::string PrintedSupply::words(const FindingWords& words) const {
  if (skeins)
    return words.skeins(*skeins) + " × " + words.metres(metres / *skeins) + " = " + words.metres(metres);
  const std::string figure = words.number(*value->number) + " " + std::string(word_of(statement->unit));
  return statement->unit == PrintedUnit::metre ? figure : figure + " = " + words.metres(metres);
}

std::string PrintedSupply::given(const FindingWords& words) const {
  return skeins ? words.skeins(*skeins) + ", " + words.metres(metres) : this->words(words);
}

std::optional<PrintedSupply> printed_supply(const ReviewInput& input, const RoleFigures& role,
                                            std::size_t printed_size) {
  PrintedSupply supply;
  supply.statement = role.printed->count ? role.printed->count->statement : role.measured;
  if (supply.statement == nullptr) return std::nullopt;
  supply.value = role.printed->count ? value_at(*role.printed->count, printed_size)
                                     : value_at(input.printed.list(*supply.statement), printed_size);
  if (supply.value == nullptr || !supply.value->number) return std::nullopt;
  std::optional<double> length;
  if (!role.printed->count) {
    length = metres_of(*supply.value->number, supply.statement->unit, role);
  } else if (role.skein_m) {
    supply.skeins = *supply.value->number;
    length = *supply.skeins * *role.skein_m;
  }
  if (!length || !(*length > 0)) return std::nullopt;
  supply.metres = *length;
  return supply;
}

void for_each_need(const ReviewInput& input, Findings& findings, const NeedVisit& visit) {
  std::vector<std::string> without;
  const auto roles = role_figures(input);
  for (const RoleFigures& role : roles) {
    bool any = false;
    for (std::size_t i = 0; i < input.printed.sizes(); ++i)
      if (const SizeNeed* need = role.need_at(i)) {
        any = true;
        visit(role, i, *need);
      }
    if (!any) without.push_back(role.printed->label);
  }
  if (roles.empty())
    findings.cannot("no colours were read in the yarn block", "a block that lists the colours");
  else if (!without.empty())
    findings.cannot("no need is known for " + listed(without),
                    "the stitches of its pieces, or a weighed sample");
}

void for_each_supply(const ReviewInput& input, Findings& findings, const SupplyVisit& visit) {
  for_each_need(input, findings, [&](const RoleFigures& role, std::size_t size, const SizeNeed& need) {
    if (const auto supply = printed_supply(input, role, size)) visit(role, size, need, *supply);
  });
}

const PrintedValue* value_at(const PrintedList& list, std::size_t size) {
  if (list.printed == 1 && list.statement != nullptr && !list.statement->values.empty())
    return &list.statement->values.front();
  return size < list.values.size() ? list.values[size] : nullptr;
}

std::vector<std::optional<double>> facts_behind(const ReviewInput& input, const Statement& list) {
  const std::size_t n = input.printed.sizes();
  std::vector<std::optional<double>> values(n);
  if (list.kind == StatementKind::measurement) return measurement_behind(input, list);
  if (list.kind == StatementKind::total_count) {
    const auto sizes = sizes_in_force(input);
    for (std::size_t i = 0; i < n; ++i)
      if (sizes[i]) values[i] = total_in_force(input, *sizes[i]);
    return values;
  }
  if (list.kind != StatementKind::count || list.unit != PrintedUnit::skein) return values;
  for (const RoleFigures& role : role_figures(input)) {
    if (role.printed->label != list.subject) continue;
    for (std::size_t i = 0; i < n; ++i) {
      const auto* typed = role.fact != nullptr && role.in_force[i]
                              ? role.fact->printed_count.find(*role.in_force[i])
                              : nullptr;
      const SizeNeed* need = role.need_at(i);
      if (typed != nullptr)
        values[i] = typed->value;
      else if (need != nullptr && need->skeins)
        values[i] = *need->skeins;
    }
  }
  return values;
}

Pair pair_of(const ReviewInput& input) {
  constexpr std::string_view in_pairs[] = {"sock",   "stocking", "slipper", "bootie",       "bootee",
                                           "mitten", "mitt",     "glove",   "wrist warmer", "leg warmer"};
  const std::string item = item_of(input).words;
  for (const std::string_view one : in_pairs)
    if (says(item, {one})) return {true, std::string(one)};
  const auto& pieces = input.pattern.pieces;
  const bool twos = !pieces.empty() && std::all_of(pieces.begin(), pieces.end(),
                                                   [](const Piece& piece) { return piece.copies == 2; });
  return {twos, "item"};
}

}  // namespace skeinproof
