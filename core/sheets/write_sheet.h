// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstdint>
#include <string>

#include "core/base/error.h"
#include "core/sheets/sheet.h"

namespace skeinproof {

// Sheets as files. Text comes out as UTF-8 whatever the locale; what is no UTF-8 becomes U+FFFD, and control
// characters become spaces.

// Columns padded so that they stand under each other in a fixed pitch; a bar marks where a bracket of the
// sizes opens. The designer's words stand in quotation marks, grounds are indented.
std::string plain_text(const Sheet& sheet);

// A complete page that needs nothing else, in one ink, made to be printed; everything in it is escaped.
std::string html(const Sheet& sheet);

// The tables alone, by RFC 4180 (CRLF, quotes doubled), an empty line between two. Figures are unrounded to
// six decimals with the sheet's decimal mark. Words a spreadsheet would take for a formula (= + - @, tab or
// line end first) get an apostrophe before them.
struct CsvChoices {
  char separator = ',';
  bool byte_order_mark = false;
};
std::string csv(const Sheet& sheet, const CsvChoices& choices = {});

// A workbook: a worksheet a table with its heading kept in view, figures as numbers with formats, then the
// paragraphs and foot notes. `created` in seconds since 1970 is what the file says of its age; the same sheet
// and time give the same bytes. Fails with not_found, read_only, no_space or system; an old file then stays
// as it was.
Expected<void> save_xlsx(const Sheet& sheet, const std::string& path, std::int64_t created);

}  // namespace skeinproof
