// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmark.h>

#include <algorithm>
#include <memory>

#include "core/base/text.h"
#include "core/manuscript/file_texts.h"

namespace skeinproof {
namespace {

// The parser's time grows with the square of the pictures piled up in a paragraph, and a bit with nesting.
constexpr std::size_t most_marked_up = std::size_t{512} << 10;
constexpr int most_pictures = 1000;

bool bounded(std::string_view text) {
  int pictures = 0;
  for (auto at = text.find("!["); at != std::string_view::npos; at = text.find("![", at + 2)) ++pictures;
  return text.size() <= most_marked_up && pictures <= most_pictures;
}

bool divides_head_from_rows(std::string_view line) {
  return line.find('-') != std::string_view::npos && line.find('|') != std::string_view::npos &&
         line.find_first_not_of("|-: \t") == std::string_view::npos;
}

std::string cells_of(std::string_view line) {
  line = trimmed(line);
  if (line.starts_with('|')) line.remove_prefix(1);
  if (line.ends_with('|')) line.remove_suffix(1);
  std::vector<std::string> cells;
  for (const std::string& cell : split(line, '|')) cells.emplace_back(trimmed(cell));
  return join(cells, "\t");
}

class MarkdownLines {
 public:
  std::string of(cmark_node* root) {
    const std::unique_ptr<cmark_iter, decltype(&cmark_iter_free)> nodes(cmark_iter_new(root),
                                                                        &cmark_iter_free);
    for (cmark_event_type event = cmark_iter_next(nodes.get()); event != CMARK_EVENT_DONE;
         event = cmark_iter_next(nodes.get())) {
      cmark_node* node = cmark_iter_get_node(nodes.get());
      if (event == CMARK_EVENT_ENTER)
        enter(node);
      else
        leave(node);
    }
    return lines_.take();
  }

 private:
  void enter(cmark_node* node) {
    const char* literal = cmark_node_get_literal(node);
    const std::string_view words = literal == nullptr ? std::string_view() : literal;
    switch (cmark_node_get_type(node)) {
      case CMARK_NODE_TEXT:
      case CMARK_NODE_CODE:
        open_ += words;
        break;
      case CMARK_NODE_SOFTBREAK:
      case CMARK_NODE_LINEBREAK:
        open_ += '\n';
        break;
      case CMARK_NODE_HTML_INLINE:
        if (lower_ascii(words).starts_with("<br")) open_ += '\n';
        break;
      case CMARK_NODE_CODE_BLOCK:
        open_ += words;
        write_paragraph();
        break;
      case CMARK_NODE_HTML_BLOCK:
        if (const auto html = text_of_html(words))
          open_ += html->text;
        else
          open_ += words;
        write_paragraph();
        break;
      default:
        break;
    }
  }

  void leave(cmark_node* node) {
    const cmark_node_type type = cmark_node_get_type(node);
    if (type != CMARK_NODE_PARAGRAPH && type != CMARK_NODE_HEADING) return;
    write_paragraph();
    cmark_node* parent = cmark_node_parent(node);
    if (parent != nullptr && cmark_node_get_type(parent) == CMARK_NODE_DOCUMENT) lines_.end_line();
  }

  // A paragraph with a line of dashes under its first one is a table.
  void write_paragraph() {
    const auto lines = split(open_, '\n');
    open_.clear();
    const bool table = lines.size() > 1 && divides_head_from_rows(lines[1]);
    for (std::size_t i = 0; i < lines.size(); ++i) {
      if (table && i == 1) continue;
      lines_.exact(table ? cells_of(lines[i]) : lines[i]);
      lines_.end_block();
    }
  }

  DocumentLines lines_;
  std::string open_;
};

}  // namespace

Expected<FileText> text_of_markdown(std::string_view bytes) {
  auto file = decoded(bytes);
  if (!file) return file;
  if (!bounded(file->text)) {
    file->notes.push_back("The file is too large to be read as Markdown; its marks stand in the text.");
    return file;
  }
  const std::unique_ptr<cmark_node, decltype(&cmark_node_free)> root(
      cmark_parse_document(file->text.data(), file->text.size(), CMARK_OPT_DEFAULT), &cmark_node_free);
  file->text = MarkdownLines().of(root.get());
  return file;
}

}  // namespace skeinproof
