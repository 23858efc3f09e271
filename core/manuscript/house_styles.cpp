// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/house_styles.h"

#include <algorithm>

#include "core/base/text.h"
#include "core/units/show.h"

namespace skeinproof {
namespace {

std::vector<BlockElement> whole_block() {
  return {BlockElement::sizes,   BlockElement::yarn,  BlockElement::roles,  BlockElement::total,
          BlockElement::needles, BlockElement::gauge, BlockElement::notions};
}

HouseStyle named(std::string_view name) {
  HouseStyle house;
  house.name = std::string(name);
  return house;
}

HouseStyle imperial_first() {
  HouseStyle house = named("Imperial first, one bracket");
  house.systems = SystemOrder::imperial_first;
  house.second_system = SecondSystem::in_brackets;
  house.brackets = SizeBrackets::one_bracket;
  house.fractions = FractionStyle::slashed;
  house.ounces = FractionStyle::decimal;
  house.category_words = CategoryWords::united_states;
  house.fibre_names = FibreNames::generic_nylon;
  house.shade_number = ShadeNumber::with_number_sign;
  house.align_roles = false;
  return house;
}

HouseStyle metric_only() {
  HouseStyle house = named("Metric only, decimal comma");
  house.systems = SystemOrder::metric_only;
  house.mark = DecimalMark::comma;
  house.fractions = FractionStyle::decimal;
  house.ounces = FractionStyle::decimal;
  house.brackets = SizeBrackets::one_bracket;
  house.category_words = CategoryWords::ply_number;
  house.fibre_names = FibreNames::generic_polyamide;
  house.role_place = RolePlace::after_shade;
  house.needles_us = false;
  return house;
}

HouseStyle us_words() {
  HouseStyle house = named("US words, colons");
  house.systems = SystemOrder::imperial_first;
  house.brackets = SizeBrackets::colons;
  house.category_words = CategoryWords::united_states;
  house.fibre_names = FibreNames::generic_nylon;
  house.role_separator = RoleSeparator::semicolon;
  house.total_line = true;
  house.shade_number = ShadeNumber::with_number_sign;
  return house;
}

HouseStyle uk_words() {
  HouseStyle house = named("UK words, in grams");
  house.order = whole_block();
  house.category_words = CategoryWords::united_kingdom;
  house.fibre_names = FibreNames::generic_polyamide;
  house.brackets = SizeBrackets::commas;
  house.counted_in = CountedIn::grams;
  house.systems = SystemOrder::metric_only;
  house.shade_number = ShadeNumber::with_no_dot;
  house.needles_us = false;
  house.needles_old_uk = true;
  return house;
}

HouseStyle whole_page() {
  HouseStyle house = named("Whole page, metres of every colour");
  house.order = whole_block();
  house.total_line = true;
  house.metres_line = true;
  house.needles_old_uk = true;
  house.needles_japanese = true;
  house.description.push_back(DescriptionElement::care);
  return house;
}

class Findings {
 public:
  void need(bool sound, std::string_view choice, const std::string& found, std::string_view expected) {
    if (sound) return;
    errors_.push_back(
        {ErrorKind::out_of_range, {}, std::string(choice) + ": " + found, std::string(expected)});
  }
  void within(double value, double low, double high, std::string_view choice, std::string_view expected) {
    need(value >= low && value <= high, choice, exact_number(value), expected);
  }
  std::vector<Error> take() { return std::move(errors_); }

 private:
  std::vector<Error> errors_;
};

template <class T>
bool repeats(std::vector<T> values) {
  std::sort(values.begin(), values.end());
  return std::adjacent_find(values.begin(), values.end()) != values.end();
}

bool one_line(std::string_view text) {
  return is_utf8(text) &&
         std::none_of(text.begin(), text.end(), [](char c) { return c == '\n' || c == '\r'; });
}

// A note must hold at least one figure, and no place holder that will not be filled in.
bool note_words_sound(std::string text) {
  bool holds_one = false;
  for (const std::string_view name : {"{length}", "{metres}", "{yards}"})
    for (auto at = text.find(name); at != std::string::npos; at = text.find(name)) {
      text.erase(at, name.size());
      holds_one = true;
    }
  return holds_one && text.find_first_of("{}") == std::string::npos;
}

bool has(const std::vector<BlockElement>& order, BlockElement element) {
  return std::find(order.begin(), order.end(), element) != order.end();
}

}  // namespace

const std::vector<HouseStyle>& ready_house_styles() {
  static const std::vector<HouseStyle> styles = {HouseStyle{}, imperial_first(), metric_only(),
                                                 us_words(),   uk_words(),       whole_page()};
  return styles;
}

const HouseStyle* ready_house_style(std::string_view name) {
  for (const HouseStyle& house : ready_house_styles())
    if (house.name == name) return &house;
  return nullptr;
}

std::vector<Error> validate_house_style(const HouseStyle& house) {
  Findings findings;
  findings.need(!trimmed(house.name).empty(), "name", "empty", "a name to choose it by");
  const std::pair<std::string_view, const std::string&> words[] = {
      {"name", house.name},
      {"skein word", house.skein_word},
      {"skein word, plural", house.skein_word_plural},
      {"words of a length note", house.length_note_words},
      {"words of the total line", house.total_words},
      {"washed", house.washed_words},
      {"no longer made", house.withdrawn_words}};
  for (const auto& [choice, text] : words)
    findings.need(one_line(text), choice, quoted(text), "one line of text");
  findings.need(house.skein_word_plural.empty() || !house.skein_word.empty(), "skein word, plural",
                quoted(house.skein_word_plural), "a skein word for one beside it");
  findings.need(has(house.order, BlockElement::roles), "order of elements", "no roles",
                "the roles among them");
  findings.need(!repeats(house.order), "order of elements", "an element twice", "each element once");
  findings.need(!repeats(house.description), "description", "an element twice", "each element once");
  findings.within(house.description_minimum, 0, 6, "least elements of a description", "0 to 6");
  findings.within(house.length_note_share, 0.01, 1, "share of a skein for a length note", "0.01 to 1");
  findings.need(!house.length_notes || note_words_sound(house.length_note_words), "words of a length note",
                quoted(house.length_note_words),
                "at least one of {length}, {metres} and {yards}, and no other braces");
  findings.need(!has(house.order, BlockElement::needles) || house.needles_metric || house.needles_us ||
                    house.needles_old_uk || house.needles_japanese,
                "needles", "no system", "at least one system of needle sizes");
  findings.within(house.allowance_pct, 0, 100, "allowance in percent", "0 to 100");
  findings.within(house.hair_over_share, 0, 0.25, "a hair over, share of a skein", "0 to 0.25");
  if (house.rounding == Rounding::up_unless_hair_over)
    findings.within(house.minimum_allowance_pct, 0, house.allowance_pct, "least allowance in percent",
                    "0 to the allowance");
  findings.within(house.note_step_m, 0.1, 1000, "step of a length note in metres", "0.1 to 1000");
  return findings.take();
}

}  // namespace skeinproof
