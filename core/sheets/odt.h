// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstdint>
#include <string>

#include "core/base/error.h"
#include "core/sheets/sheet.h"

namespace skeinproof {

// A sheet as a text document to write in: OpenDocument 1.2 (ISO/IEC 26300-1:2015), the bytes of its zip
// archive. Boxes to tick are signs that can be typed over, room to write is a cell of its own. `created` in
// seconds since 1970 is what the file says of its age; the same sheet and time give the same bytes. Fails
// with system.
Expected<std::string> odt(const Sheet& sheet, std::int64_t created);

}  // namespace skeinproof
