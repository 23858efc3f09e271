// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <pugixml.hpp>

#include "core/base/text.h"
#include "core/sheets/odt_parts.h"
#include "core/sheets/printable.h"

namespace skeinproof {
namespace {

constexpr const char* namespaces[][2] = {
    {"xmlns:office", "urn:oasis:names:tc:opendocument:xmlns:office:1.0"},
    {"xmlns:style", "urn:oasis:names:tc:opendocument:xmlns:style:1.0"},
    {"xmlns:text", "urn:oasis:names:tc:opendocument:xmlns:text:1.0"},
    {"xmlns:table", "urn:oasis:names:tc:opendocument:xmlns:table:1.0"},
    {"xmlns:fo", "urn:oasis:names:tc:opendocument:xmlns:xsl-fo-compatible:1.0"},
    {"xmlns:meta", "urn:oasis:names:tc:opendocument:xmlns:meta:1.0"},
    {"xmlns:dc", "http://purl.org/dc/elements/1.1/"},
};

pugi::xml_node started(pugi::xml_document& document, const char* root) {
  pugi::xml_node declaration = document.append_child(pugi::node_declaration);
  declaration.append_attribute("version") = "1.0";
  declaration.append_attribute("encoding") = "UTF-8";
  pugi::xml_node node = document.append_child(root);
  for (const auto& [name, value] : namespaces) node.append_attribute(name) = value;
  node.append_attribute("office:version") = "1.2";
  return node;
}

std::string written(const pugi::xml_document& document) {
  struct Writer : pugi::xml_writer {
    std::string bytes;
    void write(const void* data, std::size_t size) override {
      bytes.append(static_cast<const char*>(data), size);
    }
  } writer;
  // Indenting would put white space into the paragraphs.
  document.save(writer, "", pugi::format_raw, pugi::encoding_utf8);
  return std::move(writer.bytes);
}

// White space runs together in this format unless it is told.
void put_text(pugi::xml_node node, std::string_view text) {
  const std::string safe = printable(text, true);
  std::string run;
  const auto put_run = [&] {
    if (!run.empty()) node.append_child(pugi::node_pcdata).set_value(run.c_str());
    run.clear();
  };
  for (std::size_t i = 0; i < safe.size();) {
    if (safe[i] == '\n' || safe[i] == '\t') {
      put_run();
      node.append_child(safe[i++] == '\n' ? "text:line-break" : "text:tab");
      continue;
    }
    std::size_t spaces = 0;
    while (i + spaces < safe.size() && safe[i + spaces] == ' ') ++spaces;
    if (spaces > 1 || (spaces == 1 && (i == 0 || i + 1 == safe.size()))) {
      put_run();
      node.append_child("text:s").append_attribute("text:c") = static_cast<unsigned>(spaces);
      i += spaces;
      continue;
    }
    run += safe[i++];
  }
  put_run();
}

void put_marked(pugi::xml_node node, const char* style, std::string_view text) {
  pugi::xml_node span = node.append_child("text:span");
  span.append_attribute("text:style-name") = style;
  put_text(span, text);
}

struct RunStyle {
  std::string_view mark;
  const char* style;
};
constexpr RunStyle run_styles[] = {
    {"gone", "Gone"}, {"added", "Added"}, {"yarn-name", "Strong"}, {"role", "Strong"}, {"counts", "Strong"}};

class Content {
 public:
  Content(pugi::xml_node text, pugi::xml_node styles, const NumberStyle& numbers)
      : text_(text), styles_(styles), numbers_(numbers) {
    add_cell_style("Plain_cell", false, false);
    add_cell_style("Under_head", false, true);
    add_cell_style("Group", true, false);
    add_cell_style("Group_under_head", true, true);
  }

  pugi::xml_node paragraph(const char* style) { return paragraph_in(text_, style); }

  void operator()(const Paragraph& one) {
    constexpr const char* styles[] = {"Designer", "Standard", "Ground"};
    const bool quotes = one.voice == Voice::designer;
    put_text(paragraph(styles[static_cast<std::size_t>(one.voice)]),
             quotes ? "“" + one.text + "”" : one.text);
  }

  void operator()(const Lines& lines) {
    for (const auto& runs : lines.lines) {
      pugi::xml_node line = paragraph("Lines");
      for (const MarkedRun& run : runs) {
        const auto known = std::find_if(std::begin(run_styles), std::end(run_styles),
                                        [&](const RunStyle& row) { return row.mark == run.mark; });
        if (known != std::end(run_styles))
          put_marked(line, known->style, run.text);
        else
          put_text(line, run.text);
      }
    }
  }

  void operator()(const Heading& heading) {
    pugi::xml_node line = text_.append_child("text:h");
    line.append_attribute("text:style-name") = "Question";
    line.append_attribute("text:outline-level") = 1;
    for (const std::string& part : {heading.number, heading.word})
      if (!part.empty()) put_text(line, part + "\t");
    put_text(line, heading.text);
  }

  // A row each: the box and its words, and a cell to write in.
  void operator()(const Choices& choices) {
    pugi::xml_node table = add_table({"6cm", "11.5cm"});
    for (const TickBox& choice : choices.choices) {
      pugi::xml_node row = table.append_child("table:table-row");
      put_text(paragraph_in(cell_in(row, "Plain_cell"), "Cell"),
               "☐ " + choice.text + (choice.room ? ":" : ""));
      put_text(paragraph_in(cell_in(row, choice.room ? "Under_head" : "Plain_cell"), "Cell"), "");
    }
    paragraph("Cell");
  }

