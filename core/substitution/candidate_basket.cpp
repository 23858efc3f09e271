// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/text.h"
#include "core/substitution/comparing.h"
#include "core/substitution/put_up_mix.h"

namespace skeinproof {
namespace {

constexpr double half_a_cent = 0.005;

void add_sum(std::vector<CurrencySum>& sums, const std::string& currency, double amount) {
  for (CurrencySum& sum : sums)
    if (sum.currency == currency || same_currency(sum.currency, currency)) {
      sum.amount += amount;
      return;
    }
  sums.push_back({currency, amount});
}

std::string sums_words(const std::vector<CurrencySum>& sums, const NumberStyle& style) {
  std::vector<std::string> words;
  for (const CurrencySum& sum : sums) words.push_back(money_words(sum.amount, sum.currency, style));
  return join(words, " + ");
}

// Every role is priced in one named currency, or in words why the basket is no sum.
void take_basket(const Comparing& comparing, CandidateFacts& facts, const std::vector<std::string>& unpriced,
                 bool all_counted) {
  const std::string said = sums_words(facts.sums, comparing.style);
  if (!all_counted) {
    facts.basket_words = "not known: the skeins of a role are not known";
  } else if (!unpriced.empty()) {
    facts.basket_words = join(unpriced, "; ") + (said.empty() ? "" : "; the others come to " + said);
  } else if (facts.sums.size() > 1) {
    facts.basket_words = said + ": prices in several currencies are not added up";
    facts.problems.push_back("mixed currencies: " + said);
  } else if (facts.sums.size() == 1 && facts.sums.front().currency.empty()) {
    facts.basket_words = said;
    facts.problems.push_back("a price without a currency: " + said);
  } else if (facts.sums.size() == 1) {
    facts.basket = facts.sums.front().amount;
    facts.currency = facts.sums.front().currency;
    facts.basket_words = said;
  }
}

void take_budget(const Comparing& comparing, CandidateFacts& facts) {
  const auto& budget = comparing.pattern.budget;
  if (!budget) return;
  const std::string limit = money_words(budget->amount.value, budget->currency, comparing.style);
  if (!facts.basket) {
    facts.budget_words = "not known: " + facts.basket_words;
  } else if (budget->currency.empty()) {
    facts.budget_words = "not known: the budget names no currency";
  } else if (!same_currency(budget->currency, facts.currency)) {
    facts.budget_words =
        "not known: the budget is in " + budget->currency + ", the basket in " + facts.currency;
  } else {
    const double over = *facts.basket - budget->amount.value;
    facts.within_budget = over < half_a_cent;
    facts.budget_words = *facts.within_budget ? "within the budget of " + limit
                                              : money_words(over, facts.currency, comparing.style) +
                                                    " over the budget of " + limit;
  }
}

void take_cost_per_metre(const Comparing& comparing, CandidateFacts& facts) {
  if (facts.roles.empty()) return;
  const CandidateRole& role = facts.roles[facts.main_role];
  Known& known = facts.cost_per_metre;
  double cost = 0;
  for (const YarnToBuy& buy : role.buys) {
    const double bought = buy.spare ? (buy.planned + *buy.spare).value() : 0;
    if (!buy.cost || !(bought > 0) || buy.currency.empty() ||
        !same_currency(buy.currency, role.buys.front().currency)) {
      known.because = buy.missing.empty() ? "no price in one currency" : buy.missing;
      return;
    }
    cost += *buy.cost / bought * buy.strands;
  }
  if (role.buys.empty()) {
    known.because = role.planned.because;
    return;
  }
  known.value = cost;
  known.because = money_words(cost * 100, role.buys.front().currency, comparing.style) + " for 100 m of " +
                  role.label + " as worked" + (role.strands > 1 ? ", all strands" : "");
}

constexpr std::array<std::string_view, 13> count_words = {
    "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"};
constexpr std::array<std::string_view, 13> ordinal_words = {
    "",        "only",   "second", "third", "fourth",   "fifth",  "sixth",
    "seventh", "eighth", "ninth",  "tenth", "eleventh", "twelfth"};
std::string count_word(int n) {
  return n >= 0 && n < 13 ? std::string(count_words[static_cast<std::size_t>(n)]) : std::to_string(n);
}
std::string ordinal_word(int n) {
  return n > 0 && n < 13 ? std::string(ordinal_words[static_cast<std::size_t>(n)]) : std::to_string(n) + "th";
}

// What is left of the allowance with one skein fewer: (k - 1) L / (knitted + swatch) - 1.
double allowance_left(const Comparing& comparing, std::size_t role, const YarnToBuy& buy) {
  const RoleLength& length = comparing.lengths[role];
  const double bare = (length.worked + length.swatch).value() * buy.strands;
  const double skein = buy.put_ups.front().put_up.length->value.value();
  return bare > 0 ? (*buy.skeins - 1) * skein / bare - 1 : 0;
}

std::string tips_over_words(const Comparing& comparing, const CandidateFacts& facts, std::size_t role,
                            YarnToBuy& buy) {
  const int skeins = *buy.skeins;
  const double skein = buy.put_ups.front().put_up.length->value.value();
  const double over = *buy.last_skein_share * skein;
  const double left = allowance_left(comparing, role, buy);
  std::string words = "the " + ordinal_word(skeins) + " " +
                      std::string(word_of(buy.put_ups.front().put_up.word)) + " is for " +
                      comparing.number(over, 1) + " m; " + count_word(skeins - 1) + " would ";
  if (left < 0) return words + "not cover what is knitted and swatched";
  words += "leave " + comparing.number(100 * left, 1) + " % instead of " +
           comparing.short_number(comparing.pattern.house().allowance_pct, 1) + " %";
  const auto& price = buy.put_ups.front().price;
  if (!facts.basket || !price || !facts.skeins) return words;
  buy.cheaper = *facts.basket - price->amount.value;
  return words + ": then " + std::to_string(*facts.skeins - 1) + " skeins, " +
         money_words(*buy.cheaper, facts.currency, comparing.style);
}

std::string tight_words(const Comparing& comparing, const CandidateFacts& facts, std::size_t role,
                        YarnToBuy& buy) {
  if (!buy.skeins || buy.put_ups.size() != 1 || comparing.lengths[role].at_most) return {};
  if (buy.spare && *buy.spare < metres(0))
    return "a hair over is rounded down: " + comparing.number(-buy.spare->value(), 1) +
           " m of the allowance are not there";
  if (buy.last_skein == LastSkein::tips_over && *buy.skeins > 1)
    return tips_over_words(comparing, facts, role, buy);
  if (buy.last_skein == LastSkein::brimful && buy.spare)
    return "brimful: " + comparing.number(buy.spare->value(), 1) + " m to spare beside the allowance";
  return {};
}

std::string left_over_words(const Comparing& comparing, const CandidateRole& role, const YarnToBuy& buy) {
  std::string words = role.label + ": " + comparing.number(std::max(0.0, buy.spare->value()), 0) + " m";
  if (role.buys.size() > 1) words += " of " + buy.name;
  if (const Yarn* yarn = comparing.pattern.yarn(buy.yarn);
      yarn != nullptr && yarn->put_up.length && yarn->put_up.weight)
    words += ", " +
             comparing.number(std::max(0.0, buy.spare->value()) * yarn->put_up.weight->value.value() /
                                  yarn->put_up.length->value.value(),
                              0) +
             " g";
  return words;
}

}  // namespace

void fill_basket(const Comparing& comparing, CandidateFacts& facts) {
  std::vector<std::string> unpriced;
  bool all_counted = !facts.roles.empty();
  int skeins = 0;
  for (const CandidateRole& role : facts.roles) {
    if (!role.skeins) all_counted = false;
    skeins += role.skeins.value_or(0);
    for (const YarnToBuy& buy : role.buys) {
      if (buy.cost)
        add_sum(facts.sums, buy.currency, *buy.cost);
      else if (!buy.missing.empty() &&
               std::find(unpriced.begin(), unpriced.end(), buy.missing) == unpriced.end())
        unpriced.push_back(buy.missing);
    }
  }
  if (all_counted) facts.skeins = skeins;
  for (const std::string& missing : unpriced) facts.problems.push_back(missing);
  take_basket(comparing, facts, unpriced, all_counted);
  take_budget(comparing, facts);
  take_cost_per_metre(comparing, facts);
}

void fill_tight_and_left_over(const Comparing& comparing, CandidateFacts& facts) {
  struct Tight {
    double least;
    std::string words;
  };
  std::vector<Tight> tight;
  double bought = 0, spare = 0;
  for (std::size_t i = 0; i < facts.roles.size(); ++i)
    for (YarnToBuy& buy : facts.roles[i].buys) {
      buy.tight = tight_words(comparing, facts, i, buy);
      if (!buy.tight.empty())
        tight.push_back({std::min(buy.last_skein_share.value_or(0.5), 1 - buy.last_skein_share.value_or(0.5)),
                         facts.roles[i].label + ": " + buy.tight});
      if (!buy.spare || !buy.skeins || *buy.skeins == 0) continue;
      facts.left_over.push_back(left_over_words(comparing, facts.roles[i], buy));
      bought += (buy.planned + *buy.spare).value();
      spare += std::max(0.0, buy.spare->value());
    }
  std::stable_sort(tight.begin(), tight.end(),
                   [](const Tight& a, const Tight& b) { return a.least < b.least; });
  for (Tight& one : tight) facts.tight.push_back(std::move(one.words));
  if (bought > 0 && facts.skeins) facts.spare_share = spare / bought;
}

}  // namespace skeinproof
