// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <stdexcept>
#include <string>
#include <vector>

namespace skeinproof::generator {

// A fault of a table: "file:line: found …, expected …". Thrown inside the generator only; it ends the build.
struct TableFault : std::runtime_error {
  using std::runtime_error::runtime_error;
};
[[noreturn]] void fault(const std::string& file, int line, const std::string& what);

struct Row {
  int line = 0;
  std::vector<std::string> cells;
};

// A comma-separated table with one header row; every row has a cell for every column.
struct Table {
  std::string file;
  std::vector<std::string> columns;
  std::vector<Row> rows;

  // The place of a column; a fault where there is none.
  std::size_t column(std::string_view name) const;
};

Table read_table(const std::string& folder, const std::string& file);

}  // namespace skeinproof::generator
