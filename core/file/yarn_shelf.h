// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <filesystem>
#include <span>
#include <vector>

#include "core/base/error.h"
#include "core/substitution/shelf_yarn.h"

namespace skeinproof {

// A person's own list of yarns, in one SQLite file that other tools can read: strict tables "yarns",
// "yarn_composition" and "yarn_also_sold", an application id of its own and a schema version. Each call opens
// the file, does one thing in one transaction and closes it again, so that several windows may use one shelf.
// Failures: not_ours (a project, another program's file), too_new (names both versions), damaged, locked,
// read_only, no_space, wrong_format (a folder), system. A file that is not a shelf is never written to.

struct ShelfOptions {
  int wait_ms = 2000;  // for somebody else who is just writing
};

// In the order in which they were put there. A file that does not exist holds none.
Expected<std::vector<ShelfYarn>> load_shelf(const std::filesystem::path& path,
                                            const ShelfOptions& options = {});

// Entries with an id take the place of what has that id (and come back where it went meanwhile); those
// without come last and get one. All of them or, where one fails, none. Makes the file and its folder where
// they are missing. The ids, in order; broken_invariant where an entry holds what no file gives back.
Expected<std::vector<ShelfYarnId>> store_on_shelf(const std::filesystem::path& path,
                                                  std::span<const ShelfYarn> entries,
                                                  const ShelfOptions& options = {});

// Nothing happens to ids that are not there.
Expected<void> drop_from_shelf(const std::filesystem::path& path, std::span<const ShelfYarnId> ids,
                               const ShelfOptions& options = {});

}  // namespace skeinproof
