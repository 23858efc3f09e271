// SPDX-License-Identifier: GPL-3.0-or-later
// Put-ups and counts: each check where it fires and near it where it stays silent.
#include <gtest/gtest.h>

#include "core/pattern/edits.h"
#include "core/pattern/size_line.h"
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
// One yarn with a put-up.
CheckedText put_up(const std::string& words) {
  return text("Yarn: Hollowgate Plain (100% wool; " + words + " skein). MC Fern 12: 3 skeins.");
}
Pattern item(const std::string& words) {
  Pattern pattern = new_pattern();
  pattern.item = words;
  return pattern;
}
bool holds(const std::vector<std::string>& lines, const std::string& words) {
  for (const std::string& line : lines)
    if (line.find(words) != std::string::npos) return true;
  return false;
}

TEST(PutUpChecks, MetresAndYardsOfTheYoke) {
  const CheckedText yoke(quillmarsh());
  const auto found = yoke.found("P1");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_TRUE(holds(found[0].evidence, "175 m = 191.4 yd; 197 yd = 180.1 m"));
  EXPECT_NE(found[0].title.find("“175 m / 197 yd”"), std::string::npos);
  ASSERT_EQ(found[0].proposal.size(), 1u);
  EXPECT_EQ(found[0].proposal[0].after, "191");
  EXPECT_TRUE(text(yoke.text_with(found[0]), quillmarsh()).found("P1").empty());
  EXPECT_TRUE(yoke.found("P2").empty());
  EXPECT_TRUE(yoke.found("P3").empty()) << "1¾ oz is 50 g";
}

// 1 yd = 0.9144 m exactly (international yard and pound agreement, 1959).
TEST(PutUpChecks, HowFarMetresAndYardsMayLieApart) {
  struct Row {
    const char* words;
    std::optional<Severity> severity;
  };
  const Row rows[] = {
      {"175 m / 191 yd per 50 g", std::nullopt},     // 191.38
      {"192 m / 210 yd per 50 g", std::nullopt},     // 192.02
      {"87.5 m / 96 yd per 25 g", std::nullopt},     // 95.69
      {"230 m / 250 yd per 50 g", Severity::style},  // 0.6 %
      {"125 m / 135 yd per 50 g", Severity::ask},    // 1.2 %: rounded on the band
      {"175 m / 197 yd per 50 g", Severity::stop},   // 2.9 %
      {"100 yd / 91 m per 50 g", std::nullopt},      // 91.44
  };
  for (const Row& row : rows) {
    const auto found = put_up(row.words).found("P1");
    ASSERT_EQ(found.size(), row.severity ? 1u : 0u) << row.words;
    if (row.severity) {
      EXPECT_EQ(found[0].severity, *row.severity) << row.words;
    }
  }
}

TEST(PutUpChecks, NotesOfLengthToo) {
  const std::string before =
      "Yarn: Hollowgate Plain (100% wool; 175 m / 191 yd per 50 g skein). MC Fern 12: 1 skein (approx. ";
  EXPECT_TRUE(text(before + "70 m / 77 yd used).").found("P1").empty());
  const auto found = text(before + "70 m / 87 yd used).").found("P1");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].roles, std::vector<std::string>{"MC"});
}

TEST(PutUpChecks, ExchangedUnitsOfTheSocks) {
  const CheckedText socks(lampwick());
  const auto found = socks.found("P2");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_EQ(found[0].proposal_words, "210 yd / 230 m → 210 m / 230 yd");
  const auto lengths = socks.found("P1");
  ASSERT_EQ(lengths.size(), 1u);
  EXPECT_EQ(lengths[0].proposal, found[0].proposal);
  EXPECT_EQ(lengths[0].statements, found[0].statements);
  const CheckedText mended = text(socks.text_with(found[0]), lampwick());
  EXPECT_TRUE(mended.found("P1").empty());
  EXPECT_TRUE(mended.found("P2").empty());
  EXPECT_TRUE(socks.found("P3").empty()) << "1.76 oz is 50 g";
}

