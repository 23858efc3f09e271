// SPDX-License-Identifier: GPL-3.0-or-later
#include <gumbo.h>

#include <algorithm>
#include <memory>

#include "core/base/text.h"
#include "core/manuscript/file_texts.h"
#include "core/manuscript/html_bounds.h"

namespace skeinproof {
namespace {

enum class Layout { inline_words, block, line_break, row, cell, preformatted, raised, left_out };
struct TagLayout {
  GumboTag tag;
  Layout layout;
};
constexpr TagLayout tag_layouts[] = {
    {GUMBO_TAG_HEAD, Layout::left_out},    {GUMBO_TAG_SCRIPT, Layout::left_out},
    {GUMBO_TAG_STYLE, Layout::left_out},   {GUMBO_TAG_TEMPLATE, Layout::left_out},
    {GUMBO_TAG_IFRAME, Layout::left_out},  {GUMBO_TAG_NOSCRIPT, Layout::left_out},
    {GUMBO_TAG_OBJECT, Layout::left_out},  {GUMBO_TAG_SVG, Layout::left_out},
    {GUMBO_TAG_BR, Layout::line_break},    {GUMBO_TAG_TR, Layout::row},
    {GUMBO_TAG_TD, Layout::cell},          {GUMBO_TAG_TH, Layout::cell},
    {GUMBO_TAG_PRE, Layout::preformatted}, {GUMBO_TAG_LISTING, Layout::preformatted},
    {GUMBO_TAG_SUP, Layout::raised},       {GUMBO_TAG_P, Layout::block},
    {GUMBO_TAG_DIV, Layout::block},        {GUMBO_TAG_LI, Layout::block},
    {GUMBO_TAG_UL, Layout::block},         {GUMBO_TAG_OL, Layout::block},
    {GUMBO_TAG_DL, Layout::block},         {GUMBO_TAG_DT, Layout::block},
    {GUMBO_TAG_DD, Layout::block},         {GUMBO_TAG_H1, Layout::block},
    {GUMBO_TAG_H2, Layout::block},         {GUMBO_TAG_H3, Layout::block},
    {GUMBO_TAG_H4, Layout::block},         {GUMBO_TAG_H5, Layout::block},
    {GUMBO_TAG_H6, Layout::block},         {GUMBO_TAG_HR, Layout::block},
    {GUMBO_TAG_TABLE, Layout::block},      {GUMBO_TAG_CAPTION, Layout::block},
    {GUMBO_TAG_BLOCKQUOTE, Layout::block}, {GUMBO_TAG_SECTION, Layout::block},
    {GUMBO_TAG_ARTICLE, Layout::block},    {GUMBO_TAG_ASIDE, Layout::block},
    {GUMBO_TAG_HEADER, Layout::block},     {GUMBO_TAG_FOOTER, Layout::block},
    {GUMBO_TAG_MAIN, Layout::block},       {GUMBO_TAG_NAV, Layout::block},
    {GUMBO_TAG_FIGURE, Layout::block},     {GUMBO_TAG_FIGCAPTION, Layout::block},
    {GUMBO_TAG_ADDRESS, Layout::block},    {GUMBO_TAG_DETAILS, Layout::block},
    {GUMBO_TAG_SUMMARY, Layout::block},    {GUMBO_TAG_FORM, Layout::block},
    {GUMBO_TAG_FIELDSET, Layout::block},   {GUMBO_TAG_OPTION, Layout::block},
    {GUMBO_TAG_BODY, Layout::block},       {GUMBO_TAG_CENTER, Layout::block}};

Layout layout_of(GumboTag tag) {
  const auto found = std::find_if(std::begin(tag_layouts), std::end(tag_layouts),
                                  [&](const TagLayout& row) { return row.tag == tag; });
  return found == std::end(tag_layouts) ? Layout::inline_words : found->layout;
}

const GumboVector* children_of(const GumboNode& node) {
  if (node.type == GUMBO_NODE_DOCUMENT) return &node.v.document.children;
  if (node.type == GUMBO_NODE_ELEMENT) return &node.v.element.children;
  return nullptr;
}

class HtmlLines {
 public:
  // Goes down and up by the links between nodes, so that depth costs no stack.
  std::string of(const GumboNode& root) {
    const GumboNode* node = &root;
    while (node != nullptr) {
      const GumboVector* children = enter(*node) ? children_of(*node) : nullptr;
      if (children != nullptr && children->length > 0) {
        node = static_cast<const GumboNode*>(children->data[0]);
        continue;
      }
      node = after(node, &root);
    }
    return lines_.take();
  }

