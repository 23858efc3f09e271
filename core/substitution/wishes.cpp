// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/substitution/wishes.h"

#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/substitution/thread.h"
#include "core/substitution/yarn_character.h"

namespace skeinproof {
namespace {

// What an answer looks at.
struct Asked {
  const Pattern& pattern;
  const Wish& wish;
  const CandidateFacts& own;
  const CandidateFacts& facts;

  std::string number(double value, int decimals) const {
    return show_short(value, decimals, {pattern.house().mark, pattern.house().fractions, false});
  }
};

WishAnswer not_known(std::string because) { return {std::nullopt, std::move(because)}; }

WishAnswer within_budget(const Asked& asked) {
  if (!asked.pattern.budget) return not_known("no budget is given");
  return {asked.facts.within_budget, asked.facts.budget_words};
}

// Both roads must agree; where they do not it depends on how the yarn was spun.
WishAnswer reaches(const Asked& asked, GaugeReach at_most) {
  const auto within = [&](GaugeReach reach) { return reach != GaugeReach::unknown && reach <= at_most; };
  const GaugeReach mass = asked.facts.reach_by_mass;
  const GaugeReach volume =
      asked.facts.reach_by_volume == GaugeReach::unknown ? mass : asked.facts.reach_by_volume;
  if (mass == GaugeReach::unknown) return not_known(asked.facts.gauge_by_mass.because);
  if (within(mass) != within(volume)) return not_known(asked.facts.gauge_words + ": a swatch decides");
  return {within(mass), asked.facts.gauge_words};
}
WishAnswer meets_gauge(const Asked& asked) { return reaches(asked, GaugeReach::meets); }
WishAnswer needle_change(const Asked& asked) { return reaches(asked, GaugeReach::needle_change); }

WishAnswer mass_at_most(const Asked& asked) {
  if (!asked.facts.mass_more) return not_known(asked.facts.mass_more.because);
  const double limit = asked.wish.limit ? asked.wish.limit->value : 0;
  const double more = 100 * *asked.facts.mass_more.value;
  return {more <= limit + 1e-9, asked.number(more, 1) + " % more than in the pattern's yarn"};
}

WishAnswer spare_at_most(const Asked& asked) {
  if (!asked.facts.spare_share) return not_known("what is left over is not known");
  if (!asked.wish.limit) return not_known("no limit is given");
  const double spare = 100 * *asked.facts.spare_share;
  return {spare <= asked.wish.limit->value + 1e-9,
          asked.number(spare, 1) + " % of what is bought is left over"};
}

WishAnswer same_care(const Asked& asked) {
  if (asked.facts.own) return {true, "the pattern's own yarn"};
  if (!asked.own.care_rank) return not_known("no care stated of " + asked.own.name);
  if (!asked.facts.care_rank) return not_known("no care stated of " + asked.facts.name);
  return {*asked.facts.care_rank >= *asked.own.care_rank, asked.facts.care_words};
}

WishAnswer no_consequence(const Asked& asked) {
  const std::string& rule = asked.wish.rule;
  std::vector<std::string> fired;
  for (const Consequence& one : asked.facts.consequences)
    if (rule.empty() || one.id == rule) fired.push_back(one.id + " " + one.title);
  if (!fired.empty()) return {false, join(fired, ", ")};
  for (const NotLookedAt& row : asked.facts.not_looked_at)
    if (rule.empty() || std::find(row.rules.begin(), row.rules.end(), rule) != row.rules.end())
      return not_known("not looked at: " + (rule.empty() ? join(row.rules, ", ") : rule) + " (" +
                       row.because + ")");
  return {true, rule.empty() ? "nothing fires" : rule + " does not fire"};
}

WishAnswer not_wool(const Asked& asked) {
  std::vector<std::string> animal;
  std::string unknown;
  for (const CandidateRole& role : asked.facts.roles)
    for (const StrandOf& strand : role.yarns) {
      const Yarn* yarn = asked.pattern.yarn(strand.yarn);
      if (yarn == nullptr) continue;
      const FibreShares shares = fibre_shares(yarn->composition, yarn->treatment);
      const bool all_known = std::none_of(yarn->composition.begin(), yarn->composition.end(),
                                          [](const FibreShare& share) { return share.fibre.empty(); });
      if (!shares.known || (!all_known && shares.animal == 0)) unknown = yarn->name;
      const std::string words = asked.number(shares.animal, 0) + " % animal fibre in " + yarn->name;
      if (shares.animal > 0 && std::find(animal.begin(), animal.end(), words) == animal.end())
        animal.push_back(words);
    }
  if (!animal.empty()) return {false, join(animal, ", ")};
  if (!unknown.empty()) return not_known("the fibres of " + unknown);
  return {true, "no animal fibre"};
}

WishAnswer one_dye_lot_buy(const Asked& asked) {
  if (!asked.wish.limit) return not_known("no limit is given");
  const CandidateRole* most = nullptr;
  for (const CandidateRole& role : asked.facts.roles) {
    if (!role.skeins) return not_known("the skeins of " + role.label + " are not known");
    if (most == nullptr || *role.skeins > *most->skeins) most = &role;
  }
  if (most == nullptr) return not_known("no roles");
  return {*most->skeins <= asked.wish.limit->value + 1e-9,
          most->label + " takes " + std::to_string(*most->skeins) + " skeins"};
}

struct WishRow {
  WishKind kind;
  WishAnswer (*answer)(const Asked& asked);
  std::string_view unit;  // of the limit
};
constexpr WishRow rows[] = {
    {WishKind::within_budget, within_budget, ""},
    {WishKind::meets_gauge, meets_gauge, ""},
    {WishKind::needle_change, needle_change, ""},
    {WishKind::mass_at_most, mass_at_most, " % more than in the pattern's yarn"},
    {WishKind::spare_at_most, spare_at_most, " % of what is bought"},
    {WishKind::same_care, same_care, ""},
    {WishKind::no_consequence, no_consequence, ""},
    {WishKind::not_wool, not_wool, ""},
    {WishKind::one_dye_lot_buy, one_dye_lot_buy, ""},
};

const WishRow& row_of(WishKind kind) {
  for (const WishRow& row : rows)
    if (row.kind == kind) return row;
  return rows[0];
}

// Meeting is worth more than not knowing: only what one is known to meet and the other is known not to.
std::vector<std::size_t> only_met_by(const Pattern& pattern, const CandidateFacts& one,
                                     const CandidateFacts& other) {
  std::vector<std::size_t> only;
  for (std::size_t i = 0; i < pattern.wishes.size(); ++i)
    if (pattern.wishes[i].level != WishLevel::need_not && one.wishes[i].met == true &&
        other.wishes[i].met == false)
      only.push_back(i);
  return only;
}

std::string wishes_in_words(const Pattern& pattern, const std::vector<std::size_t>& wishes) {
  std::vector<std::string> words;
  for (const std::size_t i : wishes) words.push_back(wish_words(pattern, pattern.wishes[i]));
  return join(words, ", ");
}

}  // namespace

std::string wish_words(const Pattern& pattern, const Wish& wish) {
  const NumberStyle style{pattern.house().mark, pattern.house().fractions, false};
  std::string words(word_of(wish.kind));
  if (wish.kind == WishKind::no_consequence)
    return words + " " + (wish.rule.empty() ? "anything" : wish.rule);
  if (wish.limit)
    words += " " + show_short(wish.limit->value, 2, style) + std::string(row_of(wish.kind).unit);
  return words;
}

void answer_wishes(const Pattern& pattern, std::vector<CandidateFacts>& facts) {
  if (facts.empty()) return;
  for (CandidateFacts& one : facts) {
    one.wishes.clear();
    for (const Wish& wish : pattern.wishes)
      one.wishes.push_back(row_of(wish.kind).answer({pattern, wish, facts.front(), one}));
  }
}

WishStanding wish_standing(const Pattern& pattern, const CandidateFacts& facts) {
  WishStanding standing;
  for (std::size_t i = 0; i < pattern.wishes.size() && i < facts.wishes.size(); ++i) {
    const WishLevel level = pattern.wishes[i].level;
    const std::optional<bool>& met = facts.wishes[i].met;
    if (level == WishLevel::need_not || met == true) continue;
    if (level == WishLevel::must)
      (met ? standing.must_not_met : standing.must_not_known).push_back(i);
    else
      (met ? standing.should_not_met : standing.should_not_known).push_back(i);
  }
  return standing;
}

std::vector<TradeOff> trade_offs(const Pattern& pattern, const std::vector<CandidateFacts>& facts) {
  std::vector<TradeOff> all;
  for (std::size_t i = 0; i < facts.size(); ++i)
    for (std::size_t j = i + 1; j < facts.size(); ++j) {
      if (!facts[i].shown || !facts[j].shown || !wish_standing(pattern, facts[i]).may_be_chosen() ||
          !wish_standing(pattern, facts[j]).may_be_chosen())
        continue;
      TradeOff off{
          i, j, only_met_by(pattern, facts[i], facts[j]), only_met_by(pattern, facts[j], facts[i]), {}};
      if (off.only_one.empty() || off.only_other.empty()) continue;
      off.words = facts[i].name + ": " + wishes_in_words(pattern, off.only_one) + "; " + facts[j].name +
                  ": " + wishes_in_words(pattern, off.only_other);
      all.push_back(std::move(off));
    }
  return all;
}

}  // namespace skeinproof
