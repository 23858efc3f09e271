// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/reference/lookup.h"

#include <gtest/gtest.h>

#include "core/reference/fibre_words.h"

namespace skeinproof {
namespace {

std::string named(std::string_view words) {
  const Fibre* fibre = fibre_by_words(words);
  return fibre ? std::string(fibre->id) : "";
}

TEST(FibreByWords, knows_what_labels_say) {
  const std::pair<const char*, const char*> rows[] = {
      {"wool", "wool"},
      {"Wool", "wool"},
      {"100% virgin wool", "wool"},
      {"superwash wool", "wool_superwash"},
      {"superwash merino wool", "wool_superwash"},
      {"Merino, super-wash?", "wool_merino"},
      {"merino", "wool_merino"},
      {"extrafine merino wool", "wool_merino"},
      {"nylon", "polyamide"},
      {"Polyamid", "polyamide"},
      {"POLYAMIDE", "polyamide"},
      {"linen", "flax"},
      {"baby alpaca", "alpaca"},
      {"alpaca wool", "alpaca"},
      {"kid mohair", "mohair"},
      {"mulberry silk", "silk"},
      {"tussah silk", "silk_tussah"},
      {"organic cotton", "cotton"},
      {"mercerised cotton", "cotton_mercerised"},
      {"mercerized cotton", "cotton_mercerised"},
      {"bamboo", "viscose_bamboo"},
      {"viscose (bamboo)", "viscose_bamboo"},
      {"rayon", "viscose"},
      {"metallised polyester", "metallised"},
      {"Baumwolle", "cotton"},
      {"Schurwolle", "wool"},
      {"mérinos", "wool_merino"},
      {"MÉRINOS", "wool_merino"},
      {"soie", "silk"},
      {"algodón", "cotton"},
      {"hør", "flax"},
      {"élasthanne", "elastane"},
      {"wool_superwash", "wool_superwash"},
  };
  for (const auto& [words, id] : rows) EXPECT_EQ(named(words), id) << words;
}

TEST(FibreByWords, does_not_guess) {
  for (const char* words :
       {"", "unobtainium", "WO", "wool and cotton", "silk mohair", "woollen", "cottonwool"})
    EXPECT_EQ(named(words), "") << words;
  EXPECT_EQ(fibre_by_words(std::string(10'000'000, 'w')), nullptr);
}

TEST(FibreByWords, finds_every_fibre_by_its_legal_name) {
  for (const Fibre& fibre : fibres()) EXPECT_EQ(named(fibre.id), fibre.id);
}

TEST(Needles, are_found_by_each_name) {
  EXPECT_EQ(needle_by_mm(3.25)->us.text, "3");
  EXPECT_EQ(needle_by_mm(3.3), nullptr);
  ASSERT_EQ(needles_by_us("2½").size(), 1u);
  EXPECT_EQ(needles_by_us("2½")[0]->mm, 3.0);
  EXPECT_EQ(needles_by_us("2 1/2")[0]->mm, 3.0);
  EXPECT_EQ(needles_by_us("2.50")[0]->mm, 3.0);
  EXPECT_EQ(needles_by_us("10")[0]->mm, 6.0);
  EXPECT_EQ(needles_by_us("17").size(), 2u);
  EXPECT_EQ(needles_by_uk_old("10")[0]->mm, 3.25);
  EXPECT_EQ(needles_by_japan("4")[0]->mm, 3.25);
  EXPECT_TRUE(needles_by_us("77").empty());
  EXPECT_TRUE(needles_by_us("").empty());
}

// Craft Yarn Council, Standard Yarn Weight System: stitches per 4 inches of the eight categories.
TEST(WeightCategories, are_found_by_gauge_with_the_published_overlap) {
  const std::pair<double, std::vector<int>> rows[] = {
      {33, {0}}, {27, {1}}, {26, {2}}, {25, {2}}, {21, {3}},    {20, {4}},    {16, {4}}, {15, {5}},
      {12, {5}}, {11, {6}}, {7, {6}},  {6, {7}},  {23, {2, 3}}, {24, {2, 3}}, {20.5, {}}};
  for (const auto& [stitches, numbers] : rows) {
    std::vector<int> found;
    for (const auto* row : weight_categories_by_stitches(stitches))
      found.push_back(static_cast<int>(*row->number));
    EXPECT_EQ(found, numbers) << stitches;
  }
}

TEST(WeightCategories, are_found_by_word) {
  const auto first = [](std::string_view word) {
    const auto found = weight_categories_by_word(word);
    return found.empty() ? "" : std::string(found.front()->name);
  };
  EXPECT_EQ(first("DK"), "Light");
  EXPECT_EQ(first("DK weight"), "Light");
  EXPECT_EQ(first("fingering"), "Super Fine");
  EXPECT_EQ(first("sport"), "Fine");
  EXPECT_EQ(first("worsted"), "Medium");
  EXPECT_EQ(first("Super-bulky"), "Super Bulky");
  EXPECT_EQ(first("8 ply"), "Light");
  EXPECT_EQ(first("3"), "Light");
  EXPECT_EQ(first("lace"), "Lace");
  EXPECT_EQ(first("heavy"), "");
  EXPECT_EQ(first(""), "");
}

// Council Directive 76/211/EEC, Annex I, 2.4, and the German packaging ordinance of 2020, section 9(3).
TEST(Shortages, follow_the_european_mass_steps) {
  EXPECT_DOUBLE_EQ(european_mass_shortage(grams(25))->amount, 2.3);
  EXPECT_DOUBLE_EQ(european_mass_shortage(grams(50))->amount, 4.5);
  EXPECT_DOUBLE_EQ(european_mass_shortage(grams(150))->amount, 6.8);
  EXPECT_DOUBLE_EQ(european_mass_shortage(grams(1000))->amount, 15);
  EXPECT_DOUBLE_EQ(european_mass_limit(grams(50))->amount, 9);
  EXPECT_FALSE(european_mass_shortage(grams(4)));
  EXPECT_FALSE(european_mass_shortage(grams(10'001)));
  EXPECT_FALSE(european_mass_shortage(grams(-1)));
  for (double step : {50.0, 100.0, 200.0, 300.0, 500.0, 1000.0})
    EXPECT_NEAR(european_mass_shortage(grams(step))->amount,
                european_mass_shortage(grams(step + 1e-6))->amount, 0.1001)
        << step;
}

TEST(Shortages, know_the_yarn_step_of_the_german_length_rule) {
  EXPECT_DOUBLE_EQ(german_yarn_length_shortage(metres(100))->amount, 4);
  EXPECT_DOUBLE_EQ(german_yarn_length_shortage(metres(101))->amount, 2.02);
  EXPECT_FALSE(german_yarn_length_shortage(metres(0)));
}

// NIST Handbook 133, Table 2-5: 113 g lies in the step of 0.25 oz (7.2 g) above 81 g; recalled, not read.
TEST(Shortages, know_the_united_states_steps) {
  EXPECT_DOUBLE_EQ(united_states_mass_shortage(grams(100))->amount, 7.2);
  EXPECT_DOUBLE_EQ(united_states_mass_shortage(grams(20))->amount, 2);
  EXPECT_DOUBLE_EQ(united_states_mass_shortage(grams(36))->amount, 3.6);
  EXPECT_FALSE(united_states_mass_shortage(grams(5000)));
  EXPECT_DOUBLE_EQ(united_states_length_shortage(metres(30))->amount, 0.45);
}

TEST(Citation, spells_keys_out) {
  EXPECT_EQ(
      citation("MUNDEN59"),
      "Munden D.L., The geometry and dimensional properties of plain-knit fabrics, J. Text. Inst. 50 (1959) "
      "T448-T471");
  EXPECT_NE(citation("E76; FPACKV s.9(3)").find("Annex I"), std::string::npos);
  EXPECT_NE(citation("E76; FPACKV s.9(3)").find(" s.9(3)"), std::string::npos);
  EXPECT_NE(citation("MUNDEN59", Confidence::memory).find("from memory"), std::string::npos);
  EXPECT_EQ(citation("TRADE", Confidence::common_practice), "common practice, no source");
  EXPECT_EQ(citation(""), "");
  EXPECT_EQ(citation("NOSUCHKEY"), "NOSUCHKEY");
}

TEST(Lookup, misses_without_harm) {
  EXPECT_EQ(fibre_by_id(""), nullptr);
  EXPECT_EQ(fibre_by_id("no such"), nullptr);
  EXPECT_EQ(count_system_by_name("den")->name, "denier");
  EXPECT_EQ(count_system_by_name("denier")->symbol, "den");
  EXPECT_EQ(rule_by_id("nothing"), nullptr);
  EXPECT_NE(caution_by_id("cord_neck"), nullptr);
  EXPECT_NE(package_tolerance_by_id("iso139"), nullptr);
  EXPECT_NE(loop_constant_by_id("munden_fully_Ks"), nullptr);
}

}  // namespace
}  // namespace skeinproof
