// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/review/check.h"

namespace skeinproof {

// The rules of put-ups and counts that stand in files of their own, by what they look at.
void metres_and_yards_agree(const ReviewInput& input, Findings& findings);  // P1
void yards_not_below_metres(const ReviewInput& input, Findings& findings);  // P2
void ounces_and_grams_agree(const ReviewInput& input, Findings& findings);  // P3
void counted_in_own_skeins(const ReviewInput& input, Findings& findings);   // P7
void totals_equal_counts(const ReviewInput& input, Findings& findings);     // P9
void category_fits_figures(const ReviewInput& input, Findings& findings);   // P10
void firmness_fits_item(const ReviewInput& input, Findings& findings);      // P11
void band_gauge_is_near(const ReviewInput& input, Findings& findings);      // P12
void strands_are_counted(const ReviewInput& input, Findings& findings);     // P13

// What one breath says of a yarn's put-up.
struct PutUpMention {
  int mention = 0;
  std::vector<const Statement*> lengths, weights;
  std::optional<double> metres, grams;  // metric as printed, else converted
  const Statement& first() const { return lengths.empty() ? *weights.front() : *lengths.front(); }
  std::vector<const Statement*> all() const;
  TextSpan span() const;
  std::optional<double> metres_per_gram() const;
};
std::vector<PutUpMention> put_up_mentions(const PrintedYarn& yarn);

// Yards within half a last digit of the metres, or the other way round.
bool same_length(double metres, double metres_half_step, double yards, double yards_half_step);

// Metres per gram of a yarn: of the put-up in force, else as printed.
std::optional<double> metres_per_gram_of(const ReviewInput& input, const PrintedYarn& yarn);

}  // namespace skeinproof
