// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/printed_lists.h"

#include <algorithm>
#include <cmath>

#include "core/review/printed_measures.h"
#include "core/review/printed_words.h"
#include "core/review/role_figures.h"

namespace skeinproof {
namespace {

bool metric(PrintedUnit unit) {
  return unit != PrintedUnit::inch && unit != PrintedUnit::yard && unit != PrintedUnit::ounce;
}

bool is_mark(char c) { return std::string_view("()[]{},;:/|").find(c) != std::string_view::npos; }

bool same_value(const PrintedValue& printed, const std::optional<double>& fact) {
  return printed.number && fact && std::abs(*printed.number - *fact) <= printed.half_step + 1e-9;
}

// The values laid on the facts so that each agrees with the one it stands on: as the brackets lay them where
// that agrees, else the first way that does.
std::optional<std::vector<std::size_t>> laid_on(const Statement& list, const PrintedList& by_brackets,
                                                const std::vector<std::optional<double>>& facts) {
  bool agrees = true;
  std::vector<std::size_t> places;
  for (std::size_t i = 0; i < by_brackets.values.size(); ++i)
    if (const PrintedValue* value = by_brackets.values[i]) {
      agrees = agrees && same_value(*value, facts[i]);
      places.push_back(i);
    }
  if (agrees && places.size() == list.values.size()) return places;
  places.clear();
  std::size_t size = 0;
  for (const PrintedValue& value : list.values) {
    while (size < facts.size() && !same_value(value, facts[size])) ++size;
    if (size == facts.size()) return std::nullopt;
    places.push_back(size++);
  }
  return places;
}

}  // namespace

std::string PrintedFact::name() const {
  const Statement& list = first();
  if (!list.subject.empty())
    return list.qualifier.empty() ? list.subject : list.subject + ", " + list.qualifier;
  return list.qualifier.empty() ? std::string(word_of(list.kind)) : list.qualifier;
}

std::vector<PrintedFact> printed_facts(const PrintedView& printed,
                                       std::initializer_list<StatementKind> kinds) {
  std::vector<PrintedFact> facts;
  for (const Statement& one : printed.reading().statements) {
    if (std::find(kinds.begin(), kinds.end(), one.kind) == kinds.end()) continue;
    if (one.values.size() < 2 || one.all_sizes) continue;
    PrintedFact* same = nullptr;
    // Statements of one breath stand close together.
    for (std::size_t back = 0; back < std::min<std::size_t>(facts.size(), 8) && same == nullptr; ++back) {
      PrintedFact& before = facts[facts.size() - 1 - back];
      const Statement& other = before.first();
      if (other.mention == one.mention && other.kind == one.kind && other.subject == one.subject &&
          other.qualifier == one.qualifier)
        same = &before;
    }
    if (same == nullptr)
      facts.push_back({{&one}});
    else if (metric(one.unit) && !metric(same->first().unit))
      same->lists.insert(same->lists.begin(), &one);
    else
      same->lists.push_back(&one);
  }
  return facts;
}

void speak_of(Finding& finding, const PrintedView& printed, const PrintedFact& fact) {
  const Statement& list = fact.first();
  const bool of_role = printed.role(list.subject) != nullptr;
  if (of_role) finding.roles.push_back(list.subject);
  if (!of_role || list.kind != StatementKind::count) {
    finding.apart = std::string(word_of(list.kind));
    if (!of_role && !list.subject.empty()) finding.apart += " " + list.subject;
    if (!list.qualifier.empty()) finding.apart += " " + list.qualifier;
  }
  for (const Statement* one : fact.lists) show(finding, printed, *one);
}

MissingValues missing_values(const ReviewInput& input, const Statement& list) {
  const PrintedList by_brackets = input.printed.list(list);
  const auto facts = facts_behind(input, list);
  MissingValues missing;
  const std::size_t n = input.printed.sizes();
  std::vector<bool> there(n, false);
  const bool known =
      std::all_of(facts.begin(), facts.end(), [](const auto& fact) { return fact.has_value(); });
  const auto places = known ? laid_on(list, by_brackets, facts) : std::nullopt;
  missing.by_facts = places.has_value();
  if (places)
    for (const std::size_t place : *places) there[place] = true;
  else
    for (std::size_t i = 0; i < n && i < by_brackets.values.size(); ++i)
      there[i] = by_brackets.values[i] != nullptr;
  for (std::size_t i = 0; i < n; ++i)
    if (!there[i]) {
      missing.sizes.push_back(i);
      missing.values.push_back(facts[i]);
    }
  return missing;
}

std::optional<TextEdit> insert_value(const PrintedView& printed, const Statement& list, std::size_t size,
                                     double value) {
  const PrintedList laid = printed.list(list);
  if (list.values.empty()) return std::nullopt;
  std::string words = as_in_list(value, laid, printed.text());
  std::string separator = ", ";
  for (const std::string& marks : marks_between(printed, list))
    if (marks.size() == 1) separator = marks == "," || marks == ";" ? marks + " " : marks;
  const Statement* line = printed.sizes_line();
  const bool first_of_group = line != nullptr && size < line->values.size() && line->values[size].opens_group;
  // As many values stand before it as there are sizes, where one is missing.
  if (size < list.values.size() && (size == 0 || first_of_group || !list.values[size].opens_group))
    return TextEdit{{list.values[size].span.begin, list.values[size].span.begin}, words + separator};
  const PrintedValue& before = list.values[std::min(size, list.values.size()) - 1];
  return TextEdit{{before.span.end, before.span.end}, separator + words};
}

std::vector<std::string> marks_between(const PrintedView& printed, const Statement& list) {
  std::vector<std::string> marks;
  for (std::size_t i = 1; i < list.values.size(); ++i) {
    marks.emplace_back();
    for (const char c : printed.words(TextSpan{list.values[i - 1].span.end, list.values[i].span.begin}))
      if (is_mark(c)) marks.back() += c;
  }
  return marks;
}

std::vector<std::size_t> bracket_groups(const Statement& list) {
  std::vector<std::size_t> groups;
  for (const PrintedValue& value : list.values) {
    if (groups.empty() || value.opens_group) groups.push_back(0);
    ++groups.back();
  }
  return groups;
}

}  // namespace skeinproof
