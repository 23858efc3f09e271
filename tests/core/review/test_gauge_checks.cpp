// SPDX-License-Identifier: GPL-3.0-or-later
// Gauges, needles and the widths they make: each check where it fires and near it where it stays silent.
#include <gtest/gtest.h>

#include "tests/core/review/checked_text.h"

namespace skeinproof {
namespace {

using testing::CheckedText;
using testing::lampwick;
using testing::quillmarsh;
using testing::whole;

using Places = std::vector<std::string>;

// A gauge paragraph over a pattern without facts.
CheckedText text(const std::string& words, Pattern pattern = new_pattern()) {
  return CheckedText(std::move(pattern), words);
}
Pattern item(const std::string& words) {
  Pattern pattern = new_pattern();
  pattern.item = words;
  return pattern;
}

TEST(GaugeChecks, RowsAreMissed) {
  const CheckedText yoke(quillmarsh());
  const auto found = yoke.found("G1");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::ask);
  EXPECT_NE(found[0].title.find("rows or rounds"), std::string::npos);
  EXPECT_NE(yoke.text_with(found[0]).find("26 sts and 30 rounds in stranded pattern"), std::string::npos);

  EXPECT_TRUE(text("Gauge: 22 sts and 30 rows = 10 cm in stocking stitch, washed.").found("G1").empty());
  EXPECT_EQ(text("Gauge: 22 sts = 10 cm in stocking stitch, washed.").found("G1").size(), 1u);
  EXPECT_TRUE(
      text("Gauge: 22 sts and 30 rows = 10 cm in stocking stitch, washed.").run("G1").not_checked.empty());
  EXPECT_TRUE(text("Yarn: 100% wool; 200 m per 100 g.").not_checked("G1"));
}

TEST(GaugeChecks, AShawlMayLeaveRowsOut) {
  const auto found = text("Gauge: 18 sts = 10 cm in lace, blocked.", item("shawl")).found("G1");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::note);
}

TEST(GaugeChecks, EveryFabricOfAFifthOfTheClothWantsAGauge) {
  const CheckedText both(quillmarsh());
  EXPECT_TRUE(both.found("G2").empty());
  const CheckedText plain_only(quillmarsh(),
                               testing::submitted(quillmarsh(), {{"; 26 sts in stranded pattern", ""}}));
  const auto found = plain_only.found("G2");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NE(found[0].title.find("stranded"), std::string::npos);
  EXPECT_EQ(text("Gauge: 22 sts and 30 rows = 10 cm, washed.").found("G2").size(), 1u);
}

TEST(GaugeChecks, StateAndDirectionAreSaid) {
  EXPECT_TRUE(text("Gauge: 22 sts and 30 rows = 10 cm in stocking stitch, washed.").found("G3").empty());
  EXPECT_TRUE(
      text("Gauge: 22 sts and 30 rounds = 10 cm in stocking stitch, after blocking.").found("G3").empty());
  const auto found = text("Gauge: 22 sts = 10 cm in stocking stitch.").found("G3");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NE(found[0].title.find("washed"), std::string::npos);
  EXPECT_NE(found[0].title.find("flat"), std::string::npos);
}

TEST(GaugeChecks, InchesAndCentimetresGiveOneGauge) {
  const std::string metric = "Gauge: 22 sts and 30 rows = 10 cm in stocking stitch, washed. ";
  EXPECT_EQ(text(metric + "Gauge: 6.5 sts = 1 in in stocking stitch.").found("G4").size(), 1u);
  EXPECT_TRUE(text(metric + "Gauge: 5.5 sts = 1 in in stocking stitch.").found("G4").empty());
  EXPECT_TRUE(text("Gauge: 22 sts and 30 rows = 10 cm / 4 in in stocking stitch.").found("G4").empty());
}

TEST(GaugeChecks, FewRowsToTheStitchesGiveTheDigitAway) {
  const CheckedText sock(lampwick());
  const auto found = sock.found("G5");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::ask);
  EXPECT_NE(sock.text_with(found[0]).find("32 sts and 44 rounds"), std::string::npos);
  // Without facts the one digit that fits is found by itself.
  const auto alone = text("Gauge: 32 sts and 24 rounds = 10 cm in stocking stitch, washed.").found("G5");
  ASSERT_EQ(alone.size(), 1u);
  EXPECT_NE(alone[0].proposal_words.find("44"), std::string::npos);
}

