// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/manuscript/said.h"

#include "core/units/show.h"

namespace skeinproof::testing {

std::vector<std::string> said(std::string_view text, StatementKind kind) {
  std::vector<std::string> lines;
  for (const Statement& statement : read_manuscript(text).statements) {
    if (statement.kind != kind) continue;
    std::string line = statement.subject;
    if (!statement.qualifier.empty()) line += (line.empty() ? "" : ", ") + statement.qualifier;
    if (!line.empty()) line += ": ";
    line += statement.words;
    std::string between = statement.words.empty() ? "" : " ";
    for (const PrintedValue& value : statement.values) {
      line += between + (value.opens_group ? "(" : "") + (value.number ? exact_number(*value.number) : "–");
      between = " ";
    }
    if (statement.unit != PrintedUnit::none) line += " " + std::string(word_of(statement.unit));
    lines.push_back(line);
  }
  return lines;
}

}  // namespace skeinproof::testing
