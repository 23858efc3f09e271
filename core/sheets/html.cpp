// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>

#include "core/base/text.h"
#include "core/sheets/printable.h"
#include "core/sheets/write_sheet.h"

namespace skeinproof {
namespace {

// The bar is drawn by its border: borders are printed where backgrounds are left out.
constexpr std::string_view style_rules = R"(
@page { margin: 15mm; }
body { font: 10pt/1.35 sans-serif; color: #000; background: #fff; max-width: 60em; margin: 2em auto; padding: 0 1em; }
h1 { font-size: 16pt; margin: 0; }
.subtitle, .ground, footer { font-size: 9pt; }
.designer { font-family: serif; }
.ground { margin: 0.2em 0; }
pre { font: 10pt/1.45 monospace; white-space: pre-wrap; overflow-wrap: anywhere; }
.yarn-name, .role, .counts { font-weight: 600; }
h2 { font-size: 11pt; margin: 1.2em 0 0.3em; padding-top: 0.5em; border-top: 0.6pt solid #000; break-after: avoid; }
h2 .number, h2 .word { display: inline-block; min-width: 3.5em; }
.choices { list-style: none; padding: 0; margin: 0.4em 0; break-inside: avoid; }
.choices li { display: flex; align-items: flex-end; margin: 0.35em 0; }
.box { width: 0.8em; height: 0.8em; border: 0.6pt solid #000; margin: 0 0.5em 0.15em 0; flex: none; }
.room { flex: 1; min-width: 8em; border-bottom: 0.6pt solid #000; margin-left: 0.5em; }
.gone { text-decoration: line-through; }
.added { text-decoration: underline; }
.over { overflow-x: auto; }
table { border-collapse: collapse; margin: 1em 0; }
caption { text-align: left; font-weight: 600; }
th { font-weight: 400; border-bottom: 0.6pt solid #000; }
th, td { padding: 0.15em 0.5em; text-align: left; vertical-align: top; }
.figure { text-align: right; font-variant-numeric: tabular-nums; }
.strong { font-weight: 600; }
.opens { border-left: 0.6pt solid #000; }
tr.begins td { border-top: 0.6pt solid #000; }
.bar { display: block; width: 4.5em; border: 0.6pt solid #000; height: 5px; margin-left: auto; }
.bar span { display: block; height: 0; border-top: 5px solid #000; }
thead { display: table-header-group; }
tr, pre, .caution { break-inside: avoid; }
@media print { body { margin: 0; max-width: none; padding: 0; } .over { overflow: visible; } }
)";

std::string escaped(std::string_view text, bool keep_breaks = false) {
  std::string safe;
  for (const char c : printable(text, keep_breaks)) {
    switch (c) {
      case '&':
        safe += "&amp;";
        break;
      case '<':
        safe += "&lt;";
        break;
      case '>':
        safe += "&gt;";
        break;
      case '"':
        safe += "&quot;";
        break;
      case '\'':
        safe += "&#39;";
        break;
      default:
        safe += c;
    }
  }
  return safe;
}

std::string class_name(std::string_view mark) {
  std::string name;
  for (const char c : mark)
    if ((c >= 'a' && c <= 'z') || c == '-') name += c;
  return name;
}

class Html {
 public:
  explicit Html(const NumberStyle& style) : style_(style) {}

  void operator()(const Paragraph& paragraph) {
    const bool quotes = paragraph.voice == Voice::designer;
    text_ += fmt::format("<p class=\"{}\">{}{}{}</p>\n", word_of(paragraph.voice), quotes ? "“" : "",
                         escaped(paragraph.text, true), quotes ? "”" : "");
  }

  void operator()(const Lines& lines) {
    text_ += "<pre>";
    for (const auto& line : lines.lines) {
      for (const MarkedRun& run : line) {
        const std::string mark = class_name(run.mark);
        text_ += mark.empty() || mark == "plain"
                     ? escaped(run.text)
                     : fmt::format("<span class=\"{}\">{}</span>", mark, escaped(run.text));
      }
      text_ += "\n";
    }
    text_ += "</pre>\n";
  }

  void operator()(const Heading& heading) {
    text_ += "<h2>";
    for (const auto& [name, words] : {std::pair{"number", &heading.number}, {"word", &heading.word}})
      if (!words->empty()) text_ += fmt::format("<span class=\"{}\">{}</span> ", name, escaped(*words));
    text_ += escaped(heading.text) + "</h2>\n";
  }

  void operator()(const Choices& choices) {
    text_ += "<ul class=\"choices\">\n";
    for (const TickBox& choice : choices.choices)
      text_ += fmt::format("<li><span class=\"box\"></span>{}{}</li>\n", escaped(choice.text),
                           choice.room ? "<span class=\"room\"></span>" : "");
    text_ += "</ul>\n";
  }

  void operator()(const Table& table) {
    text_ += "<div class=\"over\"><table>\n";
    if (!table.title.empty()) text_ += "<caption>" + escaped(table.title) + "</caption>\n";
    text_ += "<thead><tr>";
    for (const Column& column : table.columns)
      text_ += fmt::format("<th scope=\"col\" class=\"{}\">{}</th>", classes(column, false),
                           escaped(column.heading));
    text_ += "</tr></thead>\n<tbody>\n";
    for (const Row& row : table.rows) {
      text_ += row.opens_group ? "<tr class=\"begins\">" : "<tr>";
      for (std::size_t c = 0; c < table.columns.size(); ++c)
        add_cell(table.columns[c], c < row.cells.size() ? row.cells[c] : Cell{});
      text_ += "</tr>\n";
    }
    text_ += "</tbody>\n</table></div>\n";
  }

  std::string take() { return std::move(text_); }

 private:
  static std::string classes(const Column& column, bool strong) {
    std::vector<std::string> names;
    if (column.align == Align::right) names.emplace_back("figure");
    if (column.opens_group) names.emplace_back("opens");
    if (strong) names.emplace_back("strong");
    return join(names, " ");
  }

  void add_cell(const Column& column, const Cell& cell) {
    text_ += fmt::format("<td class=\"{}\"", classes(column, cell.strong));
    if (cell.indent > 0)
      text_ += fmt::format(" style=\"padding-left:{}em\"", 0.5 + 1.2 * std::min(cell.indent, 30));
    text_ += ">" + escaped(shown(cell, style_));
    if (cell.bar)
      text_ +=
          fmt::format("<span class=\"bar\" aria-hidden=\"true\"><span style=\"width:{:.1f}%\"></span></span>",
                      std::clamp(*cell.bar, 0.0, 1.0) * 100);
    text_ += "</td>";
  }

  const NumberStyle& style_;
  std::string text_;
};

}  // namespace

std::string html(const Sheet& sheet) {
  Html parts(sheet.numbers);
  for (const SheetPart& part : sheet.parts) std::visit(parts, part);
  std::string foot;
  for (const std::string& note : sheet.foot_notes) foot += "<p class=\"caution\">" + escaped(note) + "</p>\n";
  std::vector<std::string> under_title;
  for (const std::string& text : {sheet.subtitle, sheet.date})
    if (!text.empty()) under_title.push_back(escaped(text));
  return fmt::format(
      "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
      "<meta name=\"viewport\" "
      "content=\"width=device-width\">\n<title>{0}</title>\n<style>{1}</style>\n</head>\n"
      "<body>\n<header><h1>{0}</h1>\n<p "
      "class=\"subtitle\">{2}</p></header>\n<main>\n{3}</main>\n{4}</body>\n</html>\n",
      escaped(sheet.title), style_rules, join(under_title, " · "), parts.take(),
      foot.empty() ? "" : "<footer>\n" + foot + "</footer>\n");
}

}  // namespace skeinproof
