// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <SQLiteCpp/SQLiteCpp.h>

#include <string_view>

#include "core/base/error.h"
#include "core/file/project_database.h"

namespace skeinproof {

// Whether a file says that it is a project of ours: not_ours otherwise.
Expected<void> check_header(const FileHeader& header);

// Whether the tables, indices and views of a file are exactly those of its released schema version, and
// nothing else is there that could act: `damaged` otherwise. Throws SQLite::Exception.
Expected<void> check_schema(SQLite::Database& database, int version);
// The same for a file of another kind, whose version is made by this SQL.
Expected<void> check_schema(SQLite::Database& database, int version, std::string_view sql);

// Makes the tables of the newest schema in a database that holds none, with its marks.
void create_schema(SQLite::Database& database, const std::string& program);
// Drops what a schema that passed check_schema has made.
void drop_schema(SQLite::Database& database);

}  // namespace skeinproof
