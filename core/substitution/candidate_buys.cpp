// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/need/plan.h"
#include "core/substitution/comparing.h"
#include "core/substitution/put_up_mix.h"
#include "core/yarn/linear_density.h"

namespace skeinproof {
namespace {

PlanInputs plan_inputs(const Comparing& comparing, const RoleLength& length, const Yarn& yarn, int strands) {
  PlanInputs inputs;
  inputs.swatch = length.swatch * static_cast<double>(strands);
  if (yarn.put_up.length && yarn.put_up.length->value.value() > 0) inputs.skein = yarn.put_up.length->value;
  if (comparing.pattern.count_joins) inputs.join_m = comparing.constant_of("join_m");
  inputs.brimful_share = comparing.constant_of("brimful_share");
  inputs.tips_over_share = comparing.constant_of("tips_over_share");
  return inputs;
}

// Amounts below 0 and such as are no numbers are left out of a sum and named.
bool is_price(const Price& price) { return std::isfinite(price.amount.value) && price.amount.value >= 0; }

std::vector<SoldAs> sold_put_ups(const Yarn& yarn, CandidateFacts& facts) {
  std::vector<SoldAs> sold = put_ups_of(yarn);
  for (SoldAs& one : sold) {
    if (!one.price || is_price(*one.price)) continue;
    facts.problems.push_back("a price below nothing of " + quoted(yarn.name) + " is left out");
    one.price.reset();
  }
  return sold;
}

LastSkein last_skein(double share, const PlanInputs& inputs) {
  if (share > inputs.brimful_share) return LastSkein::brimful;
  return share < inputs.tips_over_share ? LastSkein::tips_over : LastSkein::plain;
}

// One kind of put-up: the engine's own count and share. Several: the cheapest mix.
void take_mix(const PutUpMix& mix, const SizeNeed& plan, const PlanInputs& inputs, YarnToBuy& buy) {
  for (const PutUpCount& one : mix.counts)
    buy.put_ups.push_back({one.sold_as.put_up, one.skeins, one.sold_as.price});
  buy.skeins = mix.skeins;
  buy.spare = mix.bought - plan.planned;
  buy.cost = mix.cost;
  buy.currency = mix.currency;
  const bool one_kind = mix.counts.size() == 1 && inputs.skein &&
                        mix.counts.front().sold_as.put_up.length->value == *inputs.skein;
  if (one_kind) {
    buy.fraction = plan.fraction;
    buy.last_skein_share = plan.last_skein_share;
    buy.last_skein = plan.last_skein;
  } else if (mix.last_skein_share > 0) {
    buy.last_skein_share = mix.last_skein_share;
    buy.last_skein = last_skein(mix.last_skein_share, inputs);
  }
}

std::string why_no_cost(const YarnToBuy& buy) {
  if (!buy.skeins || buy.cost) return {};
  return "no price of " + quoted(buy.name);
}

YarnToBuy to_buy(const Comparing& comparing, const RoleLength& length, const Yarn& yarn, int strands,
                 CandidateFacts& facts) {
  YarnToBuy buy;
  buy.yarn = yarn.id;
  buy.name = yarn.name;
  buy.strands = strands;
  const HouseStyle& house = comparing.pattern.house();
  const PlanInputs inputs = plan_inputs(comparing, length, yarn, strands);
  SizeNeed planned;
  plan(planned, length.worked * static_cast<double>(strands), inputs, house);
  // Printed counts bound the planned length itself.
  if (length.at_most) {
    planned.planned = length.planned * static_cast<double>(strands);
    if (inputs.skein) planned.fraction = planned.planned / *inputs.skein;
    planned.last_skein_share.reset();
    planned.last_skein = LastSkein::plain;
  }
  buy.planned = planned.planned;
  const std::vector<SoldAs> sold = sold_put_ups(yarn, facts);
  const Metres cover = length.at_most
                           ? planned.planned
                           : length_to_cover(planned.planned, planned.knitted + planned.swatch, yarn, house);
  if (!(cover > metres(0))) {
    buy.skeins = 0;
    buy.spare = metres(0);
    buy.cost = 0;
    if (!sold.empty() && sold.front().price) buy.currency = sold.front().price->currency;
    return buy;
  }
  auto mix = cheapest_mix(cover, sold);
  if (!mix) {
    // Two currencies are no reason to leave out the skeins: they are counted in the first put-up.
    buy.missing = mix.error().found + ": " + mix.error().expected;
    if (!inputs.skein || sold.size() < 2) return buy;
    mix = cheapest_mix(cover, {{sold.front().put_up, {}}});
    if (!mix) return buy;
  }
  take_mix(*mix, planned, inputs, buy);
  for (const Error& error : mix->left_out)
    facts.problems.push_back("a put-up of " + quoted(yarn.name) + " is left out: " + error.found);
  if (buy.missing.empty()) buy.missing = why_no_cost(buy);
  return buy;
}

Known length_fact(const RoleLength& length, Metres value) {
  Known known;
  if (length.known) known.value = value.value();
  known.error_share = length.error;
  known.because = length.because;
  return known;
}

Known mass_of(const CandidateRole& role, const RoleLength& length) {
  Known mass;
  if (!length.known || !role.density) {
    mass.because = length.known ? "no length and weight of " + quoted(role.thread) : length.because;
    return mass;
  }
  mass.value = length.worked.value() / role.density->value();
  mass.error_share = length.error;
  mass.because = "knitted length ÷ metres in a gram by the label; " + length.because;
  return mass;
}

}  // namespace

void fill_lengths_and_buys(const Comparing& comparing, const CandidateThreads& threads,
                           CandidateFacts& facts) {
  double longest = -1;
  for (std::size_t i = 0; i < threads.roles.size(); ++i) {
    const auto& of_role = threads.roles[i];
    const RoleLength& length = comparing.lengths[i];
    CandidateRole role;
    role.role = of_role.role->id;
    role.label = of_role.role->label;
    role.same_as_pattern = of_role.same_as_pattern;
    role.strands = of_role.thread.count();
    role.thread = of_role.thread.name();
    role.at_most = length.at_most;
    role.worked = length_fact(length, length.worked);
    role.planned = length_fact(length, length.planned);
    for (const auto& [yarn, strands] : of_role.thread.strands) {
      role.yarns.push_back({yarn->id, strands});
      if (length.known) role.buys.push_back(to_buy(comparing, length, *yarn, strands, facts));
    }
    if (const auto density = density_of(of_role.thread)) role.density = *density;
    role.mass_g = mass_of(role, length);
    const bool counted = !role.buys.empty() && std::all_of(role.buys.begin(), role.buys.end(),
                                                           [](const YarnToBuy& buy) { return buy.skeins; });
    if (counted) {
      role.skeins = 0;
      for (const YarnToBuy& buy : role.buys) *role.skeins += *buy.skeins;
    }
    const double worked = length.known ? length.worked.value() : 0;
    if (worked > longest) longest = worked, facts.main_role = i;
    facts.roles.push_back(std::move(role));
  }
}

}  // namespace skeinproof
