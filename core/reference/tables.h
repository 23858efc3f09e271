// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <array>
#include <optional>
#include <span>
#include <string_view>

#include "core/base/enum_words.h"

namespace skeinproof {

// The published tables the methods stand on, as typed rows compiled in from resources/reference. `source`
// names rows of sources() by key, several separated by "; "; citation() of lookup.h spells them out. An
// absent number is unknown, never zero.
enum class Confidence { unstated, verified, memory, common_practice };
template <>
struct EnumWords<Confidence> {
  static constexpr auto rows = enum_rows<Confidence>({{Confidence::unstated, ""},
                                                      {Confidence::verified, "verified"},
                                                      {Confidence::memory, "memory"},
                                                      {Confidence::common_practice, "common practice"}});
};

// A figure with the band it is to be expected in. Confidence belongs to the central value.
struct Figure {
  std::optional<double> value = std::nullopt, low = std::nullopt, high = std::nullopt;
  std::string_view source;
  Confidence confidence = Confidence::unstated;
};

// Words with their source.
struct Cited {
  std::string_view text, source;
  Confidence confidence = Confidence::unstated;
};

// Official moisture allowance in percent of dry mass. `alternative` holds where the fibre was
// `alternative_when`: "carded", "filament", "mercerised".
struct Allowance {
  std::optional<double> pct, alternative_pct;
  std::string_view alternative_when, note, source;
  Confidence confidence = Confidence::unstated;
};

struct Fibre {
  std::string_view id, name, variety_of, fibre_class;
  bool vegan = false;
  Cited legal_name;                    // generic name of the European list
  std::optional<double> legal_number;  // its number in that list
  std::string_view code, code_basis;
  Figure density;           // g/cm³ of the fibre itself
  Allowance allowance;      // European agreed allowance
  Figure us_regain_pct;     // United States commercial regain
  Figure regain_at_65_pct;  // physics: low and high at 65 % relative humidity
  Figure breaking_extension_pct, elastic_recovery_pct, wet_to_dry_strength;
  std::string_view felting, felting_note, sensitivity_note, note;
};

// Moisture held at a relative humidity, percent of dry mass, taking water up.
struct MoisturePoint {
  std::string_view curve;
  double humidity_pct = 0;
  Figure regain_pct;
  std::string_view branch;
  double temperature_c = 0;
  std::string_view trust, note;
};

// A constant or formula of loop and yarn geometry.
struct LoopConstant {
  std::string_view id, structure, quantity, symbol, state;
  Figure figure;
  std::string_view unit, meaning, example_input, example_output, note;
};

// A way of numbering linear density: tex = tex_constant x n where direct, tex_constant / n where not.
struct CountSystem {
  std::string_view name, symbol, definition;
  bool direct = true;
  double tex_constant = 1;
  std::string_view units_expression;  // for GNU units, one of the system in tex
  double units_tex = 1;
  std::string_view source;
  Confidence confidence = Confidence::unstated;
  std::array<std::string_view, 3> examples;
  std::string_view note;
};

struct WeightCategory {
  std::string_view system;
  std::optional<double> number;
  std::string_view name, yarn_types;
  Figure stitches_per_4in, needle_mm;  // low and high
  std::string_view needle_us_low, needle_us_high;
  Figure wraps_per_inch;
  std::string_view ply_name;  // names in the United Kingdom and Australia
  Figure metres_per_100g, tex;
  std::string_view note;
};

// One needle size and what it is called.
struct NeedleRow {
  double mm = 0;
  Cited us, uk_old;                  // uk_old: United Kingdom and Canada before metric sizes
  std::optional<double> uk_wire_mm;  // wire gauge diameter of that number
  Cited japan;
  std::optional<double> japan_mm;
  std::string_view note;
};

struct PackageTolerance {
  std::string_view id, jurisdiction, measure, applies_to;
  std::optional<double> nominal_from;
  std::string_view from_inclusive;
  std::optional<double> nominal_to;
  std::string_view to_inclusive, nominal_unit, kind, tolerance;
  std::optional<double> amount;  // `tolerance` where it is a number
  std::string_view tolerance_unit, rule, source;
  Confidence confidence = Confidence::unstated;
  std::string_view example, note;
};

struct Caution {
  std::string_view id, hazard, trigger, who, jurisdiction, instrument, requirement;
  std::optional<double> number;
  std::string_view number_unit, text, source;
  Confidence confidence = Confidence::unstated;
  Confidence number_confidence = Confidence::unstated;
  std::string_view note;
};

struct RuleOfThumb {
  std::string_view id, topic, rule;
  Figure figure;  // value = typical
  std::string_view unit, use_as, note;
};

struct WorkedExample {
  std::string_view id, topic, inputs;
  double expected = 0;
  std::string_view unit;
  double tolerance = 0;
  std::string_view source;
  Confidence confidence = Confidence::unstated;
  std::string_view note;
};

struct SourceRow {
  std::string_view key, citation, how_far_read;
};

// In the order of the tables.
std::span<const Fibre> fibres();
std::span<const MoisturePoint> moisture_points();
std::span<const LoopConstant> loop_constants();
std::span<const CountSystem> count_systems();
std::span<const WeightCategory> weight_categories();
std::span<const NeedleRow> needle_rows();
std::span<const PackageTolerance> package_tolerances();
std::span<const Caution> cautions();
std::span<const RuleOfThumb> rules_of_thumb();
std::span<const WorkedExample> worked_examples();
std::span<const SourceRow> sources();

}  // namespace skeinproof
