// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheets/make_sheets.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/manuscript/house_styles.h"
#include "core/need/cautions.h"
#include "core/sheets/write_sheet.h"
#include "tests/core/manuscript/block_samples.h"

namespace skeinproof {
namespace {

using ::testing::Contains;
using testing::golden;
using ::testing::HasSubstr;
using ::testing::Not;
using testing::Sample;
using testing::socks_sample;
using testing::yoke_sample;

const Table& table_of(const Sheet& sheet) {
  for (const SheetPart& part : sheet.parts)
    if (const auto* table = std::get_if<Table>(&part)) return *table;
  static const Table none;
  return none;
}

TEST(PerSizeSheet, AsLaidDown) {
  const Sample yoke = yoke_sample();
  EXPECT_EQ(plain_text(per_size_sheet(yoke.pattern, yoke.assessment, HouseStyle{}, "1 March 2025")),
            golden("yoke_per_size.txt"));
  const Sample socks = socks_sample();
  EXPECT_EQ(plain_text(per_size_sheet(socks.pattern, socks.assessment,
                                      *ready_house_style("Imperial first, one bracket"), "",
                                      {SizeFigure::skeins, SizeFigure::fraction, SizeFigure::last_skein,
                                       SizeFigure::planned, SizeFigure::low, SizeFigure::high})),
            golden("socks_per_size_yards.txt"));
}

TEST(PerSizeSheet, KeepsFiguresUnroundedAndGroups) {
  const Sample yoke = yoke_sample();
  const Sheet sheet = per_size_sheet(yoke.pattern, yoke.assessment, HouseStyle{});
  const Table& table = table_of(sheet);
  ASSERT_EQ(table.columns.size(), 11u);
  ASSERT_EQ(table.rows.size(), 4u * 5 + 1);
  EXPECT_TRUE(table.columns[2].opens_group);
  EXPECT_TRUE(table.columns[6].opens_group);
  EXPECT_FALSE(table.columns[5].opens_group);
  EXPECT_NEAR(*table.rows[1].cells[6].number, (1125.7 + 20) * 1.05, 1e-9);
  EXPECT_NEAR(*table.rows[2].cells[6].bar, 0.8742, 1e-4);
  EXPECT_EQ(*table.rows[20].cells[10].number, 14);
}

TEST(PerSizeSheet, WordsForTheLastSkeinAndDashesForTheUnknown) {
  Sample sample = socks_sample();
  sample.assessment.roles[0].sizes[0] = {};
  sample.assessment.total_skeins[0].reset();
  sample.assessment.not_worked_out.push_back({"MC in size 1", "no rows for the leg", {"Pieces", 0}});
  const Sheet sheet = per_size_sheet(sample.pattern, sample.assessment, HouseStyle{});
  const std::string text = plain_text(sheet);
  EXPECT_THAT(text, HasSubstr("tips over"));  // CC of size 4 needs 1.039 balls
  EXPECT_THAT(sheet.foot_notes, Contains("Not worked out: MC in size 1: no rows for the leg"));
  const Table& table = table_of(sheet);
  EXPECT_EQ(shown(table.rows[0].cells[2], sheet.numbers), "–");
  EXPECT_EQ(shown(table.rows.back().cells[2], sheet.numbers), "–");
  EXPECT_FALSE(table.rows[0].cells[2].number);
}

TEST(BlockSheet, HoldsTheBlockAndWhatItMisses) {
  Sample sample = yoke_sample();
  sample.pattern.roles[2].shade.name.clear();
  const Sheet sheet = block_sheet(sample.pattern, sample.assessment, HouseStyle{});
  EXPECT_THAT(plain_text(sheet),
              HasSubstr(write_block(sample.pattern, sample.assessment, HouseStyle{}).text()));
  EXPECT_THAT(sheet.foot_notes, Contains("Missing: shade of CC2"));
}

TEST(WorkingSheet, IndentsPartsAndNamesTheGround) {
  Step reading;
  reading.label = "Reading";
  reading.figure = 261;
  reading.unit = FigureUnit::grams;
  reading.decimals = 1;
  reading.ground = Ground::scale;
  Step knitted;
  knitted.label = "Knitted";
  knitted.how = "261 g × 3.5 m/g";
  knitted.figure = 913.5;
  knitted.unit = FigureUnit::metres;
  knitted.parts = {reading};
  EXPECT_EQ(plain_text(working_sheet(knitted, yoke_sample().pattern, HouseStyle{})),
            "Quillmarsh Yoke · Working: Knitted\n\n"
            "step       how              figure  unit  stands on\n"
            "---------  ---------------  ------  ----  ---------\n"
            "Knitted    261 g × 3.5 m/g  913.50  m\n"
            "  Reading                    261.0  g     scale\n");
}

TEST(Cautions, CalledForByWearerNotionsAndFibres) {
  Pattern pattern;
  pattern.title = "Thatched Vest";
  pattern.item = "vest";
  pattern.wearer = "adult";
  EXPECT_TRUE(cautions_for(pattern).empty());
  pattern.wearer = "baby";
  EXPECT_TRUE(cautions_for(pattern).empty()) << "no hat in \"thatched\"";
  pattern.item = "bonnet";
  pattern.notions = {{"button", {}, {}}, {"cords", {}, {}}};
  Yarn yarn;
  yarn.composition = {{"mohair", "mohair", {100, {}}}};
  pattern.yarns = {yarn};
  const auto cautions = cautions_for(pattern);
  for (const char* says : {"drawstrings at the neck", "swallowed", "Take hats off babies",
                           "keep away from fire", "sensitive skin", "shedding yarns"})
    EXPECT_THAT(cautions, Contains(HasSubstr(says))) << says;
  EXPECT_THAT(cautions, Not(Contains(HasSubstr("soy"))));
}

TEST(Cautions, SilkAloneDoesNotPrickle) {
  Pattern pattern;
  Yarn yarn;
  yarn.composition = {{"silk", "silk", {100, {}}}};
  pattern.yarns = {yarn};
  EXPECT_TRUE(cautions_for(pattern).empty());
}

}  // namespace
}  // namespace skeinproof