TEST(PutUpChecks, FewerYardsThanMetresWithoutAnExchange) {
  const auto found = put_up("175 m / 150 yd per 50 g").found("P2");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_TRUE(found[0].proposal.empty());
  EXPECT_TRUE(put_up("175 m / 176 yd per 50 g").found("P2").empty());
}

TEST(PutUpChecks, OuncesAndGrams) {
  for (const char* right :
       {"50 g / 1¾ oz", "50 g / 1.75 oz", "50 g / 1.76 oz", "50 g / 1.8 oz", "100 g / 3½ oz",
        "100 g / 3.5 oz", "100 g / 3.53 oz", "25 g / 0.88 oz", "113 g / 4 oz", "10 g / 0.4 oz"})
    EXPECT_TRUE(put_up("200 m per " + std::string(right)).found("P3").empty()) << right;
  const auto two = put_up("175 m per 50 g / 2 oz").found("P3");
  ASSERT_EQ(two.size(), 1u);
  EXPECT_TRUE(holds(two[0].evidence, "2 oz = 56.7 g"));
  ASSERT_EQ(two[0].proposal.size(), 1u);
  EXPECT_EQ(two[0].proposal[0].after, "1¾");
  EXPECT_EQ(put_up("200 m per 100 g / 4 oz").found("P3").size(), 1u);
}

TEST(PutUpChecks, APutUpHasLengthAndWeight) {
  EXPECT_TRUE(put_up("175 m per 50 g").found("P4").empty());
  const auto found =
      text("Yarn: Hollowgate Plain (100% wool; 175 m skein). MC Fern 12: 3 skeins.").found("P4");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::ask);
  EXPECT_NE(found[0].title.find("weight of a skein"), std::string::npos);
  EXPECT_TRUE(text("It rained.").found("P4").empty());
  EXPECT_TRUE(text("It rained.").not_checked("P4"));
}

TEST(PutUpChecks, YarnOnConesIsSoldByWeight) {
  EXPECT_TRUE(text("Yarn: Hollowgate Plain (100% wool; 450 g cone). MC Fern 12: 380 g.").found("P4").empty());
  EXPECT_EQ(text("Yarn: Hollowgate Plain (100% wool; 450 g skein). MC Fern 12: 2 skeins.").found("P4").size(),
            1u);
}

TEST(PutUpChecks, FinenessIsPossible) {
  EXPECT_TRUE(put_up("175 m per 50 g").found("P5").empty());
  EXPECT_EQ(put_up("1750 m per 50 g").found("P5").size(), 1u);  // 35 m/g
  EXPECT_EQ(put_up("10 m per 50 g").found("P5").size(), 1u);    // 0.2 m/g
  EXPECT_TRUE(text("Yarn: Hollowgate Sewing Thread (100% cotton; 2500 m per 100 g cone). MC Fern 12: 1 cone.")
                  .found("P5")
                  .empty())
      << "a thread is that fine";
}

TEST(PutUpChecks, TwiceAsFineInAnotherPlace) {
  const std::string first =
      "Yarn: Hollowgate Plain (100% wool; 175 m per 50 g skein). MC Fern 12: 3 skeins.\n";
  const auto found = text(first + "Hollowgate Plain (350 m per 50 g skein) is soft.").found("P5");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NE(found[0].query.find("per 50 g or per 100 g"), std::string::npos);
  EXPECT_TRUE(text(first + "Hollowgate Plain (175 m per 50 g skein) is soft.").found("P5").empty());
}

TEST(PutUpChecks, OnePutUpThroughout) {
  const std::string first =
      "Yarn: Hollowgate Plain (100% wool; 175 m per 50 g skein). MC Fern 12: 3 skeins.\n";
  const auto found = text(first + "Hollowgate Plain (160 m per 50 g skein) is soft.").found("P6");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_TRUE(text(first + "Hollowgate Plain (175 m per 50 g skein) is soft.").found("P6").empty());
  EXPECT_TRUE(text(first + "Hollowgate Plain (formerly 160 m per 50 g skein) is soft.").found("P6").empty())
      << "the old put-up is named as such";
  const auto same = text(first + "Hollowgate Plain (350 m per 100 g skein) is soft.").found("P6");
  ASSERT_EQ(same.size(), 1u);
  EXPECT_EQ(same[0].severity, Severity::note);
}

