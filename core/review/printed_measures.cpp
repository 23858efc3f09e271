// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/printed_measures.h"

#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/units/quantity.h"
#include "core/units/show.h"

namespace skeinproof {
namespace {

constexpr std::size_t most_measures = 500;  // no pattern has more; keeps comparing them within bounds

bool names(const std::string& subject, std::initializer_list<std::string_view> words) {
  const std::string lower = lower_ascii(subject);
  return std::any_of(words.begin(), words.end(),
                     [&](std::string_view word) { return lower.find(word) != std::string::npos; });
}

std::vector<std::optional<double>> of_sizes(const PerSize<Entered<double>>& typed, std::size_t sizes) {
  std::vector<std::optional<double>> values(sizes);
  for (std::size_t i = 0; i < sizes; ++i)
    if (const auto* value = typed.find(i); value != nullptr && value->value > 0) values[i] = value->value;
  return values;
}

bool any_known(const std::vector<std::optional<double>>& values) {
  return std::any_of(values.begin(), values.end(), [](const auto& value) { return value.has_value(); });
}

void add_widths(std::vector<StitchWidths>& all, StitchWidths widths) {
  if (!any_known(widths.stitches)) return;
  for (const StitchWidths& other : all)
    if (other.stitches == widths.stitches && other.fabric == widths.fabric) return;
  all.push_back(std::move(widths));
}

struct Density {
  double stitches_per_cm = 0;
  const PrintedGauge* gauge = nullptr;
};
std::optional<Density> density_of(const ReviewInput& input, const StitchWidths& widths,
                                  const std::vector<PrintedGauge>& gauges) {
  const auto printed = [](const PrintedGauge* gauge) -> std::optional<Density> {
    const auto stitches = gauge == nullptr ? std::nullopt : gauge->stitches_per_10_cm();
    if (!stitches) return std::nullopt;
    return Density{*stitches / 10, gauge};
  };
  const Fabric* fabric = input.pattern.fabric(widths.fabric);
  if (fabric != nullptr)
    if (const auto own = printed(gauge_of(gauges, *fabric))) return own;
  // Ribs are measured relaxed at the gauge of the cloth they border.
  const bool borrows = fabric == nullptr || !fabric->gauge.stitches;
  if (borrows)
    for (const PrintedGauge& gauge : gauges)
      if (!gauge.structure || *gauge.structure == Structure::plain)
        if (const auto plain = printed(&gauge)) return plain;
  if (fabric == nullptr) return std::nullopt;
  const auto width = input.need.loop_of(widths.fabric).stitch_width;
  if (!width || !(width->value() > 0)) return std::nullopt;
  return Density{1 / width->value(), nullptr};
}

bool one_of_body(const PrintedMeasure& measure, const StitchWidths& widths) {
  return names(measure.subject, {"bust", "chest"}) && names(widths.name, {"body"});
}

}  // namespace

std::optional<double> PrintedMeasure::at_cm(std::size_t i) const {
  if (cm && i < cm->values.size() && cm->values[i] && cm->values[i]->number) return cm->values[i]->number;
  if (inches && i < inches->values.size() && inches->values[i] && inches->values[i]->number)
    return *inches->values[i]->number * centimetres_per_inch;
  return std::nullopt;
}

bool PrintedMeasure::holds(std::size_t i) const {
  const auto& values = list().values;
  return i < values.size() && values[i] != nullptr && values[i]->number.has_value();
}

bool PrintedMeasure::around() const {
  if (names(subject, {"length", "depth", "height", "drop"})) return false;
  return names(subject, {"circumference", "around", "bust", "chest", "waist", "hip", "head", "wrist", "cuff",
                         "upper arm", "neck", "hem", "brim"});
}
bool PrintedMeasure::to_fit() const { return names(qualifier, {"fit", "body", "actual"}); }
bool PrintedMeasure::finished() const { return names(qualifier, {"finished", "garment", "knitted"}); }

std::vector<PrintedMeasure> printed_measures(const PrintedView& printed) {
  std::vector<PrintedMeasure> measures;
  for (const Statement* statement : printed.all(StatementKind::measurement)) {
    const bool metric = statement->unit == PrintedUnit::centimetre;
    if (!metric && statement->unit != PrintedUnit::inch) continue;
    const auto same = [&](const PrintedMeasure& one) {
      return one.mention == statement->mention && one.subject == statement->subject &&
             (metric ? !one.cm : !one.inches);
    };
    // Both units of a list stand side by side.
    const auto near = measures.end() - static_cast<std::ptrdiff_t>(std::min<std::size_t>(measures.size(), 8));
    auto at = std::find_if(near, measures.end(), same);
    if (at == measures.end()) {
      if (measures.size() == most_measures) break;
      measures.push_back({statement->subject, statement->qualifier, statement->mention, {}, {}});
      at = std::prev(measures.end());
    }
    if (at->qualifier.empty()) at->qualifier = statement->qualifier;
    (metric ? at->cm : at->inches) = printed.list(*statement);
  }
  return measures;
}

namespace {

// Inches in quarters or halves of an inch, written as decimals ("34.5", "40.25"): what a tape measure has;
// common practice, no source. Half of such a part, where every figure is one.
std::optional<double> half_of_tape_part(const PrintedList& list) {
  if (list.statement == nullptr || list.statement->unit != PrintedUnit::inch) return std::nullopt;
  const auto whole = [](double value) { return std::abs(value - std::round(value)) < 1e-9; };
  bool decimals = false, halves = true;
  for (const PrintedValue* value : list.values) {
    if (value == nullptr || !value->number) continue;
    const bool fraction = !whole(std::log10(2 * value->half_step));
    if (fraction || !whole(4 * *value->number)) return std::nullopt;
    decimals = decimals || value->half_step < 0.5;
    halves = halves && whole(2 * *value->number);
  }
  return decimals ? std::optional(halves ? 0.25 : 0.125) : std::nullopt;
}

}  // namespace

double finest_half_step(const PrintedList& list) {
  if (const auto half = half_of_tape_part(list)) return *half;
  double finest = 0;
  for (const PrintedValue* value : list.values)
    if (value != nullptr && value->number && value->half_step > 0)
      finest = finest == 0 ? value->half_step : std::min(finest, value->half_step);
  return finest == 0 ? 0.5 : finest;
}

std::string as_in_list(double value, const PrintedList& list, std::string_view text) {
  const double step = 2 * finest_half_step(list);
  NumberStyle style;
  for (const PrintedValue* one : list.values)
    if (one != nullptr) {
      const std::string_view words = words_at(text, one->span);
      if (words.find('/') != std::string_view::npos) style.fractions = FractionStyle::slashed;
      if (words.find(',') != std::string_view::npos) style.mark = DecimalMark::comma;
      if (words.find_first_of(".,") != std::string_view::npos) style.fractions = FractionStyle::decimal;
    }
  const double parts = std::round(1 / step);
  const bool fractions = parts >= 2 && parts <= 16 && std::abs(parts * step - 1) < 1e-9 && parts != 10;
  if (list.statement != nullptr && list.statement->unit == PrintedUnit::inch && fractions)
    return show_fraction(value, static_cast<int>(parts), style);
  const double rounded = round_half_up(value, std::min(step, 1.0));
  return show_short(rounded, 3, style);
}

std::vector<StitchWidths> stitch_widths(const ReviewInput& input) {
  std::vector<StitchWidths> all;
  const std::size_t sizes = input.pattern.sizes.size();
  for (const Piece& piece : input.pattern.pieces) {
    for (const Section& section : piece.sections)
      for (const ShapeRun& run : section.runs)
        for (const auto* list : {&run.from, &run.to})
          add_widths(all,
                     {piece.name + ", " + section.name, section.fabric, of_sizes(*list, sizes), nullptr});
    for (const Edge& edge : piece.edges)
      if (edge.kind == EdgeKind::cast_on || edge.kind == EdgeKind::bind_off)
        add_widths(all, {piece.name + ", " + edge.name, edge.fabric, of_sizes(edge.amount, sizes), nullptr});
  }
  for (const Statement* statement : input.printed.all(StatementKind::stitches)) {
    StitchWidths widths;
    widths.name = statement->qualifier.empty() ? "stitches" : statement->qualifier;
    widths.printed = statement;
    for (const PrintedValue* value : input.printed.list(*statement).values)
      widths.stitches.push_back(value == nullptr ? std::nullopt : value->number);
    add_widths(all, std::move(widths));
  }
  return all;
}

double fit_slack_cm(const PrintedMeasure& measure, double stitches_per_cm) {
  double slack = std::max(0.5, 0.5 / stitches_per_cm);
  if (!measure.cm) slack = std::max(slack, centimetres_per_inch * finest_half_step(*measure.inches));
  return slack + 1e-9;
}

std::optional<MeasureFit> fit_of(const ReviewInput& input, const PrintedMeasure& measure,
                                 const std::vector<PrintedGauge>& gauges,
                                 const std::vector<StitchWidths>& widths) {
  std::optional<MeasureFit> best, named;
  int best_hits = 0;
  const std::size_t sizes = input.printed.sizes();
  for (const StitchWidths& one : widths) {
    const auto density = density_of(input, one, gauges);
    if (!density) continue;
    const double slack = fit_slack_cm(measure, density->stitches_per_cm);
    for (const int times : {1, 2}) {
      MeasureFit fit{one, times, density->stitches_per_cm, density->gauge, {}, {}, false};
      int known = 0, hits = 0;
      for (std::size_t i = 0; i < sizes; ++i) {
        const auto printed = measure.at_cm(i);
        const auto stitches = i < one.stitches.size() ? one.stitches[i] : std::nullopt;
        fit.cm.push_back(stitches ? std::optional<double>(times * *stitches / density->stitches_per_cm)
                                  : std::nullopt);
        const bool both = printed && stitches;
        const bool agrees = !both || std::abs(*fit.cm.back() - *printed) <= slack;
        fit.agrees.push_back(agrees);
        known += both;
        hits += both && agrees;
      }
      if (hits >= 2 && 5 * hits >= 3 * known && hits > best_hits) {
        best_hits = hits;
        best = std::move(fit);
      } else if (times == 1 && known > 0 && !named && one_of_body(measure, one)) {
        named = std::move(fit);
        named->by_name = true;
      }
    }
  }
  return best ? best : named;
}

}  // namespace skeinproof
