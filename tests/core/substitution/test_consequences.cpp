// SPDX-License-Identifier: GPL-3.0-or-later
// Each rule fires for one candidate and is silent for one near by. All rules are common practice.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

#include "core/substitution/consequence_rules.h"
#include "tests/core/substitution/candidates_at_bench.h"

namespace skeinproof {
namespace {

using testing::add;
using testing::band;
using testing::compared;
using ::testing::ElementsAre;
using testing::facts_of;
using testing::fired;
using testing::fires;
using ::testing::HasSubstr;
using testing::ids;
using ::testing::IsEmpty;
using testing::lampwick;
using testing::missed;
using testing::quillmarsh;

Pattern item(Pattern pattern, const std::string& words, const std::string& wearer = "adult") {
  pattern.item = words;
  pattern.title = "Sample";
  pattern.wearer = wearer;
  return pattern;
}

// A yoke without its colourwork: one plain fabric.
Pattern all_in(Structure structure) {
  Pattern pattern = quillmarsh();
  for (Fabric& fabric : pattern.fabrics)
    if (fabric.structure == Structure::stranded) fabric.structure = structure;
  return pattern;
}

TEST(Consequences, OfTheSamplesComeWorstFirst) {
  const auto yoke = compared(quillmarsh());
  EXPECT_THAT(ids(yoke[0]), IsEmpty());
  EXPECT_THAT(ids(yoke[1]), ElementsAre("S8", "S6", "S5"));
  EXPECT_THAT(ids(yoke[2]), ElementsAre("S1", "S2", "S14"));
  EXPECT_THAT(ids(yoke[3]), ElementsAre("S15"));
  EXPECT_THAT(ids(yoke[4]), ElementsAre("S3"));
  const auto socks = compared(lampwick());
  EXPECT_THAT(ids(socks[0]), IsEmpty());
  EXPECT_THAT(ids(socks[1]), IsEmpty());
  EXPECT_THAT(ids(socks[2]), ElementsAre("S19"));
}

TEST(Consequences, AreDrawnByFactsNotByNames) {
  Pattern pattern = quillmarsh();
  for (Yarn& yarn : pattern.yarns) yarn.name = "X";
  const auto all = compared(pattern);
  EXPECT_THAT(ids(all[1]), ElementsAre("S8", "S6", "S5"));
  EXPECT_THAT(ids(all[2]), ElementsAre("S1", "S2", "S14"));
  EXPECT_THAT(ids(all[3]), ElementsAre("S15"));
}

TEST(Consequences, NameWhatTheyCouldNotLookAt) {
  const auto all = compared(quillmarsh());
  EXPECT_THAT(not_looked_at_words(all[2].not_looked_at),
              HasSubstr("S7, S8 (no structure of Tallowhithe Strand)"));
  EXPECT_TRUE(missed(all[2], "S3"));
  EXPECT_FALSE(missed(all[1], "S8")) << "it fired";
  EXPECT_THAT(all[0].not_looked_at, IsEmpty());
}

TEST(Consequences, EveryRuleIsInTheTableOnce) {
  std::set<std::string_view> seen;
  auto weight = ConsequenceWeight::stop;
  for (const ConsequenceRule& rule : consequence_rules()) {
    EXPECT_TRUE(seen.insert(rule.id).second) << rule.id;
    EXPECT_GE(rule.weight, weight) << rule.id << " stands behind a lighter one";
    weight = rule.weight;
    EXPECT_FALSE(rule.advice.empty() || rule.title.empty() || rule.source.empty()) << rule.id;
  }
  for (int i = 1; i <= 24; ++i) EXPECT_EQ(seen.count("S" + std::to_string(i)), 1u) << i;
}

TEST(Consequences, S1HeavyClothOfLittleRecoveryHangsLonger) {
  const Yarn cotton = band("Cotton", 130, {{"cotton", 100}});
  const auto one = fired(facts_of(quillmarsh(), cotton), "S1");
  ASSERT_TRUE(one);
  EXPECT_THAT(one->because, HasSubstr("580 g against 431 g (+35 %), low recovery, 62 cm"));
  EXPECT_THAT(one->test, HasSubstr("clip 47 g across a washed swatch 15 cm wide for 24 h"));
  EXPECT_FALSE(fires(facts_of(quillmarsh(), band("Wool", 130)), "S1")) << "wool recovers";
  // 175 / 1.15 = 152.2 m in 50 g.
  EXPECT_TRUE(fires(facts_of(quillmarsh(), band("Edge", 152.1, {{"cotton", 100}})), "S1"));
  EXPECT_FALSE(fires(facts_of(quillmarsh(), band("Edge", 152.3, {{"cotton", 100}})), "S1"));
  EXPECT_FALSE(fires(facts_of(item(quillmarsh(), "hat"), cotton), "S1")) << "a hat does not hang";
  Pattern child = quillmarsh();
  child.measurements.push_back({{}, "length", MeasurementKind::body_length, Fit::finished, {}});
  for (int i = 0; i < 9; ++i)
    child.measurements.back().values.set(static_cast<std::size_t>(i),
                                         Entered<Centimetres>{centimetres(39), {}});
  EXPECT_FALSE(fires(facts_of(child, cotton), "S1")) << "39 cm";
}

TEST(Consequences, S1OfAGrownPersonsGarmentWithoutALength) {
  Pattern pattern = quillmarsh();
  for (Piece& piece : pattern.pieces) piece.edges.clear();
  const auto one = fired(facts_of(pattern, band("Cotton", 130, {{"cotton", 100}})), "S1");
  ASSERT_TRUE(one);
  EXPECT_THAT(one->because, HasSubstr("as is usual of a grown person's garment"));
  pattern.wearer = "baby";
  EXPECT_TRUE(missed(facts_of(pattern, band("Cotton", 130, {{"cotton", 100}})), "S1"));
}

TEST(Consequences, S2RibsStaySlack) {
  const Yarn half = band("Half", 175, {{"cotton", 50}, {"wool", 50}});
  EXPECT_TRUE(fires(facts_of(quillmarsh(), half), "S2"));
  EXPECT_FALSE(fires(facts_of(quillmarsh(), band("Less", 175, {{"cotton", 49}, {"wool", 51}})), "S2"));
  Pattern no_ribs = item(quillmarsh(), "blanket");
  for (Fabric& fabric : no_ribs.fabrics) fabric.structure = Structure::garter;
  for (Piece& piece : no_ribs.pieces)
    for (Section& section : piece.sections) section.name = "main";
  EXPECT_FALSE(fires(facts_of(no_ribs, half), "S2"));
  no_ribs.measurements[0].values.set(4, Entered<Centimetres>{centimetres(100), {}});  // 12 cm under the body
  EXPECT_TRUE(fires(facts_of(no_ribs, half), "S2")) << "negative ease";
}

TEST(Consequences, S3AMarkedHaloVeilsWhatIsPatterned) {
  Yarn yarn = band("Fluff", 175);
  yarn.surface = "halo";
  EXPECT_TRUE(fires(facts_of(quillmarsh(), yarn), "S3"));
  EXPECT_TRUE(fires(facts_of(all_in(Structure::cable), yarn), "S3"));
  EXPECT_FALSE(fires(facts_of(all_in(Structure::garter), yarn), "S3"));
  yarn.surface = "light halo";
  EXPECT_FALSE(fires(facts_of(quillmarsh(), yarn), "S3"));
  yarn.surface = {};
  EXPECT_TRUE(missed(facts_of(quillmarsh(), yarn), "S3"));
}

TEST(Consequences, S4ColoursWithinASkeinBreakThePattern) {
  Yarn yarn = band("Paint", 175);
  yarn.colouring = "variegated";
  EXPECT_TRUE(fires(facts_of(quillmarsh(), yarn), "S4"));
  EXPECT_FALSE(fires(facts_of(all_in(Structure::plain), yarn), "S4"));
  yarn.colouring = "heathered";
  EXPECT_FALSE(fires(facts_of(quillmarsh(), yarn), "S4"));
}

TEST(Consequences, S5SuperwashGrowsUntilASwatchIsWashed) {
  Yarn yarn = band("Washable", 175);
  yarn.treatment = "superwash";
  Pattern pattern = quillmarsh();
  pattern.candidates.clear();
  Candidate& candidate = add(pattern, yarn);
  EXPECT_TRUE(fires(compared(pattern).back(), "S5"));
  candidate.washed_swatch = true;
  EXPECT_FALSE(fires(compared(pattern).back(), "S5")) << "F 11.1";
  pattern.yarns.back().put_up.length->value = metres(200);  // F 10.38
  EXPECT_THAT(fired(compared(pattern).back(), "S5")->because, HasSubstr("F 10.4 below 10.5"));
  candidate.washed_swatch = false;
  pattern.yarns.back().composition = testing::fibres({{"wool_superwash", 49}, {"polyamide", 51}});
  pattern.yarns.back().treatment = {};
  EXPECT_FALSE(fires(compared(pattern).back(), "S5")) << "less than half";
}

TEST(Consequences, S6SlickYarnSlipsInColourwork) {
  Yarn yarn = band("Slick", 175, {{"wool_superwash", 100}});
  yarn.spinning = Spinning::worsted;
  EXPECT_TRUE(fires(facts_of(quillmarsh(), yarn), "S6"));
  yarn.spinning = Spinning::woollen;
  EXPECT_FALSE(fires(facts_of(quillmarsh(), yarn), "S6")) << "superwash, but not combed";
  yarn.spinning = Spinning::unstated;
  EXPECT_TRUE(missed(facts_of(quillmarsh(), yarn), "S6"));
  EXPECT_TRUE(fires(facts_of(quillmarsh(), band("Silk", 175, {{"silk", 50}, {"wool", 50}})), "S6"));
  EXPECT_FALSE(fires(facts_of(all_in(Structure::garter), band("Silk", 175, {{"silk", 100}})), "S6"));
  Pattern steek = all_in(Structure::garter);
  steek.title = "Steeked cardigan";
  EXPECT_TRUE(fires(facts_of(steek, band("Silk", 175, {{"silk", 100}})), "S6"));
}

TEST(Consequences, S7ASinglePillsWhereItRubs) {
  Yarn yarn = band("Single", 175);
  yarn.structure = "single";
  EXPECT_TRUE(fires(facts_of(lampwick(), yarn), "S7"));
  EXPECT_FALSE(fires(facts_of(item(lampwick(), "shawl"), yarn), "S7"));
  yarn.structure = "2-ply";
  EXPECT_FALSE(fires(facts_of(lampwick(), yarn), "S7"));
  yarn.twist = "loosely twisted";
  EXPECT_TRUE(fires(facts_of(lampwick(), yarn), "S7"));
}

TEST(Consequences, S8ATightRoundYarnStandsApart) {
  Yarn yarn = band("Round", 175);
  yarn.spinning = Spinning::worsted;
  yarn.structure = "4-ply";
  EXPECT_TRUE(fires(facts_of(quillmarsh(), yarn), "S8"));
  EXPECT_FALSE(fires(facts_of(all_in(Structure::plain), yarn), "S8"));
  yarn.structure = "2-ply";
  EXPECT_FALSE(fires(facts_of(quillmarsh(), yarn), "S8"));
  Pattern worsted = quillmarsh();
  worsted.yarns.front().spinning = Spinning::worsted;
  yarn.structure = "4-ply";
  EXPECT_FALSE(fires(facts_of(worsted, yarn), "S8")) << "the pattern's yarn is combed too";
}

TEST(Consequences, S9WoollenForWorsted) {
  Pattern worsted = quillmarsh();
  worsted.yarns.front().spinning = Spinning::worsted;
  EXPECT_TRUE(fires(facts_of(worsted, band("Woollen", 175)), "S9"));
  EXPECT_FALSE(fires(facts_of(quillmarsh(), band("Woollen", 175)), "S9"));
  Yarn unstated = band("Unstated", 175);
  unstated.spinning = Spinning::unstated;
  EXPECT_TRUE(missed(facts_of(worsted, unstated), "S9"));
}

TEST(Consequences, S10ThickBesideThinInOnePiece) {
  const auto beside = [](double metres_in_50g, const std::vector<std::pair<std::string, double>>& shares) {
    Pattern pattern = lampwick();
    pattern.candidates.clear();
    add(pattern, band("Teal", metres_in_50g, shares)).yarns.front().role = pattern.roles[0].id;
    return compared(pattern).back();
  };
  // Like the pattern's yarn, 3.6 for 4.2 m in a gram: sqrt(4.2 / 3.6) = 1.080.
  const auto one = fired(beside(180, {{"wool", 75}, {"polyamide", 25}}), "S10");
  ASSERT_TRUE(one);
  EXPECT_THAT(one->because, HasSubstr("Teal is 8 % thicker"));
  EXPECT_FALSE(fires(beside(180, {{"wool", 100}}), "S10")) << "wool is denser: 6 %";
  EXPECT_FALSE(fires(beside(210, {{"wool", 75}, {"polyamide", 25}}), "S10"));
  EXPECT_FALSE(fires(facts_of(lampwick(), band("All", 100)), "S10")) << "both colours are of one thickness";
}

TEST(Consequences, S11AnUnevenYarnHidesTheChart) {
  Yarn yarn = band("Slub", 175);
  yarn.structure = "thick and thin";
  EXPECT_TRUE(fires(facts_of(quillmarsh(), yarn), "S11"));
  EXPECT_FALSE(fires(facts_of(lampwick(), yarn), "S11")) << "no chart";
  yarn.structure = "2-ply";
  EXPECT_FALSE(fires(facts_of(quillmarsh(), yarn), "S11"));
}

TEST(Consequences, S12TooFirmOrTooLoose) {
  // F = 6.98 sqrt(8.84 / mu) at the yoke's gauge.
  EXPECT_TRUE(fires(facts_of(quillmarsh(), band("Thin", 242)), "S12"));                  // 9.44
  EXPECT_FALSE(fires(facts_of(quillmarsh(), band("Fine", 238)), "S12"));                 // 9.52
  EXPECT_TRUE(fires(facts_of(quillmarsh(), band("Thick", 95)), "S12"));                  // 15.06
  EXPECT_FALSE(fires(facts_of(quillmarsh(), band("Stout", 97)), "S12"));                 // 14.91
  EXPECT_TRUE(fires(facts_of(item(quillmarsh(), "shawl"), band("Stiff", 137)), "S12"));  // 12.54
  EXPECT_FALSE(fires(facts_of(item(quillmarsh(), "shawl"), band("Soft", 139)), "S12"));  // 12.45
  EXPECT_FALSE(fires(facts_of(item(quillmarsh(), "shawl"), band("Thin", 242)), "S12")) << "shawls are loose";
  Pattern roomy = quillmarsh();
  roomy.measurements[1].values.set(4, Entered<Centimetres>{centimetres(100), {}});  // 20 cm of ease
  EXPECT_FALSE(fires(facts_of(roomy, band("Thin", 242)), "S12"));
}

TEST(Consequences, S13WillNotFelt) {
  const Pattern felted = item(quillmarsh(), "felted slippers");
  EXPECT_TRUE(fires(facts_of(felted, band("Washable", 175, {{"wool_superwash", 100}})), "S13"));
  EXPECT_EQ(fired(facts_of(felted, band("Acrylic", 175, {{"acrylic", 50}, {"wool", 50}})), "S13")->weight,
            ConsequenceWeight::stop);
  EXPECT_FALSE(fires(facts_of(felted, band("Wool", 175, {{"wool", 60}, {"acrylic", 40}})), "S13"));
  EXPECT_FALSE(fires(facts_of(quillmarsh(), band("Acrylic", 175, {{"acrylic", 100}})), "S13"));
}

TEST(Consequences, S14PlantFibreHasNoGiveInColourwork) {
  EXPECT_TRUE(fires(facts_of(quillmarsh(), band("Linen", 175, {{"flax", 50}, {"wool", 50}})), "S14"));
  EXPECT_TRUE(fires(facts_of(all_in(Structure::intarsia), band("Cotton", 175, {{"cotton", 100}})), "S14"));
  EXPECT_FALSE(fires(facts_of(quillmarsh(), band("Linen", 175, {{"flax", 49}, {"wool", 51}})), "S14"));
  EXPECT_FALSE(fires(facts_of(all_in(Structure::plain), band("Cotton", 175, {{"cotton", 100}})), "S14"));
}

TEST(Consequences, S15AlpacaDrapes) {
  EXPECT_TRUE(fires(facts_of(quillmarsh(), band("Alpaca", 175, {{"alpaca", 50}, {"wool", 50}})), "S15"));
  EXPECT_FALSE(fires(facts_of(quillmarsh(), band("Alpaca", 175, {{"alpaca", 49}, {"wool", 51}})), "S15"));
  EXPECT_FALSE(fires(facts_of(item(quillmarsh(), "hat"), band("Alpaca", 175, {{"alpaca", 100}})), "S15"));
}

TEST(Consequences, S16TheStrictestCare) {
  Pattern pattern = quillmarsh();
  pattern.yarns.front().care = "machine wash 40°";
  pattern.candidates.clear();
  add(pattern, band("Delicate", 175)).yarns.front().role = pattern.roles[3].id;
  EXPECT_TRUE(fires(compared(pattern).back(), "S16"));
  pattern.yarns.back().care = "machine wash 40°";
  EXPECT_FALSE(fires(compared(pattern).back(), "S16"));
  pattern.yarns.back().care = {};
  EXPECT_TRUE(missed(compared(pattern).back(), "S16"));
}

TEST(Consequences, S17DarkHandDyedBesidePale) {
  Yarn yarn = band("Kettle", 175);
  yarn.colouring = "hand-dyed, semi-solid";
  EXPECT_TRUE(fires(facts_of(quillmarsh(), yarn), "S17"));  // Peat 24 beside Gorse 76
  yarn.colouring = "solid";
  EXPECT_FALSE(fires(facts_of(quillmarsh(), yarn), "S17"));
  yarn.colouring = "hand-dyed, semi-solid";
  Pattern near = quillmarsh();
  for (Role& role : near.roles) role.shade.lightness = Entered<double>{50, {}};
  EXPECT_FALSE(fires(facts_of(near, yarn), "S17"));
  for (Role& role : near.roles) role.shade.lightness.reset();
  EXPECT_TRUE(missed(facts_of(near, yarn), "S17"));
}

TEST(Consequences, S18UnfitForABaby) {
  const Pattern baby = item(quillmarsh(), "cardigan", "baby");
  Yarn smooth = band("Smooth", 175, {{"cotton", 100}});
  smooth.care = "machine wash 40°";
  EXPECT_FALSE(fires(facts_of(baby, smooth), "S18"));
  smooth.care = "hand wash";
  EXPECT_TRUE(fires(facts_of(baby, smooth), "S18"));
  Yarn sheds = smooth;
  sheds.care = "machine wash 40°";
  sheds.composition = testing::fibres({{"angora", 10}, {"cotton", 90}});
  const CandidateFacts facts = facts_of(baby, sheds);
  EXPECT_THAT(fired(facts, "S18")->because, HasSubstr("10 % of fibre that sheds; for “baby”"));
  EXPECT_THAT(facts.cautions, ::testing::Contains(HasSubstr("shedding")));
  EXPECT_FALSE(fires(facts_of(item(quillmarsh(), "cardigan"), sheds), "S18"));
  Pattern beads = baby;
  beads.notions = {{"glass beads", {}, {}}};
  smooth.care = "machine wash 40°";
  EXPECT_TRUE(fires(facts_of(beads, smooth), "S18"));
}

TEST(Consequences, S19SocksWantHardWearingFibre) {
  EXPECT_TRUE(fires(facts_of(lampwick(), band("Wool", 210, {{"wool", 91}, {"polyamide", 9}})), "S19"));
  EXPECT_FALSE(fires(facts_of(lampwick(), band("Wool", 210, {{"wool", 90}, {"polyamide", 10}})), "S19"));
  EXPECT_FALSE(fires(facts_of(quillmarsh(), band("Wool", 175)), "S19"));
  Pattern pattern = lampwick();
  pattern.candidates.clear();
  add(pattern, band("Wool", 210)).yarns.front().role = pattern.roles[0].id;
  EXPECT_FALSE(fires(compared(pattern).back(), "S19")) << "heel and toe are in the other colour";
}

TEST(Consequences, S20Elastane) {
  EXPECT_TRUE(fires(facts_of(lampwick(), band("Bouncy", 210, {{"cotton", 98}, {"elastane", 2}})), "S20"));
  EXPECT_FALSE(fires(facts_of(lampwick(), band("Cotton", 210, {{"cotton", 99}, {"elastane", 1}})), "S20"));
}

TEST(Consequences, S21RowsDifferWhileStitchesMeet) {
  Pattern pattern = quillmarsh();
  pattern.candidates.clear();
  add(pattern, band("Swatched", 175)).washed_swatch = true;
  EXPECT_TRUE(missed(compared(pattern).back(), "S21"));
  BenchChange gauge;
  gauge.kind = ChangeKind::other_gauge;
  gauge.fabric = pattern.fabrics.front().id;
  gauge.stitches = Entered<double>{26.4, {}};
  gauge.rows = Entered<double>{35.2, {}};
  pattern.changes = {gauge};
  const auto one = fired(compared(pattern).back(), "S21");
  ASSERT_TRUE(one);
  EXPECT_THAT(one->because, HasSubstr("every 20 cm of counted rows become 19.3 cm"));
  pattern.changes.front().rows->value = 35;  // 2.9 %
  EXPECT_FALSE(fires(compared(pattern).back(), "S21"));
  pattern.changes.front().rows->value = 35.2;
  pattern.changes.front().stitches->value = 26.6;
  EXPECT_FALSE(fires(compared(pattern).back(), "S21")) << "the stitches do not meet either";
}

TEST(Consequences, S22ALightShadeInLooseClothIsSheer) {
  EXPECT_TRUE(fires(facts_of(quillmarsh(), band("Thin", 242)), "S22"));   // Lichen 72, Gorse 76 at F 9.4
  EXPECT_FALSE(fires(facts_of(quillmarsh(), band("Fine", 238)), "S22"));  // F 9.5
  Pattern dark = quillmarsh();
  for (Role& role : dark.roles) role.shade.lightness = Entered<double>{40, {}};
  EXPECT_FALSE(fires(facts_of(dark, band("Thin", 242)), "S22"));
  for (Role& role : dark.roles) role.shade.lightness.reset();
  EXPECT_TRUE(missed(facts_of(dark, band("Thin", 242)), "S22"));
}

TEST(Consequences, S23CoarseWoolAtTheNeckPrickles) {
  const Yarn longwool = band("Lustre", 175, {{"wool_longwool", 100}});
  const auto one = fired(facts_of(quillmarsh(), longwool), "S23");
  ASSERT_TRUE(one);
  EXPECT_EQ(one->roles.size(), 1u) << "CC1 alone has the neckband and the cuffs";
  EXPECT_THAT(one->source, HasSubstr("Zallmann"));
  Yarn treated = longwool;
  treated.treatment = "superwash";
  EXPECT_FALSE(fires(facts_of(quillmarsh(), treated), "S23"));
  EXPECT_FALSE(fires(facts_of(quillmarsh(), band("Fine", 175, {{"wool_merino", 100}})), "S23"));
  Yarn rustic = band("Rustic", 175);
  rustic.description = "a rustic yarn";
  EXPECT_TRUE(fires(facts_of(quillmarsh(), rustic), "S23"));
}

TEST(Consequences, S24SyntheticMeltsNearHeat) {
  const Pattern holder = item(quillmarsh(), "pot holder");
  const auto one = fired(facts_of(holder, band("Acrylic", 175, {{"acrylic", 20}, {"wool", 80}})), "S24");
  ASSERT_TRUE(one);
  EXPECT_EQ(one->weight, ConsequenceWeight::stop);
  EXPECT_FALSE(fires(facts_of(holder, band("Wool", 175)), "S24"));
  EXPECT_FALSE(fires(facts_of(quillmarsh(), band("Acrylic", 175, {{"acrylic", 100}})), "S24"));
}

}  // namespace
}  // namespace skeinproof
