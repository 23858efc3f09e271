// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/manuscript/plain_text.h"
#include "core/manuscript/reading_words.h"

namespace skeinproof {

// A word, a figure or a mark of a plain text. `shape` is the letter of a word's sense, 'W' for a capitalised
// word without one, 'w' for a small one, '0' for a figure, '\t' for the gap between two columns, else the
// mark itself.
struct Token {
  char shape = '?';
  bool glued = false;                // nothing stands between it and the token before
  bool capital = false;              // begins with a capital
  std::uint32_t begin = 0, end = 0;  // in the plain text
  const TradeWord* word = nullptr;
  double number = 0, half_step = 0;
  std::int32_t list = -1;  // of a folded list: which one
};

inline constexpr char figure_shape = '0';
inline constexpr char gap_shape = '\t';

std::vector<Token> read_tokens(const PlainText& plain);

}  // namespace skeinproof
