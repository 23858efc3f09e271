// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/file/shelf_csv.h"

#include <algorithm>
#include <set>

#include "core/base/csv_cells.h"
#include "core/base/text.h"
#include "core/file/shelf_csv_cells.h"
#include "core/manuscript/text_of_file.h"
#include "core/yarn/check_yarn.h"

namespace skeinproof {
namespace {

constexpr std::string_view byte_order_mark = "\xef\xbb\xbf";
constexpr std::string_view all_separators = ",;\t|";

Error placed(Error error, const std::string& file, const Place& place) {
  error.place = place;
  error.place.file = file;
  return error;
}

std::string separator_words(char separator) {
  return separator == '\t' ? "tabs" : separator == ';' ? "semicolons" : separator == '|' ? "bars" : "commas";
}

// Two columns of one field would overwrite each other: the later one goes into the note.
void settle_columns(ShelfTable& table) {
  std::set<ShelfField> taken;
  std::vector<std::string> unknown;
  for (ShelfColumn& column : table.columns) {
    if (column.known && !taken.insert(column.field).second) {
      column.field = ShelfField::kept_in_note;
      column.known = false;
    }
    if (!column.known) unknown.push_back(quoted(column.heading, 30));
  }
  if (!unknown.empty())
    table.notes.push_back("Not known, and kept in the note unless told otherwise: " + join(unknown, ", ") +
                          ".");
}

void add_to_note(ShelfYarn& entry, std::string_view heading, std::string_view words) {
  std::string line = heading.empty() ? std::string(words) : std::string(heading) + ": " + std::string(words);
  entry.note += (entry.note.empty() ? "" : "\n") + std::move(line);
}

// Reads one row by the columns; the doubts are told and their words kept.
class RowReader {
 public:
  RowReader(const ShelfTable& table, std::span<const ShelfColumn> columns)
      : table_(table), columns_(columns) {
    for (std::size_t i = 0; i < columns.size(); ++i)
      if (columns[i].field == ShelfField::currency) currency_ = i;
  }

  ShelfImport::Taken read(const std::vector<CsvCell>& row) const {
    ShelfImport::Taken taken;
    taken.line = row.front().place.line;
    for (std::size_t i = 0; i < row.size(); ++i)
      if (i < columns_.size()) take(row, i, taken);
    for (std::size_t i = columns_.size(); i < row.size(); ++i) {
      if (trimmed(row[i].text).empty()) continue;
      add_to_note(taken.entry, {}, row[i].text);
      const Error beyond{ErrorKind::wrong_count, row[i].place,
                         "a cell beyond the last heading, " + quoted(row[i].text),
                         std::to_string(columns_.size()) + " cells in a row"};
      taken.doubts.push_back(placed(beyond, table_.file, beyond.place));
    }
    for (const auto& problems :
         {check_composition(taken.entry.yarn.composition), check_put_up(taken.entry.yarn.put_up)})
      for (const Error& problem : problems)
        if (problem.kind != ErrorKind::not_found)
          taken.doubts.push_back(placed(problem, table_.file, row.front().place));
    return taken;
  }

 private:
  void take(const std::vector<CsvCell>& row, std::size_t at, ShelfImport::Taken& taken) const {
    const ShelfColumn& column = columns_[at];
    const std::string& text = row[at].text;
    if (trimmed(text).empty() || column.field == ShelfField::left_out) return;
    if (column.field == ShelfField::kept_in_note) return add_to_note(taken.entry, column.heading, text);
    if (column.field == ShelfField::note) return prepend_note(taken.entry, text);
    if (column.field == ShelfField::currency) return;  // read with the price
    std::string assumed = column.assumed;
    if (column.field == ShelfField::price && currency_ && *currency_ < row.size() &&
        !trimmed(row[*currency_].text).empty())
      assumed = trimmed(row[*currency_].text);
    // "DK" under the heading "Weight" is no weight but the word for a thickness.
    const bool word = column.field == ShelfField::weight && text.find_first_of("0123456789") == text.npos;
    const auto read = read_field(taken.entry, word ? ShelfField::category : column.field, text, assumed);
    if (read) return;
    Error doubt = placed(read.error(), table_.file, row[at].place);
    doubt.found += " in the column " + quoted(column.heading, 30);
    taken.doubts.push_back(std::move(doubt));
    add_to_note(taken.entry, column.heading, text);
  }
  static void prepend_note(ShelfYarn& entry, const std::string& text) {
    const std::string kept = std::move(entry.note);
    entry.note = text;
    if (!kept.empty()) entry.note += "\n" + kept;
  }

