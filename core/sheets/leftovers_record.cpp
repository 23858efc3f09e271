// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheets/leftovers_record.h"

#include <algorithm>

#include "core/base/listed.h"
#include "core/need/as_you_go.h"
#include "core/need/constants.h"
#include "core/sheets/sheet_parts.h"
#include "core/substitution/candidate_facts.h"
#include "core/substitution/on_hand_verdict.h"
#include "core/yarn/linear_density.h"

namespace skeinproof {
namespace {

// Yarn of one colour before it is knitted.
struct Begun {
  std::string yarn;
  std::string from;  // "on hand", "to buy"
  Metres length;
  int pieces = 1;
  std::optional<MetresPerGram> density;
};

class LeftoversRecord {
 public:
  LeftoversRecord(const Pattern& pattern, const Assessment& assessment, const HouseStyle& house,
                  std::size_t size_index, Sheet sheet)
      : pattern_(pattern),
        assessment_(assessment),
        house_(house),
        size_index_(size_index),
        sheet_(std::move(sheet)),
        join_m_(constant(pattern, "join_m")) {}

  Sheet take() {
    start_table();
    const auto candidates = compare_candidates(pattern_, assessment_, size_index_);
    for (const RoleNeed& need : assessment_.roles) {
      const Role* role = pattern_.role(need.role);
      if (role == nullptr) continue;
      std::vector<Begun> begun = on_hand_of(*role);
      if (begun.empty() && !candidates.empty()) begun = bought_of(candidates.front(), *role);
      add_row(*role, need.sizes[size_index_], begun);
    }
    if (!table_.rows.empty()) sheet_.parts.emplace_back(std::move(table_));
    sheet_.foot_notes.push_back(
        "Likely left: after " + show_number(join_m_, 2, sheet_.numbers) +
        " m for each join, what is knitted and the swatch. At least: where the whole "
        "allowance is knitted up too. Weigh what is left in the end beside a whole skein, "
        "and write down its lot: an end without a length is of no use.");
    add_cautions(sheet_, pattern_);
    return std::move(sheet_);
  }

 private:
  const char* unit() const { return in_yards_first(house_) ? "yd" : "m"; }
  Cell length_cell(std::optional<Metres> length) const {
    return figure(length ? std::optional(in_house_lengths(*length, house_)) : std::nullopt, 0);
  }
  void start_table() {
    const std::string in = std::string(", ") + unit();
    table_.columns = {{"colour", Align::left, false},
                      {"yarn", Align::left, false},
                      {"begun with" + in, Align::right, false},
                      {"pieces", Align::right, false},
                      {"knitted" + in, Align::right, false},
                      {"likely left" + in, Align::right, false},
                      {"likely left, g", Align::right, false},
                      {"at least" + in, Align::right, false},
                      {"by weighing" + in, Align::right, false},
                      {"weighed in the end, g", Align::left, false}};
  }

  std::vector<Begun> on_hand_of(const Role& role) const {
    std::vector<Begun> all;
    for (const YarnOnHand& yarn : pattern_.on_hand) {
      if (!yarn.used || yarn.role != role.id) continue;
      const auto length = length_on_hand(pattern_, yarn);
      if (!length) continue;
      all.push_back(
          {on_hand_name(pattern_, yarn), "on hand", length->length, length->pieces, length->density});
    }
    return all;
  }

  std::vector<Begun> bought_of(const CandidateFacts& own, const Role& role) const {
    std::vector<Begun> all;
    for (const CandidateRole& one : own.roles) {
      if (one.role != role.id) continue;
      for (const YarnToBuy& buy : one.buys) {
        if (!buy.skeins || !buy.spare) continue;
        Begun begun{buy.name, "to buy", buy.planned + *buy.spare, std::max(1, *buy.skeins), {}};
        const Yarn* yarn = pattern_.yarn(buy.yarn);
        const auto density = linear_density(yarn != nullptr ? yarn->put_up : PutUp{});
        if (density) begun.density = *density;
        all.push_back(std::move(begun));
      }
    }
    return all;
  }

  void add_row(const Role& role, const SizeNeed& need, const std::vector<Begun>& begun) {
    Metres length;
    int pieces = 0;
    std::vector<std::string> names;
    for (const Begun& one : begun) {
      length += one.length;
      pieces += one.pieces;
      names.push_back(one.yarn + (one.from == "to buy" ? " (to buy)" : ""));
    }
    const Metres usable = length - metres(join_m_ * std::max(0, pieces - 1));
    std::optional<Metres> likely, least, knitted;
    if (need.known) knitted = need.knitted + need.swatch;
    if (need.known && !begun.empty()) {
      likely = std::max(metres(0), usable - *knitted);
      least = std::max(metres(0), usable - need.planned);
    }
    std::optional<double> grams_left;
    if (likely && begun.front().density) grams_left = *likely / *begun.front().density / grams(1);
    Row row;
    row.cells = {words(role_name(role, house_)),
                 words(names.empty() ? "–" : listed(names)),
                 length_cell(begun.empty() ? std::nullopt : std::optional(length)),
                 figure(begun.empty() ? std::nullopt : std::optional<double>(pieces), 0),
                 length_cell(knitted),
                 length_cell(likely),
                 figure(grams_left, 0),
                 length_cell(least),
                 length_cell(by_weighing(role)),
                 words("____")};
    if (knitted && !begun.empty() && usable < *knitted) row.cells[5].remark = "not enough";
    table_.rows.push_back(std::move(row));
  }

  // What the last reading leaves for the end of the work.
  std::optional<Metres> by_weighing(const Role& role) {
    const SizeId size = pattern_.sizes[size_index_].id;
    if (size != pattern_.chosen_size ||
        std::none_of(pattern_.readings.begin(), pattern_.readings.end(),
                     [&](const YarnReading& reading) { return reading.used && reading.role == role.id; }))
      return std::nullopt;
    const auto go = as_you_go(pattern_, role.id, size, sheet_.numbers);
    if (!go) {
      sheet_.foot_notes.push_back(role.label + ", readings: " + go.error().message() + ".");
      return std::nullopt;
    }
    sheet_.foot_notes.push_back(role.label + ": weighed after " + go->stretches.back().words + ", " +
                                show_number(in_house_lengths(go->left, house_), 0, sheet_.numbers) + " " +
                                unit() + " left then.");
    return std::max(metres(0), go->left - go->to_go);
  }

  const Pattern& pattern_;
  const Assessment& assessment_;
  const HouseStyle& house_;
  std::size_t size_index_;
  Sheet sheet_;
  Table table_;
  double join_m_;
};

}  // namespace

Expected<Sheet> leftovers_record(const Pattern& pattern, const Assessment& assessment,
                                 const HouseStyle& house, SizeId size, std::string_view date) {
  const bool at_home = std::any_of(pattern.on_hand.begin(), pattern.on_hand.end(),
                                   [](const YarnOnHand& yarn) { return yarn.used && yarn.role; });
  const auto index = size      ? pattern.size_index(size)
                     : at_home ? on_hand_size_index(pattern)
                               : std::optional(bench_size(pattern));
  if (!index || *index >= pattern.sizes.size())
    return failure(ErrorKind::unknown_name, "a size that is not in the pattern", "a size of the pattern");
  Sheet sheet = started_sheet(pattern, house, "Leftovers, size " + pattern.sizes[*index].label, date);
  return LeftoversRecord(pattern, assessment, house, *index, std::move(sheet)).take();
}

}  // namespace skeinproof
