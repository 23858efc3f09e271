// SPDX-License-Identifier: GPL-3.0-or-later
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/core/manuscript/said.h"

namespace skeinproof {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;
using testing::said;

struct ListCase {
  const char* name;
  std::string text;
  StatementKind kind;
  std::vector<std::string> expected;
};
void PrintTo(const ListCase& c, std::ostream* out) { *out << c.name; }

constexpr StatementKind counts = StatementKind::count, sizes = StatementKind::size_labels,
                        measures = StatementKind::measurement;

class ReadLists : public ::testing::TestWithParam<ListCase> {};
TEST_P(ReadLists, as_printed) {
  EXPECT_THAT(said(GetParam().text, GetParam().kind), ::testing::ElementsAreArray(GetParam().expected));
}

const std::vector<ListCase> cases = {
    {"grouped", "MC Peat 08: 5 (5, 6, 7) (7, 8, 9) skeins", counts, {"MC: 5 (5 6 7 (7 8 9 skeins"}},
    {"one_bracket", "MC: Peat, 5 (5, 6, 7) balls", counts, {"MC: 5 (5 6 7 skeins"}},
    {"square_and_colons", "Peat (MC) x 5[5:6] balls", counts, {"MC: 5 (5 6 skeins"}},
    {"mixed_brackets", "MC 5 (5, 6) [6, 7] {8, 9} hanks", counts, {"MC: 5 (5 6 (6 7 (8 9 skeins"}},
    {"brackets_within_brackets", "MC 5 (5, 6 (7, 8)) hanks", counts, {"MC: 5 (5 6 (7 8 skeins"}},
    {"in_turn",
     "Sizes 1 (2) 3 (4)\nBust 81,5 (91) 100,5 (110) cm",
     measures,
     {"bust: 81.5 (91 100.5 (110 cm"}},
    {"slashes", "MC: 5/5/6/7 balls", counts, {"MC: 5 5 6 7 skeins"}},
    {"spaced_slashes", "MC: 5 / 5 / 6 balls", counts, {"MC: 5 5 6 skeins"}},
    {"commas", "MC Peat: 5, 5, 6, 7 balls", counts, {"MC: 5 5 6 7 skeins"}},
    {"columns", "MC Peat\t5\t5\t6\tballs", counts, {"MC: 5 5 6 skeins"}},
    {"columns_of_spaces", "MC Peat     5    5   6   balls", counts, {"MC: 5 5 6 skeins"}},
    {"a_gap_is_kept", "MC: 1 (–, 1, 1) ball", counts, {"MC: 1 (– 1 1 skeins"}},
    {"an_empty_cell_is_kept", "MC Peat\t5\t\t6\t7\tballs", counts, {"MC: 5 – 6 7 skeins"}},
    {"unit_on_each", "MC: 5 balls (6 balls, 7 balls)", counts, {"MC: 5 (6 7 skeins"}},
    {"unit_on_the_first", "MC: 5 balls (6, 7)", counts, {"MC: 5 (6 7 skeins"}},
    {"unit_on_each_by_slashes", "MC: 1 skein / 2 skeins", counts, {"MC: 1 2 skeins"}},
    {"unit_on_each_by_close_slashes",
     "Bust 80 cm/90 cm, 31½ in/35½ in",
     measures,
     {"bust: 80 90 cm", "bust: 31.5 35.5 in"}},
    {"unit_on_each_behind_decimal_commas",
     "Sizes S, M\nBust 31,5 in; 34,5 in / 80 cm; 87,5 cm",
     measures,
     {"bust: 31.5 34.5 in", "bust: 80 87.5 cm"}},
    {"spaced_slashes_behind_fractions", "Bust 31 1/2 / 34 1/2 / 37 in", measures, {"bust: 31.5 34.5 37 in"}},
    {"unit_on_each_and_the_other_system_in_brackets",
     "Bust 80 cm (87,5 cm) (95 cm) [31½ in (34½ in) (37½ in)]",
     measures,
     {"bust: 80 (87.5 (95 cm", "bust: 31.5 (34.5 (37.5 in"}},
    {"broken_line", "MC: 5 (5, 6,\n7, 8) skeins", counts, {"MC: 5 (5 6 7 8 skeins"}},
    {"group_on_the_next_line", "MC: 5 (5, 6)\n(7, 8) skeins", counts, {"MC: 5 (5 6 (7 8 skeins"}},
    {"a_bracket_that_never_closes", "MC: 5 (5, 6, 7 skeins", counts, {"MC: 5 (5 6 7 skeins"}},
    {"all_sizes", "CC2: 1 ball in all sizes", counts, {"CC2: 1 skeins"}},
    {"two_lists_after_another",
     "MC 5 (6, 7) balls, CC 1 (1, 2) balls",
     counts,
     {"MC: 5 (6 7 skeins", "CC: 1 (1 2 skeins"}},
    {"shade_number_before_a_comma_list",
     "Sizes 1, 2, 3\nMC Peat 204, 1, 1, 2 balls",
     counts,
     {"MC: 1 1 2 skeins"}},
    {"decimal_commas", "MC: 15,2; 21,4; 28,7 g", counts, {"MC: 15.2 21.4 28.7 g"}},
    {"decimal_commas_in_brackets",
     "Bust 81,5 (91, 100,5, 109) cm",
     measures,
     {"bust: 81.5 (91 100.5 109 cm"}},
    {"close_commas", "MC: 5(5,6,7) balls", counts, {"MC: 5 (5 6 7 skeins"}},
    {"decimal_comma_in_one_figure_of_two_sizes", "Sizes S, M\nLength 62,5 cm", measures, {"length: 62.5 cm"}},
    {"close_comma_of_two_sizes", "Sizes S, M\nLength 45,50 cm", measures, {"length: 45 50 cm"}},
    {"decimal_commas_where_no_sizes_are_named", "Bust 81,5 (91,5) cm", measures, {"bust: 81.5 (91.5 cm"}},
    {"close_commas_where_no_sizes_are_named", "MC: 5 (5,6) (7,8) balls", counts, {"MC: 5 (5 6 (7 8 skeins"}},
    {"a_half_of_two_sizes",
     "Sizes S/M\nMC: 1/2 skeins\nCC: 3/4",
     counts,
     {"MC: 1 2 skeins", "CC: 3 4 skeins"}},
    {"half_a_skein", "Sizes 1/2/3\nMC: 1/2 skein", counts, {"MC: 0.5 skeins"}},
    {"thousands", "MC: 950 (1,050, 1,150) m", counts, {"MC: 950 (1050 1150 m"}},
    {"thousands_by_narrow_space", "MC: 950 (1\u202f050, 1\u202f150) m", counts, {"MC: 950 (1050 1150 m"}},
    {"thousands_by_points", "MC: 950 m (1.050 m, 1.150 m)", counts, {"MC: 950 (1050 1150 m"}},
    {"stretches",
     "To fit chest 81-86[91-97:102-107]cm / 32-34[36-38:40-42]in",
     measures,
     {"chest, to fit: – (– – cm", "chest, to fit: – (– – in"}},
    {"stretches_with_their_unit", "To fit head 52–55 cm (56–60 cm)", measures, {"head, to fit: – (– cm"}},
    {"one_stretch", "To fit head 52–55 cm", measures, {"head, to fit: 52 55 cm"}},
    {"two_systems_of_one_rectangle",
     "Finished size 75 x 90 cm (29½ x 35½ in)\nMC Peat 3 balls",
     measures,
     {"finished: 75 cm", "finished: 90 cm", "finished: 29.5 in", "finished: 35.5 in"}},
    {"behind_spaced_dots", "MC Kelp . . . . . 6, 7, 8 balls", counts, {"MC: 6 7 8 skeins"}},
    {"glyphs", "Bust 32 (35¾, 39¼) in", measures, {"bust: 32 (35.75 39.25 in"}},
    {"written_fractions", "Bust 32 (35 3/4, 39-1/4) in", measures, {"bust: 32 (35.75 39.25 in"}},
    {"no_break_spaces", "Bust\u00a032 (35,\u00a036)\u00a0in", measures, {"bust: 32 (35 36 in"}},
    {"soft_hyphens", "Bu\u00adst 3\u00ad2 (35, 36) in", measures, {"bust: 32 (35 36 in"}},
    {"inch_marks", "Bust 32 (35, 36)\"", measures, {"bust: 32 (35 36 in"}},
    {"second_system_in_brackets",
     "Bust 32, 36, 40 in (81, 91, 101 cm)",
     measures,
     {"bust: 32 36 40 in", "bust: 81 91 101 cm"}},
    {"unit_in_the_name", "Chest (cm)\t84\t92\t100", measures, {"chest: 84 92 100 cm"}},
    {"two_shape_names", "Sizes XS (S, M, L) (XL, 2XL)\nMC Peat 3 balls", sizes, {"– (– – – (– –"}},
    {"ages", "To fit ages 0-3 (3-6, 6-12) months\nMC Peat 3 balls", sizes, {"– (– –"}},
    {"sizes_in_words", "Sizes: small, medium and large. MC: 3 balls", sizes, {"– – –"}},
    {"sizes_with_a_slash_in_the_name", "Size: S/M (L/XL)\nMC Peat 3 balls", sizes, {"– (–"}},
    {"sizes_by_slashes", "Sizes 34/36/38\nMC Peat 3 balls", sizes, {"34 36 38"}},
    {"two_sizes_by_a_slash", "Sizes 1/2\nMC Peat 3 balls", sizes, {"1 2"}},
    {"sizes_by_close_dashes", "Sizes XS–S–M–2XL\nMC Peat 3 balls", sizes, {"– – – –"}},
    {"sizes_by_close_dashes_in_figures", "Sizes 34-36-38\nMC Peat 3 balls", sizes, {"34 36 38"}},
    {"two_sizes_of_two_letters", "Sizes S-M (L-XL)\nMC Peat 3 balls", sizes, {"– (–"}},
    {"sizes_with_their_unit", "Sizes: 34\" (36\", 38\") bust\nMC Peat 3 balls", sizes, {"34 (36 38"}},
    {"slashed_names_in_turn", "Sizes XS/S (M/L) XL/2XL\nMC Peat 3 balls", sizes, {"– (– –"}},
    {"a_size_that_is_no_name", "Size: 130 x 170 cm / 51 x 67 in\nMC Peat 3 balls", sizes, {}},
    {"a_head_row", "          S      M      L\nBust     86     96    106   cm", sizes, {"– – –"}},
};
INSTANTIATE_TEST_SUITE_P(styles, ReadLists, ::testing::ValuesIn(cases),
                         [](const auto& one) { return std::string(one.param.name); });

TEST(ReadManuscriptLists, eight_values_for_nine_sizes_stay_eight) {
  const Reading reading =
      read_manuscript("Sizes 1 (2, 3, 4) (5, 6, 7, 8, 9)\nCC2 Gorse 33: 1 (1, 1, 1) (1, 1, 1, 1)");
  for (const Statement& statement : reading.statements)
    if (statement.kind == counts) {
      EXPECT_EQ(statement.values.size(), 8U);
    }
}

TEST(ReadManuscriptLists, values_keep_their_characters) {
  const std::string text = "Bust 3\u00ad2 (35¾, 3\u00a036)\u00a0in";
  const Reading reading = read_manuscript("Bust 3\u00ad2 (35¾, 36)\u00a0in");
  ASSERT_EQ(reading.statements.size(), 1U);
  const Statement& bust = reading.statements.front();
  const std::string read = "Bust 3\u00ad2 (35¾, 36)\u00a0in";
  ASSERT_EQ(bust.values.size(), 3U);
  EXPECT_EQ(words_at(read, bust.values[0].span), "3\u00ad2");
  EXPECT_EQ(words_at(read, bust.values[1].span), "35¾");
  EXPECT_EQ(words_at(read, bust.span), "3\u00ad2 (35¾, 36)\u00a0in");
  EXPECT_DOUBLE_EQ(bust.values[0].half_step, 0.5);
  EXPECT_DOUBLE_EQ(bust.values[1].half_step, 0.125);
}

TEST(ReadManuscriptLists, decimal_commas_of_what_has_no_value_a_size) {
  const std::string text =
      "Sizes S, M\nYarn: Oddmere Sock (75% wool, 25% nylon; 212,5 m per 50 g).\n"
      "Needles: 3,5 mm (US 4) for ribs, 2,25 mm circular.\nGauge: 22,5 sts and 30,5 rows = 10 cm.";
  EXPECT_THAT(said(text, StatementKind::needle), ElementsAre("ribs: 3.5 mm", "ribs: 4 US", "2.25 mm"));
  EXPECT_THAT(said(text, StatementKind::put_up_length), ElementsAre("212.5 m"));
  EXPECT_THAT(said(text, StatementKind::gauge_stitches), ElementsAre("22.5 sts"));
  EXPECT_THAT(said(text, StatementKind::gauge_rows), ElementsAre("30.5 rows"));
}

TEST(ReadManuscriptLists, one_value_of_several_sizes_is_said_of_all) {
  for (const Statement& statement :
       read_manuscript("Sizes 1 (2, 3)\nMC Peat: 2 (2, 3) balls\nCC Ember: 1 ball").statements)
    if (statement.kind == counts) {
      EXPECT_EQ(statement.all_sizes, statement.subject == "CC");
    }
  for (const Statement& statement : read_manuscript("Size 1\nMC Peat: 2 balls").statements)
    EXPECT_FALSE(statement.all_sizes);
}

TEST(ReadManuscriptLists, a_line_for_each_size) {
  const std::string lines =
      "Small: 2 skeins MC, 1 skein CC\nMedium: 3 skeins MC, 1 skein CC\nLarge: 3 skeins MC, 2 skeins CC\n";
  EXPECT_THAT(said(lines, sizes), ElementsAre("– – –"));
  EXPECT_THAT(said(lines, counts), ElementsAre("MC: 2 3 3 skeins", "CC: 1 1 2 skeins"));
  EXPECT_THAT(
      said("S: 5 balls; M: 6 balls; L: 7 balls of Oddmere Fieldspun (100% wool; 175 m per 50 g)", counts),
      ElementsAre("5 6 7 skeins"));
  // A colour that one size alone takes.
  EXPECT_THAT(said("Size S: 2 skeins MC\nSize M: 3 skeins MC, 1 skein CC\n", counts),
              ::testing::UnorderedElementsAre("MC: 2 3 skeins", "CC: – 1 skeins"));
  EXPECT_THAT(said("A: 2 skeins Peat\nB: 1 skein Ember\n", counts),
              ElementsAre("A: 2 skeins", "B: 1 skeins"));
}

TEST(ReadManuscriptLists, lists_for_some_of_the_sizes) {
  const std::string all = "Sizes 1, 2, 3, 4, 5, 6\n";
  const std::vector<std::string> both = {"MC: 4 5 5 6 6 7 skeins", "CC: 1 1 1 1 2 2 skeins"};
  EXPECT_THAT(said(all + "Sizes 1, 2, 3: MC 4, 5, 5 balls; CC 1, 1, 1 ball\n"
                         "Sizes 4, 5, 6: MC 6, 6, 7 balls; CC 1, 2, 2 balls\n",
                   counts),
              ::testing::ElementsAreArray(both));
  EXPECT_THAT(said("Sizes 1–3: 4, 5, 5 balls of MC. Sizes 4–6: 6, 6, 7 balls of MC", counts),
              ElementsAre("MC: 4 5 5 6 6 7 skeins"));
  const std::string named = "Sizes XS (S, M) and [L, XL, 2XL]\n";
  EXPECT_THAT(said(named + "4 (5, 5) and [6, 6, 7] balls MC", counts),
              ElementsAre("MC: 4 (5 5 (6 6 7 skeins"));
  EXPECT_THAT(said(named + "For sizes XS to M: 1 ball CC. For sizes L to 2XL: 2 balls CC.", counts),
              ElementsAre("CC: 1 1 1 2 2 2 skeins"));
  EXPECT_THAT(said(named + "For sizes L to 2XL: 2 balls CC.", counts), ElementsAre("CC: – – – 2 2 2 skeins"));
  for (const Statement& statement : read_manuscript(named + "Sizes XS-M take 1 ball of CC").statements)
    EXPECT_FALSE(statement.all_sizes);
}

TEST(ReadManuscriptLists, rows_of_a_table_by_size_are_not_understood) {
  const Reading reading = read_manuscript(
      "Yarn: Oddmere Fieldspun (100% wool; 175 m per 50 g)\n"
      "Size    Bust    Balls MC\nS       86 cm   5\nM       96 cm   6\n");
  for (const Statement& statement : reading.statements) {
    EXPECT_NE(statement.kind, counts);
    EXPECT_NE(statement.kind, measures);
  }
  EXPECT_GE(reading.not_understood.size(), 2U);
}

TEST(ReadManuscriptLists, a_note_in_the_brackets_is_no_list) {
  EXPECT_THAT(said("US 5 (3.75 mm), MC Peat: 2 balls", StatementKind::needle),
              ElementsAre("5 US", "3.75 mm"));
  EXPECT_THAT(said("MC Peat #204, 1 skein", counts), ElementsAre("MC: 1 skeins"));
  EXPECT_THAT(said("MC Peat: 175 m (191 yd)", counts), ElementsAre("MC: 175 m", "MC: 191 yd"));
}

}  // namespace
}  // namespace skeinproof
