// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/facts_as_read.h"

#include <algorithm>
#include <cmath>

#include "core/base/text.h"
#include "core/manuscript/facts_parts.h"
#include "core/pattern/edits.h"
#include "core/pattern/size_line.h"

namespace skeinproof {
namespace {

void take_words(FactsTaken& taken) {
  const std::pair<StatementKind, std::string*> places[] = {{StatementKind::title, &taken.pattern.title},
                                                           {StatementKind::item, &taken.pattern.item},
                                                           {StatementKind::wearer, &taken.pattern.wearer}};
  for (const auto& [kind, place] : places)
    if (!taken.all(kind).empty() && folded_name(*place) != folded_name(taken.all(kind).front()->words))
      *place = taken.all(kind).front()->words;
}

void take_notions(FactsTaken& taken) {
  for (const Statement* statement : taken.all(StatementKind::notion)) {
    const std::string name = folded_name(statement->subject);
    if (!taken.first("notion " + name)) continue;
    auto& notions = taken.pattern.notions;
    auto found = std::find_if(notions.begin(), notions.end(),
                              [&](const Notion& notion) { return folded_name(notion.name) == name; });
    if (found == notions.end()) {
      notions.push_back({statement->subject, {}, {}});
      found = std::prev(notions.end());
    }
    taken.lay_list(found->count, *statement, statement->subject);
  }
}

void take_totals(FactsTaken& taken) {
  for (const Statement* statement : taken.all(StatementKind::total_count)) {
    if (statement->unit != PrintedUnit::skein && statement->unit != PrintedUnit::none) continue;
    if (taken.first("total")) taken.lay_list(taken.pattern.printed_total, *statement, "total");
  }
}

void take_sample(FactsTaken& taken) {
  for (const Statement* statement : taken.all(StatementKind::sample_size)) {
    if (!taken.first("sample size")) break;
    if (const auto index = taken.pattern.size_index(statement->words))
      taken.pattern.sample_size = taken.pattern.sizes[*index].id;
    else
      taken.left_out.push_back("size of the sample: no size is named " + quoted(statement->words));
  }
  for (const Statement* statement : taken.all(StatementKind::sample_weight))
    taken.left_out.push_back("weight of the sample, " + taken.words(statement->span) +
                             ": what it was weighed with and how is not in the text");
}

std::vector<FactChange> changes_between(const Pattern& before, const Pattern& after) {
  std::map<std::string, std::string> words_before;
  for (FactInWords& fact : facts_in_words(before)) words_before[fact.key] = std::move(fact.words);
  std::vector<FactChange> changes;
  for (FactInWords& fact : facts_in_words(after)) {
    // A sample in the same size is no news where the size has another name.
    if (fact.key == "sample" && before.sample_size == after.sample_size) continue;
    std::string& old = words_before[fact.key];
    if (old != fact.words) changes.push_back({std::move(fact.what), std::move(old), std::move(fact.words)});
  }
  return changes;
}

}  // namespace

FactsTaken::FactsTaken(const Pattern& in_force, std::string_view text, const Reading& reading)
    : pattern(in_force), text_(text) {
  for (const Statement& statement : reading.statements) {
    by_kind_[statement.kind].push_back(&statement);
    by_mention_[statement.mention].push_back(&statement);
  }
}

const FactsTaken::Statements& FactsTaken::all(StatementKind kind) const {
  static const Statements none;
  const auto found = by_kind_.find(kind);
  return found == by_kind_.end() ? none : found->second;
}

const FactsTaken::Statements& FactsTaken::breath(int mention) const {
  static const Statements none;
  const auto found = by_mention_.find(mention);
  return found == by_mention_.end() ? none : found->second;
}

std::optional<FactsTaken::Values> FactsTaken::along_sizes(const Statement& statement,
                                                          const std::string& name) {
  const auto& printed = statement.values;
  const auto figure = [](const PrintedValue& value) { return value.number ? &value : nullptr; };
  Values values(pattern.sizes.size());
  if (statement.all_sizes && printed.size() == 1) {
    std::fill(values.begin(), values.end(), figure(printed.front()));
    return values;
  }
  if (printed.size() != size_places.size()) {
    left_out.push_back(name + ": " + std::to_string(printed.size()) +
                       (printed.size() == 1 ? " value for " : " values for ") +
                       std::to_string(size_places.size()) + (size_places.size() == 1 ? " size" : " sizes"));
    return std::nullopt;
  }
  for (std::size_t i = 0; i < printed.size(); ++i)
    if (size_places[i]) values[*size_places[i]] = figure(printed[i]);
  return values;
}

void FactsTaken::lay_list(PerSize<Entered<double>>& list, const Statement& statement,
                          const std::string& name) {
  const auto values = along_sizes(statement, name);
  if (!values) return;
  for (std::size_t i = 0; i < values->size(); ++i) {
    if ((*values)[i] == nullptr) continue;
    std::optional<Entered<double>> fact = list.at(i);
    lay_figure(fact, *(*values)[i]->number, 0, {});
    list.set(i, std::move(fact));
  }
}

std::string FactsTaken::typed(const PrintedValue& value, PrintedUnit unit) const {
  const std::string_view word = word_of(unit);
  return word.empty() ? words(value.span) : words(value.span) + " " + std::string(word);
}

const PrintedValue* first_figure(const Statement& statement) {
  return statement.values.empty() || !statement.values.front().number ? nullptr : &statement.values.front();
}

const Statement* in_best_unit(const FactsTaken::Statements& breath, const Statement& said,
                              std::initializer_list<PrintedUnit> best_first) {
  for (const PrintedUnit unit : best_first)
    for (const Statement* statement : breath)
      if (statement->kind == said.kind && statement->unit == unit && statement->subject == said.subject &&
          statement->qualifier == said.qualifier)
        return statement;
  return nullptr;
}

double in_fact_unit(PrintedUnit unit) {
  switch (unit) {
    case PrintedUnit::yard:
      return metres_per_yard;
    case PrintedUnit::ounce:
      return grams_per_ounce;
    case PrintedUnit::kilogram:
      return 1000;
    case PrintedUnit::pound:
      return 16 * grams_per_ounce;
    case PrintedUnit::inch:
      return centimetres_per_inch;
    case PrintedUnit::millimetre:
      return 0.1;
    default:
      return 1;
  }
}

FactsAsRead facts_as_read(const Pattern& pattern, std::string_view text, const Reading& reading) {
  FactsTaken taken(pattern, text, reading);
  if (std::string words = words_on_language(reading); !words.empty())
    taken.left_out.push_back(std::move(words));
  take_words(taken);
  take_sizes(taken);
  take_measurements(taken);
  take_yarns(taken);
  take_roles(taken);
  take_totals(taken);
  take_gauges(taken);
  take_needles(taken);
  take_notions(taken);
  take_sample(taken);
  auto changes = changes_between(pattern, taken.pattern);
  return {std::move(taken.pattern), std::move(changes), std::move(taken.left_out)};
}

}  // namespace skeinproof
