// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <SQLiteCpp/SQLiteCpp.h>

#include <map>
#include <string>
#include <vector>

#include "core/pattern/pattern.h"

namespace skeinproof {

// How the document lies in tables; every name follows from the names the parts give their fields:
//   - The document itself is the one row of "pattern". A list of parts is a table of the list's name; inside
//   another
//     part it is named after it: "roles", "piece_sections", "piece_section_runs".
//   - A part is a row. A part inside it lies in its columns behind its name ("put_up_length_m"); an entered
//   value
//     takes two columns, "x" and "x_typed".
//   - A row is known by its id, where the part has one, else by its owner and its position. Rows that belong
//   to a
//     part name it in the singular ("piece", "piece_section").
//   - A list with one value a size is a table ("role_printed_count") with a row for each known value.

// Writes the document into empty tables. The tables must be those of the newest schema. Throws
// SQLite::Exception.
void write_document_rows(SQLite::Database& database, const Pattern& pattern);

// Reads it back. A value of the wrong type, out of range, an unknown word or text that is not UTF-8 is
// `damaged`; the document's own rules are not checked here. Throws SQLite::Exception.
Expected<Pattern> read_document_rows(SQLite::Database& database);

// The tables a document needs and the columns of each, in order.
std::map<std::string, std::vector<std::string>> document_tables();

}  // namespace skeinproof
