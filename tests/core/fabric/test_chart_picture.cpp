// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fabric/chart_picture.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include "core/fabric/chart_edits.h"
#include "tests/core/fabric/yoke_chart.h"

namespace skeinproof {
namespace {

using test::chart_of;
using Bytes = std::vector<std::byte>;
using Rounds = std::vector<std::string>;

const std::vector<PictureColour> four_colours{
    {'M', {74, 53, 42}, 0}, {'A', {160, 175, 140}, 0}, {'B', {225, 180, 60}, 0}, {'C', {190, 75, 50}, 0}};

Bytes bytes_of(const std::string& text) {
  const auto* data = reinterpret_cast<const std::byte*>(text.data());
  return {data, data + text.size()};
}

Bytes picture_of(const Rounds& rounds, int block_size = 1) {
  return chart_picture(chart_of(rounds), four_colours, block_size).value();
}

TEST(ChartPicture, ReadsTheBottomRowAsRoundOne) {
  const ChartPicture read = read_chart_picture(picture_of({"MMMA", "-MMB"})).value();
  EXPECT_EQ(*read.chart.rounds, (Rounds{"AAAB", "-AAC"}));
  ASSERT_EQ(read.colours.size(), 3u);
  EXPECT_EQ(read.colours[0].symbol, 'A');
  EXPECT_EQ(read.colours[0].colour, (Srgb{74, 53, 42}));
  EXPECT_EQ(read.colours[0].stitches, 5);
  EXPECT_EQ(read.chart.colours.size(), 3u);
}

TEST(ChartPicture, TheYokeAsAPictureIsTheYokeAsText) {
  const ChartPicture read = read_chart_picture(bytes_of(test::file_bytes("quillmarsh-yoke.png"))).value();
  ASSERT_EQ(read.colours.size(), 4u);
  EXPECT_EQ(read.colours[0].stitches, 177);
  EXPECT_EQ(read.colours[1].stitches, 142);
  EXPECT_EQ(read.colours[2].stitches, 101);
  EXPECT_EQ(read.colours[3].stitches, 64);
  Chart chart = read.chart;
  for (const auto& [from, to] : std::vector<std::pair<char, char>>{{'A', 'M'}, {'C', 'A'}, {'D', 'C'}})
    chart = with_symbol_replaced(std::move(chart), from, to).value();
  EXPECT_EQ(*chart.rounds, *test::yoke_chart().rounds);
}

TEST(ChartPicture, FindsTheSizeOfABlock) {
  const Rounds rounds{"MMA", "ABM"};
  const Bytes large = picture_of(rounds, 7);
  const auto found = read_chart_picture(large, {find_block_size}).value();
  EXPECT_EQ(found.block_size, 7);
  EXPECT_EQ(*found.chart.rounds, *read_chart_picture(picture_of(rounds)).value().chart.rounds);
  EXPECT_EQ(*read_chart_picture(large, {7}).value().chart.rounds, *found.chart.rounds);
  EXPECT_EQ(read_chart_picture(large).value().chart.rounds->size(), 14u);
}

TEST(ChartPictureErrors, BlocksThatDoNotFit) {
  const Bytes bytes = picture_of({"MMAA", "MAAA", "MMAA", "MMAA"});
  EXPECT_EQ(read_chart_picture(bytes, {2}).error().kind, ErrorKind::wrong_shape);
  EXPECT_EQ(read_chart_picture(bytes, {3}).error().kind, ErrorKind::wrong_shape);
  EXPECT_EQ(read_chart_picture(bytes, {-1}).error().kind, ErrorKind::out_of_range);
}

TEST(ChartPictureErrors, TooManyColours) {
  // A grey ramp of 16 levels, 16 x 1 pixels, 4 bits a pixel.
  const unsigned char ramp[] = {0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0x00, 0x00, 0x00, 0x0d, 0x49,
                                0x48, 0x44, 0x52, 0x00, 0x00, 0x00, 0x10, 0x00, 0x00, 0x00, 0x01, 0x04, 0x00,
                                0x00, 0x00, 0x00, 0x37, 0xe2, 0x9c, 0x82, 0x00, 0x00, 0x00, 0x11, 0x49, 0x44,
                                0x41, 0x54, 0x78, 0x9c, 0x63, 0x60, 0x54, 0x76, 0x4d, 0xef, 0x5c, 0x7d, 0xf6,
                                0x3d, 0x00, 0x0b, 0x55, 0x03, 0xc1, 0x8e, 0x46, 0x63, 0xc4, 0x00, 0x00, 0x00,
                                0x00, 0x49, 0x45, 0x4e, 0x44, 0xae, 0x42, 0x60, 0x82};
  const Bytes bytes(reinterpret_cast<const std::byte*>(ramp),
                    reinterpret_cast<const std::byte*>(ramp) + sizeof ramp);
  const auto read = read_chart_picture(bytes);
  ASSERT_FALSE(read);
  EXPECT_EQ(read.error().kind, ErrorKind::out_of_range);
  EXPECT_EQ(read.error().found, "16 colours");
  EXPECT_EQ(read.error().expected, "at most 12");
}

TEST(ChartPictureErrors, NoPictureOrADamagedOne) {
  EXPECT_EQ(read_chart_picture({}).error().kind, ErrorKind::wrong_format);
  EXPECT_EQ(read_chart_picture(bytes_of("MMMA\nMMAA\n")).error().kind, ErrorKind::wrong_format);
  Bytes cut = picture_of({"MMMA"});
  cut.resize(40);
  EXPECT_EQ(read_chart_picture(cut).error().kind, ErrorKind::damaged);
  cut.resize(8);
  EXPECT_EQ(read_chart_picture(cut).error().kind, ErrorKind::damaged);
}

TEST(ChartPictureErrors, TooLarge) {
  EXPECT_EQ(chart_picture(chart_of({std::string(1001, 'M')}), four_colours, 2).error().kind,
            ErrorKind::out_of_range);
  EXPECT_FALSE(chart_picture(Chart{}, four_colours));
  // A header of 4096 x 1 indexed pixels with its own checksum, from byte 16 on.
  Bytes huge = picture_of({"MMMA"});
  const unsigned char header[] = {0x00, 0x00, 0x10, 0x00, 0x00, 0x00, 0x00, 0x01, 0x04,
                                  0x03, 0x00, 0x00, 0x00, 0xac, 0x0f, 0x76, 0x4f};
  for (std::size_t i = 0; i < sizeof header; ++i) huge[16 + i] = static_cast<std::byte>(header[i]);
  const auto read = read_chart_picture(huge);
  ASSERT_FALSE(read);
  EXPECT_EQ(read.error().kind, ErrorKind::out_of_range);
  EXPECT_EQ(read.error().found, "4096 × 1 pixels");
}

TEST(ChartPictureErrors, EveryCutAndEveryFlippedByteIsTakenCalmly) {
  const Bytes whole = picture_of({"MMMA", "-ABC"});
  for (std::size_t n = 0; n < whole.size(); ++n) {
    Bytes cut(whole.begin(), whole.begin() + static_cast<std::ptrdiff_t>(n));
    const auto read = read_chart_picture(cut);
    if (!read) {
      EXPECT_FALSE(read.error().message().empty());
    }
    for (const int flip : {0x01, 0x80, 0xff}) {
      Bytes spoilt = whole;
      spoilt[n] ^= static_cast<std::byte>(flip);
      const auto result = read_chart_picture(spoilt, {find_block_size});
      if (result) {
        EXPECT_FALSE(result->chart.rounds->empty());
      }
    }
  }
}

RC_GTEST_PROP(ChartPictureProperty, WhatIsDrawnReadsBack, ()) {
  const auto width = *rc::gen::inRange<std::size_t>(1, 20);
  const auto rounds = *rc::gen::nonEmpty(rc::gen::container<Rounds>(
      rc::gen::container<std::string>(width, rc::gen::elementOf(std::string("MABC-")))));
  const auto block = *rc::gen::inRange(1, 5);
  const auto read = read_chart_picture(picture_of(rounds, block), {block});
  RC_ASSERT(read.has_value());
  for (std::size_t r = 0; r < rounds.size(); ++r)
    for (std::size_t s = 0; s < width; ++s) {
      const char symbol = read->chart.rounds->at(r)[s];
      RC_ASSERT((symbol == no_stitch) == (rounds[r][s] == no_stitch));
      for (const PictureColour& drawn : four_colours)
        for (const PictureColour& seen : read->colours)
          if (drawn.symbol == rounds[r][s] && seen.symbol == symbol) RC_ASSERT(drawn.colour == seen.colour);
    }
}

}  // namespace
}  // namespace skeinproof
