// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "core/base/find_word.h"
#include "core/base/text.h"
#include "core/need/bench_changes.h"
#include "core/substitution/consequence_rules.h"

namespace skeinproof::consequence {
namespace {

constexpr double half = 50;  // percent of mass from which a class applies

const CandidateThreads::OfRole& main_of(const RuleInput& input) {
  return input.threads.roles[input.facts.main_role];
}

bool is_worn_on_the_body(const ItemUse& use) { return use.kind == ItemKind::garment; }

// Things that do not hang have no hanging length.
bool hangs(const ItemUse& use) { return is_worn_on_the_body(use) || use.drapey; }

std::optional<double> hanging(const RuleInput& input, RuleAnswer& answer) {
  const ItemUse& use = input.comparing.use;
  if (!hangs(use)) {
    if (use.kind == ItemKind::unknown) answer.missing.emplace_back("what the item is");
    return std::nullopt;
  }
  if (!use.hanging_cm) answer.missing.push_back(use.hanging_because);
  return use.hanging_cm;
}

void name_hang_test(const RuleInput& input, double hanging_cm, RuleAnswer& answer) {
  const Comparing& comparing = input.comparing;
  if (!input.facts.mass_per_area) {
    answer.test = "hang test: how heavy is not known (" + input.facts.mass_per_area.because + ")";
    answer.short_test = "hang test, 24 h";
    return;
  }
  constexpr double cm2_per_m2 = 10000;
  const double width = comparing.constant_of("bench_hang_swatch_cm");
  const double length = round_half_up(hanging_cm, comparing.constant_of("bench_hang_step_cm"));
  const double grams = *input.facts.mass_per_area.value / cm2_per_m2 * length * width;
  const std::string weight = comparing.number(grams, 0) + " g";
  answer.test = "hang test: clip " + weight + " across a washed swatch " + comparing.number(width, 0) +
                " cm wide for 24 h (" + comparing.number(*input.facts.mass_per_area.value / cm2_per_m2, 4) +
                " g/cm² × " + comparing.number(length, 0) + " cm × " + comparing.number(width, 0) +
                " cm); take half the growth in percent × the length off the body";
  answer.short_test = "hang test " + weight + ", 24 h";
}

}  // namespace

void grows_in_length(const RuleInput& input, RuleAnswer& answer) {
  const Comparing& comparing = input.comparing;
  if (!input.facts.mass_more) {
    if (hangs(comparing.use)) answer.missing.push_back("the mass: " + input.facts.mass_more.because);
    return;
  }
  const double least = comparing.constant_of("bench_heavier_pct") / 100;
  if (*input.facts.mass_more.value < least - 1e-9) return;
  const Thread& thread = main_of(input).thread;
  const FibreShares shares = shares_of(thread);
  if (!shares.known) {
    answer.missing.push_back("the fibres of " + thread.name());
    return;
  }
  const Recovery recovery = recovery_of(shares);
  if (recovery == Recovery::high) return;
  const auto length = hanging(input, answer);
  if (!length || *length < comparing.constant_of("bench_hanging_cm")) return;
  answer.fire(comparing.number(*input.facts.mass_g.value, 0) + " g against " +
              comparing.number(*input.own_facts.mass_g.value, 0) + " g (" +
              comparing.percent(*input.facts.mass_more.value) + "), " + std::string(word_of(recovery)) +
              " recovery, " + comparing.number(*length, 0) + " cm hanging " + comparing.use.hanging_because);
  name_hang_test(input, *length, answer);
}

void ribs_stay_slack(const RuleInput& input, RuleAnswer& answer) {
  const ItemUse& item = input.comparing.use;
  const bool clings = item.kind == ItemKind::sock || item.kind == ItemKind::hat_or_mitten ||
                      (item.ease_cm && *item.ease_cm < 0);
  for (std::size_t i = 0; i < input.threads.roles.size(); ++i) {
    const auto& role = input.threads.roles[i];
    const RoleUse& use = use_of(input, i);
    const bool ribbed = worked_in(use, {Structure::rib}) ||
                        says(use.places, {"rib", "ribbing", "cuff", "welt", "brim", "waistband"});
    if (!ribbed && !clings) {
      if (!use.known) answer.missing.emplace_back("what the roles are knitted in");
      continue;
    }
    const FibreShares shares = shares_of(role.thread);
    if (!shares.known) {
      answer.missing.push_back("the fibres of " + role.thread.name());
    } else if (shares.low_recovery >= half) {
      answer.fire(*role.role, share_words(input, shares.low_recovery, role.thread) +
                                  " springs back little, and there are " +
                                  (ribbed                              ? "ribs"
                                   : item.ease_cm && *item.ease_cm < 0 ? "places narrower than the body"
                                                                       : "places that must cling"));
    }
  }
}

void superwash_grows(const RuleInput& input, RuleAnswer& answer) {
  const Comparing& comparing = input.comparing;
  const double least = comparing.constant_of("bench_superwash_firmness");
  for (std::size_t i = 0; i < input.threads.roles.size(); ++i) {
    const auto& role = input.threads.roles[i];
    const FibreShares shares = shares_of(role.thread);
    if (!shares.known && !role.thread.empty()) {
      answer.missing.push_back("the fibres of " + role.thread.name());
      continue;
    }
    if (shares.superwash < half) continue;
    const Known& firm = input.facts.roles[i].firmness;
    const std::string what = share_words(input, shares.superwash, role.thread) + " is superwash";
    if (!input.washed_swatch)
      answer.fire(*role.role, what + ", no washed swatch yet");
    else if (firm && *firm.value < least)
      answer.fire(*role.role, what + ", F " + comparing.number(*firm.value, 1) + " below " +
                                  comparing.short_number(least, 1));
    else if (!firm)
      answer.missing.push_back("the firmness: " + firm.because);
  }
}

void too_firm_or_too_loose(const RuleInput& input, RuleAnswer& answer) {
  const Comparing& comparing = input.comparing;
  const ItemUse& item = comparing.use;
  const Known& firm = input.facts.firmness;
  if (!firm) {
    answer.missing.push_back("the firmness: " + firm.because);
    return;
  }
  const std::string f = "F " + comparing.number(*firm.value, 1);
  const auto limit = [&](const char* key) { return comparing.constant_of(key); };
  const auto fire = [&](const char* title, const char* short_words, const std::string& because) {
    answer.title = title;
    answer.short_words = short_words;
    answer.fire(because);
  };
  const bool close =
      item.kind == ItemKind::garment || item.kind == ItemKind::sock || item.kind == ItemKind::hat_or_mitten;
  const bool fitted =
      close && !item.drapey && (!item.ease_cm || *item.ease_cm <= limit("bench_fitted_ease_cm"));
  if (*firm.value > limit("bench_most_firmness"))
    fire("Will not knit comfortably", "too stiff to knit",
         f + " above " + comparing.short_number(limit("bench_most_firmness"), 1));
  else if (item.drapey && *firm.value > limit("bench_drapey_firmness"))
    fire("Board-stiff", "board-stiff",
         f + " above " + comparing.short_number(limit("bench_drapey_firmness"), 1) +
             " in something that should drape");
  else if (fitted && *firm.value < limit("bench_fitted_firmness"))
    fire("Baggy and sheer", "baggy, sheer",
         f + " below " + comparing.short_number(limit("bench_fitted_firmness"), 1) + " in something fitted");
  else if (item.kind == ItemKind::unknown)
    answer.missing.emplace_back("what the item is");
}

void alpaca_drapes(const RuleInput& input, RuleAnswer& answer) {
  const ItemUse& item = input.comparing.use;
  if (!is_worn_on_the_body(item)) {
    if (item.kind == ItemKind::unknown) answer.missing.emplace_back("what the item is");
    return;
  }
  if (item.hanging_cm && *item.hanging_cm < input.comparing.constant_of("bench_hanging_cm")) return;
  const Thread& thread = main_of(input).thread;
  const FibreShares shares = shares_of(thread);
  if (!shares.known && !thread.empty()) answer.missing.push_back("the fibres of " + thread.name());
  if (shares.alpaca >= half)
    answer.fire(share_words(input, shares.alpaca, thread) + " is alpaca, in a garment of body length");
}

void rows_differ(const RuleInput& input, RuleAnswer& answer) {
  const Comparing& comparing = input.comparing;
  if (comparing.cloth == nullptr) {
    answer.missing.emplace_back("no gauge of the pattern");
    return;
  }
  const BenchChange* swatched = nullptr;
  for (const BenchChange& change : comparing.pattern.changes)
    if (change.kind == ChangeKind::other_gauge && change.made && change.fabric == comparing.cloth->id)
      swatched = &change;
  if (swatched == nullptr || (!input.facts.own && !input.washed_swatch)) {
    if (!input.facts.own) answer.missing.emplace_back("no row gauge of a washed swatch in it");
    return;
  }
  if (!swatched->stitches || !swatched->rows || !comparing.cloth->gauge.stitches ||
      !comparing.cloth->gauge.rows) {
    answer.missing.emplace_back("stitches and rows of both gauges");
    return;
  }
  const double to_10 = 10 / comparing.cloth->gauge.over.value.value();
  const double stitches = swatched->stitches->value, rows = swatched->rows->value;
  const double own_stitches = comparing.cloth->gauge.stitches->value * to_10;
  const double own_rows = comparing.cloth->gauge.rows->value * to_10;
  if (!(rows > 0) || !(own_rows > 0)) return;
  const double off = rows / own_rows - 1;
  if (std::abs(stitches - own_stitches) > comparing.constant_of("bench_gauge_meets_sts") + 1e-9 ||
      std::abs(off) <= comparing.constant_of("bench_row_gauge_pct") / 100 + 1e-9)
    return;
  std::string words = comparing.short_number(rows, 1) + " rows in 10 cm for " +
                      comparing.short_number(own_rows, 1) + " (" + comparing.percent(off, 1) + ")";
  const double per_20 = 20 * (own_rows / rows - 1);
  words += ": every 20 cm of counted rows become " + comparing.number(20 + per_20, 1) + " cm";
  if (comparing.use.hanging_cm)
    words += ", the length of " + comparing.number(*comparing.use.hanging_cm, 0) + " cm becomes " +
             comparing.number(*comparing.use.hanging_cm * own_rows / rows, 1) + " cm";
  answer.fire(words);
}

void sheer_when_light(const RuleInput& input, RuleAnswer& answer) {
  const Comparing& comparing = input.comparing;
  const double least = comparing.constant_of("bench_fitted_firmness");
  const double light = comparing.constant_of("bench_light_shade");
  for (std::size_t i = 0; i < input.threads.roles.size(); ++i) {
    const Role& role = *input.threads.roles[i].role;
    const Known& firm = input.facts.roles[i].firmness;
    if (!firm) {
      answer.missing.push_back("the firmness: " + firm.because);
      continue;
    }
    if (*firm.value >= least) continue;
    if (!role.shade.lightness)
      answer.missing.push_back("the lightness of " + role.label);
    else if (role.shade.lightness->value >= light)
      answer.fire(role, role.label + " L* " + comparing.number(role.shade.lightness->value, 0) + " at F " +
                            comparing.number(*firm.value, 1));
  }
}

}  // namespace skeinproof::consequence
