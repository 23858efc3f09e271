// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/substitution/comparing.h"

#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/fabric/gauge.h"
#include "core/need/evidence.h"

namespace skeinproof {
namespace {

const RoleNeed* need_of(const Assessment& assessment, RoleId role) {
  for (const RoleNeed& need : assessment.roles)
    if (need.role == role) return &need;
  return nullptr;
}

double error_of(const SizeNeed& need) {
  for (const Evidence& evidence : need.all_evidence)
    if (evidence.kind == need.evidence) return evidence.error;
  return 0;
}

std::string road_words(const SizeNeed& need, double error, const NumberStyle& style) {
  std::string words(word_of(need.evidence));
  if (error > 0) words += ", ±" + show_number(100 * error, 0, style) + " %, 9 in 10";
  return words;
}

// The most the printed counts allow, where nothing else is known.
RoleLength by_counts(const Comparing& comparing, const Role& role, const std::vector<RoleEvidence>& evidence,
                     std::string missing) {
  RoleLength length;
  length.because = std::move(missing);
  const double strands = std::max(1, role.strands);
  std::optional<Metres> most;
  for (const RoleEvidence& one : evidence)
    if (one.role == role.id && one.sizes[comparing.size_index].printed_counts)
      most = one.sizes[comparing.size_index].printed_counts->high;
  const Yarn* yarn = comparing.pattern.yarn(role.yarn);
  const auto* count = role.printed_count.find(comparing.size_index);
  if (!most && count != nullptr && yarn != nullptr && yarn->put_up.length && count->value > 0)
    most = count->value * yarn->put_up.length->value;
  if (!most || !(most->value() > 0) || !std::isfinite(most->value())) return length;
  length.known = length.at_most = true;
  length.planned = *most / strands;
  if (role.swatch && comparing.pattern.house().swatch_counted) length.swatch = role.swatch->value / strands;
  const double allowed = 1 + comparing.pattern.house().allowance_pct / 100;
  length.worked = std::max(metres(0), length.planned / allowed - length.swatch);
  length.because = "at most, by the printed counts; the allowance in them is taken as the house's";
  return length;
}

RoleLength length_of(const Comparing& comparing, const Role& role,
                     const std::vector<RoleEvidence>& evidence) {
  const RoleNeed* found = need_of(comparing.assessment, role.id);
  if (found == nullptr || comparing.size_index >= found->sizes.size() ||
      !found->sizes[comparing.size_index].known)
    return by_counts(comparing, role, evidence,
                     found == nullptr ? "no need of the role" : found->sizes[comparing.size_index].missing);
  const SizeNeed& need = found->sizes[comparing.size_index];
  const double strands = std::max(1, role.strands);
  RoleLength length;
  length.known = true;
  // Joins belong to the skeins of the pattern's yarn; another yarn has its own.
  Metres joins;
  if (comparing.pattern.count_joins && need.skeins)
    joins = metres(comparing.constant_of("join_m") * std::max(0, *need.skeins - 1));
  length.worked = std::max(metres(0), need.knitted - joins) / strands;
  length.swatch = need.swatch / strands;
  length.planned = need.planned / strands;
  length.error = error_of(need);
  length.because = road_words(need, length.error, comparing.style);
  return length;
}

const Fabric* cloth_of(const Pattern& pattern) {
  const Fabric* cloth = nullptr;
  for (const Fabric& fabric : pattern.fabrics) {
    if (!stitch_width(fabric.gauge)) continue;
    if (fabric.structure == Structure::plain) return &fabric;
    if (cloth == nullptr) cloth = &fabric;
  }
  return cloth;
}

void find_loop(Comparing& comparing) {
  for (const Calibration& calibration : comparing.assessment.calibrations)
    for (const Calibration::Loop& one : calibration.loops)
      if (one.fabric == comparing.cloth->id && one.loop.value() > 0) {
        comparing.loop = one.loop;
        comparing.loop_because = "loop " + comparing.number(one.loop.value(), 3) + " cm, by a weighed sample";
        return;
      }
  const FabricLoop& loop = comparing.need.loop_of(comparing.cloth->id);
  if (!loop.loop || comparing.cloth->loop_source == LoopSource::from_gauge) return;
  comparing.loop = loop.loop;
  comparing.loop_because = "loop " + comparing.number(loop.loop->value(), 3) + " cm, " +
                           std::string(word_of(comparing.cloth->loop_source));
}

bool any_unknown(const Assessment& assessment, std::size_t size_index) {
  return std::any_of(assessment.roles.begin(), assessment.roles.end(), [&](const RoleNeed& need) {
    return size_index >= need.sizes.size() || !need.sizes[size_index].known;
  });
}

}  // namespace

Comparing::Comparing(const Pattern& pattern_in, const Assessment& assessment_in, std::size_t size_index_in)
    : pattern(pattern_in),
      assessment(assessment_in),
      size_index(size_index_in),
      style{pattern_in.house().mark, pattern_in.house().fractions, false},
      need(pattern_in),
      use(item_use(need, size_index_in)) {
  std::vector<RoleEvidence> evidence;
  if (any_unknown(assessment, size_index)) evidence = gather_evidence(pattern, assessment);
  for (const Role& role : pattern.roles) lengths.push_back(length_of(*this, role, evidence));
  if (size_index < assessment.area_m2.size()) area_m2 = assessment.area_m2[size_index];
  cloth = cloth_of(pattern);
  if (cloth == nullptr) return;
  stitches_10cm = 10 / stitch_width(cloth->gauge)->value();
  if (const auto dense = stitches_per_cm2(cloth->gauge)) density = *dense;
  find_loop(*this);
}

std::string Comparing::percent(double share, int decimals) const {
  const std::string digits = number(100 * share, decimals);
  return (share >= 0 ? "+" : "") + digits + " %";
}

std::string money_words(double amount, const std::string& currency, const NumberStyle& style) {
  const std::string digits = show_number(amount, 2, style);
  if (currency.empty()) return digits + " without a currency";
  const bool letters = std::all_of(currency.begin(), currency.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '.';
  });
  return letters ? digits + " " + currency : currency + digits;
}

}  // namespace skeinproof
