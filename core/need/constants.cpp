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
    Constant{"k_never_wetted", "K of loop length = √(K ÷ stitch density), gauge never wetted", 19.0, "",
             munden, "memory", 10, 40},
    Constant{"k_wetted", "K, gauge wetted", 21.6, "", munden, "memory", 10, 40},
    Constant{"k_washed", "K, gauge washed", 23.1, "", munden, "verified", 10, 40},
    Constant{"k_unstated", "K, state of the gauge unstated", 20.5, "", trade, practice, 10, 40},
    Constant{"entry_m", "Yarn lost at each colour entry", 0.30, "m", trade, practice, 0, 5},
    Constant{"join_m", "Yarn lost at each skein after the first", 0.30, "m", trade, practice, 0, 5},
    Constant{"stripe_cut_m", "Yarn lost at each cut stripe", 0.30, "m", trade, practice, 0, 5},
    Constant{"float_slack", "Float over one passed stitch, in stitch widths", 1.06, "widths", trade, practice,
             1, 2},
    Constant{"cast_on_widths", "Cast-on or bind-off, in stitch widths a stitch", 4.0, "widths", trade,
             practice, 1, 15},
    Constant{"seam_ratio", "Yarn for a mattress seam, in seam lengths", 1.5, "lengths", trade, practice, 0.5,
             10},
    Constant{"intarsia_link_pct", "Links between intarsia areas", 4.0, "%", trade, practice, 0, 30},
    Constant{"error_plain_pct", "Error of plain cloth with a stated gauge state, 9 in 10", 8.0, "%", trade,
             practice, 0.1, 60},
    Constant{"error_textured_pct",
             "Error of stranded, textured, plant or silk cloth, or state unstated, 9 in 10", 12.0, "%", trade,
             practice, 0.1, 60},
    Constant{"error_drawn_in_pct", "Error of cloth that draws in, from its own gauge alone, 9 in 10", 20.0,
             "%", trade, practice, 0.1, 60},
    Constant{"error_weighed_pct", "Error after a weighed sample or swatch, 9 in 10", 3.0, "%", trade,
             practice, 0.1, 60},
    Constant{"error_area_pct", "Error of scaling a sample by area, 9 in 10", 10.0, "%", trade, practice, 0.1,
             60},
    Constant{"error_circumference_pct", "Error of scaling a sample by circumference, 9 in 10", 15.0, "%",
             trade, practice, 0.1, 60},
    Constant{"loop_widths_low", "Least plausible loop length of plain cloth, in stitch widths", 3.3, "widths",
             trade, practice, 1, 6},
    Constant{"loop_widths_high", "Greatest plausible loop length of plain cloth, in stitch widths", 4.6,
             "widths", trade, practice, 2, 10},
    Constant{"brimful_share", "Last skein called brimful above", 0.95, "of a skein", trade, practice, 0.5, 1},
    Constant{"tips_over_share", "Last skein called tips over below", 0.05, "of a skein", trade, practice, 0,
             0.5},
    Constant{"growth_whole_low", "Growth of a whole-garment colour with the area: least exponent", 0.90, "",
             trade, practice, 0, 5},
    Constant{"growth_whole_high", "Growth of a whole-garment colour with the area: greatest exponent", 1.10,
             "", trade, practice, 0, 5},
    Constant{"growth_part_low", "Growth of a part colour with the area: least exponent", 0.50, "", trade,
             practice, 0, 5},
    Constant{"growth_part_high", "Growth of a part colour with the area: greatest exponent", 1.00, "", trade,
             practice, 0, 5},
    Constant{"growth_hardly_low", "Growth of a colour that hardly grows, with the area: least exponent", 0.0,
             "", trade, practice, 0, 5},
    Constant{"growth_hardly_high", "Growth of a colour that hardly grows, with the area: greatest exponent",
             0.50, "", trade, practice, 0, 5},
    Constant{"growth_unknown_low", "Growth of a colour of unknown growth with the area: least exponent", 0.0,
             "", trade, practice, 0, 5},
    Constant{"growth_unknown_high", "Growth of a colour of unknown growth with the area: greatest exponent",
             1.15, "", trade, practice, 0, 5},
    Constant{"growth_whole_around_low",
             "Growth of a whole-garment colour with an adult's circumference: least exponent", 0.90, "",
             trade, practice, 0, 5},
    Constant{"growth_whole_around_high",
             "Growth of a whole-garment colour with an adult's circumference: greatest exponent", 1.40, "",
             trade, practice, 0, 5},
    Constant{"growth_part_around_low",
             "Growth of a part colour with an adult's circumference: least exponent", 0.45, "", trade,
             practice, 0, 5},
    Constant{"growth_part_around_high",
             "Growth of a part colour with an adult's circumference: greatest exponent", 1.30, "", trade,
             practice, 0, 5},
    Constant{"growth_hardly_around_low",
             "Growth of a colour that hardly grows, with an adult's circumference: least exponent", 0.0, "",
             trade, practice, 0, 5},
    Constant{"growth_hardly_around_high",
             "Growth of a colour that hardly grows, with an adult's circumference: greatest exponent", 0.65,
             "", trade, practice, 0, 5},
    Constant{"growth_unknown_around_low",
             "Growth of a colour of unknown growth with an adult's circumference: least exponent", 0.0, "",
             trade, practice, 0, 5},
    Constant{"growth_unknown_around_high",
             "Growth of a colour of unknown growth with an adult's circumference: greatest exponent", 1.50,
             "", trade, practice, 0, 5},
    Constant{"growth_whole_child_low",
             "Growth of a whole-garment colour with a child's circumference: least exponent", 1.60, "", trade,
             practice, 0, 5},
    Constant{"growth_whole_child_high",
             "Growth of a whole-garment colour with a child's circumference: greatest exponent", 2.70, "",
             trade, practice, 0, 5},
    Constant{"growth_part_child_low", "Growth of a part colour with a child's circumference: least exponent",
             0.80, "", trade, practice, 0, 5},
    Constant{"growth_part_child_high",
             "Growth of a part colour with a child's circumference: greatest exponent", 2.70, "", trade,
             practice, 0, 5},
    Constant{"growth_hardly_child_low",
             "Growth of a colour that hardly grows, with a child's circumference: least exponent", 0.0, "",
             trade, practice, 0, 5},
    Constant{"growth_hardly_child_high",
             "Growth of a colour that hardly grows, with a child's circumference: greatest exponent", 1.35,
             "", trade, practice, 0, 5},
    Constant{"growth_unknown_child_low",
             "Growth of a colour of unknown growth with a child's circumference: least exponent", 0.0, "",
             trade, practice, 0, 5},
    Constant{"growth_unknown_child_high",
             "Growth of a colour of unknown growth with a child's circumference: greatest exponent", 3.10, "",
             trade, practice, 0, 5},
    Constant{"most_allowance_pct", "Greatest allowance and swatch inside printed counts", 15.0, "%", trade,
             practice, 0, 100},
    Constant{"sigma_hand_pct", "Standard deviation of another knitter's hand that met gauge", 3.0, "%", trade,
             practice, 0, 30},
    Constant{"sigma_lot_pct", "Standard deviation of skein length from lot to lot, mill yarn", 1.5, "%",
             trade, practice, 0, 30},
    Constant{"sigma_skein_pct", "Standard deviation of length from skein to skein, mill yarn", 1.5, "%",
             trade, practice, 0, 30},
    Constant{"sigma_hand_dyed_pct", "The same two for hand-dyed yarn", 3.0, "%", trade, practice, 0, 30},
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
