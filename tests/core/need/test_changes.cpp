// SPDX-License-Identifier: GPL-3.0-or-later
// The sample pattern changed on the fly; figures worked out by a separate script from its stitch counts.
#include "core/need/changes.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/pattern/edits.h"
#include "core/pattern/piece_edits.h"
#include "tests/support/samples.h"

namespace skeinproof {
namespace {

using testing::lampwick;
using testing::quillmarsh;

struct Yoke : ::testing::Test {
  const Pattern pattern = quillmarsh();
  const SizeId size_5 = pattern.sizes[4].id;
  PieceId body = piece("Body"), sleeves = piece("Sleeves"), yoke = piece("Yoke"),
          neckband = piece("Neckband");
  FabricId plain = pattern.fabrics[0].id;

  PieceId piece(const std::string& name) const {
    for (const Piece& one : pattern.pieces)
      if (one.name == name) return one.id;
    return {};
  }
  SectionId section(PieceId id, std::size_t at) const { return pattern.piece(id)->sections[at].id; }
  RoleId role(std::size_t at) const { return pattern.roles[at].id; }
  WhatIf what_if(const std::vector<Change>& changes, SizeId size) const {
    const auto result = apply(pattern, changes, size);
    EXPECT_TRUE(result) << (result ? "" : result.error().message());
    return result ? *result : WhatIf{};
  }
  WhatIf what_if(const std::vector<Change>& changes) const { return what_if(changes, size_5); }
  std::string refused(const Change& change) const {
    const auto result = apply(pattern, {change}, size_5);
    EXPECT_FALSE(result);
    return result ? "" : result.error().message();
  }
};

TEST_F(Yoke, WithoutAChangeNothingMoves) {
  const WhatIf same = what_if({});
  ASSERT_EQ(same.roles.size(), 4u);
  for (const RoleChange& role : same.roles) {
    EXPECT_EQ(role.knitted_more.value(), 0);
    EXPECT_FALSE(role.crosses_step);
  }
  EXPECT_NEAR(same.roles[0].after.planned.value(), 1202.94, 0.005);
  EXPECT_EQ(same.total_skeins_before, 11);
  EXPECT_EQ(same.total_skeins_after, 11);
}

TEST_F(Yoke, BodyLongerByFiveCentimetres) {
  const WhatIf longer = what_if({LongerPiece{body, centimetres(5), LongerWhere::spread, {}}});
  const RoleChange& mc = longer.roles[0];
  EXPECT_NEAR(mc.knitted_more.value(), 17 * 312 * 0.015, 1e-9);  // 79.56 m
  EXPECT_NEAR(mc.after.planned.value(), 1286.47, 0.005);
  EXPECT_NEAR(mc.after.fraction.value(), 7.351, 0.0005);
  EXPECT_EQ(mc.before.skeins, 7);
  EXPECT_EQ(mc.after.skeins, 8);
  EXPECT_TRUE(mc.crosses_step);
  EXPECT_NEAR(mc.beyond_step.value().value(), 1286.47 - 1225, 0.005);
  EXPECT_EQ(longer.roles[1].knitted_more.value(), 0);
  EXPECT_EQ(longer.total_skeins_after, 12);
  ASSERT_EQ(longer.notes.size(), 1u);
  EXPECT_EQ(longer.notes[0], "Body, plain: 17 rounds more at 312 sts");
  EXPECT_EQ(pattern, quillmarsh());
}

TEST_F(Yoke, SleevesLongerSpreadOrAtFullWidth) {
  const RoleChange spread = what_if({LongerPiece{sleeves, centimetres(3), LongerWhere::spread, {}}}).roles[0];
  EXPECT_NEAR(spread.knitted_more.value(), 24.6, 1e-9);
  EXPECT_NEAR(spread.beyond_step.value().value(), (1125.6536 + 24.6 + 20) * 1.05 - 1225, 1e-3);  // 3.8 m
  const WhatIf full = what_if({LongerPiece{sleeves, centimetres(3), LongerWhere::full_width, {}}});
  EXPECT_NEAR(full.roles[0].knitted_more.value(), 31.2, 1e-9);
  EXPECT_EQ(full.notes[0], "Sleeves, plain, taper: 10 rounds more at 104 sts, 2 times");
}

TEST_F(Yoke, FullWidthIsMadeWhereTheTaperEndsInNoStraightRounds) {
  Pattern tapered = pattern;
  Section* section = find_section(tapered, this->section(sleeves, 1));
  section->runs.pop_back();
  const auto longer =
      apply(tapered, {LongerPiece{sleeves, centimetres(3), LongerWhere::full_width, {}}}, size_5);
  ASSERT_TRUE(longer) << longer.error().message();
  EXPECT_NEAR(longer->roles[0].knitted_more.value(), 31.2, 1e-9);
}

TEST_F(Yoke, AChartRoundOnceMore) {
  const WhatIf more = what_if({ExtraRounds{section(yoke, 1), 1, 10, {}}});
  EXPECT_NEAR(more.roles[3].knitted_more.value(), 38 * (5 * 1.56 + 7 * 0.40) / 100, 1e-9);  // 4.03 m
  EXPECT_NEAR(more.roles[2].knitted_more.value(), 38 * (7 * 1.56 + 5 * 0.40) / 100, 1e-9);
  EXPECT_NEAR(more.roles[0].knitted_more.value(), 0, 1e-9);
  const WhatIf fewer = what_if({ExtraRounds{section(yoke, 1), -1, 25, {}}});
  EXPECT_NEAR(fewer.roles[0].knitted_more.value(), -38 * 12 * 1.56 / 100, 1e-9);
  EXPECT_EQ(fewer.notes[0], "Chart “yoke”, round 25: 1 round left out, in all sizes");
}

TEST_F(Yoke, RoundsOfOneColourBehindItsLastInTheChart) {
  // The last round with gold is a mixed one of 6 stitches a repeat: the new one has no other colour beside
  // it.
  const WhatIf more = what_if({ExtraRounds{section(yoke, 1), 2, {}, role(2)}});
  EXPECT_NEAR(more.roles[2].knitted_more.value(), 2 * 38 * 6 * 1.56 / 100, 1e-9);
}

TEST_F(Yoke, OtherGaugeTurnsItsSignWithTheCounts) {
  const double ratio = std::sqrt(26.0 * 34 / (25.5 * 33.3));
  EXPECT_NEAR(ratio, 1.0203, 0.00005);
  OtherGauge change{plain, 25.5, 33.3, centimetres(10), CountsAre::kept};
  const WhatIf kept_counts = what_if({change});
  const RoleChange& kept = kept_counts.roles[0];
  EXPECT_NEAR(kept.after.planned.value(), 1226.94, 0.01);
  EXPECT_NEAR(kept.after.fraction.value(), 7.011, 0.0005);
  EXPECT_EQ(kept.after.skeins, 8);
  EXPECT_NEAR(kept.beyond_step.value().value(), 1.9, 0.05);
  EXPECT_NEAR(kept_counts.roles[1].after.knitted / kept_counts.roles[1].before.knitted, ratio, 0.0002);
  EXPECT_NE(kept_counts.notes[0].find("122.4 cm"), std::string::npos);
  change.counts = CountsAre::chosen_again;
  const RoleChange again = what_if({change}).roles[0];
  EXPECT_NEAR(again.after.knitted / again.before.knitted, 1 / ratio, 0.0002);
  EXPECT_FALSE(again.crosses_step);
  change.counts = CountsAre::not_said;
  EXPECT_NE(refused(change).find("whether the counts are kept"), std::string::npos);
  change.counts = CountsAre::kept;
  change.rows = 0;
  EXPECT_NE(refused(change).find("a gauge near that of plain"), std::string::npos);
}

TEST_F(Yoke, LoopsFromTheGaugeFollowItByThemselves) {
  Pattern untyped = pattern;
  for (Fabric& fabric : untyped.fabrics) fabric.loop_source = LoopSource::from_gauge;
  const auto result =
      apply(untyped, {OtherGauge{plain, 25.5, 33.3, centimetres(10), CountsAre::kept}}, size_5);
  ASSERT_TRUE(result) << result.error().message();
  const RoleChange& mc = result->roles[0];
  EXPECT_EQ(mc.before.evidence, mc.after.evidence);
  EXPECT_NEAR(mc.after.knitted / mc.before.knitted, std::sqrt(26.0 * 34 / (25.5 * 33.3)), 0.0002);
}

TEST_F(Yoke, OtherSizeThenLonger) {
  const SizeId size_7 = pattern.sizes[6].id;
  const WhatIf other =
      what_if({OtherSize{size_7}, LongerPiece{body, centimetres(5), LongerWhere::spread, {}}});
  EXPECT_EQ(other.size, "7");
  EXPECT_NEAR(other.roles[0].after.planned.value(), 1436.8 + 17 * 364 * 0.015 * 1.05, 0.05);
}

TEST_F(Yoke, AllAtOnceAddUp) {
  const WhatIf all =
      what_if({LongerPiece{body, centimetres(5), LongerWhere::spread, {}},
               LongerPiece{sleeves, centimetres(3), LongerWhere::full_width, {}},
               ExtraRounds{section(yoke, 1), 1, 10, {}}, GivenTo{neckband.value, {}, role(0), {}}});
  const double neck = 10 * 112 * 0.0142 + 112 * 0.016;
  EXPECT_NEAR(all.roles[0].knitted_more.value(), 79.56 + 31.2 + neck, 1e-9);
  EXPECT_NEAR(all.roles[1].knitted_more.value(), -neck, 1e-9);
  EXPECT_NEAR(all.roles[3].knitted_more.value(), 4.028, 1e-9);
  EXPECT_EQ(all.notes.size(), 4u);
  // Longer at the other gauge: 5 cm are 16.65 rows, so 17, of a stitch that takes more.
  const double ratio = std::sqrt(26.0 * 34 / (25.5 * 33.3));
  const WhatIf loose = what_if({OtherGauge{plain, 25.5, 33.3, centimetres(10), CountsAre::kept},
                                LongerPiece{body, centimetres(5), LongerWhere::spread, {}}});
  EXPECT_NEAR(loose.roles[0].after.knitted.value(), (1125.6536 + 79.56) * ratio, 0.02);
}

TEST_F(Yoke, PiecesLeftOutAndAdded) {
  const WhatIf sleeveless = what_if({PieceLeftOut{sleeves}});
  EXPECT_NEAR(sleeveless.roles[0].knitted_more.value(), -2 * 11536 * 0.015, 1e-9);
  EXPECT_EQ(sleeveless.roles[0].skeins_more, -2);  // 839.5 m planned
  Piece pocket;
  pocket.name = "Pocket";
  Section front;
  front.fabric = plain;
  front.role = role(0);
  front.stitches.set(4, Entered<double>{40 * 50, ""});
  pocket.sections.push_back(front);
  EXPECT_NEAR(what_if({PieceAdded{pocket}}).roles[0].knitted_more.value(), 30, 1e-9);
  pocket.sections[0].role = RoleId{9999};
  EXPECT_FALSE(apply(pattern, {PieceAdded{pocket}}, size_5));
  EXPECT_FALSE(apply(pattern, {PieceAdded{Piece{}}}, size_5));
}

TEST_F(Yoke, APieceInAnotherYarnIsARoleOfItsOwn) {
  Pattern two_yarns = pattern;
  const YarnId other = add_yarn(two_yarns, "Plain Leftover");
  two_yarns.yarns.back().put_up.length = Entered<Metres>{metres(100), ""};
  const auto result = apply(two_yarns, {GivenTo{sleeves.value, role(0), {}, other}}, size_5);
  ASSERT_TRUE(result) << result.error().message();
  ASSERT_EQ(result->roles.size(), 5u);
  EXPECT_EQ(result->roles[4].label, "MC in Plain Leftover");
  EXPECT_NEAR(result->roles[4].after.planned.value(), 2 * 11536 * 0.015 * 1.05,
              1e-6);  // no swatch of its own
  EXPECT_EQ(result->roles[4].after.skeins, 4);
  EXPECT_NEAR(result->roles[1].knitted_more.value(), 0, 1e-9);  // the cuffs stay
}

TEST_F(Yoke, SampleKeepsItsWordAboutTheGarmentAsItWasWeighed) {
  Pattern weighed = pattern;
  weighed.basis = Basis::weighed_sample;
  weighed.weighings[0].roles[0].reading = Entered<Grams>{grams(261), ""};
  const SizeId sample_size = weighed.sizes[2].id;
  const auto result =
      apply(weighed, {LongerPiece{body, centimetres(5), LongerWhere::spread, {}}}, sample_size);
  ASSERT_TRUE(result);
  const double calibrated = assess(weighed).calibrations[0].factor;
  EXPECT_LT(calibrated, 0.9995);
  EXPECT_NEAR(result->roles[0].knitted_more.value(), 17 * 260 * 0.015 * calibrated, 1e-6);
}

TEST_F(Yoke, BetweenSizesGoesByStitchesAndRowsAndSnaps) {
  const WhatIf between = what_if({BetweenSizes{pattern.sizes[3].id, pattern.sizes[4].id, 0.5}});
  EXPECT_EQ(between.size, "4–5");
  // Body 298 snaps to the fours of all sizes: 300 x 107. Sleeve 58 -> 60 (fours), 100, 126 + 10 rounds.
  // Yoke 36.5 repeats -> 37, so 444 stitches x 22 rounds.
  const double knitted =
      (300 * 107 + 2 * (126 * 80 + 10 * 100) + 444 * 22) * 0.015 + 37 * (177 * 1.56 + 64 * 0.40) / 100;
  EXPECT_NEAR(between.roles[0].after.knitted.value(), knitted, 1e-9);
  EXPECT_NEAR(
      what_if({BetweenSizes{pattern.sizes[3].id, pattern.sizes[4].id, 0}}).roles[0].after.knitted.value(),
      998.9, 0.05);
  EXPECT_NEAR(
      what_if({BetweenSizes{pattern.sizes[3].id, pattern.sizes[4].id, 1}}).roles[0].knitted_more.value(), 0,
      1e-9);
  EXPECT_FALSE(apply(pattern, {BetweenSizes{pattern.sizes[3].id, pattern.sizes[4].id, 1.5}}, size_5));
}

TEST_F(Yoke, WhatCannotBeIsRefusedInWords) {
  EXPECT_NE(refused(LongerPiece{PieceId{999}, centimetres(5), LongerWhere::spread, {}}).find("no piece 999"),
            std::string::npos);
  EXPECT_NE(refused(LongerPiece{neckband, centimetres(2), LongerWhere::spread, {}}).find("row gauge"),
            std::string::npos);
  EXPECT_NE(
      refused(LongerPiece{body, centimetres(-40), LongerWhere::spread, {}}).find("not more than there are"),
      std::string::npos);
  EXPECT_NE(refused(ExtraRounds{section(yoke, 1), 1, 51, {}}).find("a round from 1 to 50"),
            std::string::npos);
  EXPECT_NE(refused(ExtraRounds{section(yoke, 1), -50, 1, {}}).find("the chart has 50"), std::string::npos);
  EXPECT_NE(refused(GivenTo{yoke.value, {}, role(1), {}}).find("which colour"), std::string::npos);
  EXPECT_NE(refused(GivenTo{neckband.value, {}, RoleId{999}, {}}).find("no colour 999"), std::string::npos);
  EXPECT_NE(refused(GivenTo{neckband.value, role(2), role(1), {}}).find("worked in it"), std::string::npos);
  EXPECT_FALSE(apply(pattern, {}, SizeId{999}));
  EXPECT_FALSE(apply(pattern, {OtherSize{SizeId{999}}}, size_5));
}

TEST_F(Yoke, AdoptedTheDocumentSaysWhatTheQuestionSaid) {
  const std::vector<Change> changes = {LongerPiece{body, centimetres(5), LongerWhere::spread, {}},
                                       GivenTo{neckband.value, {}, role(0), {}}};
  const auto adopted = adopt(pattern, changes, size_5, AdoptIn::this_size);
  ASSERT_TRUE(adopted) << adopted.error().message();
  EXPECT_TRUE(check_invariants(adopted->pattern));
  const Assessment now = assess(adopted->pattern);
  const WhatIf asked = what_if(changes);
  for (std::size_t i = 0; i < 4; ++i)
    EXPECT_NEAR(now.roles[i].sizes[4].planned.value(), asked.roles[i].after.planned.value(), 1e-9);
  const auto everywhere = adopt(pattern, {changes[0]}, size_5, AdoptIn::all_sizes);
  ASSERT_TRUE(everywhere);
  EXPECT_NEAR(assess(everywhere->pattern).roles[0].sizes[0].knitted.value(), 730.77 + 17 * 212 * 0.015, 0.05);
  EXPECT_FALSE(everywhere->pattern.weighings[0].used);  // size 3 is no longer as it was weighed
  const auto here = adopt(pattern, {changes[0]}, size_5, AdoptIn::this_size);
  EXPECT_TRUE(here->pattern.weighings[0].used);
  EXPECT_NEAR(assess(here->pattern).roles[0].sizes[0].knitted.value(), 730.77, 0.05);
}

TEST_F(Yoke, AdoptedCountsChosenAgainAreWhole) {
  const auto adopted =
      adopt(pattern, {OtherGauge{plain, 25.5, 33.3, centimetres(10), CountsAre::chosen_again}}, size_5,
            AdoptIn::all_sizes);
  ASSERT_TRUE(adopted) << adopted.error().message();
  const Section& section = adopted->pattern.piece(body)->sections[1];
  EXPECT_EQ(section.runs[0].from.at(4)->value, 306);  // 312 x 25.5 / 26
  EXPECT_EQ(section.runs[0].rows.at(4)->value, 105);  // 107 x 33.3 / 34 = 104.8
  EXPECT_EQ(adopted->pattern.fabrics[0].gauge.stitches->value, 25.5);
}

TEST(Changes, ReadAsWords) {
  const Pattern pattern = quillmarsh();
  const PieceId body = pattern.pieces[0].id, neckband = pattern.pieces[3].id;
  EXPECT_EQ(change_words(pattern, LongerPiece{body, centimetres(-2.5), LongerWhere::spread, {}}),
            "Body 2.5 cm shorter");
  EXPECT_EQ(change_words(pattern, GivenTo{neckband.value, {}, pattern.roles[0].id, {}}), "Neckband in MC");
  EXPECT_EQ(
      change_words(pattern, OtherGauge{pattern.fabrics[0].id, 25.5, 33.3, centimetres(10), CountsAre::kept}),
      "Gauge 25.5 × 33.3 in 10 cm, the same counts");
}

TEST(Changes, TypedSumsHaveNoRowsToAddTo) {
  const Pattern socks = lampwick();
  std::string said;
  for (const Piece& piece : socks.pieces)
    for (const Section& section : piece.sections)
      if (section.source == StitchSource::typed) {
        const auto result = apply(socks, {ExtraRounds{section.id, 3, {}, {}}}, socks.sizes[0].id);
        ASSERT_FALSE(result);
        said = result.error().message();
      }
  EXPECT_NE(said.find("typed as one sum"), std::string::npos);
  const auto between =
      apply(socks, {BetweenSizes{socks.sizes[1].id, socks.sizes[2].id, 0.5}}, socks.sizes[0].id);
  ASSERT_TRUE(between) << between.error().message();
  EXPECT_GT(between->roles[0].after.knitted.value(), 75.4);
  EXPECT_LT(between->roles[0].after.knitted.value(), 104.6);
  EXPECT_EQ(between->notes.size(), 2u);
}

}  // namespace
}  // namespace skeinproof
