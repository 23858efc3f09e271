// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/error.h"
#include "core/units/entered.h"
#include "core/units/quantity.h"

namespace skeinproof {

// Reading what people type. Accepted everywhere: fractions as glyphs or figures ("1¾", "1 3/4", "1-3/4",
// "3/4"), decimal point or comma, no-break and thin spaces, a unit word directly behind the figure or after a
// space. A text without a unit takes the assumed one. Each failure says what was found and what was expected;
// `typed` keeps the exact text. Marks: a lone point is a decimal mark. Several marks of one kind before
// groups of three, or marks of two kinds, are thousands and decimals ("1,234.5", "1.234,5", "1,234,567"); so
// are apostrophes and spaces ("1'203", "1 203"). A lone comma is a decimal mark, too; before exactly three
// digits ("1,125 m") it might mean thousands, and a length, a weight or a number is then refused unless only
// one of the two readings lies within its bounds.
enum class LengthUnit { metre, yard, centimetre };
enum class MassUnit { gram, ounce, kilogram, pound };
enum class MeasureUnit { centimetre, inch, millimetre, metre };

// A yarn length: more than 0 and at most 100 km.
Expected<Entered<Metres>> read_length(std::string_view text, LengthUnit assumed = LengthUnit::metre);
// A mass: more than 0 and at most 100 kg.
Expected<Entered<Grams>> read_mass(std::string_view text, MassUnit assumed = MassUnit::gram);
// A measurement of cloth or needle: more than 0 and at most 100 m.
Expected<Entered<Centimetres>> read_measure(std::string_view text,
                                            MeasureUnit assumed = MeasureUnit::centimetre);
// A bare number within [low, high]; `expected` names what it counts ("stitches", "percent").
Expected<Entered<double>> read_number(std::string_view text, double low, double high,
                                      std::string_view expected);

// A list of one value per size, as typed: "5 (5, 6, 7) (8, 7, 9, 9, 10)", "1[2:3]", "1 / 2 / 3", "15, 17,5;
// 20", tab-, line- or space-separated cells, or one single value. `opens_group[i]` is true where a bracket
// opens before value i. A dash or an empty cell is an absent value. A unit stays with its figure ("175 m"), a
// fraction with its whole ("1 3/4"); "1/2" is a half, "1/2/3" three values. A comma between two digits
// without a space is a decimal mark where anything else separates values (another mark, a comma with a space,
// a space between figures), else it separates. Where the number of sizes is known and only the other reading
// gives it, that one is taken. Fails on brackets that do not match, nest or hold nothing.
struct SizeList {
  std::vector<std::optional<std::string>> values;
  std::vector<bool> opens_group;
};
Expected<SizeList> read_size_list(std::string_view text, std::size_t sizes = 0);  // 0 = not known

}  // namespace skeinproof
