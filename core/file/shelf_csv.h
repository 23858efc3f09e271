// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/error.h"
#include "core/substitution/shelf_fields.h"

namespace skeinproof {

// Tables of yarns from spreadsheets and for them. Reading goes in two steps, so that a person can look
// between them: the cells with a guess at their columns, then the entries.

struct CsvCell {
  std::string text;
  Place place;  // line and column of its first character
};

// What one column is taken for.
struct ShelfColumn {
  std::string heading;
  ShelfField field = ShelfField::kept_in_note;
  std::string assumed;  // unit or currency in the heading: "yd" of "Length (yd)"
  bool known = false;   // the heading was recognised; false: kept in the note unless told otherwise
};

struct ShelfTable {
  std::string file;
  std::string encoding;            // assumed for the bytes; empty = UTF-8
  char separator = ',';            // , ; | or tab
  std::vector<std::string> notes;  // plain sentences: encoding, separator, columns that are not known
  std::vector<ShelfColumn> columns;
  std::vector<std::vector<CsvCell>> rows;  // below the headings, empty lines left out
};

// Fails with place on bytes that are no text, a quotation mark that is never closed, a table without
// headings, or headings of which none is known (wrong_shape).
Expected<ShelfTable> read_shelf_table(std::string_view bytes, std::string_view file_name);

struct ShelfImport {
  struct Taken {
    ShelfYarn entry;
    int line = 0;
    std::vector<Error>
        doubts;  // cells that could not be read, with their places; their words are in the note
  };
  struct Failed {
    std::size_t row = 0;  // of the table
    Error error;
  };
  std::vector<Taken> taken;
  std::vector<Failed> failed;  // rows without a name

  std::vector<ShelfYarn> entries() const;
};

// Reads the rows by the columns in force. Nothing is lost: what cannot be read as what its column says, and
// what stands in unknown columns or beyond the last one, is in the entry's note; failed rows are told.
ShelfImport read_shelf_rows(const ShelfTable& table, std::span<const ShelfColumn> columns);

// One row an entry, UTF-8 with a byte order mark, CRLF. No cell can run as a formula: one that begins with
// = + - @, a tab or a line end, also behind spaces or apostrophes, gets an apostrophe before it, which
// read_shelf_table takes off again.
std::string shelf_csv(std::span<const ShelfYarn> entries);
// The failed rows as they stood, under their headings, to be put right and read again.
std::string failed_rows_csv(const ShelfTable& table, const ShelfImport& import);

}  // namespace skeinproof
