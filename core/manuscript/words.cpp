// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/words.h"

#include <algorithm>
#include <charconv>
#include <cmath>

#include "core/reference/lookup.h"
#include "core/units/show.h"

namespace skeinproof {
namespace {

bool exact_at_one_decimal(double value) { return std::abs(value * 10 - std::round(value * 10)) < 1e-9; }

std::string whole_unless_exact(double value, const HouseStyle& house) {
  return short_number(value, exact_at_one_decimal(value) ? 1 : 0, house);
}

NumberStyle number_style(const HouseStyle& house, FractionStyle fractions) {
  return {house.mark, fractions, false};
}

std::string enclosed(const std::string& text, Inside inside) {
  const bool square = inside == Inside::brackets || text.find('(') != std::string::npos;
  return square ? "[" + text + "]" : "(" + text + ")";
}

std::string both_systems(const std::string& metric, const std::string& imperial, const HouseStyle& house,
                         Inside inside) {
  if (house.systems == SystemOrder::metric_only) return metric;
  if (house.systems == SystemOrder::imperial_only) return imperial;
  const bool metric_leads = house.systems == SystemOrder::metric_first;
  const std::string& first = metric_leads ? metric : imperial;
  const std::string& second = metric_leads ? imperial : metric;
  if (house.second_system == SecondSystem::after_slash) return first + " / " + second;
  return first + " " + enclosed(second, inside);
}

struct Marks {
  std::string_view after_first;  // between the first size and the rest
  std::string_view between, wide_between;
  std::string_view clash;  // a value holding this needs the wide mark
  std::string_view end;
};

Marks marks_of(SizeBrackets brackets) {
  switch (brackets) {
    case SizeBrackets::grouped:
    case SizeBrackets::one_bracket:
      return {" (", ", ", "; ", ",", ")"};
    case SizeBrackets::colons:
      return {"[", ":", " : ", ": ", "]"};
    case SizeBrackets::slashes:
      return {"/", "/", " / ", "/ ", ""};
    case SizeBrackets::commas:
      break;
  }
  return {", ", ", ", "; ", ",", ""};
}

}  // namespace

std::string short_number(double value, int decimals, const HouseStyle& house) {
  std::string text = show_number(value, decimals, number_style(house, house.fractions));
  const char mark = house.mark == DecimalMark::comma ? ',' : '.';
  if (text.find(mark) == std::string::npos) return text;
  while (text.back() == '0') text.pop_back();
  if (text.back() == mark) text.pop_back();
  return text;
}

std::string metres_figure(Metres length, const HouseStyle& house) {
  return whole_unless_exact(length.value(), house);
}
std::string yards_figure(Metres length) { return show_number(in_yards(length), 0); }
std::string grams_figure(Grams mass, const HouseStyle& house) {
  return whole_unless_exact(mass.value(), house);
}

std::string ounces_figure(Grams mass, const HouseStyle& house) {
  constexpr double farthest =
      0.025;  // the label rounding that passes in the trade; common practice, no source
  const double ounces = in_ounces(mass);
  for (const int denominator : {4, 8}) {
    const double shown = round_half_up(ounces, 1.0 / denominator);
    if (std::abs(shown - ounces) <= farthest * ounces)
      return show_fraction(ounces, denominator, number_style(house, house.ounces));
  }
  return short_number(ounces, 2, house);
}

std::string centimetres_figure(Centimetres measure, const HouseStyle& house) {
  return short_number(measure.value(), 1, house);
}
std::string inches_figure(Centimetres measure, const HouseStyle& house) {
  return show_fraction(in_inches(measure), 4, number_style(house, house.fractions));
}

std::string length_words(Metres length, const HouseStyle& house, Inside inside) {
  return both_systems(metres_figure(length, house) + " m", yards_figure(length) + " yd", house, inside);
}
std::string mass_words(Grams mass, const HouseStyle& house, Inside inside) {
  return both_systems(grams_figure(mass, house) + " g", ounces_figure(mass, house) + " oz", house, inside);
}
std::string measure_words(Centimetres measure, const HouseStyle& house, Inside inside) {
  return both_systems(centimetres_figure(measure, house) + " cm", inches_figure(measure, house) + " in",
                      house, inside);
}

std::string size_list(const std::vector<std::optional<std::string>>& values, const std::vector<Size>& sizes,
                      SizeBrackets brackets) {
  if (values.empty()) return "–";
  const Marks marks = marks_of(brackets);
  const bool clash = std::any_of(values.begin(), values.end(), [&](const auto& value) {
    return value && value->find_first_of(marks.clash) != std::string::npos;
  });
  // "1/2 skeins" would say half a skein, and "1/–/2" is hard to read.
  const bool close_slashes =
      brackets == SizeBrackets::slashes &&
      (values.size() == 2 || std::find(values.begin(), values.end(), std::nullopt) != values.end());
  const std::string_view between = clash || close_slashes ? marks.wide_between : marks.between;
  std::string text = values.front().value_or("–");
  for (std::size_t i = 1; i < values.size(); ++i) {
    const bool opens = brackets == SizeBrackets::grouped && i < sizes.size() && sizes[i].opens_group;
    if (i == 1)
      text += marks.end.empty() ? between : marks.after_first;
    else if (opens)
      text += ") (";
    else
      text += between;
    text += values[i].value_or("–");
  }
  if (values.size() > 1) text += marks.end;
  return text;
}

std::string needle_words(Centimetres diameter, const HouseStyle& house) {
  const double mm = diameter.value() * 10;
  const NeedleRow* row = needle_by_mm(mm);
  struct System {
    bool shown;
    std::string_view word;
    std::string_view name;
  };
  std::vector<System> systems;
  if (row != nullptr)
    systems = {{house.needles_us, "US ", row->us.text},
               {house.needles_old_uk, "old UK ", row->uk_old.text},
               {house.needles_japanese, "Japanese ", row->japan.text}};
  std::string others;
  for (const System& system : systems) {
    if (!system.shown || system.name.empty()) continue;
    std::string name(system.name);
    double number = 0;
    if (name.find('.') != std::string::npos &&
        std::from_chars(name.data(), name.data() + name.size(), number).ec == std::errc{})
      name = show_fraction(number, 4, number_style(house, house.fractions));
    others += (others.empty() ? "" : ", ") + std::string(system.word) + name;
  }
  const std::string metric = short_number(mm, 2, house) + " mm";
  if (others.empty()) return metric;
  return house.needles_metric ? metric + " (" + others + ")" : others;
}

}  // namespace skeinproof
