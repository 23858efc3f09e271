// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstdint>
#include <string_view>

namespace skeinproof {

// "Skpf": what `PRAGMA application_id` answers in a project file of ours.
inline constexpr std::uint32_t project_application_id = 0x536b7066;
// What `PRAGMA user_version` answers in a file written by this program, and the oldest version of the
// program's schema whose reader understands such a file.
inline constexpr int project_schema_version = 3;
inline constexpr int project_oldest_reader = 3;

// The SQL that makes the tables and views of a released version, empty for a version that never was. A
// released schema is never edited again; tables stand before those that refer to them. Each is the one before
// with the step to it, so that a migrated file and a new one are the same.
std::string_view project_schema(int version);

// "Skys": the application id of a yarn shelf, and its schema version, counted by itself.
inline constexpr std::uint32_t shelf_application_id = 0x536b7973;
inline constexpr int shelf_schema_version = 1;
std::string_view shelf_schema(int version);  // as project_schema

}  // namespace skeinproof
