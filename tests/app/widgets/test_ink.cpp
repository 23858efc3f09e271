// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QApplication>

#include "app/bench/appearance.h"
#include "app/widgets/ink.h"

namespace skeinproof {
namespace {

QPalette high_contrast() {
  QPalette palette;
  palette.setColor(QPalette::Window, Qt::black);
  palette.setColor(QPalette::Base, Qt::black);
  palette.setColor(QPalette::WindowText, Qt::yellow);
  palette.setColor(QPalette::Text, Qt::yellow);
  palette.setColor(QPalette::PlaceholderText, QColor(80, 80, 0));
  palette.setColor(QPalette::Highlight, Qt::cyan);
  palette.setColor(QPalette::HighlightedText, Qt::white);
  return palette;
}

// A platform whose greys are far too near to each other.
QPalette faint() {
  QPalette palette;
  palette.setColor(QPalette::Window, QColor(0xd8, 0xd8, 0xd8));
  palette.setColor(QPalette::Base, QColor(0xee, 0xee, 0xee));
  palette.setColor(QPalette::WindowText, QColor(0x70, 0x70, 0x70));
  palette.setColor(QPalette::Text, QColor(0x70, 0x70, 0x70));
  palette.setColor(QPalette::PlaceholderText, QColor(0, 0, 0, 60));
  palette.setColor(QPalette::Highlight, QColor(0xcc, 0xdd, 0xee));
  palette.setColor(QPalette::HighlightedText, Qt::white);
  return palette;
}

struct NamedPalette {
  const char* name;
  QPalette palette;
};

std::vector<NamedPalette> palettes() {
  return {{"light", light_palette()},
          {"dark", dark_palette()},
          {"platform", QApplication::palette()},
          {"high contrast", high_contrast()},
          {"faint", faint()}};
}

// The contrasts of WCAG 2.1: 4.5 for text (1.4.3), 3 for what carries meaning without being text (1.4.11).
TEST(Ink, EveryColourCanBeReadOnEveryGroundItStandsOn) {
  for (const NamedPalette& row : palettes()) {
    SCOPED_TRACE(row.name);
    const Ink ink = ink_of(row.palette);
    for (const QColor& ground : {ink.base, ink.window, ink.header, ink.tint}) {
      EXPECT_GE(contrast_ratio(ink.text, ground), 4.5);
      EXPECT_GE(contrast_ratio(ink.muted, ground), 4.5);
      EXPECT_GE(contrast_ratio(ink.edge, ground), 3);
      EXPECT_GE(contrast_ratio(ink.focus, ground), 3);
    }
    for (const QColor& ground : {ink.base, ink.tint}) EXPECT_GE(contrast_ratio(ink.fill, ground), 3);
    EXPECT_GE(contrast_ratio(ink.text, ink.band), 4.5);
    EXPECT_GE(contrast_ratio(ink.highlighted_text, ink.highlight), 4.5);
    EXPECT_EQ(ink.muted.alpha(), 255);
  }
}

TEST(Ink, TellsDarkFromLight) {
  EXPECT_FALSE(ink_of(light_palette()).dark);
  EXPECT_TRUE(ink_of(dark_palette()).dark);
  EXPECT_TRUE(ink_of(high_contrast()).dark);
}

TEST(Ink, PaperIsBlackOnWhite) {
  const Ink ink = paper_ink();
  EXPECT_TRUE(ink.paper);
  for (const QColor& colour : {ink.text, ink.muted, ink.edge, ink.fill, ink.focus})
    EXPECT_EQ(colour, QColor(Qt::black));
  for (const QColor& colour : {ink.base, ink.band, ink.tint}) EXPECT_EQ(colour, QColor(Qt::white));
}

TEST(Ink, ContrastRatioFollowsItsDefinition) {
  EXPECT_NEAR(contrast_ratio(Qt::white, Qt::black), 21, 1e-6);
  EXPECT_NEAR(contrast_ratio(Qt::black, Qt::white), 21, 1e-6);
  EXPECT_NEAR(contrast_ratio(QColor("#777777"), Qt::white), 4.48,
              0.01);  // the grey that just fails, WCAG 2.1, 1.4.3
  EXPECT_NEAR(contrast_ratio(Qt::red, Qt::red), 1, 1e-9);
}

TEST(Ink, ShadesComeFromTheirLightness) {
  // CIE 15: L* 53.585 is the grey of half the sRGB code range; L* 0 and 100 are black and white.
  EXPECT_EQ(shade_colour(0, 0, 0), QColor(Qt::black));
  EXPECT_NEAR(shade_colour(100, 0, 0).red(), 255, 1);
  const QColor grey = shade_colour(53.585, 0, 0);
  EXPECT_NEAR(grey.red(), 128, 1);
  EXPECT_NEAR(grey.green(), 128, 1);
  EXPECT_NEAR(grey.blue(), 128, 1);
  EXPECT_GT(shade_colour(50, 60, 40).red(), shade_colour(50, 60, 40).blue());
  EXPECT_GE(contrast_ratio(letter_on(grey), grey), 4.5);
}

TEST(Ink, FontsFollowThePlatformSize) {
  QFont small, large;
  small.setPointSizeF(10);
  large.setPointSizeF(20);
  EXPECT_NEAR(type_of(large).count.pointSizeF(), 2 * type_of(small).count.pointSizeF(), 0.01);
  EXPECT_GT(type_of(small).answer.pointSizeF(), type_of(small).body.pointSizeF());
}

}  // namespace
}  // namespace skeinproof
