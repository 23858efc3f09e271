// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "core/pattern/pattern.h"

namespace skeinproof {

// Recovery copies: the state of a document that is not saved yet, one JSON file a document in a folder of the
// program's own. Written whole or not at all.

struct Recovery {
  std::string key;                 // names the open document; letters, figures, '-' and '_'
  std::filesystem::path original;  // the project it belongs to; empty = never saved
  std::int64_t written_s = 0;      // seconds since 1970-01-01 UTC
  std::string title;               // of the pattern
  std::optional<Error> damage;     // why it cannot be read; title and the rest may be missing then
};

// Makes the folder where it is missing. Failures as write_whole_file.
Expected<void> write_recovery(const std::filesystem::path& folder, const std::string& key,
                              const Pattern& pattern, const std::filesystem::path& original,
                              std::int64_t written_s);

// All copies in the folder, newest first; those that cannot be read come last and say why. A folder that does
// not exist holds none.
std::vector<Recovery> list_recoveries(const std::filesystem::path& folder);

// Failures: not_found, and those of pattern_from_json.
Expected<Pattern> read_recovery(const std::filesystem::path& folder, const std::string& key);

// Done with it; nothing happens where there is none.
Expected<void> drop_recovery(const std::filesystem::path& folder, const std::string& key);

}  // namespace skeinproof
