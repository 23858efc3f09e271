// SPDX-License-Identifier: GPL-3.0-or-later
#include <cstdint>

#include "core/fabric/census.h"
#include "core/fabric/chart_picture.h"

// Any bytes are refused, or read as a chart that can be counted.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto picture = skeinproof::read_chart_picture({reinterpret_cast<const std::byte*>(data), size},
                                                      {skeinproof::find_block_size});
  if (picture) skeinproof::census(picture->chart);
  return 0;
}
