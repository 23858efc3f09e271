// SPDX-License-Identifier: GPL-3.0-or-later
#include <iostream>

#include "app/print/save_sheet.h"
#include "app/terminal/verbs.h"
#include "core/file/submission_file.h"

namespace skeinproof {
void tell(const std::filesystem::path& path, const std::vector<std::string>& notes) {
  for (const std::string& note : notes) std::cerr << "skeinproof: " << path.string() << ": " << note << "\n";
}

Expected<Pattern> read_pattern_or_text(const std::filesystem::path& path) {
  auto file = read_submission(path);
  if (!file) return tl::unexpected(file.error());
  tell(path, file->notes);
  return std::move(file->pattern);
}

Expected<void> write_text(const std::string& path, const std::string& text) {
  if (path.empty() || path == "-") {
    std::cout << text << std::flush;
    return {};
  }
  return save_text(path, text);
}

void complain(const Error& error) { std::cerr << "skeinproof: " << error.message() << "\n"; }

}  // namespace skeinproof
