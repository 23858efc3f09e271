// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/file/submission_file.h"

#include <fstream>
#include <string_view>

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

Expected<SubmissionFile> read_submission(const std::filesystem::path& path) {
  if (is_project_or_json(path)) {
    auto pattern = read_pattern(path);
    if (!pattern) return tl::unexpected(pattern.error());
    return SubmissionFile{std::move(*pattern), true, {}};
  }
  const auto bytes = read_whole_file(path);
  if (!bytes) return tl::unexpected(bytes.error());
  auto taken = take_in(new_pattern(), *bytes, path.string());
  if (!taken) {
    taken.error().place.file = path.string();
    return tl::unexpected(taken.error());
  }
  return SubmissionFile{std::move(taken->facts.pattern), false, std::move(taken->notes)};
}

Expected<CheckedSubmission> check_file(const std::filesystem::path& path) {
  auto file = read_submission(path);
  if (!file) return tl::unexpected(file.error());
  Review found = review(file->pattern, assess(file->pattern));
  return CheckedSubmission{std::move(*file), std::move(found)};
}

}  // namespace skeinproof
