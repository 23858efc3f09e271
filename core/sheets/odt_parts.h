// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstdint>
#include <string>
#include <string_view>

#include "core/sheets/sheet.h"

namespace skeinproof {

// The files within an OpenDocument text.
std::string odt_content(const Sheet& sheet);
std::string odt_meta(const Sheet& sheet, std::int64_t created);
std::string_view odt_styles();
std::string_view odt_manifest();

}  // namespace skeinproof
