// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <string_view>

namespace skeinproof {

// Valid UTF-8 without control characters: each becomes a space. `keep_breaks` keeps line feeds and tabs.
std::string printable(std::string_view text, bool keep_breaks = false);

}  // namespace skeinproof
