// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>

#include "core/base/csv_cells.h"
#include "core/sheets/printable.h"
#include "core/sheets/write_sheet.h"

namespace skeinproof {
namespace {

std::string harmless(std::string_view text) { return printable(without_formula(text), true); }

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

std::string text_of(const Cell& cell, const NumberStyle& style, char separator) {
  return csv_cell(cell.number ? unrounded(*cell.number, style.mark) : harmless(cell.text),
                  std::string_view(&separator, 1));
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
      text += csv_cell(harmless(table->columns[c].heading), std::string_view(&choices.separator, 1));
    }
    text += "\r\n";
    for (const Row& row : table->rows) {
      for (std::size_t c = 0; c < table->columns.size(); ++c) {
        if (c > 0) text += choices.separator;
        if (c < row.cells.size()) text += text_of(row.cells[c], sheet.numbers, choices.separator);
      }
      text += "\r\n";
    }
  }
  return text;
}

}  // namespace skeinproof