// The yoke with its first contrast in skeins of 25 g.
Pattern with_small_skeins() {
  Pattern pattern = quillmarsh();
  Yarn small = pattern.yarns.front();
  small.id = YarnId{++pattern.last_id};
  small.name = "Oddmere Little";
  small.put_up.length = Entered<Metres>{metres(87.5), ""};
  small.put_up.weight = Entered<Grams>{grams(25), ""};
  pattern.yarns.push_back(small);
  pattern.roles[1].yarn = small.id;
  return pattern;
}

TEST(PutUpChecks, CountedInTheSkeinsOfAnotherYarn) {
  // Planned lengths of CC1 are 186 to 311 m: 3 to 4 skeins of 87.5 m, 2 of 175 m.
  const std::pair<std::string, std::string> count{"1 (2, 2, 2) (2, 2, 2, 2, 2)",
                                                  "2 (2, 2, 2) (2, 2, 2, 2, 2)"};
  const CheckedText slip(with_small_skeins(), submitted(quillmarsh(), {count}));
  const auto found = slip.found("P7");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_EQ(found[0].roles, std::vector<std::string>{"CC1"});
  EXPECT_NE(found[0].query.find("175 m"), std::string::npos);

  const CheckedText right(with_small_skeins(),
                          submitted(quillmarsh(), {{count.first, "3 (3, 3, 3) (3, 3, 4, 4, 4)"}}));
  EXPECT_TRUE(right.found("P7").empty());
  EXPECT_TRUE(CheckedText(quillmarsh(), submitted(quillmarsh(), {count})).found("P7").empty())
      << "there is no other skein";
}

TEST(PutUpChecks, ARunOfListsCarriesItsUnitOnce) {
  EXPECT_TRUE(CheckedText(quillmarsh()).found("P8").empty());
  EXPECT_TRUE(CheckedText(lampwick()).found("P8").empty());
  const std::string yarn = "Sizes S (M, L). Yarn: Hollowgate Plain (100% wool; 175 m per 50 g). ";
  EXPECT_TRUE(text(yarn + "MC Fern 12: 3 (4, 5) skeins. CC Moss 14: 1 (1, 2).").found("P8").empty());
  EXPECT_TRUE(text(yarn + "Balls: MC Fern 12: 3 (4, 5). CC Moss 14: 1 (1, 2).").found("P8").empty())
      << "the heading carries the unit";
  const auto bare = text(yarn + "MC Fern 12: 3 (4, 5). CC Moss 14: 1 (1, 2).").found("P8");
  ASSERT_EQ(bare.size(), 1u);
  EXPECT_EQ(bare[0].severity, Severity::style);
  EXPECT_EQ(bare[0].proposal_words, "add “skeins”");
}

TEST(PutUpChecks, AHouseMayWantTheUnitOnEachValue) {
  const std::string yarn = "Sizes S (M, L). Yarn: Hollowgate Plain (100% wool; 175 m per 50 g). ";
  Pattern each = new_pattern();
  each.house_styles.front().unit_word = UnitWord::on_each_value;
  EXPECT_EQ(text(yarn + "MC Fern 12: 3 (4, 5) skeins.", each).found("P8").size(), 1u);
  EXPECT_TRUE(text(yarn + "MC Fern 12: 3 (4, 5) skeins.").found("P8").empty());
}

TEST(PutUpChecks, ALengthEquatedWithACount) {
  const std::string yarn = "Yarn: Hollowgate Plain (100% wool; 175 m / 191 yd per 50 g skein). ";
  EXPECT_TRUE(text(yarn + "MC Fern 12: 5 skeins / 875 m.").found("P9").empty());
  EXPECT_TRUE(text(yarn + "MC Fern 12: 5 skeins / 250 g.").found("P9").empty());
  EXPECT_TRUE(text(yarn + "MC Fern 12: 5 skeins / 955 yd.").found("P9").empty()) << "5 × 191 yd";
  const auto found = text(yarn + "MC Fern 12: 5 skeins / 785 m.").found("P9");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_TRUE(holds(found[0].evidence, "5 × 175 m = 875 m"));
}

