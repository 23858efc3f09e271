// SPDX-License-Identifier: GPL-3.0-or-later
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/manuscript/facts_as_read.h"
#include "core/manuscript/read_manuscript.h"
#include "core/pattern/edits.h"
#include "core/pattern/size_line.h"
#include "tests/support/hand_reading.h"
#include "tests/support/samples.h"

namespace skeinproof {
namespace {

using Hand = testing::HandReading;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

FactsAsRead taken(const Pattern& pattern, const Hand& hand) {
  FactsAsRead facts = facts_as_read(pattern, hand.text, hand.reading);
  EXPECT_TRUE(check_invariants(facts.pattern));
  return facts;
}

std::vector<std::string> changed(const FactsAsRead& facts) {
  std::vector<std::string> words;
  for (const FactChange& change : facts.changes)
    words.push_back(change.what + ": " + change.before + " -> " + change.after);
  return words;
}

std::vector<double> figures(const PerSize<Entered<double>>& list, std::size_t sizes) {
  std::vector<double> values;
  for (std::size_t i = 0; i < sizes; ++i) values.push_back(list.find(i) ? list.find(i)->value : -1);
  return values;
}

std::vector<std::string> labels(const Pattern& pattern) { return size_line(pattern).labels; }

Pattern three_sizes() {
  Pattern pattern = new_pattern();
  set_sizes(pattern, *read_size_line("S (M, L)"));
  return pattern;
}

TEST(facts_as_read, of_a_text_that_says_nothing_change_nothing) {
  const Pattern pattern = testing::quillmarsh();
  const FactsAsRead facts = taken(pattern, Hand("A recipe for soup."));
  EXPECT_EQ(facts.pattern, pattern);
  EXPECT_THAT(facts.changes, IsEmpty());
  EXPECT_THAT(facts.left_out, IsEmpty());
}

TEST(facts_as_read, build_a_pattern_from_a_bare_block) {
  Hand hand(
      "Sizes S (M, L). Greyfell, 75% wool 25% alpaca, 175 m / 191 yd per 50 g ball; MC Peat 08: 4 (5, 6)");
  hand.list(StatementKind::size_labels, "S (M, L)");
  hand.say(StatementKind::yarn_name, "Greyfell").yarn = 0;
  const auto fibre = [&](std::string_view figure, std::string_view words) {
    Statement& statement = hand.list(StatementKind::fibre, figure);
    statement.words = words;
    statement.yarn = 0;
    statement.mention = 50;
  };
  fibre("75", "wool");
  fibre("25", "alpaca");
  const auto put_up = [&](std::string_view figure, StatementKind kind, PrintedUnit unit) {
    Statement& statement = hand.list(kind, figure);
    statement.yarn = 0;
    statement.unit = unit;
    statement.mention = 60;
  };
  put_up("175", StatementKind::put_up_length, PrintedUnit::metre);
  put_up("191", StatementKind::put_up_length, PrintedUnit::yard);
  put_up("50", StatementKind::put_up_weight, PrintedUnit::gram);
  hand.say(StatementKind::put_up_word, "ball").yarn = 0;
  hand.say(StatementKind::role, "MC", "MC");
  hand.say(StatementKind::shade_name, "Peat", "MC");
  hand.say(StatementKind::shade_number, "08", "MC");
  hand.list(StatementKind::count, "4 (5, 6)", "MC").unit = PrintedUnit::skein;

  const FactsAsRead facts = taken(new_pattern(), hand);
  EXPECT_THAT(labels(facts.pattern), ElementsAre("S", "M", "L"));
  ASSERT_EQ(facts.pattern.yarns.size(), 1u);
  const Yarn& yarn = facts.pattern.yarns[0];
  EXPECT_EQ(yarn.name, "Greyfell");
  ASSERT_EQ(yarn.composition.size(), 2u);
  EXPECT_EQ(yarn.composition[1].fibre, "alpaca");
  EXPECT_EQ(yarn.composition[1].percent.value, 25);
  EXPECT_EQ(yarn.put_up.length->value.value(), 175);
  EXPECT_EQ(yarn.put_up.length->typed, "175 m");
  EXPECT_EQ(yarn.put_up.weight->value.value(), 50);
  EXPECT_EQ(yarn.put_up.word, SkeinWord::ball);
  ASSERT_EQ(facts.pattern.roles.size(), 1u);
  const Role& role = facts.pattern.roles[0];
  EXPECT_EQ(role.label, "MC");
  EXPECT_EQ(role.yarn, yarn.id);
  EXPECT_EQ(role.shade.name, "Peat");
  EXPECT_EQ(role.shade.number, "08");
  EXPECT_THAT(figures(role.printed_count, 3), ElementsAre(4, 5, 6));
  EXPECT_THAT(changed(facts), ElementsAre("sizes: 1 -> S (M, L)", "yarn:  -> Greyfell",
                                          "fibres of Greyfell:  -> 75% wool, 25% alpaca",
                                          "put-up of Greyfell:  -> 175 m per 50 g ball", "role:  -> MC",
                                          "yarn of MC:  -> Greyfell", "shade of MC:  -> Peat 08",
                                          "skeins of MC:  -> 4 (5, 6)"));
}

TEST(facts_as_read, say_what_would_change_and_keep_what_is_not_spoken_of) {
  Pattern pattern = three_sizes();
  const YarnId yarn = add_yarn(pattern, "Greyfell");
  pattern.yarns[0].put_up.length = Entered<Metres>{metres(180), "180 m"};
  pattern.yarns[0].put_up.weight = Entered<Grams>{grams(50), "50 g"};
  add_role(pattern, "MC");
  pattern.roles[0].yarn = yarn;
  pattern.roles[0].printed_count = PerSize<Entered<double>>({Entered<double>{4, {}}, Entered<double>{5, {}}});
  Hand hand("GREYFELL 175 m; mc 4 (5, 7)");
  hand.say(StatementKind::yarn_name, "GREYFELL").yarn = 0;
  Statement& length = hand.list(StatementKind::put_up_length, "175");
  length.unit = PrintedUnit::metre;
  length.yarn = 0;
  hand.list(StatementKind::count, "4 (5, 7)", "mc");
  const FactsAsRead facts = taken(pattern, hand);
  EXPECT_THAT(changed(facts), ElementsAre("put-up of Greyfell: 180 m per 50 g skein -> 175 m per 50 g skein",
                                          "skeins of MC: 4 (5, –) -> 4 (5, 7)"));
  EXPECT_EQ(facts.pattern.yarns.size(), 1u);
  EXPECT_EQ(facts.pattern.roles.size(), 1u);
  EXPECT_EQ(facts.pattern.last_id, pattern.last_id);
}

TEST(facts_as_read, leave_out_lists_that_do_not_match_the_sizes) {
  Pattern pattern = three_sizes();
  add_role(pattern, "CC2");
  Hand hand("CC2: 1 (1); bust 80 (90, 100, 110) cm");
  hand.list(StatementKind::count, "1 (1)", "CC2");
  hand.list(StatementKind::measurement, "80 (90, 100, 110)", "bust").unit = PrintedUnit::centimetre;
  const FactsAsRead facts = taken(pattern, hand);
  EXPECT_THAT(facts.left_out, ElementsAre("bust: 4 values for 3 sizes", "CC2: 2 values for 3 sizes"));
  EXPECT_EQ(facts.pattern, pattern);
}

TEST(facts_as_read, count_the_sizes_by_the_lists_where_no_line_names_them) {
  Hand hand("MC 4 (5, 6); CC 1 (1, 1); DC 2");
  hand.list(StatementKind::count, "4 (5, 6)", "MC");
  hand.list(StatementKind::count, "1 (1, 1)", "CC");
  hand.list(StatementKind::count, "2", "DC").all_sizes = true;
  const FactsAsRead facts = taken(new_pattern(), hand);
  EXPECT_THAT(labels(facts.pattern), ElementsAre("1", "2", "3"));
  ASSERT_EQ(facts.pattern.roles.size(), 3u);
  EXPECT_THAT(figures(facts.pattern.roles[2].printed_count, 3), ElementsAre(2, 2, 2));
}

TEST(facts_as_read, put_further_sizes_between_those_in_force) {
  Pattern pattern = three_sizes();
  add_role(pattern, "MC");
  pattern.roles[0].printed_count =
      PerSize<Entered<double>>({Entered<double>{4, {}}, Entered<double>{5, {}}, Entered<double>{6, {}}});
  Hand hand("Sizes XS (S, M, L, XL)");
  hand.list(StatementKind::size_labels, "XS (S, M, L, XL)");
  const FactsAsRead facts = taken(pattern, hand);
  EXPECT_THAT(labels(facts.pattern), ElementsAre("XS", "S", "M", "L", "XL"));
  EXPECT_THAT(figures(facts.pattern.roles[0].printed_count, 5), ElementsAre(-1, 4, 5, 6, -1));
}

TEST(facts_as_read, of_some_sizes_take_none_away) {
  Pattern pattern = three_sizes();
  add_role(pattern, "MC");
  Hand hand("Sizes S, L; MC 4, 6");
  hand.list(StatementKind::size_labels, "S, L");
  hand.list(StatementKind::count, "4, 6", "MC");
  const FactsAsRead facts = taken(pattern, hand);
  EXPECT_THAT(labels(facts.pattern), ElementsAre("S", "M", "L"));
  EXPECT_THAT(figures(facts.pattern.roles[0].printed_count, 3), ElementsAre(4, -1, 6));
  EXPECT_THAT(facts.left_out, IsEmpty());
}

TEST(facts_as_read, do_not_take_a_size_named_twice) {
  Hand hand("Sizes 1 (2, 2); MC 4 (5, 6)");
  hand.list(StatementKind::size_labels, "1 (2, 2)");
  hand.list(StatementKind::count, "4 (5, 6)", "MC");
  const FactsAsRead facts = taken(new_pattern(), hand);
  EXPECT_THAT(labels(facts.pattern), ElementsAre("1", "2", "3"));
  EXPECT_THAT(facts.left_out, ElementsAre(HasSubstr("“2”")));
}

TEST(facts_as_read, keep_a_fact_that_is_what_is_printed_rounded) {
  Pattern pattern = three_sizes();
  add_yarn(pattern, "Greyfell");
  pattern.yarns[0].put_up.length = Entered<Metres>{metres(175), "175 m"};
  Hand hand("Greyfell 191 yd, 192 yd");
  hand.say(StatementKind::yarn_name, "Greyfell").yarn = 0;
  Statement length = hand.list(StatementKind::put_up_length, "191");
  length.unit = PrintedUnit::yard;
  length.values[0].half_step = 0.5;
  length.yarn = 0;
  hand.reading.statements.back() = length;
  EXPECT_THAT(taken(pattern, hand).changes, IsEmpty());
  hand.reading.statements.pop_back();
  length.values[0].number = 192;  // 175.56 m: more than half a yard away
  hand.reading.statements.push_back(length);
  EXPECT_THAT(changed(taken(pattern, hand)),
              ElementsAre("put-up of Greyfell: 175 m skein -> 175.565 m skein"));
}

TEST(facts_as_read, find_fabrics_by_name_structure_and_section) {
  Pattern pattern = three_sizes();
  const FabricId body = add_fabric(pattern, "ground");
  const FabricId yoke = add_fabric(pattern, "yoke pattern");
  pattern.fabrics[1].structure = Structure::stranded;
  add_piece(pattern, "Yoke");
  pattern.pieces[0].sections.push_back({});
  pattern.pieces[0].sections[0].id = take_id<SectionId>(pattern);
  pattern.pieces[0].sections[0].fabric = yoke;
  Hand hand(
      "24 sts and 32 rounds over 4 in in stockinette, washed; 26 sts in fancy brioche; 4 mm body, US 6 yoke");
  const auto gauge = [&](StatementKind kind, std::string_view words, int mention) -> Statement& {
    Statement& statement = hand.list(kind, words);
    statement.words = words;
    statement.mention = mention;
    return statement;
  };
  gauge(StatementKind::gauge_stitches, "24", 70);
  gauge(StatementKind::gauge_rows, "32", 70);
  gauge(StatementKind::gauge_worked, "rounds", 70);
  gauge(StatementKind::gauge_over, "4", 70).unit = PrintedUnit::inch;
  gauge(StatementKind::gauge_fabric, "stockinette", 70);
  gauge(StatementKind::gauge_state, "washed", 71);
  gauge(StatementKind::gauge_stitches, "26", 72);
  gauge(StatementKind::gauge_fabric, "fancy brioche", 72);
  Statement& main = hand.list(StatementKind::needle, "4", "stocking stitch");
  main.unit = PrintedUnit::millimetre;
  hand.list(StatementKind::needle, "6", "yoke").unit = PrintedUnit::needle_us;
  const FactsAsRead facts = taken(pattern, hand);
  const Fabric& ground = *facts.pattern.fabric(body);
  EXPECT_EQ(ground.gauge.stitches->value, 24);
  EXPECT_EQ(ground.gauge.rows->value, 32);
  EXPECT_EQ(ground.gauge.over.value.value(), 10);
  EXPECT_EQ(ground.gauge.state, GaugeState::washed);
  EXPECT_EQ(ground.gauge.worked, Worked::in_the_round);
  EXPECT_NEAR(ground.needle->value.value(), 0.4, 1e-9);
  EXPECT_FALSE(facts.pattern.fabric(yoke)->gauge.stitches);
  EXPECT_NEAR(facts.pattern.fabric(yoke)->needle->value.value(), 0.4, 1e-9);  // US 6 is 4 mm
  ASSERT_EQ(facts.pattern.fabrics.size(), 3u);
  EXPECT_EQ(facts.pattern.fabrics[2].name, "fancy brioche");
  EXPECT_EQ(facts.pattern.fabrics[2].structure, Structure::brioche);
  EXPECT_EQ(facts.pattern.fabrics[2].gauge.state, GaugeState::washed);
}

TEST(facts_as_read, leave_out_what_could_mean_several_fabrics) {
  Pattern pattern = three_sizes();
  add_fabric(pattern, "one");
  add_fabric(pattern, "another");
  Hand hand("24 sts; 4 mm");
  hand.list(StatementKind::gauge_stitches, "24");
  hand.list(StatementKind::needle, "4").unit = PrintedUnit::millimetre;
  const FactsAsRead facts = taken(pattern, hand);
  EXPECT_EQ(facts.pattern, pattern);
  EXPECT_THAT(facts.left_out, ElementsAre(HasSubstr("“24”"), HasSubstr("4 mm")));
}

TEST(facts_as_read, take_a_needle_for_nothing_in_particular_where_all_are_worked_with_it) {
  Pattern pattern = three_sizes();
  for (const char* name : {"one", "another"}) {
    add_fabric(pattern, name);
    pattern.fabrics.back().needle = Entered<Centimetres>{centimetres(0.4), "4 mm"};
  }
  Hand hand("4 mm");
  hand.list(StatementKind::needle, "4").unit = PrintedUnit::millimetre;
  EXPECT_THAT(taken(pattern, hand).left_out, IsEmpty());
  pattern.fabrics.back().needle.reset();
  EXPECT_THAT(taken(pattern, hand).left_out, ElementsAre(HasSubstr("4 mm")));
}

TEST(facts_as_read, take_the_longest_length_of_a_note_as_at_most) {
  Pattern pattern = three_sizes();
  add_role(pattern, "CC");
  Hand hand("CC (65, 90, 125 m used)");
  hand.say(StatementKind::role, "CC", "CC");
  hand.list(StatementKind::length_note, "65, 90, 125", "CC").unit = PrintedUnit::metre;
  const FactsAsRead facts = taken(pattern, hand);
  EXPECT_EQ(facts.pattern.roles[0].printed_at_most->value.value(), 125);
  EXPECT_EQ(facts.pattern.roles[0].printed_note, "65, 90, 125");
}

TEST(facts_as_read, take_a_bound_before_other_lengths_of_a_role) {
  Pattern pattern = three_sizes();
  add_role(pattern, "CC");
  Hand hand("CC needs 40 (41, 42) m, at most 45 m");
  hand.say(StatementKind::role, "CC", "CC");
  hand.list(StatementKind::length_note, "40 (41, 42)", "CC").unit = PrintedUnit::metre;
  Statement& bound = hand.list(StatementKind::length_note, "45", "CC");
  bound.unit = PrintedUnit::metre;
  bound.qualifier = "at most";
  EXPECT_EQ(taken(pattern, hand).pattern.roles[0].printed_at_most->value.value(), 45);
}

TEST(facts_as_read, colours_without_a_label_stay_apart) {
  const std::string text =
      "Sizes S (M, L)\nYarn: Greyfell (75% wool, 25% alpaca; 175 m per 50 g)\n"
      "4 (5, 6) balls in Peat 08\n1 (1, 2) balls in Ember 40\n";
  const FactsAsRead facts = facts_as_read(new_pattern(), text, read_manuscript(text));
  ASSERT_EQ(facts.pattern.roles.size(), 2U);
  EXPECT_EQ(facts.pattern.roles[0].shade.name, "Peat");
  EXPECT_EQ(facts.pattern.roles[1].shade.name, "Ember");
  EXPECT_THAT(figures(facts.pattern.roles[0].printed_count, 3), ElementsAre(4, 5, 6));
  EXPECT_THAT(figures(facts.pattern.roles[1].printed_count, 3), ElementsAre(1, 1, 2));
  // Read again they are the same two.
  EXPECT_THAT(facts_as_read(facts.pattern, text, read_manuscript(text)).changes, IsEmpty());
}

TEST(facts_as_read, sides_of_a_rectangle_are_left_out_and_said) {
  const std::string text = "Finished size 75 x 90 cm\nYarn: Greyfell (100% wool; 175 m per 50 g)\n";
  const FactsAsRead facts = facts_as_read(new_pattern(), text, read_manuscript(text));
  EXPECT_THAT(facts.pattern.measurements, IsEmpty());
  EXPECT_THAT(facts.left_out, ::testing::Contains(HasSubstr("75 cm: of what is not said")));
}

TEST(facts_as_read, say_that_counts_in_grams_are_no_skeins) {
  Pattern pattern = three_sizes();
  add_role(pattern, "MC");
  Hand hand("MC 200 (220, 240) g");
  hand.list(StatementKind::count, "200 (220, 240)", "MC").unit = PrintedUnit::gram;
  const FactsAsRead facts = taken(pattern, hand);
  EXPECT_EQ(facts.pattern, pattern);
  EXPECT_THAT(facts.left_out, ElementsAre(HasSubstr("counted in g")));
}

TEST(facts_as_read, of_thousands_of_roles_take_the_first_two_hundred) {
  Hand hand("R");
  for (int i = 0; i < 5000; ++i) {
    Statement role;
    role.kind = StatementKind::role;
    role.subject = "CC" + std::to_string(i + 1);
    role.mention = i;
    hand.reading.statements.push_back(role);
  }
  const FactsAsRead facts = taken(new_pattern(), hand);
  EXPECT_EQ(facts.pattern.roles.size(), 200u);
  EXPECT_THAT(facts.left_out, ElementsAre(HasSubstr("5000")));
}

}  // namespace
}  // namespace skeinproof
