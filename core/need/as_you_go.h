// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/need/run_out.h"

namespace skeinproof {

// Weigh as you go: what readings of the yarn on the needles tell of one colour in one size. Everything is
// knitted length; the yarn used and the yarn left are weighed alike, so label and air cancel.

// The stretch of work that ends at one reading.
struct WeighedStretch {
  ReadingId reading;
  std::string words;  // the place reached
  Metres by_sheet;    // needed for the stretch by the sheet in force
  Metres used;        // on the scale
  double share = 0;   // of all that was weighed: how much it says
};

struct AsYouGo {
  RoleId role;
  std::vector<WeighedStretch> stretches;  // in the order of the work
  Metres left;                            // on the scale at the last reading
  double factor = 1;                      // used / by sheet, over all stretches
  double error = 0;                       // of it, share at 9 in 10: 3 % or the scale's
  Metres to_go;                           // sheet x factor, from there to the end
  Metres low, high;                       // 9 in 10
  double chance_to_finish = 0;
  RunOut run_out;  // in metres of this hand; turning places that are past are gone
};

// From the used readings of that colour. Fails, naming the reading, where the yarn it began with or the yarn
// left is missing (wrong_shape), more is left than there was, or than at an earlier place (out_of_range), the
// place is not in the work (unknown_name); and where there is no reading, no put-up or no need by stitches.
Expected<AsYouGo> as_you_go(const Pattern& pattern, RoleId role, SizeId size, const NumberStyle& style = {});

}  // namespace skeinproof
