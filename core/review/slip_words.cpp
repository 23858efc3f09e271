// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/base/text.h"
#include "core/review/printed_measures.h"
#include "core/review/role_figures.h"
#include "core/review/slip_lists.h"
#include "core/units/show.h"
#include "core/yarn/read_composition.h"

namespace skeinproof {
namespace {

// Where a name stands among the characters of a statement.
std::optional<TextSpan> place_of(const PrintedView& printed, const Statement& statement,
                                 std::string_view name) {
  const std::string_view words = printed.words(statement.span);
  const auto at = name.empty() ? std::string_view::npos : words.find(name);
  if (at == std::string_view::npos) return std::nullopt;
  return TextSpan{statement.span.begin + at, statement.span.begin + at + name.size()};
}

void add_word(std::vector<SlipCandidate>& found, const PrintedView& printed, const Statement& statement,
              SlipKind kind, const std::string& before, const std::string& after) {
  if (after.empty() || before == after) return;
  if (const auto place = place_of(printed, statement, before))
    found.push_back({kind, before + " for " + after, {{*place, after}}, {}});
}

const Yarn* yarn_in_force(const ReviewInput& input, const Statement& statement) {
  const auto& yarns = input.printed.yarns();
  const int index = statement.yarn < 0 && yarns.size() == 1 ? 0 : statement.yarn;
  if (index < 0 || static_cast<std::size_t>(index) >= yarns.size()) return nullptr;
  return input.pattern.yarn(yarns[static_cast<std::size_t>(index)].fact);
}

const Role* role_in_force(const ReviewInput& input, const Statement& statement) {
  const PrintedRole* role = input.printed.role(statement.subject);
  return role == nullptr ? nullptr : input.pattern.role(role->fact);
}

std::string put_up_in_force(const ReviewInput& input, const Statement& statement) {
  const Yarn* yarn = yarn_in_force(input, statement);
  if (yarn == nullptr) return {};
  const auto& length = yarn->put_up.length;
  const auto& weight = yarn->put_up.weight;
  switch (statement.unit) {
    case PrintedUnit::metre:
      return length ? show_short(length->value.value(), 1) : "";
    case PrintedUnit::yard:
      return length ? show_short(in_yards(length->value), 0) : "";
    case PrintedUnit::gram:
      return weight ? show_short(weight->value.value(), 1) : "";
    case PrintedUnit::ounce:
      return weight ? show_fraction(in_ounces(weight->value), 4) : "";
    default:
      return {};
  }
}

std::string fibre_in_force(const ReviewInput& input, const Statement& statement) {
  const Yarn* yarn = yarn_in_force(input, statement);
  if (yarn == nullptr) return {};
  const std::string printed = lower_ascii(tidy_spaces(statement.words));
  const std::string fibre = fibre_share(printed, {}).fibre;
  for (const FibreShare& share : yarn->composition)
    if (lower_ascii(share.words) == printed || (!fibre.empty() && share.fibre == fibre))
      return show_short(share.percent.value, 1);
  return {};
}

std::string gauge_in_force(const ReviewInput& input, const Statement& statement) {
  const auto gauges = printed_gauges(input.printed);
  const auto gauge = std::find_if(gauges.begin(), gauges.end(), [&](const PrintedGauge& one) {
    return one.stitches == &statement || one.rows == &statement;
  });
  if (gauge == gauges.end()) return {};
  for (const Fabric& fabric : input.pattern.fabrics) {
    if (gauge_of(gauges, fabric) != &*gauge) continue;
    const auto& count = gauge->rows == &statement ? fabric.gauge.rows : fabric.gauge.stitches;
    const double over = fabric.gauge.over.value.value();
    if (count && over > 0) return show_short(count->value * gauge->over_cm / over, 1);
  }
  return {};
}

// The name in the words of a statement, and that of the facts.
std::string name_in_force(const ReviewInput& input, const Statement& statement) {
  const Role* role = role_in_force(input, statement);
  if (role == nullptr) return {};
  switch (statement.kind) {
    case StatementKind::shade_name:
    case StatementKind::legend_shade:
      return role->shade.name;
    case StatementKind::shade_number:
      return role->shade.number;
    default:
      return {};
  }
}

}  // namespace

std::vector<std::string> words_in_force(const ReviewInput& input, const Statement& statement) {
  std::vector<std::string> words(statement.values.size());
  if (statement.values.empty()) return words;
  switch (statement.kind) {
    case StatementKind::count:
    case StatementKind::total_count:
    case StatementKind::measurement: {
      const PrintedList list = input.printed.list(statement);
      const auto known = facts_behind(input, statement);
      if (statement.values.size() != known.size()) return words;
      for (std::size_t v = 0; v < words.size(); ++v)
        if (known[v])
          words[v] = statement.kind == StatementKind::measurement
                         ? as_in_list(*known[v], list, input.printed.text())
                         : show_short(*known[v], 1);
      return words;
    }
    case StatementKind::put_up_length:
    case StatementKind::put_up_weight:
      words.front() = put_up_in_force(input, statement);
      return words;
    case StatementKind::fibre:
      words.front() = fibre_in_force(input, statement);
      return words;
    case StatementKind::gauge_stitches:
    case StatementKind::gauge_rows:
      words.front() = gauge_in_force(input, statement);
      return words;
    default:
      return words;
  }
}

std::vector<SlipCandidate> word_slips(const ReviewInput& input, const std::set<std::size_t>& touched) {
  const PrintedView& printed = input.printed;
  std::vector<SlipCandidate> found;
  std::vector<std::string> listed, outside;
  for (const PrintedRole& role : printed.roles())
    if (role.shade) listed.push_back(role.shade->words);
  for (const StatementKind kind : {StatementKind::legend_shade, StatementKind::shade_mention})
    for (const Statement* statement : printed.all(kind)) outside.push_back(statement->words);
  for (const std::size_t s : touched) {
    const Statement& statement = printed.reading().statements[s];
    if (statement.kind == StatementKind::role_mention) {
      for (const PrintedRole& role : printed.roles())
        if (role.role) add_word(found, printed, statement, SlipKind::word, statement.subject, role.label);
    } else if (statement.kind == StatementKind::legend_shade ||
               statement.kind == StatementKind::shade_mention) {
      for (const std::string& name : listed)
        add_word(found, printed, statement, SlipKind::word, statement.words, name);
    } else if (statement.kind == StatementKind::shade_name) {
      for (const std::string& name : outside)
        add_word(found, printed, statement, SlipKind::listed_word, statement.words, name);
    }
  }
  return found;
}

std::vector<SlipCandidate> values_in_force(const ReviewInput& input, const std::set<std::size_t>& touched) {
  const PrintedView& printed = input.printed;
  std::vector<SlipCandidate> found;
  for (const std::size_t s : touched) {
    const Statement& statement = printed.reading().statements[s];
    const std::string name = name_in_force(input, statement);
    if (!name.empty()) add_word(found, printed, statement, SlipKind::in_force, statement.words, name);
    const auto words = words_in_force(input, statement);
    SlipCandidate whole{SlipKind::in_force, "as in force", {}, {}};
    for (std::size_t v = 0; v < words.size(); ++v) {
      const PrintedValue& value = statement.values[v];
      if (words[v].empty() || printed.words(value) == words[v]) continue;
      whole.edits.push_back({value.span, words[v]});
      whole.figures.push_back({s, v, words[v]});
      found.push_back({SlipKind::in_force, "as in force", {whole.edits.back()}, {whole.figures.back()}});
    }
    if (whole.edits.size() > 1) found.push_back(std::move(whole));
  }
  return found;
}

}  // namespace skeinproof
