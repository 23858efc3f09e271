// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <functional>

namespace skeinproof {

// What an operation on a file is to SQLite. Only what changes the disk is counted.
enum class DiskOperation { open_for_writing, write, truncate, flush, remove };

// While one of these lives, SQLite reaches the disk through it, and every changing operation asks `fails`
// with its number (from 1) and kind. The answer is an SQLite code: SQLITE_OK lets it through. A write that
// fails has written its first half, as a torn write does.
class FaultyDisk {
 public:
  using Fails = std::function<int(int number, DiskOperation operation)>;
  explicit FaultyDisk(Fails fails);
  ~FaultyDisk();
  FaultyDisk(const FaultyDisk&) = delete;
  FaultyDisk& operator=(const FaultyDisk&) = delete;

  // How many operations asked, and how many were made to fail.
  int operations() const;
  int failures() const;
};

}  // namespace skeinproof
