// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/reference/tables.h"
#include "core/units/quantity.h"

namespace skeinproof {

// Finding rows of the published tables. A null pointer or an empty list says that there is no such row.
const Fibre* fibre_by_id(std::string_view id);
const LoopConstant* loop_constant_by_id(std::string_view id);
const CountSystem* count_system_by_name(std::string_view name);  // by name or symbol
const RuleOfThumb* rule_by_id(std::string_view id);
const PackageTolerance* package_tolerance_by_id(std::string_view id);
const Caution* caution_by_id(std::string_view id);
const SourceRow* source_by_key(std::string_view key);

// Needle rows of exactly this diameter, or by number; some numbers are two diameters. "2½", "2 1/2" and "2.5"
// are the same number.
const NeedleRow* needle_by_mm(double mm);
std::vector<const NeedleRow*> needles_by_us(std::string_view number);
std::vector<const NeedleRow*> needles_by_uk_old(std::string_view number);
std::vector<const NeedleRow*> needles_by_japan(std::string_view number);

// Weight categories a yarn word names ("DK", "fingering", "8 ply", "super bulky", "3"), the numbered ones
// first, and those whose stitches per 4 inches (10.16 cm) take a gauge in; two where the published bands
// overlap, none between.
std::vector<const WeightCategory*> weight_categories_by_word(std::string_view word);
std::vector<const WeightCategory*> weight_categories_by_stitches(double stitches_per_4in);

// How far one package may fall short of its label; absent outside the table. `row` says by which rule.
// Percentages of the European mass rule are rounded up to 0.1 g as that rule asks.
struct AllowedShortage {
  double amount = 0;  // g or m
  const PackageTolerance* row = nullptr;
};
std::optional<AllowedShortage> european_mass_shortage(Grams nominal);        // tolerable negative error T1
std::optional<AllowedShortage> european_mass_limit(Grams nominal);           // absolute limit T2
std::optional<AllowedShortage> united_states_mass_shortage(Grams labelled);  // maximum allowable variation
std::optional<AllowedShortage> united_states_length_shortage(Metres labelled);
std::optional<AllowedShortage> german_yarn_length_shortage(Metres nominal);
// The coarsest scale step that still finds a length by weighing: a tenth of the mass of 2 % of the length.
Grams coarsest_scale_step(Grams skein);

// "GATE15; MUNDEN59" in full: the citations joined by "; ", a clause behind its own. A key without a row
// stays as it is.
std::string citation(std::string_view source);
// The same with the confidence: "…, from memory". "common practice, no source" where a figure rests on
// nothing printed.
std::string citation(std::string_view source, Confidence confidence);

}  // namespace skeinproof
