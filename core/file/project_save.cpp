// SPDX-License-Identifier: GPL-3.0-or-later
#include <sqlite3.h>
#include <unistd.h>

#include <cerrno>
#include <system_error>

#include "core/file/document_rows.h"
#include "core/file/file_stamp.h"
#include "core/file/project_database.h"
#include "core/file/project_file.h"
#include "core/file/project_schema_check.h"
#include "core/file/result_rows.h"
#include "core/file/schema.h"
#include "core/file/storable.h"
#include "core/file/whole_file.h"
#include "core/need/assessment.h"

namespace skeinproof {
namespace fs = std::filesystem;
namespace {

void set_up_for_writing(SQLite::Database& database) {
  database.exec("PRAGMA journal_mode = DELETE");
  database.exec("PRAGMA synchronous = FULL");
  database.exec("PRAGMA foreign_keys = ON");
  database.exec("PRAGMA temp_store = MEMORY");
}

void write_everything(SQLite::Database& database, const Pattern& pattern, const std::string& program) {
  database.exec("PRAGMA defer_foreign_keys = ON");
  create_schema(database, program);
  write_document_rows(database, pattern);
  write_result_rows(database, pattern, assess(pattern), program);
}

// The content as it stands on the disk after our transaction, read under a lock.
std::uint64_t content_of(ProjectDatabase& file) {
  const SQLite::Transaction reading(file.sqlite());
  file.sqlite().execAndGet("SELECT count(*) FROM sqlite_schema");
  return file.content_fingerprint();
}

// Whether what stands at the path may be written into; read under the lock that keeps others from writing.
Expected<void> check_target(ProjectDatabase& file, const SaveOptions& options) {
  const FileHeader header = file.header();
  if (auto ours = check_header(header); !ours) return ours;
  if (header.schema_version > project_schema_version)
    return failure(ErrorKind::too_new, "a project of schema version " + std::to_string(header.schema_version),
                   "at most version " + std::to_string(project_schema_version));
  if (auto sound = check_schema(file.sqlite(), header.schema_version); !sound) return sound;
  if (options.replace_existing) return {};
  if (!options.last_seen)
    return failure(ErrorKind::changed_behind_our_back, "another project",
                   "a new name or leave to replace it");
  if (file.content_fingerprint() != options.last_seen->content)
    return failure(ErrorKind::changed_behind_our_back,
                   "a file that somebody else has written since it was opened", "the file as it was");
  return {};
}

Expected<FileStamp> save_into(ProjectDatabase& file, const Pattern& pattern, const SaveOptions& options) {
  SQLite::Database& database = file.sqlite();
  if (file.is_read_only())
    return failure(ErrorKind::read_only, "a file that may only be read", "the right to write to it");
  const FileHeader header = file.header();
  if (auto ours = check_header(header); !ours) return tl::unexpected<Error>(std::move(ours.error()));
  if (header.write_ahead_log)
    return failure(ErrorKind::changed_behind_our_back, "a write-ahead log that another program has turned on",
                   "a new name or leave to replace the file");
  set_up_for_writing(database);
  SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
  if (auto free = check_target(file, options); !free) return tl::unexpected<Error>(std::move(free.error()));
  drop_schema(database);
  write_everything(database, pattern, options.program);
  transaction.commit();
  FileStamp stamp;
  stamp.content = content_of(file);
  return stamp;
}

Expected<FileStamp> save_into(const fs::path& path, const Pattern& pattern, const SaveOptions& options) {
  ProjectDatabase file(path, SQLite::OPEN_READWRITE, options.wait_ms);
  try {
    return save_into(file, pattern, options);
  } catch (const SQLite::Exception& exception) {
    return tl::unexpected<Error>(file.error_of(exception));
  }
}

Expected<FileStamp> write_new(const fs::path& path, const Pattern& pattern, const SaveOptions& options) {
  ProjectDatabase file(path, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE, options.wait_ms);
  try {
    // Many small tables: small pages make a small file.
    file.sqlite().exec("PRAGMA page_size = 1024");
    set_up_for_writing(file.sqlite());
    SQLite::Transaction transaction(file.sqlite(), SQLite::TransactionBehavior::IMMEDIATE);
    write_everything(file.sqlite(), pattern, options.program);
    transaction.commit();
    FileStamp stamp;
    stamp.content = content_of(file);
    return stamp;
  } catch (const SQLite::Exception& exception) {
    return tl::unexpected<Error>(file.error_of(exception));
  }
}

void remove_left_overs(const fs::path& path) {
  std::error_code code;
  for (const char* suffix : {"-journal", "-wal", "-shm"}) fs::remove(path.string() + suffix, code);
}

// Makes a complete file beside the path and puts it in its place. What a lost or foreign database left beside
// it must go first: SQLite would take it for the journal of the new file.
Expected<FileStamp> save_as_new(const fs::path& path, const Pattern& pattern, const SaveOptions& options) {
  const fs::path beside = name_beside(path);
  auto stamp = write_new(beside, pattern, options);
  if (stamp) {
    remove_left_overs(path);
    if (auto done = put_in_place(beside, path); !done) stamp = tl::unexpected<Error>(std::move(done.error()));
  }
  if (!stamp) {
    std::error_code code;
    fs::remove(beside, code);
    remove_left_overs(beside);
  }
  return stamp;
}

Expected<void> check_folder(const fs::path& folder) {
  std::error_code code;
  if (!fs::is_directory(folder, code))
    return failure(ErrorKind::not_found, "no folder " + folder.string(), "a folder that exists");
  if (::access(folder.c_str(), W_OK | X_OK) != 0)
    return tl::unexpected<Error>(system_failure(errno, folder, "write to"));
  return {};
}

Expected<FileStamp> save_at(const fs::path& path, const Pattern& pattern, const SaveOptions& options) {
  if (auto folder = check_folder(path.parent_path()); !folder)
    return tl::unexpected<Error>(std::move(folder.error()));
  std::error_code code;
  if (!fs::exists(path, code)) {
    if (options.last_seen && !options.replace_existing)
      return failure(ErrorKind::not_found, "that the file is gone", "the file this document came from");
    return save_as_new(path, pattern, options);
  }
  if (auto regular = check_regular_file(path); !regular)
    return tl::unexpected<Error>(std::move(regular.error()));
  auto stamp = save_into(path, pattern, options);
  if (stamp || !options.replace_existing) return stamp;
  switch (stamp.error().kind) {
    case ErrorKind::not_ours:
    case ErrorKind::too_new:
    case ErrorKind::damaged:
    case ErrorKind::changed_behind_our_back:
      return save_as_new(path, pattern, options);
    default:
      return stamp;
  }
}

}  // namespace

Expected<FileStamp> save_project(const fs::path& path, const Pattern& pattern, const SaveOptions& options) {
  auto storable = check_storable(pattern);
  if (!storable) return tl::unexpected<Error>(std::move(storable.error()));
  std::error_code code;
  const fs::path target = fs::weakly_canonical(fs::absolute(path), code);
  Expected<FileStamp> stamp = tl::unexpected<Error>(Error{});
  try {
    stamp = save_at(code ? fs::absolute(path) : target, pattern, options);
  } catch (const SQLite::Exception& exception) {
    const int system_code = ::access(target.c_str(), R_OK) == 0 ? 0 : errno;
    stamp = tl::unexpected<Error>(
        sqlite_failure(exception.getExtendedErrorCode(), system_code, exception.what(), path));
  }
  if (stamp)
    stamp_place(path, *stamp);
  else
    stamp.error().place.file = path.string();
  return stamp;
}

}  // namespace skeinproof
