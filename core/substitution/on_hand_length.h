// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/base/error.h"
#include "core/pattern/pattern.h"
#include "core/yarn/figure_line.h"

namespace skeinproof {

// How long a yarn on hand is, before joins.
struct LengthOnHand {
  OnHandId id;
  Metres length;
  Metres low, high;                      // 9 in 10
  int pieces = 1;                        // whole and part skeins: one join fewer than these
  double deviation = 0;                  // standard, as a share of the length
  std::optional<MetresPerGram> density;  // measured, else by the label
  std::vector<FigureLine> lines;         // the working, the length last
  std::vector<std::string> assumed;      // plain sentences, empty where everything was stated
};

// By skeins and weight: whole skeins by the label, part skeins by the scale with its step, the moisture and a
// new skein as in weighed_length. By reel: turns x circumference x (1 - stretch); a reel without a stretch is
// not shortened, but its lower bound is. By sampled lengths: weight of all x length of the samples / weight
// of the samples; its error is half a scale step of the samples beside the spread of the lengths / sqrt(n).
// A typed length is taken to err as a label does. Fails, naming the yarn, where what it is worked out from is
// missing (not_found), is no such number or below 0 (out_of_range), and for wraps, which say how thick a yarn
// is and never how long (wrong_shape).
Expected<LengthOnHand> length_on_hand(const Pattern& pattern, const YarnOnHand& yarn);

// Width of one wrap, which errs by a fifth with the tension of the hand; absent without a count above 0. For
// putting yarns in the order of their thickness, never for a length.
std::optional<Centimetres> width_of_wrap(const YarnOnHand& yarn);

// "Marigold, lot 12", "Slate", "Oddmere Fieldspun": the shortest name that tells it from the others.
std::string on_hand_name(const Pattern& pattern, const YarnOnHand& yarn);

// How many times thicker a yarn of that density is than another: sqrt(mu_2 rho_2 / (mu_1 rho_1)), the fibre
// densities left out where one of them is not known.
std::optional<double> times_thicker(const Yarn& yarn, std::optional<MetresPerGram> density, const Yarn& than,
                                    std::optional<MetresPerGram> than_density);

}  // namespace skeinproof
