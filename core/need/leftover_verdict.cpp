// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/leftover_verdict.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace skeinproof {
namespace {

Verdict by_counts(Metres usable, const LengthEvidence& evidence, const LeftoverRules& rules) {
  if (usable >= evidence.high) return Verdict::enough;
  if (usable < evidence.low / (1 + rules.most_allowance)) return Verdict::not_enough;
  return Verdict::too_close_to_call;
}

Verdict by_length(Metres usable, const LengthEvidence& evidence) {
  if (usable >= evidence.planned && usable >= evidence.knitted * (1 + evidence.error)) return Verdict::enough;
  if (usable < evidence.knitted * (1 - evidence.error)) return Verdict::not_enough;
  return Verdict::too_close_to_call;
}

std::string settling_fact(LengthGround ground, const LeftoverRules& rules) {
  switch (ground) {
    case LengthGround::printed_counts:
      return "the stitches of this colour, from its chart or its pieces";
    case LengthGround::stitches:
      return rules.row_gauge_missing ? "the row gauge" : "the grams of this colour in a finished sample";
    case LengthGround::weighed_sample:
      return "what is left on the scale after the ribbing";
  }
  return {};
}

std::string counted(int skeins) {
  constexpr std::array words = {"no",    "one",   "two",  "three", "four",   "five",  "six",
                                "seven", "eight", "nine", "ten",   "eleven", "twelve"};
  const auto index = static_cast<std::size_t>(std::max(0, skeins));
  const std::string number = index < words.size() ? words[index] : std::to_string(skeins);
  return number + (skeins == 1 ? " skein" : " skeins");
}

// Bounds are rounded outwards, so that the rounded one still holds.
std::string bound_words(double length_m, BoundSide side, const NumberStyle& style) {
  constexpr double just_short = 1e-9;
  const double step = length_m >= 1000 ? 10 : 1;
  const double steps = side == BoundSide::most ? std::ceil(length_m / step - just_short)
                                               : std::floor(length_m / step + just_short);
  return show_number(steps * step, 0, style);
}

struct BandWords {
  GrowthBand band;
  const char* if_so;
};
constexpr std::array band_words = {
    BandWords{GrowthBand::whole_garment, "If this colour grows with the garment"},
    BandWords{GrowthBand::part, "If this colour grows as a part of the garment does"},
    BandWords{GrowthBand::hardly_grows, "If this colour hardly grows from size to size"},
    BandWords{GrowthBand::unknown, "If this colour grows hardly faster than the garment"},
};

std::string if_band(GrowthBand band) {
  const auto row = std::find_if(band_words.begin(), band_words.end(),
                                [&](const BandWords& one) { return one.band == band; });
  return (row == band_words.end() ? band_words.back() : *row).if_so;
}

}  // namespace

Expected<LeftoverVerdict> leftover_verdict(const OnHand& on_hand, const std::vector<LengthEvidence>& evidence,
                                           const LeftoverRules& rules) {
  if (!std::isfinite(on_hand.length.value()) || on_hand.length < metres(0))
    return failure(ErrorKind::out_of_range, exact_number(on_hand.length.value()) + " m on hand",
                   "a length of 0 m or more");
  if (on_hand.pieces < 1)
    return failure(ErrorKind::out_of_range, std::to_string(on_hand.pieces) + " pieces", "one piece or more");
  if (evidence.empty())
    return failure(ErrorKind::not_found, "nothing known of this colour in this size",
                   "printed counts, stitches or a weighed sample");
  const auto narrowest = std::min_element(evidence.begin(), evidence.end(), [](const auto& a, const auto& b) {
    return (a.high - a.low) < (b.high - b.low);
  });
  LeftoverVerdict verdict;
  verdict.ground = narrowest->ground;
  verdict.usable = std::max(metres(0), on_hand.length - metres(rules.join_m * (on_hand.pieces - 1)));
  verdict.verdict = narrowest->ground == LengthGround::printed_counts
                        ? by_counts(verdict.usable, *narrowest, rules)
                        : by_length(verdict.usable, *narrowest);
  if (verdict.verdict == Verdict::too_close_to_call)
    verdict.settled_by = settling_fact(narrowest->ground, rules);
  return verdict;
}

std::string counts_in_words(const StepReading& reading, const std::vector<std::string>& size_labels,
                            std::size_t size_index, BoundSide side, const NumberStyle& style) {
  if (reading.clash || size_index >= reading.sizes.size() || !reading.sizes[size_index].known()) return {};
  const SizeSteps& size = reading.sizes[size_index];
  const StepBound& bound = side == BoundSide::most ? *size.high : *size.low;
  if (bound.told_by == size_index) {
    const auto own = own_steps(reading, size_index);
    return "The printed counts allow " + show_number(own->low.value(), 0, style) + "–" +
           show_number(own->high.value(), 0, style) + " m";
  }
  const auto label = [&](std::size_t i) {
    return "size " + (i < size_labels.size() ? size_labels[i] : std::to_string(i + 1));
  };
  const int count = *reading.sizes[bound.told_by].count;
  const std::string need = if_band(reading.band) + ", " + label(size_index) + " needs at " +
                           (side == BoundSide::most ? "most" : "least") + " about " +
                           bound_words(bound.length.value(), side, style) + " m, because " +
                           label(bound.told_by);
  return side == BoundSide::most ? need + " manages with " + counted(count)
                                 : need + " needs more than " + counted(count - 1);
}

std::string length_in_words(const LengthEvidence& evidence, const NumberStyle& style) {
  if (evidence.ground == LengthGround::printed_counts) return {};
  const auto round = [&](Metres length) { return show_number(length.value(), 0, style); };
  const bool weighed = evidence.ground == LengthGround::weighed_sample;
  return std::string(weighed ? "From your own weighed piece, " : "From the chart and gauge, about ") +
         round(evidence.planned) + " m (" + round(evidence.low) + "–" + round(evidence.high) + ")";
}

}  // namespace skeinproof
