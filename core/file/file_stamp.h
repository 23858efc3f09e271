// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <filesystem>

#include "core/file/project_file.h"

namespace skeinproof {

// Whether something that can be read as a file stands there: not_found, wrong_format (a folder, a device) or
// system otherwise.
Expected<void> check_regular_file(const std::filesystem::path& path);

// Fills in size, time and inode of what stands at the path; zeroes where nothing does.
void stamp_place(const std::filesystem::path& path, FileStamp& stamp);

}  // namespace skeinproof
