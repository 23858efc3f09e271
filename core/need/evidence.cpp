// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/evidence.h"

#include <algorithm>
#include <cmath>

#include "core/need/constants.h"
#include "core/need/layer.h"
#include "core/need/role_need.h"

namespace skeinproof {
namespace {

LengthEvidence length_evidence(const Evidence& evidence) {
  LengthEvidence length;
  length.ground =
      evidence.kind == NeedEvidence::stitches ? LengthGround::stitches : LengthGround::weighed_sample;
  length.low = evidence.low;
  length.high = evidence.high;
  length.knitted = evidence.knitted;
  length.planned = evidence.planned;
  length.error = evidence.error;
  return length;
}

// The coarsest scale among the samples that calibrate a role, as a deviation of its reading.
double scale_deviation_of(const RoleBasis& basis) {
  double worst = 0;
  if (!basis.calibration) return worst;
  for (const SampleLength& sample : basis.calibration->samples) {
    const auto weighed = std::find_if(sample.weighing->roles.begin(), sample.weighing->roles.end(),
                                      [&](const WeighedRole& one) { return one.role == basis.role->id; });
    if (weighed == sample.weighing->roles.end() || !weighed->reading || !sample.weighing->scale_step)
      continue;
    const Grams notions = weighed->notions ? weighed->notions->value : grams(0);
    worst = std::max(worst,
                     scale_deviation(sample.weighing->scale_step->value, weighed->reading->value - notions));
  }
  return worst;
}

// Looks at one role size by size.
class Gatherer {
 public:
  Gatherer(const NeedContext& context, const Role& role, const Expected<StepReading>& steps)
      : context_(context), steps_(steps) {
    const Pattern& pattern = context.pattern();
    const RoleBasis basis = role_basis(context, role);
    supply_ = supply_errors(pattern, basis.yarn);
    skein_ = skein_length(pattern, role.id);
    scale_ = scale_deviation_of(basis);
    hand_ = context.constant_of("sigma_hand_pct") / 100;
    weighed_error_ = context.constant_of("error_weighed_pct") / 100;
    if (basis.calibration) calibrated_error_ = basis.calibration->error;
  }

  SizeEvidence gather(const SizeNeed& need, std::size_t size_index) const {
    SizeEvidence size;
    for (const Evidence& one : need.all_evidence)
      (one.kind == NeedEvidence::stitches ? size.stitches : size.sample) = length_evidence(one);
    take_counts(size, size_index);
    take_chances(size, need, size_index);
    return size;
  }

 private:
  void take_counts(SizeEvidence& size, std::size_t size_index) const {
    if (!steps_ || steps_->clash || !steps_->sizes[size_index].known()) return;
    const SizeSteps& told = steps_->sizes[size_index];
    LengthEvidence counts;
    counts.low = told.low->length;
    counts.high = told.high->length;
    size.printed_counts = counts;
    size.told_low = told.low->told_by;
    size.told_high = told.high->told_by;
  }

  // What a scale reads adds to the error of weighing, which several samples narrow; an error above both
  // already holds them.
  double length_deviation(const LengthEvidence& evidence) const {
    const double whole = deviation_of(evidence.error);
    const bool rests_on_scale = calibrated_error_ && evidence.error <= *calibrated_error_ * (1 + 1e-9);
    return rests_on_scale
               ? std::max(whole, std::hypot(deviation_of(std::min(evidence.error, weighed_error_)), scale_))
               : whole;
  }

  void take_chances(SizeEvidence& size, const SizeNeed& need, std::size_t size_index) const {
    if (!skein_) return;
    std::optional<int> printed;
    if (steps_) printed = steps_->sizes[size_index].count;
    const auto& in_force = need.evidence == NeedEvidence::stitches ? size.stitches : size.sample;
    if (need.known && in_force) {
      size.chance_basis =
          ChanceBasis{need.knitted, need.swatch, {length_deviation(*in_force), hand_}, *skein_, supply_};
      if (need.skeins) size.chance_sufficient = chance_sufficient(*size.chance_basis, *need.skeins);
      if (printed) size.chance_printed = chance_sufficient(*size.chance_basis, *printed);
    } else if (printed && size.printed_counts) {
      size.chance_printed = chance_from_counts(size.printed_counts->low, size.printed_counts->high,
                                               context_.constant_of("most_allowance_pct") / 100, {0, hand_},
                                               *printed, *skein_, supply_);
      size.chance_sufficient = size.chance_printed;
    }
  }

