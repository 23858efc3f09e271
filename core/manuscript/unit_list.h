// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/manuscript/write_block.h"

namespace skeinproof {

// One figure per size with its unit; an absent figure is unknown.
struct UnitList {
  std::vector<std::optional<std::string>> figures;
  std::string one, many;  // "skein", "skeins"
};

// The lists of one fact, in the house's order of systems: one, or two where both systems are printed.
std::vector<UnitList> metres_lists(const std::vector<std::optional<double>>& metres, const HouseStyle& house);
std::vector<UnitList> grams_lists(const std::vector<std::optional<double>>& grams, const HouseStyle& house);
std::vector<UnitList> measure_lists(const PerSize<Entered<Centimetres>>& values, std::size_t sizes,
                                    const HouseStyle& house);
std::vector<UnitList> count_list(const std::vector<std::optional<double>>& counts, std::string one,
                                 std::string many, const HouseStyle& house);

// Written out in the house's brackets, with the unit once or on each value. `mark` says what the bare lists
// are; its text is filled in.
std::vector<BlockRun> list_runs(const std::vector<UnitList>& lists, const std::vector<Size>& sizes,
                                const HouseStyle& house, const BlockRun& mark);

}  // namespace skeinproof
