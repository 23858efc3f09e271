// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/csv_cells.h"

#include <csv.h>

#include <algorithm>

namespace skeinproof {
namespace {

bool may_run(std::string_view text) {
  constexpr std::string_view at_once = "\t\r\n";
  if (text.empty()) return false;
  if (at_once.find(text.front()) != std::string_view::npos) return true;
  const auto first = text.find_first_not_of("' ");
  if (first == std::string_view::npos) return false;
  const std::string_view rest = text.substr(first);
  constexpr std::string_view starts[] = {"=", "+", "-", "@", "＝", "＋", "－", "＠", "\t", "\r", "\n"};
  return std::any_of(std::begin(starts), std::end(starts),
                     [&](std::string_view start) { return rest.starts_with(start); });
}

}  // namespace

std::string without_formula(std::string_view text) {
  std::string cell;
  if (may_run(text)) cell += '\'';
  return cell.append(text);
}

std::string as_typed(std::string_view cell) {
  return std::string(cell.starts_with('\'') && may_run(cell) ? cell.substr(1) : cell);
}

std::string csv_cell(std::string_view text, std::string_view separators) {
  const bool quoted = text.find_first_of("\"\r\n") != std::string_view::npos ||
                      text.find_first_of(separators) != std::string_view::npos || text.starts_with(' ') ||
                      text.ends_with(' ');
  if (!quoted) return std::string(text);
  std::string cell(text.size() * 2 + 2, '\0');
  cell.resize(csv_write(cell.data(), cell.size(), text.data(), text.size()));
  return cell;
}

}  // namespace skeinproof
