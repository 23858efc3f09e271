// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>
#include <QSignalSpy>
#include <QTest>
#include <set>

#include "app/charts/hatch.h"
#include "app/charts/need_curve.h"
#include "app/charts/stacked_lengths.h"

namespace skeinproof {
namespace {

NeedCurveData curve_data() {
  NeedCurveData data;
  data.role = "MC Peat 08";
  data.axis = {{"1", "2", "3"}, {false, true, false}, 1};
  data.skein = 175;
  data.points = {{true, 730, 788, 765, 812, 875, std::nullopt},
                 {true, 796, 857, 832, 882, 875, 6.0},
                 {false, 0, 0, 0, 0, std::nullopt, std::nullopt}};
  return data;
}

StackData stack_data() {
  StackData data;
  data.title = "MC Peat 08";
  data.axis = {{"1", "2", "3"}, {false, true, false}, 1};
  data.parts = {{"Body", {318, 354, 0}}, {"Sleeves", {267, 276, 0}}};
  data.known = {true, true, false};
  return data;
}

template <class Chart>
QImage on_paper(Chart& chart) {
  QImage image(400, 240, QImage::Format_RGB32);
  image.fill(Qt::white);
  QPainter painter(&image);
  chart.paint_on_paper(painter, QRectF(image.rect()), 100);
  return image;
}

int dark_pixels(const QImage& image, const QRect& where) {
  int count = 0;
  for (int y = where.top(); y <= where.bottom(); ++y)
    for (int x = where.left(); x <= where.right(); ++x) count += qGray(image.pixel(x, y)) < 100;
  return count;
}

TEST(NeedCurve, MarksWholeSkeinsAndTheOneThatIsBought) {
  NeedCurve curve;
  curve.resize(500, 300);
  curve.set_columns({100, 390, 130, 0});
  curve.show_need(curve_data());
  const QString spoken = curve.spoken();
  EXPECT_TRUE(spoken.contains("size 1: planned 788 m, knitted 730 m")) << spoken.toStdString();
  EXPECT_TRUE(spoken.contains("size 3: not known"));
  EXPECT_EQ(curve.accessibleName(), spoken);
}

TEST(NeedCurve, PrintsInOneInk) {
  NeedCurve curve;
  curve.show_need(curve_data());
  const QImage image = on_paper(curve);
  EXPECT_TRUE(image.allGray());
  // The bracket rule before size 2, the points of sizes 1 and 2, and nothing for size 3.
  EXPECT_GT(dark_pixels(image, QRect(101, 30, 98, 200)), 100);
  EXPECT_GT(dark_pixels(image, QRect(205, 30, 90, 200)), 100);
  EXPECT_LT(dark_pixels(image, QRect(305, 30, 90, 200)), 60);
}

TEST(NeedCurve, FollowsThePaletteWhileItIsShown) {
  NeedCurve curve;
  curve.resize(500, 300);
  curve.set_columns({100, 390, 130, 0});
  curve.show_need(curve_data());
  EXPECT_FALSE(curve.ink().dark);
  QPalette dark(QColor(0x29, 0x2b, 0x2d));
  dark.setColor(QPalette::Base, QColor(0x1c, 0x1e, 0x20));
  dark.setColor(QPalette::Text, QColor(0xe7, 0xe7, 0xe3));
  curve.setPalette(dark);
  EXPECT_TRUE(curve.ink().dark);
  EXPECT_LT(qGray(curve.grab().toImage().pixel(480, 290)), 80);
}

TEST(NeedCurve, NothingKnownDrawsNothingAndDoesNotFail) {
  NeedCurve curve;
  curve.resize(300, 200);
  NeedCurveData data;
  data.axis = {{"1"}, {false}, 0};
  data.points.resize(1);
  curve.show_need(data);
  EXPECT_FALSE(curve.grab().isNull());
  curve.show_need(NeedCurveData{});
  EXPECT_FALSE(curve.grab().isNull());
}

TEST(NeedCurve, ASizeIsChosenByAPress) {
  NeedCurve curve;
  curve.resize(500, 300);
  curve.set_columns({100, 390, 130, 0});
  curve.show_need(curve_data());
  QSignalSpy chosen(&curve, &SizeChart::size_clicked);
  QTest::mouseClick(curve.viewport(), Qt::LeftButton, {}, QPoint(300, 100));
  ASSERT_EQ(chosen.count(), 1);
  EXPECT_EQ(chosen[0][0].value<std::size_t>(), 1U);
  QTest::mouseClick(curve.viewport(), Qt::LeftButton, {}, QPoint(40, 100));
  EXPECT_EQ(chosen.count(), 1) << "the margin is no size";
}

TEST(StackedLengths, SaysAndPrintsItsParts) {
  StackedLengths stack;
  stack.show_stack(stack_data());
  EXPECT_TRUE(stack.spoken().contains("size 2: Body 354 m, Sleeves 276 m"));
  EXPECT_TRUE(stack.spoken().contains("size 3: not known"));
  const QImage image = on_paper(stack);
  EXPECT_TRUE(image.allGray());
  EXPECT_GT(dark_pixels(image, QRect(205, 30, 90, 200)), 300);
}

TEST(Hatch, PartsOfAStackLookApart) {
  for (const bool paper : {false, true}) {
    std::set<QByteArray> pictures;
    for (std::size_t part = 0; part < 12; ++part) {
      QImage image(40, 40, QImage::Format_RGB32);
      image.fill(Qt::white);
      QPainter painter(&image);
      const PartHatch hatch = part_hatch(part, paper);
      draw_hatch(painter, QRectF(0, 0, 40, 40), hatch.hatch, Qt::black, 1, hatch.density);
      painter.end();
      pictures.insert(QByteArray(reinterpret_cast<const char*>(image.constBits()),
                                 static_cast<qsizetype>(image.sizeInBytes())));
    }
    EXPECT_EQ(pictures.size(), 12U) << (paper ? "on paper" : "on the screen");
  }
}

TEST(Hatch, StaysInsideItsRectangle) {
  QImage image(40, 40, QImage::Format_RGB32);
  image.fill(Qt::white);
  QPainter painter(&image);
  draw_hatch(painter, QRectF(10, 10, 20, 20), Hatch::crossed, Qt::black, 1);
  painter.end();
  EXPECT_EQ(dark_pixels(image, QRect(0, 0, 40, 9)), 0);
  EXPECT_EQ(dark_pixels(image, QRect(0, 31, 40, 9)), 0);
  EXPECT_GT(dark_pixels(image, QRect(10, 10, 20, 20)), 20);
}

TEST(RoundMarks, AreFewAndRound) {
  EXPECT_EQ(round_marks(0, 1000, 5), (std::vector<double>{0, 200, 400, 600, 800, 1000}));
  EXPECT_EQ(round_marks(730, 1100, 4), (std::vector<double>{800, 900, 1000, 1100}));
  EXPECT_TRUE(round_marks(5, 5, 4).empty());
}

}  // namespace
}  // namespace skeinproof
