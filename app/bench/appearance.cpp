// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/bench/appearance.h"

#include <QApplication>
#include <QStyle>
#include <QWidget>
#include <algorithm>
#include <cmath>

namespace skeinproof {

namespace {

struct PaletteRow {
  QPalette::ColorRole role;
  QRgb light;
  QRgb dark;
};
constexpr PaletteRow palette_table[] = {
    {QPalette::Window, 0xffececE8, 0xff292b2d},
    {QPalette::WindowText, 0xff17191b, 0xffe7e7e3},
    {QPalette::Base, 0xffffffff, 0xff1c1e20},
    {QPalette::AlternateBase, 0xfff1f1ee, 0xff25272a},
    {QPalette::Text, 0xff17191b, 0xffe7e7e3},
    {QPalette::PlaceholderText, 0xff53585d, 0xffa9aeb3},
    {QPalette::Button, 0xfff4f4f1, 0xff35383b},
    {QPalette::ButtonText, 0xff17191b, 0xffe7e7e3},
    {QPalette::BrightText, 0xffffffff, 0xffffffff},
    {QPalette::ToolTipBase, 0xfffbf8e6, 0xff3a3a32},
    {QPalette::ToolTipText, 0xff17191b, 0xffe7e7e3},
    {QPalette::Highlight, 0xff23567f, 0xff2b6c9b},
    {QPalette::HighlightedText, 0xffffffff, 0xffffffff},
    {QPalette::Link, 0xff1b5583, 0xff74b4df},
    {QPalette::LinkVisited, 0xff5b3f7c, 0xffb9a0d8},
    {QPalette::Light, 0xffffffff, 0xff44484b},
    {QPalette::Midlight, 0xfff4f4f1, 0xff35383b},
    {QPalette::Mid, 0xffb9b9b4, 0xff1f2123},
    {QPalette::Dark, 0xff8e9090, 0xff17181a},
    {QPalette::Shadow, 0xff55585a, 0xff000000},
};

QPalette palette_of(QRgb PaletteRow::*which) {
  QPalette palette;
  for (const PaletteRow& row : palette_table) palette.setColor(row.role, QColor(row.*which));
  // What cannot be used is quiet, yet can be read.
  const QColor text(palette.color(QPalette::Text)), base(palette.color(QPalette::Base));
  const QColor quiet((text.red() + base.red()) / 2, (text.green() + base.green()) / 2,
                     (text.blue() + base.blue()) / 2);
  for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
    palette.setColor(QPalette::Disabled, role, quiet);
  return palette;
}

}  // namespace

QPalette light_palette() { return palette_of(&PaletteRow::light); }
QPalette dark_palette() { return palette_of(&PaletteRow::dark); }

Appearance::Appearance() : platform_palette_(QApplication::palette()), platform_font_(QApplication::font()) {}

void Appearance::set_shades(Shades shades) {
  shades_ = shades;
  QApplication::setPalette(shades == Shades::light  ? light_palette()
                           : shades == Shades::dark ? dark_palette()
                                                    : platform_palette_);
}

void Appearance::set_text_percent(int percent) {
  text_percent_ = std::clamp(percent, smallest_text_percent, largest_text_percent);
  QFont font = platform_font_;
  const double factor = text_percent_ / 100.0;
  if (font.pointSizeF() > 0)
    font.setPointSizeF(font.pointSizeF() * factor);
  else
    font.setPixelSize(std::max(1, static_cast<int>(std::lround(font.pixelSize() * factor))));
  QApplication::setFont(font);
}

}  // namespace skeinproof
