// SPDX-License-Identifier: GPL-3.0-or-later
#include <zip.h>

#include <algorithm>
#include <cstdlib>
#include <memory>
#include <optional>
#include <pugixml.hpp>

#include "core/base/text.h"
#include "core/manuscript/file_texts.h"

namespace skeinproof {
namespace {

struct CloseZip {
  void operator()(zip_t* archive) const { zip_discard(archive); }
};
using Archive = std::unique_ptr<zip_t, CloseZip>;

Expected<Archive> open_archive(std::string_view bytes, const std::string& what) {
  constexpr std::string_view compound = "\xd0\xcf\x11\xe0";
  if (bytes.starts_with(compound))
    return failure(ErrorKind::wrong_format, "an older document or one locked by a password",
                   what + " that opens without a password");
  if (bytes.empty()) return failure(ErrorKind::wrong_format, "an empty file", what);
  zip_error_t error;
  zip_error_init(&error);
  zip_source_t* source = zip_source_buffer_create(bytes.data(), bytes.size(), 0, &error);
  zip_t* archive = source == nullptr ? nullptr : zip_open_from_source(source, ZIP_RDONLY, &error);
  zip_error_fini(&error);
  if (archive == nullptr) {
    if (source != nullptr) zip_source_free(source);
    return failure(ErrorKind::wrong_format, "bytes that are no zip archive",
                   what + ", which is a zip archive");
  }
  return Archive(archive);
}

Expected<std::string> unpacked(zip_t* archive, const char* name, const std::string& what) {
  zip_stat_t stat;
  zip_stat_init(&stat);
  if (zip_stat(archive, name, 0, &stat) != 0)
    return failure(ErrorKind::wrong_format, std::string("an archive without ") + name, what);
  if ((stat.valid & ZIP_STAT_ENCRYPTION_METHOD) != 0 && stat.encryption_method != ZIP_EM_NONE)
    return failure(ErrorKind::wrong_format, "a document locked by a password",
                   what + " that opens without one");
  const auto too_large = [&] {
    return failure(
        ErrorKind::out_of_range,
        std::string(name) + " of more than " + std::to_string(most_unpacked >> 20) + " MB unpacked",
        what + " of text");
  };
  if ((stat.valid & ZIP_STAT_SIZE) != 0 && stat.size > most_unpacked) return too_large();
  const std::unique_ptr<zip_file_t, decltype(&zip_fclose)> file(zip_fopen(archive, name, 0), &zip_fclose);
  const auto damaged = [&] {
    return failure(ErrorKind::damaged, std::string(name) + " that does not unpack", what);
  };
  if (file == nullptr) return damaged();
  std::string content;
  char buffer[1 << 15];
  for (;;) {
    const zip_int64_t read = zip_fread(file.get(), buffer, sizeof buffer);
    if (read < 0) return damaged();
    if (read == 0) return content;
    content.append(buffer, static_cast<std::size_t>(read));
    if (content.size() > most_unpacked) return too_large();
  }
}

// Office documents declare no entities; one that does means harm.
Expected<void> parse(pugi::xml_document& document, std::string& xml, const char* name,
                     const std::string& what) {
  for (const std::string_view declaration : {"<!DOCTYPE", "<!ENTITY"})
    if (xml.find(declaration) != std::string::npos)
      return failure(ErrorKind::wrong_format,
                     std::string(name) + " with a declaration " + std::string(declaration),
                     what + " without declarations of its own");
  const auto result =
      document.load_buffer_inplace(xml.data(), xml.size(), pugi::parse_default | pugi::parse_ws_pcdata);
  if (!result)
    return failure(
        ErrorKind::damaged,
        std::string(name) + " broken at byte " + std::to_string(result.offset) + ": " + result.description(),
        what);
  return {};
}

std::string_view local_name(const pugi::xml_node& node) {
  const std::string_view name = node.name();
  return name.substr(name.find(':') + 1);
}

pugi::xml_node child_named(const pugi::xml_node& node, std::string_view name) {
  return node.find_child([&](const pugi::xml_node& child) { return local_name(child) == name; });
}

std::string_view attribute_named(const pugi::xml_node& node, std::string_view name) {
  for (const pugi::xml_attribute& attribute : node.attributes()) {
    const std::string_view full = attribute.name();
    if (full.substr(full.find(':') + 1) == name) return attribute.value();
  }
  return {};
}

// Visits a tree in document order by its links, so that depth costs no stack. `visitor.enter` says whether to
// go into a node; `visitor.leave` follows on every node.
template <class Visitor>
void walk(const pugi::xml_node& root, Visitor& visitor) {
  pugi::xml_node node = root;
  while (node) {
    if (visitor.enter(node) && node.first_child()) {
      node = node.first_child();
      continue;
    }
    visitor.leave(node);
    while (node != root && !node.next_sibling()) {
      node = node.parent();
      visitor.leave(node);
    }
    if (node == root) return;
    node = node.next_sibling();
  }
}

enum class Part {
  through,
  left_out,
  deleted,
  paragraph,
  row,
  cell,
  words,
  tab,
  line_break,
  hyphen,
  run,
  later,
  spaces
};
struct ElementPart {
  std::string_view name;
  Part part;
};

Part part_of(const ElementPart* first, const ElementPart* last, std::string_view name) {
  const auto* found = std::find_if(first, last, [&](const ElementPart& row) { return row.name == name; });
  return found == last ? Part::through : found->part;
}

// Office Open XML, ISO/IEC 29500-1: elements of the main document.
constexpr ElementPart docx_parts[] = {{"pPr", Part::left_out},
                                      {"rPr", Part::left_out},
                                      {"sectPr", Part::left_out},
                                      {"tblPr", Part::left_out},
                                      {"tblGrid", Part::left_out},
                                      {"tcPr", Part::left_out},
                                      {"trPr", Part::left_out},
                                      {"sdtPr", Part::left_out},
                                      {"instrText", Part::left_out},
                                      {"delInstrText", Part::left_out},
                                      {"Fallback", Part::left_out},
                                      {"del", Part::deleted},
                                      {"moveFrom", Part::deleted},
                                      {"delText", Part::deleted},
                                      {"p", Part::paragraph},
                                      {"tr", Part::row},
                                      {"tc", Part::cell},
                                      {"t", Part::words},
                                      {"tab", Part::tab},
                                      {"ptab", Part::tab},
                                      {"br", Part::line_break},
                                      {"cr", Part::line_break},
                                      {"noBreakHyphen", Part::hyphen},
                                      {"r", Part::run}};

// OpenDocument, ISO/IEC 26300-1: elements of a text document.
constexpr ElementPart odt_parts[] = {{"annotation", Part::left_out},
                                     {"annotation-end", Part::left_out},
                                     {"tracked-changes", Part::deleted},
                                     {"sequence-decls", Part::left_out},
                                     {"variable-decls", Part::left_out},
                                     {"forms", Part::left_out},
                                     {"ruby-text", Part::left_out},
                                     {"note-body", Part::later},
                                     {"p", Part::paragraph},
                                     {"h", Part::paragraph},
                                     {"table-row", Part::row},
                                     {"table-cell", Part::cell},
                                     {"covered-table-cell", Part::cell},
                                     {"tab", Part::tab},
                                     {"line-break", Part::line_break},
                                     {"s", Part::spaces}};

class OfficeLines {
 public:
  enum class Format { docx, odt };
  explicit OfficeLines(Format format) : format_(format) {}

