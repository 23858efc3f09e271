// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/slip_lists.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/review/printed_lists.h"
#include "core/review/printed_measures.h"
#include "core/review/role_figures.h"
#include "core/units/show.h"

namespace skeinproof {
namespace {

bool is_list(const Statement& statement) {
  switch (statement.kind) {
    case StatementKind::count:
    case StatementKind::total_count:
    case StatementKind::measurement:
    case StatementKind::notion:
    case StatementKind::stitches:
      return statement.values.size() > 1 && !statement.all_sizes;
    default:
      return false;
  }
}

bool counts_skeins(const Statement& statement) {
  return statement.kind == StatementKind::count &&
         (statement.unit == PrintedUnit::skein || statement.unit == PrintedUnit::none);
}

// A list printed for something else than it says: counted from so much of the need.
struct Recount {
  double of_need;
  std::string_view name;
};
constexpr Recount recounts[] = {{0.5, "counted for one of a pair"},
                                {2, "counted twice"},
                                {metres_per_yard, "yards counted as metres"},
                                {1 / metres_per_yard, "metres counted as yards"}};

int whole(double skeins) { return static_cast<int>(std::ceil(skeins - 1e-9)); }

class ListSlips {
 public:
  ListSlips(const ReviewInput& input, const std::set<std::size_t>& touched)
      : input_(input), printed_(input.printed), roles_(role_figures(input)) {
    for (const std::size_t s : touched) {
      const Statement& statement = printed_.reading().statements[s];
      if (!is_list(statement)) continue;
      const std::size_t n = printed_.sizes();
      if (statement.values.size() + 1 == n) missing_value(statement);
      if (statement.values.size() == n + 1) value_too_many(statement);
      if (statement.values.size() != n || n < 2) continue;
      if (n >= 3) column_slip(s);
      if (!counts_skeins(statement)) continue;
      recount(s);
      for (const std::size_t t : touched)
        if (t > s) rows_exchanged(s, t);
    }
  }
  std::vector<SlipCandidate> found;

 private:
  const Statement& at(std::size_t s) const { return printed_.reading().statements[s]; }

  const RoleFigures* role_of(const Statement& statement) const {
    const auto role = std::find_if(roles_.begin(), roles_.end(), [&](const RoleFigures& one) {
      return one.printed->count && one.printed->count->statement == &statement;
    });
    return role == roles_.end() ? nullptr : &*role;
  }

  // What the total line leaves for one role.
  std::optional<double> left_by_total(const Statement& statement, std::size_t size) const {
    const auto total = printed_.total();
    if (!counts_skeins(statement) || !total || !total->values[size] || !total->complete) return std::nullopt;
    double left = *total->values[size]->number;
    for (const PrintedRole& role : printed_.roles()) {
      if (!role.count || role.count->statement == &statement) continue;
      const PrintedValue* value = value_at(*role.count, size);
      if (value == nullptr || !value->number) return std::nullopt;
      left -= *value->number;
    }
    return left > 0 ? std::optional<double>(left) : std::nullopt;
  }

  // The gap that the brackets show is tried first: where neighbours are equal, several places make one text.
  std::vector<std::size_t> gaps_first(const Statement& statement) const {
    const PrintedList list = printed_.list(statement);
    std::vector<std::size_t> sizes(printed_.sizes());
    std::iota(sizes.begin(), sizes.end(), std::size_t{0});
    std::stable_partition(sizes.begin(), sizes.end(),
                          [&](std::size_t i) { return list.values[i] == nullptr; });
    return sizes;
  }

  void missing_value(const Statement& statement) {
    const auto in_force = facts_behind(input_, statement);
    const RoleFigures* role = role_of(statement);
    for (const std::size_t size : gaps_first(statement)) {
      std::set<double> values;
      if (size < in_force.size() && in_force[size]) values.insert(*in_force[size]);
      if (const auto left = left_by_total(statement, size)) values.insert(*left);
      if (role != nullptr)
        if (const auto needed = role->skeins_needed(size)) values.insert(*needed);
      for (const double value : between_neighbours(statement, size)) values.insert(value);
      for (const double value : values)
        if (const auto edit = insert_value(printed_, statement, size, value))
          found.push_back({SlipKind::missing_value, "a value left out", {*edit}, {}});
    }
  }

  // A value on the line between those it would stand between, rounded as the list rounds; at an end that of
  // its neighbour.
  std::vector<double> between_neighbours(const Statement& statement, std::size_t size) const {
    const auto number = [&](std::size_t v) { return statement.values[v].number; };
    const std::size_t last = statement.values.size();
    if (size == 0) return number(0) ? std::vector<double>{*number(0)} : std::vector<double>{};
    if (size >= last)
      return number(last - 1) ? std::vector<double>{*number(last - 1)} : std::vector<double>{};
    if (!number(size - 1) || !number(size)) return {};
    const double middle = (*number(size - 1) + *number(size)) / 2;
    if (statement.kind == StatementKind::measurement)
      return {round_half_up(middle, 0.5), round_half_up(middle)};
    return {std::floor(middle), std::ceil(middle)};
  }

