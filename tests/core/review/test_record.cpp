// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/record.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "core/pattern/edits.h"
#include "core/review/printed_view.h"
#include "core/review/query_wording.h"
#include "tests/support/samples.h"

namespace skeinproof {
namespace {

using ::testing::HasSubstr;
using ::testing::IsEmpty;
using testing::quillmarsh;

// Without the search for likely slips, which takes most of the time.
Review reviewed(const Pattern& pattern) { return review(pattern, assess(pattern), {false}); }

// The cause that holds a finding of a check which shows these words.
std::size_t cause_of(const Review& review, std::string_view check, std::string_view shows = {}) {
  for (std::size_t c = 0; c < review.causes.size(); ++c)
    for (const std::size_t f : review.causes[c].findings) {
      const Finding& finding = review.findings[f];
      const bool shown =
          shows.empty() || std::any_of(finding.places.begin(), finding.places.end(), [&](auto& at) {
            return words_at(review.text, at).find(shows) != std::string_view::npos;
          });
      if (finding.check == check && shown) return c;
    }
  ADD_FAILURE() << "no finding of " << check << " at " << shows;
  return 0;
}
bool finds(const Review& review, std::string_view check) {
  return std::any_of(review.findings.begin(), review.findings.end(),
                     [&](const Finding& finding) { return finding.check == check; });
}

void change_draft(Pattern& pattern, std::string_view before, std::string_view after) {
  pattern.drafts.edit([&](std::vector<Draft>& drafts) {
    const auto at = drafts.back().text.find(before);
    ASSERT_NE(at, std::string::npos) << before;
    drafts.back().text.replace(at, before.size(), after);
  });
}

TEST(Record, StopAndAskAreOnTheSheetUntilToldOtherwise) {
  Pattern pattern = quillmarsh();
  const Review review = reviewed(pattern);
  const Record record = record_of(pattern, review);
  ASSERT_EQ(record.decisions.size(), review.causes.size());
  EXPECT_THAT(record.closed, IsEmpty());
  for (std::size_t c = 0; c < record.decisions.size(); ++c) {
    const Decision& decision = record.decisions[c];
    const Severity severity = review.findings[decision.finding].severity;
    EXPECT_EQ(decision.number, "Q" + std::to_string(c + 1));
    EXPECT_EQ(decision.on_sheet, severity == Severity::stop || severity == Severity::ask);
    EXPECT_EQ(decision.wording, review.findings[decision.finding].query);
    EXPECT_EQ(decision.state, DecisionState::open);
  }
  const std::size_t asked = cause_of(review, "P1");
  set_on_sheet(pattern, review, asked, OnSheet::no);
  EXPECT_FALSE(record_of(pattern, review).decisions[asked].on_sheet);
  set_on_sheet(pattern, review, asked, OnSheet::yes);
  EXPECT_TRUE(record_of(pattern, review).decisions[asked].on_sheet);
  EXPECT_EQ(pattern.queries.size(), 1U);
  EXPECT_TRUE(check_invariants(pattern));
}

TEST(Record, AcceptLaysTheProposalOverTheDraft) {
  Pattern pattern = quillmarsh();
  const Review before = reviewed(pattern);
  const std::size_t cause = cause_of(before, "P1");
  ASSERT_TRUE(accept(pattern, before, cause, {"yes", "designer", "12 May"}));
  const Query& row = pattern.queries.back();
  EXPECT_EQ(row.answer, QueryAnswer::accepted);
  EXPECT_EQ(row.reply, "yes");
  // Figures alone would be found again anywhere.
  EXPECT_THAT(row.before, HasSubstr("197"));
  EXPECT_GT(row.before.size(), 3U);
  const Review after = reviewed(pattern);
  EXPECT_THAT(after.text, HasSubstr("175 m / 191 yd per 50 g"));
  EXPECT_FALSE(finds(after, "P1"));
  const Record record = record_of(pattern, after);
  ASSERT_EQ(record.closed.size(), 1U);
  EXPECT_EQ(record.closed.front().state, ReplyState::laid_over);
  reopen(pattern, record.closed.front().row.id);
  EXPECT_THAT(pattern.queries, IsEmpty());
  EXPECT_EQ(reviewed(pattern).text, before.text);
}

TEST(Record, TheLikelySlipIsTheProposal) {
  Pattern pattern = quillmarsh();
  const Review before = review(pattern, assess(pattern));
  const std::size_t cause = cause_of(before, "L3");
  ASSERT_TRUE(before.causes[cause].slip);
  EXPECT_EQ(words_at(before.text, words_in_question(before, cause)), "8, 7");
  ASSERT_TRUE(accept(pattern, before, cause, {}));
  EXPECT_THAT(reviewed(pattern).text, HasSubstr("MC Peat 08: 5 (5, 6, 7) (7, 8, 9, 9, 10) skeins"));
  EXPECT_FALSE(finds(reviewed(pattern), "L3"));
}

TEST(Record, AcceptingEveryProposalLaysEachOverTheOthers) {
  Pattern pattern = quillmarsh();
  const std::size_t at_first = reviewed(pattern).findings.size();
  int accepted = 0;
  for (; accepted < 30; ++accepted) {
    const Review review = reviewed(pattern);
    const Record record = record_of(pattern, review);
    std::size_t c = 0;
    while (c < record.decisions.size() &&
           (!record.decisions[c].undecided() || proposed_answer(review, c).empty()))
      ++c;
    if (c == record.decisions.size()) break;
    const std::string expected = edited(review.text, proposed_answer(review, c));
    ASSERT_TRUE(accept(pattern, review, c, {}));
    ASSERT_EQ(printed_text(pattern, assess(pattern)), expected) << "step " << accepted;
  }
  EXPECT_GE(accepted, 3);
  const Review last = reviewed(pattern);
  EXPECT_LT(last.findings.size(), at_first);
  EXPECT_THAT(last.text, HasSubstr("175 m / 191 yd"));
  EXPECT_TRUE(check_invariants(pattern));
}

TEST(Record, AnAnswerOfOnesOwnTakesThePlaceOfTheWordsInQuestion) {
  Pattern pattern = quillmarsh();
  const Review before = reviewed(pattern);
  const std::size_t cause = cause_of(before, "P1");
  EXPECT_EQ(words_at(before.text, words_in_question(before, cause)), "197");
  ASSERT_TRUE(amend(pattern, before, cause, "195", {}));
  const Review after = reviewed(pattern);
  EXPECT_THAT(after.text, HasSubstr("175 m / 195 yd"));
  // Still no conversion of 175 m: the answer stands, and so does the finding.
  const Record record = record_of(pattern, after);
  const std::size_t again = cause_of(after, "P1");
  EXPECT_EQ(record.decisions[again].state, DecisionState::answered);
  EXPECT_FALSE(record.decisions[again].on_sheet);
  ASSERT_TRUE(amend(pattern, after, again, "191", {}));
  EXPECT_EQ(pattern.queries.size(), 1U);
  EXPECT_FALSE(finds(reviewed(pattern), "P1"));
  EXPECT_THAT(pattern.queries.front().before, HasSubstr("197"));
}

TEST(Record, KeptLapsesWhenWhatItRestsOnChanges) {
  Pattern pattern = quillmarsh();
  const Review first = reviewed(pattern);
  const std::size_t cause = cause_of(first, "P1");
  keep(pattern, first, cause, {"the band says so", "designer", "12 May"});
  EXPECT_EQ(record_of(pattern, first).decisions[cause].state, DecisionState::kept);
  EXPECT_FALSE(record_of(pattern, first).decisions[cause].on_sheet);
  // A line before it and a change elsewhere move nothing it rests on.
  change_draft(pattern, "Sizes 1", "A note.\nSizes 1");
  change_draft(pattern, "Goarse", "Gorse");
  const Review second = reviewed(pattern);
  EXPECT_EQ(record_of(pattern, second).decisions[cause_of(second, "P1")].state, DecisionState::kept);
  change_draft(pattern, "197 yd", "198 yd");
  const Review third = reviewed(pattern);
  const Decision lapsed = record_of(pattern, third).decisions[cause_of(third, "P1")];
  EXPECT_EQ(lapsed.state, DecisionState::lapsed);
  EXPECT_TRUE(lapsed.on_sheet);
  EXPECT_EQ(lapsed.row->reply, "the band says so");
  keep(pattern, third, cause_of(third, "P1"), {"still so", "designer", ""});
  EXPECT_EQ(pattern.queries.size(), 1U);
  EXPECT_EQ(record_of(pattern, third).decisions[cause_of(third, "P1")].state, DecisionState::kept);
}

TEST(Record, ARowIsFoundByAnyFindingOfItsCause) {
  Pattern pattern = quillmarsh();
  const Review review = reviewed(pattern);
  const auto several = std::find_if(review.causes.begin(), review.causes.end(),
                                    [](const Cause& cause) { return cause.findings.size() > 1; });
  ASSERT_NE(several, review.causes.end());
  const auto cause = static_cast<std::size_t>(several - review.causes.begin());
  Query query;
  query.id = take_id<QueryId>(pattern);
  query.finding = review.findings[several->findings.back()].key();
  query.wording = "Which?";
  pattern.queries.push_back(query);
  EXPECT_EQ(record_of(pattern, review).decisions[cause].wording, "Which?");
  set_on_sheet(pattern, review, cause, OnSheet::no);
  EXPECT_EQ(pattern.queries.size(), 1U);
}

TEST(Record, ReplyWhoseWordsTheNextDraftHasNoMore) {
  Pattern pattern = quillmarsh();
  const Review first = reviewed(pattern);
  ASSERT_TRUE(accept(pattern, first, cause_of(first, "P1"), {}));
  const Query row = pattern.queries.back();
  add_draft(pattern, pattern.draft()->text);
  EXPECT_EQ(reply_state(pattern, row), ReplyState::laid_over);
  change_draft(pattern, row.before, row.after);
  EXPECT_EQ(reply_state(pattern, row), ReplyState::printed);
  EXPECT_EQ(printed_text(pattern, assess(pattern)), pattern.draft()->text);
  change_draft(pattern, "191 yd", "two hundred yards");
  EXPECT_EQ(reply_state(pattern, row), ReplyState::not_found);
  EXPECT_EQ(printed_text(pattern, assess(pattern)), pattern.draft()->text);
}

TEST(Record, NewWordsThatHoldTheOldAreLaidOnce) {
  Pattern pattern = new_pattern();
  add_draft(pattern, "Yarn: 5 skeins, 3 buttons");
  Query query;
  query.id = take_id<QueryId>(pattern);
  query.answer = QueryAnswer::amended;
  query.before = "5 skeins";
  query.after = "about 5 skeins of 50 g";
  pattern.queries = {query};
  EXPECT_EQ(printed_text(pattern, assess(pattern)), "Yarn: about 5 skeins of 50 g, 3 buttons");
  add_draft(pattern, "Yarn: about 5 skeins of 50 g, 3 buttons");
  EXPECT_EQ(printed_text(pattern, assess(pattern)), pattern.draft()->text);
  EXPECT_EQ(reply_state(pattern, query), ReplyState::printed);
}

TEST(Record, KeptStandsWhileItsFindingIsOfFewerSizesAndTheirsIsTheSame) {
  Pattern pattern = quillmarsh();
  change_draft(pattern, "CC3 Ember 40: 1 (1, 1, 1) (1, 1, 1, 1, 1).",
               "CC3 Ember 40: 1 (1, 1, 1) (1, 1, 1, 1, 1), at most 60 (60, 60, 60) (70, 70, 70, 70, 70) m.");
  const auto sizes = [](const Review& review) {
    return review.findings[review.causes[cause_of(review, "N6")].findings.front()].sizes;
  };
  const auto state = [&](const Review& review) {
    return record_of(pattern, review).decisions[cause_of(review, "N6")].state;
  };
  const Review first = reviewed(pattern);
  ASSERT_EQ(sizes(first), (std::vector<std::string>{"7", "8", "9"}));
  keep(pattern, first, cause_of(first, "N6"), {"tight on purpose", "designer", "12 May"});
  change_draft(pattern, "70, 70, 70, 70, 70", "70, 70, 71, 70, 79");
  const Review narrowed = reviewed(pattern);
  ASSERT_EQ(sizes(narrowed), std::vector<std::string>{"8"});
  EXPECT_EQ(state(narrowed), DecisionState::kept);
  EXPECT_THAT(record_of(pattern, narrowed).closed, IsEmpty());
  change_draft(pattern, "70, 70, 71, 70, 79", "70, 70, 71, 69, 79");
  EXPECT_EQ(state(reviewed(pattern)), DecisionState::lapsed);
  // In more sizes than were kept it is to be decided anew, and the reason is still known.
  change_draft(pattern, "70, 70, 71, 69, 79", "70, 60, 70, 70, 70");
  const Review widened = reviewed(pattern);
  ASSERT_EQ(sizes(widened).size(), 4U);
  EXPECT_EQ(state(widened), DecisionState::lapsed);
  EXPECT_EQ(record_of(pattern, widened).decisions[cause_of(widened, "N6")].row->reply, "tight on purpose");
}

TEST(Record, KeptStandsWhenAnotherSizeOfTheListChanges) {
  Pattern pattern = quillmarsh();
  const Review first = reviewed(pattern);
  keep(pattern, first, cause_of(first, "N3"), {"for the fringe", "designer", ""});
  change_draft(pattern, "9, 9, 10) skeins", "9, 9, 11) skeins");
  const Review second = reviewed(pattern);
  EXPECT_EQ(record_of(pattern, second).decisions[cause_of(second, "N3", "8")].state, DecisionState::kept);
}

TEST(Record, NumbersThatWentOutAreKept) {
  Pattern pattern = quillmarsh();
  const Review first = reviewed(pattern);
  const Record before = record_of(pattern, first);
  const auto asked = asked_now(first, before);
  ASSERT_GE(asked.size(), 8U);
  keep_numbers(pattern, asked);
  EXPECT_TRUE(check_invariants(pattern));
  const Record after = record_of(pattern, first);
  for (std::size_t c = 0; c < before.decisions.size(); ++c) {
    EXPECT_EQ(after.decisions[c].number, before.decisions[c].number);
    EXPECT_EQ(after.decisions[c].on_sheet, before.decisions[c].on_sheet);
    EXPECT_EQ(after.decisions[c].asked, before.decisions[c].on_sheet);
  }
  EXPECT_THAT(asked_now(first, after), IsEmpty());
  // One closes: the others stay who they were, and its number is not given again.
  const std::string gone = before.decisions[cause_of(first, "P1")].number;
  const std::string needle = before.decisions[cause_of(first, "G6")].number;
  change_draft(pattern, "175 m / 197 yd", "175 m / 191 yd");
  change_draft(pattern, "3 mm (US 2½)", "3 mm (US 6)");
  const Review second = reviewed(pattern);
  const Record record = record_of(pattern, second);
  EXPECT_EQ(record.decisions[cause_of(second, "G6", "US 5")].number, needle);
  std::vector<std::string> numbers;
  for (const Decision& decision : record.decisions) numbers.push_back(decision.number);
  EXPECT_EQ(std::count(numbers.begin(), numbers.end(), gone), 0);
  std::sort(numbers.begin(), numbers.end());
  EXPECT_EQ(std::adjacent_find(numbers.begin(), numbers.end()), numbers.end());
  const Decision fresh = record.decisions[cause_of(second, "G6", "US 6")];
  EXPECT_FALSE(fresh.asked);
  EXPECT_GT(std::stoi(fresh.number.substr(1)), static_cast<int>(asked.size()));
  // What was asked and is found no more is told under its number.
  ASSERT_EQ(record.closed.size(), 1U);
  EXPECT_EQ(record.closed.front().number, gone);
  EXPECT_EQ(record.closed.front().state, ReplyState::no_answer);
}

TEST(Record, ANumberOutlivesAnAnswerTakenBack) {
  Pattern pattern = quillmarsh();
  const Review review = reviewed(pattern);
  keep_numbers(pattern, asked_now(review, record_of(pattern, review)));
  const std::size_t cause = cause_of(review, "P1");
  const std::string number = record_of(pattern, review).decisions[cause].number;
  ASSERT_TRUE(accept(pattern, review, cause, {}));
  const Record answered = record_of(pattern, reviewed(pattern));
  ASSERT_EQ(answered.closed.size(), 1U);
  EXPECT_EQ(answered.closed.front().number, number);
  reopen(pattern, answered.closed.front().row.id);
  EXPECT_EQ(record_of(pattern, review).decisions[cause].number, number);
  EXPECT_TRUE(record_of(pattern, review).decisions[cause].asked);
}

TEST(Record, AnswersWithoutADraftOrAChangeFail) {
  Pattern pattern = quillmarsh();
  pattern.drafts = {};
  Review of_facts = reviewed(pattern);
  if (!of_facts.causes.empty()) {
    EXPECT_EQ(accept(pattern, of_facts, 0, {}).error().kind, ErrorKind::not_found);
    EXPECT_THAT(pattern.queries, IsEmpty());
  }
  pattern = quillmarsh();
  const Review review = reviewed(pattern);
  const std::size_t cause = cause_of(review, "P1");
  EXPECT_EQ(amend(pattern, review, cause, "197", {}).error().kind, ErrorKind::not_found);
  change_draft(pattern, "Goarse", "Gorse");
  EXPECT_EQ(accept(pattern, review, cause, {}).error().kind, ErrorKind::changed_behind_our_back);
  EXPECT_THAT(pattern.queries, IsEmpty());
}

TEST(QueryWording, IsRememberedForTheHouseWithoutTheFiguresOfOneFinding) {
  Pattern pattern = quillmarsh();
  const Review first = reviewed(pattern);
  const std::size_t cause = cause_of(first, "P1");
  const Finding& finding = first.findings[first.causes[cause].findings.front()];
  const std::string query = finding.query;
  EXPECT_FALSE(remember_wording(pattern, first, cause, "175 m are 191.4 yd, I think."));
  EXPECT_THAT(pattern.house().query_wordings, IsEmpty());
  set_wording(pattern, first, cause, "Dear designer: " + query);
  ASSERT_TRUE(remember_wording(pattern, first, cause, "Dear designer: " + query));
  ASSERT_EQ(pattern.house().query_wordings.size(), 1U);
  EXPECT_EQ(pattern.house().query_wordings.front(), (QueryWording{finding.check, "Dear designer: {query}"}));
  // Another slip of that kind in another text gets its own figures.
  Pattern other = quillmarsh();
  other.house_styles = pattern.house_styles;
  change_draft(other, "197 yd", "185 yd");
  const Review again = reviewed(other);
  const std::string wording = record_of(other, again).decisions[cause_of(again, "P1")].wording;
  EXPECT_THAT(wording, HasSubstr("Dear designer: "));
  EXPECT_THAT(wording, HasSubstr("185"));
  ASSERT_TRUE(remember_wording(pattern, first, cause, ""));
  EXPECT_THAT(pattern.house().query_wordings, IsEmpty());
  EXPECT_EQ(record_of(pattern, first).decisions[cause].wording, "Dear designer: " + query);
}

TEST(QueryWording, PlaceholdersAskForWhatTheFindingHas) {
  Finding finding;
  finding.query = "Is it {role}?";
  finding.sizes = {"5", "6"};
  EXPECT_EQ(filled_in("For {size}: {query} {other}", finding, ""),
            "For sizes 5 and 6: Is it {role}? {other}");
  EXPECT_FALSE(filled_in("For {role}", finding, ""));
  finding.roles = {"A"};
  EXPECT_EQ(for_every_finding("A Ask of A, As", finding, ""), "{role} Ask of {role}, As");
  finding.query = "5 or 6?";
  EXPECT_FALSE(for_every_finding("of 5", finding, ""));
  EXPECT_TRUE(for_every_finding("of 4", finding, ""));
}

}  // namespace
}  // namespace skeinproof
