// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include "core/fabric/chart_text.h"
#include "tests/core/fabric/yoke_chart.h"

namespace skeinproof {
namespace {

using Rounds = std::vector<std::string>;

Rounds rounds_of(std::string_view text, const ChartTextOptions& options = {}) {
  const auto chart = read_chart_text(text, options);
  EXPECT_TRUE(chart) << (chart ? "" : chart.error().message());
  return chart ? *chart->rounds : Rounds{};
}

Error error_of(std::string_view text, const ChartTextOptions& options = {}) {
  const auto chart = read_chart_text(text, options);
  EXPECT_FALSE(chart);
  return chart ? Error{} : chart.error();
}

TEST(ChartText, ReadsARoundALine) {
  EXPECT_EQ(rounds_of("MMA\nAAM\n"), (Rounds{"MMA", "AAM"}));
  EXPECT_EQ(rounds_of("\xef\xbb\xbfMMA\r\n\r\nAAM"), (Rounds{"MMA", "AAM"}));
  EXPECT_EQ(rounds_of("MMA\rAAM"), (Rounds{"MMA", "AAM"}));
  EXPECT_EQ(rounds_of("  MMA \xc2\xa0\n"), (Rounds{"MMA"}));
}

TEST(ChartText, ReadsWordsAsRounds) {
  EXPECT_EQ(rounds_of("MMMM AMMM\nAAMA"), (Rounds{"MMMM", "AMMM", "AAMA"}));
  ChartTextOptions groups;
  groups.words_are_rounds = false;
  EXPECT_EQ(rounds_of("MMMM AMMM\nAAAA AAMA", groups), (Rounds{"MMMMAMMM", "AAAAAAMA"}));
}

TEST(ChartText, ReadsCells) {
  EXPECT_EQ(rounds_of("M A M\nA A M"), (Rounds{"MAM", "AAM"}));
  EXPECT_EQ(rounds_of("M\tA\tM\n\tA\t\n"), (Rounds{"MAM", "-A-"}));
  EXPECT_EQ(rounds_of("M, A, M\n,A,M"), (Rounds{"MAM", "-AM"}));
  EXPECT_EQ(rounds_of("M;A;M\n\"A\";\" \";\"M\""), (Rounds{"MAM", "A-M"}));
  EXPECT_EQ(rounds_of("M\tA\n\t\nA\tM"), (Rounds{"MA", "AM"}));
}

TEST(ChartText, TakesEveryMarkOfNoStitch) {
  EXPECT_EQ(rounds_of("M.A\nM_A\nM-A\nM–A\nM·A\n\"M A\""), Rounds(6, "M-A"));
}

TEST(ChartText, LeavesRoundNumbersOut) {
  EXPECT_EQ(rounds_of("1 MMA\n2 AAM"), (Rounds{"MMA", "AAM"}));
  EXPECT_EQ(rounds_of("MMA 1\nAAM 2"), (Rounds{"MMA", "AAM"}));
  EXPECT_EQ(rounds_of("1: MMA\n2:AAM\n3. AAA\n4) MMM"), (Rounds{"MMA", "AAM", "AAA", "MMM"}));
  EXPECT_EQ(rounds_of("Round 1: MMA\nrnd 2 AAM"), (Rounds{"MMA", "AAM"}));
  EXPECT_EQ(rounds_of("1\tM\tA\n2\tA\tM"), (Rounds{"MA", "AM"}));
  EXPECT_EQ(rounds_of("M\tA\t1\nA\tM\t2\n2\t1\t\n"), (Rounds{"MA", "AM"}));
  EXPECT_EQ(rounds_of("MMA\nAAM 2\nAAA"), (Rounds{"MMA", "AAM", "AAA"}));
}

TEST(ChartText, FiguresMayBeSymbols) {
  EXPECT_EQ(rounds_of("1121\n2212"), (Rounds{"1121", "2212"}));
  EXPECT_EQ(rounds_of("1 2 1\n2 2 1"), (Rounds{"121", "221"}));
  EXPECT_EQ(rounds_of("1: 1121\n2: 2212"), (Rounds{"1121", "2212"}));
}

TEST(ChartText, NumbersTellWhichLineIsRoundOne) {
  EXPECT_EQ(rounds_of("2 AAM\n1 MMA"), (Rounds{"MMA", "AAM"}));
  EXPECT_EQ(rounds_of("AAA\n5 AAM\nMMM\n3 MMA"), (Rounds{"MMA", "MMM", "AAM", "AAA"}));
  ChartTextOptions first;
  first.order = RoundOrder::first_line_first;
  EXPECT_EQ(rounds_of("2 AAM\n1 MMA", first), (Rounds{"AAM", "MMA"}));
  ChartTextOptions last;
  last.order = RoundOrder::last_line_first;
  EXPECT_EQ(rounds_of("AAM\nMMA", last), (Rounds{"MMA", "AAM"}));
}

TEST(ChartText, PadsNarrowerRounds) {
  EXPECT_EQ(rounds_of("MMMA\nMA"), (Rounds{"MMMA", "--MA"}));
  ChartTextOptions right;
  right.padding = Padding::right;
  EXPECT_EQ(rounds_of("MMMA\nMA", right), (Rounds{"MMMA", "MA--"}));
  ChartTextOptions worked;
  worked.stitch_one = StitchOne::left;
  EXPECT_EQ(rounds_of("AMMM\nAM", worked), (Rounds{"MMMA", "--MA"}));
}

TEST(ChartText, GivesEverySymbolAColour) {
  const Chart chart = read_chart_text("MMA\nB-M").value();
  ASSERT_EQ(chart.colours.size(), 3u);
  EXPECT_EQ(chart.colours[0].symbol, "M");
  EXPECT_EQ(chart.colours[2].symbol, "B");
  EXPECT_FALSE(chart.colours[0].role);
}

TEST(ChartText, TheDrawnYokeEqualsTheListedOne) {
  ChartTextOptions listed;
  listed.stitch_one = StitchOne::left;
  const Chart drawn = test::yoke_chart();
  const Rounds from_round_24 = rounds_of(
      "AMMMAMMMAMMM MMMMMMMMMMMM MMMMMMMMMMMM MMMMMMMMM MMCMMCMMC MCCMCCMCC MMCMMCMMC\n"
      "MMMMMMMMM AMMAMMAMM AAMAAMAAM AAAAAAAAA",
      listed);
  ASSERT_EQ(from_round_24.size(), 11u);
  for (std::size_t i = 0; i < from_round_24.size(); ++i)
    EXPECT_EQ(from_round_24[i], drawn.rounds->at(23 + i)) << i;
}

TEST(ChartTextErrors, UnknownCharacter) {
  const Error error = error_of("MMMM\nMéMM");
  EXPECT_EQ(error.kind, ErrorKind::wrong_format);
  EXPECT_EQ(error.place, (Place{"", 2, 2}));
  EXPECT_EQ(error.found, "“é”");
  EXPECT_EQ(error_of("M\tA\nM\té").place, (Place{"", 2, 3}));
  EXPECT_EQ(error_of("3 MM(M").place, (Place{"", 1, 5}));
  EXPECT_EQ(error_of("MM\nM\xff").kind, ErrorKind::wrong_format);
}

TEST(ChartTextErrors, WrongWidthWhereNothingIsPadded) {
  ChartTextOptions options;
  options.padding = Padding::none;
  const Error error = error_of("1 MMMM\n2 MMMM\n3 MMM", options);
  EXPECT_EQ(error.kind, ErrorKind::wrong_count);
  EXPECT_EQ(error.place, (Place{"", 3, 3}));
  EXPECT_EQ(error.message(), "3:3: found 3 squares, expected 4 squares as in the first line");
}

TEST(ChartTextErrors, TooManySymbols) {
  EXPECT_EQ(rounds_of("ABCDEFGHIJKL").size(), 1u);
  const Error error = error_of("ABCDEFGHIJKL\nMNOPQRSTUVWX");
  EXPECT_EQ(error.kind, ErrorKind::out_of_range);
  EXPECT_EQ(error.place, (Place{"", 2, 1}));
  EXPECT_EQ(error.found, "24 different symbols");
}

TEST(ChartTextErrors, TooLarge) {
  EXPECT_EQ(error_of(std::string(2001, 'M')).kind, ErrorKind::out_of_range);
  std::string tall;
  for (int i = 0; i < 2001; ++i) tall += "M\n";
  EXPECT_EQ(error_of(tall).place, (Place{"", 2001, 1}));
}

TEST(ChartTextErrors, MoreThanASymbolInACell) {
  const Error error = error_of("M\tM\nM\tCC1");
  EXPECT_EQ(error.place, (Place{"", 2, 3}));
  EXPECT_EQ(error.found, "“CC1”");
}

TEST(ChartTextErrors, NumbersThatContradictThemselves) {
  EXPECT_EQ(error_of("1 MM\n2 MM\n2 AA").place.line, 3);
  EXPECT_EQ(error_of("1 MM\n3 MM\n2 AA").kind, ErrorKind::wrong_shape);
}

TEST(ChartTextErrors, NothingToRead) {
  EXPECT_EQ(error_of("").kind, ErrorKind::wrong_shape);
  EXPECT_EQ(error_of(" \n\t\n").kind, ErrorKind::wrong_shape);
  EXPECT_EQ(error_of("MM\n\"MA").place, (Place{"", 2, 1}));
}

RC_GTEST_PROP(ChartTextProperty, WhatIsWrittenReadsBack, ()) {
  const auto width = *rc::gen::inRange<std::size_t>(1, 20);
  const auto rounds = *rc::gen::nonEmpty(rc::gen::container<Rounds>(
      rc::gen::container<std::string>(width, rc::gen::elementOf(std::string("MABCx01#*+=-")))));
  ChartTextOptions options;
  options.order =
      *rc::gen::element(RoundOrder::by_numbers, RoundOrder::first_line_first, RoundOrder::last_line_first);
  options.stitch_one = *rc::gen::element(StitchOne::right, StitchOne::left);
  options.padding = *rc::gen::element(Padding::none, Padding::left, Padding::right);
  const std::string text = chart_text(test::chart_of(rounds), options);
  const auto read = read_chart_text(text, options);
  RC_ASSERT(read.has_value());
  RC_ASSERT(*read->rounds == rounds);
  RC_ASSERT(chart_text(*read, options) == text);
}

RC_GTEST_PROP(ChartTextProperty, AnyBytesAreReadOrRefused, ()) {
  const auto text = *rc::gen::container<std::string>(
      rc::gen::oneOf(rc::gen::arbitrary<char>(), rc::gen::elementOf(std::string("MA-12 \t\n,;\":."))));
  const auto read = read_chart_text(text);
  if (!read) {
    RC_ASSERT(!read.error().message().empty());
    return;
  }
  RC_ASSERT(!read->rounds->empty());
  for (const std::string& round : *read->rounds) {
    RC_ASSERT(round.size() == read->rounds->front().size());
    for (const char square : round) RC_ASSERT(square == no_stitch || is_chart_symbol(square));
  }
}

}  // namespace
}  // namespace skeinproof
