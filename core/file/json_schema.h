// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string_view>

namespace skeinproof {

// What a JSON text of ours says that it is.
struct JsonSchema {
  std::string_view name;
  int version;
};
inline constexpr JsonSchema pattern_schema{"skeinproof pattern", 3};
inline constexpr JsonSchema yarn_shelf_schema{"skeinproof yarn shelf", 1};
inline constexpr JsonSchema house_style_schema{"skeinproof house style", 2};

}  // namespace skeinproof
