// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fabric/loop_length.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "core/fabric/gauge.h"
#include "core/fabric/relaxation.h"

namespace skeinproof {
namespace {

Gauge gauge_of(double stitches, double rows, GaugeState state = GaugeState::unstated, double over_cm = 10) {
  Gauge gauge;
  gauge.stitches = Entered<double>{stitches, ""};
  gauge.rows = Entered<double>{rows, ""};
  gauge.over = {centimetres(over_cm), ""};
  gauge.state = state;
  return gauge;
}

double loop_cm(const Gauge& gauge, Structure structure = Structure::plain, const LoopGrounds& grounds = {}) {
  return loop_from_gauge(gauge, structure, grounds).value().loop.value();
}

TEST(Gauge, CountsOverAnyLength) {
  EXPECT_NEAR(stitches_per_cm2(gauge_of(26, 34)).value(), 8.84, 1e-9);
  EXPECT_NEAR(stitches_per_cm2(gauge_of(5.5, 7, GaugeState::washed, 2.54)).value(), 5.9675, 5e-5);
  EXPECT_NEAR(stitch_width(gauge_of(26, 34)).value().value(), 0.384615, 1e-6);
  EXPECT_NEAR(row_height(gauge_of(26, 34)).value().value(), 0.294118, 1e-6);
  // Ten stitches over 4 inches are as many a centimetre as 20 over 8.
  EXPECT_NEAR(loop_cm(gauge_of(10, 14, GaugeState::washed, 10.16)),
              loop_cm(gauge_of(20, 28, GaugeState::washed, 20.32)), 1e-12);
}

TEST(Gauge, SaysWhatIsMissing) {
  Gauge gauge = gauge_of(26, 34);
  gauge.rows.reset();
  EXPECT_EQ(stitches_per_cm2(gauge).error().found, "a gauge without rows");
  EXPECT_TRUE(stitch_width(gauge));
  gauge.stitches.reset();
  EXPECT_EQ(stitch_width(gauge).error().kind, ErrorKind::not_found);
  EXPECT_EQ(stitch_width(gauge_of(0, 34)).error().kind, ErrorKind::out_of_range);
  EXPECT_EQ(row_height(gauge_of(26, -1)).error().kind, ErrorKind::out_of_range);
  EXPECT_EQ(row_height(gauge_of(26, std::nan(""))).error().kind, ErrorKind::out_of_range);
  EXPECT_EQ(stitch_width(gauge_of(26, 34, GaugeState::washed, 0)).error().kind, ErrorKind::out_of_range);
}

TEST(Gauge, TellsClothAtRest) {
  EXPECT_NEAR(loop_shape(gauge_of(22, 28)).value(), 1.2727, 5e-5);
  EXPECT_TRUE(at_rest(1.2727));
  EXPECT_FALSE(at_rest(1.1));
  EXPECT_FALSE(at_rest(2.0));  // garter stitch
}

TEST(Gauge, YarnInASquareMetre) {
  const struct {
    double stitches, rows, metres;
  } rows[] = {{32, 44, 1699}, {24, 32, 1255}, {22, 30, 1163}, {20, 28, 1071}, {18, 24, 941}, {14, 20, 758}};
  for (const auto& row : rows)
    EXPECT_NEAR(metres_per_square_metre(stitches_per_cm2(gauge_of(row.stitches, row.rows)).value()),
                row.metres, 0.5);
}

TEST(Gauge, FirmnessBeforeThereIsASample) {
  EXPECT_NEAR(firmness_from_gauge(8.84, metres_per_gram(3.5)), 11.1, 0.05);
  EXPECT_NEAR(firmness_from_gauge(14.08, metres_per_gram(4.2)), 12.8, 0.05);
}

// Munden, J. Text. Inst. 50 (1959) T448: stitch density x loop length squared is 19.0 dry, 21.6 wet and 23.1
// fully relaxed.
TEST(LoopLength, FromTheGaugeByItsState) {
  EXPECT_NEAR(loop_cm(gauge_of(22, 28, GaugeState::washed)), 1.93649, 0.0005);
  EXPECT_NEAR(loop_cm(gauge_of(22, 28, GaugeState::wetted)), 1.8726, 0.0005);
  EXPECT_NEAR(loop_cm(gauge_of(22, 28, GaugeState::never_wetted)), 1.7563, 0.0005);
  EXPECT_NEAR(loop_cm(gauge_of(20, 26, GaugeState::never_wetted)), 1.9115, 0.0005);
  EXPECT_NEAR(loop_cm(gauge_of(22, 28)), std::sqrt(20.5 / 6.16), 1e-9);
}

TEST(LoopLength, SaysWhereItComesFrom) {
  const LoopLength washed = loop_from_gauge(gauge_of(26, 34, GaugeState::washed)).value();
  EXPECT_EQ(washed.how, "√(23.1 / 8.84 stitches per cm²)");
  EXPECT_NE(washed.source.find("Munden"), std::string::npos);
  const LoopLength unstated = loop_from_gauge(gauge_of(26, 34)).value();
  EXPECT_NE(unstated.source.find("common practice, no source"), std::string::npos);
  LoopGrounds overruled;
  overruled.constant = 22;
  EXPECT_EQ(loop_from_gauge(gauge_of(26, 34), Structure::plain, overruled).value().how,
            "√(22 / 8.84 stitches per cm²)");
}

TEST(LoopLength, ErrorFollowsTheCloth) {
  const Gauge washed = gauge_of(26, 34, GaugeState::washed);
  EXPECT_EQ(loop_from_gauge(washed).value().error_share, 0.08);
  EXPECT_EQ(loop_from_gauge(gauge_of(26, 34)).value().error_share, 0.12);
  EXPECT_EQ(loop_from_gauge(washed, Structure::stranded).value().error_share, 0.12);
  LoopGrounds cotton;
  cotton.springy = false;
  EXPECT_EQ(loop_from_gauge(washed, Structure::plain, cotton).value().error_share, 0.12);
  EXPECT_EQ(loop_from_gauge(washed, Structure::rib).value().error_share, 0.20);
  LoopGrounds beside_plain;
  beside_plain.plain_gauge = &washed;
  EXPECT_EQ(loop_from_gauge(washed, Structure::rib, beside_plain).value().error_share, 0.12);
}

TEST(LoopLength, ARibTakesTheGaugeOfItsStockingStitch) {
  const Gauge plain = gauge_of(26, 34, GaugeState::washed);
  const Gauge rib = gauge_of(34, 34, GaugeState::washed);
  LoopGrounds grounds;
  grounds.plain_gauge = &plain;
  EXPECT_NEAR(loop_cm(rib, Structure::rib, grounds), 0.95 * loop_cm(plain), 1e-12);
  EXPECT_LT(loop_cm(rib, Structure::rib), loop_cm(rib, Structure::rib, grounds));
  // A fabric that does not draw in keeps its own.
  EXPECT_NEAR(loop_cm(rib, Structure::stranded, grounds), 1.025 * loop_cm(rib), 1e-12);
}

TEST(LoopLength, FactorsOfStructuresAreInOrder) {
  for (const auto& row : EnumWords<Structure>::rows) {
    const StructureFactor& factor = structure_factor(row.first);
    EXPECT_EQ(factor.structure, row.first);
    EXPECT_LE(factor.low, factor.typical);
    EXPECT_LE(factor.typical, factor.high);
  }
  EXPECT_EQ(structure_factor(Structure::plain).typical, 1);
}

TEST(LoopLength, FromAWeighedSwatch) {
  // 10.30 g of 444.444 tex in 1200 stitches: mass / (stitches x tex).
  const LoopLength swatch = loop_from_swatch(metres(10.30 / 0.444444), 1200).value();
  EXPECT_NEAR(swatch.loop.value(), 1.93125, 0.00005);
  EXPECT_EQ(swatch.error_share, 0.03);
  EXPECT_EQ(loop_from_swatch(metres(23), 1200, 0.1).value().error_share, 0.1);
  EXPECT_FALSE(loop_from_swatch(metres(23), 0));
  EXPECT_FALSE(loop_from_swatch(metres(-1), 1200));
}

TEST(LoopLength, FollowsTheSourceOfTheFabric) {
  Fabric fabric;
  fabric.gauge = gauge_of(26, 34, GaugeState::washed);
  EXPECT_NEAR(loop_length(fabric).value().loop.value(), std::sqrt(23.1 / 8.84), 1e-9);
  fabric.loop_source = LoopSource::typed;
  EXPECT_EQ(loop_length(fabric).error().found, "no loop length");
  fabric.typed_loop = Entered<Centimetres>{centimetres(1.5), "1.5"};
  EXPECT_EQ(loop_length(fabric).value().loop, centimetres(1.5));
  EXPECT_EQ(loop_length(fabric).value().error_share, 0.08);
  fabric.loop_source = LoopSource::from_swatch;
  EXPECT_EQ(loop_length(fabric).error().found, "a swatch without stitches");
  fabric.swatch.stitches = Entered<double>{1200, ""};
  EXPECT_EQ(loop_length(fabric).error().found, "a swatch without yarn");
  LoopGrounds grounds;
  grounds.swatch_yarn = metres(18);
  EXPECT_NEAR(loop_length(fabric, grounds).value().loop.value(), 1.5, 1e-12);
}

TEST(LoopLength, IsPlausibleWithinTheBandOfPlainCloth) {
  EXPECT_NEAR(loop_in_widths(centimetres(1.498), stitch_width(gauge_of(26, 34)).value()), 3.89, 0.005);
  EXPECT_TRUE(plausible_loop(3.89));
  EXPECT_FALSE(plausible_loop(3.2));
  EXPECT_FALSE(plausible_loop(4.7, Structure::stranded));
  EXPECT_TRUE(plausible_loop(6, Structure::rib));
}

TEST(LoopLength, SpringyFibres) {
  const auto share = [](const char* fibre, double percent) {
    FibreShare of;
    of.fibre = fibre;
    of.percent.value = percent;
    return of;
  };
  EXPECT_TRUE(springy({}));
  EXPECT_TRUE(springy({share("wool", 100)}));
  EXPECT_TRUE(springy({share("wool", 60), share("silk", 40)}));
  EXPECT_FALSE(springy({share("wool", 50), share("cotton", 50)}));
  EXPECT_FALSE(springy({share("silk_tussah", 30), share("viscose_bamboo", 40), share("wool", 30)}));
  EXPECT_TRUE(springy({share("", 100)}));
}

TEST(FloatPerStitch, TypedElseByTheWidth) {
  Fabric fabric;
  fabric.structure = Structure::stranded;
  fabric.gauge = gauge_of(26, 30);
  EXPECT_NEAR(float_per_stitch(fabric).value().value(), 10 / 26.0 * 1.06, 1e-12);
  EXPECT_NEAR(float_per_stitch(fabric, FloatSlack::high).value().value(), 10 / 26.0 * 1.10, 1e-12);
  fabric.float_per_stitch = Entered<Centimetres>{centimetres(0.4), "0.40"};
  EXPECT_EQ(float_per_stitch(fabric).value(), centimetres(0.4));
  Fabric intarsia;
  intarsia.structure = Structure::intarsia;
  EXPECT_EQ(float_per_stitch(intarsia).value().value(), 0);
  EXPECT_FALSE(float_per_stitch(Fabric{}));
}

RC_GTEST_PROP(LoopLengthProperty, DoesNotCareOverWhichLengthWasCounted, (std::uint8_t times)) {
  RC_PRE(times > 0);
  const double n = times;
  const Gauge one = gauge_of(26, 34, GaugeState::washed),
              many = gauge_of(26 * n, 34 * n, GaugeState::washed, 10 * n);
  RC_ASSERT(std::abs(loop_cm(one) - loop_cm(many)) < 1e-9);
}

RC_GTEST_PROP(LoopLengthProperty, FinerGaugesTakeShorterLoopsAndMoreYarn, ()) {
  const auto stitches = *rc::gen::inRange(8, 60);
  const auto rows = *rc::gen::inRange(8, 80);
  RC_ASSERT(loop_cm(gauge_of(stitches, rows)) > loop_cm(gauge_of(stitches + 1, rows)));
  const auto cloth = [](double s, double r) {
    return metres_per_square_metre(stitches_per_cm2(gauge_of(s, r)).value());
  };
  RC_ASSERT(cloth(stitches, rows) < cloth(stitches, rows + 1));
}

}  // namespace
}  // namespace skeinproof
