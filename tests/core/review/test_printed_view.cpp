// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "core/need/assessment.h"
#include "core/pattern/edits.h"
#include "core/pattern/size_line.h"
#include "core/review/printed_view.h"
#include "tests/support/hand_reading.h"
#include "tests/support/samples.h"

namespace skeinproof {
namespace {

using Hand = testing::HandReading;

PrintedView view_of(const Hand& hand, const Pattern& pattern) { return {hand.text, hand.reading, pattern}; }

std::vector<std::string> laid(const PrintedView& view, const PrintedList& list) {
  std::vector<std::string> words;
  for (const PrintedValue* value : list.values)
    words.emplace_back(value == nullptr ? "gap" : view.words(*value));
  return words;
}
using Words = std::vector<std::string>;

Pattern five_sizes() {
  Pattern pattern = new_pattern();
  set_sizes(pattern, *read_size_line("1 (2, 3) (4, 5)"));
  return pattern;
}

TEST(printed_view, lays_a_whole_list_along_the_sizes) {
  Hand hand("Sizes S (M, L) (X, Y). MC: 5 (5, 6) (7, 8) skeins.");
  hand.list(StatementKind::size_labels, "S (M, L) (X, Y)");
  hand.say(StatementKind::role, "MC", "MC");
  hand.list(StatementKind::count, "5 (5, 6) (7, 8)", "MC").unit = PrintedUnit::skein;
  const Pattern pattern = new_pattern();
  const PrintedView view = view_of(hand, pattern);
  EXPECT_EQ(view.size_labels(), (Words{"S", "M", "L", "X", "Y"}));
  ASSERT_TRUE(view.role("mc") != nullptr && view.role("MC")->count);
  const PrintedList& count = *view.role("MC")->count;
  EXPECT_TRUE(count.complete);
  EXPECT_EQ(count.printed, 5u);
  EXPECT_EQ(laid(view, count), (Words{"5", "5", "6", "7", "8"}));
  EXPECT_EQ(view.index(*count.statement), 2u);
  EXPECT_EQ(view.role("CC"), nullptr);
}

TEST(printed_view, puts_the_gap_at_the_end_of_the_short_group) {
  const Pattern pattern = five_sizes();
  Hand hand("CC 1 (2, 3) (4); DC 1 (2) (4, 5); EC 1 (2, 3, 4); FC 1 (2, –) (4, 5); GC 1 2 3 4 5 6");
  const char* lists[] = {"1 (2, 3) (4)", "1 (2) (4, 5)", "1 (2, 3, 4)", "1 (2, –) (4, 5)", "1 2 3 4 5 6"};
  for (const char* list : lists) hand.list(StatementKind::count, list, std::string(list));
  const PrintedView view = view_of(hand, pattern);
  const Words expected[] = {{"1", "2", "3", "4", "gap"},
                            {"1", "2", "gap", "4", "5"},
                            {"1", "2", "3", "4", "gap"},
                            {"1", "2", "gap", "4", "5"},
                            {"1", "2", "3", "4", "5"}};
  for (std::size_t i = 0; i < std::size(lists); ++i) {
    const PrintedList& list = *view.roles().at(i).count;
    EXPECT_EQ(laid(view, list), expected[i]) << lists[i];
    EXPECT_EQ(list.complete, i == 3) << lists[i];
  }
}

TEST(printed_view, takes_one_value_for_all_sizes_only_where_it_is_said) {
  const Pattern pattern = five_sizes();
  Hand hand("MC 2 skeins, CC 3 skeins in all sizes");
  hand.list(StatementKind::count, "2", "MC");
  hand.list(StatementKind::count, "3", "CC").all_sizes = true;
  const PrintedView view = view_of(hand, pattern);
  EXPECT_EQ(laid(view, *view.role("MC")->count), (Words{"2", "gap", "gap", "gap", "gap"}));
  EXPECT_FALSE(view.role("MC")->count->complete);
  EXPECT_EQ(laid(view, *view.role("CC")->count), (Words{"3", "3", "3", "3", "3"}));
  EXPECT_TRUE(view.role("CC")->count->complete);
}

TEST(printed_view, takes_the_metric_figures_of_the_first_mention) {
  Hand hand("Greyfell 191 yd / 175 m per 50 g; later Greyfell 160 m; Moorling 100 yd per 2 oz");
  hand.say(StatementKind::yarn_name, "Greyfell").yarn = 0;
  const auto put_up = [&](std::string_view words, StatementKind kind, PrintedUnit unit, int yarn,
                          int mention) {
    Statement& statement = hand.list(kind, words);
    statement.unit = unit;
    statement.yarn = yarn;
    statement.mention = mention;
  };
  put_up("191", StatementKind::put_up_length, PrintedUnit::yard, 0, 90);
  put_up("175", StatementKind::put_up_length, PrintedUnit::metre, 0, 90);
  put_up("50", StatementKind::put_up_weight, PrintedUnit::gram, 0, 90);
  put_up("160", StatementKind::put_up_length, PrintedUnit::metre, 0, 91);
  hand.say(StatementKind::yarn_name, "Moorling").yarn = 1;
  put_up("100", StatementKind::put_up_length, PrintedUnit::yard, 1, 92);
  put_up("2", StatementKind::put_up_weight, PrintedUnit::ounce, 1, 92);
  Pattern pattern = new_pattern();
  const YarnId greyfell = add_yarn(pattern, "GREYFELL");
  const PrintedView view = view_of(hand, pattern);
  ASSERT_EQ(view.yarns().size(), 2u);
  const PrintedYarn& first = view.yarns()[0];
  EXPECT_EQ(first.name, "Greyfell");
  EXPECT_EQ(first.fact, greyfell);
  EXPECT_EQ(first.metres, 175);
  EXPECT_EQ(first.grams, 50);
  EXPECT_EQ(first.lengths.size(), 3u);
  EXPECT_EQ(view.mentioned_with(*first.lengths[0]).size(), 3u);
  const PrintedYarn& second = view.yarns()[1];
  EXPECT_FALSE(second.fact);
  EXPECT_NEAR(*second.metres, 91.44, 1e-9);   // 1 yd = 0.9144 m by definition
  EXPECT_NEAR(*second.grams, 56.699, 0.001);  // 1 oz = 28.349523125 g by definition
}

TEST(printed_view, gathers_what_is_said_of_a_role_and_finds_it_in_the_facts) {
  Pattern pattern = five_sizes();
  const YarnId yarn = add_yarn(pattern, "Greyfell");
  const RoleId role = add_role(pattern, "CC1");
  add_role(pattern, "MC");
  Hand hand("Greyfell; cc1 Gorse 33: 40 g, 1 skein (about 80 m)");
  hand.say(StatementKind::yarn_name, "Greyfell").yarn = 0;
  hand.say(StatementKind::role, "cc1", "cc1");
  hand.say(StatementKind::shade_name, "Gorse", "cc1");
  hand.say(StatementKind::shade_number, "33", "cc1");
  hand.list(StatementKind::count, "40", "cc1").unit = PrintedUnit::gram;
  hand.list(StatementKind::count, "1", "cc1").unit = PrintedUnit::skein;
  hand.list(StatementKind::length_note, "80", "cc1").unit = PrintedUnit::metre;
  const PrintedView view = view_of(hand, pattern);
  ASSERT_EQ(view.roles().size(), 1u);
  const PrintedRole& printed = view.roles().front();
  EXPECT_EQ(printed.label, "cc1");
  EXPECT_EQ(printed.fact, role);
  EXPECT_EQ(printed.yarn, 0);
  EXPECT_EQ(view.yarns()[0].fact, yarn);
  EXPECT_EQ(printed.shade->words, "Gorse");
  EXPECT_EQ(printed.number->words, "33");
  EXPECT_EQ(view.words(*printed.count->values[0]), "1");
  EXPECT_EQ(printed.notes.size(), 1u);
}

TEST(printed_view, of_an_empty_text_holds_the_sizes_in_force) {
  const Pattern pattern = five_sizes();
  const PrintedView view("", Reading{}, pattern);
  EXPECT_EQ(view.sizes(), 5u);
  EXPECT_EQ(view.sizes_line(), nullptr);
  EXPECT_TRUE(view.yarns().empty());
  EXPECT_TRUE(view.roles().empty());
  EXPECT_FALSE(view.total());
}

TEST(occurrence, counts_every_place_where_the_words_begin) {
  const std::string text = "1, 1, 1, 1";
  for (const std::size_t begin : {0u, 3u, 6u}) {
    const TextSpan span{begin, begin + 4};
    const int occurrence = occurrence_of(text, span);
    EXPECT_EQ(occurrence, static_cast<int>(begin) / 3 + 1);
    EXPECT_EQ(span_of(text, "1, 1", occurrence), span);
  }
  EXPECT_FALSE(span_of(text, "1, 1", 4));
  EXPECT_FALSE(span_of(text, "2", 1));
  EXPECT_FALSE(span_of(text, "", 1));
  EXPECT_FALSE(span_of(text, "1", 0));
}

Query reply(QueryAnswer answer, std::string before, std::string after, int occurrence = 1) {
  Query query;
  query.answer = answer;
  query.before = std::move(before);
  query.after = std::move(after);
  query.occurrence = occurrence;
  return query;
}

TEST(printed_text, lays_recorded_replies_over_the_draft) {
  Pattern pattern = new_pattern();
  add_draft(pattern, "MC 5 (5, 6) (8, 7). Total 9. 175 m / 197 yd.");
  pattern.queries = {reply(QueryAnswer::accepted, "197", "191"),
                     reply(QueryAnswer::amended, "5", "4", 2),
                     reply(QueryAnswer::kept, "Total 9", "Total 10"),
                     reply(QueryAnswer::none, "MC", "CC"),
                     reply(QueryAnswer::accepted, "8, 7", "7, 8"),
                     reply(QueryAnswer::accepted, "gone from this draft", "x")};
  EXPECT_EQ(printed_text(pattern, assess(pattern)), "MC 5 (4, 6) (7, 8). Total 9. 175 m / 191 yd.");
}

TEST(printed_text, takes_the_later_of_two_replies_to_the_same_words) {
  Pattern pattern = new_pattern();
  add_draft(pattern, "175 m / 197 yd per 50 g");
  pattern.queries = {reply(QueryAnswer::accepted, "197", "191"),
                     reply(QueryAnswer::amended, "175 m / 197 yd", "180 m / 197 yd")};
  EXPECT_EQ(printed_text(pattern, assess(pattern)), "180 m / 197 yd per 50 g");
}

TEST(printed_text, without_a_draft_is_the_block_with_sizes_gauge_and_needles) {
  Pattern pattern = testing::quillmarsh();
  pattern.drafts = {};
  const std::string text = printed_text(pattern, assess(pattern));
  for (const char* words : {"Sizes 1 (2, 3, 4) (5, 6, 7, 8, 9).", "175 m / 191 yd per 50 g / 1¾ oz skein",
                            "26 sts and 34 rounds = 10 cm / 4 in", "3.25 mm (US 3)", "at most 80 m / 87 yd"})
    EXPECT_NE(text.find(words), std::string::npos) << words << "\n" << text;
  EXPECT_LT(text.find("Sizes"), text.find("Oddmere"));
  EXPECT_EQ(text.find("Notions"), std::string::npos);
}

TEST(printed_text, prints_no_element_that_the_facts_do_not_hold) {
  Pattern pattern = new_pattern();
  add_yarn(pattern, "Greyfell");
  add_role(pattern, "MC");
  const std::string text = printed_text(pattern, assess(pattern));
  for (const char* word : {"Gauge", "Needles", "Notions", "Size"})
    EXPECT_EQ(text.find(word), std::string::npos) << text;
}

}  // namespace
}  // namespace skeinproof
