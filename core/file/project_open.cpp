// SPDX-License-Identifier: GPL-3.0-or-later
#include <SQLiteCpp/Backup.h>
#include <sqlite3.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <system_error>

#include "core/file/document_rows.h"
#include "core/file/file_stamp.h"
#include "core/file/migrate.h"
#include "core/file/project_database.h"
#include "core/file/project_file.h"
#include "core/file/project_schema_check.h"
#include "core/file/result_rows.h"
#include "core/file/schema.h"
#include "core/file/whole_file.h"

namespace skeinproof {
namespace fs = std::filesystem;
namespace {

// Thrown where SQLite would have to write to the file before it can read it.
struct NeedsCopy {};

// A folder that removes itself.
class ScratchFolder {
 public:
  explicit ScratchFolder(const fs::path& parent) : path_((parent / "skeinproof-XXXXXX").string()) {
    made_ = ::mkdtemp(path_.data()) != nullptr;
    if (!made_) code_ = errno;
  }
  ~ScratchFolder() {
    std::error_code code;
    if (made_) fs::remove_all(path_, code);
  }
  ScratchFolder(const ScratchFolder&) = delete;
  ScratchFolder& operator=(const ScratchFolder&) = delete;

  bool made() const { return made_; }
  int code() const { return code_; }
  fs::path path() const { return path_; }

