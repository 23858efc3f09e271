// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/gauge_rules.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/text.h"
#include "core/review/item_and_wearer.h"
#include "core/review/printed_measures.h"
#include "core/review/printed_words.h"
#include "core/units/show.h"

namespace skeinproof {
namespace {

// Rows to stitches of a fabric; `note_…` the band inside which nothing is said.
struct ShapeBand {
  Structure structure;
  double low, note_low, note_high, high;
};
std::optional<ShapeBand> band_of(const ReviewInput& input, Structure structure) {
  const auto limit = [&](std::string_view key) { return input.need.constant_of(key); };
  switch (structure) {
    case Structure::plain:
      return ShapeBand{structure, limit("review_shape_plain_low"), limit("review_shape_plain_note_low"),
                       limit("review_shape_plain_note_high"), limit("review_shape_plain_high")};
    case Structure::stranded:
      return ShapeBand{structure, limit("review_shape_stranded_low"), limit("review_shape_stranded_low"),
                       limit("review_shape_stranded_high"), limit("review_shape_stranded_high")};
    case Structure::garter:
      return ShapeBand{structure, limit("review_shape_garter_low"), limit("review_shape_garter_low"),
                       limit("review_shape_garter_high"), limit("review_shape_garter_high")};
    default:
      return std::nullopt;
  }
}

// The count of rows that one changed digit would make fit, where there is one alone.
std::optional<double> one_digit_nearer(double printed, double stitches, const ShapeBand& band) {
  if (printed != std::floor(printed) || printed < 1 || printed > 999) return std::nullopt;
  const std::string digits = show_short(printed, 0);
  std::optional<double> only;
  for (std::size_t i = 0; i < digits.size(); ++i)
    for (char d = '0'; d <= '9'; ++d) {
      std::string other = digits;
      other[i] = d;
      if (other == digits || other.front() == '0') continue;
      const double rows = std::stod(other);
      if (rows / stitches < band.note_low || rows / stitches > band.note_high) continue;
      if (only) return std::nullopt;
      only = rows;
    }
  return only;
}

}  // namespace

std::optional<double> rows_in_force(const ReviewInput& input, const PrintedGauge& gauge) {
  const auto& fabrics = input.pattern.fabrics;
  auto fabric = std::find_if(fabrics.begin(), fabrics.end(), [&](const Fabric& one) {
    if (gauge.structure) return one.structure == *gauge.structure;
    return gauge.fabric && lower_ascii(one.name) == lower_ascii(gauge.fabric->words);
  });
  if (fabric == fabrics.end() && !gauge.fabric) fabric = fabrics.begin();
  if (fabric == fabrics.end() || !fabric->gauge.rows) return std::nullopt;
  const double over = fabric->gauge.over.value.value();
  return over > 0 ? std::optional<double>(fabric->gauge.rows->value * 10 / over) : std::nullopt;
}

void stitch_shape(const ReviewInput& input, Findings& findings) {
  const auto gauges = printed_gauges(input.printed);
  for (const PrintedGauge& gauge : gauges) {
    const auto stitches = gauge.stitches_per_10_cm(), rows = gauge.rows_per_10_cm();
    if (!stitches || !rows) continue;
    if (!gauge.structure && gauge.fabric) continue;
    const auto band = band_of(input, gauge.structure.value_or(Structure::plain));
    if (!band) continue;
    const double shape = *rows / *stitches;
    // Without a named fabric it may be garter or stranded as well.
    if (!gauge.structure && shape >= input.need.constant_of("review_shape_stranded_low") &&
        shape <= input.need.constant_of("review_shape_garter_high"))
      continue;
    if (shape >= band->note_low - 1e-9 && shape <= band->note_high + 1e-9) continue;
    const bool outside = shape < band->low - 1e-9 || shape > band->high + 1e-9;
    const std::string said = gauge_words(input.printed, gauge);
    Finding& finding = findings.add(
        outside ? Severity::ask : Severity::note,
        (shape < band->note_low ? "few rows to the stitches: " : "many rows to the stitches: ") + said);
    show(finding, input.printed, *gauge.rows);
    show(finding, input.printed, *gauge.stitches);
    finding.apart = gauge.fabric ? lower_ascii(gauge.fabric->words) : "";
    const std::string cloth = gauge.fabric ? gauge.fabric->words : "stocking stitch";
    finding.evidence = {"Rows ÷ stitches: " + figure(*gauge.rows->values.front().number) + " ÷ " +
                            figure(*gauge.stitches->values.front().number) + " = " + figure(shape, 2),
                        cloth + " lies between " + figure(band->low, 2) + " and " + figure(band->high, 2)};
    auto known = rows_in_force(input, gauge);
    if (known) *known *= gauge.over_cm / 10;
    const bool fits = known && *known / *gauge.stitches->values.front().number >= band->note_low &&
                      *known / *gauge.stitches->values.front().number <= band->note_high;
    if (!fits && outside && !gauge.per_inch)
      known =
          one_digit_nearer(*gauge.rows->values.front().number, *gauge.stitches->values.front().number, *band);
    else if (!fits)
      known.reset();
    if (known && outside) {
      const std::string after = figure(*known);
      finding.proposal = {{gauge.rows->values.front().span, after}};
      finding.proposal_words =
          std::string(input.printed.words(gauge.rows->values.front())) + " → " + after + " rows";
    }
    finding.query = "A gauge of " + said + " makes rows ÷ stitches " + figure(shape, 2) + ", and " + cloth +
                    " is nearer " + figure((band->note_low + band->note_high) / 2, 1) +
                    (known && outside ? ". Is it " + figure(*known) + " rows?" : ". Are both figures right?");
  }
}

void stitches_make_width(const ReviewInput& input, Findings& findings) {
  const auto measures = printed_measures(input.printed);
  const auto widths = stitch_widths(input);
  if (measures.empty()) return;
  if (widths.empty()) {
    findings.cannot("no stitches across a piece are known", "the stitch counts of the pieces in every size");
    return;
  }
  const auto gauges = printed_gauges(input.printed);
  for (const PrintedMeasure& measure : measures) {
    if (!measure.around() || measure.to_fit()) continue;
    const auto fit = fit_of(input, measure, gauges, widths);
    if (!fit) continue;
    const auto off = std::count(fit->agrees.begin(), fit->agrees.end(), false);
    const bool everywhere = fit->by_name && off > 1;
    for (std::size_t i = 0; i < fit->agrees.size(); ++i) {
      if (fit->agrees[i] || !measure.holds(i)) continue;
      const PrintedValue& printed = *measure.value(i);
      const bool inch = !measure.cm;
      const double cm = *fit->cm[i];
      const std::string unit = inch ? " in" : " cm";
      const double wanted = inch ? in_inches(centimetres(cm)) : cm;
      Finding& finding = findings.add("stitches do not make the width: " +
                                      quoted(std::string(input.printed.words(printed)) + unit));
      finding.sizes = {input.printed.size_labels()[i]};
      finding.apart = measure.subject;
      finding.places.push_back(printed.span);
      rest_on(finding, input.printed, *measure.list().statement);
      if (fit->gauge) rest_on(finding, input.printed, *fit->gauge->stitches);
      if (fit->widths.printed) rest_on(finding, input.printed, *fit->widths.printed);
      const std::string stitches = figure(*fit->widths.stitches[i] * fit->times, 0);
      finding.evidence = {fit->widths.name + ": " + stitches + " sts",
                          stitches + " ÷ " + figure(fit->stitches_per_cm, 2) + " = " + figure(cm) +
                              " cm, printed " + std::string(input.printed.words(printed)) + unit};
      if (everywhere) {
        // A gauge that disagrees with every size is one doubt, not one for each size.
        finding.sizes = input.printed.size_labels();
        finding.title = "stitches and gauge do not make the printed width in any size";
        finding.query = "At the printed gauge the stitches give " + figure(cm) + " cm where " +
                        std::string(input.printed.words(printed)) + unit +
                        " is printed, and so in every size. Is the gauge right?";
        break;
      }
      const std::string after = as_in_list(wanted, measure.list(), input.printed.text());
      finding.proposal = {{printed.span, after}};
      finding.proposal_words = std::string(input.printed.words(printed)) + " → " + after + unit;
      finding.query = "In size " + finding.sizes.front() + " " + stitches + " stitches give " + figure(cm) +
                      " cm, and " + std::string(input.printed.words(printed)) + unit + " is printed. Is it " +
                      after + unit + "?";
    }
  }
}

}  // namespace skeinproof
