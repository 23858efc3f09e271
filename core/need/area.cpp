// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/area.h"

#include "core/need/stitch_counts.h"

namespace skeinproof {
namespace {

constexpr double cm2_per_m2 = 10000;

std::optional<double> measured_cm(const Pattern& pattern, MeasurementKind kind, std::size_t size_index) {
  for (const Measurement& measurement : pattern.measurements) {
    if (measurement.kind != kind || measurement.fit != Fit::finished) continue;
    if (const auto* value = measurement.values.find(size_index)) return value->value.value();
  }
  return std::nullopt;
}

std::optional<double> all_stitches(const NeedContext& context, const Section& section,
                                   std::size_t size_index) {
  if (section.source != StitchSource::chart) return section_stitches(section, size_index).stitches;
  const auto* repeats = section.repeats.find(size_index);
  if (repeats == nullptr || !section.chart) return std::nullopt;
  return static_cast<double>(context.census_of(section.chart).stitches) * repeats->value;
}

std::optional<FabricArea> area_from_stitches(const NeedContext& context, std::size_t size_index) {
  double m2 = 0;
  for (const Piece& piece : context.pattern().pieces)
    for (const Section& section : piece.sections) {
      const auto area = section_area_m2(context, piece, section, size_index);
      if (!area) return std::nullopt;
      m2 += *area;
    }
  if (m2 <= 0) return std::nullopt;
  return FabricArea{m2, true};
}

std::optional<FabricArea> area_from_measurements(const Pattern& pattern, std::size_t size_index) {
  const auto measured = [&](MeasurementKind kind) { return measured_cm(pattern, kind, size_index); };
  const auto around = measured(MeasurementKind::circumference);
  const auto length = measured(MeasurementKind::body_length);
  if (!around || !length) return std::nullopt;
  double cm2 = *around * *length;
  const auto sleeve_width = measured(MeasurementKind::sleeve_width);
  const auto sleeve_length = measured(MeasurementKind::sleeve_length);
  if (sleeve_width && sleeve_length) cm2 += 2 * *sleeve_width * *sleeve_length;
  if (const auto depth = measured(MeasurementKind::yoke_depth))
    cm2 += (*around + measured(MeasurementKind::neck_circumference).value_or(*around)) / 2 * *depth;
  return FabricArea{cm2 / cm2_per_m2, false};
}

}  // namespace

std::optional<double> section_area_m2(const NeedContext& context, const Piece& piece, const Section& section,
                                      std::size_t size_index) {
  const auto stitches = all_stitches(context, section, size_index);
  const auto density = context.loop_of(section.fabric).density_per_cm2;
  if (!stitches || !density || *density <= 0) return std::nullopt;
  return piece.copies * *stitches / *density / cm2_per_m2;
}

std::optional<FabricArea> fabric_area(const NeedContext& context, std::size_t size_index) {
  if (const auto area = area_from_stitches(context, size_index)) return area;
  return area_from_measurements(context.pattern(), size_index);
}

std::optional<double> finished_circumference(const Pattern& pattern, std::size_t size_index) {
  return measured_cm(pattern, MeasurementKind::circumference, size_index);
}

}  // namespace skeinproof
