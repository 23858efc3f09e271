// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <string_view>

namespace skeinproof {

// A figure as typed, and the word behind it. Where a single comma stands before exactly three digits
// ("1,125") it may be a decimal mark or a thousands mark: `value` is the first reading, `grouped` the second.
struct Figures {
  double value = 0;
  std::optional<double> grouped;
  std::string unit;
};

// Takes "1¾ oz", "-3/4", "191yd", "1'203", ".5", "0,5 m"; nothing where the text is no figure with at most
// one word.
std::optional<Figures> parse_figures(std::string_view text);

}  // namespace skeinproof
