// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <initializer_list>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "core/manuscript/facts_as_read.h"

namespace skeinproof {

// One fact of a pattern in words. `key` names it whatever its words and labels.
struct FactInWords {
  std::string key;
  std::string what;
  std::string words;
};
// Every fact that a text can state, in the order of a block. A fact that is unknown is left out.
std::vector<FactInWords> facts_in_words(const Pattern& pattern);

// A reading being laid over a pattern.
class FactsTaken {
 public:
  FactsTaken(const Pattern& in_force, std::string_view text, const Reading& reading);

  Pattern pattern;
  std::vector<std::string> left_out;
  std::vector<std::optional<std::size_t>> size_places;  // of each printed size among those of the pattern
  std::vector<YarnId> yarns;                            // of each printed yarn

  std::string words(const TextSpan& span) const { return std::string(words_at(text_, span)); }
  // All statements of a kind, and all that share a breath.
  using Statements = std::vector<const Statement*>;
  const Statements& all(StatementKind kind) const;
  const Statements& breath(int mention) const;
  // Whether a thing is spoken of for the first time; what is said later is for the checks to compare.
  bool first(std::string thing) { return spoken_of_.insert(std::move(thing)).second; }

  // The values at the sizes of the pattern, null where no figure stands; absent, and said so under the name
  // of the list, where there are too few or too many.
  using Values = std::vector<const PrintedValue*>;
  std::optional<Values> along_sizes(const Statement& statement, const std::string& name);
  // The list as read in the place of one in force.
  void lay_list(PerSize<Entered<double>>& list, const Statement& statement, const std::string& name);
  // A figure as it was typed, with its unit: "175 m".
  std::string typed(const PrintedValue& value, PrintedUnit unit) const;

 private:
  std::string_view text_;
  std::map<StatementKind, Statements> by_kind_;
  std::map<int, Statements> by_mention_;
  std::set<std::string> spoken_of_;
};

void take_sizes(FactsTaken& taken);
void take_yarns(FactsTaken& taken);
void take_roles(FactsTaken& taken);
void take_measurements(FactsTaken& taken);
void take_gauges(FactsTaken& taken);
void take_needles(FactsTaken& taken);

// The first value of a statement, where it is a figure.
const PrintedValue* first_figure(const Statement& statement);
// Of the statements that say the same in one breath, the one in the best unit.
const Statement* in_best_unit(const FactsTaken::Statements& breath, const Statement& said,
                              std::initializer_list<PrintedUnit> best_first);
// One of a unit in what facts are kept in: metres of yarn, grams, centimetres of cloth. Else 1.
double in_fact_unit(PrintedUnit unit);

// A figure as read takes the place of a fact, unless the fact rounded is what is printed.
template <class Quantity>
void lay_figure(std::optional<Entered<Quantity>>& fact, double value, double half_step, std::string typed) {
  double kept = value - 2 * half_step - 1;
  if (fact) {
    if constexpr (std::is_same_v<Quantity, double>)
      kept = fact->value;
    else
      kept = fact->value.value();
  }
  constexpr double hair = 1e-9;
  if (kept >= value - half_step - hair && kept <= value + half_step + hair) return;
  if constexpr (std::is_same_v<Quantity, double>)
    fact = Entered<Quantity>{value, std::move(typed)};
  else
    fact = Entered<Quantity>{Quantity::from_value(value), std::move(typed)};
}

}  // namespace skeinproof
