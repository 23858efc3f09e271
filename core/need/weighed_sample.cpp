// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/weighed_sample.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/need/bench_changes.h"
#include "core/need/chance.h"
#include "core/need/changed_copy.h"
#include "core/yarn/weigh.h"

namespace skeinproof {
namespace {

WeighedYarn weighed_yarn(const Weighing& weighing, const WeighedRole& weighed, const Yarn& yarn) {
  WeighedYarn input;
  input.reading = weighed.reading->value;
  if (weighed.notions) input.notions = weighed.notions->value;
  input.put_up = yarn.put_up;
  input.composition = yarn.composition;
  input.spinning = yarn.spinning;
  input.market = yarn.market;
  if (weighing.moisture == Moisture::new_skein && weighed.new_skein)
    input.new_skein = weighed.new_skein->value;
  if (weighing.moisture == Moisture::humidity && weighing.humidity_pct)
    input.humidity_pct = weighing.humidity_pct->value;
  if (weighing.scale_step) input.scale_step = weighing.scale_step->value;
  return input;
}

// What stops a reading from being worked out before the yarn room is even asked.
std::string missing_words(const Weighing& weighing, const WeighedRole& weighed, const Yarn* yarn) {
  if (yarn == nullptr) return "the role needs a yarn";
  if (weighing.moisture == Moisture::new_skein && !weighed.new_skein)
    return "the weight of a new skein in the same hour is missing";
  if (weighing.moisture == Moisture::humidity && !weighing.humidity_pct)
    return "the relative humidity is missing";
  return {};
}

std::string weighing_name(const NeedContext& context, const Weighing& weighing) {
  if (!weighing.name.empty()) return weighing.name;
  const auto index = context.pattern().size_index(weighing.size);
  return index ? "sample of size " + context.pattern().sizes[*index].label : "sample";
}

double error_share(const WeighedLength& length, double weighed_error) {
  const double scale = std::max(length.scale.shorter, length.scale.longer);
  const double moisture = std::max(length.moisture.shorter, length.moisture.longer);
  return std::hypot(std::max(weighed_error, scale), moisture);
}

Calibration::Loop loop_of_fabric(const NeedContext& context, const Fabric& fabric, double factor) {
  const FabricLoop& in_force = context.loop_of(fabric.id);
  Calibration::Loop loop;
  loop.fabric = fabric.id;
  loop.loop = in_force.loop.value_or(centimetres(0)) * factor;
  if (in_force.stitch_width) {
    loop.widths = loop.loop / *in_force.stitch_width;
    if (fabric.structure == Structure::plain)
      loop.plausible = *loop.widths >= context.constant_of("loop_widths_low") &&
                       *loop.widths <= context.constant_of("loop_widths_high");
  }
  return loop;
}

std::vector<FabricId> fabrics_of(const NeedContext& context, const Role& role) {
  std::vector<FabricId> fabrics;
  for (const PartUse& use : context.parts_of(role.id))
    if (use.section != nullptr &&
        std::find(fabrics.begin(), fabrics.end(), use.section->fabric) == fabrics.end())
      fabrics.push_back(use.section->fabric);
  return fabrics;
}

}  // namespace

RoleParts parts_on_scale(const NeedContext& context, const Role& role, const Weighing& weighing,
                         std::size_t size_index) {
  PartsWanted wanted;
  wanted.size_index = size_index;
  wanted.only = &weighing.only;
  return role_parts(context, role, wanted);
}

RoleParts parts_on_scale(const NeedContext& context, const Role& role, const SampleLength& sample) {
  const Weighing& weighing = *sample.weighing;
  if (weighing.altered.empty()) return parts_on_scale(context, role, weighing, sample.size_index);
  RoleParts unknown;
  const auto changes = changes_of(weighing.altered);
  if (!changes) {
    unknown.missing = changes.error().message();
    return unknown;
  }
  const auto copy = changed_copy(context.pattern(), *changes, weighing.size);
  if (!copy) {
    unknown.missing = copy.error().message();
    return unknown;
  }
  const NeedContext altered(copy->pattern());
  const Role* same = copy->pattern().role(role.id);
  return same != nullptr ? parts_on_scale(altered, *same, weighing, copy->size_index()) : unknown;
}

std::vector<SampleLength> sample_lengths(const NeedContext& context, const Role& role,
                                         std::vector<NotWorkedOut>* problems) {
  std::vector<SampleLength> samples;
  const Yarn* yarn = context.pattern().yarn(role.yarn);
  for (const Weighing& weighing : context.pattern().weighings) {
    const auto index = context.pattern().size_index(weighing.size);
    const auto weighed = std::find_if(weighing.roles.begin(), weighing.roles.end(),
                                      [&](const WeighedRole& w) { return w.role == role.id; });
    if (!weighing.used || !index || weighed == weighing.roles.end() || !weighed->reading) continue;
    std::string because = missing_words(weighing, *weighed, yarn);
    if (because.empty()) {
      const auto length = weighed_length(weighed_yarn(weighing, *weighed, *yarn));
      if (length) {
        samples.push_back(SampleLength{&weighing, *index, length->length, length->low, length->high,
                                       error_share(*length, context.constant_of("error_weighed_pct") / 100)});
        continue;
      }
      because = length.error().message();
    }
    if (problems != nullptr)
      problems->push_back(
          {weighing_name(context, weighing) + ", " + role.label, because, {"Weighings", weighing.id.value}});
  }
  return samples;
}

std::optional<double> loop_factor(const SampleLength& sample, const RoleParts& model) {
  if (!model.missing.empty() || model.stitches <= metres(0)) return std::nullopt;
  const double factor = (sample.length - model.floats - model.extra) / model.stitches;
  if (!(factor > 0)) return std::nullopt;
  return factor;
}

namespace {

// The samples whose factor is known, each weighed by the inverse square of its error.
struct Pooled {
  std::vector<SampleLength> samples;
  std::vector<double> factors, weights;

