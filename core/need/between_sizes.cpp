// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/need/changed_copy.h"
#include "core/pattern/edits.h"

namespace skeinproof {
namespace {

using Counts = PerSize<Entered<double>>;

// No more than this is taken for a multiple the pattern needs: two sizes alone share a larger one by chance.
constexpr long most_common = 12;

// The largest multiple that the counts of every size keep; 1 where one of them is no whole number.
double common_multiple(const Counts& list, std::size_t without) {
  long common = 0;
  for (std::size_t i = 0; i < list.size(); ++i) {
    const auto* value = list.find(i);
    if (value == nullptr || i == without) continue;
    if (value->value != std::floor(value->value) || std::abs(value->value) > 1e9) return 1;
    common = std::gcd(common, static_cast<long>(value->value));
  }
  long kept = std::min(common, most_common);
  while (kept > 1 && common % kept != 0) --kept;
  return kept > 1 ? static_cast<double>(kept) : 1;
}

struct Between {
  std::size_t from, to, made;
  double share;

  std::optional<double> at(const Counts& list) const {
    const auto *low = list.find(from), *high = list.find(to);
    if (low == nullptr || high == nullptr) return std::nullopt;
    return low->value + share * (high->value - low->value);
  }
  void fill(Counts& list, double step) const {
    const auto value = at(list);
    if (!value) return;
    const auto *low = list.find(from), *high = list.find(to);
    // Sizes that agree are met as they are, be they no multiple of anything.
    const double snapped =
        low->value == high->value ? low->value : round_half_up(*value, step > 0 ? step : 1);
    list.set(made, Entered<double>{snapped, ""});
  }
  void fill_snapped(Counts& list) const { fill(list, common_multiple(list, made)); }
};

// How many stitches of the chart a repeat begins with.
double repeat_width(const Chart& chart) {
  if (chart.rounds->empty()) return 0;
  double width = 0;
  for (char square : chart.rounds->front()) width += square != no_stitch;
  return width;
}

// Widths of a piece that are whole repeats of its chart in both sizes stay so with as many repeats.
void fill_piece(const Pattern& pattern, Piece& piece, const Between& between) {
  const Counts* repeats = nullptr;
  double width = 0;
  for (Section& section : piece.sections) {
    if (section.source != StitchSource::chart) continue;
    between.fill_snapped(section.repeats);
    if (const Chart* chart = pattern.chart(section.chart); chart != nullptr && repeats == nullptr) {
      repeats = &section.repeats;
      width = repeat_width(*chart);
    }
  }
  const auto fits_chart = [&](const Counts& list) {
    for (std::size_t i : {between.from, between.to}) {
      const auto *own = list.find(i), *count = repeats == nullptr ? nullptr : repeats->find(i);
      if (own == nullptr || count == nullptr || own->value != width * count->value) return false;
    }
    return true;
  };
  const auto fill_width = [&](Counts& list) {
    if (fits_chart(list) && repeats->find(between.made) != nullptr)
      list.set(between.made, Entered<double>{width * repeats->find(between.made)->value, ""});
    else
      between.fill_snapped(list);
  };
  for (Section& section : piece.sections)
    for (ShapeRun& run : section.runs) {
      fill_width(run.from);
      fill_width(run.to);
      between.fill(run.rows, 1);
    }
  for (Edge& edge : piece.edges) {
    if (edge.kind == EdgeKind::cast_on || edge.kind == EdgeKind::bind_off) {
      fill_width(edge.amount);
    } else if (const auto value = between.at(edge.amount)) {
      edge.amount.set(between.made, Entered<double>{*value, ""});
    }
  }
}

// A typed sum is rows times width, and both grow: its root goes evenly from size to size.
bool fill_typed(Section& section, const Between& between) {
  const auto *low = section.stitches.find(between.from), *high = section.stitches.find(between.to);
  if (section.source != StitchSource::typed || low == nullptr || high == nullptr) return false;
  if (!(low->value >= 0) || !(high->value >= 0)) return false;
  const bool differ = low->value != high->value;
  const double root =
      std::sqrt(low->value) + between.share * (std::sqrt(high->value) - std::sqrt(low->value));
  section.stitches.set(between.made, Entered<double>{round_half_up(root * root), ""});
  return differ;
}

}  // namespace

Expected<void> ChangedCopy::make_one(const BetweenSizes& change) {
  for (SizeId id : {change.from, change.to})
    if (!pattern_.size_index(id))
      return failure(ErrorKind::unknown_name, "no size " + std::to_string(id.value), "a size of the pattern");
  if (!(change.share >= 0 && change.share <= 1))
    return failure(ErrorKind::out_of_range, show_short(change.share * 100, 1) + " % of the way",
                   "0 to 100 %");
  const std::size_t first = *pattern_.size_index(change.from), second = *pattern_.size_index(change.to);
  const std::string label = pattern_.sizes[first].label + "–" + pattern_.sizes[second].label;
  const std::size_t made = std::min(first, second) + 1;
  const SizeId id = insert_size(pattern_, made, label);
  const Between between{*pattern_.size_index(change.from), *pattern_.size_index(change.to),
                        *pattern_.size_index(id), change.share};
  std::string typed;
  for (Piece& piece : pattern_.pieces) {
    fill_piece(pattern_, piece, between);
    for (Section& section : piece.sections)
      if (fill_typed(section, between))
        typed += (typed.empty() ? "" : "; ") + piece.name + ", " + section.name;
  }
  for (Measurement& measurement : pattern_.measurements) {
    const auto *low = measurement.values.find(between.from), *high = measurement.values.find(between.to);
    if (low != nullptr && high != nullptr)
      measurement.values.set(
          between.made, Entered<Centimetres>{low->value + change.share * (high->value - low->value), ""});
  }
  for (Notion& notion : pattern_.notions) between.fill(notion.count, 1);
  size_index_ = between.made;
  note("Size " + label + ": stitches and rows apart, snapped to the multiples that all sizes keep");
  if (!typed.empty()) note("Typed as one sum of stitches, so rows and stitches could not go apart: " + typed);
  return {};
}

}  // namespace skeinproof
