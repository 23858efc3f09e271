// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/file/whole_file.h"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <system_error>

namespace skeinproof {
namespace fs = std::filesystem;
namespace {

// A file descriptor that closes itself.
class Descriptor {
 public:
  Descriptor(const fs::path& path, int flags, mode_t mode = 0)
      : number_(::open(path.c_str(), flags | O_CLOEXEC, mode)) {}
  ~Descriptor() { close(); }
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;

  explicit operator bool() const { return number_ >= 0; }
  int number() const { return number_; }
  bool close() {
    const int closing = number_;
    number_ = -1;
    return closing < 0 || ::close(closing) == 0;
  }

 private:
  int number_;
};

tl::unexpected<Error> failed(int code, const fs::path& path, std::string_view doing) {
  return tl::unexpected<Error>(system_failure(code, path, doing));
}

bool write_all(int descriptor, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t written = ::write(descriptor, bytes.data(), bytes.size());
    if (written < 0 && errno == EINTR) continue;
    if (written <= 0) return false;
    bytes.remove_prefix(static_cast<std::size_t>(written));
  }
  return true;
}

Expected<void> write_flushed(const fs::path& path, std::string_view bytes) {
  Descriptor file(path, O_WRONLY | O_CREAT | O_EXCL, 0666);
  if (!file) return failed(errno, path, "write");
  if (!write_all(file.number(), bytes) || ::fsync(file.number()) != 0 || !file.close())
    return failed(errno, path, "write");
  return {};
}

void flush_folder(const fs::path& folder) {
  // Some file systems do not flush folders; the file itself is flushed already.
  const Descriptor descriptor(folder, O_RDONLY | O_DIRECTORY);
  if (descriptor) ::fsync(descriptor.number());
}

}  // namespace

Error system_failure(int code, const fs::path& path, std::string_view doing) {
  struct Row {
    int code;
    ErrorKind kind;
    std::string_view expected;
  };
  static constexpr Row rows[] = {
      {ENOENT, ErrorKind::not_found, "a file and a folder that exist"},
      {ENOTDIR, ErrorKind::not_found, "a folder on the way to it"},
      {EACCES, ErrorKind::read_only, "the right to it"},
      {EPERM, ErrorKind::read_only, "the right to it"},
      {EROFS, ErrorKind::read_only, "a place that can be written to"},
      {ENOSPC, ErrorKind::no_space, "free space"},
      {EDQUOT, ErrorKind::no_space, "free space"},
      {EFBIG, ErrorKind::no_space, "room for a file of this size"},
      {EISDIR, ErrorKind::wrong_format, "a file, not a folder"},
      {ENAMETOOLONG, ErrorKind::wrong_format, "a shorter name"},
  };
  Error error{ErrorKind::system, {path.string(), 0, 0}, std::generic_category().message(code), {}};
  error.expected = "to " + std::string(doing) + " it";
  for (const Row& row : rows) {
    if (row.code != code) continue;
    error.kind = row.kind;
    error.expected = row.expected;
  }
  return error;
}

Expected<std::string> read_whole_file(const fs::path& path, std::uint64_t at_most) {
  std::error_code code;
  const fs::file_status status = fs::status(path, code);
  if (status.type() == fs::file_type::not_found) return failed(ENOENT, path, "read");
  if (code) return failed(code.value(), path, "read");
  if (!fs::is_regular_file(status)) return failed(EISDIR, path, "read");
  const Descriptor file(path, O_RDONLY);
  if (!file) return failed(errno, path, "read");
  std::string bytes;
  char buffer[65536];
  for (;;) {
    const ssize_t read = ::read(file.number(), buffer, sizeof buffer);
    if (read < 0 && errno == EINTR) continue;
    if (read < 0) return failed(errno, path, "read");
    if (read == 0) return bytes;
    bytes.append(buffer, static_cast<std::size_t>(read));
    if (bytes.size() > at_most)
      return failure(ErrorKind::out_of_range, "more than " + std::to_string(at_most) + " bytes",
                     "a smaller file", {path.string(), 0, 0});
  }
}

fs::path name_beside(const fs::path& path) {
  std::error_code code;
  for (int number = 1;; ++number) {
    fs::path beside = path;
    beside += ".part" + std::to_string(::getpid()) + "-" + std::to_string(number);
    if (!fs::exists(fs::symlink_status(beside, code))) return beside;
  }
}

Expected<void> put_in_place(const fs::path& finished, const fs::path& path) {
  std::error_code code;
  fs::rename(finished, path, code);
  if (code) return failed(code.value(), path, "write");
  flush_folder(path.has_parent_path() ? path.parent_path() : fs::path("."));
  return {};
}

Expected<void> write_whole_file(const fs::path& path, std::string_view bytes) {
  std::error_code code;
  const fs::path target =
      fs::is_symlink(fs::symlink_status(path, code)) ? fs::weakly_canonical(path, code) : path;
  const fs::path beside = name_beside(target);
  auto done = write_flushed(beside, bytes);
  if (done && fs::exists(target, code)) fs::permissions(beside, fs::status(target, code).permissions(), code);
  if (done) done = put_in_place(beside, target);
  if (!done) {
    fs::remove(beside, code);
    done.error().place.file = path.string();
  }
  return done;
}

}  // namespace skeinproof
