// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>

#include "core/manuscript/read_lists.h"

namespace skeinproof {
namespace {

using Cells = std::span<const ListCell>;

bool thousands_like(const ListCell& head, const ListCell& tail) {
  return tail.after_comma && tail.digits == 3 && head.digits >= 1 && head.digits <= 3 && head.number != 0;
}

bool has_figure(const ListCell& cell) { return !cell.absent && !cell.label; }
// A figure of which the next one, behind a glued comma, may be the decimal places.
bool merges(const ListCell& head, const ListCell& tail) {
  return tail.after_comma && has_figure(tail) && has_figure(head);
}
double merged(const ListCell& head, const ListCell& tail) {
  return head.number + tail.number * std::pow(10.0, -static_cast<double>(tail.digits));
}

// Whether the values never fall, with the glued commas as what parts them or as decimal marks.
bool rises(Cells cells, bool parted) {
  double last = 0;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    if (!has_figure(cells[i])) continue;
    double value = cells[i].number;
    if (!parted && i + 1 < cells.size() && merges(cells[i], cells[i + 1])) {
      value = merged(cells[i], cells[i + 1]);
      ++i;
    }
    if (value < last) return false;
    last = value;
  }
  return true;
}

// "45,50 cm" may be two sizes; "3,5 mm", "62,5 cm", "1,050 m" and "2,25 mm" are one figure.
bool two_sizes(const ListCell& head, const ListCell& tail, PrintedUnit unit, std::string_view tail_digits) {
  constexpr double widest_step = 1.5;
  const bool counted = unit == PrintedUnit::skein || unit == PrintedUnit::none || unit == PrintedUnit::piece;
  if (!has_figure(head) || !has_figure(tail)) return true;
  if (tail_digits.starts_with('0') || tail.number < head.number) return false;
  if (counted && tail.number <= head.number + 1) return true;
  return tail_digits != "5" && tail.number <= widest_step * head.number;
}

// Whether the commas that stand glued between figures part values; else they are decimal marks.
bool commas_part_values(Cells cells, const FigureList& list, const PlainText& plain, std::size_t sizes) {
  const auto glued = static_cast<std::size_t>(
      std::count_if(cells.begin(), cells.end(), [](const ListCell& cell) { return cell.after_comma; }));
  if (glued == 0) return false;
  if (cells.size() == 2 && glued == 1 && !list.bracketed) {
    const std::string_view tail =
        std::string_view(plain.text).substr(cells[1].begin, cells[1].end - cells[1].begin);
    return sizes == 2 && two_sizes(cells[0], cells[1], list.unit, tail);
  }
  const std::size_t apart = cells.size(), one_each = cells.size() - glued;
  if (apart == sizes) return true;
  if (one_each == sizes || list.parted) return false;
  return rises(cells, true) || !rises(cells, false);
}

// "1/2 skeins" of sizes parted by slashes. Half a skein takes no plural, and cloth and ounces come in halves.
bool slash_parts_values(Cells cells, const FigureList& list, const PlainText& plain, const SizesSaid& sizes) {
  if (cells.size() != 1 || !cells[0].slashed_fraction) return false;
  const std::string_view word =
      list.unit_word == nullptr ? std::string_view()
                                : std::string_view(plain.text).substr(cells[0].end, list.end - cells[0].end);
  if (list.unit == PrintedUnit::skein && word.ends_with('s') && sizes.count != 1) return true;
  return sizes.slashed && sizes.count == 2 && list_shape(list.unit) != list_shape(PrintedUnit::inch) &&
         list_shape(list.unit) != list_shape(PrintedUnit::ounce);
}

// "1.050 m": yarn and its weight are never printed to a thousandth.
bool points_group_thousands(Cells cells, const FigureList& list, const PlainText& plain) {
  if (list.unit != PrintedUnit::metre && list.unit != PrintedUnit::yard && list.unit != PrintedUnit::gram)
    return false;
  bool any = false;
  for (const ListCell& cell : cells) {
    const auto text = std::string_view(plain.text).substr(cell.begin, cell.end - cell.begin);
    const auto point = text.find('.');
    if (point == std::string_view::npos) continue;
    if (point == 0 || point > 3 || text.size() != point + 4 || text[0] == '0') return false;
    any = true;
  }
  return any;
}

// "81-86 (91-97, 102-107)": where values are stretches, each is one value and no single number. A lone
// stretch is its two ends, as is a row of dashes several values.
void join_stretches(std::vector<PrintedValue>& values, const std::vector<bool>& ends_stretch,
                    std::size_t sizes) {
  const auto stretches = static_cast<std::size_t>(std::count(ends_stretch.begin(), ends_stretch.end(), true));
  if (stretches == 0 || values.size() - stretches < 2 || values.size() == sizes) return;
  for (std::size_t i = 1; i < values.size(); ++i)
    if (ends_stretch[i] && ends_stretch[i - 1]) return;
  std::vector<PrintedValue> joined;
  for (std::size_t i = 0; i < values.size(); ++i) {
    if (!ends_stretch[i]) {
      joined.push_back(values[i]);
      continue;
    }
    joined.back().number.reset();
    joined.back().half_step = 0;
    joined.back().span.end = values[i].span.end;
  }
  values = std::move(joined);
}

PrintedValue value_at(const ListCell& cell, const PlainText& plain) {
  PrintedValue value;
  if (has_figure(cell)) {
    value.number = cell.number;
    value.half_step = cell.half_step;
  }
  value.span = plain.as_came(cell.begin, cell.end);
  if (cell.begin == cell.end && cell.begin < plain.from.size())
    value.span = {plain.from[cell.begin], plain.from[cell.begin]};
  value.opens_group = cell.opens_group;
  return value;
}

std::vector<PrintedValue> both_of_fraction(const ListCell& cell, const PlainText& plain) {
  const auto slash = static_cast<std::uint32_t>(plain.text.find('/', cell.begin));
  const auto digit = [&](std::uint32_t begin, std::uint32_t end) {
    PrintedValue value;
    value.number = std::stod(plain.text.substr(begin, end - begin));
    value.half_step = 0.5;
    value.span = plain.as_came(begin, end);
    return value;
  };
  return {digit(cell.begin, slash), digit(slash + 1, cell.end)};
}

}  // namespace

