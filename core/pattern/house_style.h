// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <vector>

#include "core/base/describe.h"
#include "core/base/enum_words.h"
#include "core/units/show.h"

namespace skeinproof {

enum class SystemOrder { metric_first, imperial_first, metric_only, imperial_only };
template <>
struct EnumWords<SystemOrder> {
  static constexpr auto rows = enum_rows<SystemOrder>({{SystemOrder::metric_first, "metric first"},
                                                       {SystemOrder::imperial_first, "imperial first"},
                                                       {SystemOrder::metric_only, "metric only"},
                                                       {SystemOrder::imperial_only, "imperial only"}});
};
enum class SecondSystem { after_slash, in_brackets };
template <>
struct EnumWords<SecondSystem> {
  static constexpr auto rows = enum_rows<SecondSystem>(
      {{SecondSystem::after_slash, "after a slash"}, {SecondSystem::in_brackets, "in brackets"}});
};
enum class SizeBrackets { grouped, one_bracket, colons, slashes, commas };
template <>
struct EnumWords<SizeBrackets> {
  static constexpr auto rows = enum_rows<SizeBrackets>({{SizeBrackets::grouped, "1 (2, 3) (4, 5)"},
                                                        {SizeBrackets::one_bracket, "1 (2, 3, 4, 5)"},
                                                        {SizeBrackets::colons, "1[2:3:4:5]"},
                                                        {SizeBrackets::slashes, "1/2/3/4/5"},
                                                        {SizeBrackets::commas, "1, 2, 3, 4, 5"}});
};
enum class CountedIn { skeins, grams, metres };
template <>
struct EnumWords<CountedIn> {
  static constexpr auto rows = enum_rows<CountedIn>(
      {{CountedIn::skeins, "skeins"}, {CountedIn::grams, "grams"}, {CountedIn::metres, "metres"}});
};
enum class UnitWord { once_a_list, on_each_value };
template <>
struct EnumWords<UnitWord> {
  static constexpr auto rows = enum_rows<UnitWord>(
      {{UnitWord::once_a_list, "once a list"}, {UnitWord::on_each_value, "on each value"}});
};
enum class RolePlace { before_shade, after_shade };
template <>
struct EnumWords<RolePlace> {
  static constexpr auto rows = enum_rows<RolePlace>(
      {{RolePlace::before_shade, "before the shade"}, {RolePlace::after_shade, "after the shade"}});
};
enum class ShadeNumber { plain, with_number_sign, with_no_dot, left_out };
template <>
struct EnumWords<ShadeNumber> {
  static constexpr auto rows = enum_rows<ShadeNumber>({{ShadeNumber::plain, "08"},
                                                       {ShadeNumber::with_number_sign, "#08"},
                                                       {ShadeNumber::with_no_dot, "no. 08"},
                                                       {ShadeNumber::left_out, "left out"}});
};
enum class RoleSeparator { new_line, semicolon, comma };
template <>
struct EnumWords<RoleSeparator> {
  static constexpr auto rows = enum_rows<RoleSeparator>({{RoleSeparator::new_line, "new line"},
                                                         {RoleSeparator::semicolon, "semicolon"},
                                                         {RoleSeparator::comma, "comma"}});
};
enum class CategoryWords { as_written, united_states, united_kingdom, ply_number };
template <>
struct EnumWords<CategoryWords> {
  static constexpr auto rows = enum_rows<CategoryWords>({{CategoryWords::as_written, "as written"},
                                                         {CategoryWords::united_states, "US words"},
                                                         {CategoryWords::united_kingdom, "UK words"},
                                                         {CategoryWords::ply_number, "ply numbers"}});
};
enum class FibreNames { as_written, generic_polyamide, generic_nylon };
template <>
struct EnumWords<FibreNames> {
  static constexpr auto rows = enum_rows<FibreNames>({{FibreNames::as_written, "as written"},
                                                      {FibreNames::generic_polyamide, "generic, polyamide"},
                                                      {FibreNames::generic_nylon, "generic, nylon"}});
};
enum class Rounding { up, up_unless_hair_over };
template <>
struct EnumWords<Rounding> {
  static constexpr auto rows = enum_rows<Rounding>(
      {{Rounding::up, "round up"}, {Rounding::up_unless_hair_over, "round up unless a hair over"}});
};
enum class DescriptionElement { treatment, structure, category, surface, colouring, care };
template <>
struct EnumWords<DescriptionElement> {
  static constexpr auto rows = enum_rows<DescriptionElement>({{DescriptionElement::treatment, "treatment"},
                                                              {DescriptionElement::structure, "structure"},
                                                              {DescriptionElement::category, "category"},
                                                              {DescriptionElement::surface, "surface"},
                                                              {DescriptionElement::colouring, "colouring"},
                                                              {DescriptionElement::care, "care"}});
};
enum class BlockElement { sizes, yarn, roles, total, gauge, needles, notions };
template <>
struct EnumWords<BlockElement> {
  static constexpr auto rows = enum_rows<BlockElement>({{BlockElement::sizes, "sizes"},
                                                        {BlockElement::yarn, "yarn"},
                                                        {BlockElement::roles, "roles"},
                                                        {BlockElement::total, "total"},
                                                        {BlockElement::gauge, "gauge"},
                                                        {BlockElement::needles, "needles"},
                                                        {BlockElement::notions, "notions"}});
};

// How a house words the query of one check.
struct QueryWording {
  std::string check;  // "P1"
  std::string words;

