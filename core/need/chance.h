// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>

#include "core/pattern/pattern.h"

namespace skeinproof {

// How likely k skeins suffice. Knitted length and skein length both err; the allowance is what the chance
// measures, so it is in neither. All errors are standard deviations as shares of the length.
// The mean skein is taken to hold its label: package law in the EU and Germany bounds a single package and
// keeps the mean of a batch at or above the label, so this is the cautious side.

struct SupplyErrors {
  double lot = 0;    // common to all skeins of one purchase
  double skein = 0;  // from skein to skein
};

// Mill or hand-dyed yarn by what its colouring or structure says. Common practice, no source.
SupplyErrors supply_errors(const Pattern& pattern, const Yarn* yarn);
// Handspun, of which n lengths were weighed with this coefficient of variation: CV / sqrt(n), common to all
// of it. Absent for a negative CV or no lengths.
std::optional<SupplyErrors> handspun_errors(double coefficient_of_variation, int lengths_weighed);

// An interval at 9 in 10 is 1.645 standard deviations each way.
double deviation_of(double error_at_9_in_10);
// A scale that shows whole steps: step / (sqrt(12) x grams).
double scale_deviation(Grams step, Grams weighed);

struct NeedErrors {
  double length = 0;  // of the stitches' or the sample's length
  double hand = 0;    // of another knitter who met gauge
};

// (k L - N - s) / sqrt(sigma_need² + sigma_supply²), through the normal distribution; sigma_need = N x the
// need's errors, sigma_supply² = L² (k² lot² + k skein²). Without any error 1 or 0.
double chance_sufficient(Metres knitted, Metres swatch, const NeedErrors& need, int skeins, Metres skein,
                         const SupplyErrors& supply);

// From printed counts alone: planned is anything in (low, high] and its allowance anything from 0 to the
// greatest, both evenly spread; by quadrature. `need.length` is 0 there: the interval is that error.
double chance_from_counts(Metres low, Metres high, double most_allowance, const NeedErrors& need, int skeins,
                          Metres skein, const SupplyErrors& supply);

// The fewest skeins whose chance is at least `wished`; absent where it is not above 0 and below 1, where the
// skein has no length, or where no count reaches it because the errors grow with the count.
std::optional<int> skeins_for_chance(double wished, Metres knitted, Metres swatch, const NeedErrors& need,
                                     Metres skein, const SupplyErrors& supply);

}  // namespace skeinproof
