// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/review/printed_gauge.h"

namespace skeinproof {

// A measurement as printed, in one unit or in two.
struct PrintedMeasure {
  std::string subject;    // "bust"
  std::string qualifier;  // "finished", "to fit" or empty
  int mention = 0;
  std::optional<PrintedList> cm, inches;

  const PrintedList& list() const { return cm ? *cm : *inches; }  // the metric one where both stand there
  // The value of a size in cm, from the metric list or else from the other.
  std::optional<double> at_cm(std::size_t size_index) const;
  const PrintedValue* value(std::size_t size_index) const { return list().values.at(size_index); }
  bool holds(std::size_t size_index) const;
  bool around() const;  // a circumference, by its name
  bool to_fit() const;  // by its word
  bool finished() const;
};
std::vector<PrintedMeasure> printed_measures(const PrintedView& printed);

// Half of the finest digit or fraction of a list, in its own unit.
double finest_half_step(const PrintedList& list);
// A value written as the list writes its own: as many decimals, or its fractions.
std::string as_in_list(double value, const PrintedList& list, std::string_view text);

// Stitches across a piece in every size: of the need sheet, or printed in the instructions.
struct StitchWidths {
  std::string name;  // "Body, plain"
  FabricId fabric;   // 0 where only the text gives it
  std::vector<std::optional<double>> stitches;
  const Statement* printed = nullptr;
};
std::vector<StitchWidths> stitch_widths(const ReviewInput& input);

// The stitches that a printed circumference is made of, found by the sizes in which both agree.
struct MeasureFit {
  StitchWidths widths;
  int times = 1;               // copies side by side: front and back
  double stitches_per_cm = 0;  // of the printed gauge of that fabric, else of the one in force
  const PrintedGauge* gauge = nullptr;
  std::vector<std::optional<double>> cm;  // what the stitches give
  std::vector<bool> agrees;               // by size; true where one of both is unknown
  bool by_name = false;                   // they agree in too few sizes: taken by the names of both
};
// How far both may lie apart: half a centimetre, half a stitch, or the rounding of inches printed alone.
double fit_slack_cm(const PrintedMeasure& measure, double stitches_per_cm);
std::optional<MeasureFit> fit_of(const ReviewInput& input, const PrintedMeasure& measure,
                                 const std::vector<PrintedGauge>& gauges,
                                 const std::vector<StitchWidths>& widths);

}  // namespace skeinproof
