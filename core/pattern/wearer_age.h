// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "core/base/find_word.h"
#include "core/pattern/pattern.h"

namespace skeinproof {

// The youngest age a lower-case text names, in months; figures before "months" or "years" count by it, also
// those in a list that the unit ends.
std::optional<double> youngest_age_months(std::string_view lower);

// Words for the wearer and the ages they stand for, in months.
struct WearerWords {
  double oldest_months;
  double youngest_months;
  WordList words;
};
std::span<const WearerWords> wearer_word_rows();
// "Baby alpaca" and "baby weight" are yarns, not wearers.
std::string without_yarn_names(std::string lower);

// Whose sizes are among those of a pattern. Without an age, "child" stands for every age of a child.
struct WearerAges {
  bool up_to_12_months = false;
  bool under_3_years = false;
  bool up_to_7_years = false;
  std::string because;  // the words it was seen by: “0–3 months”
};
void take_age(WearerAges& ages, double months, std::string because);
void take_wearer_word(WearerAges& ages, const WearerWords& row, std::string because);
// By the facts in force: size labels, then the words of wearer, title and item.
WearerAges wearer_ages(const Pattern& pattern);

}  // namespace skeinproof
