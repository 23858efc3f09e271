// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>

#include "core/base/enum_words.h"
#include "core/units/quantity.h"

namespace skeinproof {

enum class DecimalMark { point, comma };
template <>
struct EnumWords<DecimalMark> {
  static constexpr auto rows =
      enum_rows<DecimalMark>({{DecimalMark::point, "point"}, {DecimalMark::comma, "comma"}});
};
enum class FractionStyle { glyph, slashed, decimal };  // ¼, 1/4, .25
template <>
struct EnumWords<FractionStyle> {
  static constexpr auto rows = enum_rows<FractionStyle>({{FractionStyle::glyph, "glyph"},
                                                         {FractionStyle::slashed, "slashed"},
                                                         {FractionStyle::decimal, "decimal"}});
};

// How figures are written; a choice of the reader or of a house, never of the machine's locale.
struct NumberStyle {
  DecimalMark mark = DecimalMark::point;
  FractionStyle fractions = FractionStyle::glyph;
  bool group_thousands = false;  // "1,203", or "1 203" with a no-break space, by the decimal mark
  bool operator==(const NumberStyle&) const = default;
};

// Rounded half up (away from zero) to `decimals`, decided on the shortest decimal text of the value, so that
// 2.675 shows as 2.68 at two decimals. A minus is U+2212; NaN and infinities show as a dash.
std::string show_number(double value, int decimals, const NumberStyle& style = {});
// The same without zeros at the end: 1.50 at two decimals is "1.5", 2.00 is "2".
std::string show_short(double value, int most_decimals, const NumberStyle& style = {});
// The shortest text that reads back as the same value, in the C locale with a point.
std::string exact_number(double value);
// Rounds half up to the nearest whole multiple of `step`.
double round_half_up(double value, double step = 1.0);

// To the nearest 1/denominator in the style's fractions: 47.25 -> "47¼", "47 1/4", "47.25"; 1.75 -> "1¾".
std::string show_fraction(double value, int denominator, const NumberStyle& style = {});

// Exact conversions for showing.
double in_yards(Metres length);
double in_ounces(Grams mass);
double in_inches(Centimetres length);

}  // namespace skeinproof
