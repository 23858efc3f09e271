// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "core/manuscript/write_block.h"
#include "core/need/assessment.h"
#include "core/need/working.h"
#include "core/pattern/pattern.h"
#include "core/sheets/sheet.h"

namespace skeinproof {

// What a per-size table can say of a colour in a size. Lengths are in metres, in yards for a house that puts
// imperial first; shares in percent of one skein.
enum class SizeFigure { skeins, planned, last_skein, fraction, knitted, with_swatch, low, high };
template <>
struct EnumWords<SizeFigure> {
  static constexpr auto rows = enum_rows<SizeFigure>({{SizeFigure::skeins, "skeins"},
                                                      {SizeFigure::planned, "planned"},
                                                      {SizeFigure::last_skein, "last skein"},
                                                      {SizeFigure::fraction, "skeins, unrounded"},
                                                      {SizeFigure::knitted, "knitted"},
                                                      {SizeFigure::with_swatch, "with swatch"},
                                                      {SizeFigure::low, "planned, low"},
                                                      {SizeFigure::high, "planned, high"}});
};
const std::vector<SizeFigure>& usual_size_figures();

// Colours by sizes, a row a figure, the skeins of all colours last. What could not be worked out stands in
// the foot notes with the reason, beside the usual cautions. `date` as it shall be printed.
Sheet per_size_sheet(const Pattern& pattern, const Assessment& assessment, const HouseStyle& house,
                     std::string_view date = {},
                     const std::vector<SizeFigure>& figures = usual_size_figures());

// The working of one figure: a row a step, indented under what it is part of, each with how it follows and
// the ground it stands on.
Sheet working_sheet(const Step& step, const Pattern& pattern, const HouseStyle& house,
                    std::string_view date = {});

// The yarn block in the house style with what it misses and the usual cautions.
Sheet block_sheet(const Pattern& pattern, const Assessment& assessment, const HouseStyle& house,
                  std::string_view date = {});

}  // namespace skeinproof
