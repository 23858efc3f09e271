// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/fabric/gauge.h"
#include "core/reference/lookup.h"
#include "core/substitution/comparing.h"
#include "core/yarn/care.h"
#include "core/yarn/thickness.h"

namespace skeinproof {
namespace {

// How far a thickness ratio of two threads may be off, and which case it is.
Known thickness_error(const Comparing& comparing, const Thread& own, const Thread& other) {
  const AirClass one = air_class(own), two = air_class(other);
  Known known;
  const bool alike = one == two && one != AirClass::unstated;
  known.error_share =
      comparing.constant_of(alike ? "bench_thickness_same_pct" : "bench_thickness_other_pct") / 100;
  const std::string pct = "±" + comparing.short_number(100 * known.error_share, 1) + " %";
  if (own.strands == other.strands)
    known.error_share = 0, known.because = "the same yarn";
  else if (alike)
    known.because = pct + ", both " + std::string(word_of(one));
  else if (one == AirClass::unstated || two == AirClass::unstated)
    known.because = "up to " + pct + ", because the spinning of one is not stated";
  else
    known.because = "up to " + pct + ", " + std::string(word_of(two)) + " for " + std::string(word_of(one));
  return known;
}

void take_thickness(const Comparing& comparing, const Thread& own, const Thread& other, CandidateRole& role) {
  const auto first = density_of(own), second = density_of(other);
  role.thickness_by_mass = role.thickness_by_volume = thickness_error(comparing, own, other);
  if (!first || !second) {
    const std::string missing = (first ? second : first).error().found;
    role.thickness_by_mass = role.thickness_by_volume = {{}, 0, missing};
    return;
  }
  role.thickness_by_mass.value = std::sqrt(first->value() / second->value());
  role.thickness_by_mass.because = "by mass, " + role.thickness_by_mass.because;
  const auto rho = fibre_density(composition_of(own)), rho_other = fibre_density(composition_of(other));
  if (!rho || !rho_other) {
    role.thickness_by_volume = {
        {}, 0, "the density of the fibres: " + (rho ? rho_other : rho).error().message()};
    return;
  }
  role.thickness_by_volume.value = thickness_ratio(*first, rho->g_per_cm3, *second, rho_other->g_per_cm3);
  role.thickness_by_volume.because = "by volume, " + role.thickness_by_volume.because;
}

Known likely_gauge(const Comparing& comparing, const Known& thickness) {
  Known gauge;
  if (!comparing.stitches_10cm) {
    gauge.because = "no gauge of the pattern";
  } else if (!thickness) {
    gauge.because = thickness.because;
  } else {
    gauge.value = *comparing.stitches_10cm / *thickness.value;
    gauge.error_share = thickness.error_share;
    gauge.because = "stitches in 10 cm at the firmness of the pattern, " + thickness.because;
  }
  return gauge;
}

void take_firmness(const Comparing& comparing, const Thread& stitch, CandidateRole& role) {
  const auto density = density_of(stitch);
  if (!density || !comparing.density) {
    role.firmness.because = role.firmness_by_loop.because =
        !density ? density.error().found : "no gauge of stitches and rows";
    return;
  }
  role.firmness.value = firmness_from_gauge(*comparing.density, *density);
  role.firmness.because = "at the pattern's gauge, 6.98 × √(stitches in cm² ÷ metres in a gram)";
  if (comparing.cloth->structure != Structure::plain)
    role.firmness.because += "; the gauge is of " + std::string(word_of(comparing.cloth->structure));
  if (comparing.loop) {
    role.firmness_by_loop.value = firmness(*density, *comparing.loop);
    role.firmness_by_loop.because = "√tex ÷ " + comparing.loop_because;
  } else {
    role.firmness_by_loop.because = "no loop length that was typed or weighed";
  }
}

GaugeReach reach_of(const Comparing& comparing, const Known& gauge) {
  if (!gauge || !comparing.stitches_10cm) return GaugeReach::unknown;
  constexpr double hair = 1e-9;
  const double off = std::abs(*gauge.value - *comparing.stitches_10cm);
  if (off <= comparing.constant_of("bench_gauge_meets_sts") + hair) return GaugeReach::meets;
  return off <= comparing.constant_of("bench_gauge_reach_sts") + hair ? GaugeReach::needle_change
                                                                      : GaugeReach::another_fabric;
}

// "reachable with a needle change, cloth firmer (F 11.1→11.4)".
std::string reach_words(const Comparing& comparing, GaugeReach reach, const Known& firmness,
                        const Known& own) {
  std::string words(word_of(reach));
  if (reach != GaugeReach::needle_change || !firmness || !own) return words;
  return words + ", cloth " + (*firmness.value > *own.value ? "firmer" : "looser") + " (F " +
         comparing.number(*own.value, 1) + "→" + comparing.number(*firmness.value, 1) + ")";
}

std::string gauge_words(const Comparing& comparing, const CandidateFacts& facts, const Known& own_firmness) {
  const std::string mass = reach_words(comparing, facts.reach_by_mass, facts.firmness, own_firmness);
  const std::string volume = reach_words(comparing, facts.reach_by_volume, facts.firmness, own_firmness);
  if (facts.reach_by_volume == GaugeReach::unknown && facts.reach_by_mass == GaugeReach::unknown)
    return "not known: " + facts.gauge_by_mass.because;
  if (facts.reach_by_volume == GaugeReach::unknown) return "by mass: " + mass;
  return mass == volume ? mass : "by mass: " + mass + "; by volume: " + volume;
}

std::string label_gauge(const Comparing& comparing, const Thread& thread) {
  if (thread.strands.size() != 1 || thread.count() != 1)
    return thread.empty() ? "" : "a band speaks of one strand; these are several together";
  const Yarn& yarn = *thread.strands.front().first;
  const auto low = yarn.band_stitches_low ? yarn.band_stitches_low : yarn.band_stitches_high;
  const auto high = yarn.band_stitches_high ? yarn.band_stitches_high : yarn.band_stitches_low;
  if (!low) return "its band names no gauge";
  std::string words = comparing.short_number(low->value, 1);
  if (high->value != low->value) words += "–" + comparing.short_number(high->value, 1);
  words += " stitches on its band";
  if (!comparing.stitches_10cm) return words;
  const double gauge = *comparing.stitches_10cm;
  words += ", the pattern " + comparing.short_number(gauge, 1);
  if (gauge < low->value - 1e-9 || gauge > high->value + 1e-9) return words + ": outside";
  return words + ": inside";
}

// The nearest needle size in proportion to the stitches, at least one step away where the yarn asks for a
// change.
std::string needle_words(const Comparing& comparing, const CandidateFacts& facts) {
  if (comparing.cloth == nullptr || !comparing.cloth->needle || !facts.gauge_low || !comparing.stitches_10cm)
    return {};
  const double own_mm = 10 * comparing.cloth->needle->value.value();
  const bool needs_change =
      facts.reach_by_mass == GaugeReach::needle_change || facts.reach_by_volume == GaugeReach::needle_change;
  if (facts.reach_by_mass == GaugeReach::another_fabric ||
      facts.reach_by_volume == GaugeReach::another_fabric)
    return {};
  const std::string own = comparing.short_number(own_mm, 2) + " mm";
  if (!needs_change) return "begin on the pattern's " + own;
  const double likely = (*facts.gauge_low + *facts.gauge_high) / 2;
  const double wanted = own_mm * likely / *comparing.stitches_10cm;
  const bool thinner = likely < *comparing.stitches_10cm;
  double best = 0;
  for (const NeedleRow& row : needle_rows()) {
    if (thinner ? row.mm >= own_mm - 1e-9 : row.mm <= own_mm + 1e-9) continue;
    if (best == 0 || std::abs(row.mm - wanted) < std::abs(best - wanted)) best = row.mm;
  }
  if (best == 0) return {};
  return "begin on " + comparing.short_number(best, 2) + " mm, not " + own +
         " (in proportion to the stitches)";
}

}  // namespace

void fill_cloth(const Comparing& comparing, const CandidateThreads& threads, const CandidateThreads& own,
                CandidateFacts& facts) {
  for (std::size_t i = 0; i < facts.roles.size(); ++i) {
    CandidateRole& role = facts.roles[i];
    take_thickness(comparing, own.roles[i].stitch, threads.roles[i].stitch, role);
    role.gauge_by_mass = likely_gauge(comparing, role.thickness_by_mass);
    role.gauge_by_volume = likely_gauge(comparing, role.thickness_by_volume);
    take_firmness(comparing, threads.roles[i].stitch, role);
  }
}

void fill_whole(const Comparing& comparing, const CandidateThreads& threads, const CandidateFacts* own,
                CandidateFacts& facts) {
  if (facts.roles.empty()) return;
  const CandidateRole& main = facts.roles[facts.main_role];
  facts.thickness_by_mass = main.thickness_by_mass;
  facts.thickness_by_volume = main.thickness_by_volume;
  facts.gauge_by_mass = main.gauge_by_mass;
  facts.gauge_by_volume = main.gauge_by_volume;
  facts.firmness = main.firmness;
  facts.firmness_by_loop = main.firmness_by_loop;
  for (const Known* road : {&facts.gauge_by_mass, &facts.gauge_by_volume})
    if (*road) {
      facts.gauge_low = std::min(facts.gauge_low.value_or(*road->value), *road->value);
      facts.gauge_high = std::max(facts.gauge_high.value_or(*road->value), *road->value);
    }
  facts.reach_by_mass = reach_of(comparing, facts.gauge_by_mass);
  facts.reach_by_volume = reach_of(comparing, facts.gauge_by_volume);
  facts.gauge_words = gauge_words(comparing, facts, (own != nullptr ? *own : facts).firmness);
  facts.label_gauge = label_gauge(comparing, threads.roles[facts.main_role].thread);
  facts.needle = needle_words(comparing, facts);

  double mass = 0;
  facts.mass_g.error_share = main.mass_g.error_share;
  facts.mass_g.because = main.mass_g.because;
  for (const CandidateRole& role : facts.roles) {
    if (!role.mass_g) {
      facts.mass_g = {{}, 0, role.label + ": " + role.mass_g.because};
      break;
    }
    mass += *role.mass_g.value;
    facts.mass_g.value = mass;
  }
  const Known& own_mass = (own != nullptr ? *own : facts).mass_g;
  if (facts.mass_g && own_mass && *own_mass.value > 0) {
    facts.mass_more.value = *facts.mass_g.value / *own_mass.value - 1;
    facts.mass_more.because = "by the labels alone: the knitted lengths are the same";
  } else {
    facts.mass_more.because = facts.mass_g ? own_mass.because : facts.mass_g.because;
  }
  facts.mass_per_area.because = facts.mass_g.because;
  if (facts.mass_g && comparing.area_m2 && *comparing.area_m2 > 0) {
    facts.mass_per_area.value = *facts.mass_g.value / *comparing.area_m2;
    facts.mass_per_area.error_share = facts.mass_g.error_share;
  } else if (facts.mass_g) {
    facts.mass_per_area.because = "no area of the cloth";
  }
}

void fill_care(const CandidateThreads& threads, CandidateFacts& facts) {
  std::vector<std::string> unknown, strictest;
  for (const auto& role : threads.roles)
    for (const auto& [yarn, strands] : role.thread.strands) {
      const auto rank = care_rank(lower_ascii(yarn->care));
      auto& names = rank ? strictest : unknown;
      if (rank && (!facts.care_rank || *rank < *facts.care_rank)) {
        facts.care_rank = rank;
        strictest.clear();
      }
      if ((!rank || *rank == *facts.care_rank) &&
          std::find(names.begin(), names.end(), yarn->name) == names.end())
        names.push_back(yarn->name);
    }
  if (facts.care_rank)
    facts.care_words =
        std::string(care_rank_words(*facts.care_rank)) + ", because of " + join(strictest, ", ");
  if (!unknown.empty())
    facts.care_words += (facts.care_words.empty() ? "" : "; ") + ("no care stated of " + join(unknown, ", "));
}

}  // namespace skeinproof
