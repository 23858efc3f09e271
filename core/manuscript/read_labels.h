// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "core/manuscript/read_lists.h"

namespace skeinproof {

// The names of sizes as they stand in a text: "XS [S, M] [L, XL]", "0-3 (3-6, 6-12) months", "36/37, 38/39",
// "small, medium and large", "1:2:3-4", cells of a table.
struct LabelList {
  std::vector<ListCell> cells;  // empty where no names stand there
  std::size_t next = 0;         // the token behind them
  std::uint32_t end = 0;        // in the plain text
  bool bracketed = false;
  bool slashed = false;  // "S/M/L"
};

// `only_one`: the size of a sample, which no list follows.
LabelList read_labels(const PlainText& plain, const std::vector<Token>& tokens, std::size_t first,
                      bool only_one);
// Whether a name of a size that is no figure stands at a token: "XL", "2XL", "S".
bool is_label(const PlainText& plain, const std::vector<Token>& tokens, std::size_t at);

}  // namespace skeinproof
