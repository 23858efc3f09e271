// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/file/table_rows.h"

#include "core/base/text.h"

namespace skeinproof {
namespace {

std::string as_name(const std::string& name) { return "\"" + name + "\""; }

void bind(SQLite::Statement& statement, int index, const Cell& cell) {
  if (const auto* whole = std::get_if<std::int64_t>(&cell))
    statement.bind(index, *whole);
  else if (const auto* number = std::get_if<double>(&cell))
    statement.bind(index, *number);
  else if (const auto* text = std::get_if<std::string>(&cell))
    statement.bind(index, *text);
  else
    statement.bind(index);
}

Cell cell_of(const SQLite::Column& column) {
  if (column.isInteger()) return column.getInt64();
  if (column.isFloat()) return column.getDouble();
  if (column.isText() || column.isBlob()) return column.getString();
  return {};
}

std::string insert_sql(const std::string& table, const std::vector<Column>& columns) {
  std::vector<std::string> names;
  for (const Column& column : columns) names.push_back(as_name(column.first));
  const std::vector<std::string> marks(names.size(), "?");
  return "INSERT INTO " + as_name(table) + " (" + join(names, ", ") + ") VALUES (" + join(marks, ", ") + ")";
}

std::string select_sql(const std::string& table, const std::vector<std::string>& columns,
                       const std::vector<Column>& key, const std::string& order) {
  std::vector<std::string> names;
  for (const std::string& column : columns) names.push_back(as_name(column));
  std::string sql = "SELECT " + join(names, ", ") + " FROM " + as_name(table);
  const char* before = " WHERE ";
  for (const Column& part : key) {
    sql += before + as_name(part.first) + " = ?";
    before = " AND ";
  }
  return order.empty() ? sql : sql + " ORDER BY " + as_name(order);
}

}  // namespace

template <class MakeSql>
SQLite::Statement& TableRows::prepared(const std::string& table, MakeSql&& make_sql) {
  auto found = statements_.find(table);
  if (found == statements_.end()) found = statements_.try_emplace(table, database_, make_sql()).first;
  found->second.reset();
  return found->second;
}

void TableRows::insert(const std::string& table, const std::vector<Column>& columns) {
  SQLite::Statement& statement = prepared(table, [&] { return insert_sql(table, columns); });
  for (std::size_t i = 0; i < columns.size(); ++i)
    bind(statement, static_cast<int>(i) + 1, columns[i].second);
  statement.exec();
}

std::vector<Row> TableRows::select(const std::string& table, const std::vector<std::string>& columns,
                                   const std::vector<Column>& key, const std::string& order) {
  SQLite::Statement& statement = prepared(table, [&] { return select_sql(table, columns, key, order); });
  for (std::size_t i = 0; i < key.size(); ++i) bind(statement, static_cast<int>(i) + 1, key[i].second);
  std::vector<Row> rows;
  while (statement.executeStep()) {
    Row& row = rows.emplace_back();
    for (int i = 0; i < static_cast<int>(columns.size()); ++i) row.push_back(cell_of(statement.getColumn(i)));
  }
  statement.reset();
  return rows;
}

void TableRows::for_each(const std::string& table, const std::vector<std::string>& columns,
                         const std::string& order, const std::function<void(const Row&)>& take) {
  SQLite::Statement statement(database_, select_sql(table, columns, {}, order));
  Row row(columns.size());
  while (statement.executeStep()) {
    for (int i = 0; i < static_cast<int>(columns.size()); ++i)
      row[static_cast<std::size_t>(i)] = cell_of(statement.getColumn(i));
    take(row);
  }
}

}  // namespace skeinproof
