// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/base/text.h"
#include "core/sheets/printable.h"
#include "core/sheets/write_sheet.h"

namespace skeinproof {
namespace {

std::string padded(const std::string& text, std::size_t width, Align align) {
  const std::size_t length = code_points(text).size();
  const std::string space(width > length ? width - length : 0, ' ');
  return align == Align::left ? text + space : space + text;
}

std::string without_end_spaces(std::string line) {
  while (!line.empty() && line.back() == ' ') line.pop_back();
  return line + "\n";
}

class PlainText {
 public:
  explicit PlainText(const NumberStyle& style) : style_(style) {}

  void operator()(const Paragraph& paragraph) {
    const std::string text = printable(paragraph.text, true);
    if (paragraph.voice == Voice::designer)
      text_ += "“" + text + "”\n";
    else
      text_ += (paragraph.voice == Voice::ground ? "  " : "") + text + "\n";
  }

  void operator()(const Lines& lines) {
    for (const auto& runs : lines.lines) {
      std::string line;
      for (const MarkedRun& run : runs) line += printable(run.text);
      text_ += without_end_spaces(line);
    }
  }

  void operator()(const Heading& heading) {
    if (!text_.empty()) text_ += "\n";
    std::vector<std::string> parts;
    for (const std::string& part : {heading.number, heading.word, heading.text})
      if (!part.empty()) parts.push_back(printable(part));
    text_ += join(parts, "  ") + "\n";
  }

  void operator()(const Choices& choices) {
    for (const TickBox& choice : choices.choices)
      text_ += "  [ ] " + printable(choice.text) + (choice.room ? ": " + std::string(40, '_') : "") + "\n";
  }

  void operator()(const Table& table) {
    if (!text_.empty()) text_ += "\n";
    if (!table.title.empty()) text_ += printable(table.title) + "\n";
    std::vector<std::vector<std::string>> cells = {{}};
    for (const Column& column : table.columns) cells.front().push_back(printable(column.heading));
    for (const Row& row : table.rows) {
      cells.emplace_back(table.columns.size());
      for (std::size_t c = 0; c < std::min(row.cells.size(), table.columns.size()); ++c)
        cells.back()[c] = std::string(static_cast<std::size_t>(std::max(row.cells[c].indent, 0)) * 2, ' ') +
                          printable(shown(row.cells[c], style_));
    }
    std::vector<std::size_t> widths(table.columns.size());
    for (const auto& row : cells)
      for (std::size_t c = 0; c < row.size(); ++c)
        widths[c] = std::max(widths[c], code_points(row[c]).size());
    for (std::size_t r = 0; r < cells.size(); ++r) {
      if (r > 1 && table.rows[r - 1].opens_group) text_ += "\n";
      text_ += line(table, cells[r], widths, ' ');
      if (r == 0) text_ += line(table, std::vector<std::string>(widths.size()), widths, '-');
    }
    text_ += "\n";
  }

  std::string take() { return std::move(text_); }

 private:
  static std::string line(const Table& table, const std::vector<std::string>& cells,
                          const std::vector<std::size_t>& widths, char fill) {
    std::string text;
    for (std::size_t c = 0; c < cells.size(); ++c) {
      if (c > 0) text += table.columns[c].opens_group ? " | " : "  ";
      text += fill == '-' ? std::string(widths[c], '-') : padded(cells[c], widths[c], table.columns[c].align);
    }
    return without_end_spaces(text);
  }

  const NumberStyle& style_;
  std::string text_;
};

}  // namespace

std::string plain_text(const Sheet& sheet) {
  std::vector<std::string> head;
  for (const std::string& text : {sheet.title, sheet.subtitle, sheet.date})
    if (!text.empty()) head.push_back(printable(text));
  PlainText parts(sheet.numbers);
  for (const SheetPart& part : sheet.parts) std::visit(parts, part);
  std::string text = join(head, " · ");
  if (!text.empty()) text += "\n\n";
  text += parts.take();
  if (!sheet.foot_notes.empty() && !text.ends_with("\n\n")) text += "\n";
  for (const std::string& note : sheet.foot_notes) text += printable(note) + "\n";
  while (text.ends_with("\n\n")) text.pop_back();
  return text;
}

}  // namespace skeinproof
