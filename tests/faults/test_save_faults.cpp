// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>
#include <sqlite3.h>

#include <filesystem>
#include <fstream>

#include "core/file/project_file.h"
#include "core/file/whole_file.h"
#include "tests/faults/fault_vfs.h"
#include "tests/support/generate_pattern.h"
#include "tests/support/temporary_folder.h"

namespace skeinproof {
namespace {

namespace fs = std::filesystem;

struct Fault {
  const char* name;
  // The code of the operation `number` when the fault sits at operation `at`.
  int (*code)(int at, int number, DiskOperation operation);
};

const Fault faults[] = {
    {"fails_once",
     [](int at, int number, DiskOperation) { return number == at ? SQLITE_IOERR_WRITE : SQLITE_OK; }},
    {"dies", [](int at, int number, DiskOperation) { return number >= at ? SQLITE_IOERR : SQLITE_OK; }},
    {"fills_up",
     [](int at, int number, DiskOperation operation) {
       return number >= at && operation == DiskOperation::write ? SQLITE_FULL : SQLITE_OK;
     }},
    {"cannot_flush",
     [](int at, int number, DiskOperation operation) {
       return number >= at && operation == DiskOperation::flush ? SQLITE_IOERR_FSYNC : SQLITE_OK;
     }},
    {"becomes_read_only",
     [](int at, int number, DiskOperation operation) {
       return number >= at && operation == DiskOperation::open_for_writing ? SQLITE_CANTOPEN : SQLITE_OK;
     }},
};

void PrintTo(const Fault& fault, std::ostream* out) { *out << fault.name; }

class SaveFaults : public testing::TestWithParam<Fault> {
 protected:
  const Pattern old_pattern = generated_pattern(1);
  const Pattern new_pattern = generated_pattern(2);
  TemporaryFolder folder;
  fs::path path = folder / "p.skeinproof";

  void SetUp() override {
    old_stamp = save_project(path, old_pattern).value();
    old_bytes = read_whole_file(path).value();
  }
  FileStamp old_stamp;
  std::string old_bytes;

  // Saves with the fault at operation `at`; false where the save came through before.
  bool save_with_fault(int at, const SaveOptions& options, Expected<FileStamp>& saved) {
    FaultyDisk disk(
        [&](int number, DiskOperation operation) { return GetParam().code(at, number, operation); });
    saved = save_project(path, new_pattern, options);
    return disk.failures() > 0;
  }
  void clear() {
    for (const auto& entry : fs::directory_iterator(folder.path())) fs::remove_all(entry.path());
  }
};

TEST_P(SaveFaults, leave_the_old_or_the_new_document) {
  int at = 1;
  bool failed = true;
  int old_kept = 0;
  for (; failed; ++at) {
    clear();
    SaveOptions options;
    options.wait_ms = 0;
    options.last_seen = old_stamp;
    std::ofstream(path, std::ios::binary) << old_bytes;
    Expected<FileStamp> saved;
    failed = save_with_fault(at, options, saved);
    const auto opened = open_project(path, {0, {}});
    ASSERT_TRUE(opened) << "at " << at << ": " << opened.error().message();
    const bool is_old = opened->pattern == old_pattern;
    const bool is_new = opened->pattern == new_pattern;
    ASSERT_TRUE(is_old || is_new) << "at " << at;
    if (saved) {
      ASSERT_TRUE(is_new) << "at " << at;
    }
    if (!saved) {
      ASSERT_FALSE(saved.error().message().empty());
    }
    if (!failed) {
      ASSERT_TRUE(saved) << saved.error().message();
    }
    old_kept += is_old;

    // And it can be saved when the disk is well again.
    options.last_seen = opened->stamp;
    const auto again = save_project(path, new_pattern, options);
    ASSERT_TRUE(again) << "at " << at << ": " << again.error().message();
    ASSERT_EQ(std::distance(fs::directory_iterator(folder.path()), fs::directory_iterator()), 1);
  }
  EXPECT_GT(at, 2) << "no operation was ever made to fail";
  EXPECT_GT(old_kept, 0);
}

TEST_P(SaveFaults, leave_no_file_or_a_whole_one) {
  bool failed = true;
  int at = 1;
  for (; failed; ++at) {
    clear();
    Expected<FileStamp> saved;
    failed = save_with_fault(at, {}, saved);
    ASSERT_EQ(saved.has_value(), fs::exists(path)) << "at " << at;
    if (saved) {
      ASSERT_EQ(open_project(path)->pattern, new_pattern) << "at " << at;
    }
    ASSERT_EQ(std::distance(fs::directory_iterator(folder.path()), fs::directory_iterator()), saved ? 1 : 0)
        << "nothing half written is left, at " << at;
  }
  EXPECT_GT(at, 2);
}

TEST_P(SaveFaults, leave_a_foreign_file_that_is_being_replaced) {
  bool failed = true;
  for (int at = 1; failed; ++at) {
    clear();
    std::ofstream(path) << "somebody's notes";
    SaveOptions options;
    options.replace_existing = true;
    Expected<FileStamp> saved;
    failed = save_with_fault(at, options, saved);
    if (saved) {
      ASSERT_EQ(open_project(path)->pattern, new_pattern) << "at " << at;
    } else {
      ASSERT_EQ(read_whole_file(path).value(), "somebody's notes") << "at " << at;
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Disk, SaveFaults, testing::ValuesIn(faults),
                         [](const auto& row) { return row.param.name; });

class SaveErrors : public testing::Test {
 protected:
  // The failure of a save onto a project of ours when every operation of one kind gives a code.
  Error error_of(DiskOperation operation, int code) {
    const TemporaryFolder folder;
    SaveOptions options;
    options.wait_ms = 0;
    options.last_seen = save_project(folder / "p", generated_pattern(1)).value();
    const FaultyDisk disk([&](int, DiskOperation asked) { return asked == operation ? code : SQLITE_OK; });
    const auto saved = save_project(folder / "p", generated_pattern(2), options);
    EXPECT_FALSE(saved);
    return saved ? Error{} : saved.error();
  }
};

TEST_F(SaveErrors, say_what_happened) {
  EXPECT_EQ(error_of(DiskOperation::write, SQLITE_FULL).kind, ErrorKind::no_space);
  EXPECT_EQ(error_of(DiskOperation::write, SQLITE_READONLY).kind, ErrorKind::read_only);
  EXPECT_EQ(error_of(DiskOperation::flush, SQLITE_IOERR_FSYNC).kind, ErrorKind::system);
  EXPECT_EQ(error_of(DiskOperation::open_for_writing, SQLITE_CANTOPEN).kind, ErrorKind::read_only);
  const Error full = error_of(DiskOperation::write, SQLITE_FULL);
  EXPECT_EQ(full.found, "a full disk");
  EXPECT_EQ(fs::path(full.place.file).filename(), "p");
}

}  // namespace

}  // namespace skeinproof