  void write(const pugi::xml_node& root) {
    walk(root, *this);
    while (!later_.empty()) {
      const auto notes = std::move(later_);
      later_.clear();
      for (const pugi::xml_node& note : notes)
        for (const pugi::xml_node& child : note.children()) walk(child, *this);
    }
  }
  std::string take() { return lines_.take(); }
  bool left_deletions_out() const { return deletions_; }

  bool enter(const pugi::xml_node& node) {
    if (node.type() == pugi::node_pcdata || node.type() == pugi::node_cdata) {
      if (format_ == Format::odt && paragraphs_ > 0) lines_.collapsed(node.value());
      return false;
    }
    switch (part(node)) {
      case Part::left_out:
        return false;
      case Part::deleted:
        deletions_ = true;
        return false;
      case Part::paragraph:
        ++paragraphs_;
        return true;
      case Part::row:
        lines_.begin_row();
        return true;
      case Part::cell:
        lines_.begin_cell();
        return true;
      case Part::words:
        write_words(node);
        return false;
      case Part::tab:
        lines_.exact("\t");
        return false;
      case Part::line_break:
        lines_.end_line();
        return false;
      case Part::hyphen:
        lines_.exact("\u2011");
        return false;
      case Part::run:
        raised_ = attribute_named(child_named(child_named(node, "rPr"), "vertAlign"), "val") == "superscript";
        return true;
      case Part::later:
        later_.push_back(node);
        return false;
      case Part::spaces:
        write_spaces(attribute_named(node, "c"));
        return false;
      case Part::through:
        break;
    }
    return true;
  }

