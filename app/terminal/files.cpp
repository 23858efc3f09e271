// SPDX-License-Identifier: GPL-3.0-or-later
#include <fstream>
#include <iostream>
#include <sstream>

#include "app/print/save_sheet.h"
#include "app/terminal/verbs.h"
#include "core/file/json.h"
#include "core/file/project_file.h"

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

Expected<std::string> read_whole_text(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  std::ostringstream text;
  if (!file || !(text << file.rdbuf()))
    return failure(ErrorKind::not_found, "no readable file", "a file that can be read",
                   {path.string(), 0, 0});
  return text.str();
}

Expected<Pattern> read_pattern(const std::filesystem::path& path) {
  if (looks_like_json(path)) {
    const auto text = read_whole_text(path);
    if (!text) return tl::unexpected(text.error());
    return pattern_from_json(*text, path.string());
  }
  auto opened = open_project(path);
  if (!opened) return tl::unexpected(opened.error());
  return std::move(opened->pattern);
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
