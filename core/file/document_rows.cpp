// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/file/document_rows.h"

#include "core/file/cell_reader.h"
#include "core/file/row_fields.h"

namespace skeinproof {
namespace {

using Key = std::vector<Column>;
constexpr const char* document_table = "pattern";

template <class Part>
concept HasId = requires(Part part) {
  part.id.value;
};

std::vector<std::string> names_of(const Key& key) {
  std::vector<std::string> names;
  for (const Column& column : key) names.push_back(column.first);
  return names;
}

// The key by which rows that belong to a part name it.
template <class Part>
Key key_of(const Part& part, const std::string& table, const Key& owner, std::int64_t position) {
  const std::string name = singular(table);
  if constexpr (HasId<Part>) {
    return {{name, std::int64_t{part.id.value}}};
  } else {
    Key key = owner;
    key.emplace_back(name, position);
    return key;
  }
}

std::string table_of(const std::string& owner, const char* list) {
  return owner.empty() ? list : singular(owner) + "_" + list;
}

class Writer {
 public:
  Writer(SQLite::Database& database, const Pattern& pattern) : rows_(database), sizes_(pattern.sizes) {}

  void write(const Pattern& pattern) {
    std::vector<Column> columns = {{"only_row", std::int64_t{1}}};
    add_part_columns("", &pattern, columns);
    rows_.insert(document_table, columns);
    write_lists(pattern, "", {});
  }

 private:
  template <class Part>
  void write_lists(const Part& part, const std::string& table, const Key& key) {
    Part::describe(part, [&](const char* name, const auto& field) {
      if constexpr (RowsField<std::decay_t<decltype(field)>>) write_list(field, table_of(table, name), key);
    });
  }
  template <class List>
  void write_list(const Shared<List>& list, const std::string& table, const Key& owner) {
    write_list(*list, table, owner);
  }
  template <class Item>
  void write_list(const std::vector<Item>& list, const std::string& table, const Key& owner) {
    for (std::size_t i = 0; i < list.size(); ++i) {
      const auto position = static_cast<std::int64_t>(i + 1);
      std::vector<Column> columns = owner;
      columns.emplace_back("position", position);
      add_item_columns(&list[i], columns);
      rows_.insert(table, columns);
      if constexpr (Described<Item>) write_lists(list[i], table, key_of(list[i], table, owner, position));
    }
  }
  template <class T>
  void write_list(const PerSize<T>& list, const std::string& table, const Key& owner) {
    for (std::size_t i = 0; i < list.size() && i < sizes_.size(); ++i) {
      const T* value = list.find(i);
      if (value == nullptr) continue;
      std::vector<Column> columns = owner;
      columns.emplace_back("size", std::int64_t{sizes_[i].id.value});
      columns.emplace_back("value", bare(value->value));
      columns.emplace_back("typed", value->typed);
      rows_.insert(table, columns);
    }
  }

  TableRows rows_;
  const std::vector<Size>& sizes_;
};

class Reader {
 public:
  explicit Reader(SQLite::Database& database) : rows_(database) {}

  Pattern read() {
    const std::vector<std::string> names = column_names<Pattern>();
    const std::vector<Row> rows = rows_.select(document_table, names, {}, "");
    if (rows.size() != 1) throw DamagedRow{std::to_string(rows.size()) + " rows", "one row in pattern"};
    Pattern pattern;
    CellReader(rows[0], names, document_table).read_part(pattern);
    sizes_ = &pattern.sizes;
    read_lists(pattern, "", {});
    return pattern;
  }

 private:
  template <class Part>
  void read_lists(Part& part, const std::string& table, const Key& key) {
    Part::describe(part, [&](const char* name, auto& field) {
      if constexpr (RowsField<std::decay_t<decltype(field)>>) read_list(field, table_of(table, name), key);
    });
  }
  template <class List>
  void read_list(Shared<List>& list, const std::string& table, const Key& owner) {
    list.edit([&](List& items) { read_list(items, table, owner); });
  }
  template <class Item>
  void read_list(std::vector<Item>& list, const std::string& table, const Key& owner) {
    std::vector<std::string> names = column_names<Item>();
    names.insert(names.begin(), "position");
    list.clear();
    for (const Row& row : rows_.select(table, names, owner, "position")) {
      CellReader cells(row, names, table);
      const std::int64_t position = cells.position();
      Item& item = list.emplace_back();
      cells.read(item);
      if constexpr (Described<Item>) read_lists(item, table, key_of(item, table, owner, position));
    }
  }
  template <class T>
  void read_list(PerSize<T>& list, const std::string& table, const Key& owner) {
    const std::vector<std::string> names = {"size", "value", "typed"};
    typename PerSize<T>::List values;
    for (const Row& row : rows_.select(table, names, owner, "")) {
      CellReader cells(row, names, table);
      SizeId size;
      cells.read(size);
      const std::size_t index = index_of(size, table);
      if (values.size() <= index) values.resize(index + 1);
      cells.read(values[index].emplace());
    }
    if (!values.empty()) list = PerSize<T>(std::move(values));
  }
  std::size_t index_of(SizeId id, const std::string& table) const {
    for (std::size_t i = 0; i < sizes_->size(); ++i)
      if ((*sizes_)[i].id == id) return i;
    throw DamagedRow{"size " + std::to_string(id.value), "a size of the pattern in " + table};
  }

  TableRows rows_;
  const std::vector<Size>* sizes_ = nullptr;
};

using Tables = std::map<std::string, std::vector<std::string>>;

template <class Part>
void add_tables(const std::string& table, const Key& owner, Tables& tables);

template <class Item>
void add_list_table(const std::vector<Item>&, const std::string& table, const Key& owner, Tables& tables) {
  std::vector<std::string>& columns = tables[table] = names_of(owner);
  columns.push_back("position");
  for (std::string& name : column_names<Item>()) columns.push_back(std::move(name));
  if constexpr (Described<Item>) add_tables<Item>(table, key_of(Item{}, table, owner, 0), tables);
}
template <class List>
void add_list_table(const Shared<List>& list, const std::string& table, const Key& owner, Tables& tables) {
  add_list_table(*list, table, owner, tables);
}
template <class T>
void add_list_table(const PerSize<T>&, const std::string& table, const Key& owner, Tables& tables) {
  std::vector<std::string>& columns = tables[table] = names_of(owner);
  columns.insert(columns.end(), {"size", "value", "typed"});
}

template <class Part>
void add_tables(const std::string& table, const Key& owner, Tables& tables) {
  const Part nothing{};
  Part::describe(nothing, [&](const char* name, const auto& field) {
    if constexpr (RowsField<std::decay_t<decltype(field)>>)
      add_list_table(field, table_of(table, name), owner, tables);
  });
}

}  // namespace

void write_document_rows(SQLite::Database& database, const Pattern& pattern) {
  Writer(database, pattern).write(pattern);
}

Expected<Pattern> read_document_rows(SQLite::Database& database) {
  try {
    return Reader(database).read();
  } catch (const DamagedRow& row) {
    return failure(ErrorKind::damaged, row.found, row.expected);
  }
}

std::map<std::string, std::vector<std::string>> document_tables() {
  Tables tables;
  std::vector<std::string>& columns = tables[document_table] = {"only_row"};
  for (std::string& name : column_names<Pattern>()) columns.push_back(std::move(name));
  add_tables<Pattern>("", {}, tables);
  return tables;
}

}  // namespace skeinproof
