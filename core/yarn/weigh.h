// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/base/error.h"
#include "core/yarn/figure_line.h"
#include "core/yarn/yarn.h"

namespace skeinproof {

// A share of a length by which it may be shorter or longer, 9 times in 10 (0.03 = 3 %).
struct ErrorShare {
  double shorter = 0, longer = 0;
  bool operator==(const ErrorShare&) const = default;
};

// How much yarn is on the scale? Moisture is handled by what is known: a whole new skein of the same yarn
// weighed on the same scale in the same hour cancels it and the scale's own bias; else a stated relative
// humidity is worked out against the official allowance of the label; else nothing is corrected and the
// interval widens by what the air of a lived-in room can do.
struct WeighedYarn {
  Grams reading{};                      // on the scale
  int readings = 1;                     // that it is the sum of
  Grams notions{};                      // of the reading: buttons, zip, labels, waste yarn
  PutUp put_up;                         // of the yarn; the weight is not needed with a new skein
  std::vector<FibreShare> composition;  // needed with a humidity; without one the moistest fibre is feared
  Spinning spinning = Spinning::unstated;
  Market market = Market::unstated;
  std::optional<Grams> new_skein;
  std::optional<double> humidity_pct;
  std::optional<Grams> scale_step;  // smallest division; absent = a kitchen scale's
  std::optional<ErrorShare> label;  // of a skein's length; absent = mill-spun yarn
};

struct WeighedLength {
  Metres length;
  Metres low, high;  // 9 in 10; the independent parts add as squares
  ErrorShare scale;  // half a step of each reading
  ErrorShare label;  // of a skein against its label; cancels where the length is counted in such skeins again
  ErrorShare moisture;
  std::vector<std::string> assumed;  // plain sentences, empty where everything was stated
  std::vector<FigureLine> lines;     // the working, the length last
};

// Fails with what is missing or impossible: no length of a skein, no weight and no new skein, a reading of
// notions alone, a fibre the tables do not know with a humidity to correct by.
Expected<WeighedLength> weighed_length(const WeighedYarn& yarn);

// Half a scale step as a share of a reading: 50 x step / grams in percent.
double scale_error_share(Grams step, Grams reading);

}  // namespace skeinproof