 private:
  std::string path_;
  bool made_ = false;
  int code_ = 0;
};

// A newer schema that lets us read may have more tables and columns, but nothing that acts.
Expected<void> check_newer(SQLite::Database& database, int version) {
  const std::string found = "a project of schema version " + std::to_string(version);
  const std::string expected = "at most version " + std::to_string(project_schema_version);
  SQLite::Statement acting(
      database, "SELECT count(*) FROM sqlite_schema WHERE type = 'trigger' OR sql LIKE 'CREATE VIRTUAL%'");
  acting.executeStep();
  SQLite::Statement oldest(database, "SELECT oldest_reader FROM meta");
  const bool may_read = oldest.executeStep() && oldest.getColumn(0).isInteger() &&
                        oldest.getColumn(0).getInt64() <= project_schema_version;
  if (!may_read || acting.getColumn(0).getInt() != 0) return failure(ErrorKind::too_new, found, expected);
  return {};
}

Expected<void> check_content(SQLite::Database& database) {
  SQLite::Statement check(database, "PRAGMA quick_check(1)");
  if (check.executeStep() && check.getColumn(0).getString() == "ok") return {};
  return failure(ErrorKind::damaged, check.getColumn(0).getString(), "a whole project");
}

bool results_rest_on(SQLite::Database& database, const Pattern& pattern) {
  SQLite::Statement stored(database, "SELECT inputs_fingerprint FROM result_meta");
  return stored.executeStep() && stored.getColumn(0).getString() == inputs_fingerprint(pattern);
}

Expected<Pattern> read_pattern(SQLite::Database& database, int version) {
  if (version >= project_schema_version) return read_document_rows(database);
  SQLite::Database copy(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
  SQLite::Backup backup(copy, database);
  backup.executeStep(-1);
  if (auto done = migrate(copy, version, project_schema_version, migrations()); !done)
    return tl::unexpected<Error>(std::move(done.error()));
  return read_document_rows(copy);
}

Expected<OpenedProject> read_project(ProjectDatabase& file) {
  SQLite::Database& database = file.sqlite();
  const SQLite::Transaction reading(database);
  database.exec("PRAGMA cell_size_check = ON");
  database.execAndGet("SELECT count(*) FROM sqlite_schema");  // takes the lock; from here nobody writes
  const FileHeader header = file.header();
  if (!header.is_whole) return failure(ErrorKind::damaged, "a file cut short", "a whole project");
  OpenedProject project;
  project.schema_version = header.schema_version;
  project.newer = header.schema_version > project_schema_version;
  project.migrated = header.schema_version < project_schema_version;

  auto sound = project.newer ? check_newer(database, header.schema_version)
                             : check_schema(database, header.schema_version);
  if (sound) sound = check_content(database);
  if (!sound) return tl::unexpected<Error>(std::move(sound.error()));
  project.stamp.content = file.content_fingerprint();

  auto pattern = read_pattern(database, header.schema_version);
  if (!pattern) return tl::unexpected<Error>(std::move(pattern.error()));
  if (auto kept = check_invariants(*pattern); !kept)
    return failure(ErrorKind::damaged, kept.error().found, kept.error().expected);
  project.edited_elsewhere = !project.newer && !project.migrated && !results_rest_on(database, *pattern);
  project.pattern = std::move(*pattern);
  return project;
}

bool needs_copy(const SQLite::Exception& exception) {
  const int code = exception.getExtendedErrorCode();
  return code == SQLITE_READONLY_ROLLBACK || code == SQLITE_READONLY_RECOVERY ||
         code == SQLITE_READONLY_CANTINIT || code == SQLITE_READONLY_CANTLOCK;
}

// `is_copy` says that the file is our own copy, on which SQLite may do what it has to.
Expected<OpenedProject> open_at(const fs::path& path, bool is_copy, int wait_ms) {
  ProjectDatabase file(path, is_copy ? SQLite::OPEN_READWRITE : SQLite::OPEN_READONLY, wait_ms);
  try {
    const FileHeader header = file.header();
    if (auto ours = check_header(header); !ours) return tl::unexpected<Error>(std::move(ours.error()));
    if (header.write_ahead_log && !is_copy) throw NeedsCopy{};
    return read_project(file);
  } catch (const SQLite::Exception& exception) {
    if (!is_copy && needs_copy(exception)) throw NeedsCopy{};
    return tl::unexpected<Error>(file.error_of(exception));
  }
}

// Copies the file with what a save that was cut short left beside it, and lets SQLite put the copy in order.
Expected<OpenedProject> open_copy(const fs::path& path, const OpenOptions& options) {
  std::error_code code;
  const ScratchFolder scratch(options.scratch_folder.empty() ? fs::temp_directory_path(code)
                                                             : options.scratch_folder);
  if (!scratch.made())
    return tl::unexpected<Error>(
        system_failure(scratch.code(), options.scratch_folder, "copy the file into"));
  const fs::path copy = scratch.path() / "copy";
  bool left_behind = false;
  for (const char* suffix : {"", "-journal", "-wal"}) {
    const fs::path from = path.string() + suffix;
    if (*suffix != '\0' && !fs::exists(from, code)) continue;
    fs::copy_file(from, copy.string() + suffix, code);
    if (code) return tl::unexpected<Error>(system_failure(code.value(), from, "copy"));
    const bool filled = fs::file_size(from, code) > 0;
    left_behind = left_behind || (*suffix != '\0' && filled);
  }
  auto project = open_at(copy, true, options.wait_ms);
  if (!project) return project;
  project->journal_found = left_behind;
  return project;
}

Expected<OpenedProject> open_either_way(const fs::path& path, const OpenOptions& options) {
  try {
    try {
      return open_at(path, false, options.wait_ms);
    } catch (const NeedsCopy&) {
      return open_copy(path, options);
    }
  } catch (const SQLite::Exception& exception) {
    const int system_code = ::access(path.c_str(), R_OK) == 0 ? 0 : errno;
    return tl::unexpected<Error>(
        sqlite_failure(exception.getExtendedErrorCode(), system_code, exception.what(), path));
  }
}

}  // namespace

Expected<OpenedProject> open_project(const fs::path& path, const OpenOptions& options) {
  if (auto regular = check_regular_file(path); !regular)
    return tl::unexpected<Error>(std::move(regular.error()));
  auto project = open_either_way(path, options);
  if (!project) {
    project.error().place.file = path.string();
    return project;
  }
  stamp_place(path, project->stamp);
  return project;
}

}  // namespace skeinproof
