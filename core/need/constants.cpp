// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/constants.h"

#include <algorithm>
#include <array>
#include <cassert>

namespace skeinproof {
namespace {

constexpr std::string_view trade = "common practice, no source";
constexpr std::string_view practice = "common practice";

constexpr std::string_view munden = "Munden 1959, J. Text. Inst. 50, T448–T471";

constexpr std::array all_constants = {
    Constant{"k_never_wetted", "K of loop length = √(K ÷ stitch density), gauge never wetted", 19.0, "", munden, "memory",
             10, 40},
    Constant{"k_wetted", "K, gauge wetted", 21.6, "", munden, "memory", 10, 40},
    Constant{"k_washed", "K, gauge washed", 23.1, "", munden, "verified", 10, 40},
    Constant{"k_unstated", "K, state of the gauge unstated", 20.5, "", trade, practice, 10, 40},
    Constant{"entry_m", "Yarn lost at each colour entry", 0.30, "m", trade, practice, 0, 5},
    Constant{"join_m", "Yarn lost at each skein after the first", 0.30, "m", trade, practice, 0, 5},
    Constant{"stripe_cut_m", "Yarn lost at each cut stripe", 0.30, "m", trade, practice, 0, 5},
    Constant{"float_slack", "Float over one passed stitch, in stitch widths", 1.06, "widths", trade, practice, 1, 2},
    Constant{"cast_on_widths", "Cast-on or bind-off, in stitch widths a stitch", 4.0, "widths", trade, practice, 1, 15},
    Constant{"seam_ratio", "Yarn for a mattress seam, in seam lengths", 1.5, "lengths", trade, practice, 0.5, 10},
    Constant{"intarsia_link_pct", "Links between intarsia areas", 4.0, "%", trade, practice, 0, 30},
    Constant{"error_plain_pct", "Error of plain cloth with a stated gauge state, 9 in 10", 8.0, "%", trade, practice, 0.1,
             60},
    Constant{"error_textured_pct", "Error of stranded, textured, plant or silk cloth, or state unstated, 9 in 10", 12.0,
             "%", trade, practice, 0.1, 60},
    Constant{"error_drawn_in_pct", "Error of cloth that draws in, from its own gauge alone, 9 in 10", 20.0, "%", trade,
             practice, 0.1, 60},
    Constant{"error_weighed_pct", "Error after a weighed sample or swatch, 9 in 10", 3.0, "%", trade, practice, 0.1, 60},
    Constant{"error_area_pct", "Error of scaling a sample by area, 9 in 10", 10.0, "%", trade, practice, 0.1, 60},
    Constant{"error_circumference_pct", "Error of scaling a sample by circumference, 9 in 10", 15.0, "%", trade, practice,
             0.1, 60},
    Constant{"loop_widths_low", "Least plausible loop length of plain cloth, in stitch widths", 3.3, "widths", trade,
             practice, 1, 6},
    Constant{"loop_widths_high", "Greatest plausible loop length of plain cloth, in stitch widths", 4.6, "widths", trade,
             practice, 2, 10},
    Constant{"brimful_share", "Last skein called brimful above", 0.95, "of a skein", trade, practice, 0.5, 1},
    Constant{"tips_over_share", "Last skein called tips over below", 0.05, "of a skein", trade, practice, 0, 0.5},
};

}  // namespace

std::span<const Constant> constants() { return all_constants; }

const ConstantOverride* own_constant(const Pattern& pattern, std::string_view key) {
  const auto own = std::find_if(pattern.constants.begin(), pattern.constants.end(),
                                [&](const ConstantOverride& one) { return one.key == key; });
  return own == pattern.constants.end() ? nullptr : &*own;
}

double constant(const Pattern& pattern, std::string_view key) {
  if (const ConstantOverride* own = own_constant(pattern, key)) return own->value.value;
  const auto found = std::find_if(all_constants.begin(), all_constants.end(),
                                  [&](const Constant& row) { return row.key == key; });
  assert(found != all_constants.end());
  return found == all_constants.end() ? 0 : found->value;
}

}  // namespace skeinproof
