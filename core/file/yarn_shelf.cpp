// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/file/yarn_shelf.h"

#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <functional>
#include <system_error>

#include "core/file/cell_reader.h"
#include "core/file/file_stamp.h"
#include "core/file/project_database.h"
#include "core/file/project_schema_check.h"
#include "core/file/schema.h"
#include "core/file/storable.h"
#include "core/file/whole_file.h"

namespace skeinproof {
namespace fs = std::filesystem;
namespace {

constexpr const char* kind = "yarn shelf";
constexpr const char* ours = "a Skeinproof yarn shelf";
constexpr const char* yarns_table = "yarns";

Expected<void> check_shelf(ProjectDatabase& file) {
  const FileHeader header = file.header();
  if (!header.is_database) return failure(ErrorKind::not_ours, "another kind of file", ours);
  if (header.application_id == project_application_id)
    return failure(ErrorKind::not_ours, "a Skeinproof project", ours);
  if (header.application_id != shelf_application_id)
    return failure(ErrorKind::not_ours, "a database of another program", ours);
  if (header.schema_version > shelf_schema_version)
    return failure(ErrorKind::too_new,
                   "a yarn shelf of schema version " + std::to_string(header.schema_version),
                   "at most version " + std::to_string(shelf_schema_version));
  if (!header.is_whole) return failure(ErrorKind::damaged, "a file cut short", "a whole yarn shelf");
  return check_schema(file.sqlite(), header.schema_version, shelf_schema(header.schema_version));
}

Expected<void> check_content(SQLite::Database& database) {
  SQLite::Statement check(database, "PRAGMA quick_check(1)");
  if (check.executeStep() && check.getColumn(0).getString() == "ok") return {};
  return failure(ErrorKind::damaged, check.getColumn(0).getString(), "a whole yarn shelf");
}

void make_shelf(SQLite::Database& database) {
  database.exec(std::string(shelf_schema(shelf_schema_version)));
  database.exec("PRAGMA application_id = " + std::to_string(shelf_application_id));
  database.exec("PRAGMA user_version = " + std::to_string(shelf_schema_version));
}

// The lists of an entry are rows of tables of their own, in the order of entries and positions.
template <class Item>
void read_list(TableRows& rows, const std::string& table, std::vector<ShelfYarn>& entries,
               std::vector<Item> Yarn::*list) {
  std::vector<std::string> names = column_names<Item>();
  names.insert(names.begin(), {"yarn", "position"});
  auto at = entries.begin();
  rows.for_each(table, names, "yarn", [&](const Row& row) {
    CellReader cells(row, names, table);
    ShelfYarnId owner;
    cells.read(owner);
    cells.position();
    while (at != entries.end() && at->id < owner) ++at;
    if (at == entries.end() || at->id != owner)
      throw DamagedRow{"yarn " + std::to_string(owner.value), "a yarn of the shelf in " + table};
    cells.read((at->yarn.*list).emplace_back());
  });
}

std::vector<ShelfYarn> read_entries(SQLite::Database& database) {
  TableRows rows(database);
  std::vector<ShelfYarn> entries;
  const std::vector<std::string> names = column_names<ShelfYarn>();
  const std::string table = yarns_table;
  rows.for_each(table, names, "id",
                [&](const Row& row) { CellReader(row, names, table).read_part(entries.emplace_back()); });
  read_list(rows, "yarn_composition", entries, &Yarn::composition);
  read_list(rows, "yarn_also_sold", entries, &Yarn::also_sold);
  return entries;
}

template <class Item>
void write_list(TableRows& rows, const std::string& table, ShelfYarnId owner, const std::vector<Item>& list) {
  for (std::size_t i = 0; i < list.size(); ++i) {
    std::vector<Column> columns = {{"yarn", std::int64_t{owner.value}},
                                   {"position", static_cast<std::int64_t>(i + 1)}};
    add_part_columns("", &list[i], columns);
    rows.insert(table, columns);
  }
}

void write_entry(TableRows& rows, const ShelfYarn& entry) {
  std::vector<Column> columns;
  add_part_columns("", &entry, columns);
  rows.insert(yarns_table, columns);
  write_list(rows, "yarn_composition", entry.id, entry.yarn.composition);
  write_list(rows, "yarn_also_sold", entry.id, entry.yarn.also_sold);
}

// Takes rows away by their ids, with what belongs to them.
class Eraser {
 public:
  explicit Eraser(SQLite::Database& database)
      : statements_{{database, "DELETE FROM yarn_composition WHERE yarn = ?"},
                    {database, "DELETE FROM yarn_also_sold WHERE yarn = ?"},
                    {database, "DELETE FROM yarns WHERE id = ?"}} {}

  void erase(ShelfYarnId id) {
    for (SQLite::Statement& statement : statements_) {
      statement.reset();
      statement.bind(1, std::int64_t{id.value});
      statement.exec();
    }
  }

