// SPDX-License-Identifier: GPL-3.0-or-later
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "core/fabric/census.h"
#include "core/fabric/chart_text.h"

// Any bytes are refused, or read as a chart that is written and read back as itself.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const auto chart = skeinproof::read_chart_text({reinterpret_cast<const char*>(data), size});
  if (!chart) return 0;
  skeinproof::census(*chart);
  const auto again = skeinproof::read_chart_text(skeinproof::chart_text(*chart));
  if (!again || !(again->rounds == chart->rounds)) std::abort();
  return 0;
}
