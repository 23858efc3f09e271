// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <span>
#include <string_view>

#include "core/pattern/pattern.h"

namespace skeinproof {

// A constant of the methods that the user may overwrite for a pattern.
struct Constant {
  std::string_view key;   // "join_m"
  std::string_view name;  // "Yarn lost at each new skein"
  double value;           // default
  std::string_view unit;
  std::string_view source;      // citation, or "common practice, no source"
  std::string_view confidence;  // "verified", "memory", "common practice"
  double low;                   // what may be typed
  double high;
};

// All constants, in the order they are shown.
std::span<const Constant> constants();
// The value in force: the pattern's own, else the default. Asserts that the key exists.
double constant(const Pattern& pattern, std::string_view key);
// The pattern's own value of it; null where the default is in force.
const ConstantOverride* own_constant(const Pattern& pattern, std::string_view key);

}  // namespace skeinproof
