// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/file/shelf_csv_cells.h"

#include <csv.h>

#include <algorithm>

#include "core/base/csv_cells.h"
#include "core/base/text.h"

namespace skeinproof {
namespace {

// Takes what the parser hands over. It is fed byte by byte, so that a cell's place is where the byte behind
// its last separator stood.
struct Reader {
  std::vector<std::vector<CsvCell>> rows;
  std::vector<CsvCell> row;
  Place at{{}, 1, 1};     // of the byte that is fed
  Place start{{}, 1, 1};  // of the cell that is being read

  void pass(unsigned char byte) {
    if (byte == '\n') {
      ++at.line;
      at.column = 1;
    } else if ((byte & 0xc0) != 0x80) {
      ++at.column;
    }
  }
};

void take_cell(void* text, size_t size, void* data) {
  auto& reader = *static_cast<Reader*>(data);
  reader.row.push_back({as_typed({static_cast<const char*>(text), size}), reader.start});
}

void take_row(int, void* data) {
  auto& reader = *static_cast<Reader*>(data);
  const bool filled = std::any_of(reader.row.begin(), reader.row.end(),
                                  [](const CsvCell& cell) { return !trimmed(cell.text).empty(); });
  if (filled) reader.rows.push_back(std::move(reader.row));
  reader.row.clear();
}

class Parser {
 public:
  explicit Parser(char separator) {
    csv_init(&parser_, 0);
    csv_set_delim(&parser_, static_cast<unsigned char>(separator));
  }
  ~Parser() { csv_free(&parser_); }
  Parser(const Parser&) = delete;
  Parser& operator=(const Parser&) = delete;

  bool feed(unsigned char byte, Reader& reader) {
    const std::size_t cells = reader.row.size(), rows = reader.rows.size();
    if (csv_parse(&parser_, &byte, 1, take_cell, take_row, &reader) != 1) return false;
    reader.pass(byte);
    const bool ended = reader.row.size() != cells || reader.rows.size() != rows;
    const bool between_rows = byte == '\n' && parser_.pstate == 0;
    if (ended || between_rows) reader.start = reader.at;
    return true;
  }
  // Lenient with odd quotation marks, but not with one that swallows the rest of the file.
  bool finish(Reader& reader) {
    csv_set_opts(&parser_, CSV_STRICT | CSV_STRICT_FINI);
    return csv_fini(&parser_, take_cell, take_row, &reader) == 0;
  }

 private:
  csv_parser parser_{};
};

}  // namespace

Expected<std::vector<std::vector<CsvCell>>> csv_rows(std::string_view text, char separator) {
  Reader reader;
  Parser parser(separator);
  bool sound = true;
  for (char byte : text) sound = sound && parser.feed(static_cast<unsigned char>(byte), reader);
  if (!sound || !parser.finish(reader))
    return failure(ErrorKind::wrong_shape, "a quotation mark that is never closed", "its closing mark",
                   reader.start);
  return std::move(reader.rows);
}

CsvSeparator csv_separator(std::string_view text) {
  constexpr std::string_view known = ",;\t|";
  const std::string_view line = text.substr(0, text.find('\n'));
  if (line.size() == 5 && lower_ascii(line.substr(0, 4)) == "sep=" && known.find(line[4]) != line.npos)
    return {line[4], text.substr(std::min(text.size(), line.size() + 1)), 1};
  CsvSeparator best{',', text, 0};
  std::ptrdiff_t most = 0;
  for (char separator : known) {
    bool quoted = false;
    std::ptrdiff_t count = 0;
    for (char c : line) {
      if (c == '"') quoted = !quoted;
      if (c == separator && !quoted) ++count;
    }
    if (count > most) {
      most = count;
      best.separator = separator;
    }
  }
  return best;
}

}  // namespace skeinproof
