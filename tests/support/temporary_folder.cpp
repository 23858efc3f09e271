// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/temporary_folder.h"

#include <stdlib.h>

#include <stdexcept>
#include <system_error>

namespace skeinproof {

TemporaryFolder::TemporaryFolder() {
  std::string name = (std::filesystem::temp_directory_path() / "skeinproof-test-XXXXXX").string();
  if (::mkdtemp(name.data()) == nullptr) throw std::runtime_error("no temporary folder");
  path_ = name;
}

TemporaryFolder::~TemporaryFolder() {
  std::error_code code;
  std::filesystem::remove_all(path_, code);
}

}  // namespace skeinproof
