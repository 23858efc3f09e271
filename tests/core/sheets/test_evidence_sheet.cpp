// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheets/evidence_sheet.h"

#include <gtest/gtest.h>

#include "core/sheets/write_sheet.h"
#include "tests/support/samples.h"

namespace skeinproof {
namespace {

using testing::quillmarsh;

std::string text_of(const Pattern& pattern) {
  return plain_text(evidence_sheet(pattern, assess(pattern), pattern.house()));
}

TEST(EvidenceSheet, TheRoadsStandUnderEachOther) {
  const Pattern pattern = quillmarsh();
  const Sheet sheet = evidence_sheet(pattern, assess(pattern), pattern.house());
  ASSERT_EQ(sheet.parts.size(), pattern.roles.size());
  const Table& mc = std::get<Table>(sheet.parts[0]);
  EXPECT_EQ(mc.title, "MC Peat 08, m");
  ASSERT_EQ(mc.rows.size(), 6u);
  EXPECT_EQ(mc.rows[3].cells[4].text, "1050–1098");
  EXPECT_EQ(mc.rows[4].cells[4].text, "4, 2");
}

TEST(EvidenceSheet, ARoadThatIsNotThereTakesNoRow) {
  Pattern pattern = quillmarsh();
  pattern.weighings.clear();
  for (Role& role : pattern.roles) role.printed_count = {};
  const std::string text = text_of(pattern);
  EXPECT_EQ(text.find("by weighed sample "), std::string::npos);
  EXPECT_EQ(text.find("told by"), std::string::npos);
  EXPECT_NE(text.find("by stitches"), std::string::npos);
}

TEST(EvidenceSheet, AListThatContradictsItselfIsNamed) {
  Pattern pattern = quillmarsh();
  pattern.roles[0].printed_count.set(4, Entered<double>{8, "8"});
  pattern.roles[0].printed_count.set(5, Entered<double>{7, "7"});
  EXPECT_NE(text_of(pattern).find("MC: the printed counts of sizes 5 and 6 cannot both be right"),
            std::string::npos);
}

TEST(EvidenceSheet, AHouseInYardsReadsYards) {
  Pattern pattern = quillmarsh();
  pattern.house_styles.front().systems = SystemOrder::imperial_first;
  const Sheet sheet = evidence_sheet(pattern, assess(pattern), pattern.house());
  EXPECT_EQ(std::get<Table>(sheet.parts[0]).title, "MC Peat 08, yd");
  EXPECT_EQ(std::get<Table>(sheet.parts[0]).rows[3].cells[4].text, "1148–1201");
}

}  // namespace
}  // namespace skeinproof
