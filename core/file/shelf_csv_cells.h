// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string_view>
#include <vector>

#include "core/file/shelf_csv.h"

namespace skeinproof {

// The rows of a CSV text with the place of every cell; empty lines are left out. Fails on a quotation mark
// that is never closed.
Expected<std::vector<std::vector<CsvCell>>> csv_rows(std::string_view text, char separator);

// The separator of a table: what stands most often in its first line outside quotation marks, or what a first
// line "sep=;" says, which is then taken off the text (`lines` counts it).
struct CsvSeparator {
  char separator = ',';
  std::string_view rest;
  int lines = 0;
};
CsvSeparator csv_separator(std::string_view text);

// What a column is by its heading.
ShelfColumn column_of(std::string_view heading);

}  // namespace skeinproof
