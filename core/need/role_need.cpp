// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/role_need.h"

#include <algorithm>
#include <cmath>

#include "core/need/plan.h"
#include "core/need/scaled_sample.h"

namespace skeinproof {
namespace {

// A role that goes along with another needs that role's parts in its own strands, beside its own.
RoleParts parts_with_leader(const NeedContext& context, const Role& role, const PartsWanted& wanted,
                            Step* step, const NumberStyle& style) {
  RoleParts sum = role_parts(context, role, wanted, step, style);
  const Role* leader = role.goes_along_with ? context.pattern().role(role.goes_along_with) : nullptr;
  for (std::size_t depth = 0; leader != nullptr && depth < context.pattern().roles.size(); ++depth) {
    Role along = *leader;
    along.strands = role.strands;
    const RoleParts more = role_parts(context, along, wanted, step, style);
    if (sum.missing.empty() && !more.missing.empty()) {
      sum.missing = more.missing;
      sum.missing_place = more.missing_place;
    }
    const double whole = (sum.total() + more.total()).value();
    if (whole > 0) sum.error = (sum.error * sum.total().value() + more.error * more.total().value()) / whole;
    if (sum.error_because.empty()) sum.error_because = more.error_because;
    sum.worked_out = sum.worked_out || more.worked_out;
    sum.parts.insert(sum.parts.end(), more.parts.begin(), more.parts.end());
    sum.stitches += more.stitches;
    sum.floats += more.floats;
    sum.extra += more.extra;
    sum.all_loops_typed = sum.all_loops_typed && more.all_loops_typed;
    leader = leader->goes_along_with ? context.pattern().role(leader->goes_along_with) : nullptr;
  }
  return sum;
}

PlanInputs plan_inputs(const NeedContext& context, const RoleBasis& basis) {
  PlanInputs inputs;
  if (basis.role->swatch) inputs.swatch = basis.role->swatch->value;
  if (basis.yarn != nullptr && basis.yarn->put_up.length) inputs.skein = basis.yarn->put_up.length->value;
  if (context.pattern().count_joins) inputs.join_m = context.constant_of("join_m");
  inputs.brimful_share = context.constant_of("brimful_share");
  inputs.tips_over_share = context.constant_of("tips_over_share");
  return inputs;
}

Road by_stitches(const NeedContext& context, const RoleBasis& basis, const RoleParts& parts) {
  Road road{NeedEvidence::stitches, parts.total(), parts.error, parts.error_because};
  constexpr double backed_within = 0.04;
  // A sample that agrees with the loops in force takes them out of the model's error.
  if (basis.calibration && std::abs(basis.calibration->factor - 1) <= backed_within &&
      basis.calibration->error < road.error) {
    road.error = basis.calibration->error;
    road.because = "backed by the weighed sample of size " +
                   context.pattern().sizes[basis.calibration->samples.front().size_index].label;
  }
  return road;
}

Road by_sample(const NeedContext& context, const RoleCalibration& calibration, const RoleParts& parts) {
  return Road{NeedEvidence::weighed_sample, parts.stitches * calibration.factor + parts.floats + parts.extra,
              calibration.error,
              "scaled by stitches from the weighed sample of size " +
                  context.pattern().sizes[calibration.samples.front().size_index].label};
}

bool prefers_sample(const Pattern& pattern, const RoleParts& parts) {
  if (pattern.basis == Basis::automatic) return !parts.all_loops_typed;
  return pattern.basis == Basis::weighed_sample;
}

Evidence evidence_of(const Road& road, const PlanInputs& inputs, const HouseStyle& house) {
  Evidence evidence;
  evidence.kind = road.kind;
  evidence.knitted = road.knitted;
  evidence.planned = planned_length(road.knitted, inputs, house);
  evidence.error = road.error;
  evidence.low = planned_length(road.knitted * std::max(0.0, 1 - road.error), inputs, house);
  evidence.high = planned_length(road.knitted * (1 + road.error), inputs, house);
  evidence.because = road.because;
  return evidence;
}

void take_best_interval(SizeNeed& need) {
  const auto width = [](const Evidence& evidence) { return (evidence.high - evidence.low).value(); };
  const Evidence* best = nullptr;
  for (const Evidence& evidence : need.all_evidence) {
    const bool narrower = best == nullptr || width(evidence) < width(*best) * (1 - 1e-9);
    const bool as_narrow = best != nullptr && width(evidence) <= width(*best) * (1 + 1e-3);
    if (narrower || (as_narrow && evidence.kind == need.evidence)) best = &evidence;
  }
  if (best == nullptr) return;
  need.low = best->low;
  need.high = best->high;
}

Step make_step(std::string label, std::string how, double figure, FigureUnit unit, int decimals,
               Ground ground, StepPlace place) {
  Step step;
  step.label = std::move(label);
  step.how = std::move(how);
  step.figure = figure;
  step.unit = unit;
  step.decimals = decimals;
  step.ground = ground;
  step.place = std::move(place);
  return step;
}

// Skeins > Planned > Allowance, Swatch, Knitted, around the working of the knitted length.
void write_plan_steps(Step& top, Step knitted, const SizeNeed& need, const RoleBasis& basis,
                      const PlanInputs& inputs, const HouseStyle& house, const NumberStyle& style) {
  const auto number = [&](double value, int decimals) { return show_number(value, decimals, style); };
  const StepPlace sheet{"Quantities", 0};
  Step planned = make_step("Planned", "(knitted + swatch) × " + number(1 + house.allowance_pct / 100, 3),
                           need.planned.value(), FigureUnit::metres, 2, Ground::none, {});
  planned.parts.push_back(
      make_step("Allowance",
                number(house.allowance_pct, 1) + " % of " + number((need.knitted + need.swatch).value(), 2),
                need.allowance.value(), FigureUnit::metres, 2, Ground::house, sheet));
  planned.parts.push_back(
      make_step("Swatch", house.swatch_counted ? basis.role->label : "not counted by the house",
                need.swatch.value(), FigureUnit::metres, 2, Ground::sheet, {"Yarns", basis.role->id.value}));
  planned.parts.push_back(std::move(knitted));
  if (!need.skeins || !inputs.skein) {
    top = std::move(planned);
    return;
  }
  const bool down = *need.skeins < *need.fraction - 1e-9;
  top = make_step("Skeins",
                  number(need.planned.value(), 2) + " ÷ " + number(inputs.skein->value(), 1) + " = " +
                      number(*need.fraction, 3) + (down ? ", a hair over: rounded down" : ", rounded up"),
                  *need.skeins, FigureUnit::skeins, 0, Ground::none, {});
  top.parts.push_back(std::move(planned));
  const PutUp& put_up = basis.yarn->put_up;
  top.parts.push_back(make_step("In a " + std::string(word_of(put_up.word)),
                                put_up.weight ? "per " + number(put_up.weight->value.value(), 1) + " g" : "",
                                inputs.skein->value(), FigureUnit::metres, 1, Ground::label,
                                {"Yarns", basis.yarn->id.value}));
}

}  // namespace

RoleBasis role_basis(const NeedContext& context, const Role& role) {
  RoleBasis basis;
  basis.role = &role;
  basis.yarn = context.pattern().yarn(role.yarn);
  basis.samples = sample_lengths(context, role);
  basis.calibration = role_calibration(context, role);
  const Role* leader = role.goes_along_with ? context.pattern().role(role.goes_along_with) : nullptr;
  if (!basis.calibration && leader != nullptr) basis.calibration = role_calibration(context, *leader);
  return basis;
}

SizeNeed role_need(const NeedContext& context, const RoleBasis& basis, std::size_t size_index, Step* step,
                   const NumberStyle& style) {
  const Pattern& pattern = context.pattern();
  const HouseStyle& house = pattern.house();
  const PlanInputs inputs = plan_inputs(context, basis);
  PartsWanted wanted;
  wanted.size_index = size_index;
  const RoleParts parts = parts_with_leader(context, *basis.role, wanted, nullptr, style);

  SizeNeed need;
  std::vector<Road> roads;
  const bool stitches_known = parts.any() && parts.missing.empty();
  if (stitches_known) {
    roads.push_back(by_stitches(context, basis, parts));
    if (basis.calibration) roads.push_back(by_sample(context, *basis.calibration, parts));
  }
  Step knitted = make_step("Knitted", "", 0, FigureUnit::metres, 2, Ground::none, {});
  if (!stitches_known && !basis.samples.empty())
    if (const auto scaled = scaled_sample(context, basis.samples, size_index, &knitted, style)) {
      roads.push_back(scaled->road);
      if (step != nullptr)
        for (const SampleLength* sample : scaled->rests_on)
          knitted.parts.push_back(sample_step(context, *basis.role, *sample, style));
    }
  if (roads.empty()) {
    need.missing = !parts.missing.empty() ? parts.missing
                   : context.parts_of(basis.role->id).empty() && !basis.role->goes_along_with
                       ? "no piece is knitted in it and no sample of it was weighed"
                       : "a finished circumference in this size and in the sample's";
    if (step != nullptr)
      *step = make_step("Not known", need.missing, 0, FigureUnit::none, 0, Ground::none, {});
    return need;
  }
  const std::size_t chosen = stitches_known && roads.size() > 1 && prefers_sample(pattern, parts) ? 1 : 0;
  const bool calibrated = roads[chosen].kind == NeedEvidence::weighed_sample;
  need.evidence = roads[chosen].kind;
  plan(need, roads[chosen].knitted, inputs, house);
  need.parts = parts.parts;
  if (calibrated)
    for (PartMetres& part : need.parts) part.stitches *= basis.calibration->factor;
  if (!stitches_known) need.parts.clear();
  for (const Road& road : roads) need.all_evidence.push_back(evidence_of(road, inputs, house));
  take_best_interval(need);

  if (step == nullptr) return need;
  knitted.figure = need.knitted.value();
  if (stitches_known) {
    Step calibration;
    if (calibrated) {
      calibration = calibration_step(context, *basis.role, *basis.calibration, style);
      wanted.loop_factor = basis.calibration->factor;
      wanted.calibration = &calibration;
    }
    parts_with_leader(context, *basis.role, wanted, &knitted, style);
    knitted.how =
        knitted.parts.size() == 1 ? "one part" : "sum of " + std::to_string(knitted.parts.size()) + " parts";
  }
  write_plan_steps(*step, std::move(knitted), need, basis, inputs, house, style);
  return need;
}

}  // namespace skeinproof
