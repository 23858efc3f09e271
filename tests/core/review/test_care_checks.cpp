// SPDX-License-Identifier: GPL-3.0-or-later
// Care and cautions: each check where it fires and near it where it stays silent.
#include <gtest/gtest.h>

#include "core/pattern/edits.h"
#include "tests/core/review/checked_text.h"

namespace skeinproof {
namespace {

using testing::CheckedText;
using testing::lampwick;
using testing::quillmarsh;
using testing::submitted;

Pattern facts(const std::string& item, const std::string& wearer = "") {
  Pattern pattern = new_pattern();
  pattern.item = item;
  pattern.wearer = wearer;
  return pattern;
}
CheckedText text(const std::string& words, Pattern pattern = new_pattern()) {
  return CheckedText(std::move(pattern), words);
}
std::string yarn(const std::string& fibres, const std::string& description = "") {
  return "Yarn: Hollowgate Plain (" + fibres + "; 175 m per 50 g skein)" +
         (description.empty() ? "" : ", " + description) + ". MC Fern 12: 3 skeins.\n";
}
bool silent(const CheckedText& checked, std::string_view check) { return checked.found(check).empty(); }

void expect_cautious(const Finding& finding, const std::string& instrument) {
  std::string all = finding.query + finding.proposal_words;
  for (const std::string& line : finding.evidence) all += line;
  EXPECT_NE(all.find(instrument), std::string::npos) << all;
  EXPECT_NE(all.find("licensed test"), std::string::npos);
  EXPECT_EQ(all.find(" is safe"), std::string::npos);
}

TEST(CareChecks, MachineWashOfUntreatedWool) {
  const auto found = text(yarn("100% wool") + "Care: Machine wash 30 °C.").found("C1");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::ask);
  EXPECT_TRUE(silent(text(yarn("100% superwash wool") + "Care: Machine wash 30 °C."), "C1"));
  EXPECT_TRUE(silent(text(yarn("100% wool", "superwash") + "Care: Machine wash 30 °C."), "C1"));
  EXPECT_TRUE(silent(text(yarn("100% cotton") + "Care: Machine wash 30 °C."), "C1"));
  EXPECT_TRUE(silent(text(yarn("100% wool") + "Care: Machine wash, wool cycle, 30 °C."), "C1"))
      << "the wool cycle";
  EXPECT_TRUE(silent(text(yarn("100% wool") + "Care: Hand wash."), "C1"));
  EXPECT_TRUE(text(yarn("100% wool")).not_checked("C1"));
}

TEST(CareChecks, HandWashOfSuperwash) {
  const auto found = text(yarn("75% superwash wool, 25% polyamide") + "Care: Hand wash.").found("C2");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::note);
  EXPECT_TRUE(silent(text(yarn("75% superwash wool, 25% silk") + "Care: Hand wash."), "C2"))
      << "silk is delicate";
  EXPECT_TRUE(silent(text(yarn("100% wool") + "Care: Hand wash."), "C2"));
  EXPECT_TRUE(silent(text(yarn("75% superwash wool, 25% polyamide") + "Care: Machine wash 30 °C."), "C2"));
}

TEST(CareChecks, FeltedThingsFelt) {
  EXPECT_TRUE(silent(text(yarn("100% wool"), facts("felted bag")), "C3"));
  const auto superwash = text(yarn("100% superwash wool"), facts("felted bag")).found("C3");
  ASSERT_EQ(superwash.size(), 1u);
  EXPECT_EQ(superwash[0].severity, Severity::stop);
  EXPECT_EQ(text(yarn("55% wool, 45% acrylic"), facts("felted bag")).found("C3").size(), 1u);
  EXPECT_TRUE(silent(text(yarn("60% wool, 40% acrylic"), facts("felted bag")), "C3"));
  EXPECT_TRUE(silent(text(yarn("100% superwash wool"), facts("bag")), "C3"));
}

TEST(CareChecks, SteeksHold) {
  const std::string cut = "Instructions\nWork the steek sts, then cut the steek.";
  const auto found = text(yarn("100% cotton") + cut).found("C4");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::ask);
  EXPECT_TRUE(silent(text(yarn("100% wool") + cut), "C4"));
  EXPECT_TRUE(silent(text(yarn("100% cotton") +
                          "Instructions\nSew two lines by machine to reinforce the steek, then cut it."),
                     "C4"));
}