  void leave(const pugi::xml_node& node) {
    if (node.type() != pugi::node_element) return;
    switch (part(node)) {
      case Part::paragraph:
        --paragraphs_;
        lines_.end_line();
        break;
      case Part::row:
        lines_.end_row();
        break;
      case Part::cell:
        lines_.end_cell();
        break;
      default:
        break;
    }
  }

 private:
  Part part(const pugi::xml_node& node) const {
    return format_ == Format::docx ? part_of(std::begin(docx_parts), std::end(docx_parts), local_name(node))
                                   : part_of(std::begin(odt_parts), std::end(odt_parts), local_name(node));
  }
  void write_words(const pugi::xml_node& node) {
    for (const pugi::xml_node& text : node.children()) {
      if (raised_)
        lines_.raised(text.value());
      else
        lines_.exact(text.value());
      raised_ = false;
    }
  }
  void write_spaces(std::string_view count) {
    constexpr int most = 200;
    int spaces = 0;
    for (const char c : count.empty() ? "1" : count)
      if (c >= '0' && c <= '9') spaces = std::min(most, spaces * 10 + (c - '0'));
    lines_.exact(std::string(static_cast<std::size_t>(spaces), ' '));
  }

  Format format_;
  DocumentLines lines_;
  std::vector<pugi::xml_node> later_;  // notes, which stand at the end
  int paragraphs_ = 0;
  bool raised_ = false;
  bool deletions_ = false;
};

FileText finished(OfficeLines& lines) {
  FileText file;
  file.text = lines.take();
  if (lines.left_deletions_out()) file.notes.push_back("Words deleted under tracked changes were left out.");
  return file;
}

const std::string docx_words = "a .docx document";
const std::string odt_words = "an .odt document";

}  // namespace

Expected<FileText> text_of_odt(std::string_view bytes) {
  auto archive = open_archive(bytes, odt_words);
  if (!archive) return tl::unexpected(archive.error());
  auto xml = unpacked(archive->get(), "content.xml", odt_words);
  if (!xml) return tl::unexpected(xml.error());
  pugi::xml_document document;
  if (const auto parsed = parse(document, *xml, "content.xml", odt_words); !parsed) {
    const auto manifest = unpacked(archive->get(), "META-INF/manifest.xml", odt_words);
    if (manifest && manifest->find("encryption-data") != std::string::npos)
      return failure(ErrorKind::wrong_format, "a document locked by a password",
                     odt_words + " that opens without one");
    return tl::unexpected(parsed.error());
  }
  const pugi::xml_node body = child_named(child_named(document.document_element(), "body"), "text");
  if (!body) return failure(ErrorKind::wrong_format, "an OpenDocument file that is no text", odt_words);
  OfficeLines lines(OfficeLines::Format::odt);
  lines.write(body);
  return finished(lines);
}

Expected<FileText> text_of_docx(std::string_view bytes) {
  auto archive = open_archive(bytes, docx_words);
  if (!archive) return tl::unexpected(archive.error());
  auto xml = unpacked(archive->get(), "word/document.xml", docx_words);
  if (!xml) return tl::unexpected(xml.error());
  pugi::xml_document document;
  if (const auto parsed = parse(document, *xml, "word/document.xml", docx_words); !parsed)
    return tl::unexpected(parsed.error());
  const pugi::xml_node body = child_named(document.document_element(), "body");
  if (!body) return failure(ErrorKind::wrong_format, "word/document.xml without a body", docx_words);
  OfficeLines lines(OfficeLines::Format::docx);
  lines.write(body);
  for (const char* name : {"word/footnotes.xml", "word/endnotes.xml"}) {
    auto notes = unpacked(archive->get(), name, docx_words);
    if (!notes) continue;
    pugi::xml_document tree;
    if (!parse(tree, *notes, name, docx_words)) continue;
    for (const pugi::xml_node& note : tree.document_element().children())
      if (attribute_named(note, "type").empty())
        lines.write(note);  // the others are rules between text and notes
  }
  return finished(lines);
}

}  // namespace skeinproof
