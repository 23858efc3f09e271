// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <compare>
#include <cstdint>

namespace skeinproof {

// A colour of a screen: sRGB, 8 bits a channel (IEC 61966-2-1).
struct Srgb {
  std::uint8_t red = 0, green = 0, blue = 0;
  auto operator<=>(const Srgb&) const = default;
};

// CIE 1976 L*a*b* under daylight D65, 2° observer (ISO/CIE 11664-4). `lightness` 0 is black, 100 is white.
struct Lab {
  double lightness = 0, a = 0, b = 0;
  bool operator==(const Lab&) const = default;
};

Lab lab_of(Srgb colour);
// The nearest colour a screen shows; what it cannot show is cut off channel by channel.
Srgb srgb_of(const Lab& colour);

}  // namespace skeinproof
