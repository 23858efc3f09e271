// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/need/assessment.h"
#include "core/need/bench_changes.h"
#include "core/need/evidence.h"
#include "core/need/weighed_sample.h"
#include "core/pattern/edits.h"
#include "tests/support/samples.h"

namespace skeinproof {
namespace {

using testing::quillmarsh;

// The pullover with loops from the gauge, so that samples decide, and testers of other sizes.
class Testers : public ::testing::Test {
 protected:
  void SetUp() override {
    pattern = quillmarsh();
    pattern.basis = Basis::weighed_sample;
  }
  Weighing& report(const char* size, double mc_metres) {
    add_weighing(pattern, pattern.sizes[*pattern.size_index(size)].id);
    Weighing& weighing = pattern.weighings.back();
    weighing.tester = true;
    weighing.moisture = Moisture::new_skein;
    weighing.scale_step = Entered<Grams>{grams(0.1), "0.1"};
    weighing.roles[0].reading = Entered<Grams>{grams(mc_metres / 3.5), ""};
    weighing.roles[0].new_skein = Entered<Grams>{grams(50), "50"};
    return weighing;
  }
  BenchChange longer_body(double cm) {
    BenchChange change;
    change.id = take_id<ChangeId>(pattern);
    change.kind = ChangeKind::longer_piece;
    change.piece = pattern.pieces[0].id;
    change.by = Entered<Centimetres>{centimetres(cm), ""};
    return change;
  }
  RoleCalibration calibration() const {
    const NeedContext context(pattern);
    return role_calibration(context, pattern.roles[0]).value();
  }
  Pattern pattern;
};

TEST_F(Testers, WhatWasAlteredIsTakenOff) {
  // Size 5 with 5 cm more body takes 79.56 m more MC than its 1125.7 m.
  report("5", 1125.7 + 79.56).altered.push_back(longer_body(5));
  EXPECT_NEAR(calibration().factor, 1, 2e-4);
  pattern.weighings[1].altered.clear();
  EXPECT_GT(calibration().factor, 1.03);
}

TEST_F(Testers, AnOtherGaugeIsTakenOff) {
  // The same counts at 25.5 x 33.3 take 1.0203 times as much.
  BenchChange gauge;
  gauge.kind = ChangeKind::other_gauge;
  gauge.fabric = pattern.fabrics[0].id;
  gauge.stitches = Entered<double>{25.5, "25.5"};
  gauge.rows = Entered<double>{33.3, "33.3"};
  gauge.counts = CountsAre::kept;
  Weighing& weighing = report("5", 1125.7 * 1.0203);
  gauge.id = take_id<ChangeId>(pattern);
  weighing.altered.push_back(gauge);
  EXPECT_NEAR(calibration().factor, 1, 1e-3);
}

TEST_F(Testers, SamplesThatAgreeNarrowTheErrorAndEachHasItsWeight) {
  const double alone = calibration().error;
  report("5", 1125.7);
  const RoleCalibration both = calibration();
  EXPECT_LT(both.error, alone * 0.8);
  ASSERT_EQ(both.weights.size(), 2u);
  EXPECT_NEAR(both.weights[0] + both.weights[1], 1, 1e-12);
  const Assessment assessment = assess(pattern);
  double weights = 0;
  for (const Calibration& one : assessment.calibrations)
    if (one.role == pattern.roles[0].id) weights += one.weight;
  EXPECT_NEAR(weights, 1, 1e-12);
}

TEST_F(Testers, SamplesThatScatterWidenTheError) {
  report("5", 1125.7);
  const double agreed = calibration().error;
  report("7", 1348.4 * 1.15);
  EXPECT_GT(calibration().error, agreed);
}

TEST_F(Testers, AReportIsLeftOut) {
  report("5", 1125.7 * 1.10);
  EXPECT_GT(calibration().factor, 1.02);
  pattern.weighings[1].used = false;
  EXPECT_NEAR(calibration().factor, 1, 1e-3);
}

TEST_F(Testers, AnAlterationThatCannotBeMadeIsNamed) {
  BenchChange nothing_said = longer_body(5);
  nothing_said.by.reset();
  report("5", 1205).altered.push_back(nothing_said);
  EXPECT_NEAR(calibration().factor, 1, 1e-3);
  const Assessment assessment = assess(pattern);
  EXPECT_TRUE(std::any_of(assessment.not_worked_out.begin(), assessment.not_worked_out.end(),
                          [](const NotWorkedOut& gap) {
                            return gap.because.find("altered cannot be taken off") != std::string::npos;
                          }));
}

TEST_F(Testers, TheChanceRisesWithMoreEvidence) {
  pattern.weighings[0].roles[0].reading->value = grams(261.4);
  const auto chance = [&] {
    return *gather_evidence(pattern, assess(pattern))[0].sizes[4].chance_sufficient;
  };
  const double with_one = chance();
  report("4", 998.9);
  report("6", 1222.3);
  EXPECT_GE(chance(), with_one);
}

}  // namespace
}  // namespace skeinproof
