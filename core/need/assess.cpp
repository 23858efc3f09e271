// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "core/need/area.h"
#include "core/need/assessment.h"
#include "core/need/role_need.h"
#include "core/need/scaled_sample.h"

namespace skeinproof {
namespace {

RoleNeed need_of(const NeedContext& context, const Role& role, std::vector<NotWorkedOut>& out) {
  RoleNeed need{role.id, role.label, {}};
  const RoleBasis basis = role_basis(context, role);
  if (!basis.calibration)
    if (const auto why = why_not_fixed_and_growing(context, basis.samples))
      out.push_back({role.label + ", fixed and growing part", why->message(), {"Weighings", 0}});
  need.sizes.reserve(context.pattern().sizes.size());
  for (std::size_t i = 0; i < context.pattern().sizes.size(); ++i)
    need.sizes.push_back(role_need(context, basis, i));
  return need;
}

void name_what_is_missing(const Pattern& pattern, const RoleNeed& need, std::vector<NotWorkedOut>& out) {
  std::string sizes, because;
  for (std::size_t i = 0; i < need.sizes.size(); ++i) {
    if (need.sizes[i].known) continue;
    if (!because.empty() && because != need.sizes[i].missing) continue;
    because = need.sizes[i].missing;
    sizes += (sizes.empty() ? "" : ", ") + pattern.sizes[i].label;
  }
  if (sizes.empty()) return;
  const bool all =
      std::none_of(need.sizes.begin(), need.sizes.end(), [](const SizeNeed& s) { return s.known; });
  out.push_back({all ? need.label : need.label + ", size " + sizes, because, {"Pieces", 0}});
}

std::vector<std::optional<int>> totals(const std::vector<RoleNeed>& roles, std::size_t sizes) {
  std::vector<std::optional<int>> total(sizes);
  if (roles.empty()) return total;
  for (std::size_t i = 0; i < sizes; ++i) {
    int sum = 0;
    const bool all = std::all_of(roles.begin(), roles.end(), [&](const RoleNeed& role) {
      sum += role.sizes[i].skeins.value_or(0);
      return role.sizes[i].skeins.has_value();
    });
    if (all) total[i] = sum;
  }
  return total;
}

// A colour that takes at most the house's share of one skein in every size gets a note of its longest need.
std::optional<LengthNote> length_note(const Pattern& pattern, const RoleNeed& need) {
  const HouseStyle& house = pattern.house();
  if (!house.length_notes || house.note_step_m <= 0) return std::nullopt;
  Metres longest;
  for (const SizeNeed& size : need.sizes) {
    if (!size.known || !size.fraction || *size.fraction > house.length_note_share + 1e-9) return std::nullopt;
    longest = std::max(longest, size.planned);
  }
  if (longest <= metres(0)) return std::nullopt;
  LengthNote note{
      need.role, metres(std::ceil(longest.value() / house.note_step_m - 1e-9) * house.note_step_m), {}};
  for (const Size& size : pattern.sizes) note.sizes.push_back(size.label);
  return note;
}

}  // namespace

Assessment assess(const Pattern& pattern) {
  Assessment assessment;
  const NeedContext context(pattern);
  for (const Role& role : pattern.roles) {
    assessment.roles.push_back(need_of(context, role, assessment.not_worked_out));
    name_what_is_missing(pattern, assessment.roles.back(), assessment.not_worked_out);
    if (auto note = length_note(pattern, assessment.roles.back()))
      assessment.length_notes.push_back(std::move(*note));
  }
  for (std::size_t i = 0; i < pattern.sizes.size(); ++i) {
    const auto area = fabric_area(context, i);
    assessment.area_m2.push_back(area ? std::optional(area->m2) : std::nullopt);
  }
  assessment.total_skeins = totals(assessment.roles, pattern.sizes.size());
  assessment.calibrations = calibrations(context, &assessment.not_worked_out);
  return assessment;
}

Step explain(const Pattern& pattern, RoleId id, std::size_t size_index, Layer layer,
             const NumberStyle& style) {
  Step step;
  const Role* role = pattern.role(id);
  if (role == nullptr || size_index >= pattern.sizes.size()) return step;
  const NeedContext context(pattern);
  const SizeNeed need = role_need(context, role_basis(context, *role), size_index, &step, style);
  if (!need.known || layer == Layer::planned) return step;
  Step planned = step.unit == FigureUnit::skeins ? std::move(step.parts.front()) : std::move(step);
  Step knitted = std::move(planned.parts.back());
  if (layer == Layer::knitted) return knitted;
  Step with_swatch;
  with_swatch.label = "With swatch";
  with_swatch.how = "knitted + swatch";
  with_swatch.figure = (need.knitted + need.swatch).value();
  with_swatch.unit = FigureUnit::metres;
  with_swatch.parts = {std::move(planned.parts[1]), std::move(knitted)};
  return with_swatch;
}

}  // namespace skeinproof