  const ShelfTable& table_;
  std::span<const ShelfColumn> columns_;
  std::optional<std::size_t> currency_;
};

std::string row_text(const std::vector<std::string>& cells) {
  std::vector<std::string> safe;
  for (const std::string& cell : cells) safe.push_back(csv_cell(without_formula(cell), all_separators));
  return join(safe, ",") + "\r\n";
}

}  // namespace

Expected<ShelfTable> read_shelf_table(std::string_view bytes, std::string_view file_name) {
  ShelfTable table;
  table.file = file_name;
  const Place place{table.file, 0, 0};
  if (bytes.starts_with("PK\x03\x04"))
    return failure(ErrorKind::wrong_format, "a spreadsheet's own file or another packed one",
                   "the table saved as CSV", place);
  auto text = text_of_bytes(bytes, "table.csv");
  if (!text) return failure(text.error().kind, text.error().found, "a table saved as CSV", place);
  table.encoding = text->encoding;
  table.notes = text->notes;
  const CsvSeparator separator = csv_separator(text->text);
  table.separator = separator.separator;
  table.notes.push_back("Cells are separated by " + separator_words(separator.separator) + ".");
  auto rows = csv_rows(separator.rest, separator.separator);
  if (!rows) return tl::unexpected(placed(rows.error(), table.file, rows.error().place));
  if (rows->empty()) return failure(ErrorKind::wrong_shape, "an empty table", "headings and rows", place);
  for (auto& row : *rows)
    for (CsvCell& cell : row) cell.place.line += separator.lines;
  for (const CsvCell& cell : rows->front()) table.columns.push_back(column_of(cell.text));
  const bool any = std::any_of(table.columns.begin(), table.columns.end(),
                               [](const ShelfColumn& column) { return column.known; });
  if (!any) {
    std::vector<std::string> headings;
    for (const ShelfColumn& column : table.columns) headings.push_back(quoted(column.heading, 20));
    headings.resize(std::min<std::size_t>(headings.size(), 6));
    return failure(ErrorKind::wrong_shape, "the headings " + join(headings, ", "),
                   "headings in the first row such as Name, Composition, Length, Weight",
                   {table.file, rows->front().front().place.line, 1});
  }
  settle_columns(table);
  table.rows.assign(std::make_move_iterator(rows->begin() + 1), std::make_move_iterator(rows->end()));
  return table;
}

ShelfImport read_shelf_rows(const ShelfTable& table, std::span<const ShelfColumn> columns) {
  ShelfImport import;
  const RowReader reader(table, columns);
  for (std::size_t i = 0; i < table.rows.size(); ++i) {
    auto taken = reader.read(table.rows[i]);
    if (trimmed(taken.entry.yarn.name).empty()) {
      const Error nameless{ErrorKind::not_found, table.rows[i].front().place, "a row without a name",
                           "the name of a yarn"};
      import.failed.push_back({i, placed(nameless, table.file, nameless.place)});
      continue;
    }
    import.taken.push_back(std::move(taken));
  }
  return import;
}

std::vector<ShelfYarn> ShelfImport::entries() const {
  std::vector<ShelfYarn> all;
  for (const Taken& one : taken) all.push_back(one.entry);
  return all;
}

std::string shelf_csv(std::span<const ShelfYarn> entries) {
  std::vector<std::string> cells;
  for (const ShelfFieldRow& row : shelf_field_rows())
    if (row.exported) cells.emplace_back(row.heading);
  std::string text = std::string(byte_order_mark) + row_text(cells);
  for (const ShelfYarn& entry : entries) {
    cells.clear();
    for (const ShelfFieldRow& row : shelf_field_rows())
      if (row.exported) cells.push_back(field_text(entry, row.field));
    text += row_text(cells);
  }
  return text;
}

std::string failed_rows_csv(const ShelfTable& table, const ShelfImport& import) {
  std::vector<std::string> cells;
  for (const ShelfColumn& column : table.columns) cells.push_back(column.heading);
  std::string text = std::string(byte_order_mark) + row_text(cells);
  for (const ShelfImport::Failed& failed : import.failed) {
    cells.clear();
    for (const CsvCell& cell : table.rows[failed.row]) cells.push_back(cell.text);
    text += row_text(cells);
  }
  return text;
}

}  // namespace skeinproof
