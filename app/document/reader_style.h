// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "core/units/show.h"

namespace skeinproof {

// How one person reads and types figures; kept per person, never in a file. The first system is the one a
// figure without a unit is read in and the one figures are shown in.
struct ReaderStyle {
  NumberStyle numbers{DecimalMark::point, FractionStyle::glyph, true};
  bool imperial_first = false;
  bool operator==(const ReaderStyle&) const = default;
};

}  // namespace skeinproof
