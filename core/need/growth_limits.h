// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "core/pattern/pattern.h"

namespace skeinproof {

// What the growth of a colour from size to size is measured against.
enum class GrowthOver { area, circumference };
template <>
struct EnumWords<GrowthOver> {
  static constexpr auto rows =
      enum_rows<GrowthOver>({{GrowthOver::area, "area"}, {GrowthOver::circumference, "circumference"}});
};

// Least and greatest exponent g of planned_i / planned_j = (extent_i / extent_j)^g. Common practice, no
// source.
struct GrowthLimits {
  double low = 0;
  double high = 0;
  bool operator==(const GrowthLimits&) const = default;
};

// The band of a role, never `automatic`: by default the only or first role grows as the whole garment and
// every other as a part; a role that goes along with another grows as that one.
GrowthBand growth_band(const Pattern& pattern, const Role& role);

// The limits in force for a band. Against the circumference they are wider, and higher for children, who
// lengthen as they widen. `automatic` has no limits of its own and reads as unknown.
GrowthLimits growth_limits(const Pattern& pattern, GrowthBand band, GrowthOver over);

}  // namespace skeinproof
