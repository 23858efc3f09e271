// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/file/project_database.h"

#include <sqlite3.h>

#include <algorithm>
#include <string_view>

#include "core/base/fingerprint.h"
#include "core/file/whole_file.h"

namespace skeinproof {
namespace fs = std::filesystem;
namespace {

// After SQLite's advice for files from outside (sqlite.org/security.html); the limits leave room for the
// widest table and the longest text of a real project.
void defend(sqlite3* handle) {
  struct Switch {
    int option;
    int value;
  };
  static constexpr Switch switches[] = {
      {SQLITE_DBCONFIG_DEFENSIVE, 1},
      {SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0},
      {SQLITE_DBCONFIG_ENABLE_TRIGGER, 0},
      {SQLITE_DBCONFIG_ENABLE_VIEW, 0},
      {SQLITE_DBCONFIG_WRITABLE_SCHEMA, 0},
      {SQLITE_DBCONFIG_DQS_DDL, 0},
      {SQLITE_DBCONFIG_DQS_DML, 0},
      {SQLITE_DBCONFIG_ENABLE_FTS3_TOKENIZER, 0},
      {SQLITE_DBCONFIG_ENABLE_LOAD_EXTENSION, 0},
  };
  for (const Switch& row : switches) sqlite3_db_config(handle, row.option, row.value, nullptr);
  static constexpr Switch limits[] = {
      {SQLITE_LIMIT_LENGTH, 16 << 20},
      {SQLITE_LIMIT_SQL_LENGTH, 1 << 20},
      {SQLITE_LIMIT_COLUMN, 128},
      {SQLITE_LIMIT_EXPR_DEPTH, 50},
      {SQLITE_LIMIT_COMPOUND_SELECT, 3},
      {SQLITE_LIMIT_VDBE_OP, 100'000},
      {SQLITE_LIMIT_FUNCTION_ARG, 8},
      {SQLITE_LIMIT_ATTACHED, 0},
      {SQLITE_LIMIT_LIKE_PATTERN_LENGTH, 50},
      {SQLITE_LIMIT_VARIABLE_NUMBER, 128},
      {SQLITE_LIMIT_TRIGGER_DEPTH, 1},
      {SQLITE_LIMIT_WORKER_THREADS, 0},
  };
  for (const Switch& row : limits) sqlite3_limit(handle, row.option, row.value);
}

sqlite3_file* main_file(sqlite3* handle) {
  sqlite3_file* file = nullptr;
  sqlite3_file_control(handle, "main", SQLITE_FCNTL_FILE_POINTER, &file);
  return file != nullptr && file->pMethods != nullptr ? file : nullptr;
}

std::int64_t size_of(sqlite3_file* file) {
  sqlite3_int64 size = 0;
  return file->pMethods->xFileSize(file, &size) == SQLITE_OK ? size : 0;
}

std::uint32_t big_endian(const unsigned char* bytes) {
  return std::uint32_t{bytes[0]} << 24 | std::uint32_t{bytes[1]} << 16 | std::uint32_t{bytes[2]} << 8 |
         bytes[3];
}

}  // namespace

ProjectDatabase::ProjectDatabase(const fs::path& path, int flags, int wait_ms, std::string kind)
    : path_(path),
      kind_(std::move(kind)),
      database_(fs::absolute(path).string(), flags | SQLITE_OPEN_PRIVATECACHE, wait_ms) {
  sqlite3_extended_result_codes(database_.getHandle(), 1);
  defend(database_.getHandle());
}

bool ProjectDatabase::is_read_only() const { return sqlite3_db_readonly(database_.getHandle(), "main") == 1; }

FileHeader ProjectDatabase::header() {
  using namespace std::string_view_literals;
  FileHeader header;
  unsigned char bytes[100] = {};
  sqlite3_file* file = main_file(database_.getHandle());
  const std::int64_t size = file != nullptr ? size_of(file) : 0;
  if (size < static_cast<std::int64_t>(sizeof bytes)) return header;
  if (file->pMethods->xRead(file, bytes, sizeof bytes, 0) != SQLITE_OK) return header;
  constexpr std::string_view magic = "SQLite format 3\0"sv;
  header.is_database = std::equal(magic.begin(), magic.end(), bytes);
  header.write_ahead_log = bytes[18] == 2 || bytes[19] == 2;
  // Two bytes, big-endian, in which 1 stands for 65536.
  const std::int64_t page_size = bytes[16] << 8 | bytes[17] << 16;
  header.is_whole = size >= page_size * big_endian(bytes + 28);
  header.schema_version = static_cast<int>(big_endian(bytes + 60));
  header.application_id = big_endian(bytes + 68);
  return header;
}

std::uint64_t ProjectDatabase::content_fingerprint() {
  sqlite3_file* file = main_file(database_.getHandle());
  if (file == nullptr) return 0;
  const std::int64_t size = size_of(file);
  std::uint64_t print = fingerprint({});
  char buffer[65536];
  for (std::int64_t at = 0; at < size;) {
    const auto amount = static_cast<int>(std::min<std::int64_t>(size - at, sizeof buffer));
    const int code = file->pMethods->xRead(file, buffer, amount, at);
    if (code != SQLITE_OK) throw SQLite::Exception("cannot be read", code);
    print = fingerprint({buffer, static_cast<std::size_t>(amount)}, print);
    at += amount;
  }
  return print;
}

Error ProjectDatabase::error_of(const SQLite::Exception& exception) const {
  sqlite3* handle = database_.getHandle();
  return sqlite_failure(exception.getExtendedErrorCode(), sqlite3_system_errno(handle), exception.what(),
                        path_, kind_);
}

Error sqlite_failure(int extended_code, int system_code, const std::string& words, const fs::path& path,
                     const std::string& kind) {
  const std::string ours = "a Skeinproof " + kind, whole = "a whole " + kind;
  const std::string too_large = "a value larger than any " + kind + " has";
  struct Row {
    int code;
    ErrorKind kind;
    std::string_view found;
    std::string_view expected;
  };
  const Row rows[] = {
      {SQLITE_BUSY, ErrorKind::locked, "a lock of another program", "a file nobody else is writing"},
      {SQLITE_LOCKED, ErrorKind::locked, "a lock of another program", "a file nobody else is writing"},
      {SQLITE_FULL, ErrorKind::no_space, "a full disk", "free space"},
      {SQLITE_READONLY, ErrorKind::read_only, "a file that may only be read",
       "the right to write to it and its folder"},
      {SQLITE_PERM, ErrorKind::read_only, "no right to the file", "the right to it"},
      {SQLITE_NOTADB, ErrorKind::not_ours, "another kind of file", ours},
      {SQLITE_CORRUPT, ErrorKind::damaged, "a damaged file", whole},
      {SQLITE_TOOBIG, ErrorKind::damaged, too_large, whole},
      {SQLITE_MISMATCH, ErrorKind::damaged, "values of the wrong type", whole},
      {SQLITE_CANTOPEN, ErrorKind::read_only, "a file that cannot be opened",
       "the right to write in its folder"},
      {SQLITE_IOERR, ErrorKind::system, "a failing disk", "a disk that reads and writes"},
  };
  const int code = extended_code & 0xff;
  const bool of_the_system = code == SQLITE_CANTOPEN || code == SQLITE_IOERR;
  if (of_the_system && system_code != 0) return system_failure(system_code, path, "read or write");
  for (const Row& row : rows)
    if (row.code == code)
      return Error{row.kind, {path.string(), 0, 0}, std::string(row.found), std::string(row.expected)};
  return Error{ErrorKind::system, {path.string(), 0, 0}, words, "a database that works"};
}

}  // namespace skeinproof