 private:
  SQLite::Statement statements_[3];
};

template <class T>
using Work = std::function<Expected<T>(SQLite::Database&)>;

// An empty file is what a shelf is before its first transaction ends.
bool is_empty_file(const fs::path& path) {
  std::error_code code;
  return fs::is_regular_file(path, code) && fs::file_size(path, code) == 0 && !code;
}

template <class T>
Expected<T> write_in(ProjectDatabase& file, bool may_make, const Work<T>& work) {
  SQLite::Database& database = file.sqlite();
  if (file.is_read_only())
    return failure(ErrorKind::read_only, "a file that may only be read", "the right to write to it");
  database.exec("PRAGMA synchronous = FULL");
  database.exec("PRAGMA foreign_keys = ON");
  SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
  const bool is_new = may_make && database.execAndGet("SELECT count(*) FROM sqlite_schema").getInt() == 0 &&
                      !file.header().is_database;
  if (is_new)
    make_shelf(database);
  else if (auto sound = check_shelf(file); !sound)
    return tl::unexpected<Error>(std::move(sound.error()));
  auto done = work(database);
  if (done) transaction.commit();
  return done;
}

Expected<std::vector<ShelfYarn>> read_in(ProjectDatabase& file) {
  SQLite::Database& database = file.sqlite();
  if (!file.header().is_database) return failure(ErrorKind::not_ours, "another kind of file", ours);
  const SQLite::Transaction reading(database);
  database.exec("PRAGMA cell_size_check = ON");
  database.execAndGet("SELECT count(*) FROM sqlite_schema");  // takes the lock; from here nobody writes
  auto sound = check_shelf(file);
  if (sound) sound = check_content(database);
  if (!sound) return tl::unexpected<Error>(std::move(sound.error()));
  try {
    return read_entries(database);
  } catch (const DamagedRow& row) {
    return failure(ErrorKind::damaged, row.found, row.expected);
  }
}

// Opens the file, does the work and turns whatever SQLite throws into a failure with its place.
template <class Open>
auto with_file(const fs::path& path, int flags, int wait_ms, Open&& open)
    -> decltype(open(std::declval<ProjectDatabase&>())) {
  const auto run = [&]() -> decltype(open(std::declval<ProjectDatabase&>())) {
    try {
      ProjectDatabase file(path, flags, wait_ms, kind);
      try {
        return open(file);
      } catch (const SQLite::Exception& exception) {
        return tl::unexpected<Error>(file.error_of(exception));
      }
    } catch (const SQLite::Exception& exception) {
      const int system_code = ::access(path.c_str(), R_OK) == 0 ? 0 : errno;
      return tl::unexpected<Error>(
          sqlite_failure(exception.getExtendedErrorCode(), system_code, exception.what(), path, kind));
    }
  };
  auto done = run();
  if (!done) done.error().place.file = path.string();
  return done;
}

}  // namespace

Expected<std::vector<ShelfYarn>> load_shelf(const fs::path& path, const ShelfOptions& options) {
  std::error_code code;
  if (!fs::exists(path, code) || is_empty_file(path)) return std::vector<ShelfYarn>{};
  if (auto regular = check_regular_file(path); !regular)
    return tl::unexpected<Error>(std::move(regular.error()));
  return with_file(path, SQLite::OPEN_READWRITE, options.wait_ms,
                   [](ProjectDatabase& file) { return read_in(file); });
}

Expected<std::vector<ShelfYarnId>> store_on_shelf(const fs::path& path, std::span<const ShelfYarn> entries,
                                                  const ShelfOptions& options) {
  if (auto sound = check_storable(entries); !sound) return tl::unexpected<Error>(std::move(sound.error()));
  std::error_code code;
  const bool is_there = fs::exists(path, code);
  if (is_there) {
    if (auto regular = check_regular_file(path); !regular)
      return tl::unexpected<Error>(std::move(regular.error()));
  } else if (fs::create_directories(fs::absolute(path).parent_path(), code); code) {
    return tl::unexpected<Error>(system_failure(code.value(), path.parent_path(), "make"));
  }
  const Work<std::vector<ShelfYarnId>> work =
      [&](SQLite::Database& database) -> Expected<std::vector<ShelfYarnId>> {
    std::int64_t last_id = database.execAndGet("SELECT last_id FROM shelf").getInt64();
    TableRows rows(database);
    Eraser eraser(database);
    std::vector<ShelfYarnId> ids;
    for (ShelfYarn entry : entries) {
      if (entry.id)
        eraser.erase(entry.id);
      else
        entry.id = {static_cast<std::uint32_t>(++last_id)};
      last_id = std::max(last_id, std::int64_t{entry.id.value});
      write_entry(rows, entry);
      ids.push_back(entry.id);
    }
    SQLite::Statement keep(database, "UPDATE shelf SET last_id = ?");
    keep.bind(1, last_id);
    keep.exec();
    return ids;
  };
  return with_file(
      path, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE, options.wait_ms,
      [&](ProjectDatabase& file) { return write_in(file, !is_there || is_empty_file(path), work); });
}

Expected<void> drop_from_shelf(const fs::path& path, std::span<const ShelfYarnId> ids,
                               const ShelfOptions& options) {
  std::error_code code;
  if (!fs::exists(path, code) || is_empty_file(path)) return {};
  if (auto regular = check_regular_file(path); !regular)
    return tl::unexpected<Error>(std::move(regular.error()));
  const Work<void> work = [&](SQLite::Database& database) -> Expected<void> {
    Eraser eraser(database);
    for (ShelfYarnId id : ids) eraser.erase(id);
    return {};
  };
  return with_file(path, SQLite::OPEN_READWRITE, options.wait_ms,
                   [&](ProjectDatabase& file) { return write_in(file, false, work); });
}

}  // namespace skeinproof
