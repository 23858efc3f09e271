// SPDX-License-Identifier: GPL-3.0-or-later
#include <cstdint>
#include <cstdlib>
#include <iterator>
#include <string_view>

#include "core/base/text.h"
#include "core/manuscript/text_of_file.h"

// Any bytes are refused under any name of a file, or give text in UTF-8. The first byte draws the name.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  constexpr const char* names[] = {"a.txt", "a.md", "a.html", "a.odt", "a.docx"};
  const std::string_view bytes(reinterpret_cast<const char*>(data) + 1, size - 1);
  const auto file = skeinproof::text_of_bytes(bytes, names[data[0] % std::size(names)]);
  if (file && !skeinproof::is_utf8(file->text)) std::abort();
  return 0;
}
