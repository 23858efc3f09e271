// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace skeinproof {

// Which yarns, and which two of them together, come nearest to a linear density. Densities are whole
// milligrams in a kilometre, finer than any label, so that sums and ties are exact.

struct NearYarn {
  std::int64_t mg_per_km = 0;
  int unlike = 0;  // of two as near in density the one with less comes first; 0 to most_unlike
  std::size_t index = 0;
};
inline constexpr int most_unlike = 7;

struct Nearest {
  std::int64_t off = 0;               // density less the target
  int unlike = 0;                     // of both
  std::size_t first = 0, second = 0;  // indices; the second is the thinner one of two, else the first again
};

// The `keep` nearest of `strands` equal strands, by |off|, then `unlike`, then index.
std::vector<Nearest> nearest_singles(std::span<const NearYarn> yarns, std::int64_t target, int strands,
                                     std::size_t keep);

// The `keep` nearest of two different ones, at least one of them of `some`: by |off|, then `unlike`. The
// cost grows as n log n with the yarns, not with the pairs.
std::vector<Nearest> nearest_pairs(std::span<const NearYarn> some, std::span<const NearYarn> others,
                                   std::int64_t target, std::size_t keep);

}  // namespace skeinproof
