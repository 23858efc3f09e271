// SPDX-License-Identifier: GPL-3.0-or-later
// The two submitted samples as a whole: every planted slip found under the cause it belongs to, with the slip
// that was made first, and nothing said of what is right.
#include "core/review/review.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "core/base/text.h"
#include "core/review/rehearsal.h"
#include "tests/support/samples.h"

namespace skeinproof {
namespace {

using testing::lampwick;
using testing::quillmarsh;

std::string name_of(const Finding& finding) {
  return finding.check + " " + join(finding.roles, "+") + " " + join(finding.sizes, ",");
}

// A sample reviewed.
struct Reviewed {
  explicit Reviewed(Pattern of)
      : pattern(std::move(of)), assessment(assess(pattern)), result(review(pattern, assessment)) {}

  // The cause of the first finding of that name; names as "N1 CC1 1".
  const Cause* cause_of(std::string_view name) const {
    for (const Cause& cause : result.causes)
      for (const std::size_t finding : cause.findings)
        if (name_of(result.findings[finding]) == name) return &cause;
    return nullptr;
  }
  std::set<std::string> names_in(const Cause& cause) const {
    std::set<std::string> names;
    for (const std::size_t finding : cause.findings) names.insert(name_of(result.findings[finding]));
    return names;
  }
  std::set<std::string> names() const {
    std::set<std::string> names;
    for (const Finding& finding : result.findings) names.insert(name_of(finding));
    return names;
  }
  std::string repaired(const Cause& cause) const {
    return cause.slip ? edited(result.text, cause.slip->edits) : std::string("no slip");
  }

