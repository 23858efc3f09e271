// SPDX-License-Identifier: GPL-3.0-or-later
// Fibre contents: each check where it fires and near it where it stays silent.
#include <gtest/gtest.h>

#include "tests/core/review/checked_text.h"

namespace skeinproof {
namespace {

using testing::CheckedText;
using testing::lampwick;
using testing::quillmarsh;

CheckedText text(const std::string& words, Pattern pattern = new_pattern()) {
  return CheckedText(std::move(pattern), words);
}
CheckedText content(const std::string& words, Pattern pattern = new_pattern()) {
  return text("Yarn: Hollowgate Plain (" + words + "; 175 m per 50 g skein). MC Fern 12: 3 skeins.",
              std::move(pattern));
}
bool silent(const CheckedText& checked, std::string_view check) { return checked.found(check).empty(); }

TEST(FibreChecks, SharesOfTheSocksComeTo105) {
  const CheckedText socks(lampwick());
  const auto found = socks.found("F1");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_EQ(found[0].evidence.front(), "75 + 30 = 105");
  EXPECT_NE(found[0].query.find("75/25 or 70/30"), std::string::npos);
  EXPECT_NE(socks.text_with(found[0]).find("75% superwash wool, 25% polyamide"), std::string::npos)
      << "the content in force decides between the two";
  EXPECT_TRUE(silent(text(socks.text_with(found[0]), lampwick()), "F1"));
  EXPECT_TRUE(silent(CheckedText(quillmarsh()), "F1"));
}

TEST(FibreChecks, SharesComeToAHundred) {
  EXPECT_TRUE(silent(content("80% wool, 20% polyamide"), "F1"));
  EXPECT_EQ(content("80% wool, 15% polyamide").found("F1").size(), 1u);
  const auto two = content("66% wool, 33% silk").found("F1");
  ASSERT_EQ(two.size(), 1u);
  EXPECT_EQ(two[0].severity, Severity::stop);
}

TEST(FibreChecks, RoundedSharesAndTracesAreNoSlips) {
  EXPECT_TRUE(silent(content("33% wool, 33% alpaca, 33% silk"), "F1")) << "thirds";
  EXPECT_TRUE(silent(content("33.3% wool, 33.3% alpaca, 33.3% silk"), "F1"));
  EXPECT_TRUE(silent(content("98% cotton, a trace of elastane"), "F1"));
  const auto three = content("45% wool, 35% alpaca, 19% silk").found("F1");
  ASSERT_EQ(three.size(), 1u);
  EXPECT_EQ(three[0].severity, Severity::ask) << "a band may round";
}

TEST(FibreChecks, EachShareIsPossibleAndStandsOnce) {
  EXPECT_TRUE(silent(content("75% wool, 25% polyamide"), "F2"));
  const auto twice = content("50% wool, 50% wool").found("F2");
  ASSERT_EQ(twice.size(), 1u);
  EXPECT_EQ(twice[0].severity, Severity::stop);
  EXPECT_TRUE(silent(content("60% superfine merino wool, 40% merino wool"), "F2")) << "two grades";
  const auto order = content("25% polyamide, 75% wool").found("F2");
  ASSERT_EQ(order.size(), 1u);
  EXPECT_EQ(order[0].severity, Severity::style);
  EXPECT_FALSE(silent(content("100% wool, 0% silk"), "F2"));
}

TEST(FibreChecks, GenericNames) {
  for (const char* right :
       {"75% superwash wool, 25% polyamide", "100% organic cotton", "100% mercerised cotton",
        "70% mohair, 30% silk", "100% angora", "100% bamboo viscose", "50% recycled wool, 50% wool"})
    EXPECT_TRUE(silent(content(right), "F3")) << right;
  const auto bamboo = content("100% bamboo").found("F3");
  ASSERT_EQ(bamboo.size(), 1u);
  EXPECT_EQ(bamboo[0].severity, Severity::style);
  EXPECT_EQ(bamboo[0].proposal_words, "bamboo → viscose");
  EXPECT_EQ(content("80% wool, 20% glimmer").found("F3").size(), 1u);
  EXPECT_EQ(content("100% angora goat").found("F3").size(), 1u);
}

TEST(FibreChecks, NylonOrPolyamideButNotBoth) {
  const std::string first = "Yarn: Hollowgate Plain (75% wool, 25% polyamide; 175 m per 50 g skein).\n";
  EXPECT_EQ(text(first + "Fernlow Sock (80% wool, 20% nylon; 210 m per 50 g ball).").found("F3").size(), 1u);
  EXPECT_TRUE(silent(text(first + "Fernlow Sock (80% wool, 20% polyamide; 210 m per 50 g ball)."), "F3"));
}

TEST(FibreChecks, AHouseMayWantGenericNames) {
  Pattern generic = new_pattern();
  generic.house_styles.front().fibre_names = FibreNames::generic_polyamide;
  const auto found = content("75% wool, 25% nylon", generic).found("F3");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].proposal_words, "nylon → polyamide");
  EXPECT_TRUE(silent(content("75% superwash wool, 25% polyamide", generic), "F3"));
  EXPECT_TRUE(silent(content("75% wool, 25% nylon"), "F3"));
}

TEST(FibreChecks, ANamePromisesAFibre) {
  const auto yarn = [](const std::string& name, const std::string& fibres) {
    return text("Yarn: " + name + " (" + fibres + "; 175 m per 50 g skein). MC Fern 12: 3 skeins.");
  };
  EXPECT_EQ(yarn("Hollowgate Silk", "100% wool").found("F4").size(), 1u);
  EXPECT_TRUE(silent(yarn("Hollowgate Silk", "80% wool, 20% silk"), "F4"));
  EXPECT_TRUE(silent(yarn("Hollowgate Merino", "100% wool"), "F4")) << "merino is a wool";
  EXPECT_TRUE(silent(yarn("Silken Cottonwood", "100% wool"), "F4")) << "a fanciful name";
  EXPECT_TRUE(silent(CheckedText(quillmarsh()), "F4"));
  EXPECT_TRUE(silent(CheckedText(lampwick()), "F4"));
}

TEST(FibreChecks, TreatmentsThatShutEachOtherOut) {
  const auto found = text(
                         "Yarn: Hollowgate Plain (100% superwash wool; 175 m per 50 g skein), untreated "
                         "2-ply. MC Fern 12: 3 skeins.")
                         .found("F4");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::ask);
  EXPECT_TRUE(silent(
      text(
          "Yarn: Hollowgate Plain (100% wool; 175 m per 50 g skein), untreated 2-ply. MC Fern 12: 3 skeins."),
      "F4"));
}

TEST(FibreChecks, EveryYarnHasItsContent) {
  EXPECT_TRUE(silent(content("100% wool"), "F5"));
  const auto found = text(
                         "Yarn: Hollowgate Plain (100% wool; 175 m per 50 g skein), MC Fern 12: 3 skeins.\n"
                         "Yarn: Fernlow Wisp (210 m per 25 g ball), CC Ash 01: 2 balls.")
                         .found("F5");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NE(found[0].query.find("Fernlow Wisp"), std::string::npos);
}

}  // namespace
}  // namespace skeinproof
