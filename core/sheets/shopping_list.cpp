// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheets/shopping_list.h"

#include <algorithm>
#include <cmath>

#include "core/base/listed.h"
#include "core/need/bench_changes.h"
#include "core/need/cautions.h"
#include "core/need/changes.h"
#include "core/sheets/sheet_parts.h"
#include "core/substitution/comparing.h"
#include "core/substitution/purchase.h"
#include "core/yarn/linear_density.h"

namespace skeinproof {
namespace {

constexpr double idle_share = 0.5;  // a part skein is named where no more than this of one is needed

class ShoppingList {
 public:
  ShoppingList(const Pattern& pattern, const CandidateFacts& facts, const HouseStyle& house,
               std::size_t size_index, Sheet sheet)
      : pattern_(pattern),
        facts_(facts),
        house_(house),
        size_(pattern.sizes[size_index].id),
        sheet_(std::move(sheet)) {}

  Sheet take() {
    const std::vector<SpareSkein> spares = spare_skeins(pattern_, facts_, size_);
    add_table();
    add_colours();
    add_total(spares);
    add_spares(spares);
    add_before_casting_on();
    add_changes();
    for (const std::string& problem : facts_.problems) sheet_.foot_notes.push_back(problem);
    add_yarn_cautions();
    return std::move(sheet_);
  }

 private:
  std::string number(double value, int decimals) const {
    return show_number(value, decimals, sheet_.numbers);
  }
  const char* unit() const { return in_yards_first(house_) ? "yd" : "m"; }
  std::string length(Metres value) const { return number(in_house_lengths(value, house_), 0) + " " + unit(); }
  std::string money(double amount, const std::string& currency) const {
    return money_words(amount, currency, sheet_.numbers);
  }
  void say(std::string words, Voice voice = Voice::worked_out) {
    sheet_.parts.emplace_back(Paragraph{voice, std::move(words)});
  }

  std::string colour(const CandidateRole& role) const {
    const Role* own = pattern_.role(role.role);
    return own != nullptr && facts_.own ? role_name(*own, house_) : role.label;
  }
  static std::string counted(int count, SkeinWord word) {
    return std::to_string(count) + " " + std::string(word_of(word)) + (count == 1 ? "" : "s");
  }
  // "7 skeins", "2 skeins of 100 g and 1 skein of 50 g".
  std::string skeins_of(const YarnToBuy& buy) const {
    std::vector<std::string> words;
    for (const PutUpBought& one : buy.put_ups) {
      std::string put_up = counted(one.count, one.put_up.word);
      if (buy.put_ups.size() > 1 && one.put_up.weight)
        put_up += " of " + show_short(one.put_up.weight->value.value(), 1, sheet_.numbers) + " g";
      words.push_back(std::move(put_up));
    }
    return words.empty() ? "skeins not known" : listed(words);
  }

  void add_table() {
    Table table;
    const std::string metres_of = std::string(", ") + unit();
    table.columns = {{"colour", Align::left, false},
                     {"yarn", Align::left, false},
                     {"buy", Align::left, false},
                     {"planned" + metres_of, Align::right, false},
                     {"bought" + metres_of, Align::right, false},
                     {"spare" + metres_of, Align::right, false},
                     {"price", Align::right, false},
                     {"dye lot", Align::left, false}};
    for (const CandidateRole& role : facts_.roles)
      for (const YarnToBuy& buy : role.buys) {
        Row row;
        const auto bought = buy.spare ? std::optional(buy.planned + *buy.spare) : std::nullopt;
        const auto in_house = [&](std::optional<Metres> m) {
          return figure(m ? std::optional(in_house_lengths(*m, house_)) : std::nullopt, 0);
        };
        row.cells = {words(colour(role)),
                     words(buy.name),
                     words(skeins_of(buy)),
                     in_house(buy.planned),
                     in_house(bought),
                     in_house(buy.spare),
                     words(buy.cost ? money(*buy.cost, buy.currency) : "–"),
                     words("____")};
        row.cells[2].strong = true;
        table.rows.push_back(std::move(row));
      }
    if (!table.rows.empty()) sheet_.parts.emplace_back(std::move(table));
  }

