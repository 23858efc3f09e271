// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/queries/text_places.h"

#include <algorithm>

namespace skeinproof {

TextPlaces::TextPlaces(const std::string& text) : positions_(text.size() + 1) {
  int at = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto byte = static_cast<unsigned char>(text[i]);
    const bool continues = (byte & 0xC0) == 0x80;
    positions_[i] = continues && i > 0 ? positions_[i - 1] : at;
    if (!continues) at += byte >= 0xF0 ? 2 : 1;
  }
  positions_[text.size()] = at;
}

std::size_t TextPlaces::byte(int position) const {
  const auto found = std::lower_bound(positions_.begin(), positions_.end(), position);
  return static_cast<std::size_t>(std::min(found, positions_.end() - 1) - positions_.begin());
}

QTextCursor TextPlaces::cursor(QTextDocument* document, const TextSpan& span) const {
  const int last = document->characterCount() - 1;
  QTextCursor cursor(document);
  cursor.setPosition(std::min(position(span.begin), last));
  cursor.setPosition(std::min(position(span.end), last), QTextCursor::KeepAnchor);
  return cursor;
}

}  // namespace skeinproof