 private:
  // Leaves a node and those it ends, and says which comes next.
  const GumboNode* after(const GumboNode* node, const GumboNode* root) {
    for (;; node = node->parent) {
      leave(*node);
      if (node == root) return nullptr;
      const GumboVector* siblings = children_of(*node->parent);
      const std::size_t next = node->index_within_parent + 1;
      if (next < siblings->length) return static_cast<const GumboNode*>(siblings->data[next]);
    }
  }

  bool enter(const GumboNode& node) {
    switch (node.type) {
      case GUMBO_NODE_TEXT:
      case GUMBO_NODE_WHITESPACE:
      case GUMBO_NODE_CDATA:
        write(node.v.text.text);
        return false;
      case GUMBO_NODE_ELEMENT:
        return enter_element(layout_of(node.v.element.tag));
      default:
        return node.type == GUMBO_NODE_DOCUMENT;
    }
  }

  bool enter_element(Layout layout) {
    switch (layout) {
      case Layout::block:
        lines_.end_block();
        break;
      case Layout::line_break:
        lines_.end_line();
        break;
      case Layout::row:
        lines_.begin_row();
        break;
      case Layout::cell:
        lines_.begin_cell();
        break;
      case Layout::preformatted:
        lines_.end_block();
        ++preformatted_;
        break;
      case Layout::raised:
        raised_ = true;
        break;
      default:
        break;
    }
    return layout != Layout::left_out;
  }

  void leave(const GumboNode& node) {
    if (node.type != GUMBO_NODE_ELEMENT) return;
    switch (layout_of(node.v.element.tag)) {
      case Layout::preformatted:
        --preformatted_;
        lines_.end_block();
        break;
      case Layout::block:
        lines_.end_block();
        break;
      case Layout::row:
        lines_.end_row();
        break;
      case Layout::cell:
        lines_.end_cell();
        break;
      default:
        break;
    }
    raised_ = false;
  }

  void write(std::string_view text) {
    if (preformatted_ > 0) {
      const auto lines = split(text, '\n');
      for (std::size_t i = 0; i < lines.size(); ++i) {
        if (i > 0) lines_.end_line();
        lines_.exact(lines[i]);
      }
      return;
    }
    if (raised_) {
      lines_.raised(text);
      raised_ = false;
      return;
    }
    lines_.collapsed(text);
  }

  DocumentLines lines_;
  int preformatted_ = 0;
  bool raised_ = false;
};

// "charset" as a page's own head names it.
std::string declared_encoding(std::string_view bytes) {
  const std::string head = lower_ascii(bytes.substr(0, 2048));
  auto at = head.find("charset=");
  if (at == std::string::npos) return {};
  at += 8;
  if (at < head.size() && (head[at] == '"' || head[at] == '\'')) ++at;
  const auto end = head.find_first_of("\"'> ;/\r\n", at);
  return head.substr(at, std::min(end, head.size()) - at);
}

}  // namespace

Expected<FileText> text_of_html(std::string_view bytes) {
  auto file = decoded(bytes, declared_encoding(bytes));
  if (!file) return file;
  if (const auto bounded = check_html_bounds(file->text); !bounded) return tl::unexpected(bounded.error());
  GumboOptions options = kGumboDefaultOptions;
  options.max_errors = 0;
  const auto destroy = [&](GumboOutput* output) { gumbo_destroy_output(&options, output); };
  const std::unique_ptr<GumboOutput, decltype(destroy)> output(
      gumbo_parse_with_options(&options, file->text.data(), file->text.size()), destroy);
  file->text = HtmlLines().of(*output->document);
  return file;
}

}  // namespace skeinproof
