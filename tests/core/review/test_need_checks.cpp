// SPDX-License-Identifier: GPL-3.0-or-later
// Figures worked out by a separate script from the stitch counts of the sample patterns.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/core/review/checked_text.h"

namespace skeinproof {
namespace {

using testing::CheckedText;
using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using testing::lampwick;
using testing::quillmarsh;
using testing::submitted;
using testing::whole;

using Changes = std::vector<std::pair<std::string, std::string>>;

CheckedText yoke(const Changes& changes = {}) {
  return CheckedText(quillmarsh(), submitted(quillmarsh(), changes));
}
CheckedText socks(const Changes& changes = {}) {
  return CheckedText(lampwick(), submitted(lampwick(), changes));
}
const Changes pair_counted = {{"CC Marigold 204: 1 (1, 1, 1, 1)", "CC Marigold 204: 1 (1, 1, 2, 2)"}};
const Changes right_counts = {{"(8, 7, 9, 9, 10) skeins", "(7, 8, 9, 9, 10) skeins"},
                              {"CC1 Lichen 21: 1 (2", "CC1 Lichen 21: 2 (2"}};

TEST(NeedChecks, N1_ThreeLayersAgainstWhatIsPrinted) {
  const CheckedText text = yoke();
  ASSERT_THAT(text.where("N1"), ElementsAre("MC 6", "CC1 1"));
  const Finding main = text.found("N1")[0], ribs = text.found("N1")[1];
  EXPECT_EQ(main.severity, Severity::stop);
  EXPECT_THAT(main.evidence, Contains(HasSubstr("with the swatch 1242.3 m")));
  EXPECT_THAT(main.evidence, Contains("7 skeins × 175 m = 1225 m"));
  EXPECT_EQ(ribs.evidence.front(), "knitted 172.5 m, with the swatch 177.5 m, planned 186.4 m");
  EXPECT_EQ(ribs.proposal_words, "1 → 2");
  EXPECT_THAT(yoke(right_counts).where("N1"), IsEmpty());
}

TEST(NeedChecks, N1_TheNeedSpeaksWhereTheCountInForceIsTheWrongOne) {
  Pattern adopted = quillmarsh();
  adopted.roles[1].printed_count.set(0, Entered<double>{1, "1"});
  const CheckedText text(adopted, submitted(adopted));
  EXPECT_EQ(text.found("N1").back().proposal_words, "1 → 2");
}

TEST(NeedChecks, N1_CountsInGramsAndMetres) {
  const Changes grams = {{"CC Marigold 204: 1 (1, 1, 1, 1) ball", "CC Marigold 204: 25 (35, 45, 55, 55) g"}};
  EXPECT_THAT(socks(grams).where("N1"), ElementsAre("CC 5")) << "55 g are 231 m";
}

TEST(NeedChecks, N2_RoundedDownOverTheAllowance) {
  const CheckedText text = socks();
  ASSERT_THAT(text.where("N2"), ElementsAre("CC 4"));
  EXPECT_THAT(text.found("N2").front().evidence, Contains(HasSubstr("allowance left 1.1 %")));
  EXPECT_THAT(text.where("N1"), ElementsAre("CC 5"));
  EXPECT_THAT(socks(pair_counted).where("N2"), IsEmpty());
}

TEST(NeedChecks, N2_WhatTheHousePermitsIsNoFinding) {
  // 6.019 skeins, six of which leave 4.0 %.
  Pattern pattern = quillmarsh();
  pattern.house_styles.front().rounding = Rounding::up_unless_hair_over;
  pattern.house_styles.front().hair_over_share = 0.2;
  pattern.house_styles.front().minimum_allowance_pct = 3;
  const Changes six = {{"5 (5, 6, 7) (8,", "5 (5, 6, 6) (8,"}};
  EXPECT_THAT(CheckedText(pattern, submitted(pattern, six)).where("N2"), IsEmpty());
  EXPECT_THAT(yoke(six).where("N2"), ElementsAre("MC 4"));
}

TEST(NeedChecks, N3_ASkeinNobodyNeeds) {
  const CheckedText text = yoke();
  ASSERT_THAT(text.where("N3"), ElementsAre("MC 5"));
  EXPECT_THAT(text.found("N3").front().evidence, Contains(HasSubstr("€7.90")));
  EXPECT_THAT(yoke(right_counts).where("N3"), IsEmpty());
}

TEST(NeedChecks, N4_TipsOverWhateverIsPrinted) {
  for (const Changes& changes : {Changes{}, pair_counted}) {
    const CheckedText text = socks(changes);
    ASSERT_THAT(text.where("N4"), ElementsAre("CC 4"));
    EXPECT_EQ(text.found("N4").front().severity, Severity::note);
    EXPECT_THAT(text.found("N4").front().evidence, Contains("8.1 m over 1 skein"));
  }
  EXPECT_THAT(yoke().where("N4"), IsEmpty());
}

TEST(NeedChecks, N5_ALengthNoteIsMissing) {
  const CheckedText text = yoke();
  ASSERT_THAT(text.where("N5"), ElementsAre("CC3 "));
  EXPECT_THAT(text.found("N5").front().evidence, Contains("needs 48–78 of 175 m"));
  EXPECT_THAT(text.text_with(text.found("N5").front()), HasSubstr("at most 80 m / 87 yd"));
  EXPECT_THAT(socks().where("N5"), IsEmpty());
  EXPECT_THAT(yoke({{"CC3 Ember 40: 1 (1, 1, 1) (1, 1, 1, 1, 1).",
                     "CC3 Ember 40: 1 (1, 1, 1) (1, 1, 1, 1, 1) skein (at most 80 m / 87 yd)."}})
                  .where("N5"),
              IsEmpty());
}

TEST(NeedChecks, N6_ANoteThatHoldsForOneSizeOnly) {
  const CheckedText text = socks();
  ASSERT_THAT(text.where("N6"), ElementsAre("MC 2,3,4,5"));
  EXPECT_THAT(text.text_with(text.found("N6").front()),
              HasSubstr("65 (90, 125, 160, 185) m / 71 (98, 137, 175, 202) yd"));
  EXPECT_THAT(text.where("N7"), ElementsAre("MC "));
}

TEST(NeedChecks, N6_AtMostHoldsAndMayNotBeIdle) {
  const Changes at_most = {{"(approx. 70 m / 77 yd used)", "(at most 185 m / 202 yd)"}};
  EXPECT_THAT(socks(at_most).where("N6"), IsEmpty());
  EXPECT_THAT(socks(at_most).where("N7"), IsEmpty());
  const CheckedText idle = socks({{"(approx. 70 m / 77 yd used)", "(at most 200 m / 219 yd)"}});
  ASSERT_EQ(idle.found("N6").size(), 1u);
  EXPECT_EQ(idle.found("N6").front().severity, Severity::style);
  const CheckedText beyond = socks({{"(approx. 70 m / 77 yd used)", "(at most 230 m / 252 yd)"}});
  ASSERT_EQ(beyond.found("N6").size(), 1u);
  EXPECT_EQ(beyond.found("N6").front().severity, Severity::stop);
}

TEST(NeedChecks, N8_TheSamplesWeightAgainstItsSkeins) {
  EXPECT_THAT(yoke().where("N8"), IsEmpty());
  const CheckedText few = yoke({{"5 (5, 6, 7)", "5 (5, 5, 7)"}});
  ASSERT_THAT(few.where("N8"), ElementsAre("MC 3"));
  EXPECT_EQ(few.found("N8").front().severity, Severity::stop);
  const CheckedText many = yoke({{"5 (5, 6, 7)", "5 (5, 7, 7)"}});
  ASSERT_THAT(many.where("N8"), ElementsAre("MC 3"));
  EXPECT_EQ(many.found("N8").front().severity, Severity::ask);
  EXPECT_THAT(socks().where("N8"), IsEmpty());
  Pattern unweighed = quillmarsh();
  unweighed.weighings.clear();
  EXPECT_TRUE(CheckedText(unweighed).not_checked("N8"));
}

TEST(NeedChecks, N9_ALoopThatCannotBe) {
  EXPECT_THAT(yoke().where("N9"), IsEmpty());
  Pattern pattern = quillmarsh();
  // 340 g give a loop of 1.95 cm, 5.1 stitch widths.
  pattern.weighings.front().roles.front().reading->value = grams(340);
  const auto found = CheckedText(pattern).found("N9");
  ASSERT_FALSE(found.empty());
  EXPECT_THAT(found.front().evidence, Contains(HasSubstr("expected 3.3 to 4.6")));
}

TEST(NeedChecks, N9_ASwatchThatDisagrees) {
  Pattern pattern = quillmarsh();
  Swatch& swatch = pattern.fabrics.front().swatch;
  swatch.yarn = pattern.yarns.front().id;
  swatch.stitches = Entered<double>{2000, ""};
  swatch.weight = Entered<Grams>{grams(2000 * 0.015 / 3.5), ""};  // 1.50 cm a stitch
  EXPECT_THAT(CheckedText(pattern).where("N9"), IsEmpty());
  swatch.weight = Entered<Grams>{grams(2000 * 0.0165 / 3.5), ""};  // 1.65 cm
  EXPECT_THAT(CheckedText(pattern).where("N9"), ElementsAre("MC "));
}

TEST(NeedChecks, N10_YarnThatTheClothCannotTake) {
  EXPECT_THAT(yoke().where("N10"), IsEmpty());
  EXPECT_THAT(socks().where("N10"), IsEmpty());
  Pattern pattern = quillmarsh();
  pattern.fabrics.front().typed_loop->value = centimetres(3.0);
  EXPECT_FALSE(CheckedText(pattern).found("N10").empty());
  pattern.fabrics.front().gauge.rows.reset();
  EXPECT_TRUE(CheckedText(pattern).not_checked("N10"));
}

TEST(NeedChecks, N10_WithoutANeedTheCountsSpeakAsIntervals) {
  Pattern pattern = new_pattern();
  const CheckedText bare(pattern, "MC: 4 skeins.");
  EXPECT_TRUE(bare.not_checked("N10"));
}

TEST(NeedChecks, N11_TheSampleAgainstTheChart) {
  EXPECT_THAT(yoke().where("N11"), IsEmpty());
  Pattern pattern = quillmarsh();
  pattern.weighings.front().roles[3].reading->value = grams(16);  // 48.0 m by the chart are 13.7 g
  const CheckedText text(pattern);
  ASSERT_THAT(text.where("N11"), ElementsAre("CC3 3"));
  EXPECT_THAT(text.found("N11").front().evidence, Contains(HasSubstr("floats")));
}

TEST(NeedChecks, N12_OneSockCountedForTheTwo) {
  const CheckedText text = socks();
  ASSERT_THAT(text.where("N12"), ElementsAre("CC 4,5"));
  EXPECT_THAT(text.text_with(text.found("N12").front()), HasSubstr("CC Marigold 204: 1 (1, 1, 2, 2) ball"));
  EXPECT_THAT(socks(pair_counted).where("N12"), IsEmpty());
  EXPECT_THAT(yoke().where("N12"), IsEmpty());
}

TEST(NeedChecks, N12_OneSockOnTheScale) {
  Pattern pattern = lampwick();
  pattern.weighings.front().only.clear();  // said to be the pair
  EXPECT_THAT(CheckedText(pattern, submitted(pattern, pair_counted)).where("N12"),
              ElementsAre("MC 3", "CC 3"));
}

TEST(NeedChecks, N13_NotionsOnTheScale) {
  Pattern pattern = quillmarsh();
  Notion buttons;
  buttons.name = "buttons";
  for (std::size_t i = 0; i < 9; ++i) buttons.count.set(i, Entered<double>{6, "6"});
  buttons.weight_each = Entered<Grams>{grams(2.8), "2.8 g"};
  pattern.notions.push_back(buttons);
  EXPECT_THAT(CheckedText(pattern).where("N13"), IsEmpty());
  pattern.weighings.front().roles.front().reading->value += grams(16.9);
  const auto found = CheckedText(pattern).found("N13");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_THAT(found.front().evidence.front(), HasSubstr("16.9 g extra ≈ 6 × 2.8 g buttons = 16.8 g"));
}

TEST(NeedChecks, N14_TheFactorOfAUsualSlip) {
  const CheckedText text = socks();
  ASSERT_THAT(text.where("N14"), ElementsAre("CC 4,5"));
  EXPECT_THAT(text.found("N14").front().title, HasSubstr("a factor of 0.5"));
  EXPECT_THAT(socks(pair_counted).where("N14"), IsEmpty());
  EXPECT_THAT(yoke().where("N14"), IsEmpty());
}

TEST(NeedChecks, N14_YardsPrintedAsMetres) {
  // Planned 96.1, 130.9, 171.5, 218.1, 262.5 m are 105, 143, 188, 239, 287 yd.
  const std::string counts = "CC Marigold 204: 1 (1, 1, 1, 1) ball";
  const CheckedText yards = socks({{counts, "CC Marigold 204: 105 (143, 188, 239, 287) m"}});
  ASSERT_THAT(yards.where("N14"), ElementsAre("CC 1,2,3,4,5"));
  EXPECT_THAT(yards.found("N14").front().query, HasSubstr("yards printed as metres"));
  EXPECT_THAT(socks({{counts, "CC Marigold 204: 97 (131, 172, 219, 263) m"}}).where("N14"), IsEmpty());
  // Metres knitted, without swatch and allowance: another layer, no slip.
  EXPECT_THAT(socks({{counts, "CC Marigold 204: 82 (115, 154, 198, 240) m"}}).where("N14"), IsEmpty());
}

TEST(NeedChecks, N15_TheAllowanceReallyLeft) {
  EXPECT_THAT(yoke().where("N15"), ElementsAre("MC 6", "CC1 1"));
  EXPECT_THAT(socks().where("N15"), ElementsAre("CC 4,5"));
  EXPECT_THAT(yoke(right_counts).where("N15"), IsEmpty());
}

TEST(NeedChecks, N16_APieceThatIsNotCounted) {
  const std::string text = submitted(quillmarsh()) + "\n\nHOOD\nPick up 100 sts and work 60 rounds.\n";
  const CheckedText all(quillmarsh(), text, {whole(TextPart::text)});
  ASSERT_EQ(all.found("N16").size(), 1u);
  EXPECT_THAT(all.found("N16").front().title, HasSubstr("HOOD"));
  const CheckedText sleeves(quillmarsh(), submitted(quillmarsh()) + "\n\nSLEEVES\nCast on 52 sts.\n",
                            {whole(TextPart::text)});
  EXPECT_THAT(sleeves.where("N16"), IsEmpty());
  EXPECT_TRUE(yoke().not_checked("N16"));
}

TEST(NeedChecks, N17_GrowthThatClothHasNot) {
  EXPECT_THAT(yoke().where("N17"), IsEmpty());
  Pattern pattern = quillmarsh();
  // A border of the largest size alone.
  Edge border;
  border.id = EdgeId{++pattern.last_id};
  border.name = "border";
  border.kind = EdgeKind::other;
  border.role = pattern.roles[3].id;
  border.amount.set(8, Entered<double>{100, ""});
  for (std::size_t i = 0; i < 8; ++i) border.amount.set(i, Entered<double>{0, ""});
  pattern.pieces.front().edges.push_back(border);
  EXPECT_THAT(CheckedText(pattern).where("N17"), ElementsAre("CC3 1,9"));
}

TEST(NeedChecks, N18_AnotherSizeWasWeighed) {
  EXPECT_THAT(yoke().where("N18"), IsEmpty());
  EXPECT_THAT(yoke({{"shown in size 3", "shown in size 4"}}).where("N18"), ElementsAre(" 4,3"));
}

TEST(NeedChecks, N19_EndsThatAreNotCounted) {
  EXPECT_THAT(yoke().where("N19"), IsEmpty()) << "four ends of the main colour are less than 3 %";
  Pattern pattern = quillmarsh();
  pattern.roles[3].charge_entries = false;  // three ends of 0.30 m are 2.3 % of 39.9 m
  EXPECT_THAT(CheckedText(pattern).where("N19"), IsEmpty());
  pattern.constants.push_back({"entry_m", {0.6, ""}});
  EXPECT_THAT(CheckedText(pattern).where("N19"), ElementsAre("CC3 "));
}

TEST(NeedChecks, N20_ATesterNeededMore) {
  Pattern pattern = quillmarsh();
  Weighing report = pattern.weighings.front();
  report.id = WeighingId{++pattern.last_id};
  report.tester = true;
  report.roles.resize(1);
  report.roles.front().reading->value = grams(290);  // 1015 m of 6 × 175
  pattern.weighings.push_back(report);
  EXPECT_THAT(CheckedText(pattern).where("N20"), IsEmpty());
  pattern.weighings.back().roles.front().reading->value = grams(305);  // 1067.5 m
  const CheckedText text(pattern);
  ASSERT_THAT(text.where("N20"), ElementsAre("MC 3"));
  EXPECT_EQ(text.found("N20").front().severity, Severity::stop);
  EXPECT_TRUE(yoke().not_checked("N20"));
}

TEST(NeedChecks, N21_HandDyedWithoutAWordOnLots) {
  EXPECT_THAT(yoke().where("N21"), IsEmpty());
  const Changes dyed = {{"matte, heathered", "matte, hand-dyed"}};
  EXPECT_THAT(yoke(dyed).where("N21"), ElementsAre("MC ", "CC1 "));
  const CheckedText advised(quillmarsh(),
                            submitted(quillmarsh(), dyed) + "\nBuy all skeins of the same dye lot.\n");
  EXPECT_THAT(advised.where("N21"), IsEmpty());
}

TEST(NeedChecks, WithoutANeedEachSaysThatItCouldNotRun) {
  const CheckedText bare(new_pattern(),
                         "Wool (100% wool; 200 m per 100 g skein). MC Ash: 2 skeins. CC Moss: 1 skein.");
  for (const char* check : {"N1", "N2", "N3", "N4", "N5", "N14", "N15", "N17"}) {
    EXPECT_THAT(bare.where(check), IsEmpty()) << check;
    EXPECT_TRUE(bare.not_checked(check)) << check;
    EXPECT_EQ(bare.run(check).not_checked.size(), 1u) << check;
  }
}

}  // namespace
}  // namespace skeinproof
