// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/substitution/consequence_rules.h"
#include "core/yarn/linear_density.h"
#include "core/yarn/thickness.h"

namespace skeinproof::consequence {
namespace {

constexpr double half = 50;  // percent of mass from which a class applies

using Structures = std::initializer_list<Structure>;
const Structures veiled = {Structure::cable, Structure::lace,        Structure::stranded,
                           Structure::moss,  Structure::slip_stitch, Structure::brioche};
const Structures colour_patterns = {Structure::cable, Structure::lace, Structure::stranded,
                                    Structure::intarsia};
const Structures holds_by_friction = {Structure::stranded, Structure::lace};
const Structures carried = {Structure::stranded, Structure::intarsia};

std::string name_of(const Yarn& yarn) { return yarn.name.empty() ? "a yarn without a name" : yarn.name; }

bool is_worsted(const Yarn& yarn) {
  return yarn.spinning == Spinning::worsted || yarn.spinning == Spinning::semi_worsted;
}

// Yes, no, or the fact that is missing.
struct Tested {
  bool holds = false;
  std::string missing;
};

// A tight round yarn of several plies. What rules it out is asked first, so that only a fact that matters is
// missed.
Tested is_tight_and_round(const Yarn& yarn) {
  const YarnCharacter is = character_of(yarn);
  if (yarn.spinning == Spinning::woollen || yarn.spinning == Spinning::filament) return {};
  if (is.twist == Twist::low || is.chainette || is.brushed) return {};
  constexpr int several = 3;
  if (!is.plies && !is.cabled) return {false, "no structure of " + name_of(yarn)};
  if (!is.cabled && *is.plies < several) return {};
  if (is_worsted(yarn) || is.twist == Twist::firm || is.cabled) return {true, {}};
  return {false, "no spinning of " + name_of(yarn)};
}

// Looks at every strand of every role that is worked in some structures; without a sheet that says so, names
// it.
template <class Look>
void each_worked_strand(const RuleInput& input, RuleAnswer& answer, Structures structures, Look&& look) {
  for (std::size_t i = 0; i < input.threads.roles.size(); ++i) {
    const RoleUse& use = use_of(input, i);
    if (!use.known) answer.missing.emplace_back("what the roles are knitted in");
    if (!worked_in(use, structures)) continue;
    for (const auto& [yarn, strands] : input.threads.roles[i].thread.strands)
      look(*input.threads.roles[i].role, *yarn, use);
  }
}

}  // namespace

void halo_veils(const RuleInput& input, RuleAnswer& answer) {
  each_worked_strand(input, answer, veiled, [&](const Role& role, const Yarn& yarn, const RoleUse& use) {
    const auto halo = character_of(yarn).halo;
    if (!halo)
      answer.missing.push_back("no surface of " + name_of(yarn));
    else if (*halo == Halo::marked)
      answer.fire(role, "a marked halo of " + name_of(yarn) + " (" +
                            (yarn.surface.empty() ? "by its fibres" : yarn.surface) + ") in " +
                            structures_in_words(use, veiled));
  });
}

void colour_breaks_pattern(const RuleInput& input, RuleAnswer& answer) {
  each_worked_strand(input, answer, colour_patterns,
                     [&](const Role& role, const Yarn& yarn, const RoleUse& use) {
                       const auto variegated = character_of(yarn).variegated;
                       if (!variegated)
                         answer.missing.push_back("no colouring of " + name_of(yarn));
                       else if (*variegated)
                         answer.fire(role, name_of(yarn) + " is " + yarn.colouring + ", in " +
                                               structures_in_words(use, colour_patterns));
                     });
}

void slick_shifts(const RuleInput& input, RuleAnswer& answer) {
  for (std::size_t i = 0; i < input.threads.roles.size(); ++i) {
    const auto& role = input.threads.roles[i];
    const RoleUse& use = use_of(input, i);
    const bool steek = input.comparing.use.steek;
    if (!use.known && !steek) answer.missing.emplace_back("what the roles are knitted in");
    if (!steek && !worked_in(use, holds_by_friction)) continue;
    const FibreShares shares = shares_of(role.thread);
    if (!shares.known) {
      if (!role.thread.empty()) answer.missing.push_back("the fibres of " + role.thread.name());
      continue;
    }
    if (shares.slick + shares.superwash < half) continue;
    const bool stated =
        std::all_of(role.thread.strands.begin(), role.thread.strands.end(),
                    [](const auto& one) { return one.first->spinning != Spinning::unstated; });
    if (!stated && shares.slick < half) {
      answer.missing.push_back("no spinning of " + role.thread.name());
      continue;
    }
    const double slick = shares.slick + (mass_share(role.thread, is_worsted) >= half ? shares.superwash : 0);
    if (slick < half) continue;
    answer.fire(
        *role.role,
        share_words(input, slick, role.thread) + " is slick" +
            (shares.slick < half ? " (superwash, worsted-spun)" : "") + ", in " +
            (worked_in(use, holds_by_friction) ? structures_in_words(use, holds_by_friction) : "a steek"));
  }
}

void stitches_stand_apart(const RuleInput& input, RuleAnswer& answer) {
  for (std::size_t i = 0; i < input.threads.roles.size(); ++i) {
    const auto& role = input.threads.roles[i];
    const Thread& own = input.own.roles[i].thread;
    if (role.same_as_pattern || own.empty() || !worked_in(use_of(input, i), {Structure::stranded})) continue;
    const Yarn& own_yarn = *own.strands.front().first;
    if (own_yarn.spinning != Spinning::woollen) {
      if (own_yarn.spinning == Spinning::unstated)
        answer.missing.push_back("no spinning of " + name_of(own_yarn));
      continue;
    }
    for (const auto& [yarn, strands] : role.thread.strands) {
      const Tested round = is_tight_and_round(*yarn);
      if (!round.missing.empty()) answer.missing.push_back(round.missing);
      if (round.holds)
        answer.fire(*role.role, name_of(*yarn) + ", " +
                                    (yarn->structure.empty() ? "" : yarn->structure + " ") +
                                    std::string(word_of(yarn->spinning)) + ", for woollen-spun " +
                                    name_of(own_yarn) + " in stranded knitting");
    }
  }
}

void woollen_for_worsted(const RuleInput& input, RuleAnswer& answer) {
  for (std::size_t i = 0; i < input.threads.roles.size(); ++i) {
    const auto& role = input.threads.roles[i];
    const Thread& own = input.own.roles[i].thread;
    if (role.same_as_pattern || own.empty()) continue;
    const Yarn& own_yarn = *own.strands.front().first;
    for (const auto& [yarn, strands] : role.thread.strands) {
      if (yarn->spinning != Spinning::woollen && yarn->spinning != Spinning::unstated) continue;
      if (yarn->spinning == Spinning::woollen && is_worsted(own_yarn))
        answer.fire(*role.role, "woollen-spun " + name_of(*yarn) + " for " +
                                    std::string(word_of(own_yarn.spinning)) + " " + name_of(own_yarn));
      else if (own_yarn.spinning == Spinning::unstated)
        answer.missing.push_back("no spinning of " + name_of(own_yarn));
      else if (yarn->spinning == Spinning::unstated && is_worsted(own_yarn))
        answer.missing.push_back("no spinning of " + name_of(*yarn));
    }
  }
}

namespace {

// By volume where the fibres are known, else by mass.
std::optional<double> thicker(const Thread& one, const Thread& other) {
  const auto first = density_of(one), second = density_of(other);
  if (!first || !second) return std::nullopt;
  const auto rho = fibre_density(composition_of(one)), rho_other = fibre_density(composition_of(other));
  const double t = rho && rho_other ? thickness_ratio(*first, rho->g_per_cm3, *second, rho_other->g_per_cm3)
                                    : std::sqrt(first->value() / second->value());
  return std::max(t, 1 / t);
}

bool meet_in_a_piece(const RoleUse& one, const RoleUse& other) {
  if (one.pieces.empty() || other.pieces.empty()) return true;
  return std::any_of(one.pieces.begin(), one.pieces.end(),
                     [&](PieceId piece) { return other.pieces.count(piece) > 0; });
}

}  // namespace

void thick_beside_thin(const RuleInput& input, RuleAnswer& answer) {
  const double least = input.comparing.constant_of("bench_roles_thickness_pct") / 100;
  const auto& roles = input.threads.roles;
  for (std::size_t i = 0; i < roles.size(); ++i)
    for (std::size_t j = i + 1; j < roles.size(); ++j) {
      const Thread &one = roles[i].stitch, &other = roles[j].stitch;
      if (one.empty() || other.empty() || one.strands == other.strands) continue;
      if (!meet_in_a_piece(use_of(input, i), use_of(input, j))) continue;
      const auto t = thicker(one, other);
      if (!t) {
        answer.missing.push_back((density_of(one) ? density_of(other) : density_of(one)).error().found);
        continue;
      }
      if (*t - 1 < least - 1e-9) continue;
      const bool stranded = worked_in(use_of(input, i), {Structure::stranded}) &&
                            worked_in(use_of(input, j), {Structure::stranded});
      const bool first_thicker = density_of(one)->value() < density_of(other)->value();
      answer.fire(*roles[i].role, (first_thicker ? one : other).name() + " is " +
                                      input.comparing.number(100 * (*t - 1), 0) + " % thicker than " +
                                      (first_thicker ? other : one).name() + " (" + roles[i].role->label +
                                      ", " + roles[j].role->label +
                                      (stranded ? "; worst where they are stranded)" : ")"));
      answer.fire(*roles[j].role, answer.because.back());
    }
}

void uneven_hides_chart(const RuleInput& input, RuleAnswer& answer) {
  if (!input.comparing.use.charted) return;
  for (const auto& role : input.threads.roles)
    for (const auto& [yarn, strands] : role.thread.strands) {
      const YarnCharacter is = character_of(*yarn);
      if (is.uneven)
        answer.fire(*role.role, name_of(*yarn) + " is uneven, and the pattern is charted");
      else if (!is.surface_known && !is.structure_known)
        answer.missing.push_back("no surface of " + name_of(*yarn));
    }
}

void plant_in_colourwork(const RuleInput& input, RuleAnswer& answer) {
  for (std::size_t i = 0; i < input.threads.roles.size(); ++i) {
    const auto& role = input.threads.roles[i];
    const RoleUse& use = use_of(input, i);
    if (!use.known) answer.missing.emplace_back("what the roles are knitted in");
    if (!worked_in(use, carried)) continue;
    const FibreShares shares = shares_of(role.thread);
    if (!shares.known && !role.thread.empty())
      answer.missing.push_back("the fibres of " + role.thread.name());
    if (shares.plant >= half)
      answer.fire(*role.role, share_words(input, shares.plant, role.thread) + " is plant fibre, in " +
                                  structures_in_words(use, carried));
  }
}

}  // namespace skeinproof::consequence
