// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <vector>

#include "core/review/edited_reading.h"

namespace skeinproof {

// How a slip of the pen comes about, likeliest first where nothing else tells two apart.
enum class SlipKind {
  units_exchanged,       // "210 yd / 230 m"
  digits_transposed,     // "26" for "62"
  digit,                 // one digit another
  neighbours_exchanged,  // two values of a list
  count_by_one,
  missing_value,
  value_too_many,
  column_slip,     // a list printed one size off
  rows_exchanged,  // the lists of two roles
  recount,         // counted for one of a pair, in another yarn's skeins, in yards for metres …
  word,            // a name for another one listed
  listed_word,     // a listed name that the text writes otherwise
  in_force,        // the figure the facts hold
  proposed,        // the change a finding proposes
};

// An edit of the printed words that might undo a slip; nothing is known yet of what it would clear.
struct SlipCandidate {
  SlipKind kind = SlipKind::digit;
  std::string name;                 // "exchange 8 and 7"
  std::vector<TextEdit> edits;      // in the order of the text
  std::vector<FigureEdit> figures;  // the same, where figures alone change; else empty
};

// The single edits that could have to do with the findings: of the figures and words these rest on, in the
// sizes they name. No edit stands there twice. At most `most` of them.
std::vector<SlipCandidate> slip_candidates(const ReviewInput& input, const std::vector<Finding>& findings,
                                           std::size_t most);

// Characters that an edit changes.
int changed_characters(std::string_view text, const std::vector<TextEdit>& edits);

}  // namespace skeinproof
