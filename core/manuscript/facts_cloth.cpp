// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/manuscript/facts_parts.h"
#include "core/pattern/edits.h"
#include "core/reference/lookup.h"

namespace skeinproof {
namespace {

// Words that name a structure, the telling ones first; common practice, no source.
constexpr std::pair<std::string_view, Structure> structure_words[] = {
    {"strand", Structure::stranded},    {"colourwork", Structure::stranded},
    {"colorwork", Structure::stranded}, {"intarsia", Structure::intarsia},
    {"garter", Structure::garter},      {"moss", Structure::moss},
    {"seed", Structure::moss},          {"cable", Structure::cable},
    {"lace", Structure::lace},          {"slip", Structure::slip_stitch},
    {"brioche", Structure::brioche},    {"rib", Structure::rib},
    {"stocking", Structure::plain},     {"stockinette", Structure::plain},
    {"st st", Structure::plain},        {"plain", Structure::plain}};

std::optional<Structure> structure_named(std::string_view words) {
  const std::string lower = folded_name(words);
  for (const auto& [word, structure] : structure_words)
    if (lower.find(word) != std::string::npos) return structure;
  return std::nullopt;
}

// What a measurement of that name measures, by the words in it; the longer words stand first.
constexpr std::pair<std::string_view, MeasurementKind> measurement_words[] = {
    {"sleeve length", MeasurementKind::sleeve_length},
    {"sleeve seam", MeasurementKind::sleeve_length},
    {"underarm length", MeasurementKind::sleeve_length},
    {"upper arm", MeasurementKind::sleeve_width},
    {"sleeve width", MeasurementKind::sleeve_width},
    {"yoke depth", MeasurementKind::yoke_depth},
    {"neck", MeasurementKind::neck_circumference},
    {"foot length", MeasurementKind::other},
    {"leg length", MeasurementKind::other},
    {"body length", MeasurementKind::body_length},
    {"length", MeasurementKind::body_length},
    {"bust", MeasurementKind::circumference},
    {"chest", MeasurementKind::circumference},
    {"head", MeasurementKind::circumference},
    {"hand", MeasurementKind::circumference},
    {"circumference", MeasurementKind::circumference}};

MeasurementKind measurement_kind(std::string_view name) {
  const std::string lower = folded_name(name);
  for (const auto& [word, kind] : measurement_words)
    if (lower.find(word) != std::string::npos) return kind;
  return MeasurementKind::other;
}

template <class Test>
Fabric* only_fabric(Pattern& pattern, Test&& test) {
  Fabric* only = nullptr;
  for (Fabric& fabric : pattern.fabrics) {
    if (!test(fabric)) continue;
    if (only != nullptr) return nullptr;
    only = &fabric;
  }
  return only;
}

// The fabric that words name: by its name, by its structure, or by the section or piece that alone is worked
// in it, ribs aside. Without words it is the only one.
Fabric* fabric_of(Pattern& pattern, std::string_view words) {
  const std::string name = folded_name(words);
  if (name.empty()) return only_fabric(pattern, [](const Fabric&) { return true; });
  if (Fabric* named =
          only_fabric(pattern, [&](const Fabric& fabric) { return folded_name(fabric.name) == name; }))
    return named;
  if (const auto structure = structure_named(name))
    return only_fabric(pattern, [&](const Fabric& fabric) { return fabric.structure == *structure; });
  return only_fabric(pattern, [&](const Fabric& fabric) {
    return std::any_of(pattern.pieces.begin(), pattern.pieces.end(), [&](const Piece& piece) {
      const bool whole = folded_name(piece.name) == name && fabric.structure != Structure::rib;
      return std::any_of(piece.sections.begin(), piece.sections.end(), [&](const Section& section) {
        return section.fabric == fabric.id && (whole || folded_name(section.name) == name);
      });
    });
  });
}

bool several_meant(const Pattern& pattern, std::string_view words) {
  const auto structure = structure_named(words);
  const auto meant = std::count_if(pattern.fabrics.begin(), pattern.fabrics.end(), [&](const Fabric& fabric) {
    return words.empty() || (structure && fabric.structure == *structure);
  });
  return meant > 1;
}

Fabric& new_fabric(Pattern& pattern, std::string_view words) {
  const auto structure = structure_named(words);
  add_fabric(pattern, std::string(words));
  pattern.fabrics.back().structure = structure.value_or(words.empty() ? Structure::plain : Structure::other);
  return pattern.fabrics.back();
}

std::optional<GaugeState> state_named(std::string_view words) {
  const std::string lower = folded_name(words);
  const std::pair<std::string_view, GaugeState> rows[] = {{"unwashed", GaugeState::never_wetted},
                                                          {"unblocked", GaugeState::never_wetted},
                                                          {"not ", GaugeState::never_wetted},
                                                          {"before ", GaugeState::never_wetted},
                                                          {"wash", GaugeState::washed},
                                                          {"block", GaugeState::wetted},
                                                          {"wet", GaugeState::wetted}};
  for (const auto& [word, state] : rows)
    if (lower.find(word) != std::string::npos) return state;
  return std::nullopt;
}

std::optional<Worked> worked_named(std::string_view words) {
  const std::string lower = folded_name(words);
  if (lower.find("round") != std::string::npos) return Worked::in_the_round;
  if (lower.find("flat") != std::string::npos || lower.find("row") != std::string::npos) return Worked::flat;
  return std::nullopt;
}

// What one breath says of a gauge.
struct GaugeSaid {
  const Statement *stitches = nullptr, *rows = nullptr, *fabric = nullptr, *state = nullptr,
                  *worked = nullptr;
};

GaugeSaid gauge_said(const FactsTaken::Statements& breath) {
  GaugeSaid said;
  const auto first = [](const Statement*& place, const Statement* statement) {
    if (place == nullptr) place = statement;
  };
  for (const Statement* statement : breath) switch (statement->kind) {
      case StatementKind::gauge_stitches:
        first(said.stitches, statement);
        break;
      case StatementKind::gauge_rows:
        first(said.rows, statement);
        break;
      case StatementKind::gauge_fabric:
        first(said.fabric, statement);
        break;
      case StatementKind::gauge_state:
        first(said.state, statement);
        break;
      case StatementKind::gauge_worked:
        first(said.worked, statement);
        break;
      default:
        break;
    }
  return said;
}

// Said of no gauge in particular, a state or a way of working holds for all.
const Statement* of_all_gauges(const FactsTaken& taken, StatementKind kind) {
  for (const Statement* statement : taken.all(kind)) {
    const GaugeSaid said = gauge_said(taken.breath(statement->mention));
    if (said.stitches == nullptr && said.rows == nullptr) return statement;
  }
  return nullptr;
}

void take_over(const FactsTaken& taken, const FactsTaken::Statements& breath, Gauge& gauge) {
  for (const Statement* one : breath) {
    if (one->kind != StatementKind::gauge_over) continue;
    const Statement* over =
        in_best_unit(breath, *one, {PrintedUnit::centimetre, PrintedUnit::millimetre, PrintedUnit::inch});
    const PrintedValue* figure = over == nullptr ? nullptr : first_figure(*over);
    if (figure == nullptr || !(*figure->number > 0)) continue;
    // Four inches stand for ten centimetres in every pattern; common practice, no source.
    const bool four_inches = over->unit == PrintedUnit::inch && *figure->number == 4;
    std::optional<Entered<Centimetres>> fact = gauge.over;
    lay_figure(fact, four_inches ? 10 : *figure->number * in_fact_unit(over->unit), 0,
               taken.typed(*figure, over->unit));
    gauge.over = *fact;
    return;
  }
}

void take_gauge(FactsTaken& taken, const FactsTaken::Statements& breath, const GaugeSaid& said) {
  const std::string name = said.fabric == nullptr ? std::string() : said.fabric->words;
  Fabric* fabric = fabric_of(taken.pattern, name);
  if (fabric == nullptr && several_meant(taken.pattern, name)) {
    const Statement& counted = *(said.stitches == nullptr ? said.rows : said.stitches);
    taken.left_out.push_back("gauge " + quoted(taken.words(counted.span)) +
                             ": which of the fabrics is not said");
    return;
  }
  if (fabric == nullptr) fabric = &new_fabric(taken.pattern, name);
  if (!taken.first("gauge " + std::to_string(fabric->id.value))) return;
  Gauge& gauge = fabric->gauge;
  take_over(taken, breath, gauge);
  const auto take = [&](std::optional<Entered<double>>& fact, const Statement* counted) {
    const PrintedValue* figure = counted == nullptr ? nullptr : first_figure(*counted);
    if (figure != nullptr) lay_figure(fact, *figure->number, figure->half_step, {});
  };
  take(gauge.stitches, said.stitches);
  take(gauge.rows, said.rows);
  const Statement* state = said.state ? said.state : of_all_gauges(taken, StatementKind::gauge_state);
  const Statement* worked = said.worked ? said.worked : of_all_gauges(taken, StatementKind::gauge_worked);
  if (state != nullptr) gauge.state = state_named(state->words).value_or(gauge.state);
  if (worked != nullptr) gauge.worked = worked_named(worked->words).value_or(gauge.worked);
}

Measurement& measurement_named(Pattern& pattern, const std::string& name, bool to_fit) {
  const auto found = std::find_if(pattern.measurements.begin(), pattern.measurements.end(),
                                  [&](const Measurement& measurement) {
                                    return folded_name(measurement.name) == folded_name(name) &&
                                           (measurement.fit == Fit::to_fit) == to_fit;
                                  });
  if (found != pattern.measurements.end()) return *found;
  Measurement& measurement = pattern.measurements.emplace_back();
  measurement.id = take_id<MeasurementId>(pattern);
  measurement.name = name;
  measurement.kind = measurement_kind(name);
  measurement.fit = to_fit ? Fit::to_fit : Fit::finished;
  return measurement;
}

constexpr double same_needle_cm = 1e-6;

std::optional<double> needle_mm(const FactsTaken& taken, const Statement& needle) {
  if (needle.values.empty()) return std::nullopt;
  if (needle.unit == PrintedUnit::millimetre) return needle.values.front().number;
  const std::string number = taken.words(needle.values.front().span);
  std::vector<const NeedleRow*> rows;
  if (needle.unit == PrintedUnit::needle_us) rows = needles_by_us(number);
  if (needle.unit == PrintedUnit::needle_uk) rows = needles_by_uk_old(number);
  if (needle.unit == PrintedUnit::needle_japan) rows = needles_by_japan(number);
  return rows.size() == 1 ? std::optional(rows.front()->mm) : std::nullopt;
}

}  // namespace

void take_measurements(FactsTaken& taken) {
  for (const Statement* one : taken.all(StatementKind::measurement)) {
    const Statement* statement = in_best_unit(
        taken.breath(one->mention), *one,
        {PrintedUnit::centimetre, PrintedUnit::inch, PrintedUnit::millimetre, PrintedUnit::metre});
    if (statement == nullptr) continue;
    const bool to_fit = statement->qualifier == word_of(Fit::to_fit);
    const std::string name = statement->subject + (to_fit ? ", to fit" : "");
    if (statement->subject.empty() && statement->values.size() == 1) {
      // "75 x 90 cm": which is which is not said.
      if (one == statement)
        taken.left_out.push_back("measurement " + taken.typed(statement->values.front(), statement->unit) +
                                 ": of what is not said");
      continue;
    }
    if (!taken.first("measurement " + folded_name(name))) continue;
    const auto values = taken.along_sizes(*statement, name);
    if (!values) continue;
    Measurement& measurement = measurement_named(taken.pattern, statement->subject, to_fit);
    const double unit = statement->unit == PrintedUnit::metre ? 100 : in_fact_unit(statement->unit);
    for (std::size_t i = 0; i < values->size(); ++i) {
      const PrintedValue* value = (*values)[i];
      if (value == nullptr) continue;
      std::optional<Entered<Centimetres>> fact = measurement.values.at(i);
      lay_figure(fact, *value->number * unit, value->half_step * unit, taken.typed(*value, statement->unit));
      measurement.values.set(i, std::move(fact));
    }
  }
}

void take_gauges(FactsTaken& taken) {
  for (const StatementKind kind : {StatementKind::gauge_stitches, StatementKind::gauge_rows})
    for (const Statement* statement : taken.all(kind)) {
      if (!taken.first("breath of a gauge " + std::to_string(statement->mention))) continue;
      const auto& breath = taken.breath(statement->mention);
      take_gauge(taken, breath, gauge_said(breath));
    }
}

void take_needles(FactsTaken& taken) {
  for (const Statement* one : taken.all(StatementKind::needle)) {
    if (!taken.first("breath of a needle " + std::to_string(one->mention) + " " + one->subject)) continue;
    const Statement* needle = in_best_unit(
        taken.breath(one->mention), *one,
        {PrintedUnit::millimetre, PrintedUnit::needle_us, PrintedUnit::needle_uk, PrintedUnit::needle_japan});
    const auto mm = needle == nullptr ? std::nullopt : needle_mm(taken, *needle);
    if (!mm) continue;
    Fabric* fabric = fabric_of(taken.pattern, needle->subject);
    const std::string shown = "needle " + taken.typed(needle->values.front(), needle->unit);
    const auto has_it = [&](const Fabric& worked) {
      return worked.needle && std::abs(worked.needle->value.value() - *mm / 10) < same_needle_cm;
    };
    if (fabric == nullptr && needle->subject.empty() &&
        std::all_of(taken.pattern.fabrics.begin(), taken.pattern.fabrics.end(), has_it) &&
        !taken.pattern.fabrics.empty())
      continue;
    if (fabric == nullptr && structure_named(needle->subject) &&
        !several_meant(taken.pattern, needle->subject))
      fabric = &new_fabric(taken.pattern, needle->subject);
    if (fabric == nullptr) {
      taken.left_out.push_back(needle->subject.empty()
                                   ? shown + ": what it is for is not said"
                                   : shown + " for " + needle->subject + ": no one fabric is meant by that");
      continue;
    }
    if (!taken.first("needle " + std::to_string(fabric->id.value))) continue;
    lay_figure(fabric->needle, *mm / 10, same_needle_cm, taken.typed(needle->values.front(), needle->unit));
  }
}

}  // namespace skeinproof
