// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/base/text.h"
#include "core/file/shelf_csv_cells.h"
#include "core/substitution/shelf_readings.h"

namespace skeinproof {
namespace {

using enum ShelfField;

// Words of a heading that say in what the column is.
struct UnitWord {
  std::string_view words;  // separated by |
  std::string_view unit;
};
constexpr UnitWord length_units[] = {{"m|metre|metres|meter|meters", "m"},
                                     {"yd|yds|yard|yards|yardage", "yd"}};
constexpr UnitWord mass_units[] = {
    {"g|gram|grams|gramme|grammes", "g"}, {"oz|ounce|ounces", "oz"}, {"kg", "kg"}, {"lb|lbs", "lb"}};
constexpr UnitWord needle_units[] = {{"mm", "mm"}, {"us", "US"}, {"uk", "UK"}};

std::span<const UnitWord> units_of(ShelfField field) {
  switch (field) {
    case length:
      return length_units;
    case weight:
    case weight_owned:
      return mass_units;
    case band_needle:
      return needle_units;
    default:
      return {};
  }
}

bool is_one_of(std::string_view word, std::string_view list) {
  const auto all = split(list, '|');
  return std::find(all.begin(), all.end(), word) != all.end();
}

// "Length_(yd)" -> length, yd
std::vector<std::string> words_of(std::string_view heading) {
  std::string plain = folded_name(heading);
  for (char& c : plain)
    if (std::string_view("_()[]{}:/,.").find(c) != std::string_view::npos) c = ' ';
  std::vector<std::string> words;
  for (std::string& word : split(plain, ' '))
    if (!word.empty()) words.push_back(std::move(word));
  return words;
}

ShelfField field_of(const std::vector<std::string>& words) {
  const std::string heading = join(words, " ");
  for (const ShelfFieldRow& row : shelf_field_rows()) {
    if (row.field == kept_in_note || row.field == left_out) continue;
    if (heading == lower_ascii(row.heading) || is_one_of(heading, row.also)) return row.field;
  }
  return kept_in_note;
}

std::string unit_in(const std::vector<std::string>& words, ShelfField field) {
  for (const UnitWord& row : units_of(field))
    for (const std::string& word : words)
      if (is_one_of(word, row.words)) return std::string(row.unit);
  return {};
}

}  // namespace

ShelfColumn column_of(std::string_view heading) {
  ShelfColumn column;
  column.heading = tidy_spaces(heading);
  std::vector<std::string> words = words_of(heading);
  if (words.empty()) return column;
  column.field = field_of(words);
  const std::string last = words.back();
  if (column.field == kept_in_note && words.size() > 1) {
    std::vector<std::string> before(words.begin(), words.end() - 1);
    if (before.back() == "in") before.pop_back();
    const ShelfField field = field_of(before);
    const bool of_unit = !unit_in({last}, field).empty();
    if (of_unit || (field == price && is_currency(last))) column.field = field;
    if (field == price && is_currency(last)) column.assumed = tidy_spaces(std::string(last));
  }
  if (column.field == price && !column.assumed.empty())
    for (char& c : column.assumed)  // "eur" of the folded heading
      if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  if (column.assumed.empty()) column.assumed = unit_in(words, column.field);
  column.known = column.field != kept_in_note;
  return column;
}

}  // namespace skeinproof
