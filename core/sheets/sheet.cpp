// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheets/sheet.h"

namespace skeinproof {

Cell words(std::string text, int indent) {
  Cell cell;
  cell.text = std::move(text);
  cell.indent = indent;
  return cell;
}

Cell figure(std::optional<double> number, int decimals) {
  Cell cell;
  cell.number = number;
  cell.decimals = decimals;
  if (!number) cell.text = "–";
  return cell;
}

std::string shown(const Cell& cell, const NumberStyle& style) {
  if (cell.repeats) return {};
  if (!cell.remark.empty()) return cell.remark;
  return cell.number ? show_number(*cell.number, cell.decimals, style) : cell.text;
}

}  // namespace skeinproof
