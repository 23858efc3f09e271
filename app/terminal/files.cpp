// SPDX-License-Identifier: GPL-3.0-or-later
#include <fstream>
#include <iostream>
#include <string_view>

#include "app/print/save_sheet.h"
#include "app/terminal/verbs.h"
#include "core/file/json.h"
#include "core/file/project_file.h"
#include "core/file/whole_file.h"
#include "core/manuscript/submission.h"

namespace skeinproof {
namespace {

bool looks_like_json(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  char first = 0;
  while (file.get(first) && (first == ' ' || first == '\n' || first == '\r' || first == '\t' ||
                             first == '\xef' || first == '\xbb' || first == '\xbf')) {
  }
  return file && (first == '{' || first == '[');
}

}  // namespace

bool is_project_or_json(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  constexpr std::string_view database = "SQLite format 3";
  std::string start(database.size(), '\0');
  file.read(start.data(), static_cast<std::streamsize>(start.size()));
  return start == database || path.extension() == ".skeinproof" || path.extension() == ".json" ||
         looks_like_json(path);
}

Expected<Pattern> read_pattern(const std::filesystem::path& path) {
  if (looks_like_json(path)) {
    const auto text = read_whole_file(path);
    if (!text) return tl::unexpected(text.error());
    return pattern_from_json(*text, path.string());
  }
  auto opened = open_project(path);
  if (!opened) return tl::unexpected(opened.error());
  return std::move(opened->pattern);
}

Expected<Pattern> read_pattern_or_text(const std::filesystem::path& path) {
  if (is_project_or_json(path)) return read_pattern(path);
  const auto bytes = read_whole_file(path);
  if (!bytes) return tl::unexpected(bytes.error());
  auto taken = take_in(new_pattern(), *bytes, path.string());
  if (!taken) {
    taken.error().place.file = path.string();
    return tl::unexpected(taken.error());
  }
  for (const std::string& note : taken->notes)
    std::cerr << "skeinproof: " << path.string() << ": " << note << "\n";
  return std::move(taken->facts.pattern);
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
