// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/reference/generator/table.h"

#include <csv.h>

#include <algorithm>
#include <fstream>
#include <iterator>

namespace skeinproof::generator {
namespace {

struct Reading {
  std::vector<Row> rows;
  Row row;
  int line = 1;
};

void on_cell(void* cell, std::size_t length, void* state) {
  auto& reading = *static_cast<Reading*>(state);
  if (reading.row.cells.empty()) reading.row.line = reading.line;
  reading.row.cells.emplace_back(static_cast<const char*>(cell), length);
  const auto& text = reading.row.cells.back();
  reading.line += static_cast<int>(std::count(text.begin(), text.end(), '\n'));
}

void on_row(int, void* state) {
  auto& reading = *static_cast<Reading*>(state);
  if (reading.row.cells.empty()) reading.row.line = reading.line;
  reading.rows.push_back(std::move(reading.row));
  reading.row = {};
  ++reading.line;
}

std::vector<Row> parse(const std::string& file, const std::string& text) {
  csv_parser parser;
  if (csv_init(&parser, CSV_STRICT | CSV_STRICT_FINI | CSV_REPALL_NL) != 0)
    fault(file, 0, "no memory to read it");
  Reading reading;
  const std::size_t done = csv_parse(&parser, text.data(), text.size(), on_cell, on_row, &reading);
  const bool good = done == text.size() && csv_fini(&parser, on_cell, on_row, &reading) == 0;
  const std::string why = csv_strerror(csv_error(&parser));
  csv_free(&parser);
  if (!good) fault(file, reading.line, "is no comma-separated table: " + why);
  return std::move(reading.rows);
}

}  // namespace

void fault(const std::string& file, int line, const std::string& what) {
  throw TableFault(file + ":" + std::to_string(line) + ": " + what);
}

std::size_t Table::column(std::string_view name) const {
  const auto at = std::find(columns.begin(), columns.end(), name);
  if (at == columns.end()) fault(file, 1, "has no column “" + std::string(name) + "”");
  return static_cast<std::size_t>(at - columns.begin());
}

Table read_table(const std::string& folder, const std::string& file) {
  const std::string path = folder + "/" + file;
  std::ifstream stream(path, std::ios::binary);
  if (!stream) fault(path, 0, "cannot be read");
  const std::string text{std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()};
  std::vector<Row> rows = parse(path, text);
  if (rows.size() < 2) fault(path, 1, "expected a header row and rows below it");
  Table table{path, std::move(rows.front().cells), {}};
  rows.erase(rows.begin());
  for (const Row& row : rows)
    if (row.cells.size() != table.columns.size())
      fault(path, row.line,
            "found " + std::to_string(row.cells.size()) + " cells, expected " +
                std::to_string(table.columns.size()));
  table.rows = std::move(rows);
  return table;
}

}  // namespace skeinproof::generator
