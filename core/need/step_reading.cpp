// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/step_reading.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/need/area.h"
#include "core/need/layer.h"
#include "core/units/show.h"

namespace skeinproof {
namespace {

using Counts = std::vector<std::optional<int>>;

constexpr double most_skeins = 1e6;
constexpr double longest_skein_m = 1e9;
constexpr double same = 1e-12;

// How much a size's own bound says about another size, for every pair, in the skein's own unit.
class Reader {
 public:
  explicit Reader(const StepInput& input) : n_(input.extents.size()), skein_(input.skein.value()) {
    shrink_.assign(n_ * n_, 0);
    stretch_.assign(n_ * n_, 0);
    speaks_.assign(n_ * n_, false);
    for (std::size_t i = 0; i < n_; ++i)
      for (std::size_t j = 0; j < n_; ++j) relate(input, i, j);
  }

  std::vector<SizeSteps> read(const Counts& counts) const {
    std::vector<SizeSteps> sizes(n_);
    for (std::size_t i = 0; i < n_; ++i) sizes[i] = read_size(counts, i);
    return sizes;
  }

  bool holds_together(const Counts& counts) const { return !worst(read(counts)); }

  // The size whose bounds cross the most; absent where the list holds together.
  static std::optional<std::size_t> worst(const std::vector<SizeSteps>& sizes) {
    std::optional<std::size_t> found;
    double most = 0;
    for (std::size_t i = 0; i < sizes.size(); ++i) {
      if (!sizes[i].known() || sizes[i].count == 0) continue;
      const double crossing = sizes[i].low->length / sizes[i].high->length;
      // Equal ends leave nothing between them: the lower one does not belong to the interval.
      if (crossing < 1 - same || (found && crossing <= most * (1 + same))) continue;
      most = crossing;
      found = i;
    }
    return found;
  }

 private:
  void relate(const StepInput& input, std::size_t i, std::size_t j) {
    const std::size_t pair = i * n_ + j;
    speaks_[pair] = i == j || (input.extents[i] && input.extents[j]);
    if (i == j || !speaks_[pair]) {
      shrink_[pair] = stretch_[pair] = 1;
      return;
    }
    const double ratio = *input.extents[i] / *input.extents[j];
    const double one = std::pow(ratio, input.limits.low), other = std::pow(ratio, input.limits.high);
    // Sizes a million million times apart are a slip of the pen: no more than that is heard of each other.
    constexpr double utmost = 1e12;
    shrink_[pair] = std::max(std::min(one, other), 1 / utmost);
    stretch_[pair] = std::min(std::max(one, other), utmost);
  }

  SizeSteps read_size(const Counts& counts, std::size_t i) const {
    SizeSteps size;
    size.count = counts[i];
    if (counts[i] == 0) {
      size.low = size.high = StepBound{metres(0), i};
      return size;
    }
    if (counts[i]) hear(size, counts, i, i);  // itself first: at a tie a size speaks for itself
    for (std::size_t j = 0; j < n_; ++j)
      if (j != i && counts[j] && *counts[j] > 0 && speaks_[i * n_ + j]) hear(size, counts, i, j);
    return size;
  }

  void hear(SizeSteps& size, const Counts& counts, std::size_t i, std::size_t j) const {
    const double low = (*counts[j] - 1) * skein_ * shrink_[i * n_ + j];
    const double high = *counts[j] * skein_ * stretch_[i * n_ + j];
    if (!size.low || low > size.low->length.value() * (1 + same)) size.low = StepBound{metres(low), j};
    if (!size.high || high < size.high->length.value() * (1 - same)) size.high = StepBound{metres(high), j};
  }

