// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "core/pattern/edits.h"
#include "core/pattern/size_line.h"

using namespace skeinproof;

namespace {

std::vector<std::string> labels_of(const Pattern& pattern) { return size_line(pattern).labels; }

}  // namespace

TEST(SizeLine, ReadsLabelsAndBrackets) {
  const auto line = read_size_line("1 (2, 3, 4) (5, 6, 7, 8, 9)");
  ASSERT_TRUE(line) << line.error().message();
  EXPECT_EQ(line->labels.size(), 9U);
  EXPECT_EQ(line->labels[4], "5");
  EXPECT_EQ(line->opens_group,
            (std::vector<bool>{false, true, false, false, true, false, false, false, false}));
}

TEST(SizeLine, ReadsOneSizeAndWords) {
  EXPECT_EQ(read_size_line("one")->labels, std::vector<std::string>{"one"});
  EXPECT_EQ(read_size_line("XS (S, M, L)")->labels, (std::vector<std::string>{"XS", "S", "M", "L"}));
}

TEST(SizeLine, RefusesWhatNamesNoSizes) {
  EXPECT_FALSE(read_size_line(""));
  EXPECT_FALSE(read_size_line("   "));
  EXPECT_FALSE(read_size_line("1 (2, –, 4)"));
  const auto twice = read_size_line("1 (2, 3) (3, 4)");
  ASSERT_FALSE(twice);
  EXPECT_EQ(twice.error().found, "3");
  std::string many = "1";
  for (int i = 2; i <= 101; ++i) many += ", " + std::to_string(i);
  EXPECT_FALSE(read_size_line(many));
}

TEST(SizeLine, ListsFollowByPosition) {
  Pattern pattern = new_pattern();
  set_sizes(pattern, *read_size_line("1 (2, 3)"));
  pattern.measurements.push_back(
      {take_id<MeasurementId>(pattern), "bust", MeasurementKind::circumference, Fit::finished, {}});
  for (std::size_t i = 0; i < 3; ++i)
    pattern.measurements[0].values.set(
        i, Entered<Centimetres>{centimetres(80 + 10.0 * static_cast<double>(i)), {}});
  const SizeId second = pattern.sizes[1].id;

  set_sizes(pattern, *read_size_line("S (M, L) (XL)"));
  EXPECT_EQ(labels_of(pattern), (std::vector<std::string>{"S", "M", "L", "XL"}));
  EXPECT_EQ(pattern.sizes[1].id, second);
  EXPECT_TRUE(pattern.sizes[3].opens_group);
  EXPECT_EQ(pattern.measurements[0].values.at(2)->value.value(), 100);
  EXPECT_FALSE(pattern.measurements[0].values.at(3));
  EXPECT_TRUE(check_invariants(pattern));

  pattern.sample_size = pattern.sizes[2].id;
  set_sizes(pattern, *read_size_line("S (M)"));
  EXPECT_EQ(labels_of(pattern), (std::vector<std::string>{"S", "M"}));
  EXPECT_EQ(pattern.measurements[0].values.size(), 2U);
  EXPECT_FALSE(pattern.sample_size);
  EXPECT_TRUE(check_invariants(pattern));
}
