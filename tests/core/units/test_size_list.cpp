// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "core/base/text.h"
#include "core/units/read.h"

namespace skeinproof {
namespace {

// The list as "5|(5|6|7|(8|9", an absent value as "?".
std::string shape(const Expected<SizeList>& list) {
  if (!list) return list.error().message();
  std::string text;
  for (std::size_t i = 0; i < list->values.size(); ++i) {
    if (i > 0) text += "|";
    if (list->opens_group[i]) text += "(";
    text += list->values[i].value_or("?");
  }
  return text;
}

struct Row {
  const char* typed;
  const char* read;
};

TEST(ReadSizeList, takes_every_bracket_style) {
  const Row rows[] = {
      {"5 (5, 6, 7) (8, 7, 9, 9, 10)", "5|(5|6|7|(8|7|9|9|10"},
      {"5 (5,6,7) (8,7,9,9,10)", "5|(5|6|7|(8|7|9|9|10"},
      {"5(5,6,7)", "5|(5|6|7"},
      {"1[2:3]", "1|(2|3"},
      {"1 [2 : 3 : 4]", "1|(2|3|4"},
      {"1 / 2 / 3", "1|2|3"},
      {"1/2/3", "1|2|3"},
      {"1/2", "1/2"},
      {"15, 17,5; 20", "15|17,5|20"},
      {"15 (17,5; 20)", "15|(17,5|20"},
      {"15 (17,5, 20, 22,5)", "15|(17,5|20|22,5"},
      {"15 (17.5, 20, 22.5)", "15|(17.5|20|22.5"},
      {"15 17,5 20", "15|17,5|20"},
      {"5\t6\t7", "5|6|7"},
      {"5\t\t7", "5|?|7"},
      {"5\n6\n7\n", "5|6|7"},
      {"5\r\n6\r\n", "5|6"},
      {"5 6 7", "5|6|7"},
      {"5", "5"},
      {"1 (–, 2, -)", "1|(?|2|?"},
      {"1 (2, , 3)", "1|(2|?|3"},
      {"–", "?"},
      {"32 (35¾, 39¼, 43)", "32|(35¾|39¼|43"},
      {"1 3/4 (2 1/2, 3)", "1 3/4|(2 1/2|3"},
      {"1 3/4 2 1/2 3", "1 3/4|2 1/2|3"},
      {"1 ¾ 2 ½ 3", "1 ¾|2 ½|3"},
      {"175 m (191 m)", "175 m|(191 m"},
      {"175 m 191 m", "175 m|191 m"},
      {"1\u00a0203 (1\u00a0304, 980)", "1\u00a0203|(1\u00a0304|980"},
      {"XS (S, M, L) (XL, 2XL)", "XS|(S|M|L|(XL|2XL"},
      {"XS S M L", "XS|S|M|L"},
      {"1, (2, 3), 4", "1|(2|3|4"},
      {"(1, 2) (3)", "(1|2|(3"},
      {"1 {2 | 3}", "1|(2|3"},
      {"-5, 6", "-5|6"},
  };
  for (const Row& row : rows) EXPECT_EQ(shape(read_size_list(row.typed)), row.read) << row.typed;
}

TEST(ReadSizeList, takes_the_reading_of_commas_that_gives_the_sizes) {
  EXPECT_EQ(shape(read_size_list("5 (5,6, 7)")), "5|(5,6|7");
  EXPECT_EQ(shape(read_size_list("5 (5,6, 7)", 4)), "5|(5|6|7");
  EXPECT_EQ(shape(read_size_list("15,5 (17,5)", 2)), "15,5|(17,5");
  EXPECT_EQ(shape(read_size_list("15,5 (17,5)")), "15|5|(17|5");
  EXPECT_EQ(shape(read_size_list("1,2,3", 9)), "1|2|3");
}

TEST(ReadSizeList, refuses_brackets_that_do_not_match_and_says_where) {
  const Row rows[] = {
      {"5 (5, 6", "1:8: found the end of the list, expected a closing bracket"},
      {"5 5, 6)", "1:7: found “)”, expected an opening bracket before it"},
      {"5 (5, 6]", "1:8: found “]”, expected an opening bracket before it"},
      {"5 (5 (6))", "1:6: found “(”, expected no bracket within a bracket"},
      {"5 ()", "1:4: found “)”, expected values between the brackets"},
      {"½\n(7", "2:3: found the end of the list, expected a closing bracket"},
      {"", "1:1: found nothing, expected one value per size, such as 5 (5, 6, 7)"},
  };
  for (const Row& row : rows) EXPECT_EQ(shape(read_size_list(row.typed)), row.read) << row.typed;
  EXPECT_EQ(read_size_list("5 (").error().kind, ErrorKind::wrong_shape);
}

// What any of the written styles holds is read back, groups included.
RC_GTEST_PROP(ReadSizeList, gives_back_what_was_written, ()) {
  const auto counts = *rc::gen::nonEmpty(rc::gen::container<std::vector<int>>(rc::gen::inRange(0, 2000)));
  struct Style {
    std::string open, separator, close;
  };
  const Style style =
      *rc::gen::element(Style{" (", ", ", ")"}, Style{"(", ",", ")"}, Style{" [", " : ", "]"},
                        Style{"[", ":", "]"}, Style{" {", "; ", "}"}, Style{" (", " / ", ")"});
  const auto first_group = *rc::gen::inRange<std::size_t>(1, counts.size() + 1);
  std::string text;
  for (std::size_t i = 0; i < counts.size(); ++i) {
    if (i == first_group)
      text += style.open;
    else if (i > 0)
      text += style.separator;
    text += std::to_string(counts[i]);
  }
  if (first_group < counts.size()) text += style.close;
  const auto list = read_size_list(text);
  RC_ASSERT(list.has_value());
  RC_ASSERT(list->values.size() == counts.size());
  for (std::size_t i = 0; i < counts.size(); ++i) {
    RC_ASSERT(list->values[i] == std::to_string(counts[i]));
    RC_ASSERT(list->opens_group[i] == (i == first_group));
  }
}

}  // namespace
}  // namespace skeinproof
