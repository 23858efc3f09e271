// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheets/comparison_sheet.h"

#include <algorithm>

#include "core/base/text.h"
#include "core/need/cautions.h"
#include "core/sheets/sheet_parts.h"
#include "core/substitution/wishes.h"

namespace skeinproof {
namespace {

constexpr std::size_t most_beside = 6;         // candidates beside the pattern's own yarn in one table
constexpr std::size_t consequences_shown = 3;  // in the narrow column

struct Page {
  const Pattern& pattern;
  const HouseStyle& house;
  NumberStyle style;

  std::string number(double value, int decimals) const { return show_number(value, decimals, style); }
  const char* unit() const { return in_yards_first(house) ? "yd" : "m"; }
};

using Facts = CandidateFacts;

std::string skeins(const Page& page, const Facts& facts) {
  std::vector<std::string> roles;
  for (const CandidateRole& role : facts.roles)
    roles.push_back(role.skeins ? std::to_string(*role.skeins) : "–");
  std::string words = join(roles, "+");
  if (facts.skeins && roles.size() > 1) words += " = " + std::to_string(*facts.skeins);
  for (const CandidateRole& role : facts.roles)
    for (const YarnToBuy& buy : role.buys)
      if (buy.last_skein == LastSkein::tips_over && buy.fraction)
        words += " (" + role.label + " " + page.number(*buy.fraction, 3) + ")";
  const bool at_most = std::any_of(facts.roles.begin(), facts.roles.end(),
                                   [](const CandidateRole& role) { return role.at_most; });
  return at_most ? words + ", at most" : words;
}

std::string basket(const Page& page, const Facts& facts) {
  if (!facts.basket || !facts.cost_per_metre) return facts.basket_words;
  const double metre = *facts.cost_per_metre.value * (in_yards_first(page.house) ? metres_per_yard : 1);
  return facts.basket_words + " / " + page.number(metre, 3);
}

std::string budget(const Page&, const Facts& facts) { return facts.budget_words; }

std::string left_over(const Page& page, const Facts& facts) {
  if (!facts.spare_share) return "–";
  double metres_left = 0;
  for (const CandidateRole& role : facts.roles)
    for (const YarnToBuy& buy : role.buys)
      if (buy.spare) metres_left += std::max(0.0, buy.spare->value());
  return page.number(in_house_lengths(metres(metres_left), page.house), 0) + " " + page.unit() + ", " +
         page.number(100 * *facts.spare_share, 0) + " %";
}

std::string mass(const Page& page, const Facts& facts) {
  if (!facts.mass_g) return "not known";
  std::string words = page.number(*facts.mass_g.value, 0) + " g";
  if (facts.own || !facts.mass_more) return words;
  const double more = 100 * *facts.mass_more.value;
  return words + " (" + (more >= 0 ? "+" : "") + page.number(more, 0) + " %)";
}

std::string mass_per_area(const Page& page, const Facts& facts) {
  return facts.mass_per_area ? page.number(*facts.mass_per_area.value, 0) + " g" : "not known";
}

std::string thickness(const Page& page, const Facts& facts) {
  if (facts.own) return "–";
  if (!facts.thickness_by_mass) return "not known";
  std::string words = page.number(*facts.thickness_by_mass.value, 2);
  if (facts.thickness_by_volume) words += " / " + page.number(*facts.thickness_by_volume.value, 2);
  return words + ", ±" + page.number(100 * facts.thickness_by_mass.error_share, 0) + " %";
}

std::string firmness_and_gauge(const Page& page, const Facts& facts) {
  std::string words = facts.firmness ? page.number(*facts.firmness.value, 1) : "–";
  if (!facts.gauge_low) return words;
  const std::string low = page.number(*facts.gauge_low, 1), high = page.number(*facts.gauge_high, 1);
  words += facts.own ? ", " : ", about ";
  return words + (low == high ? low : low + "–" + high);
}

std::string within_reach(const Page&, const Facts& facts) { return facts.own ? "–" : facts.gauge_words; }
std::string label_says(const Page&, const Facts& facts) { return facts.label_gauge; }
std::string needle(const Page&, const Facts& facts) { return facts.needle; }
std::string care(const Page&, const Facts& facts) { return facts.care_words; }

std::string will_differ(const Page&, const Facts& facts) {
  if (facts.consequences.empty()) return "–";
  std::vector<std::string> words, ids;
  for (std::size_t i = 0; i < std::min(consequences_shown, facts.consequences.size()); ++i) {
    words.push_back(facts.consequences[i].short_words);
    ids.push_back(facts.consequences[i].id);
  }
  std::string all = join(words, "; ") + " (" + join(ids, " ") + ")";
  if (facts.consequences.size() > consequences_shown)
    all += ", and " + std::to_string(facts.consequences.size() - consequences_shown) + " more below";
  return all;
}

std::string settled_by(const Page&, const Facts& facts) {
  if (facts.consequences.empty()) return "–";
  std::vector<std::string> tests;
  for (std::size_t i = 0; i < std::min(consequences_shown, facts.consequences.size()); ++i) {
    const std::string& test = facts.consequences[i].short_test;
    if (!test.empty() && std::find(tests.begin(), tests.end(), test) == tests.end()) tests.push_back(test);
  }
  return join(tests, "; ");
}

std::string tight(const Page&, const Facts& facts) {
  return facts.tight.empty() ? "–" : join(facts.tight, "; ");
}

struct FactRow {
  std::string_view heading;
  std::string (*words)(const Page& page, const Facts& facts);
  bool opens_group;
};
constexpr FactRow rows[] = {
    {"skeins", skeins, false},
    {"basket / per ", basket, false},
    {"budget", budget, false},
    {"left over", left_over, false},
    {"garment mass", mass, false},
    {"mass of a square metre", mass_per_area, false},
    {"thickness by mass / volume", thickness, false},
    {"firmness, gauge", firmness_and_gauge, false},
    {"gauge within reach", within_reach, false},
    {"band says", label_says, false},
    {"needle", needle, false},
    {"care", care, false},
    {"tight", tight, false},
    {"will differ", will_differ, true},
    {"settle it by", settled_by, false},
};

// "skeins MC+CC1+CC2", "basket / per m".
std::string heading_of(const Page& page, const FactRow& row) {
  std::string heading(row.heading);
  if (row.words == basket) return heading + page.unit();
  if (row.words != skeins) return heading;
  std::vector<std::string> labels;
  for (const Role& role : page.pattern.roles) labels.push_back(role.label);
  return labels.size() > 1 ? heading + " " + join(labels, "+") : heading;
}

Table facts_table(const Page& page, const std::vector<const Facts*>& columns) {
  Table table;
  table.columns = {{"", Align::left, false}};
  for (const Facts* facts : columns) table.columns.push_back({facts->name, Align::left, false});
  for (const FactRow& fact : rows) {
    Row row;
    row.opens_group = fact.opens_group;
    row.cells = {words(heading_of(page, fact))};
    bool any = false;
    for (const Facts* facts : columns) {
      row.cells.push_back(words(fact.words(page, *facts)));
      any = any || !row.cells.back().text.empty();
    }
    if (any) table.rows.push_back(std::move(row));
  }
  return table;
}

Table consequences_table(const std::vector<const Facts*>& all) {
  Table table;
  table.title = "What will differ, the worst first";
  for (const char* heading : {"yarn", "rule", "weight", "what", "because", "advice", "cheapest test"})
    table.columns.push_back({heading, Align::left, false});
  for (const Facts* facts : all)
    for (const Consequence& one : facts->consequences) {
      Row row;
      row.opens_group = &one == &facts->consequences.front();
      row.cells = {words(facts->name), words(one.id),      words(std::string(word_of(one.weight))),
                   words(one.title),   words(one.because), words(one.advice),
                   words(one.test)};
      row.cells.front().repeats = !row.opens_group;
      table.rows.push_back(std::move(row));
    }
  if (!table.rows.empty()) table.rows.front().opens_group = false;
  return table;
}

Table wishes_table(const Page& page, const std::vector<const Facts*>& columns) {
  Table table;
  table.title = "What must and should hold";
  table.columns = {{"wish", Align::left, false}, {"", Align::left, false}};
  for (const Facts* facts : columns) table.columns.push_back({facts->name, Align::left, false});
  for (std::size_t i = 0; i < page.pattern.wishes.size(); ++i) {
    const Wish& wish = page.pattern.wishes[i];
    if (wish.level == WishLevel::need_not) continue;
    Row row;
    row.cells = {words(wish_words(page.pattern, wish)), words(std::string(word_of(wish.level)))};
    for (const Facts* facts : columns) {
      const WishAnswer& answer = facts->wishes[i];
      row.cells.push_back(words((!answer.met   ? "not known"
                                 : *answer.met ? "yes"
                                               : "no") +
                                (answer.because.empty() ? "" : ": " + answer.because)));
    }
    table.rows.push_back(std::move(row));
  }
  return table;
}

void add_foot_notes(Sheet& sheet, const std::vector<const Facts*>& all) {
  std::vector<std::string> cautions;
  for (const Facts* facts : all) {
    for (const std::string& problem : facts->problems)
      sheet.foot_notes.push_back(facts->name + ": " + problem);
    if (const std::string missing = not_looked_at_words(facts->not_looked_at); !missing.empty())
      sheet.foot_notes.push_back(facts->name + ": " + missing);
    for (const std::string& caution : facts->cautions)
      if (std::find(cautions.begin(), cautions.end(), caution) == cautions.end()) cautions.push_back(caution);
  }
  for (const std::string& caution : cautions) {
    std::vector<std::string> names;
    for (const Facts* facts : all)
      if (std::find(facts->cautions.begin(), facts->cautions.end(), caution) != facts->cautions.end())
        names.push_back(facts->name);
    const bool of_all = names.size() == all.size();
    sheet.foot_notes.push_back("Caution" + (of_all ? "" : ", " + join(names, ", ")) + ": " + caution);
  }
  if (!cautions.empty()) sheet.foot_notes.emplace_back(law_comes_first());
}

}  // namespace

Sheet comparison_sheet(const Pattern& pattern, const Assessment& assessment, const HouseStyle& house,
                       std::string_view date) {
  const std::size_t size = bench_size(pattern);
  const std::vector<CandidateFacts> facts = compare_candidates(pattern, assessment, size);
  const std::string label = pattern.sizes.empty() ? "" : pattern.sizes[size].label;
  Sheet sheet = started_sheet(pattern, house, "Yarns side by side, size " + label, date);
  const Page page{pattern, house, sheet.numbers};
  std::vector<const Facts*> shown, beside;
  for (const CandidateFacts& one : facts) {
    if (!one.shown && !one.own) continue;
    shown.push_back(&one);
    if (!one.own) beside.push_back(&one);
  }
  if (shown.empty()) return sheet;
  for (std::size_t from = 0; from == 0 || from < beside.size(); from += most_beside) {
    std::vector<const Facts*> columns = {shown.front()};
    for (std::size_t i = from; i < std::min(beside.size(), from + most_beside); ++i)
      columns.push_back(beside[i]);
    sheet.parts.emplace_back(facts_table(page, columns));
    if (Table wishes = wishes_table(page, columns); !wishes.rows.empty())
      sheet.parts.emplace_back(std::move(wishes));
  }
  for (const TradeOff& off : trade_offs(pattern, facts))
    sheet.parts.emplace_back(Paragraph{Voice::worked_out, "One against the other: " + off.words + "."});
  if (Table table = consequences_table(shown); !table.rows.empty())
    sheet.parts.emplace_back(std::move(table));
  add_foot_notes(sheet, shown);
  return sheet;
}

}  // namespace skeinproof