TEST(PutUpChecks, ALengthUsedNeedNotFillTheSkeins) {
  const std::string yarn = "Yarn: Hollowgate Plain (100% wool; 175 m per 50 g skein). ";
  EXPECT_TRUE(text(yarn + "MC Fern 12: 5 skeins (790 m used).").found("P9").empty());
  EXPECT_TRUE(text(yarn + "MC Fern 12: 5 skeins (about 790 m needed).").found("P9").empty());
  const auto found = text(yarn + "MC Fern 12: 5 skeins (about 600 m needed).").found("P9");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::ask);
}

TEST(PutUpChecks, ThicknessAgainstItsFigures) {
  EXPECT_TRUE(CheckedText(quillmarsh()).found("P10").empty());
  EXPECT_TRUE(CheckedText(lampwick()).found("P10").empty());
  const auto with = [](const std::string& description, const std::string& length, const std::string& sts,
                       const std::string& fibre = "100% wool") {
    return text("Yarn: Hollowgate Plain (" + fibre + "; " + length + " per 100 g skein), " + description +
                ". MC Fern 12: 3 skeins. Gauge " + sts + " sts and 26 rows = 10 cm in stocking stitch.");
  };
  EXPECT_TRUE(with("worsted weight", "200 m", "19").found("P10").empty());
  const auto both = with("sport weight", "200 m", "19").found("P10");
  ASSERT_EQ(both.size(), 1u);
  EXPECT_EQ(both[0].severity, Severity::ask);
  EXPECT_TRUE(holds(both[0].evidence, "worsted"));
  const auto one = with("sport weight", "330 m", "20").found("P10");
  ASSERT_EQ(one.size(), 1u);
  EXPECT_EQ(one[0].severity, Severity::note);
  EXPECT_TRUE(with("DK weight", "190 m", "22", "100% cotton").found("P10").empty()) << "cotton is heavier";
  EXPECT_TRUE(
      with("lace weight, brushed, light halo", "420 m", "18", "70% mohair, 30% silk").found("P10").empty());
  EXPECT_TRUE(with("aran weight", "160 m", "18").found("P10").empty());
}

TEST(PutUpChecks, FirmnessOfTheSocks) {
  const auto found = CheckedText(lampwick()).found("P11");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::ask);
  EXPECT_TRUE(holds(found[0].evidence, "= 9.4; socks 12 to 15"));
  const CheckedText right(lampwick(), submitted(lampwick(), {{"24 rounds", "44 rounds"}}));
  EXPECT_TRUE(right.found("P11").empty()) << "12.8";
  EXPECT_TRUE(CheckedText(quillmarsh()).found("P11").empty());
}

TEST(PutUpChecks, FirmnessByItem) {
  const auto pullover = [](const std::string& put_up, const std::string& gauge,
                           const std::string& what = "pullover") {
    return text("Yarn: Hollowgate Plain (100% wool; " + put_up + "). MC Fern 12: 9 skeins. Gauge " + gauge +
                    " = 10 cm in stocking stitch.",
                item(what));
  };
  // 22 × 30 = 6.6 per cm²; 2.3 m/g: 7 √(6.6 ÷ 2.3) = 11.86; at 4.6 m/g 8.38; at 3.9 m/g 9.11.
  EXPECT_TRUE(pullover("115 m per 50 g", "22 sts and 30 rows").found("P11").empty());
  const auto doubled = pullover("230 m per 50 g", "22 sts and 30 rows").found("P11");
  ASSERT_EQ(doubled.size(), 1u);
  EXPECT_EQ(doubled[0].severity, Severity::ask);
  EXPECT_NE(doubled[0].query.find("per 100 g"), std::string::npos);
  const auto loose = pullover("195 m per 50 g", "22 sts and 30 rows").found("P11");
  ASSERT_EQ(loose.size(), 1u);
  EXPECT_EQ(loose[0].severity, Severity::note);
  EXPECT_TRUE(pullover("230 m per 50 g", "22 sts and 30 rows", "shawl").found("P11").empty());
  EXPECT_TRUE(pullover("230 m per 50 g", "22 sts and 30 rows", "felted bag").found("P11").empty())
      << "felted work is loose on purpose";
  EXPECT_TRUE(pullover("230 m per 50 g", "22 sts and 30 rows", "toy").not_checked("P11"));
  EXPECT_EQ(pullover("60 m per 50 g", "16 sts and 22 rows", "socks").found("P11").size(), 1u);
  EXPECT_TRUE(pullover("60 m per 50 g", "16 sts and 22 rows", "bed socks").found("P11").empty());
}

