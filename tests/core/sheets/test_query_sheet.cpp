// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheets/query_sheet.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "core/pattern/edits.h"
#include "core/sheets/write_sheet.h"
#include "tests/support/samples.h"

namespace skeinproof {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;
using testing::quillmarsh;

// Without the search for likely slips, which takes most of the time.
struct Desk {
  Pattern pattern = quillmarsh();
  Assessment assessment = assess(pattern);
  Review found = review(pattern, assessment, {false});

  std::size_t cause_of(std::string_view check) const {
    for (std::size_t c = 0; c < found.causes.size(); ++c)
      for (const std::size_t f : found.causes[c].findings)
        if (found.findings[f].check == check) return c;
    ADD_FAILURE() << "no finding of " << check;
    return 0;
  }
  Sheet queries() const { return query_sheet(pattern, found, record_of(pattern, found), "12 May"); }
  Sheet sign_off() const {
    return sign_off_note(pattern, found, record_of(pattern, found),
                         findings_closed(pattern, assessment, found));
  }
  void look_again(bool slips = false) { found = review(pattern, assessment, {slips}); }
};

std::vector<Heading> headings(const Sheet& sheet) {
  std::vector<Heading> all;
  for (const SheetPart& part : sheet.parts)
    if (const auto* heading = std::get_if<Heading>(&part)) all.push_back(*heading);
  return all;
}

TEST(QuerySheet, EveryTickedQueryWithItsWordsWorkingAndBoxes) {
  Desk desk;
  desk.look_again(true);
  const Sheet sheet = desk.queries();
  const Record record = record_of(desk.pattern, desk.found);
  const auto asked = headings(sheet);
  EXPECT_EQ(asked.size(),
            static_cast<std::size_t>(std::count_if(record.decisions.begin(), record.decisions.end(),
                                                   [](const Decision& one) { return one.on_sheet; })));
  EXPECT_TRUE(std::is_sorted(asked.begin(), asked.end(), [](const Heading& a, const Heading& b) {
    return a.word == "Stop" && b.word != "Stop";
  }));
  EXPECT_EQ(asked.front().number, "Q1");
  const auto boxes = std::count_if(sheet.parts.begin(), sheet.parts.end(), [](const SheetPart& part) {
    return std::holds_alternative<Choices>(part);
  });
  EXPECT_EQ(static_cast<std::size_t>(boxes), asked.size());
  const std::string text = plain_text(sheet);
  EXPECT_THAT(text, HasSubstr("Quillmarsh Yoke: queries"));
  EXPECT_THAT(text, HasSubstr("12 May"));
  EXPECT_THAT(text, HasSubstr("[ ] exchange “8” and “7”"));
  EXPECT_THAT(text, HasSubstr("[ ] change “197” to “191”"));
  EXPECT_THAT(text, HasSubstr("[ ] keep as it is, because: ____"));
  // A value that is missing is shown where it would stand.
  EXPECT_THAT(text,
              HasSubstr("[ ] put in “, 1”: “1 (1, 1, 1) (1, 1, 1, 1)” → “1 (1, 1, 1) (1, 1, 1, 1, 1)”"));
  EXPECT_THAT(text, HasSubstr("Not checked: "));
}

TEST(QuerySheet, HoldsOnlyWhatIsTicked) {
  Desk desk;
  const std::size_t put_up = desk.cause_of("P1");
  EXPECT_THAT(plain_text(desk.queries()), HasSubstr("197"));
  set_on_sheet(desk.pattern, desk.found, put_up, OnSheet::no);
  const std::string without = plain_text(desk.queries());
  EXPECT_THAT(without, Not(HasSubstr("197 yd = ")));
  const std::string number = "Q" + std::to_string(put_up + 1);
  for (const Heading& heading : headings(desk.queries())) EXPECT_NE(heading.number, number);
  for (std::size_t c = 0; c < desk.found.causes.size(); ++c)
    set_on_sheet(desk.pattern, desk.found, c, OnSheet::no);
  EXPECT_THAT(plain_text(desk.queries()), HasSubstr("We have no questions."));
}

TEST(QuerySheet, LapsedDecisionsAreAskedAgainAndSaySo) {
  Desk desk;
  const std::size_t cause = desk.cause_of("P1");
  keep(desk.pattern, desk.found, cause, {"as on the band", "the designer", ""});
  EXPECT_THAT(plain_text(desk.queries()), Not(HasSubstr("as on the band")));
  desk.pattern.queries.front().rested_on = "otherwise";
  EXPECT_THAT(plain_text(desk.queries()),
              HasSubstr("Kept before, because: as on the band. What that rested on"));
}

TEST(QuerySheet, IsEscapedInHtml) {
  Desk desk;
  const std::size_t cause = desk.cause_of("P1");
  set_wording(desk.pattern, desk.found, cause, "<b>Which?</b> & \"why\"");
  desk.pattern.title = "<i>Yoke</i>";
  const std::string page = html(desk.queries());
  EXPECT_THAT(page, HasSubstr("&lt;b&gt;Which?&lt;/b&gt; &amp; &quot;why&quot;"));
  EXPECT_THAT(page, Not(HasSubstr("<i>Yoke")));
  EXPECT_THAT(page, HasSubstr("<h2><span class=\"number\">Q1</span>"));
}

TEST(SignOff, SaysWhatWasCheckedClosedKeptAndNotChecked) {
  Desk desk;
  EXPECT_THAT(plain_text(desk.sign_off()), HasSubstr("draft 1, 0 findings closed. Still there: "));
  const std::size_t put_up = desk.cause_of("P1");
  ASSERT_TRUE(accept(desk.pattern, desk.found, put_up, {"yes", "the designer", "14 May"}));
  desk.look_again();
  const std::size_t needle = desk.cause_of("G6");
  keep(desk.pattern, desk.found, needle, {"my needles say so", "the designer", "14 May"});
  const std::string note = plain_text(desk.sign_off());
  EXPECT_THAT(note, HasSubstr("Checked: " + std::to_string(desk.found.checks_run) +
                              " rules, draft 1, 1 finding closed, "
                              "1 kept by the designer (Q" +
                              std::to_string(needle + 1) + ")."));
  EXPECT_THAT(note, HasSubstr("Not checked: "));
  EXPECT_THAT(note, HasSubstr("my needles say so"));
  EXPECT_THAT(note, HasSubstr("laid over the draft"));
  add_draft(desk.pattern, "Nothing of the kind.");
  desk.look_again();
  EXPECT_THAT(plain_text(desk.sign_off()), HasSubstr("words not found in the draft"));
}

TEST(DraftsSheet, TellsStatementsAndFindings) {
  Desk desk;
  std::string next = desk.pattern.draft()->text;
  next.replace(next.find("197 yd"), 6, "191 yd");
  next.replace(next.find("Gauge 26"), 8, "Gauge 24");
  add_draft(desk.pattern, next);
  const std::string text =
      plain_text(drafts_sheet(desk.pattern, compare_drafts(desk.pattern, desk.assessment, 0, 1)));
  EXPECT_THAT(text, HasSubstr("Statements that differ: 2."));
  EXPECT_THAT(text, HasSubstr("put-up length"));
  EXPECT_THAT(text, HasSubstr("the gauge"));
  EXPECT_THAT(text, HasSubstr("Closed"));
}

TEST(BlockComparison, MarksWordsInLettersToo) {
  Desk desk;
  const std::string text = plain_text(block_comparison_sheet(desk.pattern, desk.assessment));
  EXPECT_THAT(text, HasSubstr("[was: "));
  EXPECT_THAT(text, HasSubstr("[is: "));
  EXPECT_THAT(html(block_comparison_sheet(desk.pattern, desk.assessment)), HasSubstr("class=\"gone\""));
  desk.pattern.drafts = {};
  EXPECT_THAT(plain_text(block_comparison_sheet(desk.pattern, desk.assessment)),
              HasSubstr("no submitted block"));
}

}  // namespace
}  // namespace skeinproof
