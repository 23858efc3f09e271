// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/as_you_go.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/pattern/edits.h"
#include "tests/support/samples.h"

namespace skeinproof {
namespace {

using testing::quillmarsh;

class AsYouGoReadings : public ::testing::Test {
 protected:
  // MC of size 1 on four skeins, 200 g; all lengths by the sheet are 3.5 m/g.
  YarnReading& weigh(std::size_t piece, double used_m, double began_g = 200) {
    YarnReading reading;
    reading.id = take_id<ReadingId>(pattern);
    reading.role = pattern.roles[0].id;
    reading.began_with = Entered<Grams>{grams(began_g), "200 g"};
    reading.left = Entered<Grams>{grams(began_g - used_m / 3.5), "the rest"};
    reading.scale_step = Entered<Grams>{grams(0.1), "0.1"};
    reading.piece = pattern.pieces[piece].id;
    reading.copy = pattern.pieces[piece].copies;
    pattern.readings.push_back(reading);
    return pattern.readings.back();
  }
  Expected<AsYouGo> read() const { return as_you_go(pattern, pattern.roles[0].id, pattern.sizes[0].id); }
  std::string refused() const {
    const auto go = read();
    return go ? "nothing wrong" : go.error().message();
  }
  Pattern pattern = quillmarsh();
};

TEST_F(AsYouGoReadings, AHandThatKnitsByTheSheetFailsWhereTheSheetSaysSo) {
  // Body of size 1: 21,200 stitches of 1.5 cm = 318.0 m.
  weigh(0, 318.0);
  const auto go = read();
  ASSERT_TRUE(go) << go.error().message();
  EXPECT_NEAR(go->factor, 1, 1e-9);
  EXPECT_NEAR(go->left.value(), 382, 1e-6);
  EXPECT_NEAR(go->to_go.value(), 730.8 - 318.0, 0.05);
  ASSERT_TRUE(go->run_out.fails_in.has_value());
  EXPECT_EQ(go->run_out.fails_in->round, 36);
  EXPECT_TRUE(go->run_out.fails_in->in_chart);
  EXPECT_LT(go->chance_to_finish, 0.05);
  // The body is knitted: only the sleeves can still be shortened.
  for (const TurnBack& back : go->run_out.turn_backs) EXPECT_NE(back.piece, pattern.pieces[0].id);
}

TEST_F(AsYouGoReadings, ATightHandFinishes) {
  weigh(0, 318.0 * 0.93);
  const auto go = read();
  ASSERT_TRUE(go);
  EXPECT_NEAR(go->factor, 0.93, 1e-9);
  EXPECT_TRUE(go->run_out.lasts());
  EXPECT_NEAR(go->run_out.spare.value(), 700 - 730.8 * 0.93, 0.05);
  EXPECT_GT(go->chance_to_finish, 0.9);
}

TEST_F(AsYouGoReadings, EachReadingHasItsShareAndCanBeLeftOut) {
  weigh(0, 318.0);
  weigh(1, 318.0 + 2 * 133.905 * 1.1);
  const auto both = read();
  ASSERT_TRUE(both) << both.error().message();
  ASSERT_EQ(both->stretches.size(), 2u);
  EXPECT_NEAR(both->stretches[0].share + both->stretches[1].share, 1, 1e-12);
  EXPECT_GT(both->factor, 1.02);
  pattern.readings[1].used = false;
  EXPECT_NEAR(read()->factor, 1, 1e-9);
}

TEST_F(AsYouGoReadings, TheErrorGrowsWithTheScaleStep) {
  YarnReading& reading = weigh(0, 318.0);
  const double fine = read()->error;
  reading.scale_step = Entered<Grams>{grams(5), "5 g"};
  EXPECT_GT(read()->error, fine);
}

TEST_F(AsYouGoReadings, SaysWhatIsWrong) {
  EXPECT_NE(refused().find("no reading"), std::string::npos);
  YarnReading& reading = weigh(0, 318.0);
  reading.left = Entered<Grams>{grams(250), "250 g"};
  EXPECT_NE(refused().find("250 g left of 200 g"), std::string::npos);
  reading.left.reset();
  EXPECT_NE(refused().find("no weight left"), std::string::npos);
  reading.left = Entered<Grams>{grams(200), "200 g"};
  EXPECT_NE(refused().find("nothing of the colour used"), std::string::npos);
  reading.piece = PieceId{};
  EXPECT_NE(refused().find("without a place"), std::string::npos);
  pattern.readings.clear();
  weigh(0, 318.0);
  weigh(1, 300.0);
  EXPECT_NE(refused().find("less used than at an earlier place"), std::string::npos);
  pattern.yarns[0].put_up.length.reset();
  EXPECT_NE(refused().find("put-up"), std::string::npos);
}

}  // namespace
}  // namespace skeinproof
