// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/ink.h"

#include <QFontInfo>
#include <QWidget>
#include <algorithm>
#include <cmath>

namespace skeinproof {

namespace {

QColor mixed(const QColor& base, const QColor& with, double share) {
  const auto part = [share](float a, float b) { return static_cast<float>(a + (b - a) * share); };
  return QColor::fromRgbF(part(base.redF(), with.redF()), part(base.greenF(), with.greenF()),
                          part(base.blueF(), with.blueF()));
}

QColor opaque(QColor colour, const QColor& over) {
  const double alpha = colour.alphaF();
  colour.setAlpha(255);
  return mixed(over, colour, alpha);
}

double weakest(const QColor& ink, std::initializer_list<QColor> grounds) {
  double least = 21;
  for (const QColor& ground : grounds) least = std::min(least, contrast_ratio(ink, ground));
  return least;
}

// Mixes `with` into `base` from `share` on until the ratio holds on every ground.
QColor stepped(const QColor& base, const QColor& with, double share, double ratio,
               std::initializer_list<QColor> grounds) {
  QColor ink = mixed(base, with, share);
  while (share < 1 && weakest(ink, grounds) < ratio) {
    share = std::min(1.0, share + 0.02);
    ink = mixed(base, with, share);
  }
  return ink;
}

const QColor& stronger_on(const QColor& ground, const QColor& a, const QColor& b) {
  return contrast_ratio(a, ground) >= contrast_ratio(b, ground) ? a : b;
}

QFont sized(QFont font, double factor, QFont::Weight weight = QFont::Normal) {
  if (font.pointSizeF() > 0)
    font.setPointSizeF(font.pointSizeF() * factor);
  else
    font.setPixelSize(std::max(1, static_cast<int>(std::lround(font.pixelSize() * factor))));
  font.setWeight(weight);
  return font;
}

}  // namespace

double contrast_ratio(const QColor& a, const QColor& b) {
  const auto luminance = [](const QColor& colour) {
    const auto linear = [](double c) {
      return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * linear(colour.redF()) + 0.7152 * linear(colour.greenF()) +
           0.0722 * linear(colour.blueF());
  };
  const double la = luminance(a), lb = luminance(b);
  return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

Ink ink_of(const QPalette& palette) {
  const QColor black(0x11, 0x11, 0x11), white(0xff, 0xff, 0xff);
  Ink ink;
  ink.window = palette.color(QPalette::Active, QPalette::Window);
  ink.base = palette.color(QPalette::Active, QPalette::Base);
  ink.dark = contrast_ratio(ink.window, Qt::white) > contrast_ratio(ink.window, Qt::black);
  ink.header = mixed(ink.base, ink.window, 0.72);
  ink.highlight = palette.color(QPalette::Active, QPalette::Highlight);
  ink.highlighted_text = palette.color(QPalette::Active, QPalette::HighlightedText);
  if (contrast_ratio(ink.highlighted_text, ink.highlight) < 4.5)
    ink.highlighted_text = stronger_on(ink.highlight, black, white);

  const QColor end = ink.dark ? white : QColor(Qt::black);
  ink.text = stepped(palette.color(QPalette::Active, QPalette::Text), end, 0, 7, {ink.base, ink.window});
  ink.tint = mixed(ink.base, ink.highlight, ink.dark ? 0.32 : 0.13);
  while (weakest(ink.text, {ink.tint}) < 7 && ink.tint != ink.base) ink.tint = mixed(ink.tint, ink.base, 0.2);

  const auto grounds = {ink.base, ink.window, ink.header, ink.tint};
  const QColor quiet = opaque(palette.color(QPalette::Active, QPalette::PlaceholderText), ink.base);
  ink.muted = stepped(quiet, ink.text, 0, 5.5, grounds);
  ink.edge = stepped(ink.base, ink.text, 0.5, 3.3, grounds);
  ink.rule = mixed(ink.base, ink.text, 0.18);
  ink.fill = stepped(ink.base, ink.text, 0.66, 5, grounds);
  ink.band = mixed(ink.base, ink.text, 0.24);
  ink.focus = stepped(ink.highlight, end, 0, 3, grounds);
  return ink;
}

Ink paper_ink() {
  Ink ink;
  ink.window = ink.base = ink.header = ink.band = ink.tint = ink.highlight = Qt::white;
  ink.text = ink.muted = ink.edge = ink.rule = ink.fill = ink.focus = ink.highlighted_text = Qt::black;
  ink.paper = true;
  return ink;
}

Type type_of(const QFont& platform) {
  Type type;
  type.body = sized(platform, 1);
  type.small = sized(platform, 12.0 / 13);
  type.role_name = sized(platform, 14.0 / 13, QFont::DemiBold);
  type.count = sized(platform, 19.0 / 13, QFont::DemiBold);
  type.answer = sized(platform, 2, QFont::DemiBold);
  type.title = sized(platform, 16.0 / 13, QFont::DemiBold);
  QFont serif = platform;
  serif.setStyleHint(QFont::Serif);
  serif.setFamilies({QStringLiteral("serif")});
  type.words = sized(serif, 14.0 / 13);
  return type;
}

int scaled(const QWidget* widget, double pixels) {
  const QFontInfo font(widget->font());
  return static_cast<int>(std::lround(pixels * font.pixelSize() / 13.0));
}

QColor shade_colour(double lightness, double a, double b) {
  // CIE 15 (L*a*b*, D65 white, 2 degrees) and IEC 61966-2-1 (sRGB).
  const double fy = (std::clamp(lightness, 0.0, 100.0) + 16) / 116;
  const auto cube = [](double t) {
    return t > 6.0 / 29 ? t * t * t : 3 * (6.0 / 29) * (6.0 / 29) * (t - 4.0 / 29);
  };
  const double x = 0.95047 * cube(fy + a / 500), y = cube(fy), z = 1.08883 * cube(fy - b / 200);
  const auto coded = [](double c) {
    c = std::clamp(c, 0.0, 1.0);
    return static_cast<float>(c <= 0.0031308 ? 12.92 * c : 1.055 * std::pow(c, 1 / 2.4) - 0.055);
  };
  return QColor::fromRgbF(std::clamp(coded(3.2406 * x - 1.5372 * y - 0.4986 * z), 0.0F, 1.0F),
                          std::clamp(coded(-0.9689 * x + 1.8758 * y + 0.0415 * z), 0.0F, 1.0F),
                          std::clamp(coded(0.0557 * x - 0.2040 * y + 1.0570 * z), 0.0F, 1.0F));
}

QColor letter_on(const QColor& square) {
  static const QColor dark(0x11, 0x11, 0x11), light(0xff, 0xff, 0xff);
  return stronger_on(square, dark, light);
}

}  // namespace skeinproof