  void add_colours() {
    const std::vector<SpareAllows> allowed = spare_allows(pattern_, facts_, size_, sheet_.numbers);
    for (const CandidateRole& role : facts_.roles) {
      if (role.buys.empty()) {
        say(colour(role) + ": not known, " +
            (role.planned.because.empty() ? std::string("no yarn named") : role.planned.because) + ".");
        continue;
      }
      for (const YarnToBuy& buy : role.buys) say(line_of(role, buy, allowed));
    }
  }

  std::string line_of(const CandidateRole& role, const YarnToBuy& buy,
                      const std::vector<SpareAllows>& allowed) const {
    std::string line = colour(role) + ": " + skeins_of(buy) + " of " + buy.name;
    if (buy.strands > 1) line += " for " + std::to_string(buy.strands) + " strands";
    if (!buy.skeins) return line + ". Plan " + length(buy.planned) + "; " + buy.missing + ".";
    if (*buy.skeins > 1) line += ", ONE dye lot (lot ____)";
    if (role.at_most) line += ". At most, by the printed counts";
    if (buy.spare) {
      line += ". Plan " + length(buy.planned) + " of " + length(buy.planned + *buy.spare) + ": ";
      line += *buy.spare < metres(0) ? length(-*buy.spare) + " of the allowance are left out, a hair over"
                                     : length(*buy.spare) + " to spare";
    }
    const auto longer = std::find_if(allowed.begin(), allowed.end(),
                                     [&](const SpareAllows& one) { return one.role == role.role; });
    if (longer != allowed.end() && &buy == &role.buys.front()) line += "; " + longer->words + " still fits";
    const std::string end = small_end(buy);
    return line + (end.empty() ? "." : "; " + end + ".");
  }

  // "a 17 g end would do".
  std::string small_end(const YarnToBuy& buy) const {
    const Yarn* yarn = pattern_.yarn(buy.yarn);
    const auto density = linear_density(yarn != nullptr ? yarn->put_up : PutUp{});
    if (!buy.skeins || *buy.skeins != 1 || !density || !yarn->put_up.length) return {};
    if (buy.planned > idle_share * yarn->put_up.length->value) return {};
    const double grams_needed = std::ceil((buy.planned / *density).value() - 1e-9);
    return "a " + number(grams_needed, 0) + " g end of it would do";
  }

  void add_total(const std::vector<SpareSkein>& spares) {
    std::string line;
    if (facts_.skeins) line = std::to_string(*facts_.skeins) + (*facts_.skeins == 1 ? " skein" : " skeins");
    if (!facts_.basket_words.empty()) line += (line.empty() ? "Basket " : ", ") + facts_.basket_words;
    if (!facts_.budget_words.empty() && pattern_.budget) line += ", " + facts_.budget_words;
    if (!line.empty()) say(line + ".");
    if (spares.empty() || !facts_.basket) return;
    double with_spares = *facts_.basket;
    for (const SpareSkein& spare : spares) {
      if (!spare.cost || !same_currency(spare.currency, facts_.currency)) return;
      with_spares += *spare.cost;
    }
    say("With one more as below: " + money(with_spares, facts_.currency) + ".");
  }

  void add_spares(const std::vector<SpareSkein>& spares) {
    for (const SpareSkein& spare : spares) {
      std::vector<std::string> reasons;
      for (SpareReason reason : spare.reasons) reasons.emplace_back(word_of(reason));
      const auto role = std::find_if(facts_.roles.begin(), facts_.roles.end(),
                                     [&](const CandidateRole& one) { return one.role == spare.role; });
      const Yarn* yarn = pattern_.yarn(spare.yarn);
      say("One more: 1 " + std::string(word_of(spare.put_up.word)) + " of " +
          (yarn != nullptr ? yarn->name : "") + " for " + colour(*role) + ", because " + listed(reasons) +
          ". Return by ____.");
    }
    if (!spares.empty()) return;
    const CandidateRole* main = facts_.roles.empty() ? nullptr : &facts_.roles[facts_.main_role];
    std::string used;
    if (main != nullptr && !main->buys.empty() && main->buys.front().last_skein_share)
      used = " (last skein of " + main->label + " " +
             number(round_half_up(*main->buys.front().last_skein_share * 100, 1e-6), 0) + " % used)";
    say("One more: none needed by the rule" + used + ". Whatever is not wound: return by ____.");
  }

