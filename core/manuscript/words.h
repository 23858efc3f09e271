// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/pattern/pattern.h"

namespace skeinproof {

// The words of a house: how one fact is written. Nothing here rounds before showing; figures round half up.

// Where the second system would stand in brackets inside brackets, it takes square ones.
enum class Inside { open_text, brackets };

// Metres and grams show whole unless they are exact at one decimal (87.5 m); yards are whole. Ounces go to
// the quarter, to the eighth where a quarter is off by more than 2.5 %, and to hundredths where that is too.
// "175 m / 191 yd", "191 yd (175 m)", "50 g / 1¾ oz" by the house's systems.
std::string length_words(Metres length, const HouseStyle& house, Inside inside = Inside::open_text);
std::string mass_words(Grams mass, const HouseStyle& house, Inside inside = Inside::open_text);
// Cloth: centimetres to one decimal, inches to the quarter: "10 cm / 4 in".
std::string measure_words(Centimetres measure, const HouseStyle& house, Inside inside = Inside::open_text);

// The same figures alone, without units.
std::string metres_figure(Metres length, const HouseStyle& house);
std::string yards_figure(Metres length);
std::string grams_figure(Grams mass, const HouseStyle& house);
std::string ounces_figure(Grams mass, const HouseStyle& house);
std::string centimetres_figure(Centimetres measure, const HouseStyle& house);
std::string inches_figure(Centimetres measure, const HouseStyle& house);

// A figure with at most `decimals` decimals and no idle zeros: 81.5, 91.
std::string short_number(double value, int decimals, const HouseStyle& house);

// One value per size in the house's brackets. The first size stands alone; the second always opens a bracket,
// others by `opens_group` (grouped brackets only). An absent value is "–". Where a value holds the mark that
// would part two values, a decimal comma or a slashed fraction, a wider mark parts them ("; ", " / ").
std::string size_list(const std::vector<std::optional<std::string>>& values, const std::vector<Size>& sizes,
                      SizeBrackets brackets);

// "100% wool", "75% superwash wool, 25% polyamide" by the house's fibre names.
std::string composition_words(const Yarn& yarn, const HouseStyle& house);
// "175 m / 191 yd per 50 g / 1¾ oz skein"; what is unknown is left out; empty where nothing is known.
std::string put_up_words(const Yarn& yarn, const HouseStyle& house, Inside inside = Inside::open_text);
// One element of a yarn's description, "woollen-spun 2-ply", "sport weight"; empty where unknown.
std::string description_words(const Yarn& yarn, DescriptionElement element, const HouseStyle& house);
// A weight name in another set of words ("sport" -> "5-ply"); one we do not know stays as written.
std::string category_words(std::string_view category, CategoryWords set);

// The word for what a count counts, by the house or else by the put-up.
std::string skein_word(SkeinWord word, bool plural, const HouseStyle& house);

// "3.25 mm (US 3)" in the systems the house shows; a system whose table has no name for the size is left out.
std::string needle_words(Centimetres diameter, const HouseStyle& house);

// "Peat 08", "Peat #08", "Peat no. 08", "Peat".
std::string shade_words(const Shade& shade, const HouseStyle& house);

}  // namespace skeinproof
