// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/text_of_file.h"

#include <algorithm>

#include "core/base/text.h"
#include "core/manuscript/file_texts.h"

namespace skeinproof {
namespace {

Expected<FileText> plain_text_of(std::string_view bytes) { return decoded(bytes); }

struct Ending {
  std::string_view ending;
  Expected<FileText> (*text_of)(std::string_view bytes);
};
constexpr Ending endings[] = {{".docx", text_of_docx},        {".odt", text_of_odt},
                              {".html", text_of_html},        {".htm", text_of_html},
                              {".xhtml", text_of_html},       {".md", text_of_markdown},
                              {".markdown", text_of_markdown}};

// How files begin that are no text, whatever their name says.
struct Beginning {
  std::string_view bytes;
  std::string_view what;
};
constexpr Beginning beginnings[] = {
    {"PK\x03\x04", "a zip archive"}, {"%PDF-", "a PDF"},
    {"{\\rtf", "rich text"},         {"\xd0\xcf\x11\xe0", "an older office document"},
    {"\x89PNG", "a picture"},        {"\xff\xd8\xff", "a picture"},
    {"GIF8", "a picture"},           {"SQLite format 3", "a project or another database"}};

Expected<FileText> text_by_ending(std::string_view bytes, std::string_view name) {
  if (bytes.size() > most_bytes)
    return failure(ErrorKind::out_of_range, std::to_string(bytes.size() >> 20) + " MB",
                   "at most " + std::to_string(most_bytes >> 20) + " MB");
  const auto office = [&] { return name.ends_with(".docx") || name.ends_with(".odt"); };
  for (const Beginning& beginning : beginnings)
    if (!office() && bytes.starts_with(beginning.bytes))
      return failure(ErrorKind::wrong_format, std::string(beginning.what),
                     "a text, a web page (.html) or a document named .odt or .docx");
  for (const Ending& row : endings)
    if (name.ends_with(row.ending)) return row.text_of(bytes);
  return plain_text_of(bytes);
}

}  // namespace

Expected<FileText> text_of_bytes(std::string_view bytes, std::string_view file_name) {
  auto text = text_by_ending(bytes, lower_ascii(file_name));
  if (!text) text.error().place.file = std::string(file_name);
  return text;
}

}  // namespace skeinproof