  std::size_t n_;
  double skein_;
  std::vector<double> shrink_, stretch_;  // of pair (i, j): least and greatest planned_i / planned_j
  std::vector<bool> speaks_;
};

std::vector<Mend> mends_of(const Reader& reader, const Counts& counts) {
  std::vector<Mend> mends;
  const auto try_list = [&](Counts changed, std::size_t at, std::optional<std::size_t> with) {
    if (reader.holds_together(changed)) mends.push_back(Mend{at, with, std::move(changed)});
  };
  std::optional<std::size_t> before;
  for (std::size_t i = 0; i < counts.size(); ++i) {
    if (!counts[i]) continue;
    if (before && counts[*before] != counts[i]) {
      Counts changed = counts;
      std::swap(changed[*before], changed[i]);
      try_list(std::move(changed), *before, i);
    }
    before = i;
  }
  for (std::size_t i = 0; i < counts.size(); ++i)
    for (const int step : {-1, 1}) {
      if (!counts[i] || *counts[i] == 0 || *counts[i] + step < 1) continue;
      Counts changed = counts;
      *changed[i] += step;
      try_list(std::move(changed), i, std::nullopt);
    }
  return mends;
}

Expected<Counts> whole_counts(const std::vector<std::optional<double>>& entered) {
  Counts counts(entered.size());
  for (std::size_t i = 0; i < entered.size(); ++i) {
    if (!entered[i]) continue;
    const double value = *entered[i];
    const std::string found = exact_number(value) + " skeins in the " + std::to_string(i + 1) + ". size";
    if (!std::isfinite(value) || value < 0 || value > most_skeins)
      return failure(ErrorKind::out_of_range, found, "a count of 0 or more");
    if (value != std::floor(value)) return failure(ErrorKind::wrong_shape, found, "a whole number of skeins");
    counts[i] = static_cast<int>(value);
  }
  if (std::none_of(counts.begin(), counts.end(), [](const auto& count) { return count.has_value(); }))
    return failure(ErrorKind::not_found, "no printed counts", "the skeins as printed, size by size");
  return counts;
}

Expected<void> check_extents(const StepInput& input) {
  if (input.counts.size() != input.extents.size())
    return failure(ErrorKind::wrong_count,
                   std::to_string(input.counts.size()) + " counts for " +
                       std::to_string(input.extents.size()) + " sizes",
                   "a count for every size, or a gap where one is not known");
  bool any = false;
  for (const auto& extent : input.extents) {
    if (!extent) continue;
    if (!std::isfinite(*extent) || *extent <= 0)
      return failure(ErrorKind::out_of_range, exact_number(*extent), "an area or circumference above 0");
    any = true;
  }
  if (!any)
    return failure(ErrorKind::not_found, "no areas",
                   "fabric areas, finished measurements or finished circumferences");
  return {};
}

Expected<void> check_band(const GrowthLimits& limits) {
  const std::string found =
      "a growth band from " + exact_number(limits.low) + " to " + exact_number(limits.high);
  if (!std::isfinite(limits.low) || !std::isfinite(limits.high) || limits.low < 0)
    return failure(ErrorKind::out_of_range, found, "exponents of 0 or more");
  if (limits.low >= limits.high)
    return failure(ErrorKind::out_of_range, found, "a lower end below the upper end");
  return {};
}

std::size_t known(const std::vector<std::optional<double>>& values) {
  return static_cast<std::size_t>(
      std::count_if(values.begin(), values.end(), [](const auto& value) { return value.has_value(); }));
}

struct Extents {
  GrowthOver over = GrowthOver::area;
  std::vector<std::optional<double>> values;
};

// Areas of different grounds are not mixed: a ratio of unlike areas says nothing about growth.
Extents best_extents(const NeedContext& context) {
  const Pattern& pattern = context.pattern();
  const std::size_t n = pattern.sizes.size();
  std::array<Extents, 3> roads;
  for (Extents& road : roads) road.values.resize(n);
  roads[2].over = GrowthOver::circumference;
  for (std::size_t i = 0; i < n; ++i) {
    if (const auto area = fabric_area(context, i); area && area->m2 > 0)
      roads[area->from_stitches ? 0 : 1].values[i] = area->m2;
    if (const auto around = finished_circumference(pattern, i); around && *around > 0)
      roads[2].values[i] = around;
  }
  return *std::max_element(roads.begin(), roads.end(), [](const Extents& a, const Extents& b) {
    return known(a.values) < known(b.values);
  });
}

}  // namespace

Expected<StepReading> read_steps(const StepInput& input) {
  if (const auto fits = check_extents(input); !fits) return tl::unexpected(fits.error());
  if (const auto fits = check_band(input.limits); !fits) return tl::unexpected(fits.error());
  if (!std::isfinite(input.skein.value()) || input.skein <= metres(0))
    return failure(ErrorKind::not_found, "no length in the put-up", "the metres in one skein");
  if (input.skein.value() > longest_skein_m)
    return failure(ErrorKind::out_of_range, exact_number(input.skein.value()) + " m in a skein",
                   "the metres in one skein");
  auto counts = whole_counts(input.counts);
  if (!counts) return tl::unexpected(counts.error());

  StepReading reading;
  reading.skein = input.skein;
  reading.extents = input.extents;
  reading.limits = input.limits;
  const Reader reader(input);
  reading.sizes = reader.read(*counts);
  if (const auto size = Reader::worst(reading.sizes)) {
    const SizeSteps& crossing = reading.sizes[*size];
    reading.clash = Clash{crossing.low->told_by, crossing.high->told_by, mends_of(reader, *counts)};
  }
  return reading;
}

Expected<StepReading> read_steps(const NeedContext& context, const Role& role) {
  std::vector<std::optional<double>> counts;
  for (std::size_t i = 0; i < context.pattern().sizes.size(); ++i) {
    const auto* count = role.printed_count.find(i);
    counts.push_back(count ? std::optional(count->value) : std::nullopt);
  }
  return read_steps(context, role, counts);
}

Expected<StepReading> read_steps(const NeedContext& context, const Role& role,
                                 const std::vector<std::optional<double>>& counts) {
  const Pattern& pattern = context.pattern();
  Extents extents = best_extents(context);
  StepInput input;
  input.counts = counts;
  input.extents = std::move(extents.values);
  input.skein = skein_length(pattern, role.id).value_or(metres(0));
  const GrowthBand band = growth_band(pattern, role);
  input.limits = growth_limits(pattern, band, extents.over);
  auto reading = read_steps(input);
  if (!reading) return reading;
  reading->over = extents.over;
  reading->band = band;
  return reading;
}

Expected<StepReading> read_steps(const Pattern& pattern, RoleId id) {
  const Role* role = pattern.role(id);
  if (role == nullptr) return failure(ErrorKind::unknown_name, "no such role", "a role of the pattern");
  return read_steps(NeedContext(pattern), *role);
}

std::optional<OwnSteps> own_steps(const StepReading& reading, std::size_t size_index) {
  if (size_index >= reading.sizes.size() || !reading.sizes[size_index].count) return std::nullopt;
  const int count = *reading.sizes[size_index].count;
  return OwnSteps{static_cast<double>(std::max(0, count - 1)) * reading.skein,
                  static_cast<double>(count) * reading.skein};
}

std::optional<LastSkeinSupply> last_skein_supply(const StepReading& reading, std::size_t size_index) {
  const auto own = own_steps(reading, size_index);
  if (!own || reading.clash) return std::nullopt;
  const SizeSteps& size = reading.sizes[size_index];
  return LastSkeinSupply{std::max(metres(0), size.low->length - own->low), size.high->length - own->low};
}

}  // namespace skeinproof
