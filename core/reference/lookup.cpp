// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/reference/lookup.h"

#include <algorithm>
#include <cmath>

#include "core/base/text.h"

namespace skeinproof {
namespace {

template <class Row>
const Row* find_row(std::span<const Row> rows, std::string_view Row::*member, std::string_view key) {
  if (key.empty()) return nullptr;
  const auto at = std::find_if(rows.begin(), rows.end(), [&](const Row& row) { return row.*member == key; });
  return at == rows.end() ? nullptr : &*at;
}

// "10½" and "10 1/2" as "10.5", so that numbers compare by their text.
std::string needle_number(std::string_view typed) {
  std::string text = lower_ascii(tidy_spaces(typed));
  for (const auto& [written, meant] : {std::pair<std::string_view, std::string_view>{" 1/2", ".5"},
                                       {"½", ".5"},
                                       {" 3/4", ".75"},
                                       {"¾", ".75"},
                                       {",", "."}})
    if (const auto at = text.find(written); at != std::string::npos) text.replace(at, written.size(), meant);
  if (text.find('.') != std::string::npos)
    while (text.back() == '0') text.pop_back();
  return text;
}

std::vector<const NeedleRow*> needles_by(Cited NeedleRow::*name, std::string_view typed) {
  std::vector<const NeedleRow*> found;
  const std::string number = needle_number(typed);
  if (number.empty()) return found;
  for (const NeedleRow& row : needle_rows())
    if ((row.*name).text == number) found.push_back(&row);
  return found;
}

std::string yarn_word(std::string_view typed) {
  std::string text = lower_ascii(tidy_spaces(typed));
  std::replace(text.begin(), text.end(), '-', ' ');
  constexpr std::string_view tail = " weight";
  if (text.size() > tail.size() && text.compare(text.size() - tail.size(), tail.size(), tail) == 0)
    text.resize(text.size() - tail.size());
  return text;
}

// Whether one of the names in "5 ply (AU); light DK (UK)" or "sock, fingering" is the word. Regions are
// dropped; "fingering (very fine)" stays another thing than fingering.
bool names_word(std::string_view names, const std::string& word) {
  std::string text = lower_ascii(names);
  for (char& c : text)
    if (c == ';' || c == '/') c = ',';
  for (std::string part : split(text, ',')) {
    for (std::string_view region : {"(uk", "(au", "(us"})
      if (const auto bracket = part.find(region); bracket != std::string::npos) part.resize(bracket);
    if (trimmed(part) == word) return true;
  }
  return false;
}

bool reaches(const PackageTolerance& row, double nominal) {
  const bool above = !row.nominal_from || nominal > *row.nominal_from ||
                     (nominal == *row.nominal_from && row.from_inclusive != "no");
  const bool below = !row.nominal_to || nominal < *row.nominal_to ||
                     (nominal == *row.nominal_to && row.to_inclusive != "no");
  return above && below;
}

// The first row of a family that takes the nominal amount in.
std::optional<AllowedShortage> shortage(std::string_view family, double nominal) {
  for (const PackageTolerance& row : package_tolerances()) {
    if (row.id.substr(0, family.size()) != family || !row.amount || !reaches(row, nominal)) continue;
    const bool percent = row.tolerance_unit.substr(0, 1) == "%";
    return AllowedShortage{percent ? nominal * *row.amount / 100 : *row.amount, &row};
  }
  return std::nullopt;
}

std::optional<AllowedShortage> european_shortage(std::string_view family, double nominal) {
  auto found = shortage(family, nominal);
  // The slack keeps a product such as 4.5 from being lifted to 4.6 by its last binary digit.
  if (found) found->amount = std::ceil(found->amount * 10 - 1e-9) / 10;
  return found;
}

}  // namespace

const Fibre* fibre_by_id(std::string_view id) { return find_row(fibres(), &Fibre::id, id); }
const LoopConstant* loop_constant_by_id(std::string_view id) {
  return find_row(loop_constants(), &LoopConstant::id, id);
}
const CountSystem* count_system_by_name(std::string_view name) {
  const CountSystem* row = find_row(count_systems(), &CountSystem::name, name);
  return row ? row : find_row(count_systems(), &CountSystem::symbol, name);
}
const RuleOfThumb* rule_by_id(std::string_view id) {
  return find_row(rules_of_thumb(), &RuleOfThumb::id, id);
}
const PackageTolerance* package_tolerance_by_id(std::string_view id) {
  return find_row(package_tolerances(), &PackageTolerance::id, id);
}
const Caution* caution_by_id(std::string_view id) { return find_row(cautions(), &Caution::id, id); }
const SourceRow* source_by_key(std::string_view key) { return find_row(sources(), &SourceRow::key, key); }

const NeedleRow* needle_by_mm(double mm) {
  for (const NeedleRow& row : needle_rows())
    if (std::abs(row.mm - mm) < 0.005) return &row;
  return nullptr;
}
std::vector<const NeedleRow*> needles_by_us(std::string_view number) {
  return needles_by(&NeedleRow::us, number);
}
std::vector<const NeedleRow*> needles_by_uk_old(std::string_view number) {
  return needles_by(&NeedleRow::uk_old, number);
}
std::vector<const NeedleRow*> needles_by_japan(std::string_view number) {
  return needles_by(&NeedleRow::japan, number);
}

std::vector<const WeightCategory*> weight_categories_by_word(std::string_view typed) {
  std::vector<const WeightCategory*> found;
  const std::string word = yarn_word(typed);
  if (word.empty()) return found;
  for (const WeightCategory& row : weight_categories()) {
    const bool numbered = row.number && word == std::to_string(static_cast<int>(*row.number));
    if (numbered || names_word(row.name, word) || names_word(row.yarn_types, word) ||
        names_word(row.ply_name, word))
      found.push_back(&row);
  }
  return found;
}

std::vector<const WeightCategory*> weight_categories_by_stitches(double stitches_per_4in) {
  std::vector<const WeightCategory*> found;
  for (const WeightCategory& row : weight_categories()) {
    if (!row.number || !row.stitches_per_4in.high) continue;
    if (stitches_per_4in >= row.stitches_per_4in.low.value_or(0) &&
        stitches_per_4in <= *row.stitches_per_4in.high)
      found.push_back(&row);
  }
  return found;
}

std::optional<AllowedShortage> european_mass_shortage(Grams nominal) {
  return european_shortage("eu_T1_", nominal.value());
}
std::optional<AllowedShortage> european_mass_limit(Grams nominal) {
  auto found = shortage("eu_T2_", nominal.value());
  // Twice T1 as that is rounded, not the percentage rounded by itself.
  if (const auto once = european_mass_shortage(nominal); found && once) found->amount = 2 * once->amount;
  return found;
}
std::optional<AllowedShortage> united_states_mass_shortage(Grams labelled) {
  return shortage("us_mav_weight_", labelled.value());
}
std::optional<AllowedShortage> united_states_length_shortage(Metres labelled) {
  return shortage("us_mav_length_", labelled.value());
}
std::optional<AllowedShortage> german_yarn_length_shortage(Metres nominal) {
  if (nominal.value() <= 0) return std::nullopt;
  if (auto yarn = shortage("de_length_yarn", nominal.value())) return yarn;
  return shortage("de_length", nominal.value());
}

Grams coarsest_scale_step(Grams skein) { return grams(skein.value() * 0.02 / 10); }

std::string citation(std::string_view source) {
  std::string text;
  for (const std::string& part : split(source, ';')) {
    const std::string_view words = trimmed(part);
    if (words.empty()) continue;
    const auto end = words.find_first_of(" (,:");
    const SourceRow* row = source_by_key(words.substr(0, end));
    if (!text.empty()) text += "; ";
    text += row ? row->citation : words;
    if (row && end != std::string_view::npos) text += std::string(words.substr(end));
  }
  return text;
}

std::string citation(std::string_view source, Confidence confidence) {
  if (source.empty() || confidence == Confidence::common_practice) return "common practice, no source";
  const std::string text = citation(source);
  return confidence == Confidence::memory ? text + "; figure from memory" : text;
}

}  // namespace skeinproof