  void value_too_many(const Statement& statement) {
    for (std::size_t v = 0; v < statement.values.size(); ++v) {
      const TextSpan here = statement.values[v].span;
      const bool next_in_group = v + 1 < statement.values.size() && !statement.values[v + 1].opens_group;
      TextSpan cut{here.begin, here.end};
      if (next_in_group)
        cut.end = statement.values[v + 1].span.begin;
      else if (v > 0 && !statement.values[v].opens_group)
        cut.begin = statement.values[v - 1].span.end;
      else
        continue;
      found.push_back({SlipKind::value_too_many, "a value too many", {{cut, ""}}, {}});
    }
  }

  void replace_list(SlipKind kind, std::string name, std::size_t s, const std::vector<std::string>& after) {
    SlipCandidate candidate{kind, std::move(name), {}, {}};
    add_list(candidate, s, after);
    if (!candidate.edits.empty()) found.push_back(std::move(candidate));
  }
  void add_list(SlipCandidate& candidate, std::size_t s, const std::vector<std::string>& after) {
    for (std::size_t v = 0; v < after.size(); ++v) {
      const TextSpan span = at(s).values[v].span;
      if (after[v].empty() || printed_.words(span) == after[v]) continue;
      candidate.edits.push_back({span, after[v]});
      candidate.figures.push_back({s, v, after[v]});
    }
  }

  void column_slip(std::size_t s) {
    const Statement& statement = at(s);
    std::vector<std::string> words;
    for (const PrintedValue& value : statement.values) words.emplace_back(printed_.words(value));
    const auto known = words_in_force(input_, statement);
    const auto end_value = [&](std::size_t v) {
      return v < known.size() && !known[v].empty() ? known[v] : words[v];
    };
    std::vector<std::string> left(words.begin() + 1, words.end());
    left.push_back(end_value(words.size() - 1));
    replace_list(SlipKind::column_slip, "list one place too far", s, left);
    std::vector<std::string> right = {end_value(0)};
    right.insert(right.end(), words.begin(), words.end() - 1);
    replace_list(SlipKind::column_slip, "list one place too early", s, right);
  }

  void rows_exchanged(std::size_t s, std::size_t t) {
    const Statement &one = at(s), &other = at(t);
    if (!counts_skeins(other) || one.values.size() != other.values.size()) return;
    SlipCandidate candidate{
        SlipKind::rows_exchanged, "exchange the lists of " + one.subject + " and " + other.subject, {}, {}};
    std::vector<std::string> first, second;
    for (std::size_t v = 0; v < one.values.size(); ++v) {
      first.emplace_back(printed_.words(other.values[v]));
      second.emplace_back(printed_.words(one.values[v]));
    }
    add_list(candidate, s, first);
    add_list(candidate, t, second);
    if (!candidate.edits.empty()) found.push_back(std::move(candidate));
  }

  void recount(std::size_t s) {
    const RoleFigures* role = role_of(at(s));
    if (role == nullptr || !role->skein_m || !(*role->skein_m > 0)) return;
    std::vector<double> planned;  // m
    std::vector<std::string> right;
    for (std::size_t v = 0; v < at(s).values.size(); ++v) {
      const SizeNeed* need = role->need_at(v);
      if (need == nullptr || !need->skeins || !at(s).values[v].number) return;
      planned.push_back(need->planned.value());
      right.push_back(std::to_string(*need->skeins));
    }
    const auto counted_with = [&](double metres_a_skein, double of_need) {
      for (std::size_t v = 0; v < planned.size(); ++v)
        if (whole(of_need * planned[v] / metres_a_skein) != *at(s).values[v].number) return false;
      return true;
    };
    for (const Recount& row : recounts)
      if (counted_with(*role->skein_m, row.of_need))
        replace_list(SlipKind::recount, std::string(row.name), s, right);
    for (const PrintedYarn& yarn : printed_.yarns())
      if (yarn.metres && *yarn.metres > 0 && *yarn.metres != *role->skein_m && counted_with(*yarn.metres, 1))
        replace_list(SlipKind::recount, "counted in skeins of " + yarn.name, s, right);
  }

  const ReviewInput& input_;
  const PrintedView& printed_;
  std::vector<RoleFigures> roles_;
};

}  // namespace

std::vector<SlipCandidate> list_slips(const ReviewInput& input, const std::set<std::size_t>& touched) {
  return ListSlips(input, touched).found;
}

}  // namespace skeinproof
