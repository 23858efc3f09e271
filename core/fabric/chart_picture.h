// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstddef>
#include <span>
#include <string>
#include <vector>

#include "core/base/error.h"
#include "core/fabric/chart.h"
#include "core/fabric/lightness.h"

namespace skeinproof {

// Charts as PNG pictures: one pixel, or one square block of pixels, is one stitch; the bottom row is round 1;
// pixels that are more than half transparent are no stitch.
inline constexpr int find_block_size = 0;

struct PictureOptions {
  int block_size =
      1;  // pixels along one side of a stitch, or `find_block_size`: the largest that fits everywhere
};

struct PictureColour {
  char symbol = 0;
  Srgb colour;
  long stitches = 0;
};

struct ChartPicture {
  Chart chart;                         // without id and name, colours without roles
  std::vector<PictureColour> colours;  // most stitches first, lettered A, B, C …
  int block_size = 1;
};

// Fails on bytes that are no PNG or a damaged one (damaged, wrong_format), on a picture larger than a chart
// may be or with more colours than a chart may have symbols (out_of_range, with the count), and where a block
// of pixels is of more than one colour (wrong_shape).
Expected<ChartPicture> read_chart_picture(std::span<const std::byte> bytes,
                                          const PictureOptions& options = {});

// The bytes of an indexed PNG with the colours given by symbol; no stitch, and a symbol without a colour, is
// transparent. Fails where the chart is empty or has too many colours.
Expected<std::vector<std::byte>> chart_picture(const Chart& chart, const std::vector<PictureColour>& colours,
                                               int block_size = 1);

}  // namespace skeinproof
