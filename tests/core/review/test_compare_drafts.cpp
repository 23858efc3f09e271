// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/compare_drafts.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <map>

#include "core/base/text.h"
#include "core/manuscript/read_manuscript.h"
#include "core/pattern/edits.h"
#include "tests/support/samples.h"

namespace skeinproof {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using testing::quillmarsh;

std::vector<StatementChange> changes_between(const std::string& before, const std::string& after) {
  return compare_statements(before, read_manuscript(before), after, read_manuscript(after));
}
std::string replaced(std::string text, std::string_view before, std::string_view after) {
  const auto at = text.find(before);
  EXPECT_NE(at, std::string::npos) << before;
  return at == std::string::npos ? text : text.replace(at, before.size(), after);
}
std::string block() { return quillmarsh().draft()->text; }

TEST(CompareStatements, OnlyWhatChangedIsTold) {
  EXPECT_THAT(changes_between(block(), block()), IsEmpty());
  EXPECT_THAT(changes_between(block(), replaced(block(), "5 (5, 6, 7) (8, 7,", "5 (5,6,7) (8,  7,")),
              IsEmpty());
  const std::string after =
      replaced(replaced(block(), "197 yd", "191 yd"), "(8, 7, 9, 9, 10)", "(7, 8, 9, 9, 10)");
  const auto changes = changes_between(block(), after);
  ASSERT_EQ(changes.size(), 2U);
  EXPECT_EQ(changes[0].fate, StatementFate::changed);
  EXPECT_EQ(changes[0].kind, StatementKind::put_up_length);
  EXPECT_THAT(changes[0].before, HasSubstr("197"));
  EXPECT_THAT(changes[0].after, HasSubstr("191"));
  EXPECT_EQ(words_at(after, changes[0].is).substr(0, 3), "191");
  EXPECT_EQ(changes[1].kind, StatementKind::count);
  EXPECT_EQ(changes[1].subject, "MC");
}

TEST(CompareStatements, AddedAndGone) {
  const std::string more =
      replaced(block(), "CC3 Ember 40:", "CC4 Rowan 51: 1 (1, 1, 1) (1, 1, 1, 1, 1). CC3 Ember 40:");
  const auto fates = [](const std::vector<StatementChange>& changes, StatementFate fate) {
    std::map<StatementKind, int> kinds;
    for (const StatementChange& change : changes)
      if (change.fate == fate) ++kinds[change.kind];
    return kinds;
  };
  const auto added = changes_between(block(), more), gone = changes_between(more, block());
  EXPECT_EQ(fates(added, StatementFate::added)[StatementKind::shade_name], 1);
  EXPECT_EQ(fates(added, StatementFate::added)[StatementKind::count], 1);
  EXPECT_EQ(fates(gone, StatementFate::gone), fates(added, StatementFate::added));
  EXPECT_THAT(fates(added, StatementFate::changed), IsEmpty());
  EXPECT_EQ(changes_between("", block()).size(), read_manuscript(block()).statements.size());
}

TEST(CompareStatements, PlacesThatMovedAreTheSame) {
  EXPECT_THAT(changes_between("Needles 4 mm. Gauge 22 sts = 10 cm.", "Gauge 22 sts = 10 cm. Needles 4 mm."),
              IsEmpty());
}

TEST(DependentsNotMoved, ANewGaugeWithTheOldCounts) {
  const auto of = [](const std::string& before, const std::string& after) {
    return dependents_not_moved(before, read_manuscript(before), after, read_manuscript(after));
  };
  const std::string other_gauge = replaced(block(), "Gauge 26 sts", "Gauge 24 sts");
  const auto found = of(block(), other_gauge);
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0].what, "the gauge");
  EXPECT_NE(std::find(found[0].still.begin(), found[0].still.end(), StatementKind::count),
            found[0].still.end());
  EXPECT_THAT(of(block(), replaced(other_gauge, "5 (5, 6, 7)", "4 (5, 6, 7)")), IsEmpty());
  EXPECT_THAT(of(block(), block()), IsEmpty());
}

TEST(CompareDrafts, FindingsOpenedClosedAndStillOpen) {
  Pattern pattern = quillmarsh();
  const Assessment assessment = assess(pattern);
  const std::string closed = replaced(block(), "197 yd", "191 yd");
  add_draft(pattern, replaced(closed, "3.25 mm (US 3)", "3.25 mm (US 8)"));
  const DraftComparison comparison = compare_drafts(pattern, assessment, 0, 1);
  std::vector<std::string> closes, opens;
  for (const std::size_t i : comparison.findings.closes) closes.push_back(comparison.before[i].check);
  for (const std::size_t i : comparison.findings.opens) opens.push_back(comparison.after[i].check);
  EXPECT_THAT(closes, ElementsAre("P1"));
  EXPECT_THAT(opens, ElementsAre("G6"));
  EXPECT_EQ(comparison.findings.stays.size() + 1, comparison.before.size());
  EXPECT_EQ(comparison.statements.size(), 2U);
  EXPECT_EQ(findings_closed(pattern, assessment, review(pattern, assessment, {false})), 1U);
  // The other way round, what opened closes.
  const DraftComparison back = compare_drafts(pattern, assessment, 1, 0);
  EXPECT_EQ(back.findings.closes.size(), 1U);
  EXPECT_EQ(back.findings.opens.size(), 1U);
}

