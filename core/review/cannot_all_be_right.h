// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/review/check.h"

namespace skeinproof {

// A figure that may be wrong: printed, or of the need sheet.
struct DoubtedFigure {
  std::string words;   // "145 cm", "364 sts"
  std::string source;  // "bust, size 7", "need sheet: Body, plain"
  TextSpan place;      // empty where it is not printed
  std::optional<std::size_t> statement;
  bool operator==(const DoubtedFigure&) const = default;
};

// Figures that contradict each other, all of one thing: a width, the skeins of a size, a put-up, a needle.
struct Contradiction {
  std::string about;                           // "bust, size 7"
  std::string size;                            // label; empty = of no size
  std::vector<DoubtedFigure> figures;          // those in any of the sets
  std::vector<std::vector<std::size_t>> sets;  // smallest sets of indices into `figures`, smallest first
  std::optional<std::size_t> drop;             // the one figure without which all others agree
  std::string rest_agree_on;                   // then, what the others say in its place: "140 cm"
};

struct CannotAllBeRight {
  std::vector<Contradiction> contradictions;  // in the order of the text
  bool complete = true;                       // false where the steps ran out or a system was too large
};

// Every smallest set of contradictory figures of a submission. Printed figures within their rounding and the
// counts of the need sheet may be wrong; arithmetic and the definitions of units may not. Widths are held
// against stitches and gauge with the slack of a seam (half a centimetre or half a stitch).
CannotAllBeRight cannot_all_be_right(const ReviewInput& input, std::size_t most_steps = 200000);
CannotAllBeRight cannot_all_be_right(const Pattern& pattern, const Assessment& assessment,
                                     std::size_t most_steps = 200000);

}  // namespace skeinproof