  void operator()(const Table& table) {
    if (!table.title.empty()) put_text(paragraph("Table_20_title"), table.title);
    if (table.columns.empty()) return;
    pugi::xml_node grid = add_table(std::vector<std::string>(table.columns.size()));
    pugi::xml_node head = grid.append_child("table:table-header-rows").append_child("table:table-row");
    for (const Column& column : table.columns)
      put_text(
          paragraph_in(cell_in(head, column.opens_group ? "Group_under_head" : "Under_head"), look(column)),
          column.heading);
    for (const Row& row : table.rows) {
      pugi::xml_node line = grid.append_child("table:table-row");
      for (std::size_t c = 0; c < table.columns.size(); ++c)
        put_cell(line, table.columns[c], c < row.cells.size() ? row.cells[c] : Cell{});
    }
    paragraph("Cell");
  }

 private:
  static pugi::xml_node paragraph_in(pugi::xml_node parent, const char* style) {
    pugi::xml_node node = parent.append_child("text:p");
    node.append_attribute("text:style-name") = style;
    return node;
  }
  static pugi::xml_node cell_in(pugi::xml_node row, const char* style) {
    pugi::xml_node cell = row.append_child("table:table-cell");
    cell.append_attribute("table:style-name") = style;
    cell.append_attribute("office:value-type") = "string";
    return cell;
  }
  static const char* look(const Column& column) { return column.align == Align::right ? "Figure" : "Cell"; }

  void put_cell(pugi::xml_node row, const Column& column, const Cell& cell) {
    const std::string words = std::string(static_cast<std::size_t>(std::clamp(cell.indent, 0, 30)) * 2, ' ') +
                              shown(cell, numbers_);
    pugi::xml_node paragraph =
        paragraph_in(cell_in(row, column.opens_group ? "Group" : "Plain_cell"), look(column));
    if (cell.strong)
      put_marked(paragraph, "Strong", words);
    else
      put_text(paragraph, words);
  }

  pugi::xml_node style(const std::string& name, const char* family) {
    pugi::xml_node node = styles_.append_child("style:style");
    node.append_attribute("style:name") = name.c_str();
    node.append_attribute("style:family") = family;
    return node;
  }

  void add_cell_style(const char* name, bool line_left, bool line_below) {
    pugi::xml_node look = style(name, "table-cell").append_child("style:table-cell-properties");
    look.append_attribute("fo:padding") = "0.08cm";
    look.append_attribute("fo:border-left") = line_left ? "0.5pt solid #000000" : "none";
    look.append_attribute("fo:border-bottom") = line_below ? "0.5pt solid #000000" : "none";
  }

  // Columns of these widths; of equal ones where they are empty.
  pugi::xml_node add_table(const std::vector<std::string>& widths) {
    const std::string name = "Table" + std::to_string(++tables_);
    pugi::xml_node table = text_.append_child("table:table");
    table.append_attribute("table:name") = name.c_str();
    for (std::size_t c = 0; c < widths.size(); ++c) {
      pugi::xml_node column = table.append_child("table:table-column");
      if (widths[c].empty()) continue;
      const std::string of_column = name + "." + std::to_string(c + 1);
      column.append_attribute("table:style-name") = of_column.c_str();
      style(of_column, "table-column")
          .append_child("style:table-column-properties")
          .append_attribute("style:column-width") = widths[c].c_str();
    }
    return table;
  }

  pugi::xml_node text_, styles_;
  const NumberStyle& numbers_;
  int tables_ = 0;
};

}  // namespace

std::string odt_content(const Sheet& sheet) {
  pugi::xml_document document;
  pugi::xml_node root = started(document, "office:document-content");
  pugi::xml_node styles = root.append_child("office:automatic-styles");
  Content content(root.append_child("office:body").append_child("office:text"), styles, sheet.numbers);
  put_text(content.paragraph("Title"), sheet.title);
  std::vector<std::string> under_title;
  for (const std::string& text : {sheet.subtitle, sheet.date})
    if (!text.empty()) under_title.push_back(text);
  if (!under_title.empty()) put_text(content.paragraph("Under_20_title"), join(under_title, " · "));
  for (const SheetPart& part : sheet.parts) std::visit(content, part);
  for (const std::string& note : sheet.foot_notes) put_text(content.paragraph("Foot"), note);
  return written(document);
}

std::string odt_meta(const Sheet& sheet, std::int64_t created) {
  pugi::xml_document document;
  pugi::xml_node meta = started(document, "office:document-meta").append_child("office:meta");
  meta.append_child("meta:generator").append_child(pugi::node_pcdata).set_value("Skeinproof");
  meta.append_child("dc:title").append_child(pugi::node_pcdata).set_value(printable(sheet.title).c_str());
  using namespace std::chrono;
  const sys_seconds time{seconds(created)};
  const year_month_day day{floor<days>(time)};
  const hh_mm_ss clock{time - floor<days>(time)};
  const std::string words =
      fmt::format("{:04}-{:02}-{:02}T{:02}:{:02}:{:02}", static_cast<int>(day.year()),
                  static_cast<unsigned>(day.month()), static_cast<unsigned>(day.day()), clock.hours().count(),
                  clock.minutes().count(), clock.seconds().count());
  meta.append_child("meta:creation-date").append_child(pugi::node_pcdata).set_value(words.c_str());
  return written(document);
}

}  // namespace skeinproof
