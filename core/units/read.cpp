// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/read.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/text.h"
#include "core/units/figure_grammar.h"
#include "core/units/show.h"

namespace skeinproof {
namespace {

enum class Dimension { length, mass };

struct Unit {
  std::string_view words;  // separated by spaces, lower case
  Dimension dimension;
  double base;  // metres or grams in one
};

constexpr double metres_per_inch = centimetres_per_inch / 100;
constexpr double grams_per_pound = 453.59237;  // international yard and pound agreement of 1959, exact

constexpr Unit units[] = {
    {"m metre metres meter meters mètre mètres metro metros metri", Dimension::length, 1},
    {"cm centimetre centimetres centimeter centimeters", Dimension::length, 0.01},
    {"mm millimetre millimetres millimeter millimeters", Dimension::length, 0.001},
    {"km kilometre kilometres kilometer kilometers", Dimension::length, 1000},
    {"yd yds yard yards y", Dimension::length, metres_per_yard},
    {"in ins inch inches \" ″ ” '' ′′ zoll pouce pouces", Dimension::length, metres_per_inch},
    {"ft foot feet ' ′ ’", Dimension::length, 12 * metres_per_inch},
    {"g gr gram grams gramme grammes gramm", Dimension::mass, 1},
    {"kg kilo kilos kilogram kilograms kilogramm kilogramme kilogrammes", Dimension::mass, 1000},
    {"mg milligram milligrams", Dimension::mass, 0.001},
    {"oz ozs ounce ounces once onces unze unzen", Dimension::mass, grams_per_ounce},
    {"lb lbs pound pounds", Dimension::mass, grams_per_pound},
};

const Unit* find_unit(std::string_view typed) {
  std::string word = lower_ascii(typed);
  if (word.size() > 1 && word.back() == '.') word.pop_back();
  for (const Unit& unit : units)
    for (const std::string& name : split(unit.words, ' '))
      if (name == word) return &unit;
  return nullptr;
}

// What one kind of field takes.
struct FieldKind {
  Dimension dimension;
  std::string_view assumed;  // unit of a bare figure
  double most;               // metres or grams
  std::string_view example, thing;
  bool thousands;  // whether "1,125" may well mean a thousand and more
};

Error error_of(ErrorKind kind, std::string_view typed, std::string expected) {
  return Error{kind, {}, quoted(tidy_spaces(typed)), std::move(expected)};
}

constexpr std::size_t longest_text = 200;  // bytes; no figure is longer

Expected<Figures> read_figures(std::string_view text, const std::string& expected) {
  if (text.size() > longest_text)
    return tl::unexpected(error_of(ErrorKind::not_a_quantity, text.substr(0, longest_text), expected));
  if (auto figures = parse_figures(text)) return *figures;
  return tl::unexpected(error_of(ErrorKind::not_a_quantity, text, expected));
}

Expected<double> plain_value(const Figures& figures, std::string_view typed, bool thousands, double most,
                             const std::string& expected) {
  double value = figures.value;
  if (figures.grouped && thousands && *figures.grouped <= most) {
    if (figures.value <= most)
      return tl::unexpected(error_of(ErrorKind::not_a_quantity, typed,
                                     exact_number(*figures.grouped) + " or " + exact_number(figures.value) +
                                         " (the comma could mean either)"));
    value = *figures.grouped;
  }
  if (!std::isfinite(value)) return tl::unexpected(error_of(ErrorKind::out_of_range, typed, expected));
  return value;
}

Expected<double> read_quantity(std::string_view text, const FieldKind& field) {
  const std::string example(field.example);
  const auto figures = read_figures(text, example);
  if (!figures) return tl::unexpected(figures.error());
  const std::string word = figures->unit.empty() ? std::string(field.assumed) : figures->unit;
  const Unit* unit = find_unit(word);
  if (!unit)
    return tl::unexpected(
        error_of(ErrorKind::wrong_unit, text, example + "; " + quoted(word, 20) + " is no unit known here"));
  if (unit->dimension != field.dimension)
    return tl::unexpected(error_of(
        ErrorKind::wrong_unit, text,
        example + ", and this is " + (unit->dimension == Dimension::mass ? "a weight" : "a length")));
  const double most = field.most / unit->base;
  const bool thousands = field.thousands && unit->base < 100;
  const auto value = plain_value(*figures, text, thousands, most, example);
  if (!value) return tl::unexpected(value.error());
  const std::string thing(field.thing);
  if (*value <= 0)
    return tl::unexpected(error_of(ErrorKind::out_of_range, text, thing + " of more than zero"));
  if (*value > most)
    return tl::unexpected(
        error_of(ErrorKind::out_of_range, text, thing + " of at most " + exact_number(most) + " " + word));
  return *value * unit->base;
}

constexpr std::string_view length_word(LengthUnit unit) {
  constexpr std::array<std::string_view, 3> words = {"m", "yd", "cm"};
  return words[static_cast<std::size_t>(unit)];
}
constexpr std::string_view mass_word(MassUnit unit) {
  constexpr std::array<std::string_view, 4> words = {"g", "oz", "kg", "lb"};
  return words[static_cast<std::size_t>(unit)];
}
constexpr std::string_view measure_word(MeasureUnit unit) {
  constexpr std::array<std::string_view, 4> words = {"cm", "in", "mm", "m"};
  return words[static_cast<std::size_t>(unit)];
}

}  // namespace

Expected<Entered<Metres>> read_length(std::string_view text, LengthUnit assumed) {
  const auto value = read_quantity(text, {Dimension::length, length_word(assumed), 100'000,
                                          "a length such as 175 m or 191 yd", "a length", true});
  if (!value) return tl::unexpected(value.error());
  return Entered<Metres>{metres(*value), std::string(text)};
}

Expected<Entered<Grams>> read_mass(std::string_view text, MassUnit assumed) {
  const auto value = read_quantity(text, {Dimension::mass, mass_word(assumed), 100'000,
                                          "a weight such as 50 g or 1¾ oz", "a weight", true});
  if (!value) return tl::unexpected(value.error());
  return Entered<Grams>{grams(*value), std::string(text)};
}

Expected<Entered<Centimetres>> read_measure(std::string_view text, MeasureUnit assumed) {
  const auto value = read_quantity(text, {Dimension::length, measure_word(assumed), 100,
                                          "a measurement such as 81.5 cm or 32 in", "a measurement", false});
  if (!value) return tl::unexpected(value.error());
  return Entered<Centimetres>{to_centimetres(metres(*value)), std::string(text)};
}

Expected<Entered<double>> read_number(std::string_view text, double low, double high,
                                      std::string_view expected) {
  const std::string range =
      std::string(expected) + " from " + exact_number(low) + " to " + exact_number(high);
  const auto figures = read_figures(text, range);
  if (!figures) return tl::unexpected(figures.error());
  const std::string unit = lower_ascii(figures->unit);
  const auto words = split(lower_ascii(expected), ' ');
  const bool own_word = unit.empty() || std::find(words.begin(), words.end(), unit) != words.end() ||
                        (unit == "%" && std::find(words.begin(), words.end(), "percent") != words.end());
  if (!own_word)
    return tl::unexpected(
        error_of(ErrorKind::wrong_unit, text, range + ", without " + quoted(figures->unit, 20)));
  const auto value = plain_value(*figures, text, true, high, range);
  if (!value) return tl::unexpected(value.error());
  if (*value < low || *value > high) return tl::unexpected(error_of(ErrorKind::out_of_range, text, range));
  return Entered<double>{*value, std::string(text)};
}

}  // namespace skeinproof