std::string told(const std::vector<WordRun>& runs) {
  std::string text;
  for (const WordRun& run : runs)
    text += (run.fate == WordFate::same   ? ""
             : run.fate == WordFate::gone ? "-"
                                          : "+") +
            ("[" + run.text + "]");
  return text;
}
std::string side(const std::vector<WordRun>& runs, WordFate left_out) {
  std::string text;
  for (const WordRun& run : runs)
    if (run.fate != left_out) text += run.text;
  return text;
}

std::string letters(std::string text) {
  text.erase(std::remove(text.begin(), text.end(), ' '), text.end());
  return text;
}

TEST(CompareWords, TheFewestWords) {
  EXPECT_EQ(told(compare_words("175 m / 197 yd per", "175 m / 191 yd per")),
            "[175 m / ]-[197 ]+[191 ][yd per]");
  EXPECT_EQ(told(compare_words("a b c a b b a", "c b a b a c")).find("+[c b a b a c]"), std::string::npos);
  EXPECT_THAT(compare_words("", ""), IsEmpty());
  EXPECT_EQ(told(compare_words("", "a b")), "+[a b]");
  EXPECT_EQ(told(compare_words("a b", "")), "-[a b]");
  // White space counts for nothing.
  EXPECT_EQ(told(compare_words("a  b\nc", "a b c\n")), "[a b c\n]");
}

// The example of the paper: five edits between ABCABBA and CBABAC.
TEST(CompareWords, FindsTheShortestScriptOfTheLiterature) {
  std::size_t edits = 0;
  for (const WordRun& run : compare_words("A B C A B B A", "C B A B A C"))
    if (run.fate != WordFate::same) edits += split(trimmed(run.text), ' ').size();
  EXPECT_EQ(edits, 5U);
}

// The length of the longest common subsequence by the table of Wagner and Fischer (1974).
std::size_t common(const std::vector<std::string>& a, const std::vector<std::string>& b) {
  std::vector<std::vector<std::size_t>> table(a.size() + 1, std::vector<std::size_t>(b.size() + 1, 0));
  for (std::size_t i = 1; i <= a.size(); ++i)
    for (std::size_t j = 1; j <= b.size(); ++j)
      table[i][j] =
          a[i - 1] == b[j - 1] ? table[i - 1][j - 1] + 1 : std::max(table[i - 1][j], table[i][j - 1]);
  return table[a.size()][b.size()];
}

RC_GTEST_PROP(CompareWords, KeepsAsMuchAsTheTableAndBothTexts, ()) {
  const auto text = *rc::gen::pair(
      rc::gen::container<std::vector<std::string>>(rc::gen::element<std::string>("a", "b", "c")),
      rc::gen::container<std::vector<std::string>>(rc::gen::element<std::string>("a", "b", "c")));
  const std::string before = join(text.first, " "), after = join(text.second, " ");
  const auto runs = compare_words(before, after);
  std::size_t same = 0;
  for (const WordRun& run : runs)
    if (run.fate == WordFate::same) same += split(trimmed(run.text), ' ').size();
  RC_ASSERT(same == common(text.first, text.second));
  RC_ASSERT(letters(side(runs, WordFate::gone)) == letters(after));
  RC_ASSERT(std::string(trimmed(side(runs, WordFate::added))).size() <=
            before.size() + 2 * text.first.size());
}

TEST(CompareWords, TextsWithNothingInCommonAndLongOnes) {
  std::string one, other;
  for (int i = 0; i < 20000; ++i) {
    one += "a" + std::to_string(i) + " ";
    other += (i % 100 == 0 ? "b" : "a") + std::to_string(i) + " ";
  }
  std::size_t gone = 0;
  for (const WordRun& run : compare_words(one, other)) gone += run.fate == WordFate::gone;
  EXPECT_EQ(gone, 200U);
  std::string foreign;
  for (int i = 0; i < 4000; ++i) foreign += "z" + std::to_string(i) + " ";
  const auto runs = compare_words(one, foreign);
  EXPECT_EQ(side(runs, WordFate::gone), foreign);
  EXPECT_EQ(side(runs, WordFate::added), one);
}

TEST(CompareBlock, TheHousesBlockAgainstTheSubmittedOne) {
  Pattern pattern = quillmarsh();
  const auto runs = compare_block(pattern, assess(pattern));
  std::string gone, added;
  for (const WordRun& run : runs) {
    if (run.fate == WordFate::gone) gone += run.text;
    if (run.fate == WordFate::added) added += run.text;
  }
  EXPECT_THAT(gone, HasSubstr("197"));
  EXPECT_THAT(added, HasSubstr("191"));
  // Of the instructions, nothing is compared.
  EXPECT_EQ(side(runs, WordFate::added).find("work 10 rounds rib"), std::string::npos);
  pattern.drafts = {};
  EXPECT_THAT(compare_block(pattern, assess(pattern)), IsEmpty());
}

}  // namespace
}  // namespace skeinproof
