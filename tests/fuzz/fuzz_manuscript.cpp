// SPDX-License-Identifier: GPL-3.0-or-later
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "core/manuscript/read_manuscript.h"

// Any bytes are read; what is said lies in the text, in order, and values lie in their statements.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace skeinproof;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const Reading reading = read_manuscript(text);
  std::size_t begin = 0;
  for (const Statement& statement : reading.statements) {
    if (statement.span.begin < begin || statement.span.end > size || statement.span.empty()) std::abort();
    begin = statement.span.begin;
    for (const PrintedValue& value : statement.values)
      if (!statement.span.holds(value.span)) std::abort();
  }
  for (const NotUnderstood& stretch : reading.not_understood)
    if (stretch.span.empty() || stretch.span.end > size) std::abort();
  return 0;
}
