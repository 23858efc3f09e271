// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fabric/colour_areas.h"

#include <numeric>
#include <vector>

namespace skeinproof {
namespace {

// Squares that belong together, found by joining neighbours.
class Joined {
 public:
  explicit Joined(std::size_t squares) : parent_(squares) { std::iota(parent_.begin(), parent_.end(), 0u); }
  std::size_t root(std::size_t square) {
    while (parent_[square] != square) square = parent_[square] = parent_[parent_[square]];
    return square;
  }
  void join(std::size_t a, std::size_t b) { parent_[root(a)] = root(b); }

 private:
  std::vector<std::size_t> parent_;
};

}  // namespace

std::map<char, long> colour_areas(const Chart& chart) {
  std::map<char, long> areas;
  const std::vector<std::string>& rounds = *chart.rounds;
  if (rounds.empty()) return areas;
  const std::size_t width = rounds.front().size();
  const auto symbol = [&](std::size_t round, std::size_t square) {
    return square < rounds[round].size() ? rounds[round][square] : no_stitch;
  };
  Joined joined(rounds.size() * width);
  for (std::size_t r = 0; r < rounds.size(); ++r)
    for (std::size_t s = 0; s < width; ++s) {
      const char here = symbol(r, s);
      if (s + 1 < width && symbol(r, s + 1) == here) joined.join(r * width + s, r * width + s + 1);
      if (r + 1 < rounds.size() && symbol(r + 1, s) == here) joined.join(r * width + s, (r + 1) * width + s);
    }
  if (chart.worked != Worked::flat)
    for (std::size_t r = 0; r < rounds.size(); ++r)
      if (width > 1 && symbol(r, 0) == symbol(r, width - 1)) joined.join(r * width, r * width + width - 1);
  for (std::size_t i = 0; i < rounds.size() * width; ++i)
    if (joined.root(i) == i && symbol(i / width, i % width) != no_stitch)
      ++areas[symbol(i / width, i % width)];
  return areas;
}

}  // namespace skeinproof
