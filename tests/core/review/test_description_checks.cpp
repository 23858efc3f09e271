// SPDX-License-Identifier: GPL-3.0-or-later
// Descriptions of yarns and names of shades: each check where it fires and near it where it stays silent.
#include <gtest/gtest.h>

#include "core/review/description_rules.h"
#include "tests/core/review/checked_text.h"

namespace skeinproof {
namespace {

using testing::CheckedText;
using testing::lampwick;
using testing::quillmarsh;
using testing::submitted;

CheckedText text(const std::string& words, Pattern pattern = new_pattern()) {
  return CheckedText(std::move(pattern), words);
}
CheckedText described(const std::string& words, Pattern pattern = new_pattern(),
                      const std::string& fibre = "100% wool") {
  return text(
      "Yarn: Hollowgate Plain (" + fibre + "; 175 m per 50 g skein), " + words + ". MC Fern 12: 3 skeins.",
      std::move(pattern));
}
bool silent(const CheckedText& checked, std::string_view check) { return checked.found(check).empty(); }

TEST(DescriptionChecks, ADescriptionSaysEnough) {
  EXPECT_TRUE(silent(CheckedText(quillmarsh()), "D1"));
  EXPECT_TRUE(silent(CheckedText(lampwick()), "D1")) << "superwash in the content is a treatment";
  EXPECT_TRUE(silent(described("woollen-spun 2-ply, sport weight, matte"), "D1"));
  const auto found = described("sport weight, matte").found("D1");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::ask);
  EXPECT_NE(found[0].query.find("ply or structure"), std::string::npos);
}

TEST(DescriptionChecks, AYarnThatIsGoneNeedsEveryWord) {
  Pattern gone = quillmarsh();
  gone.yarns.front().withdrawn = true;
  const auto found = CheckedText(gone).found("D1");
  ASSERT_EQ(found.size(), 1u) << "the gauge of the band is missing";
  EXPECT_NE(found[0].query.find("gauge of the band"), std::string::npos);
}

TEST(DescriptionChecks, AHouseMayAskForLess) {
  Pattern core_yarns = new_pattern();
  core_yarns.house_styles.front().description_minimum = 0;
  EXPECT_TRUE(silent(described("sport weight", core_yarns), "D1"));
}

TEST(DescriptionChecks, SingleAndFourPlies) {
  const CheckedText socks(lampwick());
  const auto found = socks.found("D2");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::ask);
  EXPECT_NE(found[0].title.find("“single” and “four plies”"), std::string::npos);
  const CheckedText mended(lampwick(),
                           submitted(lampwick(), {{"twisted single, four plies", "twisted, four plies"}}));
  EXPECT_TRUE(silent(mended, "D2"));
  EXPECT_TRUE(silent(CheckedText(quillmarsh()), "D2"));
}

TEST(DescriptionChecks, PlyMayBeAThickness) {
  EXPECT_TRUE(silent(described("a single, 4-ply weight"), "D2"));
  EXPECT_TRUE(silent(described("a single, 4-ply"), "D2")) << "a name of thickness";
  EXPECT_EQ(described("a single, 2-ply").found("D2").size(), 1u);
  EXPECT_EQ(described("a single, sport weight, 4-ply").found("D2").size(), 1u)
      << "the thickness is said already";
}

TEST(DescriptionChecks, OtherContradictions) {
  EXPECT_EQ(described("smooth, brushed").found("D2").size(), 1u);
  EXPECT_EQ(described("woollen-spun, worsted-spun").found("D2").size(), 1u);
  EXPECT_TRUE(silent(described("woollen-spun, worsted weight"), "D2")) << "worsted is a thickness too";
  EXPECT_TRUE(silent(described("semi-solid, smooth 2-ply"), "D2"));
}

TEST(DescriptionChecks, ADescriptionAgainstTheYarnInForce) {
  const CheckedText brushed(quillmarsh(), submitted(quillmarsh(), {{"woollen-spun", "worsted-spun"}}));
  const auto found = brushed.found("D2");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NE(found[0].evidence.front().find("in force"), std::string::npos);
}

TEST(DescriptionChecks, PlyInTwoSenses) {
  const std::string first =
      "Yarn: Hollowgate Plain (100% wool; 175 m per 50 g skein), 4-ply weight. MC Fern 12: 3 skeins.\n";
  EXPECT_EQ(
      text(first + "Yarn: Fernlow Fine (100% wool; 420 m per 100 g), sport weight 2-ply. CC Ash 01: 1 skein.")
          .found("D3")
          .size(),
      1u);
  EXPECT_TRUE(silent(
      text(first + "Yarn: Fernlow Fine (100% wool; 420 m per 100 g), 8-ply weight. CC Ash 01: 1 skein."),
      "D3"));
}

