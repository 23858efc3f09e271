// SPDX-License-Identifier: GPL-3.0-or-later
#include <csv.h>

#include <cmath>

#include "core/sheets/printable.h"
#include "core/sheets/write_sheet.h"

namespace skeinproof {
namespace {

std::string quoted_cell(const std::string& text) {
  std::string cell(text.size() * 2 + 2, '\0');
  cell.resize(csv_write(cell.data(), cell.size(), text.data(), text.size()));
  return cell;
}

std::string quoted_where_needed(const std::string& text, char separator) {
  const bool needed = text.find_first_of("\"\r\n") != std::string::npos ||
                      text.find(separator) != std::string::npos || text.starts_with(' ') ||
                      text.ends_with(' ');
  return needed ? quoted_cell(text) : text;
}

std::string harmless(std::string_view text) {
  constexpr std::string_view starts_formula = "=+-@\t\r\n";
  const bool formula = !text.empty() && starts_formula.find(text.front()) != std::string_view::npos;
  return (formula ? "'" : "") + printable(text, true);
}

// Six decimals hide the noise of binary fractions and are finer than any scale. A machine wants the plain
// hyphen before a negative figure, not the minus sign of print.
std::string unrounded(double number, DecimalMark mark) {
  std::string text = show_number(std::abs(number), 6, {mark, FractionStyle::decimal, false});
  if (text.find(mark == DecimalMark::comma ? ',' : '.') != std::string::npos) {
    while (text.back() == '0') text.pop_back();
    if (text.back() == ',' || text.back() == '.') text.pop_back();
  }
  return number < 0 && text != "0" ? "-" + text : text;
}

std::string csv_cell(const Cell& cell, const NumberStyle& style, char separator) {
  return quoted_where_needed(cell.number ? unrounded(*cell.number, style.mark) : harmless(cell.text),
                             separator);
}

}  // namespace

std::string csv(const Sheet& sheet, const CsvChoices& choices) {
  std::string text = choices.byte_order_mark ? "\xef\xbb\xbf" : "";
  bool first = true;
  for (const SheetPart& part : sheet.parts) {
    const Table* table = std::get_if<Table>(&part);
    if (table == nullptr) continue;
    if (!first) text += "\r\n";
    first = false;
    for (std::size_t c = 0; c < table->columns.size(); ++c) {
      if (c > 0) text += choices.separator;
      text += quoted_where_needed(harmless(table->columns[c].heading), choices.separator);
    }
    text += "\r\n";
    for (const Row& row : table->rows) {
      for (std::size_t c = 0; c < table->columns.size(); ++c) {
        if (c > 0) text += choices.separator;
        if (c < row.cells.size()) text += csv_cell(row.cells[c], sheet.numbers, choices.separator);
      }
      text += "\r\n";
    }
  }
  return text;
}

}  // namespace skeinproof