  void add(const SampleLength& sample, double factor) {
    samples.push_back(sample);
    factors.push_back(factor);
    weights.push_back(1 / (sample.error * sample.error));
  }
  double sum() const { return std::accumulate(weights.begin(), weights.end(), 0.0); }
  double mean() const {
    return std::inner_product(weights.begin(), weights.end(), factors.begin(), 0.0) / sum();
  }
  double error() const {
    const double by_errors = 1 / std::sqrt(sum());
    if (samples.size() < 2) return by_errors;
    double scatter = 0;
    for (std::size_t i = 0; i < factors.size(); ++i) {
      // Errors are at 9 in 10; the ratio compares deviations.
      const double off = (factors[i] / mean() - 1) / deviation_of(samples[i].error);
      scatter += off * off;
    }
    return by_errors * std::max(1.0, std::sqrt(scatter / static_cast<double>(samples.size() - 1)));
  }
};

Pooled pooled_samples(const NeedContext& context, const Role& role,
                      const std::vector<SampleLength>& samples) {
  Pooled pooled;
  for (const SampleLength& sample : samples)
    if (const auto factor = loop_factor(sample, parts_on_scale(context, role, sample)))
      pooled.add(sample, *factor);
  return pooled;
}

}  // namespace

std::vector<Calibration> calibrations(const NeedContext& context, std::vector<NotWorkedOut>* problems) {
  std::vector<Calibration> all;
  for (const Role& role : context.pattern().roles) {
    const std::vector<SampleLength> samples = sample_lengths(context, role, problems);
    const Pooled pooled = pooled_samples(context, role, samples);
    for (const SampleLength& sample : samples) {
      Calibration calibration;
      calibration.weighing = sample.weighing->id;
      calibration.role = role.id;
      calibration.weighed = sample.length;
      calibration.low = sample.low;
      calibration.high = sample.high;
      calibration.error = sample.error;
      for (std::size_t i = 0; i < pooled.samples.size(); ++i) {
        if (pooled.samples[i].weighing != sample.weighing) continue;
        calibration.factor = pooled.factors[i];
        calibration.weight = pooled.weights[i] / pooled.sum();
        for (FabricId id : fabrics_of(context, role))
          if (const Fabric* fabric = context.pattern().fabric(id))
            calibration.loops.push_back(loop_of_fabric(context, *fabric, pooled.factors[i]));
      }
      if (problems != nullptr && calibration.loops.empty() && !sample.weighing->altered.empty())
        problems->push_back(
            {weighing_name(context, *sample.weighing) + ", " + role.label,
             "what was altered cannot be taken off: " + parts_on_scale(context, role, sample).missing,
             {"Weighings", sample.weighing->id.value}});
      all.push_back(std::move(calibration));
    }
  }
  return all;
}

std::optional<RoleCalibration> role_calibration(const NeedContext& context, const Role& role) {
  Pooled pooled = pooled_samples(context, role, sample_lengths(context, role));
  if (pooled.samples.empty()) return std::nullopt;
  RoleCalibration calibration{pooled.mean(), pooled.error(), std::move(pooled.samples),
                              std::move(pooled.weights)};
  const double sum = std::accumulate(calibration.weights.begin(), calibration.weights.end(), 0.0);
  for (double& weight : calibration.weights) weight /= sum;
  return calibration;
}

Step sample_step(const NeedContext& context, const Role& role, const SampleLength& sample,
                 const NumberStyle& style) {
  const Weighing& weighing = *sample.weighing;
  const auto weighed = std::find_if(weighing.roles.begin(), weighing.roles.end(),
                                    [&](const WeighedRole& w) { return w.role == role.id; });
  Step step;
  step.label = "Sample " + role.label;
  step.figure = sample.length.value();
  step.unit = FigureUnit::metres;
  step.place = {"Weighings", weighing.id.value};
  const Yarn* yarn = context.pattern().yarn(role.yarn);
  if (weighed == weighing.roles.end() || yarn == nullptr) return step;
  const auto length = weighed_length(weighed_yarn(weighing, *weighed, *yarn));
  if (!length) return step;
  for (const FigureLine& line : length->lines) {
    Step part;
    part.label = line.label;
    part.how = line.how;
    part.figure = line.value;
    part.unit = from_word<FigureUnit>(line.unit).value_or(FigureUnit::none);
    part.ground = from_word<Ground>(line.source).value_or(Ground::none);
    if (part.ground == Ground::none) part.source = line.source;
    part.place = step.place;
    if (&line == &length->lines.back())
      step.how = line.how;
    else
      step.parts.push_back(std::move(part));
  }
  (void)style;
  return step;
}

Step calibration_step(const NeedContext& context, const Role& role, const RoleCalibration& calibration,
                      const NumberStyle& style) {
  Step step;
  step.label = "Calibration";
  step.figure = calibration.factor;
  step.unit = FigureUnit::ratio;
  step.decimals = 4;
  step.ground = Ground::none;
  step.place = {"Weighings", calibration.samples.front().weighing->id.value};
  for (const SampleLength& sample : calibration.samples) {
    const RoleParts model = parts_on_scale(context, role, sample);
    Step yarn_in_stitches;
    yarn_in_stitches.label = "Yarn in stitches";
    yarn_in_stitches.figure = (sample.length - model.floats - model.extra).value();
    yarn_in_stitches.unit = FigureUnit::metres;
    yarn_in_stitches.how = show_number(sample.length.value(), 2, style) + " − floats " +
                           show_number(model.floats.value(), 2, style) + " − edges and ends " +
                           show_number(model.extra.value(), 2, style);
    yarn_in_stitches.place = {"Weighings", sample.weighing->id.value};
    yarn_in_stitches.parts.push_back(sample_step(context, role, sample, style));
    Step by_stitches;
    by_stitches.label = "The same by stitches";
    by_stitches.figure = model.stitches.value();
    by_stitches.unit = FigureUnit::metres;
    by_stitches.ground = Ground::sheet;
    by_stitches.how = "stitches × loop in force, size " + context.pattern().sizes[sample.size_index].label;
    step.how =
        show_number(yarn_in_stitches.figure, 2, style) + " ÷ " + show_number(by_stitches.figure, 2, style);
    step.parts.push_back(std::move(yarn_in_stitches));
    step.parts.push_back(std::move(by_stitches));
  }
  if (calibration.samples.size() > 1)
    step.how = "mean of " + std::to_string(calibration.samples.size()) + " samples, each by its error";
  return step;
}

}  // namespace skeinproof
