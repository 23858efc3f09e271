// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheets/printable.h"

#include "core/base/text.h"

namespace skeinproof {

std::string printable(std::string_view text, bool keep_breaks) {
  auto points = code_points(text);
  for (char32_t& c : points) {
    if (keep_breaks && (c == U'\n' || c == U'\t')) continue;
    const bool control = c < 0x20 || (c >= 0x7f && c < 0xa0);
    const bool no_character = (c & 0xfffe) == 0xfffe;  // not allowed in XML
    const bool turns_text = (c >= 0x202a && c <= 0x202e) || (c >= 0x2066 && c <= 0x2069);
    if (control || turns_text) c = U' ';
    if (no_character) c = 0xfffd;
  }
  return to_utf8(points);
}

}  // namespace skeinproof
