// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/file/recovery.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <system_error>

#include "core/base/text.h"
#include "core/file/json.h"
#include "core/file/json_tree.h"
#include "core/file/whole_file.h"

namespace skeinproof {
namespace fs = std::filesystem;
namespace {

// One line that says what the copy is, then the pattern as JSON on another.
constexpr const char* extension = ".recovery";
constexpr std::string_view schema_name = "skeinproof recovery";

bool is_key(std::string_view key) {
  return !key.empty() && key.size() <= 100 && std::all_of(key.begin(), key.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' || c == '_';
  });
}

Expected<fs::path> path_of(const fs::path& folder, const std::string& key) {
  if (!is_key(key))
    return failure(ErrorKind::unknown_name, skeinproof::quoted(key), "a key of letters, figures, - and _");
  return folder / (key + extension);
}

struct Contents {
  Recovery recovery;
  Pattern pattern;
};

Expected<Recovery> read_first_line(std::string_view line, const std::string& file) {
  auto head = parse_json(line);
  if (!head) return tl::unexpected<Error>(std::move(head.error()));
  const JsonValue* schema = head->find("schema");
  const JsonValue* original = head->find("original");
  const JsonValue* written = head->find("written_s");
  if (schema == nullptr || schema->text != schema_name || original == nullptr || written == nullptr)
    return failure(ErrorKind::wrong_format, "another kind of file", "a recovery copy", {file, 1, 1});
  Recovery recovery;
  recovery.original = fs::path(original->text);
  recovery.written_s = static_cast<std::int64_t>(written->number);
  return recovery;
}

Expected<Contents> read_contents(const fs::path& path) {
  auto text = read_whole_file(path);
  if (!text) return tl::unexpected<Error>(std::move(text.error()));
  const std::size_t line_end = std::min(text->find('\n'), text->size());
  auto recovery = read_first_line(std::string_view(*text).substr(0, line_end), path.string());
  if (!recovery) return tl::unexpected<Error>(std::move(recovery.error()));
  auto pattern =
      pattern_from_json(std::string_view(*text).substr(std::min(line_end + 1, text->size())), path.string());
  if (!pattern) return tl::unexpected<Error>(std::move(pattern.error()));
  recovery->title = pattern->title;
  return Contents{std::move(*recovery), std::move(*pattern)};
}

}  // namespace

Expected<void> write_recovery(const fs::path& folder, const std::string& key, const Pattern& pattern,
                              const fs::path& original, std::int64_t written_s) {
  const auto path = path_of(folder, key);
  if (!path) return tl::unexpected<Error>(path.error());
  std::error_code code;
  fs::create_directories(folder, code);
  if (code) return tl::unexpected<Error>(system_failure(code.value(), folder, "make"));
  const nlohmann::ordered_json head = {
      {"schema", schema_name}, {"original", original.string()}, {"written_s", written_s}};
  const std::string line = head.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
  return write_whole_file(*path, line + "\n" + to_compact_json(pattern) + "\n");
}

std::vector<Recovery> list_recoveries(const fs::path& folder) {
  std::vector<Recovery> recoveries;
  std::error_code code;
  for (fs::directory_iterator at(folder, code), end; !code && at != end; at.increment(code)) {
    const std::string key = at->path().stem().string();
    if (at->path().extension() != extension || !is_key(key)) continue;
    auto contents = read_contents(at->path());
    Recovery& recovery = recoveries.emplace_back(contents ? std::move(contents->recovery) : Recovery{});
    recovery.key = key;
    if (!contents) recovery.damage = contents.error();
  }
  std::sort(recoveries.begin(), recoveries.end(), [](const Recovery& a, const Recovery& b) {
    if (a.damage.has_value() != b.damage.has_value()) return b.damage.has_value();
    return a.written_s != b.written_s ? a.written_s > b.written_s : a.key < b.key;
  });
  return recoveries;
}

Expected<Pattern> read_recovery(const fs::path& folder, const std::string& key) {
  const auto path = path_of(folder, key);
  if (!path) return tl::unexpected<Error>(path.error());
  auto contents = read_contents(*path);
  if (!contents) return tl::unexpected<Error>(std::move(contents.error()));
  return std::move(contents->pattern);
}

Expected<void> drop_recovery(const fs::path& folder, const std::string& key) {
  const auto path = path_of(folder, key);
  if (!path) return tl::unexpected<Error>(path.error());
  std::error_code code;
  fs::remove(*path, code);
  if (code) return tl::unexpected<Error>(system_failure(code.value(), *path, "remove"));
  return {};
}

}  // namespace skeinproof
