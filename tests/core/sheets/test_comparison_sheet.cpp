// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheets/comparison_sheet.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "core/sheets/assessment_json.h"
#include "core/sheets/write_sheet.h"
#include "tests/core/substitution/candidates_at_bench.h"

namespace skeinproof {
namespace {

using nlohmann::json;
using testing::add;
using ::testing::AllOf;
using testing::band;
using ::testing::Contains;
using ::testing::HasSubstr;
using testing::lampwick;
using ::testing::Not;
using testing::quillmarsh;
using ::testing::SizeIs;

Sheet sheet_of(const Pattern& pattern) { return comparison_sheet(pattern, assess(pattern), pattern.house()); }

const Table& first_table(const Sheet& sheet) { return std::get<Table>(sheet.parts.front()); }

// The cells behind the heading of a row.
std::vector<std::string> row_of(const Table& table, const std::string& heading) {
  for (const Row& row : table.rows) {
    if (!row.cells.front().text.starts_with(heading)) continue;
    std::vector<std::string> cells;
    for (std::size_t i = 1; i < row.cells.size(); ++i) cells.push_back(row.cells[i].text);
    return cells;
  }
  return {};
}

TEST(ComparisonSheet, FactsAboveConsequencesBelow) {
  const Sheet sheet = sheet_of(quillmarsh());
  const Table& table = first_table(sheet);
  ASSERT_EQ(table.columns.size(), 5u) << "the candidate that is not shown has no column";
  EXPECT_EQ(table.columns[2].heading, "Brindlecote Smooth");
  using Cells = std::vector<std::string>;
  EXPECT_EQ(row_of(table, "skeins MC+CC1+CC2+CC3"),
            (Cells{"7+2+1+1 = 11", "5+1+1+1 = 8 (MC 4.010)", "10+2+1+1 = 14", "8+2+1+1 = 12"}));
  EXPECT_EQ(row_of(table, "basket / per m"),
            (Cells{"€86.90 / 0.045", "€104.00 / 0.043", "€72.80 / 0.040", "€103.20 / 0.051"}));
  EXPECT_EQ(row_of(table, "garment mass"),
            (Cells{"431 g", "503 g (+17 %)", "580 g (+35 %)", "452 g (+5 %)"}));
  EXPECT_EQ(row_of(table, "firmness, gauge"),
            (Cells{"11.1, 26.0", "12.0, about 24.1", "12.9, about 22.4–24.1", "11.4, about 25.3–25.4"}));
  EXPECT_EQ(row_of(table, "will differ")[0], "–");
  EXPECT_THAT(row_of(table, "will differ")[1], HasSubstr("(S8 S6 S5)"));
  EXPECT_THAT(row_of(table, "will differ")[2], HasSubstr("(S1 S2 S14)"));
  EXPECT_THAT(row_of(table, "settle it by")[2], HasSubstr("hang test 47 g, 24 h"));
  EXPECT_EQ(sheet.subtitle, "Yarns side by side, size 5");
}

TEST(ComparisonSheet, FootNotesSayWhatWasNotLookedAtAndTheUsualCautions) {
  const Sheet sheet = sheet_of(quillmarsh());
  EXPECT_THAT(sheet.foot_notes, Contains(AllOf(HasSubstr("Tallowhithe Strand: not looked at"),
                                               HasSubstr("S7, S8 (no structure of Tallowhithe Strand)"))));
  EXPECT_THAT(sheet.foot_notes,
              Contains(AllOf(HasSubstr("Caution, Merrowend Downlight"), HasSubstr("16 CFR 1610"))));
  EXPECT_THAT(sheet.foot_notes, Contains(HasSubstr("a licensed test ask for comes first")));
  EXPECT_THAT(plain_text(sheet), Not(HasSubstr("is safe")));
}

TEST(ComparisonSheet, AtMostThreeConsequencesInTheColumnAllOfThemBelow) {
  Pattern pattern = quillmarsh();
  pattern.candidates.clear();
  Yarn yarn = band("Trouble", 120, {{"cotton", 100}});
  yarn.structure = "single, slubby";
  yarn.colouring = "variegated";
  add(pattern, yarn);
  const Sheet sheet = sheet_of(pattern);
  EXPECT_THAT(row_of(first_table(sheet), "will differ")[1], HasSubstr("(S1 S11 S4), and 3 more below"));
  const Table& below = std::get<Table>(sheet.parts.back());
  EXPECT_THAT(below.rows, SizeIs(6));
  EXPECT_EQ(below.rows.front().cells[1].text, "S1");
}

TEST(ComparisonSheet, GoesOnInFurtherTablesAndWorksInYards) {
  Pattern pattern = quillmarsh();
  pattern.candidates.clear();
  for (int i = 0; i < 8; ++i) add(pattern, band("Yarn " + std::to_string(i), 150 + i));
  pattern.house_styles.front().systems = SystemOrder::imperial_first;
  const Sheet sheet = sheet_of(pattern);
  EXPECT_EQ(first_table(sheet).columns.size(), 8u);
  const Table& second = std::get<Table>(sheet.parts[1]);
  EXPECT_EQ(second.columns.size(), 4u);
  EXPECT_EQ(second.columns[1].heading, "Oddmere Fieldspun") << "the pattern's own stands in each";
  EXPECT_EQ(row_of(second, "basket / per yd")[0], "€86.90 / 0.041");
}

TEST(ComparisonSheet, WithoutCandidatesThePatternsOwnYarnStandsAlone) {
  Pattern pattern = quillmarsh();
  pattern.candidates.clear();
  EXPECT_EQ(first_table(sheet_of(pattern)).columns.size(), 2u);
  const Pattern nothing = new_pattern();
  EXPECT_FALSE(plain_text(comparison_sheet(nothing, assess(nothing), nothing.house())).empty());
}

TEST(CandidatesJson, CarriesTheFactsOfTheSizeAtTheBench) {
  const Pattern pattern = quillmarsh();
  const json written = json::parse(assessment_json(pattern, assess(pattern)));
  const json& all = written["candidates"];
  ASSERT_EQ(all.size(), 5u);
  EXPECT_EQ(all[0]["yarn"], "Oddmere Fieldspun");
  EXPECT_EQ(all[1]["roles"][0]["label"], "MC");
  EXPECT_EQ(all[1]["roles"][0]["skeins"], 5);
  EXPECT_EQ(all[1]["skeins"], 8);
  EXPECT_NEAR(all[1]["basket"].get<double>(), 104, 1e-9);
  EXPECT_EQ(all[1]["currency"], "€");
  EXPECT_NEAR(all[1]["mass_g"].get<double>(), 503, 0.5);
  EXPECT_NEAR(all[1]["firmness"].get<double>(), 12.0, 0.05);
  EXPECT_NEAR(all[2]["thickness_ratio"].get<double>(), 1.08, 0.005);
  EXPECT_NEAR(all[2]["likely_gauge"].get<double>(), 22.41, 0.005);
  EXPECT_NEAR(all[2]["likely_gauge_high"].get<double>(), 24.09, 0.005);
  EXPECT_EQ(all[1]["consequences"], json({"S8", "S6", "S5"}));
  EXPECT_EQ(all[0]["consequences"], json::array());
  EXPECT_EQ(all[4]["shown"], false);
  EXPECT_EQ(all[1]["within_budget"], false);
}

TEST(CandidatesJson, WhatIsNotKnownIsLeftOut) {
  Pattern pattern = lampwick();
  pattern.yarns[0].price.reset();
  pattern.yarns[0].composition.clear();
  const std::string text = assessment_json(pattern, assess(pattern));
  const json own = json::parse(text)["candidates"][0];
  EXPECT_FALSE(own.contains("basket"));
  EXPECT_FALSE(own.contains("thickness_ratio"));
  EXPECT_FALSE(own.contains("within_budget"));
  EXPECT_TRUE(own.contains("firmness"));
  EXPECT_EQ(text.find("null"), std::string::npos);
}

}  // namespace
}  // namespace skeinproof
