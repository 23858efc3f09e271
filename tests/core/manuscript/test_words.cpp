// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/words.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "core/base/text.h"
#include "core/units/read.h"

namespace skeinproof {
namespace {

// Ounces of the usual skeins as ball bands print them; common practice, no source.
TEST(BlockWords, OuncesOfTheUsualSkeins) {
  const HouseStyle house;
  const std::pair<double, const char*> skeins[] = {{50, "1¾"}, {100, "3½"}, {25, "⅞"},    {113.4, "4"},
                                                   {200, "7"}, {150, "5¼"}, {10, "0.35"}, {20, "0.71"}};
  for (const auto& [mass, ounces] : skeins) EXPECT_EQ(ounces_figure(grams(mass), house), ounces) << mass;
}

TEST(BlockWords, FiguresRoundHalfUp) {
  const HouseStyle house;
  EXPECT_EQ(yards_figure(metres(175)), "191");
  EXPECT_EQ(yards_figure(metres(210)), "230");
  EXPECT_EQ(metres_figure(metres(174.6504), house), "175");  // 191 yd
  EXPECT_EQ(metres_figure(metres(87.5), house), "87.5");
  EXPECT_EQ(grams_figure(grams(49.6117), house), "50");  // 1.75 oz
  EXPECT_EQ(inches_figure(centimetres(149), house), "58¾");
  EXPECT_EQ(measure_words(centimetres(10), house), "10 cm / 4 in");
}

TEST(BlockWords, CategoryWordsOfThreeSets) {
  EXPECT_EQ(category_words("sport", CategoryWords::ply_number), "5-ply");
  EXPECT_EQ(category_words("8 ply", CategoryWords::united_states), "DK");
  EXPECT_EQ(category_words("Chunky", CategoryWords::united_states), "bulky");
  EXPECT_EQ(category_words("bulky weight", CategoryWords::united_kingdom), "chunky");
  EXPECT_EQ(category_words("Chunky", CategoryWords::as_written), "Chunky");
  EXPECT_EQ(category_words("cobble", CategoryWords::united_kingdom), "cobble");
  EXPECT_EQ(category_words("", CategoryWords::united_kingdom), "");
}

TEST(BlockWords, GenericFibreNamesKeepTheTreatment) {
  Yarn yarn;
  yarn.composition = {{"wool_superwash", "Superwash Merino", {80, {}}},
                      {"polyamide", "nylon", {12.5, {}}},
                      {"flax", "fine flax", {7.5, {}}}};
  HouseStyle house;
  EXPECT_EQ(composition_words(yarn, house), "80% Superwash Merino, 12.5% nylon, 7.5% fine flax");
  house.fibre_names = FibreNames::generic_polyamide;
  EXPECT_EQ(composition_words(yarn, house), "80% superwash wool, 12.5% polyamide, 7.5% linen");
  house.fibre_names = FibreNames::generic_nylon;
  house.mark = DecimalMark::comma;
  EXPECT_EQ(composition_words(yarn, house), "80% superwash wool, 12,5% nylon, 7,5% linen");
}

TEST(BlockWords, NeedlesByTable) {
  HouseStyle house;
  EXPECT_EQ(needle_words(centimetres(0.3), house), "3 mm (US 2½)");
  EXPECT_EQ(needle_words(centimetres(0.425), house), "4.25 mm");  // no US number
  EXPECT_EQ(needle_words(centimetres(0.333), house), "3.33 mm");
  house.needles_metric = false;
  EXPECT_EQ(needle_words(centimetres(0.425), house), "4.25 mm");
  house.fractions = FractionStyle::decimal;
  house.mark = DecimalMark::comma;
  EXPECT_EQ(needle_words(centimetres(0.3), house), "US 2,5");
}

std::vector<Size> sizes_of(std::size_t count, std::size_t opens) {
  std::vector<Size> sizes(count);
  for (std::size_t i = 1; i < count; ++i)
    sizes[i].opens_group = i == 1 || (opens > 0 && i % (opens + 1) == 0);
  return sizes;
}

RC_GTEST_PROP(BlockWords, ASizeListReadsBack, ()) {
  const auto brackets = *rc::gen::elementOf(
      std::vector<SizeBrackets>{SizeBrackets::grouped, SizeBrackets::one_bracket, SizeBrackets::colons,
                                SizeBrackets::slashes, SizeBrackets::commas});
  const auto counts = *rc::gen::nonEmpty(rc::gen::container<std::vector<int>>(rc::gen::inRange(0, 40)));
  const auto sizes = sizes_of(counts.size(), *rc::gen::inRange<std::size_t>(0, 5));
  std::vector<std::optional<std::string>> values;
  for (const int count : counts) {
    const bool unknown = *rc::gen::weightedElement<bool>({{9, false}, {1, true}});
    values.push_back(unknown ? std::nullopt : std::optional(std::to_string(count)));
  }
  const std::string text = size_list(values, sizes, brackets);
  const auto read = read_size_list(text, counts.size());
  RC_ASSERT(read.has_value());
  RC_ASSERT(read->values == values);
  if (brackets != SizeBrackets::grouped) return;
  for (std::size_t i = 0; i < sizes.size(); ++i) RC_ASSERT(read->opens_group[i] == sizes[i].opens_group);
}

// Measurements with a decimal comma need a wider mark between the values; they read back all the same.
RC_GTEST_PROP(BlockWords, AListWithDecimalCommasReadsBack, ()) {
  const auto halves = *rc::gen::nonEmpty(rc::gen::container<std::vector<int>>(rc::gen::inRange(20, 400)));
  HouseStyle house;
  house.mark = DecimalMark::comma;
  std::vector<std::optional<std::string>> values;
  for (const int half : halves) values.emplace_back(centimetres_figure(centimetres(half / 2.0), house));
  const auto read =
      read_size_list(size_list(values, sizes_of(values.size(), 3), SizeBrackets::grouped), values.size());
  RC_ASSERT(read.has_value());
  RC_ASSERT(read->values == values);
}

}  // namespace
}  // namespace skeinproof