  bool operator==(const QueryWording&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("check", self.check);
    visit("words", self.words);
  }
};

// A house's choices for a yarn block and for the quantities in it. Named, stored in the project, carried to
// others as JSON.
struct HouseStyle {
  std::string name = "Metric first, grouped brackets";
  std::vector<BlockElement> order = {BlockElement::yarn, BlockElement::roles};
  SystemOrder systems = SystemOrder::metric_first;
  SecondSystem second_system = SecondSystem::after_slash;
  DecimalMark mark = DecimalMark::point;
  FractionStyle fractions = FractionStyle::glyph;
  FractionStyle ounces = FractionStyle::glyph;
  SizeBrackets brackets = SizeBrackets::grouped;
  CountedIn counted_in = CountedIn::skeins;
  UnitWord unit_word = UnitWord::once_a_list;
  std::string skein_word;         // empty = the put-up's own word
  std::string skein_word_plural;  // empty = the word with an s
  RolePlace role_place = RolePlace::before_shade;
  ShadeNumber shade_number = ShadeNumber::plain;
  RoleSeparator role_separator = RoleSeparator::new_line;
  bool align_roles = true;  // pad labels and shades so that lists stand under each other
  bool length_notes = true;
  double length_note_share = 0.50;  // a note where every size needs at most this share of one skein
  // {metres}, {yards}, {length} = both in the house order
  std::string length_note_words = "at most {length} needed in any size";
  bool total_line = false;
  std::string total_words = "Total";
  bool metres_line = false;  // metres per role and size, so that others can substitute
  std::vector<DescriptionElement> description = {DescriptionElement::treatment, DescriptionElement::structure,
                                                 DescriptionElement::category, DescriptionElement::surface,
                                                 DescriptionElement::colouring};
  int description_minimum = 4;
  CategoryWords category_words = CategoryWords::as_written;
  FibreNames fibre_names = FibreNames::as_written;
  bool needles_metric = true;
  bool needles_us = true;
  bool needles_old_uk = false;
  bool needles_japanese = false;
  std::string washed_words = "washed";
  std::string withdrawn_words = "no longer made";
  double allowance_pct = 5.0;
  bool swatch_counted = true;
  Rounding rounding = Rounding::up;
  double hair_over_share = 0.02;       // of a skein: P/L - k at most this much is rounded down …
  double minimum_allowance_pct = 4.0;  // … where this much allowance is still left
  double note_step_m = 5.0;            // a length note is rounded up to the next whole multiple
  std::vector<QueryWording> query_wordings;

  bool operator==(const HouseStyle&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("name", self.name);
    visit("element_order", self.order);
    visit("systems", self.systems);
    visit("second_system", self.second_system);
    visit("decimal_mark", self.mark);
    visit("fractions", self.fractions);
    visit("ounces", self.ounces);
    visit("brackets", self.brackets);
    visit("counted_in", self.counted_in);
    visit("unit_word", self.unit_word);
    visit("skein_word", self.skein_word);
    visit("skein_word_plural", self.skein_word_plural);
    visit("role_place", self.role_place);
    visit("shade_number", self.shade_number);
    visit("role_separator", self.role_separator);
    visit("align_roles", self.align_roles);
    visit("length_notes", self.length_notes);
    visit("length_note_share", self.length_note_share);
    visit("length_note_words", self.length_note_words);
    visit("total_line", self.total_line);
    visit("total_words", self.total_words);
    visit("metres_line", self.metres_line);
    visit("description", self.description);
    visit("description_minimum", self.description_minimum);
    visit("category_words", self.category_words);
    visit("fibre_names", self.fibre_names);
    visit("needles_metric", self.needles_metric);
    visit("needles_us", self.needles_us);
    visit("needles_old_uk", self.needles_old_uk);
    visit("needles_japanese", self.needles_japanese);
    visit("washed_words", self.washed_words);
    visit("withdrawn_words", self.withdrawn_words);
    visit("allowance_pct", self.allowance_pct);
    visit("swatch_counted", self.swatch_counted);
    visit("rounding", self.rounding);
    visit("hair_over_share", self.hair_over_share);
    visit("minimum_allowance_pct", self.minimum_allowance_pct);
    visit("note_step_m", self.note_step_m);
    visit("query_wordings", self.query_wordings);
  }
};

}  // namespace skeinproof