TEST(CareChecks, SmallPartsForTheYoungest) {
  const std::string sizes = "Sizes 0–3 (3–6, 6–12) months.\n";
  const auto found = text(sizes + yarn("100% cotton") + "Notions: 5 (5, 6) buttons.").found("C5");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::ask);
  expect_cautious(found[0], "16 CFR 1501");
  EXPECT_TRUE(
      silent(text(sizes + yarn("100% cotton") +
                  "Notions: 5 (5, 6) buttons.\nSew the buttons on firmly: a loose one is a choking hazard."),
             "C5"));
  EXPECT_TRUE(silent(text(sizes + yarn("100% cotton") + "Notions: 5 (5, 6) snaps."), "C5")) << "snaps";
  EXPECT_TRUE(
      silent(text("Sizes 4 (6, 8) years.\n" + yarn("100% cotton") + "Notions: 5 (5, 6) buttons."), "C5"));
  EXPECT_TRUE(silent(text("Sizes 1 (2, 3).\n" + yarn("100% cotton") + "Notions: 5 (5, 6) buttons.",
                          facts("cardigan", "adult")),
                     "C5"));
}

TEST(CareChecks, AgesAreReadWithAndWithoutAWordForThem) {
  const auto buttons = [](const std::string& sizes) {
    return text(sizes + "\n" + yarn("100% cotton") + "Notions: 5 (5, 6) buttons.").found("C5").size();
  };
  EXPECT_EQ(buttons("Sizes 2T (4T, 6T)"), 1u);
  EXPECT_EQ(buttons("Ages 1 (2, 3–4)"), 1u);
  EXPECT_EQ(buttons("Ages 3 (4, 5)"), 0u);
  EXPECT_EQ(buttons("Sizes 1 (2, 3)"), 0u) << "names of sizes are no ages";
}

TEST(CareChecks, CordsAtChildrensNecks) {
  const std::string sizes = "Sizes 2 (4, 6) years.\n";
  const auto hood =
      text(sizes + yarn("100% wool") + "HOOD\nThread a twisted cord through the hem of the hood.")
          .found("C6");
  ASSERT_EQ(hood.size(), 1u);
  EXPECT_EQ(hood[0].severity, Severity::stop);
  EXPECT_NE(hood[0].query.find("button"), std::string::npos);
  expect_cautious(hood[0], "EN 14682");
  EXPECT_EQ(text(yarn("100% wool") + "Knit ties for the neck, 20 cm long.", facts("jacket", "baby"))
                .found("C6")
                .size(),
            1u);
}

TEST(CareChecks, CordsElsewhereAndForOthers) {
  const std::string cord = "HOOD\nThread a twisted cord through the hem of the hood.";
  EXPECT_TRUE(silent(text("Sizes 8 (10, 12) years.\n" + yarn("100% wool") + cord), "C6"));
  EXPECT_TRUE(silent(text(yarn("100% wool") + cord, facts("hooded jacket", "adult")), "C6"));
  EXPECT_TRUE(silent(text(yarn("100% wool") + cord, facts("doll's jacket", "child")), "C6"));
  const std::string sizes = "Sizes 2 (4, 6) years.\n";
  EXPECT_TRUE(silent(text(sizes + yarn("100% wool") + "Thread a cord through the waist."), "C6"));
  EXPECT_TRUE(silent(text(sizes + yarn("100% wool") + "Finish the neck with an i-cord bind-off."), "C6"));
  EXPECT_TRUE(
      silent(text(sizes + yarn("100% wool") + "Close the hood with a button, never with a cord."), "C6"));
}

TEST(CareChecks, FluffForBabies) {
  const std::string sizes = "Sizes 0–3 (3–6, 6–12) months.\n";
  const auto found = text(sizes + yarn("70% mohair, 30% silk")).found("C7");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::ask);
  expect_cautious(found[0], "shedding");
  EXPECT_TRUE(silent(text(sizes + yarn("100% cotton")), "C7"));
  EXPECT_TRUE(silent(text(sizes + yarn("70% mohair, 30% silk") + "The jacket is lined with cotton."), "C7"));
  EXPECT_TRUE(silent(text("Sizes 2 (4, 6) years.\n" + yarn("70% mohair, 30% silk")), "C7"));
}

