// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QFont>
#include <QPalette>

#include "core/base/enum_words.h"

namespace skeinproof {

enum class Shades { platform, light, dark };
template <>
struct EnumWords<Shades> {
  static constexpr auto rows =
      enum_rows<Shades>({{Shades::platform, "platform"}, {Shades::light, "light"}, {Shades::dark, "dark"}});
};

inline constexpr int smallest_text_percent = 60;
inline constexpr int largest_text_percent = 300;
inline constexpr int text_percent_step = 10;

QPalette light_palette();
QPalette dark_palette();

// Shades and text size of the whole program, on top of what the platform had when this was made.
class Appearance {
 public:
  Appearance();  // needs the application object

  void set_shades(Shades shades);
  void set_text_percent(int percent);
  Shades shades() const { return shades_; }
  int text_percent() const { return text_percent_; }

 private:
  QPalette platform_palette_;
  QFont platform_font_;
  Shades shades_ = Shades::platform;
  int text_percent_ = 100;
};

}  // namespace skeinproof
