// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/unit_list.h"

#include <algorithm>
#include <cmath>

#include "core/manuscript/words.h"
#include "core/units/show.h"

namespace skeinproof {
namespace {

std::vector<UnitList> in_house_order(UnitList metric, UnitList imperial, const HouseStyle& house) {
  switch (house.systems) {
    case SystemOrder::metric_first:
      return {std::move(metric), std::move(imperial)};
    case SystemOrder::imperial_first:
      return {std::move(imperial), std::move(metric)};
    case SystemOrder::metric_only:
      return {std::move(metric)};
    case SystemOrder::imperial_only:
      break;
  }
  return {std::move(imperial)};
}

template <class Show>
UnitList shown(const std::vector<std::optional<double>>& values, const std::string& unit, Show&& show) {
  UnitList list{{}, unit, unit};
  for (const auto& value : values)
    list.figures.push_back(value ? std::optional<std::string>(show(*value)) : std::nullopt);
  return list;
}

bool takes_singular(const UnitList& list) {
  return std::none_of(list.figures.begin(), list.figures.end(),
                      [](const auto& figure) { return figure && *figure != "1"; }) &&
         std::any_of(list.figures.begin(), list.figures.end(),
                     [](const auto& figure) { return figure.has_value(); });
}

std::vector<BlockRun> runs_of(const UnitList& list, const std::vector<Size>& sizes, const HouseStyle& house,
                              BlockRun mark) {
  if (house.unit_word == UnitWord::once_a_list) {
    mark.text = size_list(list.figures, sizes, house.brackets);
    return {mark, {BlockPart::plain, " " + (takes_singular(list) ? list.one : list.many), {}, {}}};
  }
  auto with_units = list.figures;
  for (auto& figure : with_units)
    if (figure) *figure += " " + (*figure == "1" ? list.one : list.many);
  mark.text = size_list(with_units, sizes, house.brackets);
  return {mark};
}

}  // namespace

std::vector<UnitList> metres_lists(const std::vector<std::optional<double>>& values,
                                   const HouseStyle& house) {
  // Beside the metres stand the yards of what is printed, so that the two agree to the last figure.
  const bool both =
      house.systems == SystemOrder::metric_first || house.systems == SystemOrder::imperial_first;
  const auto yards = [both](double m) { return show_number(in_yards(metres(both ? std::round(m) : m)), 0); };
  return in_house_order(shown(values, "m", [](double m) { return show_number(m, 0); }),
                        shown(values, "yd", yards), house);
}

std::vector<UnitList> grams_lists(const std::vector<std::optional<double>>& values, const HouseStyle& house) {
  // Whole grams are too coarse for a little colour: half a gram of 10 g is the whole allowance.
  const bool little =
      std::any_of(values.begin(), values.end(), [](const auto& value) { return value && *value < 20; });
  const auto in_grams = [&](double g) {
    return show_number(g, little ? 1 : 0, {house.mark, house.fractions, false});
  };
  return in_house_order(shown(values, "g", in_grams),
                        shown(values, "oz", [&](double g) { return ounces_figure(grams(g), house); }), house);
}

std::vector<UnitList> measure_lists(const PerSize<Entered<Centimetres>>& values, std::size_t sizes,
                                    const HouseStyle& house) {
  std::vector<std::optional<double>> cm(sizes);
  for (std::size_t i = 0; i < sizes; ++i)
    if (const auto* entered = values.find(i)) cm[i] = entered->value.value();
  return in_house_order(
      shown(cm, "cm", [&](double value) { return centimetres_figure(centimetres(value), house); }),
      shown(cm, "in", [&](double value) { return inches_figure(centimetres(value), house); }), house);
}

std::vector<UnitList> count_list(const std::vector<std::optional<double>>& counts, std::string one,
                                 std::string many, const HouseStyle& house) {
  UnitList list = shown(counts, "", [&](double count) { return short_number(count, 2, house); });
  list.one = std::move(one);
  list.many = std::move(many);
  return {std::move(list)};
}

std::vector<BlockRun> list_runs(const std::vector<UnitList>& lists, const std::vector<Size>& sizes,
                                const HouseStyle& house, const BlockRun& mark) {
  std::vector<BlockRun> runs = runs_of(lists.front(), sizes, house, mark);
  if (lists.size() < 2) return runs;
  const auto second = runs_of(lists[1], sizes, house, mark);
  const bool slash = house.second_system == SecondSystem::after_slash;
  const bool square = sizes.size() > 1;  // the list has round brackets of its own
  runs.push_back({BlockPart::plain, slash ? " / " : square ? " [" : " (", {}, {}});
  runs.insert(runs.end(), second.begin(), second.end());
  if (!slash) runs.push_back({BlockPart::plain, square ? "]" : ")", {}, {}});
  return runs;
}

}  // namespace skeinproof
