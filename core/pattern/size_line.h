// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "core/base/error.h"
#include "core/pattern/pattern.h"

namespace skeinproof {

// The sizes of a pattern as one line: "1 (2, 3, 4) (5, 6, 7, 8, 9)", "XS [S, M, L]". Labels in order;
// `opens_group[i]` where a bracket opens before size i.
struct SizeLine {
  std::vector<std::string> labels;
  std::vector<bool> opens_group;
  bool operator==(const SizeLine&) const = default;
};

inline constexpr std::size_t most_sizes = 100;

// Fails where a label is missing or stands twice, and above `most_sizes`.
Expected<SizeLine> read_size_line(std::string_view text);
SizeLine size_line(const Pattern& pattern);

// Names the sizes by position: further labels add sizes at the end, fewer take sizes off the end, and every
// list of the document follows. Expects at least one label.
void set_sizes(Pattern& pattern, const SizeLine& line);

}  // namespace skeinproof
