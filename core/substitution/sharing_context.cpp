// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/substitution/sharing_context.h"

#include <algorithm>
#include <cmath>

#include "core/need/constants.h"
#include "core/need/evidence.h"
#include "core/substitution/given_part.h"
#include "core/yarn/linear_density.h"

namespace skeinproof {
namespace {

constexpr double nothing_m = 1e-6;
// Two thicknesses that are a whole percentage apart are so in spite of rounding.
constexpr double exact_share = 1e-9;

std::optional<MetresPerGram> label_density(const Yarn* yarn) {
  if (yarn == nullptr) return std::nullopt;
  const auto density = linear_density(yarn->put_up);
  return density ? std::optional(*density) : std::nullopt;
}

}  // namespace

SharingContext::SharingContext(const Pattern& pattern, const Assessment& assessment, const NumberStyle& style)
    : pattern_(pattern), assessment_(assessment), style_(style) {
  YarnSupplies all = yarn_supplies(pattern);
  supplies_ = std::move(all.supplies);
  left_out_ = std::move(all.left_out);
  unlike_share_ = constant(pattern, "bench_roles_thickness_pct") / 100;
  for (const RoleNeed& need : assessment.roles)
    if (const Role* role = pattern.role(need.role)) roles_.push_back(role);
  take_needs(assessment);
  take_parts();
  compare_thickness();
}

// The planned length, or where only printed counts speak the most they allow.
void SharingContext::take_needs(const Assessment& assessment) {
  std::vector<RoleEvidence> evidence;
  needs_.resize(pattern_.sizes.size());
  missing_.resize(pattern_.sizes.size());
  for (std::size_t i = 0; i < pattern_.sizes.size(); ++i)
    for (std::size_t r = 0; r < assessment.roles.size(); ++r) {
      const RoleNeed& need = assessment.roles[r];
      if (pattern_.role(need.role) == nullptr) continue;
      std::optional<double> length;
      if (i < need.sizes.size() && need.sizes[i].known) {
        length = need.sizes[i].planned.value();
      } else {
        if (evidence.empty()) evidence = gather_evidence(pattern_, assessment);
        const auto& counts = evidence[r].sizes[i].printed_counts;
        if (counts) length = counts->high.value();
      }
      if (!length && missing_[i].empty())
        missing_[i] = need.label + ": " + (i < need.sizes.size() ? need.sizes[i].missing : "not worked out");
      needs_[i].push_back(length);
    }
}

void SharingContext::take_parts() {
  std::vector<GivenPart> taken;
  const auto whole = [&](PieceId piece) {
    return std::any_of(pattern_.given_parts.begin(), pattern_.given_parts.end(),
                       [&](const GivenPart& part) { return part.piece == piece && !part.section; });
  };
  for (const GivenPart& part : pattern_.given_parts) {
    if (const auto there = check_part(pattern_, part); !there) {
      left_out_.push_back(there.error());
      continue;
    }
    if ((part.section && whole(part.piece)) || std::find(taken.begin(), taken.end(), part) != taken.end()) {
      left_out_.push_back({ErrorKind::wrong_count,
                           {},
                           part_name(pattern_, part) + " given away twice",
                           "every part once, a piece whole or by its sections"});
      continue;
    }
    taken.push_back(part);
    for (std::size_t r = 0; r < roles_.size(); ++r)
      parts_.push_back({part, r, static_cast<int>(taken.size()) - 1});
  }
  part_needs_.resize(pattern_.sizes.size());
  for (std::size_t i = 0; i < pattern_.sizes.size(); ++i)
    for (const Part& part : parts_)
      if (const double need = part_need(part, i); need > nothing_m) part_needs_[i].push_back({&part, need});
}

double SharingContext::part_need(const Part& part, std::size_t size_index) const {
  for (const RoleNeed& need : assessment_.roles)
    if (need.role == roles_[part.role]->id && size_index < need.sizes.size())
      return knitted_in(pattern_, need.sizes[size_index], part.part).value() *
             (1 + pattern_.house().allowance_pct / 100);
  return 0;
}

std::vector<std::string> SharingContext::not_looked_at() const {
  std::vector<std::string> all;
  for (std::size_t i = 0; i < missing_.size(); ++i)
    if (!missing_[i].empty()) all.push_back("Size " + pattern_.sizes[i].label + ": " + missing_[i]);
  return all;
}

bool SharingContext::has_parts() const {
  return std::any_of(part_needs_.begin(), part_needs_.end(),
                     [](const auto& of_size) { return !of_size.empty(); });
}

bool SharingContext::known(std::size_t size_index) const { return missing_[size_index].empty(); }

std::vector<int> SharingContext::own_roles() const {
  std::vector<int> own;
  for (const YarnSupply& supply : supplies_) {
    const auto found =
        std::find_if(roles_.begin(), roles_.end(), [&](const Role* role) { return role->id == supply.role; });
    own.push_back(supply.role && found != roles_.end() ? static_cast<int>(found - roles_.begin()) : -1);
  }
  return own;
}

void SharingContext::compare_thickness() {
  for (const YarnSupply& supply : supplies_) {
    times_.emplace_back();
    const Yarn* own = pattern_.yarn(supply.yarn);
    for (const Role* role : roles_) {
      const Yarn* of_role = pattern_.yarn(role->yarn);
      times_.back().push_back(own == nullptr || of_role == nullptr
                                  ? std::nullopt
                                  : times_thicker(*own, supply.density, *of_role, label_density(of_role)));
    }
  }
}

std::optional<double> SharingContext::thicker(const YarnSupply& supply, const YarnSupply& than) const {
  const Yarn *one = pattern_.yarn(supply.yarn), *other = pattern_.yarn(than.yarn);
  if (one == nullptr || other == nullptr) return std::nullopt;
  return times_thicker(*one, supply.density, *other, than.density);
}

SharingProblem SharingContext::problem(std::size_t size_index, const LooseRules& rules,
                                       const std::vector<int>& kept) const {
  SharingProblem problem;
  problem.yarns_a_role = rules.yarns_a_role;
  problem.join_m = constant(pattern_, "join_m");
  problem.brimful_share = constant(pattern_, "brimful_share");
  problem.unlike_share = unlike_share_ - exact_share;
  for (const auto& need : needs_[size_index]) problem.needs.push_back(need.value_or(0));
  if (rules.parts)
    for (const PartNeed& one : part_needs_[size_index])
      problem.parts.push_back({static_cast<int>(one.part->role), one.part->place, one.need});
  const auto& limit = pattern_.sharing.thickness_limit_pct;
  for (std::size_t s = 0; s < supplies_.size(); ++s) {
    const YarnSupply& supply = supplies_[s];
    SharingProblem::Supply one;
    one.usable = supply.usable.value();
    if (s < kept.size()) one.kept_in = kept[s];
    for (std::size_t r = 0; r < roles_.size(); ++r) {
      const auto& times = times_[s][r];
      const double off = times ? std::abs(*times - 1) : 0;
      const bool own = !supply.role || supply.role == roles_[r]->id;
      one.may_serve.push_back((rules.exchange || own) && (!limit || off <= limit->value / 100 + exact_share));
      one.unlike.push_back(off >= unlike_share_ - exact_share);
    }
    if (!roles_.empty()) one.thickness = times_[s].front().value_or(0);
    problem.supplies.push_back(std::move(one));
  }
  return problem;
}

SharingProblem SharingContext::with_shop(SharingProblem problem, std::vector<Buyable>& buyable) const {
  buyable.clear();
  std::string currency;
  bool one_currency = true;
  const auto price_of = [&](const Yarn& yarn) {
    if (!yarn.price || !(yarn.price->amount.value > 0)) return 0.0;
    if (currency.empty()) currency = yarn.price->currency;
    one_currency = one_currency && currency == yarn.price->currency;
    return yarn.price->amount.value;
  };
  const auto skein_of = [&](const Yarn* yarn) {
    if (yarn == nullptr || yarn->withdrawn || !yarn->put_up.length) return 0.0;
    const double length = yarn->put_up.length->value.value();
    return std::isfinite(length) && length > problem.join_m ? length : 0;
  };
  for (std::size_t s = 0; s < supplies_.size(); ++s) {
    const Yarn* yarn = pattern_.yarn(supplies_[s].yarn);
    // What somebody spun or found has no price and is in no pattern: no shop sells it.
    const double skein =
        yarn != nullptr && (yarn->price || !pattern_.is_on_bench(yarn->id)) ? skein_of(yarn) : 0;
    if (skein > 0) {
      problem.supplies[s].skein = skein - problem.join_m;
      problem.supplies[s].price = price_of(*yarn);
    }
    buyable.push_back({supplies_[s].yarn, supplies_[s].role, supplies_[s].name});
  }
  for (std::size_t r = 0; r < roles_.size(); ++r) {
    const Role& role = *roles_[r];
    const std::string name = role.shade.name.empty() ? role.label : role.shade.name;
    const bool there =
        std::any_of(pattern_.on_hand.begin(), pattern_.on_hand.end(), [&](const YarnOnHand& y) {
          return y.used && y.yarn == role.yarn && y.shade.name == role.shade.name &&
                 y.shade.number == role.shade.number;
        });
    const Yarn* yarn = pattern_.yarn(role.yarn);
    if (there || !(skein_of(yarn) > 0)) continue;
    SharingProblem::Supply fresh;
    fresh.skein = skein_of(yarn) - problem.join_m;
    fresh.price = price_of(*yarn);
    fresh.thickness = 1;
    fresh.may_serve.assign(roles_.size(), false);
    fresh.may_serve[r] = true;
    fresh.unlike.assign(roles_.size(), false);
    problem.supplies.push_back(std::move(fresh));
    buyable.push_back({role.yarn, role.id, name});
  }
  if (!one_currency)
    for (auto& supply : problem.supplies) supply.price = 0;
  return problem;
}

}  // namespace skeinproof
