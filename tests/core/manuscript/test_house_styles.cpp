// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/house_styles.h"

#include <gtest/gtest.h>

#include <set>

namespace skeinproof {
namespace {

TEST(HouseStyles, ReadyStylesAreSoundAndDiffer) {
  std::set<std::string> names;
  for (const HouseStyle& house : ready_house_styles()) {
    EXPECT_TRUE(validate_house_style(house).empty()) << house.name;
    EXPECT_TRUE(names.insert(house.name).second) << house.name;
    EXPECT_EQ(ready_house_style(house.name), &house);
  }
  EXPECT_EQ(ready_house_styles().front(), HouseStyle{});
  EXPECT_EQ(ready_house_style("no such style"), nullptr);
}

TEST(HouseStyles, EachUnsoundChoiceIsNamed) {
  const std::pair<void (*)(HouseStyle&), const char*> slips[] = {
      {[](HouseStyle& h) { h.name = " "; }, "name"},
      {[](HouseStyle& h) { h.order.clear(); }, "order of elements"},
      {[](HouseStyle& h) { h.order.push_back(BlockElement::roles); }, "order of elements"},
      {[](HouseStyle& h) { h.description.push_back(DescriptionElement::surface); }, "description"},
      {[](HouseStyle& h) { h.description_minimum = 7; }, "least elements of a description"},
      {[](HouseStyle& h) { h.length_note_share = 1.5; }, "share of a skein"},
      {[](HouseStyle& h) { h.length_note_words = "a little"; }, "words of a length note"},
      {[](HouseStyle& h) { h.length_note_words = "{metres} of {shade}"; }, "words of a length note"},
      {[](HouseStyle& h) { h.total_words = "two\nlines"; }, "words of the total line"},
      {[](HouseStyle& h) { h.skein_word_plural = "loaves"; }, "skein word, plural"},
      {[](HouseStyle& h) { h.allowance_pct = -1; }, "allowance"},
      {[](HouseStyle& h) { h.note_step_m = 0; }, "step of a length note"},
      {[](HouseStyle& h) {
         h.rounding = Rounding::up_unless_hair_over;
         h.minimum_allowance_pct = 6;
       },
       "least allowance"},
      {[](HouseStyle& h) {
         h.order.push_back(BlockElement::needles);
         h.needles_metric = h.needles_us = false;
       },
       "needles"}};
  for (const auto& [slip, choice] : slips) {
    HouseStyle house;
    slip(house);
    const auto errors = validate_house_style(house);
    ASSERT_EQ(errors.size(), 1u) << choice;
    EXPECT_EQ(errors.front().found.find(choice), 0u) << errors.front().message();
    EXPECT_FALSE(errors.front().expected.empty());
  }
}

}  // namespace
}  // namespace skeinproof
