// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QTextCursor>
#include <string>
#include <vector>

#include "core/manuscript/statement.h"

namespace skeinproof {

// Where the bytes of a UTF-8 text stand in a document that shows it, and back.
class TextPlaces {
 public:
  TextPlaces() : TextPlaces(std::string()) {}
  explicit TextPlaces(const std::string& text);

  int position(std::size_t byte) const { return positions_[std::min(byte, positions_.size() - 1)]; }
  std::size_t byte(int position) const;
  QTextCursor cursor(QTextDocument* document, const TextSpan& span) const;

 private:
  std::vector<int> positions_;  // of every byte, in the document's units
};

}  // namespace skeinproof
