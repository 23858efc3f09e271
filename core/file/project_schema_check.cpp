// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/file/project_schema_check.h"

#include <set>
#include <string>
#include <tuple>

#include "core/base/text.h"
#include "core/file/schema.h"
#include "core/file/table_rows.h"

namespace skeinproof {
namespace {

// Type, name and SQL of everything in a schema; what ANALYZE leaves behind does no harm.
using Objects = std::set<std::tuple<std::string, std::string, std::string>>;

Objects objects_of(SQLite::Database& database) {
  Objects objects;
  SQLite::Statement statement(database, "SELECT type, name, coalesce(sql, '') FROM sqlite_schema");
  while (statement.executeStep()) {
    std::string name = statement.getColumn(1).getString();
    if (name.starts_with("sqlite_stat")) continue;
    objects.emplace(statement.getColumn(0).getString(), std::move(name), statement.getColumn(2).getString());
  }
  return objects;
}

}  // namespace

Expected<void> check_header(const FileHeader& header) {
  if (!header.is_database)
    return failure(ErrorKind::not_ours, "another kind of file", "a Skeinproof project");
  if (header.application_id != project_application_id)
    return failure(ErrorKind::not_ours, "a database of another program", "a Skeinproof project");
  return {};
}

Expected<void> check_schema(SQLite::Database& database, int version) {
  return check_schema(database, version, project_schema(version));
}

Expected<void> check_schema(SQLite::Database& database, int version, std::string_view sql) {
  if (sql.empty())
    return failure(ErrorKind::damaged, "schema version " + std::to_string(version),
                   "a version that was released");
  SQLite::Database fresh(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
  fresh.exec(std::string(sql));
  const Objects expected = objects_of(fresh);
  const Objects found = objects_of(database);
  for (const auto& object : found)
    if (!expected.contains(object))
      return failure(ErrorKind::damaged,
                     "the " + std::get<0>(object) + " " + skeinproof::quoted(std::get<1>(object)),
                     "only what schema version " + std::to_string(version) + " has");
  for (const auto& object : expected)
    if (!found.contains(object))
      return failure(ErrorKind::damaged,
                     "no " + std::get<0>(object) + " " + skeinproof::quoted(std::get<1>(object)),
                     "what schema version " + std::to_string(version) + " has");
  return {};
}

void create_schema(SQLite::Database& database, const std::string& program) {
  database.exec(std::string(project_schema(project_schema_version)));
  database.exec("PRAGMA application_id = " + std::to_string(project_application_id));
  database.exec("PRAGMA user_version = " + std::to_string(project_schema_version));
  TableRows(database).insert("meta", {{"only_row", std::int64_t{1}},
                                      {"oldest_reader", std::int64_t{project_oldest_reader}},
                                      {"written_by", program}});
}

void drop_schema(SQLite::Database& database) {
  // Those that refer to others stand behind them.
  SQLite::Statement statement(
      database, "SELECT type, name FROM sqlite_schema WHERE type IN ('table', 'view') ORDER BY rowid DESC");
  std::vector<std::string> drops;
  while (statement.executeStep())
    drops.push_back("DROP " + statement.getColumn(0).getString() + " \"" +
                    statement.getColumn(1).getString() + "\"");
  statement.reset();
  for (const std::string& drop : drops) database.exec(drop);
}

}  // namespace skeinproof