TEST(PutUpChecks, HeldDoubleIsOneYarnOfHalfTheLength) {
  const std::string before = "Yarn: Hollowgate Plain (100% wool; 230 m per 50 g skein). MC Fern 12: 9 skeins";
  const std::string gauge = ". Gauge 22 sts and 30 rows = 10 cm in stocking stitch.";
  EXPECT_EQ(text(before + gauge, item("pullover")).found("P11").size(), 1u);
  EXPECT_TRUE(text(before + ", held double" + gauge, item("pullover")).found("P11").empty());
}

TEST(PutUpChecks, GaugeOfTheBand) {
  EXPECT_TRUE(CheckedText(quillmarsh()).found("P12").empty());
  Pattern other = quillmarsh();
  other.yarns.front().band_stitches_low = other.yarns.front().band_stitches_high = Entered<double>{22, ""};
  const auto found = CheckedText(other).found("P12");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::note);
  other.yarns.front().band_stitches_high = Entered<double>{24, ""};
  EXPECT_TRUE(CheckedText(other).found("P12").empty()) << "26 is within two stitches of 24";
  other.yarns.front().band_stitches_high = Entered<double>{22, ""};
  EXPECT_TRUE(CheckedText(other, submitted(other) + "\nThe fabric is denser than the band has it.")
                  .found("P12")
                  .empty())
      << "a reason is given";
  other.item = "socks";
  other.title = "Socks";
  EXPECT_TRUE(CheckedText(other).found("P12").empty()) << "socks are firm on purpose";
}

// The yoke's third contrast, which one skein holds twice over but not three times.
TEST(PutUpChecks, StrandsHeldTogetherAreCounted) {
  const std::string ember = "CC3 Ember 40: 1 (1, 1, 1) (1, 1, 1, 1, 1)";
  const auto held = [&](const std::string& words) {
    return CheckedText(quillmarsh(), submitted(quillmarsh(), {{ember, ember + " skein, " + words}}));
  };
  EXPECT_TRUE(CheckedText(quillmarsh()).found("P13").empty());
  EXPECT_TRUE(held("held double").found("P13").empty()) << "2 × 69.4 m is within 175 m";
  const auto found = held("held triple").found("P13");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_EQ(found[0].sizes, (std::vector<std::string>{"7", "8", "9"}))
      << "3 × 58.0 m of size 6 is within 175 m";
}

TEST(PutUpChecks, TwoYarnsHeldTogetherLastEquallyLong) {
  const auto shawl = [](const std::string& first, const std::string& second) {
    return text("Fernlow Wisp (70% mohair, 30% silk; 210 m per 25 g ball)\nMC Ash 01: " + first +
                "\nFernlow Fine (100% wool; 420 m per 50 g ball)\nCC Cinder 02: " + second +
                "\nHold both yarns together throughout.");
  };
  EXPECT_TRUE(shawl("4 balls", "2 balls").found("P13").empty()) << "840 m of each";
  const auto found = shawl("6 balls", "2 balls").found("P13");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].roles, (std::vector<std::string>{"MC", "CC"}));
}

}  // namespace
}  // namespace skeinproof
