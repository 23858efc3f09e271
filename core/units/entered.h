// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>

namespace skeinproof {

// A value somebody typed, with the characters it was typed as ("191yd" in a field of metres). `typed` is
// empty where the value came from a computation or an import without text.
template <class Quantity>
struct Entered {
  Quantity value{};
  std::string typed;
  bool operator==(const Entered&) const = default;
};

}  // namespace skeinproof