  const NeedContext& context_;
  const Expected<StepReading>& steps_;
  SupplyErrors supply_;
  std::optional<Metres> skein_;
  std::optional<double> calibrated_error_;
  double scale_ = 0, hand_ = 0, weighed_error_ = 0;
};

std::vector<std::string> size_labels(const Pattern& pattern) {
  std::vector<std::string> labels;
  for (const Size& size : pattern.sizes) labels.push_back(size.label);
  return labels;
}

}  // namespace

std::string chance_of_100(double chance) {
  const double rounded = std::round(100 * chance);
  if (rounded >= 100) return "more than 99";
  if (rounded <= 0) return "fewer than 1";
  return std::to_string(static_cast<int>(rounded));
}

double chance_sufficient(const ChanceBasis& basis, int skeins) {
  return chance_sufficient(basis.knitted, basis.swatch, basis.need, skeins, basis.skein, basis.supply);
}

std::optional<int> skeins_for_chance(const ChanceBasis& basis, double wished) {
  return skeins_for_chance(wished, basis.knitted, basis.swatch, basis.need, basis.skein, basis.supply);
}

std::vector<LengthEvidence> SizeEvidence::all() const {
  std::vector<LengthEvidence> known;
  for (const auto* one : {&sample, &stitches, &printed_counts})
    if (*one) known.push_back(**one);
  std::stable_sort(known.begin(), known.end(),
                   [](const auto& a, const auto& b) { return a.high - a.low < b.high - b.low; });
  return known;
}

std::vector<RoleEvidence> gather_evidence(const Pattern& pattern, const Assessment& assessment) {
  std::vector<RoleEvidence> all;
  const NeedContext context(pattern);
  for (const RoleNeed& need : assessment.roles) {
    const Role* role = pattern.role(need.role);
    if (role == nullptr) {  // an assessment of another pattern
      all.push_back(RoleEvidence{need.role, read_steps(pattern, need.role), {}, {}});
      all.back().sizes.resize(need.sizes.size());
      continue;
    }
    RoleEvidence evidence{role->id, read_steps(context, *role), {}, sample_disagreements(context, *role)};
    const Gatherer gatherer(context, *role, evidence.steps);
    for (std::size_t i = 0; i < need.sizes.size(); ++i)
      evidence.sizes.push_back(gatherer.gather(need.sizes[i], i));
    if (evidence.steps)
      for (Disagreement& one : count_disagreements(context, *role, need, *evidence.steps))
        evidence.disagreements.push_back(one);
    all.push_back(std::move(evidence));
  }
  return all;
}

LeftoverRules leftover_rules(const Pattern& pattern, const Role& role) {
  const NeedContext context(pattern);
  LeftoverRules rules;
  rules.join_m = context.constant_of("join_m");
  rules.most_allowance = context.constant_of("most_allowance_pct") / 100;
  for (const PartUse& use : context.parts_of(role.id)) {
    const Fabric* fabric = use.section != nullptr ? pattern.fabric(use.section->fabric) : nullptr;
    if (fabric != nullptr && fabric->loop_source == LoopSource::from_gauge && !fabric->gauge.rows)
      rules.row_gauge_missing = true;
  }
  return rules;
}

std::string evidence_in_words(const Pattern& pattern, const RoleEvidence& evidence, std::size_t size_index,
                              BoundSide side, const NumberStyle& style) {
  if (size_index >= evidence.sizes.size()) return {};
  const auto known = evidence.sizes[size_index].all();
  if (known.empty()) return {};
  if (known.front().ground != LengthGround::printed_counts) return length_in_words(known.front(), style);
  return counts_in_words(*evidence.steps, size_labels(pattern), size_index, side, style);
}

}  // namespace skeinproof
