// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/manuscript/statement.h"

namespace skeinproof {

// A text with one byte for each mark that has several forms, and the way back to the text as it came. Odd
// spaces are plain ones, dashes '-', typographic quotes '"' and '\'', "\r\n" is '\n'; soft hyphens and
// zero-width marks are gone, as is a narrow space that groups thousands. A fraction glyph is the byte
// `first_fraction` plus its row in `fraction_glyphs`; what is no UTF-8 is `unreadable`. Texts to 4 GB.
struct PlainText {
  static constexpr char first_fraction = '\x01';  // ... '\x08', then '\x0e' and on
  static constexpr char unreadable = '\x7f';

  std::string text;
  std::vector<std::uint32_t> from;   // of each byte: where its character begins in the text as it came
  std::vector<std::uint8_t> length;  // ... and how many bytes it takes there

  TextSpan as_came(std::size_t begin, std::size_t end) const {
    if (begin >= end) return {};
    return {from[begin], std::size_t{from[end - 1]} + length[end - 1]};
  }
};
PlainText plain_text(std::string_view text);

// The byte of a row of `fraction_glyphs`, and the row of such a byte; -1 for another byte.
char fraction_byte(std::size_t row);
int fraction_row(char byte);

}  // namespace skeinproof
