// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "core/base/error.h"

namespace skeinproof {

struct FileText {
  std::string text;                // UTF-8, lines ended by line feeds
  std::string encoding;            // assumed for the bytes; empty = UTF-8
  std::vector<std::string> notes;  // what the reader should know: the encoding assumed, what was left out
};

// The text of a file by the ending of its name: .odt and .docx documents, .html, .md; any other is plain
// text. Paragraphs, list items and lines of a table are lines, cells stand apart by tabs. Files are data:
// nothing in them is run, fetched or followed, and a document that unpacks beyond bounds, is nested beyond
// bounds, or declares entities of its own is refused. Fails where the bytes are not what the ending says.
Expected<FileText> text_of_bytes(std::string_view bytes, std::string_view file_name);

}  // namespace skeinproof