  void add_before_casting_on() {
    const auto looser = looser_hand(pattern_, facts_, size_);
    const bool round =
        std::any_of(pattern_.fabrics.begin(), pattern_.fabrics.end(),
                    [](const Fabric& fabric) { return fabric.gauge.worked == Worked::in_the_round; });
    std::string line = std::string("Before casting on: swatch ") +
                       (round ? "in the round" : "as the item is worked") +
                       ", wash it as the item will be washed, measure 48 h later.";
    if (looser) {
      const Role* role = pattern_.role(looser->role);
      const Fabric* fabric = pattern_.fabric(looser->fabric);
      const double over = fabric->gauge.over.value.value();
      line += " At " + show_short(looser->stitches, 1, sheet_.numbers) + " sts × " +
              show_short(looser->rows, 1, sheet_.numbers) + " rows in " +
              show_short(over, 1, sheet_.numbers) + " cm allow " + length(looser->more) + " more of " +
              role->label + ".";
    }
    say(line);
    if (!facts_.own)
      say("Gauge in this yarn: " + facts_.gauge_words + (facts_.needle.empty() ? "" : "; " + facts_.needle) +
          ".");
  }

  // What is only being tried is not bought for.
  void add_changes() {
    const auto changes = changes_of(pattern_.changes);
    if (!changes || changes->empty()) return;
    const auto what_if = apply(pattern_, *changes, size_);
    if (!what_if) return;
    std::vector<std::string> made, more;
    for (const Change& change : *changes) made.push_back(change_words(pattern_, change, sheet_.numbers));
    for (const RoleChange& role : what_if->roles)
      if (role.known() && std::abs(role.planned_more.value()) >= 0.5)
        more.push_back(length(metres(std::abs(role.planned_more.value()))) +
                       (role.planned_more > metres(0) ? " more of " : " less of ") + role.label);
    say("Not in this list: " + listed(made) + (more.empty() ? "" : ", which takes " + listed(more)) + ".");
  }

  void add_yarn_cautions() {
    for (const std::string& caution : facts_.cautions) sheet_.foot_notes.push_back("Caution: " + caution);
    if (!facts_.cautions.empty()) sheet_.foot_notes.emplace_back(law_comes_first());
  }

  const Pattern& pattern_;
  const CandidateFacts& facts_;
  const HouseStyle& house_;
  SizeId size_;
  Sheet sheet_;
};

}  // namespace

Expected<Sheet> shopping_list(const Pattern& pattern, const Assessment& assessment, const HouseStyle& house,
                              CandidateId candidate, SizeId size, std::string_view date) {
  const auto asked = size ? pattern.size_index(size) : std::optional(bench_size(pattern));
  if (!asked || *asked >= pattern.sizes.size())
    return failure(ErrorKind::unknown_name, "a size that is not in the pattern", "a size of the pattern");
  for (const CandidateFacts& facts : compare_candidates(pattern, assessment, *asked)) {
    if (facts.own ? static_cast<bool>(candidate) : facts.id != candidate) continue;
    std::string subtitle = "Shopping list, size " + pattern.sizes[*asked].label;
    if (!facts.own) subtitle += ", in " + facts.name;
    return ShoppingList(pattern, facts, house, *asked, started_sheet(pattern, house, subtitle, date)).take();
  }
  return failure(ErrorKind::unknown_name, "a candidate that is not in the pattern", "a candidate of it");
}

}  // namespace skeinproof
