// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <initializer_list>
#include <optional>
#include <string>
#include <vector>

#include "core/review/check.h"

namespace skeinproof {

// The lists of one fact in one breath: the same measurement in centimetres and in inches, the metric first.
struct PrintedFact {
  std::vector<const Statement*> lists;
  const Statement& first() const { return *lists.front(); }
  std::string name() const;  // "CC2", "foot length", "total"
};

// Facts of these kinds with more than one value, in the order of the text.
std::vector<PrintedFact> printed_facts(const PrintedView& printed, std::initializer_list<StatementKind> kinds);

// Marks a finding as one about this fact: its role, if it is one, else a part of the key; and shows it.
void speak_of(Finding& finding, const PrintedView& printed, const PrintedFact& fact);

// Where a list of too few values lacks one, by the facts in force or else by its brackets.
struct MissingValues {
  std::vector<std::size_t> sizes;
  std::vector<std::optional<double>> values;  // what stands there in force, one entry for each size
  bool by_facts = false;
};
MissingValues missing_values(const ReviewInput& input, const Statement& list);

// Writes a missing value into a list.
std::optional<TextEdit> insert_value(const PrintedView& printed, const Statement& list, std::size_t size,
                                     double value);

// The marks that part the values of a list: one entry between any two, brackets and separators alone.
std::vector<std::string> marks_between(const PrintedView& printed, const Statement& list);
// How many values stand in each bracket.
std::vector<std::size_t> bracket_groups(const Statement& list);

}  // namespace skeinproof
