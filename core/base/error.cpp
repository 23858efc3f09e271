// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/error.h"

namespace skeinproof {

std::string Error::message() const {
  std::string text;
  if (!place.file.empty()) text += place.file + ":";
  if (place.line > 0) text += std::to_string(place.line) + ":" + std::to_string(place.column) + ":";
  if (!text.empty()) text += " ";
  if (!found.empty()) text += "found " + found;
  if (!found.empty() && !expected.empty()) text += ", ";
  if (!expected.empty()) text += "expected " + expected;
  return text;
}

}  // namespace skeinproof
