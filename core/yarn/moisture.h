// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <vector>

#include "core/base/error.h"
#include "core/reference/tables.h"
#include "core/yarn/yarn.h"

namespace skeinproof {

// Water in yarn, percent of its dry mass. Two different things: the regain is physics, what a fibre holds in
// air of a given relative humidity; the allowance is law or custom, what the weight on the label is made up
// with.
struct MoistureContent {
  double pct = 0, low_pct = 0, high_pct = 0;
  std::string source;                // citation
  std::vector<std::string> assumed;  // "mohair holds water like wool (no curve of its own)"
};

// Regain of one fibre at a relative humidity of 0–100 %, linear between the points of its curve. A fibre
// without a curve takes its kin's, with the band widened to what the fibre itself is known to hold at 65 %.
MoistureContent regain(const Fibre& fibre, double humidity_pct);
// Official allowance of one fibre. Where spinning or market is unstated every allowance that may have been
// meant lies between low and high; the middle is then the European figure, of carded wool where the spinning
// is unstated.
MoistureContent allowance(const Fibre& fibre, Spinning spinning, Market market);

// Grams on the scale, in air of a relative humidity, of yarn that the label calls one gram: for each fibre
// share x (1 + regain) / (1 + allowance), shares being of label mass. Low and high take both intervals at
// their ends.
struct LabelGram {
  double on_scale = 1, low = 1, high = 1;  // g
  double dry = 1;                          // g of dry fibre in it
  std::vector<std::string> assumed, sources;
};
Expected<LabelGram> label_gram(const std::vector<FibreShare>& composition, Spinning spinning, Market market,
                               double humidity_pct);
// Allowance of a blend as one figure: (1 / dry mass of a label gram - 1).
Expected<double> blend_allowance_pct(const std::vector<FibreShare>& composition, Spinning spinning,
                                     Market market);

// Regain from moisture content, both percent: water / dry mass from water / wet mass.
double regain_from_content_pct(double content_pct);

// The air of a lived-in room, for a reading without a stated humidity; common practice, no source.
inline constexpr double dry_room_pct = 30;
inline constexpr double damp_room_pct = 70;

}  // namespace skeinproof
