// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "app/pages/pieces/chart_facts.h"
#include "app/pages/pieces/fabric_figures.h"
#include "app/pages/pieces/joins.h"
#include "app/pages/pieces/paste_list.h"
#include "app/pages/pieces/pieces_sheet.h"
#include "app/pages/pieces/stripes_text.h"
#include "core/pattern/piece_edits.h"
#include "tests/app/support/quillmarsh.h"

namespace skeinproof {
namespace {

const Section& section_named(const Pattern& pattern, std::string_view name) {
  for (const Piece& piece : pattern.pieces)
    for (const Section& section : piece.sections)
      if (section.name == name) return section;
  ADD_FAILURE() << "no section " << name;
  return pattern.pieces.front().sections.front();
}

TEST(StripesText, ReadsWhatItWritesAndTheOtherWayRound) {
  const Pattern pattern = quillmarsh_draft();
  const auto read = read_stripes("MC 6, CC1 4", pattern);
  ASSERT_TRUE(read.has_value());
  ASSERT_EQ(read->size(), 2u);
  EXPECT_EQ((*read)[0].role, pattern.roles[0].id);
  EXPECT_EQ((*read)[1].rows.value, 4);
  EXPECT_EQ(stripes_text(*read, pattern), "MC 6, CC1 4");
  EXPECT_EQ(read_stripes("6 mc; 4 cc1", pattern)->at(0).rows.value, 6);
  EXPECT_TRUE(read_stripes("  ", pattern)->empty());
}

TEST(StripesText, RefusesWhatIsNoStripe) {
  const Pattern pattern = quillmarsh_draft();
  const auto unknown = read_stripes("MC 6, XX 4", pattern);
  ASSERT_FALSE(unknown.has_value());
  EXPECT_EQ(unknown.error().kind, ErrorKind::unknown_name);
  EXPECT_NE(unknown.error().found.find("XX"), std::string::npos);
  EXPECT_NE(unknown.error().expected.find("MC, CC1, CC2, CC3"), std::string::npos);
  EXPECT_FALSE(read_stripes("MC six", pattern).has_value());
  EXPECT_FALSE(read_stripes("MC 0", pattern).has_value());
  EXPECT_FALSE(read_stripes("MC", pattern).has_value());
}

TEST(PasteList, TakesCellsOfASpreadsheetAndBracketedLists) {
  Pattern pattern = quillmarsh_draft();
  const std::string text =
      "Pocket\n"
      "lining 2\t400\t400\t420\t420\t440\t440\t460\t460\t480\r\n"
      "\n"
      "edging of 4 rows 80 (80, 84, 84) (88, 88, 92, 92, 96)\n";
  const auto list = read_section_list(text, pattern);
  ASSERT_TRUE(list.has_value()) << list.error().message();
  ASSERT_EQ(list->size(), 2u);
  EXPECT_EQ((*list)[0].piece, "Pocket");
  EXPECT_EQ((*list)[0].name, "lining 2");
  EXPECT_EQ((*list)[1].name, "edging of 4 rows");
  EXPECT_EQ((*list)[1].stitches.at(4)->value, 88);
  take_section_list(pattern, *list, PieceId{});
  ASSERT_EQ(pattern.pieces.back().name, "Pocket");
  EXPECT_EQ(pattern.pieces.back().sections[0].stitches.at(8)->value, 480);
  EXPECT_TRUE(check_invariants(pattern).has_value());
  const std::size_t pieces = pattern.pieces.size();
  take_section_list(pattern, *list, PieceId{});
  EXPECT_EQ(pattern.pieces.size(), pieces);  // the same names are filled, not added again
  EXPECT_EQ(pattern.pieces.back().sections.size(), 2u);
}

TEST(PasteList, SaysWhichLineHasTooFewValues) {
  const auto list =
      read_section_list("hem 1 (2, 3, 4) (5, 6, 7, 8, 9)\ncuff 1 (2, 3, 4) (5, 6, 7, 8)", quillmarsh_draft());
  ASSERT_FALSE(list.has_value());
  EXPECT_EQ(list.error().kind, ErrorKind::wrong_count);
  EXPECT_EQ(list.error().place.line, 2);
  EXPECT_EQ(list.error().found, "8 values");
  EXPECT_FALSE(read_section_list("", quillmarsh_draft()).has_value());
}

TEST(Joins, ComparesWhatASectionTakesWithWhatTheOneBeforeItLeaves) {
  Pattern pattern = quillmarsh_draft();
  const Section chart = section_named(pattern, "chart");
  Joins joins = joins_of(pattern, chart.id.value, 4, ReaderStyle{});
  EXPECT_EQ(joins.verdict, "all nine agree");
  EXPECT_EQ(joins.lines.value(0), "Size 5: 38 repeats × 12 = 456 stitches in, × 4 = 152 out.");
  find_section(pattern, chart.id)->repeats.set(2, Entered<double>{34, "34"});
  joins = joins_of(pattern, chart.id.value, 2, ReaderStyle{});
  EXPECT_EQ(joins.verdict, "size 3 differs");
  EXPECT_EQ(joins.lines.value(1), "“plain rounds” leaves 396, “chart” takes 408: 12 to increase.");
}

TEST(Joins, SaysTheOneThingThatIsMissing) {
  Pattern pattern = quillmarsh_draft();
  const SectionId id = section_named(pattern, "chart").id;
  EXPECT_EQ(what_is_missing(pattern, id.value), "");
  find_section(pattern, id)->repeats = {};
  EXPECT_NE(what_is_missing(pattern, id.value), "");
  find_section(pattern, id)->fabric = {};
  EXPECT_TRUE(what_is_missing(pattern, id.value).contains("fabric"));
}

class ChartFactsTest : public testing::Test {
 protected:
  Pattern pattern = quillmarsh_draft();
  const Chart& chart() const { return pattern.charts.front(); }
  ChartFacts facts() const {
    return chart_facts(pattern, chart(), census(chart()), fabric_of_chart(pattern, chart().id, 0));
  }
};

// Counted by hand from the drawn chart.
TEST_F(ChartFactsTest, CountsOneRepeat) {
  const ChartFacts all = facts();
  ASSERT_EQ(all.colours.size(), 4u);
  const long worked[] = {177, 101, 142, 64}, passed[] = {64, 68, 80, 107}, entries[] = {4, 4, 2, 3};
  const double metres[] = {3.017, 1.848, 2.535, 1.426};
  const char* labels[] = {"MC", "CC1", "CC2", "CC3"};
  for (std::size_t i = 0; i < 4; ++i) {
    EXPECT_EQ(all.colours[i].label, labels[i]);
    EXPECT_EQ(all.colours[i].worked, worked[i]);
    EXPECT_EQ(all.colours[i].passed, passed[i]);
    EXPECT_EQ(all.colours[i].entries, entries[i]);
    ASSERT_TRUE(all.colours[i].metres.has_value());
    EXPECT_NEAR(*all.colours[i].metres, metres[i], 0.0006);
  }
  EXPECT_NEAR(all.colours[3].share_of_stitches, 0.132, 0.0005);
  EXPECT_NEAR(*all.colours[3].share_of_yarn, 0.162, 0.0005);
}

TEST_F(ChartFactsTest, SaysWhereColoursTouchInTheOrderOfThePalette) {
  const ChartFacts all = facts();
  ASSERT_EQ(all.touches.size(), 5u);
  EXPECT_EQ(all.touches[0].words, "MC with CC1");
  EXPECT_EQ(all.touches[0].edges, 98);
  EXPECT_EQ(all.touches[2].words, "CC1 with CC2");
  EXPECT_NEAR(*all.touches[2].lightness_difference, 4, 1e-9);
  EXPECT_NEAR(all.touches[2].share, 0.176, 0.0005);
}

TEST_F(ChartFactsTest, NotesTheLongestFloatOfARound) {
  const RoundFacts round = round_facts(pattern, chart(), facts(), 17, ReaderStyle{});
  EXPECT_EQ(round.held, "B 11 sts, C 1 st");
  EXPECT_EQ(round.note, "CC3 passes 11 stitches, a float of 4.2 cm; rounds 8 and 18.");
  EXPECT_EQ(round.working, "1 × 1.56 + 11 × 0.40 = 5.96 cm of CC3 in one repeat of this round.");
  EXPECT_EQ(round_facts(pattern, chart(), facts(), 0, ReaderStyle{}).note, "One colour: nothing is carried.");
}

TEST_F(ChartFactsTest, WithoutAFabricThereAreNoMetresButASentence) {
  const ChartFacts all = chart_facts(pattern, chart(), census(chart()), FabricId{});
  EXPECT_FALSE(all.colours[0].metres.has_value());
  EXPECT_FALSE(all.missing.isEmpty());
  EXPECT_EQ(all.colours[0].worked, 177);
}

TEST_F(ChartFactsTest, CautionsForFloatsInsideSmallGarmentsOnly) {
  EXPECT_TRUE(float_caution(pattern, census(chart())).isEmpty());
  pattern.wearer = "baby";
  EXPECT_TRUE(float_caution(pattern, census(chart())).contains("float"));
  EXPECT_TRUE(float_caution(pattern, ChartCensus{}).isEmpty());
}

TEST(FabricFigures, JudgeTheLoopInStitchWidths) {
  Pattern pattern = quillmarsh_draft();
  const auto figure = [&](const QString& name) {
    for (const FigureRow& row :
         fabric_figures(pattern, pattern.fabrics.front(), assess(pattern), ReaderStyle{}))
      if (row.name == name) return row;
    return FigureRow{};
  };
  EXPECT_EQ(figure("Loop length").figure, "1.500 cm");
  EXPECT_EQ(figure("Loop in stitch widths").figure, "3.90");
  EXPECT_TRUE(figure("Loop in stitch widths").how.startsWith("plausible"));
  // 26 x 34 in 10 cm: 8.84 stitches per cm².
  EXPECT_EQ(figure("Stitches in a square centimetre").figure, "8.84");
  EXPECT_EQ(figure("Yarn in a square metre").figure, "1,346 m");
  EXPECT_FALSE(figure("Loop in stitch widths").source.isEmpty());
  pattern.fabrics.front().typed_loop = Entered<Centimetres>{centimetres(2.5), "2.5 cm"};
  EXPECT_TRUE(figure("Loop in stitch widths").how.startsWith("not plausible"));
}

TEST(PiecesSheet, HoldsPiecesCensusAndTheSquares) {
  const Sheet sheet = pieces_sheet(quillmarsh_draft(), ReaderStyle{});
  ASSERT_GE(sheet.parts.size(), 4u);
  const auto& pieces = std::get<Table>(sheet.parts[0]);
  EXPECT_EQ(pieces.columns.size(), 4u + 9u);
  bool found = false;
  for (const Row& row : pieces.rows)
    if (row.cells.front().text == "chart") found = row.cells[8].text == "38 × 484";
  EXPECT_TRUE(found);
  const Lines& squares = std::get<Lines>(sheet.parts.back());
  ASSERT_EQ(squares.lines.size(), 50u);
  EXPECT_EQ(squares.lines.front()[1].text, "--------MMMM");
  EXPECT_EQ(squares.lines.back()[1].text, "MMMMMMMMMMMM");
}

}  // namespace
}  // namespace skeinproof
