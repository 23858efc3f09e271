// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <set>

#include "core/base/find_word.h"
#include "core/base/text.h"
#include "core/substitution/consequence_rules.h"
#include "core/yarn/care.h"

namespace skeinproof::consequence {
namespace {

constexpr double half = 50;  // percent of mass from which a class applies

std::string name_of(const Yarn& yarn) { return yarn.name.empty() ? "a yarn without a name" : yarn.name; }

// Every yarn of the candidate once, with a role it is in.
template <class Look>
void each_yarn(const RuleInput& input, Look&& look) {
  std::set<const Yarn*> seen;
  for (const auto& role : input.threads.roles)
    for (const auto& [yarn, strands] : role.thread.strands)
      if (seen.insert(yarn).second) look(*role.role, *yarn);
}

void miss_fibres(const Thread& thread, RuleAnswer& answer) {
  if (!thread.empty()) answer.missing.push_back("the fibres of " + thread.name());
}

bool rubs(const ItemUse& item) {
  return item.kind == ItemKind::sock || item.kind == ItemKind::garment ||
         (item.kind == ItemKind::hat_or_mitten && says(item.words, {"mitten", "mitt", "glove"})) ||
         says(item.words, {"bag", "slipper", "cushion", "trousers", "leggings", "shorts", "bed sock"});
}

}  // namespace

void pills_where_it_rubs(const RuleInput& input, RuleAnswer& answer) {
  const ItemUse& item = input.comparing.use;
  if (!rubs(item)) {
    if (item.kind == ItemKind::unknown) answer.missing.emplace_back("what the item is");
    return;
  }
  each_yarn(input, [&](const Role& role, const Yarn& yarn) {
    const YarnCharacter is = character_of(yarn);
    if (!is.structure_known)
      answer.missing.push_back("no structure of " + name_of(yarn));
    else if (is.plies == 1 || is.twist == Twist::low)
      answer.fire(role, name_of(yarn) + " is " + (is.plies == 1 ? "a single" : "of low twist") + ", and " +
                            (item.kind == ItemKind::garment ? "cuffs and underarms rub" : "it will rub"));
  });
}

void will_not_felt(const RuleInput& input, RuleAnswer& answer) {
  if (!input.comparing.use.felted) return;
  for (const auto& role : input.threads.roles) {
    const FibreShares shares = shares_of(role.thread);
    if (!shares.known)
      miss_fibres(role.thread, answer);
    else if (shares.no_felt >= half)
      answer.fire(*role.role,
                  share_words(input, shares.no_felt, role.thread) + " does not felt, and the item is felted");
  }
}

void strictest_care_wins(const RuleInput& input, RuleAnswer& answer) {
  struct Cared {
    const Role* role;
    const Yarn* yarn;
    std::optional<int> rank;
  };
  std::vector<Cared> all;
  each_yarn(input, [&](const Role& role, const Yarn& yarn) {
    all.push_back({&role, &yarn, care_rank(lower_ascii(yarn.care))});
  });
  if (all.size() < 2) return;
  const Cared *strict = nullptr, *easy = nullptr;
  for (const Cared& one : all) {
    if (!one.rank) {
      answer.missing.push_back("no care of " + name_of(*one.yarn));
      continue;
    }
    if (strict == nullptr || *one.rank < *strict->rank) strict = &one;
    if (easy == nullptr || *one.rank > *easy->rank) easy = &one;
  }
  if (strict == nullptr || *strict->rank == *easy->rank) return;
  answer.fire(*strict->role, name_of(*strict->yarn) + ": " + std::string(care_rank_words(*strict->rank)) +
                                 "; " + name_of(*easy->yarn) + ": " +
                                 std::string(care_rank_words(*easy->rank)));
}

void dark_dye_bleeds(const RuleInput& input, RuleAnswer& answer) {
  const Comparing& comparing = input.comparing;
  const double least = comparing.constant_of("bench_bleeding_lightness");
  const auto& roles = input.threads.roles;
  for (const auto& dark : roles) {
    const bool dyed = std::any_of(dark.thread.strands.begin(), dark.thread.strands.end(),
                                  [](const auto& one) { return character_of(*one.first).hand_dyed; });
    if (!dyed) continue;
    for (const auto& pale : roles) {
      if (pale.role == dark.role) continue;
      const auto &low = dark.role->shade.lightness, &high = pale.role->shade.lightness;
      if (!low || !high) {
        answer.missing.push_back("the lightness of " + (low ? pale : dark).role->label);
      } else if (high->value - low->value >= least) {
        answer.fire(*dark.role, "hand-dyed " + dark.role->label + " L* " + comparing.number(low->value, 0) +
                                    " beside " + pale.role->label + " L* " +
                                    comparing.number(high->value, 0));
      }
    }
  }
}

void unfit_for_a_baby(const RuleInput& input, RuleAnswer& answer) {
  const Comparing& comparing = input.comparing;
  const WearerAges& wearers = comparing.use.wearers;
  if (!wearers.under_3_years) return;
  each_yarn(input, [&](const Role& role, const Yarn& yarn) {
    const FibreShares shares = fibre_shares(yarn.composition, yarn.treatment);
    const YarnCharacter is = character_of(yarn);
    const auto rank = care_rank(lower_ascii(yarn.care));
    constexpr int gentle = 2;
    if (shares.sheds > 0)
      answer.fire(role,
                  name_of(yarn) + " holds " + comparing.number(shares.sheds, 0) + " % of fibre that sheds");
    else if (is.brushed || is.halo == Halo::marked)
      answer.fire(role, name_of(yarn) + " is brushed or has a halo");
    else if (!shares.known)
      answer.missing.push_back("the fibres of " + name_of(yarn));
    if (rank && *rank <= gentle)
      answer.fire(role, name_of(yarn) + " asks for care that a baby's things seldom get (" + yarn.care + ")");
    else if (!rank)
      answer.missing.push_back("no care of " + name_of(yarn));
  });
  for (const Notion& notion : comparing.pattern.notions)
    if (says(lower_ascii(notion.name), {"bead", "button", "pompom", "pom pom", "pom-pom", "sequin", "bell"}))
      answer.fire("small parts: " + notion.name);
  if (answer.fires) answer.because.push_back("for " + wearers.because);
}

void sock_wears_out(const RuleInput& input, RuleAnswer& answer) {
  const Comparing& comparing = input.comparing;
  if (comparing.use.kind != ItemKind::sock) return;
  const double least = comparing.constant_of("review_sock_fibre_pct");
  const WordList worn = {"heel", "toe", "sole"};
  const bool named = std::any_of(comparing.use.roles.begin(), comparing.use.roles.end(),
                                 [&](const RoleUse& use) { return says(use.places, worn); });
  for (std::size_t i = 0; i < input.threads.roles.size(); ++i) {
    const auto& role = input.threads.roles[i];
    if (named && !says(use_of(input, i).places, worn)) continue;
    const FibreShares shares = shares_of(role.thread);
    if (!shares.known)
      miss_fibres(role.thread, answer);
    else if (shares.hard_wearing < least)
      answer.fire(*role.role, share_words(input, shares.hard_wearing, role.thread) + " is hard-wearing, " +
                                  comparing.short_number(least, 1) + " % is usual");
  }
}

void elastic_put_up(const RuleInput& input, RuleAnswer& answer) {
  const double least = input.comparing.constant_of("bench_elastane_pct");
  each_yarn(input, [&](const Role& role, const Yarn& yarn) {
    const FibreShares shares = fibre_shares(yarn.composition, yarn.treatment);
    if (!shares.known) answer.missing.push_back("the fibres of " + name_of(yarn));
    if (shares.elastic >= least && shares.elastic > 0)
      answer.fire(role, input.comparing.number(shares.elastic, 0) + " % of " + name_of(yarn) + " is elastic");
  });
}

void prickles(const RuleInput& input, RuleAnswer& answer) {
  const ItemUse& item = input.comparing.use;
  const bool against_skin = item.kind == ItemKind::hat_or_mitten || item.kind == ItemKind::shawl ||
                            says(item.words, {"scarf", "cowl", "snood", "hood", "balaclava"});
  for (std::size_t i = 0; i < input.threads.roles.size(); ++i) {
    const auto& role = input.threads.roles[i];
    const RoleUse& use = use_of(input, i);
    const FibreShares shares = shares_of(role.thread);
    const bool coarse = std::any_of(role.thread.strands.begin(), role.thread.strands.end(),
                                    [](const auto& one) { return character_of(*one.first).coarse; }) &&
                        shares.animal >= half;
    if (!shares.known) miss_fibres(role.thread, answer);
    if (!coarse && shares.longwool < half) continue;
    const bool there = says(use.places, {"neck", "neckband", "collar", "cuff", "wrist", "hood"});
    const std::string what =
        coarse ? role.thread.name() + " is coarse"
               : share_words(input, shares.longwool, role.thread) + " is untreated longwool";
    if (against_skin || there)
      answer.fire(*role.role, what + ", " + (there ? "at the neck or the wrist" : "against the skin"));
    else if (!use.known || use.pieces.empty())
      answer.missing.emplace_back("whether it lies at neck or wrist");
  }
}

void melts(const RuleInput& input, RuleAnswer& answer) {
  if (!input.comparing.use.near_heat) return;
  each_yarn(input, [&](const Role& role, const Yarn& yarn) {
    const FibreShares shares = fibre_shares(yarn.composition, yarn.treatment);
    if (!shares.known)
      answer.missing.push_back("the fibres of " + name_of(yarn));
    else if (shares.synthetic > 0)
      answer.fire(role, input.comparing.number(shares.synthetic, 0) + " % of " + name_of(yarn) + " melts");
  });
}

}  // namespace skeinproof::consequence
