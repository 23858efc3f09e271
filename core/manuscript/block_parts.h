// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/manuscript/write_block.h"

namespace skeinproof {

// A block being written: what it is written from, and what stands so far.
struct BlockDraft {
  const Pattern& pattern;
  const Assessment& assessment;
  const HouseStyle& house;
  BlockText out;

  void missing(std::string what, std::string page, std::uint32_t part = 0) {
    out.missing.push_back({std::move(what), {std::move(page), part}});
  }
};

void append(BlockLine& line, const BlockLine& more);
void append(BlockLine& line, std::string plain);

// The elements of a block, each adding its lines and what it misses.
void write_sizes(BlockDraft& draft);
void write_gauge(BlockDraft& draft);
void write_needles(BlockDraft& draft);
void write_notions(BlockDraft& draft);

// The line of one yarn.
void write_yarn(BlockDraft& draft, const Yarn& yarn);

// The lists of some roles. `name_yarns`: the yarn's name stands before the shade.
void write_roles(BlockDraft& draft, const std::vector<const Role*>& roles, bool name_yarns,
                 std::string_view indent);
// The sums over all roles, where the house wants them.
void write_total(BlockDraft& draft);

// What is printed as the need of a role, one figure per size; what is unknown is listed as missing, by
// reason.
std::vector<std::optional<double>> need_figures(BlockDraft& draft, const Role& role, CountedIn counted_in);

}  // namespace skeinproof
