// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>

#include "core/pattern/pattern.h"

namespace skeinproof {

// How a project file was when it was last read or written, to see whether somebody else wrote it since. The
// content decides; the rest only saves reading it.
struct FileStamp {
  std::uint64_t size = 0;
  std::int64_t modified_ns = 0;
  std::uint64_t inode = 0;
  std::uint64_t content = 0;  // fingerprint of all bytes; 0 matches nothing
  bool operator==(const FileStamp&) const = default;
};

struct OpenedProject {
  Pattern pattern;
  FileStamp stamp;
  int schema_version = 0;
  bool migrated = false;          // an older schema, brought up to date in memory; Save brings up the file
  bool newer = false;             // a newer schema that lets our version read; cannot be saved over
  bool journal_found = false;     // a save was cut short; this is the state before it, read from a copy
  bool edited_elsewhere = false;  // the stored results rest on other inputs: another program wrote the tables
};

struct OpenOptions {
  int wait_ms = 2000;                    // for somebody else who is just saving
  std::filesystem::path scratch_folder;  // for copies; empty = the system's folder for temporary files
};

// Opens a project; never changes the file, its folder or a journal beside it. Failures: not_found, not_ours,
// too_new (names both versions), damaged, locked, read_only (no right to read), wrong_format (a folder),
// system.
Expected<OpenedProject> open_project(const std::filesystem::path& path, const OpenOptions& options = {});

struct SaveOptions {
  std::optional<FileStamp> last_seen;  // of the file this document came from; absent = it came from elsewhere
  bool replace_existing = false;       // the user agreed to lose what stands at the path
  std::string program = "Skeinproof";  // name and version, for the file
  int wait_ms = 2000;
};

// Saves the document and what is worked out from it: in one transaction of the file where a project of ours
// stands, else as a new file put in its place when it is complete. Whatever fails, the old content stays.
// With `last_seen` the file must be as it was then; without it nothing may stand at the path;
// `replace_existing` lifts both. Failures: changed_behind_our_back, not_ours, too_new, damaged (what stands
// there), not_found (no folder, or the file is gone), locked, read_only, no_space, broken_invariant (the
// document), wrong_format, system.
Expected<FileStamp> save_project(const std::filesystem::path& path, const Pattern& pattern,
                                 const SaveOptions& options = {});

// Whether a file is no longer as it was; true as well where it is gone or cannot be read.
bool has_changed(const std::filesystem::path& path, const FileStamp& stamp);

}  // namespace skeinproof
