// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <SQLiteCpp/SQLiteCpp.h>

#include <cstdint>
#include <filesystem>
#include <string>

#include "core/base/error.h"

namespace skeinproof {

// What the first hundred bytes of a file say, before anything in it is believed.
struct FileHeader {
  bool is_database = false;
  bool write_ahead_log = false;
  bool is_whole = false;  // as long as it says that it is
  std::uint32_t application_id = 0;
  int schema_version = 0;
};

// A connection to a file that may come from anywhere: SQLite's own defences are on, its limits are low,
// nothing in the schema of the file is trusted. Throws SQLite::Exception.
class ProjectDatabase {
 public:
  // `flags` as SQLite::OPEN_…; waits at most `wait_ms` for a lock of somebody else. `kind` names the file in
  // failures.
  ProjectDatabase(const std::filesystem::path& path, int flags, int wait_ms, std::string kind = "project");

  SQLite::Database& sqlite() { return database_; }
  bool is_read_only() const;
  // Both read through SQLite's own file handle: opening the file beside it and closing that would drop the
  // locks of the process.
  FileHeader header();
  std::uint64_t content_fingerprint();

  // The failure that an exception of this connection stands for.
  Error error_of(const SQLite::Exception& exception) const;

 private:
  std::filesystem::path path_;
  std::string kind_;
  SQLite::Database database_;
};

// The same where there is no connection (yet).
Error sqlite_failure(int extended_code, int system_code, const std::string& words,
                     const std::filesystem::path& path, const std::string& kind = "project");

}  // namespace skeinproof
