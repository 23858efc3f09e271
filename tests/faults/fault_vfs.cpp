// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/faults/fault_vfs.h"

#include <sqlite3.h>

#include <cstring>
#include <new>

namespace skeinproof {
namespace {

struct State {
  sqlite3_vfs vfs = {};
  sqlite3_vfs* real = nullptr;
  FaultyDisk::Fails fails;
  int operations = 0;
  int failures = 0;
};
State* state = nullptr;

int ask(DiskOperation operation) {
  const int code = state->fails(++state->operations, operation);
  if (code != SQLITE_OK) ++state->failures;
  return code;
}

// SQLite gives room for this; the real file lies behind it.
struct File {
  sqlite3_file base;
  sqlite3_file* real() { return reinterpret_cast<sqlite3_file*>(this + 1); }
};
sqlite3_file* real(sqlite3_file* file) { return reinterpret_cast<File*>(file)->real(); }

int close(sqlite3_file* file) { return real(file)->pMethods->xClose(real(file)); }
int read(sqlite3_file* file, void* into, int amount, sqlite3_int64 at) {
  return real(file)->pMethods->xRead(real(file), into, amount, at);
}
int write(sqlite3_file* file, const void* from, int amount, sqlite3_int64 at) {
  const int code = ask(DiskOperation::write);
  const int written = code == SQLITE_OK ? amount : amount / 2;
  const int real_code =
      written == 0 ? SQLITE_OK : real(file)->pMethods->xWrite(real(file), from, written, at);
  return code != SQLITE_OK ? code : real_code;
}
int truncate(sqlite3_file* file, sqlite3_int64 size) {
  const int code = ask(DiskOperation::truncate);
  return code != SQLITE_OK ? code : real(file)->pMethods->xTruncate(real(file), size);
}
int flush(sqlite3_file* file, int flags) {
  const int code = ask(DiskOperation::flush);
  return code != SQLITE_OK ? code : real(file)->pMethods->xSync(real(file), flags);
}
int file_size(sqlite3_file* file, sqlite3_int64* size) {
  return real(file)->pMethods->xFileSize(real(file), size);
}
int lock(sqlite3_file* file, int level) { return real(file)->pMethods->xLock(real(file), level); }
int unlock(sqlite3_file* file, int level) { return real(file)->pMethods->xUnlock(real(file), level); }
int check_lock(sqlite3_file* file, int* held) {
  return real(file)->pMethods->xCheckReservedLock(real(file), held);
}
int control(sqlite3_file* file, int what, void* argument) {
  return real(file)->pMethods->xFileControl(real(file), what, argument);
}
int sector_size(sqlite3_file* file) { return real(file)->pMethods->xSectorSize(real(file)); }
// No promises of the disk: SQLite takes the long way round, with a journal for everything.
int characteristics(sqlite3_file*) { return 0; }

const sqlite3_io_methods methods = {
    1,       close,   read,       write,   truncate,    flush,           file_size,
    lock,    unlock,  check_lock, control, sector_size, characteristics, nullptr,
    nullptr, nullptr, nullptr,    nullptr, nullptr};

int open(sqlite3_vfs*, const char* name, sqlite3_file* file, int flags, int* out_flags) {
  file->pMethods = nullptr;
  const bool writes = (flags & SQLITE_OPEN_READWRITE) != 0;
  if (writes) {
    const int code = ask(DiskOperation::open_for_writing);
    if (code != SQLITE_OK) return code;
  }
  std::memset(real(file), 0, static_cast<std::size_t>(state->real->szOsFile));
  const int code = state->real->xOpen(state->real, name, real(file), flags, out_flags);
  if (code == SQLITE_OK) file->pMethods = &methods;
  return code;
}
int remove(sqlite3_vfs*, const char* name, int flush_folder) {
  const int code = ask(DiskOperation::remove);
  return code != SQLITE_OK ? code : state->real->xDelete(state->real, name, flush_folder);
}

}  // namespace

FaultyDisk::FaultyDisk(Fails fails) {
  state = new State;
  state->real = sqlite3_vfs_find(nullptr);
  state->fails = std::move(fails);
  // Everything else is the real one's own, which asks for its own data by its own pointer.
  state->vfs = *state->real;
  state->vfs.pNext = nullptr;
  state->vfs.zName = "faulty";
  state->vfs.szOsFile = static_cast<int>(sizeof(File)) + state->real->szOsFile;
  state->vfs.xOpen = open;
  state->vfs.xDelete = remove;
  sqlite3_vfs_register(&state->vfs, 1);
}

FaultyDisk::~FaultyDisk() {
  sqlite3_vfs_unregister(&state->vfs);
  sqlite3_vfs_register(state->real, 1);
  delete state;
  state = nullptr;
}

int FaultyDisk::operations() const { return state->operations; }
int FaultyDisk::failures() const { return state->failures; }

}  // namespace skeinproof