TEST(DescriptionChecks, ColouringWhereTheFabricShowsIt) {
  EXPECT_TRUE(silent(CheckedText(quillmarsh()), "D4"));
  const CheckedText unsaid(quillmarsh(), submitted(quillmarsh(), {{"matte, heathered", "matte"}}));
  EXPECT_EQ(unsaid.found("D4").size(), 1u);
  const CheckedText dyed(quillmarsh(), submitted(quillmarsh(), {{"matte, heathered", "matte, hand-dyed"}}));
  ASSERT_EQ(dyed.found("D4").size(), 1u);
  EXPECT_NE(dyed.found("D4")[0].query.find("but which"), std::string::npos);
  EXPECT_TRUE(silent(CheckedText(lampwick()), "D4")) << "stripes need no word";
  Pattern named = new_pattern();
  named.title = "Lacewing Lane";
  EXPECT_TRUE(silent(described("2-ply", named), "D4")) << "a name is no fabric";
  named.title = "Lane in lace";
  EXPECT_FALSE(silent(described("2-ply", named), "D4"));
}

TEST(DescriptionChecks, NamesAndNumbersOfShades) {
  EXPECT_TRUE(silent(CheckedText(quillmarsh()), "D5"));
  EXPECT_TRUE(silent(CheckedText(lampwick()), "D5"));
  const CheckedText no_number(quillmarsh(), submitted(quillmarsh(), {{"CC2 Gorse 33", "CC2 Gorse"}}));
  const auto found = no_number.found("D5");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::style);
  EXPECT_EQ(found[0].roles, std::vector<std::string>{"CC2"});
  EXPECT_NE(no_number.text_with(found[0]).find("CC2 Gorse 33:"), std::string::npos);
  Pattern names_only = quillmarsh();
  names_only.house_styles.front().shade_number = ShadeNumber::left_out;
  EXPECT_TRUE(silent(CheckedText(names_only, no_number.printed().text()), "D5"));
  EXPECT_TRUE(silent(
      text("Yarn: Hollowgate Plain (100% wool; 175 m per 50 g skein), undyed. MC Sheep: 3 skeins."), "D5"))
      << "undyed yarn has no number";
}

TEST(DescriptionChecks, OneNumberOneShade) {
  const CheckedText socks(lampwick());
  const auto found = socks.found("D6");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_EQ(found[0].roles, (std::vector<std::string>{"MC", "CC"}));
  EXPECT_NE(socks.text_with(found[0]).find("CC Marigold 311"), std::string::npos);
  EXPECT_TRUE(silent(text(socks.text_with(found[0]), lampwick()), "D6"));
  EXPECT_TRUE(silent(CheckedText(quillmarsh()), "D6"));
}

TEST(DescriptionChecks, OneShadeInTwoColours) {
  const std::string yarn = "Yarn: Hollowgate Plain (100% wool; 175 m per 50 g skein).\n";
  EXPECT_EQ(text(yarn + "MC Fern 12: 3 skeins.\nCC Fern 14: 1 skein.").found("D6").size(), 1u);
  EXPECT_EQ(text(yarn + "MC Fern 12: 3 skeins.\nCC Fern 12: 1 skein.").found("D6").size(), 1u);
  EXPECT_TRUE(
      silent(text(yarn + "MC Fern 12: 3 skeins.\nCC Fern 12: 1 skein, the same shade as the yoke."), "D6"))
      << "it is said to be meant";
}

TEST(DescriptionChecks, ANameSpelledTwoWays) {
  const CheckedText yoke(quillmarsh());
  const auto found = yoke.found("D7");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].roles, std::vector<std::string>{"CC2"});
  EXPECT_EQ(found[0].proposal_words, "Goarse → Gorse");
  EXPECT_TRUE(silent(text(yoke.text_with(found[0]), quillmarsh()), "D7"));
  EXPECT_TRUE(silent(CheckedText(lampwick()), "D7"));
  const CheckedText sisters(quillmarsh(), submitted(quillmarsh(), {{"CC3 Ember 40", "CC3 Goarse 40"}}));
  EXPECT_TRUE(silent(sisters, "D7")) << "both names are listed";
}

TEST(DescriptionChecks, WordsAreNoNames) {
  const std::string block =
      "Yarn: Hollowgate Plain (100% wool; 175 m per 50 g skein). MC Peat 12: 3 skeins. CC Lichen 14: 1 "
      "skein.\n";
  EXPECT_TRUE(silent(text(block + "Heat the water. Repeat the Seat, then the Kitchen."), "D7"));
  EXPECT_EQ(text(block + "Change to Lihcen and knit on.").found("D7").size(), 1u);
}

TEST(DescriptionChecks, HowNearTwoNamesAre) {
  EXPECT_TRUE(is_slip_of("Goarse", "Gorse"));
  EXPECT_TRUE(is_slip_of("Lihcen", "Lichen"));
  EXPECT_TRUE(is_slip_of("Pfat", "Peat"));
  EXPECT_FALSE(is_slip_of("gorse", "Gorse"));
  EXPECT_FALSE(is_slip_of("Ash", "Oak")) << "too short to tell";
  EXPECT_FALSE(is_slip_of("Fern", "Moss"));
  EXPECT_FALSE(is_slip_of("Heather", "Leather red"));
}

TEST(DescriptionChecks, AYarnThatIsNoLongerMade) {
  EXPECT_TRUE(silent(CheckedText(quillmarsh()), "D8"));
  Pattern gone = quillmarsh();
  gone.yarns.front().withdrawn = true;
  const auto found = CheckedText(gone).found("D8");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::note);
  EXPECT_TRUE(silent(
      CheckedText(gone, submitted(gone, {{"matte, heathered", "matte, heathered, no longer made"}})), "D8"));
}

}  // namespace
}  // namespace skeinproof
