// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/scaled_sample.h"

#include <algorithm>
#include <cmath>

#include "core/need/area.h"

namespace skeinproof {
namespace {

using Samples = std::vector<const SampleLength*>;

// What a length grows with, the best first; it must be known in the same way on both sides.
struct Scaling {
  NeedEvidence kind;
  const char* error_constant;
  const char* because;
  const char* unit;
  std::optional<double> (*extent)(const NeedContext& context, std::size_t size_index);
};

std::optional<double> area_of(const NeedContext& context, std::size_t size_index, bool from_stitches) {
  const auto area = fabric_area(context, size_index);
  return area && area->from_stitches == from_stitches ? std::optional(area->m2) : std::nullopt;
}

constexpr const char* by_area = "scaled by fabric area: borders and yokes do not grow like bodies";
constexpr Scaling scalings[] = {
    {NeedEvidence::area, "error_area_pct", by_area, "m²",
     [](const NeedContext& context, std::size_t i) { return area_of(context, i, true); }},
    {NeedEvidence::area, "error_area_pct", by_area, "m²",
     [](const NeedContext& context, std::size_t i) { return area_of(context, i, false); }},
    {NeedEvidence::circumference, "error_circumference_pct",
     "scaled by circumference alone: lengths do not grow with it", "cm",
     [](const NeedContext& context, std::size_t i) { return finished_circumference(context.pattern(), i); }}};

Samples unaltered(const std::vector<SampleLength>& samples) {
  Samples plain;
  for (const SampleLength& sample : samples)
    if (sample.weighing->altered.empty()) plain.push_back(&sample);
  return plain;
}

const Scaling* scaling_for(const NeedContext& context, const Samples& samples) {
  for (const Scaling& scaling : scalings)
    if (std::all_of(samples.begin(), samples.end(),
                    [&](const SampleLength* sample) { return scaling.extent(context, sample->size_index); }))
      return &scaling;
  return nullptr;
}

Expected<FixedAndGrowing> line_through(const NeedContext& context, const Samples& samples,
                                       const Scaling& scaling) {
  std::vector<GrowthSample> points;
  for (const SampleLength* sample : samples)
    points.push_back(GrowthSample{scaling.extent(context, sample->size_index).value_or(0), sample->length,
                                  sample->error, context.pattern().sizes[sample->size_index].label});
  return fixed_and_growing(points);
}

void write_how(Step* step, std::string how) {
  if (step == nullptr) return;
  step->how = std::move(how);
  step->source = "common practice, no source";
}

std::optional<ScaledSample> by_line(const NeedContext& context, const Samples& samples,
                                    std::size_t size_index, Step* step, const NumberStyle& style) {
  const Scaling* scaling = scaling_for(context, samples);
  const auto extent = scaling != nullptr ? scaling->extent(context, size_index) : std::nullopt;
  if (!extent) return std::nullopt;
  const auto line = line_through(context, samples, *scaling);
  if (!line) return std::nullopt;
  double error = 1;
  for (const SampleLength* sample : samples) error = std::min(error, sample->error);
  write_how(step, show_number(line->fixed.value(), 1, style) + " m + " +
                      show_number(line->growing, 1, style) + " × " + show_number(*extent, 3, style) + " " +
                      scaling->unit);
  return ScaledSample{{NeedEvidence::fixed_and_growing, line->at(*extent),
                       std::hypot(context.constant_of("error_fixed_growing_pct") / 100, error),
                       "a fixed and a growing part, from " + std::to_string(samples.size()) + " samples"},
                      samples};
}

std::optional<ScaledSample> by_nearest(const NeedContext& context, const SampleLength& sample,
                                       std::size_t size_index, Step* step, const NumberStyle& style) {
  for (const Scaling& scaling : scalings) {
    const auto here = scaling.extent(context, size_index), there = scaling.extent(context, sample.size_index);
    if (!here || !there || !(*there > 0)) continue;
    write_how(step, show_number(sample.length.value(), 1, style) + " m × " + show_number(*here, 3, style) +
                        " ÷ " + show_number(*there, 3, style) + " " + scaling.unit);
    return ScaledSample{
        {scaling.kind, sample.length * (*here / *there),
         std::hypot(context.constant_of(scaling.error_constant) / 100, sample.error), scaling.because},
        {&sample}};
  }
  return std::nullopt;
}

}  // namespace

std::optional<ScaledSample> scaled_sample(const NeedContext& context,
                                          const std::vector<SampleLength>& samples, std::size_t size_index,
                                          Step* step, const NumberStyle& style) {
  const Samples plain = unaltered(samples);
  if (plain.empty()) return std::nullopt;
  const auto away = [&](const SampleLength* sample) {
    return std::max(sample->size_index, size_index) - std::min(sample->size_index, size_index);
  };
  const SampleLength& nearest = **std::min_element(
      plain.begin(), plain.end(), [&](const auto* a, const auto* b) { return away(a) < away(b); });
  if (away(&nearest) == 0) {
    write_how(step, "weighed in this size");
    return ScaledSample{{NeedEvidence::area, nearest.length, nearest.error, "weighed in this size"},
                        {&nearest}};
  }
  if (auto line = by_line(context, plain, size_index, step, style)) return line;
  return by_nearest(context, nearest, size_index, step, style);
}

std::optional<Error> why_not_fixed_and_growing(const NeedContext& context,
                                               const std::vector<SampleLength>& samples) {
  const Samples plain = unaltered(samples);
  if (plain.size() < 2) return std::nullopt;
  const Scaling* scaling = scaling_for(context, plain);
  if (scaling == nullptr) return std::nullopt;
  const auto line = line_through(context, plain, *scaling);
  return line ? std::nullopt : std::optional(line.error());
}

}  // namespace skeinproof
