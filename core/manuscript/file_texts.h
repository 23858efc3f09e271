// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "core/manuscript/text_of_file.h"

namespace skeinproof {

// Beyond this a file is no submission of a pattern.
inline constexpr std::size_t most_bytes = std::size_t{64} << 20;
inline constexpr std::size_t most_unpacked = std::size_t{48} << 20;

// Bytes as UTF-8. `declared` is the encoding a document names for itself; it counts where the bytes are no
// UTF-8. Fails on bytes that are no text.
Expected<FileText> decoded(std::string_view bytes, std::string_view declared = {});

Expected<FileText> text_of_html(std::string_view bytes);
Expected<FileText> text_of_markdown(std::string_view bytes);
Expected<FileText> text_of_odt(std::string_view bytes);
Expected<FileText> text_of_docx(std::string_view bytes);

// Writes the lines of a document. Inside a table the lines of a cell are held back until its row is whole.
class DocumentLines {
 public:
  void exact(std::string_view text) { open_ += text; }
  void collapsed(std::string_view text);  // white space is one space, none begins a line
  // A raised figure behind a figure is the numerator of a fraction.
  void raised(std::string_view text);
  void end_line();   // an empty one, too
  void end_block();  // where something stands in the line

  void begin_row();
  void begin_cell();
  void end_cell();
  void end_row();

  // All lines; of several empty ones in a row one stays.
  std::string take();

 private:
  using Lines = std::vector<std::string>;
  struct Row {
    std::vector<Lines> cells;
    std::vector<std::pair<Lines, std::string>> outside;  // what stood open around its cells
  };
  Lines lines_;
  std::string open_;
  std::vector<Row> rows_;
};

}  // namespace skeinproof
