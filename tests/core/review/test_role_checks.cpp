// SPDX-License-Identifier: GPL-3.0-or-later
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/core/review/checked_text.h"

namespace skeinproof {
namespace {

using testing::CheckedText;
using ::testing::Contains;
using ::testing::ElementsAre;
using testing::HandReading;
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

const std::string mitts =
    "Plainfold Wool (100% wool; 200 m per 100 g skein).\n"
    "MC Ash: 2 skeins\nCC1 Brick: 1 skein\nCC2 Moss: 1 skein\n\n"
    "INSTRUCTIONS\nWith MC cast on 40 sts. Change to CC1 and work 4 rounds.\n";
CheckedText written(const std::string& text) {
  return CheckedText(new_pattern(), text, {whole(TextPart::block), whole(TextPart::text)});
}

TEST(RoleChecks, R1_AColourThatIsNotInTheBlock) {
  const CheckedText text = yoke();
  ASSERT_THAT(text.where("R1"), ElementsAre("CC4 "));
  EXPECT_THAT(text.text_with(text.found("R1").front()), HasSubstr("With CC1, work 10 rounds rib"))
      << "the need sheet works every rib in CC1";
  EXPECT_THAT(yoke({{"With CC4", "With CC1"}}).where("R1"), IsEmpty());
  EXPECT_THAT(written(mitts).where("R1"), IsEmpty());
}

TEST(RoleChecks, R1_TheOnlyContrastMayBeCalledCc) {
  const std::string two = "MC Ash: 2 skeins\nCC1 Brick: 1 skein\n\nINSTRUCTIONS\nWith CC cast on 40 sts.\n";
  EXPECT_THAT(written(two).where("R1"), IsEmpty());
}

TEST(RoleChecks, R2_AColourThatIsNeverUsed) {
  EXPECT_THAT(written(mitts).where("R2"), ElementsAre("CC2 "));
  EXPECT_THAT(written(mitts + "Change to CC2 and work 4 rounds.\n").where("R2"), IsEmpty());
  const CheckedText part(new_pattern(), mitts, {{TextPart::text, PartExtent::quoted_in_part}});
  EXPECT_THAT(part.where("R2"), IsEmpty());
  EXPECT_TRUE(part.not_checked("R2"));
}

TEST(RoleChecks, R3_AsManyColoursAsAreListed) {
  EXPECT_THAT(yoke().where("R3"), IsEmpty());
  EXPECT_EQ(yoke({{"In four colours", "In three colours"}}).found("R3").size(), 1u);
}

TEST(RoleChecks, R4_TheKeyNamesAnotherShade) {
  const CheckedText text = yoke();
  ASSERT_THAT(text.where("R4"), ElementsAre("CC2 "));
  EXPECT_THAT(text.text_with(text.found("R4").front()), HasSubstr("\"CC2 Gorse\""));
  EXPECT_THAT(yoke({{"CC2 Goarse", "CC2 Gorse"}}).where("R4"), IsEmpty());
}

TEST(RoleChecks, R5_SymbolsOfChartAndKey) {
  const auto keyed = [](const std::string& key) {
    return CheckedText(quillmarsh(), submitted(quillmarsh()) + key, {whole(TextPart::legend)});
  };
  HandReading hand("M MC, A CC1, B CC2, Q CC9");
  hand.say(StatementKind::legend_symbol, "M", "MC");
  hand.say(StatementKind::legend_symbol, "A", "CC1");
  hand.say(StatementKind::legend_symbol, "B", "CC2");
  hand.say(StatementKind::legend_symbol, "Q", "CC9");
  for (const auto& row : EnumWords<TextPart>::rows)
    hand.reading.parts.push_back({row.first, PartExtent::whole, ""});
  const auto found = CheckedText(quillmarsh(), hand).found("R5");
  ASSERT_EQ(found.size(), 2u);
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_THAT(found[0].title, HasSubstr("“C”"));
  EXPECT_EQ(found[1].severity, Severity::note);
  EXPECT_TRUE(yoke().not_checked("R5"));
  EXPECT_FALSE(keyed("").not_checked("R5"));
}

TEST(RoleChecks, R6_LabelsRunWithoutGaps) {
  EXPECT_THAT(written(mitts).where("R6"), IsEmpty());
  EXPECT_THAT(yoke().where("R6"), IsEmpty());
  const auto gap = written("MC Ash: 2 skeins\nCC1 Brick: 1 skein\nCC3 Moss: 1 skein\n").found("R6");
  ASSERT_EQ(gap.size(), 1u);
  EXPECT_THAT(gap.front().title, HasSubstr("there is no CC2"));
  EXPECT_EQ(gap.front().severity, Severity::style);
}

TEST(RoleChecks, R7_MoreColoursInARoundThanPromised) {
  const auto promised = [](const std::string& number, double value) {
    HandReading hand("Never more than " + number + " colours in a round.");
    Statement& said = hand.say(StatementKind::number_of_colours, number);
    said.qualifier = "a round";
    said.values.push_back({value, 0.5, said.span, false});
    return CheckedText(quillmarsh(), hand);
  };
  EXPECT_EQ(promised("one", 1).found("R7").size(), 1u);
  EXPECT_THAT(promised("two", 2).where("R7"), IsEmpty());
}

TEST(RoleChecks, R8_TheMainColourTakesLess) {
  const CheckedText text = socks();
  ASSERT_THAT(text.where("R8"), ElementsAre("MC+CC 1,2,3,4,5"));
  EXPECT_EQ(text.found("R8").front().severity, Severity::note);
  EXPECT_THAT(yoke().where("R8"), IsEmpty());
}

TEST(RoleChecks, R9_LeftOutOfASizeThatUsesIt) {
  const CheckedText text = yoke({{"CC3 Ember 40: 1 (1, 1, 1)", "CC3 Ember 40: 1 (–, 1, 1)"}});
  ASSERT_THAT(text.where("R9"), ElementsAre("CC3 2"));
  EXPECT_THAT(text.text_with(text.found("R9").front()), HasSubstr("CC3 Ember 40: 1 (1, 1, 1)"));
  EXPECT_THAT(yoke().where("R9"), IsEmpty());
}

TEST(RoleChecks, R10_AnExtraWithoutItsYarn) {
  EXPECT_EQ(written(mitts + "Make a pompom and sew it to the top.\n").found("R10").size(), 1u);
  EXPECT_THAT(written(mitts + "With CC1 make a pompom and sew it to the top.\n").where("R10"), IsEmpty());
  EXPECT_THAT(written(mitts + "Make a pompom from scraps.\n").where("R10"), IsEmpty());
}

TEST(RoleChecks, R11_OneFindingAChartLongestFirst) {
  const auto found = yoke().found("R11");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found.front().severity, Severity::note);
  EXPECT_EQ(found.front().evidence.front(), "rounds 8 and 18: 11 sts = 4.2 cm");
  const CheckedText caught(quillmarsh(),
                           submitted(quillmarsh()) + "\nINSTRUCTIONS\nCatch long floats every 4 sts.\n");
  EXPECT_THAT(caught.where("R11"), IsEmpty());
  Pattern flat = quillmarsh();
  flat.fabrics[1].structure = Structure::intarsia;
  EXPECT_THAT(CheckedText(flat).where("R11"), IsEmpty());
}

TEST(RoleChecks, R12_ShadesThatTouchAndReadAsOne) {
  const CheckedText text = yoke();
  ASSERT_THAT(text.where("R12"), ElementsAre("CC1+CC2 "));
  EXPECT_THAT(text.found("R12").front().evidence, Contains(HasSubstr("48 of 272 colour edges")));
  Pattern apart = quillmarsh();
  apart.roles[2].shade.lightness->value = 85;
  EXPECT_THAT(CheckedText(apart).where("R12"), IsEmpty());
  apart.roles[2].shade.lightness.reset();
  EXPECT_TRUE(CheckedText(apart).not_checked("R12"));
}

TEST(RoleChecks, R13_StitchesThatAreNotWholeRepeats) {
  const auto counted = [](const std::string& list) {
    HandReading hand("Yoke: " + list + " sts.");
    hand.list(StatementKind::stitches, list, "yoke");
    return CheckedText(quillmarsh(), hand);
  };
  EXPECT_THAT(counted("336 (360, 396, 420) (456, 480, 516, 540, 576)").where("R13"), IsEmpty());
  EXPECT_THAT(counted("338 (362, 398, 422) (458, 482, 518, 542, 578)").where("R13"), IsEmpty())
      << "two edge stitches";
  EXPECT_THAT(counted("336 (360, 396, 420) (456, 484, 516, 540, 576)").where("R13"), ElementsAre(" 6"));
}

TEST(RoleChecks, R14_DeclaredSharesOfTheChart) {
  const auto declared = [](double share) {
    HandReading hand("CC3 Ember: 13 %");
    hand.say(StatementKind::role, "CC3", "CC3");
    Statement& said = hand.say(StatementKind::phrase, "13 %", "CC3");
    said.unit = PrintedUnit::percent;
    said.values.push_back({share, 0.5, said.span, false});
    return CheckedText(quillmarsh(), hand);
  };
  EXPECT_THAT(declared(13).where("R14"), IsEmpty()) << "64 of 484 stitches are 13.2 %";
  EXPECT_THAT(declared(16).where("R14"), ElementsAre("CC3 "));
}

}  // namespace
}  // namespace skeinproof