  Pattern pattern;
  Assessment assessment;
  Review result;
};

const Reviewed& yoke() {
  static const Reviewed reviewed(quillmarsh());
  return reviewed;
}
const Reviewed& socks() {
  static const Reviewed reviewed(lampwick());
  return reviewed;
}

// The findings of one cause, and the words its likeliest slip makes of the text.
struct Planted {
  std::vector<std::string> findings;
  std::string repaired;  // empty = no edit can mend it
};

void expect_planted(const Reviewed& sample, const std::vector<Planted>& all) {
  for (const Planted& planted : all) {
    SCOPED_TRACE(planted.findings.front());
    const Cause* cause = sample.cause_of(planted.findings.front());
    ASSERT_NE(cause, nullptr);
    const auto names = sample.names_in(*cause);
    for (const std::string& name : planted.findings)
      EXPECT_TRUE(names.count(name)) << name << " is not in the cause";
    if (planted.repaired.empty()) continue;
    EXPECT_NE(sample.repaired(*cause).find(planted.repaired), std::string::npos)
        << (cause->slip ? cause->slip->before + " -> " + cause->slip->after : "no slip");
  }
}

TEST(Review, TheYokeHasItsTenSlipsEachUnderOneCause) {
  expect_planted(yoke(),
                 {{{"P1  "}, "175 m / 191 yd"},
                  {{"L3 MC 5,6", "L4 MC 5,6", "L6 MC 5", "L6 MC 6", "N1 MC 6", "N3 MC 5", "N15 MC 6"},
                   "5 (5, 6, 7) (7, 8, 9, 9, 10)"},
                  {{"N1 CC1 1", "L6 CC1 1", "N15 CC1 1"}, "CC1 Lichen 21: 2 (2, 2, 2)"},
                  {{"L1 CC2 9", "L2 CC2 ", "L6 CC2 9"}, "CC2 Gorse 33: 1 (1, 1, 1) (1, 1, 1, 1, 1)"},
                  {{"N5 CC3 "}, "80 m"},
                  {{"G11  7", "M1  7", "M2  6,7", "M2  7,8", "M3  7"}, "(120, 129, 140, 149, 160) cm"},
                  {{"G6  "}, "3.5 mm (US 4)"},
                  {{"G1  "}, "26 sts and 30 rounds in stranded"},
                  {{"R1 CC4 "}, "With CC1, work"},
                  {{"D7 CC2 ", "R4 CC2 "}, "key: \"CC2 Gorse\""}});
}

TEST(Review, TheSocksHaveTheirTenSlipsEachUnderOneCause) {
  expect_planted(socks(), {{{"F1  "}, "75% superwash wool, 25% polyamide"},
                           {{"P2  ", "P1  "}, "230 yd / 210 m"},
                           {{"N12 CC 4,5", "N1 CC 5", "N2 CC 4", "N14 CC 4,5", "N15 CC 4,5"},
                            "CC Marigold 204: 1 (1, 1, 2, 2)"},
                           {{"N6 MC 2,3,4,5", "N7 MC "}, ""},
                           {{"D6 MC+CC "}, "CC Marigold 311"},
                           {{"G5  ", "P11  "}, "32 sts and 44 rounds"},
                           {{"G11  4", "M1  4"}, "15 (17.5, 20, 22.5, 25) cm"},
                           {{"L1  4", "L2  ", "M2  3,4"}, "15.5 (19.5, 23, 27, 30.5) cm"},
                           {{"D2  "}, ""},
                           {{"G9  "}, ""}});
}

TEST(Review, EachFindingIsInOneCauseAndTheGravestComesFirst) {
  for (const Reviewed* sample : {&yoke(), &socks()}) {
    std::vector<int> times(sample->result.findings.size(), 0);
    std::size_t last = 0;
    for (const Cause& cause : sample->result.causes) {
      ASSERT_FALSE(cause.findings.empty());
      EXPECT_TRUE(std::is_sorted(cause.findings.begin(), cause.findings.end()));
      EXPECT_GE(cause.findings.front(), last);
      last = cause.findings.front();
      for (const std::size_t finding : cause.findings) ++times.at(finding);
    }
    EXPECT_TRUE(std::all_of(times.begin(), times.end(), [](int count) { return count == 1; }));
    const auto& findings = sample->result.findings;
    EXPECT_TRUE(std::is_sorted(findings.begin(), findings.end(),
                               [](const Finding& a, const Finding& b) { return a.severity < b.severity; }));
  }
}

TEST(Review, ALikelySlipClearsWhatItSaysAndOpensNothing) {
  for (const Reviewed* sample : {&yoke(), &socks()})
    for (const Cause& cause : sample->result.causes) {
      if (!cause.slip) continue;
      SCOPED_TRACE(cause.slip->before + " -> " + cause.slip->after);
      const Rehearsal rehearsal =
          rehearse(sample->pattern, sample->assessment, sample->result, cause.slip->edits);
      EXPECT_EQ(rehearsal.closes, cause.slip->clears);
      EXPECT_TRUE(rehearsal.opens.empty());
    }
}

TEST(Review, AnExchangeBeatsOneCountBecauseTheTotalAgrees) {
  const Cause* cause = yoke().cause_of("L3 MC 5,6");
  ASSERT_NE(cause, nullptr);
  ASSERT_TRUE(cause->slip.has_value());
  EXPECT_EQ(cause->slip->name, "exchange 8 and 7");
  EXPECT_NE(cause->slip->explains_too.find("total line"), std::string::npos);
}

TEST(Review, WithoutItsSlipsASampleHasNothingGrave) {
  for (const Pattern& sample : {quillmarsh(), lampwick()}) {
    Pattern clean = sample;
    clean.drafts = {};
    const Reviewed reviewed(clean);
    for (const Finding& finding : reviewed.result.findings)
      EXPECT_NE(finding.severity, Severity::stop) << name_of(finding) << ": " << finding.title;
  }
}

TEST(Review, OfAnyTextThereIsOne) {
  for (const char* text : {"", "\n", "((((", "Melt the butter, add 200 g sugar and 3 eggs.", "\xff\xfe\x00x",
                           "Sizes 1 (2 (3 (4", "MC: 1 (1, 1"}) {
    Pattern pattern = new_pattern();
    pattern.drafts.edit([&](std::vector<Draft>& drafts) {
      drafts.emplace_back();
      drafts.back().text = text;
    });
    const Reviewed reviewed(pattern);
    EXPECT_EQ(reviewed.result.text, text);
  }
}

TEST(Rehearsal, OneSkeinMoreClosesTwoFindingsAndOpensNone) {
  const Reviewed& sample = yoke();
  const auto at = sample.result.text.find("21: 1 (");
  ASSERT_NE(at, std::string::npos);
  const Rehearsal rehearsal =
      rehearse(sample.pattern, sample.assessment, sample.result, {{{at + 4, at + 5}, "2"}});
  std::set<std::string> closed;
  for (const std::size_t finding : rehearsal.closes) closed.insert(name_of(sample.result.findings[finding]));
  EXPECT_TRUE(closed.count("N1 CC1 1"));
  EXPECT_TRUE(closed.count("L6 CC1 1"));
  EXPECT_TRUE(rehearsal.opens.empty());
  EXPECT_EQ(rehearsal.closes.size() + rehearsal.stays.size(), sample.result.findings.size());
}

TEST(Rehearsal, AnAnswerThatIsWrongOpensFindings) {
  const Reviewed& sample = yoke();
  const auto at = sample.result.text.find("08: 5 (");
  ASSERT_NE(at, std::string::npos);
  const Rehearsal rehearsal =
      rehearse(sample.pattern, sample.assessment, sample.result, {{{at + 4, at + 5}, "3"}});
  std::set<std::string> opened;
  for (const Finding& finding : rehearsal.opens) opened.insert(name_of(finding));
  EXPECT_TRUE(opened.count("N1 MC 1"));
}

}  // namespace
}  // namespace skeinproof
