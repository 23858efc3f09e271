// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string_view>

namespace skeinproof {

// The fractions that Unicode has one sign for: "¾" is 3 of 4.
struct FractionGlyph {
  char32_t sign;
  std::string_view text;
  int numerator, denominator;
};

inline constexpr FractionGlyph fraction_glyphs[] = {
    {U'½', "½", 1, 2}, {U'⅓', "⅓", 1, 3}, {U'⅔', "⅔", 2, 3},  {U'¼', "¼", 1, 4}, {U'¾', "¾", 3, 4},
    {U'⅕', "⅕", 1, 5}, {U'⅖', "⅖", 2, 5}, {U'⅗', "⅗", 3, 5},  {U'⅘', "⅘", 4, 5}, {U'⅙', "⅙", 1, 6},
    {U'⅚', "⅚", 5, 6}, {U'⅐', "⅐", 1, 7}, {U'⅛', "⅛", 1, 8},  {U'⅜', "⅜", 3, 8}, {U'⅝', "⅝", 5, 8},
    {U'⅞', "⅞", 7, 8}, {U'⅑', "⅑", 1, 9}, {U'⅒', "⅒", 1, 10},
};

constexpr std::optional<double> value_of_fraction_glyph(char32_t sign) {
  for (const FractionGlyph& glyph : fraction_glyphs)
    if (glyph.sign == sign) return static_cast<double>(glyph.numerator) / glyph.denominator;
  return std::nullopt;
}

}  // namespace skeinproof
