// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/fixed_and_growing.h"

#include <gtest/gtest.h>

#include "core/need/assessment.h"
#include "core/pattern/edits.h"
#include "tests/support/samples.h"

namespace skeinproof {
namespace {

using testing::quillmarsh;

GrowthSample sample(double extent, double length_m, std::string size, double error = 0.03) {
  return GrowthSample{extent, metres(length_m), error, std::move(size)};
}

TEST(FixedAndGrowing, TwoSamplesGiveTheLineThroughThem) {
  const auto line = fixed_and_growing({sample(0.9, 200, "2"), sample(1.4, 260, "7")});
  ASSERT_TRUE(line) << line.error().message();
  EXPECT_NEAR(line->growing, 120, 1e-9);
  EXPECT_NEAR(line->fixed.value(), 92, 1e-9);
  EXPECT_NEAR(line->at(1.0).value(), 212, 1e-9);
}

TEST(FixedAndGrowing, ThePreciseSampleHoldsTheLine) {
  const auto even = fixed_and_growing({sample(0.9, 200, "2"), sample(1.1, 230, "4"), sample(1.4, 260, "7")});
  const auto sure =
      fixed_and_growing({sample(0.9, 200, "2"), sample(1.1, 230, "4", 0.003), sample(1.4, 260, "7")});
  ASSERT_TRUE(even && sure);
  EXPECT_LT(std::abs(sure->at(1.1).value() - 230), std::abs(even->at(1.1).value() - 230) / 10);
}

TEST(FixedAndGrowing, SaysWhatIsWrong) {
  const auto found = [](const std::vector<GrowthSample>& samples) {
    const auto line = fixed_and_growing(samples);
    return line ? std::string("a line") : line.error().message();
  };
  EXPECT_NE(found({sample(1, 200, "2")}).find("1 samples"), std::string::npos);
  EXPECT_NE(found({sample(1, 200, "2"), sample(1.001, 210, "3")}).find("nearly the same fabric"),
            std::string::npos);
  EXPECT_NE(found({sample(1, 200, "2"), sample(1.4, 190, "7")}).find("the larger took less"),
            std::string::npos);
  EXPECT_NE(found({sample(1, 200, "2"), sample(1.4, 300, "7")}).find("below 0"), std::string::npos);
  EXPECT_NE(found({sample(0, 200, "2"), sample(1.4, 300, "7")}).find("without an extent"), std::string::npos);
}

// Two weighed sizes of the yoke pullover without its stitches: CC1 of the sizes between comes out nearer than
// by area from one.
class TwoWeighedSizes : public ::testing::Test {
 protected:
  void SetUp() override {
    truth = assess(quillmarsh());
    pattern = quillmarsh();
    pattern.pieces.clear();
    pattern.weighings[0].only.clear();
    weigh("1", {730.8, 172.5, 71.6, 40.8});
    weigh("9", {1581.9, 291.4, 122.3, 69.4});
  }
  void weigh(const char* size, const std::vector<double>& metres_of_role) {
    const WeighingId id = add_weighing(pattern, pattern.sizes[*pattern.size_index(size)].id);
    Weighing& weighing = pattern.weighings.back();
    weighing.moisture = Moisture::new_skein;
    weighing.scale_step = Entered<Grams>{grams(0.1), "0.1"};
    for (std::size_t i = 0; i < metres_of_role.size(); ++i) {
      weighing.roles[i].reading = Entered<Grams>{grams(metres_of_role[i] / 3.5), ""};
      weighing.roles[i].new_skein = Entered<Grams>{grams(50), "50"};
    }
    EXPECT_TRUE(id);
  }
  // Area of a garment without stitches comes of its measurements; circumference will do here.
  double error(std::size_t role, std::size_t size) {
    const SizeNeed need = assess(pattern).roles[role].sizes[size];
    EXPECT_TRUE(need.known) << need.missing;
    return need.knitted / truth.roles[role].sizes[size].knitted - 1;
  }
  Pattern pattern;
  Assessment truth;
};

TEST_F(TwoWeighedSizes, TheFixedPartIsTold) {
  pattern.weighings[0].used = false;  // size 3
  const SizeNeed need = assess(pattern).roles[1].sizes[4];
  EXPECT_EQ(need.evidence, NeedEvidence::fixed_and_growing);
  EXPECT_LT(std::abs(error(1, 4)), 0.03);
  pattern.weighings[2].used = false;  // size 9: one sample is left
  EXPECT_EQ(assess(pattern).roles[1].sizes[4].evidence, NeedEvidence::circumference);
  EXPECT_GT(std::abs(error(1, 4)), 0.05);
}

TEST_F(TwoWeighedSizes, AWeighedSizeStaysAsWeighed) {
  EXPECT_NEAR(assess(pattern).roles[1].sizes[8].knitted.value(), 291.4, 1e-6);
}

TEST_F(TwoWeighedSizes, ALineThatCannotBeIsNamedAndTheRestWorks) {
  pattern.weighings[0].used = false;
  for (WeighedRole& role : pattern.weighings[2].roles) role.reading->value *= 0.3;
  const Assessment assessment = assess(pattern);
  EXPECT_TRUE(assessment.roles[0].sizes[4].known);
  const auto named =
      std::count_if(assessment.not_worked_out.begin(), assessment.not_worked_out.end(),
                    [](const NotWorkedOut& gap) { return gap.what == "MC, fixed and growing part"; });
  EXPECT_EQ(named, 1);
}

}  // namespace
}  // namespace skeinproof