TEST(GaugeChecks, EachFabricHasItsShape) {
  const auto severities = [](const std::string& words) {
    std::vector<Severity> all;
    for (const Finding& finding : text(words).found("G5")) all.push_back(finding.severity);
    return all;
  };
  using Severities = std::vector<Severity>;
  EXPECT_EQ(severities("Gauge: 26 sts and 34 rounds = 10 cm in stocking stitch."), Severities{});
  EXPECT_EQ(severities("Gauge: 20 sts and 24 rounds = 10 cm in stocking stitch."),
            Severities{Severity::note});
  EXPECT_EQ(severities("Gauge: 20 sts and 22 rounds = 10 cm in stocking stitch."), Severities{Severity::ask});
  EXPECT_EQ(severities("Gauge: 26 sts and 30 rounds = 10 cm in stranded pattern."), Severities{});
  EXPECT_EQ(severities("Gauge: 26 sts and 34 rounds = 10 cm in stranded pattern."),
            Severities{Severity::ask});
  EXPECT_EQ(severities("Gauge: 20 sts and 40 rows = 10 cm in garter stitch."), Severities{});
  EXPECT_EQ(severities("Gauge: 20 sts and 30 rows = 10 cm in garter stitch."), Severities{Severity::ask});
}

TEST(GaugeChecks, NeedleNamesAreOfOneSize) {
  const CheckedText yoke(quillmarsh());
  const auto found = yoke.found("G6");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_NE(yoke.text_with(found[0]).find("3.5 mm (US 4)"), std::string::npos);
  EXPECT_TRUE(text("Needles: 2.25 mm (US 1) circular.").found("G6").empty());
  EXPECT_TRUE(text("Needles: 4 mm (US 6, UK 8).").found("G6").empty());
  EXPECT_FALSE(text("Needles: 4 mm (US 6, UK 9).").found("G6").empty());
  // The table gives 4.25 mm no American number.
  EXPECT_TRUE(text("Needles: 4.25 mm (US 6).").found("G6").empty());
  EXPECT_TRUE(text("Needles: 4.25 mm (US 6).").not_checked("G6"));
}

TEST(GaugeChecks, TheNeedleSuitsTheStitch) {
  EXPECT_TRUE(CheckedText(quillmarsh()).found("G7").empty());
  EXPECT_TRUE(CheckedText(lampwick()).found("G7").empty());
  const std::string gauge = "Gauge: 22 sts and 30 rows = 10 cm in stocking stitch. ";
  EXPECT_TRUE(text(gauge + "Needles: 4 mm.", item("pullover")).found("G7").empty());
  EXPECT_EQ(text(gauge + "Needles: 5.5 mm.", item("pullover")).found("G7").size(), 1u);
  EXPECT_TRUE(text(gauge, item("pullover")).not_checked("G7"));
}

TEST(GaugeChecks, TheRibNeedleIsALittleThinner) {
  EXPECT_TRUE(CheckedText(quillmarsh()).found("G8").empty());
  const CheckedText thick(quillmarsh(),
                          testing::submitted(quillmarsh(), {{"3 mm (US 2½) ribs", "3.25 mm (US 3) ribs"}}));
  const auto found = thick.found("G8");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::note);
}

TEST(GaugeChecks, ACircularNeedleGoesRoundItsTube) {
  const auto found = CheckedText(lampwick()).found("G9");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::ask);
  EXPECT_TRUE(CheckedText(quillmarsh()).found("G9").empty());  // double-pointed needles are listed
  const CheckedText short_tips(lampwick(),
                               testing::submitted(lampwick(), {{" circular, 40 cm / 16 in", " DPNs"}}));
  EXPECT_TRUE(short_tips.found("G9").empty());
}

TEST(GaugeChecks, AGaugeSaidTwiceIsTheSame) {
  const std::string first = "Gauge: 22 sts and 30 rows = 10 cm in stocking stitch, washed.\n\n";
  EXPECT_EQ(text(first + "Gauge: 23 sts and 30 rows = 10 cm in stocking stitch, washed.").found("G10").size(),
            1u);
  EXPECT_TRUE(
      text(first + "Gauge: 22 sts and 30 rows = 10 cm in stocking stitch, washed.").found("G10").empty());
  EXPECT_TRUE(
      text(first + "Gauge: 24 sts and 28 rows = 10 cm in stranded pattern, washed.").found("G10").empty());
}

TEST(GaugeChecks, StitchesMakeThePrintedWidth) {
  const CheckedText yoke(quillmarsh());
  EXPECT_EQ(yoke.where("G11"), Places{" 7"});
  EXPECT_NE(yoke.text_with(yoke.found("G11")[0]).find("129, 140, 149"), std::string::npos);
  EXPECT_EQ(CheckedText(lampwick()).where("G11"), Places{" 4"});
  const CheckedText right(quillmarsh(), testing::submitted(quillmarsh(), {{"145", "140"}}));
  EXPECT_TRUE(right.found("G11").empty());
  // A gauge that fits no size is one doubt.
  const CheckedText gauge(quillmarsh(), testing::submitted(quillmarsh(), {{"Gauge 26 sts", "Gauge 28 sts"}}));
  EXPECT_EQ(gauge.found("G11").size(), 1u);
  EXPECT_TRUE(text("Finished bust 90 (100) cm. Gauge: 22 sts and 30 rows = 10 cm.").not_checked("G11"));
}

}  // namespace
}  // namespace skeinproof
