// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstdint>
#include <string>

#include "core/base/error.h"
#include "core/sheets/sheet.h"

namespace skeinproof {

// Saves text as a whole or not at all; an old file stays where it cannot be written.
Expected<void> save_text(const std::string& path, const std::string& text);

// Saves a sheet as what the name ends in: .txt, .html, .csv, .xlsx, .odt or .pdf. `now` in seconds since 1970
// dates a workbook or a document. Fails with wrong_format for another ending.
Expected<void> save_sheet(const Sheet& sheet, const std::string& path, std::int64_t now);

}  // namespace skeinproof
