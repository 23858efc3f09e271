// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/temporary_folder.h"

#include <stdlib.h>
#include <unistd.h>

#include <stdexcept>
#include <system_error>

namespace skeinproof {

TemporaryFolder::TemporaryFolder() {
  // Every save flushes the disk, which takes its time; a disk in memory has nothing to flush.
  const std::filesystem::path memory = "/dev/shm";
  const bool in_memory = ::access(memory.c_str(), W_OK | X_OK) == 0;
  std::string name =
      ((in_memory ? memory : std::filesystem::temp_directory_path()) / "skeinproof-test-XXXXXX").string();
  if (::mkdtemp(name.data()) == nullptr) throw std::runtime_error("no temporary folder");
  path_ = name;
}

TemporaryFolder::~TemporaryFolder() {
  std::error_code code;
  std::filesystem::remove_all(path_, code);
}

}  // namespace skeinproof
