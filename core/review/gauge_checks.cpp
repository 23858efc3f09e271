// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/text.h"
#include "core/need/area.h"
#include "core/review/gauge_rules.h"
#include "core/review/item_and_wearer.h"
#include "core/review/printed_gauge.h"
#include "core/review/printed_words.h"
#include "core/units/show.h"

namespace skeinproof {
namespace {

using Kind = StatementKind;
constexpr std::string_view trade = "common practice, no source";

constexpr std::array rows = {
    Check{"G1",
          "A gauge counts stitches and rows over a stated length",
          Severity::ask,
          {Kind::gauge_stitches, Kind::gauge_rows, Kind::gauge_over, Kind::gauge_fabric, Kind::item,
           Kind::title},
          trade,
          gauge_is_complete},
    Check{"G2",
          "The fabric of a gauge is named, and every fabric of more than a fifth of the cloth has one",
          Severity::ask,
          {Kind::gauge_stitches, Kind::gauge_rows, Kind::gauge_over, Kind::gauge_fabric},
          trade,
          fabrics_have_gauges},
    Check{"G3",
          "A gauge says washed or not, and flat or in the round",
          Severity::ask,
          {Kind::gauge_stitches, Kind::gauge_rows, Kind::gauge_state, Kind::gauge_worked},
          trade,
          gauge_state_is_said},
    Check{"G4",
          "Gauges over inches and over centimetres agree within half a stitch in 10 cm",
          Severity::ask,
          {Kind::gauge_stitches, Kind::gauge_rows, Kind::gauge_over, Kind::gauge_fabric},
          trade,
          inch_and_metric_gauges},
    Check{"G5",
          "Rows to stitches lie in the band of the fabric",
          Severity::ask,
          {Kind::gauge_stitches, Kind::gauge_rows, Kind::gauge_over, Kind::gauge_fabric},
          trade,
          stitch_shape},
    Check{"G6",
          "The names of one needle in several systems are of one size",
          Severity::stop,
          {Kind::needle},
          "needle table, source of each row there",
          needle_names},
    Check{"G7",
          "The needle suits the width of the stitch",
          Severity::ask,
          {Kind::needle, Kind::gauge_stitches, Kind::gauge_rows, Kind::gauge_over, Kind::gauge_fabric,
           Kind::item, Kind::title},
          trade,
          needle_to_stitch},
    Check{"G8",
          "The needle of the rib is 0.25 to 1 mm smaller than the main one",
          Severity::note,
          {Kind::needle, Kind::item, Kind::title},
          trade,
          rib_needle},
    Check{"G9",
          "A circular needle is no longer than the smallest tube worked on it",
          Severity::ask,
          {Kind::needle, Kind::needle_type, Kind::needle_length, Kind::measurement, Kind::gauge_stitches,
           Kind::gauge_rows, Kind::gauge_over, Kind::gauge_fabric, Kind::gauge_worked},
          trade,
          circular_fits_tube},
    Check{"G10",
          "A gauge said twice is the same",
          Severity::stop,
          {Kind::gauge_stitches, Kind::gauge_rows, Kind::gauge_over, Kind::gauge_fabric, Kind::gauge_state},
          trade,
          gauge_said_twice},
    Check{"G11",
          "Stitches divided by the gauge make the printed width",
          Severity::stop,
          {Kind::measurement, Kind::gauge_stitches, Kind::gauge_rows, Kind::gauge_over, Kind::gauge_fabric,
           Kind::stitches},
          trade,
          stitches_make_width},
};

bool gauge_is_whole(const ReviewInput& input, Findings& findings) {
  if (input.printed.whole(TextPart::gauge)) return true;
  findings.cannot("the gauge is not there as a whole", "the whole gauge paragraph");
  return false;
}

bool drapes_by_choice(const ReviewInput& input) {
  const ItemRead item = item_of(input);
  return item.kind == ItemKind::shawl || says(item.words, {"scarf", "wrap", "blanket", "stole", "cowl"});
}

bool says_rounds(const PrintedView& printed, const Statement* rows_of) {
  return rows_of != nullptr && says(lower_ascii(printed.words(rows_of->span)), {"round", "rnd"});
}

// What a fabric of the need sheet takes of the cloth, in the first size where all of it is known.
struct Share {
  const Fabric* fabric = nullptr;
  double of_all = 0;
};
std::vector<Share> fabric_shares(const ReviewInput& input) {
  for (std::size_t i = 0; i < input.pattern.sizes.size(); ++i) {
    const auto whole = fabric_area(input.need, i);
    if (!whole || !whole->from_stitches) continue;
    std::vector<Share> shares;
    for (const Fabric& fabric : input.pattern.fabrics) {
      Share share{&fabric, 0};
      for (const Piece& piece : input.pattern.pieces)
        for (const Section& section : piece.sections)
          if (section.fabric == fabric.id)
            share.of_all += section_area_m2(input.need, piece, section, i).value_or(0) / whole->m2;
      shares.push_back(share);
    }
    return shares;
  }
  return {};
}

std::string percent(double share) { return show_short(100 * share, 0) + " %"; }

}  // namespace

std::span<const Check> gauge_checks() { return rows; }

std::string gauge_words(const PrintedView& printed, const PrintedGauge& gauge) {
  std::string words;
  for (const Statement* one : {gauge.stitches, gauge.rows})
    if (one != nullptr) words += (words.empty() ? "" : " … ") + std::string(printed.words(one->span));
  if (gauge.over != nullptr) words += " over " + std::string(printed.words(gauge.over->span));
  return quoted(tidy_spaces(words));
}

void gauge_is_complete(const ReviewInput& input, Findings& findings) {
  if (!gauge_is_whole(input, findings)) return;
  const auto gauges = printed_gauges(input.printed);
  for (const PrintedGauge& gauge : gauges) {
    const auto supplied = [&](const Statement* PrintedGauge::*part) {
      return std::any_of(gauges.begin(), gauges.end(), [&](const PrintedGauge& other) {
        return (&other == &gauge || other.same_fabric(gauge)) && other.*part != nullptr;
      });
    };
    std::vector<std::string> missing;
    if (!supplied(&PrintedGauge::stitches)) missing.push_back("stitches");
    if (!supplied(&PrintedGauge::rows)) missing.push_back("rows or rounds");
    if (gauge.over == nullptr) missing.push_back("the length counted over");
    if (missing.empty()) continue;
    const std::string said = printed_words(input.printed, gauge.first());
    const std::string of = gauge.fabric ? " of " + gauge.fabric->words : "";
    Finding& finding =
        drapes_by_choice(input)
            ? findings.add(Severity::note, "gauge without " + join(missing, ", ") + ": " + said)
            : findings.add("gauge without " + join(missing, ", ") + ": " + said);
    for (const Statement* one : gauge.all())
      one == gauge.over ? rest_on(finding, input.printed, *one) : show(finding, input.printed, *one);
    finding.apart = gauge.fabric ? lower_ascii(gauge.fabric->words) : "";
    finding.evidence = {"Printed" + of + ": " + gauge_words(input.printed, gauge),
                        "Missing: " + join(missing, ", ")};
    finding.query = "The gauge" + of + " gives no " + join(missing, ", ") + ". Could you add it?";
    const auto known = rows_in_force(input, gauge);
    if (missing.size() == 1 && gauge.rows == nullptr && known && gauge.over != nullptr) {
      const Statement* other = nullptr;
      for (const PrintedGauge& one : gauges)
        if (one.rows) other = one.rows;
      const std::string unit = other == nullptr || says_rounds(input.printed, other) ? " rounds" : " rows";
      const std::string more = " and " + figure(*known * gauge.over_cm / 10) + unit;
      finding.proposal = {{{gauge.stitches->span.end, gauge.stitches->span.end}, more}};
      finding.proposal_words = "add “" + more.substr(1) + "”";
    }
  }
}

void fabrics_have_gauges(const ReviewInput& input, Findings& findings) {
  if (!gauge_is_whole(input, findings)) return;
  const auto gauges = printed_gauges(input.printed);
  for (const PrintedGauge& gauge : gauges) {
    if (gauge.fabric) continue;
    const bool said_elsewhere = std::any_of(gauges.begin(), gauges.end(), [&](const PrintedGauge& other) {
      return other.fabric && other.stitches_per_10_cm() == gauge.stitches_per_10_cm();
    });
    if (said_elsewhere) continue;
    Finding& finding = findings.add("gauge of which fabric? " + printed_words(input.printed, gauge.first()));
    for (const Statement* one : gauge.all()) show(finding, input.printed, *one);
    finding.apart = "unnamed " + std::to_string(&gauge - gauges.data());
    finding.evidence = {"Printed: " + gauge_words(input.printed, gauge), "No fabric is named with it"};
    finding.query = "Which stitch is the gauge counted in, stocking stitch or the pattern stitch?";
  }
  const auto shares = fabric_shares(input);
  if (shares.empty()) {
    findings.cannot("no fabric areas are known", "the stitches of the pieces, each with its fabric");
    return;
  }
  const double least = input.need.constant_of("review_fabric_share_pct") / 100;
  for (const Share& share : shares) {
    if (share.of_all <= least || gauges.empty() || gauge_of(gauges, *share.fabric)) continue;
    // A lone gauge that names no fabric is asked about above.
    if (gauges.size() == 1 && !gauges.front().fabric) continue;
    const bool rib = share.fabric->structure == Structure::rib;
    const std::string title =
        "no gauge for " + share.fabric->name + ", " + percent(share.of_all) + " of the cloth";
    Finding& finding = rib ? findings.add(Severity::note, title) : findings.add(title);
    show(finding, input.printed, gauges.front().first());
    finding.apart = share.fabric->name;
    finding.evidence = {
        share.fabric->name + " is " + percent(share.of_all) + " of the cloth by the need sheet",
        "Its gauge is not printed"};
    finding.query = share.fabric->name + " makes " + percent(share.of_all) +
                    " of the cloth, and no gauge is given for it. Could you add one?";
  }
}

void gauge_state_is_said(const ReviewInput& input, Findings& findings) {
  if (!gauge_is_whole(input, findings)) return;
  const auto gauges = printed_gauges(input.printed);
  if (gauges.empty()) return;
  const auto any = [&](const auto& test) { return std::any_of(gauges.begin(), gauges.end(), test); };
  std::vector<std::string> missing;
  if (!any([](const PrintedGauge& gauge) { return gauge.state != nullptr; }))
    missing.push_back("whether it is washed or blocked");
  if (!any([](const PrintedGauge& gauge) { return gauge.worked != nullptr || gauge.rows != nullptr; }))
    missing.push_back("whether it is worked flat or in the round");
  if (missing.empty()) return;
  Finding& finding = findings.add("gauge does not say " + join(missing, " nor "));
  show(finding, input.printed, gauges.front().first());
  for (const PrintedGauge& gauge : gauges) rest_on(finding, input.printed, gauge.first());
  finding.evidence = {"Printed: " + gauge_words(input.printed, gauges.front()),
                      "Not said: " + join(missing, "; ")};
  finding.query = "Please say of the gauge " + join(missing, " and ") + ".";
}

void inch_and_metric_gauges(const ReviewInput& input, Findings& findings) {
  const auto gauges = printed_gauges(input.printed);
  const double slack = input.need.constant_of("review_inch_gauge_sts");
  for (const PrintedGauge& inch : gauges) {
    if (!inch.over || inch.over->unit != PrintedUnit::inch) continue;
    for (const PrintedGauge& metric : gauges) {
      if (!metric.over || metric.over->unit == PrintedUnit::inch || !metric.same_fabric(inch)) continue;
      for (const auto part : {&PrintedGauge::stitches, &PrintedGauge::rows}) {
        const bool stitches = part == &PrintedGauge::stitches;
        const auto a = stitches ? inch.stitches_per_10_cm() : inch.rows_per_10_cm();
        const auto b = stitches ? metric.stitches_per_10_cm() : metric.rows_per_10_cm();
        // The rounding of a count over one inch alone may be more than the limit.
        const double rounding = a ? (inch.*part)->values.front().half_step * 10 / inch.over_cm : 0;
        if (!a || !b || std::abs(*a - *b) <= std::max(slack, rounding) + 1e-9) continue;
        Finding& finding = findings.add(
            "gauges over inches and centimetres differ: " + printed_words(input.printed, *(inch.*part)) +
            ", " + printed_words(input.printed, *(metric.*part)));
        show(finding, input.printed, *(inch.*part));
        show(finding, input.printed, *(metric.*part));
        finding.apart = stitches ? "stitches" : "rows";
        finding.evidence = {gauge_words(input.printed, inch) + " = " + figure(*a) + " in 10 cm",
                            gauge_words(input.printed, metric) + " = " + figure(*b) + " in 10 cm"};
        finding.query = "The two gauges give " + figure(*a) + " and " + figure(*b) +
                        (stitches ? " stitches" : " rows") + " in 10 cm. Which is right?";
      }
    }
  }
}

void gauge_said_twice(const ReviewInput& input, Findings& findings) {
  const auto gauges = printed_gauges(input.printed);
  for (std::size_t i = 0; i < gauges.size(); ++i)
    for (std::size_t j = i + 1; j < gauges.size(); ++j) {
      const PrintedGauge &one = gauges[i], &other = gauges[j];
      if (!one.same_fabric(other) || one.per_inch != other.per_inch) continue;
      if (one.state && other.state && one.state->words != other.state->words) continue;
      const auto differ = [](const std::optional<double>& a, const std::optional<double>& b) {
        return a && b && std::abs(*a - *b) > 1e-6;
      };
      const bool stitches = differ(one.stitches_per_10_cm(), other.stitches_per_10_cm());
      const bool row_count = differ(one.rows_per_10_cm(), other.rows_per_10_cm());
      const bool units_differ = one.over && other.over && one.over->unit != other.over->unit;
      if ((!stitches && !row_count) || units_differ) continue;
      Finding& finding = findings.add("gauge said twice, differently: " + gauge_words(input.printed, one) +
                                      ", " + gauge_words(input.printed, other));
      for (const PrintedGauge* gauge : {&one, &other})
        for (const Statement* part :
             {stitches ? gauge->stitches : nullptr, row_count ? gauge->rows : nullptr})
          if (part != nullptr) show(finding, input.printed, *part);
      finding.apart = one.fabric ? lower_ascii(one.fabric->words) : "";
      finding.evidence = {"First: " + gauge_words(input.printed, one),
                          "Then: " + gauge_words(input.printed, other)};
      finding.query = "The gauge is given as " + gauge_words(input.printed, one) + " and as " +
                      gauge_words(input.printed, other) + ". Which is right?";
    }
}

}  // namespace skeinproof
