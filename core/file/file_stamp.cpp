// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/file/file_stamp.h"

#include <sys/stat.h>

#include <cerrno>

#include "core/file/project_database.h"
#include "core/file/whole_file.h"

namespace skeinproof {
namespace fs = std::filesystem;

Expected<void> check_regular_file(const fs::path& path) {
  struct stat status = {};
  if (::stat(path.c_str(), &status) != 0) return tl::unexpected<Error>(system_failure(errno, path, "read"));
  if (S_ISREG(status.st_mode)) return {};
  return failure(ErrorKind::wrong_format, S_ISDIR(status.st_mode) ? "a folder" : "a device", "a file",
                 {path.string(), 0, 0});
}

void stamp_place(const fs::path& path, FileStamp& stamp) {
  struct stat status = {};
  if (::stat(path.c_str(), &status) != 0) status = {};
  stamp.size = static_cast<std::uint64_t>(status.st_size);
  stamp.modified_ns = std::int64_t{status.st_mtim.tv_sec} * 1'000'000'000 + status.st_mtim.tv_nsec;
  stamp.inode = status.st_ino;
}

bool has_changed(const fs::path& path, const FileStamp& stamp) {
  FileStamp now = stamp;
  stamp_place(path, now);
  if (now == stamp) return false;
  if (!check_regular_file(path)) return true;
  try {
    ProjectDatabase file(path, SQLite::OPEN_READONLY, 0);
    const SQLite::Transaction reading(file.sqlite());
    file.sqlite().execAndGet("SELECT count(*) FROM sqlite_schema");
    return file.content_fingerprint() != stamp.content;
  } catch (const SQLite::Exception&) {
    return true;
  }
}

}  // namespace skeinproof
