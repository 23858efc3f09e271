// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>

#include "core/base/error.h"

namespace skeinproof {

// Whole files at once. Failures carry the path as the place: not_found, read_only (no right to it), no_space,
// out_of_range (larger than `at_most` bytes), wrong_format (a folder, a device), system.
Expected<std::string> read_whole_file(const std::filesystem::path& path, std::uint64_t at_most = 256u << 20);

// Either the whole text stands at the path or what was there before does, whenever the machine stops: written
// beside it, flushed, then put in its place. A link is followed.
Expected<void> write_whole_file(const std::filesystem::path& path, std::string_view bytes);

// Puts a finished file in the place of another, or where nothing was, and flushes the folder.
Expected<void> put_in_place(const std::filesystem::path& finished, const std::filesystem::path& path);

// A file name beside `path` that is not taken, for something that is put in its place later.
std::filesystem::path name_beside(const std::filesystem::path& path);

// The failure an errno stands for.
Error system_failure(int code, const std::filesystem::path& path, std::string_view doing);

}  // namespace skeinproof
