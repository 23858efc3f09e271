// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/fixed_and_growing.h"

#include <algorithm>

#include "core/base/text.h"

namespace skeinproof {
namespace {

constexpr double least_spread = 0.02;  // of the larger extent: below it the slope is all error

std::string sizes_of(const std::vector<GrowthSample>& samples) {
  std::vector<std::string> labels;
  for (const GrowthSample& sample : samples) labels.push_back(sample.size);
  return "samples of sizes " + join(labels, ", ");
}

}  // namespace

Expected<FixedAndGrowing> fixed_and_growing(const std::vector<GrowthSample>& samples) {
  if (samples.size() < 2)
    return failure(ErrorKind::wrong_count, std::to_string(samples.size()) + " samples",
                   "two of different sizes");
  double weights = 0, extent = 0, length = 0;
  for (const GrowthSample& sample : samples) {
    if (!(sample.extent > 0) || !(sample.error > 0) || !(sample.length > metres(0)))
      return failure(ErrorKind::out_of_range,
                     "a sample of size " + sample.size + " without an extent or a length", "both above 0");
    const double deviation = sample.error * sample.length.value();
    const double weight = 1 / (deviation * deviation);
    weights += weight;
    extent += weight * sample.extent;
    length += weight * sample.length.value();
  }
  extent /= weights;
  length /= weights;
  const auto [least, most] = std::minmax_element(
      samples.begin(), samples.end(), [](const auto& a, const auto& b) { return a.extent < b.extent; });
  if (most->extent - least->extent < least_spread * most->extent)
    return failure(ErrorKind::wrong_shape, sizes_of(samples) + " of nearly the same fabric",
                   "samples of different sizes");
  double squares = 0, products = 0;
  for (const GrowthSample& sample : samples) {
    const double deviation = sample.error * sample.length.value();
    const double from_mean = sample.extent - extent;
    squares += from_mean * from_mean / (deviation * deviation);
    products += from_mean * (sample.length.value() - length) / (deviation * deviation);
  }
  const FixedAndGrowing line{metres(length - products / squares * extent), products / squares};
  if (line.growing < 0)
    return failure(ErrorKind::out_of_range, sizes_of(samples) + ": the larger took less",
                   "more for a larger size");
  if (line.fixed < metres(0))
    return failure(ErrorKind::out_of_range, sizes_of(samples) + ": the fixed part would be below 0",
                   "a need that grows no faster than the fabric");
  return line;
}

}  // namespace skeinproof
