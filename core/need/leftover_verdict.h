// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <vector>

#include "core/base/enum_words.h"
#include "core/base/error.h"
#include "core/need/step_reading.h"
#include "core/units/show.h"

namespace skeinproof {

enum class Verdict { enough, too_close_to_call, not_enough };
template <>
struct EnumWords<Verdict> {
  static constexpr auto rows = enum_rows<Verdict>({{Verdict::enough, "Enough"},
                                                   {Verdict::too_close_to_call, "Too close to call"},
                                                   {Verdict::not_enough, "Not enough"}});
};

enum class LengthGround { printed_counts, stitches, weighed_sample };
template <>
struct EnumWords<LengthGround> {
  static constexpr auto rows = enum_rows<LengthGround>({{LengthGround::printed_counts, "by printed counts"},
                                                        {LengthGround::stitches, "by stitches"},
                                                        {LengthGround::weighed_sample, "by weighed sample"}});
};

// What one road says about the need of one role in one size.
struct LengthEvidence {
  LengthGround ground = LengthGround::printed_counts;
  Metres low, high;         // planned length
  Metres knitted, planned;  // counts have neither
  double error = 0;         // half width at 9 in 10, as a share of the knitted length
};

// Yarn on hand, before joins.
struct OnHand {
  Metres length;
  int pieces = 1;
};

struct LeftoverRules {
  double join_m = 0.30;          // lost at each piece after the first
  double most_allowance = 0.15;  // allowance and swatch that printed counts may hold, as a share
  bool row_gauge_missing = false;
};

struct LeftoverVerdict {
  Verdict verdict = Verdict::too_close_to_call;
  LengthGround ground = LengthGround::printed_counts;  // the narrowest evidence, which decides
  Metres usable;                                       // after joins
  std::string settled_by;  // the one fact that would settle it; empty unless too close to call
};

// By counts: at least the upper bound is enough; less than the lower bound without the greatest allowance is
// not. By stitches or sample: the planned length and the knitted one with its error are enough; less than the
// knitted one without its error is not. Fails without evidence, on a length below 0 and on fewer than one
// piece.
Expected<LeftoverVerdict> leftover_verdict(const OnHand& on_hand, const std::vector<LengthEvidence>& evidence,
                                           const LeftoverRules& rules);

// Exactly one step of the ladder of wordings.
enum class BoundSide { least, most };
// From counts: the own interval where its own count tells that side, else what the other size says under the
// band; empty where the size is not known or the list contradicts itself. Never one bare figure.
std::string counts_in_words(const StepReading& reading, const std::vector<std::string>& size_labels,
                            std::size_t size_index, BoundSide side, const NumberStyle& style = {});
// From the chart and gauge, or from a weighed piece: "From the chart and gauge, about 59 m (52–65)".
std::string length_in_words(const LengthEvidence& evidence, const NumberStyle& style = {});

}  // namespace skeinproof
