// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <SQLiteCpp/SQLiteCpp.h>

#include <cstdint>
#include <functional>
#include <map>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace skeinproof {

// One value of a table: NULL, a whole number, a number or text.
using Cell = std::variant<std::monostate, std::int64_t, double, std::string>;
using Column = std::pair<std::string, Cell>;
using Row = std::vector<Cell>;

// Rows into and out of the tables of one open database. A table is always asked for the same columns by the
// same key, so that its statement is prepared once. Throws SQLite::Exception.
class TableRows {
 public:
  explicit TableRows(SQLite::Database& database) : database_(database) {}

  void insert(const std::string& table, const std::vector<Column>& columns);
  // The rows whose `key` columns have these values, in the order of the column `order`, if there is one.
  std::vector<Row> select(const std::string& table, const std::vector<std::string>& columns,
                          const std::vector<Column>& key, const std::string& order);
  // All rows of a table one by one, for large ones.
  void for_each(const std::string& table, const std::vector<std::string>& columns, const std::string& order,
                const std::function<void(const Row&)>& take);

 private:
  template <class MakeSql>
  SQLite::Statement& prepared(const std::string& table, MakeSql&& make_sql);

  SQLite::Database& database_;
  std::map<std::string, SQLite::Statement> statements_;
};

}  // namespace skeinproof