std::vector<PrintedValue> values_of(const Items& items, const FigureList& list, const PlainText& plain,
                                    const SizesSaid& sizes) {
  const Cells cells(items.cells.data() + list.first_cell, list.cells);
  if (slash_parts_values(cells, list, plain, sizes)) return both_of_fraction(cells[0], plain);
  const bool part = commas_part_values(cells, list, plain, sizes.count);
  bool thousands = true;
  for (std::size_t i = 1; i < cells.size(); ++i)
    thousands = thousands && (!cells[i].after_comma || thousands_like(cells[i - 1], cells[i]));
  const bool pointed = points_group_thousands(cells, list, plain);
  std::vector<PrintedValue> values;
  std::vector<bool> ends_stretch;
  values.reserve(cells.size());
  bool joined = false;  // the value at hand has its decimal places
  for (std::size_t i = 0; i < cells.size(); ++i) {
    joined = i > 0 && !part && !joined && merges(cells[i - 1], cells[i]);
    if (!joined) {
      PrintedValue& value = values.emplace_back(value_at(cells[i], plain));
      ends_stretch.push_back(cells[i].range);
      if (pointed && value.number && value.half_step < 0.5) {
        value.number = std::round(*value.number * 1000);
        value.half_step = 0.5;
      }
      continue;
    }
    PrintedValue& value = values.back();
    const double scale = thousands ? 1 : std::pow(10.0, -static_cast<double>(cells[i].digits));
    value.number = *value.number * (thousands ? 1000 : 1) + cells[i].number * scale;
    value.half_step = cells[i].half_step * scale;
    value.span.end = plain.as_came(cells[i].begin, cells[i].end).end;
  }
  join_stretches(values, ends_stretch, sizes.count);
  return values;
}

}  // namespace skeinproof