TEST(CareChecks, FloatsForBabies) {
  Pattern baby = quillmarsh();
  baby.wearer = "baby";
  const auto found = CheckedText(baby).found("C7");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NE(found[0].evidence.front().find("11 sts = 4.2 cm"), std::string::npos);
  expect_cautious(found[0], "Pediatrics");
  EXPECT_TRUE(silent(CheckedText(quillmarsh()), "C7"));
}

TEST(CareChecks, SocksWear) {
  EXPECT_TRUE(silent(CheckedText(lampwick()), "C8"));
  const auto found = text(yarn("100% wool"), facts("socks")).found("C8");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::note);
  EXPECT_TRUE(silent(text(yarn("90% wool, 10% polyamide"), facts("socks")), "C8"));
  EXPECT_TRUE(
      silent(text(yarn("100% wool") + "Work the heel with a reinforcing thread.", facts("socks")), "C8"));
  EXPECT_TRUE(silent(text(yarn("100% wool"), facts("bed socks")), "C8"));
}

TEST(CareChecks, NothingThatMeltsNearHeat) {
  const auto found = text(yarn("80% wool, 20% acrylic"), facts("pot holder")).found("C9");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_NE(found[0].query.find("wool or cotton"), std::string::npos);
  expect_cautious(found[0], "EN 407");
  EXPECT_TRUE(silent(text(yarn("100% cotton"), facts("pot holder")), "C9"));
  EXPECT_TRUE(silent(text(yarn("80% wool, 20% acrylic"), facts("cosy pullover")), "C9"));
  EXPECT_EQ(text(yarn("100% acrylic"), facts("tea cosy")).found("C9").size(), 1u);
}

// Two yarns, each with its own care among the facts.
Pattern two_yarns(const std::string& first, const std::string& second) {
  Pattern pattern = new_pattern();
  for (const auto& [name, care] : {std::pair{"Hollowgate Plain", first}, std::pair{"Fernlow Wisp", second}}) {
    Yarn one;
    one.id = YarnId{++pattern.last_id};
    one.name = name;
    one.care = care;
    pattern.yarns.push_back(one);
  }
  return pattern;
}

TEST(CareChecks, TheMostDelicateYarnDecides) {
  const std::string block =
      yarn("100% superwash wool") +
      "Yarn: Fernlow Wisp (70% mohair, 30% silk; 210 m per 25 g ball). CC Ash 01: 2 balls.\n";
  const auto found =
      text(block + "Care: Machine wash 30 °C.", two_yarns("machine wash 30", "hand wash")).found("C10");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::ask);
  EXPECT_NE(found[0].query.find("hand wash"), std::string::npos);
  EXPECT_TRUE(silent(text(block + "Care: Hand wash.", two_yarns("machine wash 30", "hand wash")), "C10"));
  EXPECT_TRUE(text(block + "Care: Hand wash.").not_checked("C10"));
  EXPECT_TRUE(silent(text(yarn("100% superwash wool") + "Care: Hand wash."), "C10")) << "one yarn only";
}

TEST(CareChecks, VeryDarkBesideVeryLight) {
  EXPECT_TRUE(silent(CheckedText(quillmarsh()), "C11")) << "L* 24 and 76";
  EXPECT_TRUE(silent(CheckedText(lampwick()), "C11"));
  Pattern stark = quillmarsh();
  stark.roles[0].shade.lightness = Entered<double>{12, ""};
  const auto found = CheckedText(stark).found("C11");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::note);
  EXPECT_EQ(found[0].roles, (std::vector<std::string>{"MC", "CC2"}));
  EXPECT_TRUE(silent(
      CheckedText(stark, submitted(stark, {{"matte, heathered", "matte, heathered, colourfast"}})), "C11"));
  for (Role& role : stark.roles) role.shade.lightness.reset();
  EXPECT_TRUE(CheckedText(stark).not_checked("C11"));
}

}  // namespace
}  // namespace skeinproof
