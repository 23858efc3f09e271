// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <vector>

#include "core/file/field_kinds.h"
#include "core/file/table_rows.h"

namespace skeinproof {

// The fields of a part that lie in columns of its own row; the others are rows of other tables.
template <class T>
concept RowsField = ListField<T> || PerSizeField<T> || SharedField<T>;

inline std::string typed_column(const std::string& name) { return name + "_typed"; }

// "piece_sections" -> "piece_section"; what the rows that belong to a row of this table call it.
inline std::string singular(const std::string& table) {
  return table.ends_with('s') ? table.substr(0, table.size() - 1) : table;
}

template <class T>
void add_columns(const std::string& name, const T* value, std::vector<Column>& columns);

template <class Part>
void add_part_columns(const std::string& prefix, const Part* part, std::vector<Column>& columns) {
  static const Part nothing{};
  Part::describe(part != nullptr ? *part : nothing, [&](const char* name, const auto& field) {
    if constexpr (!RowsField<std::decay_t<decltype(field)>>)
      add_columns(prefix + name, part != nullptr ? &field : nullptr, columns);
  });
}

// The columns one field takes, with its cells; without a value all of them are NULL.
template <class T>
void add_columns(const std::string& name, const T* value, std::vector<Column>& columns) {
  if constexpr (OptionalField<T>) {
    add_columns(name, value != nullptr && *value ? &**value : nullptr, columns);
  } else if constexpr (Described<T>) {
    add_part_columns(name + "_", value, columns);
  } else if constexpr (EnteredField<T>) {
    columns.emplace_back(name, value != nullptr ? Cell(bare(value->value)) : Cell());
    columns.emplace_back(typed_column(name), value != nullptr ? Cell(value->typed) : Cell());
  } else if (value == nullptr) {
    columns.emplace_back(name, Cell());
  } else if constexpr (IdField<T>) {
    columns.emplace_back(name, *value ? Cell(std::int64_t{value->value}) : Cell());
  } else if constexpr (WordedEnum<T>) {
    columns.emplace_back(name, std::string(word_of(*value)));
  } else if constexpr (TruthField<T> || WholeField<T>) {
    columns.emplace_back(name, static_cast<std::int64_t>(*value));
  } else {
    static_assert(TextField<T> || NumberField<T>);
    columns.emplace_back(name, *value);
  }
}

// The columns of a list's item: its fields, or the item itself as "value".
template <class Item>
void add_item_columns(const Item* item, std::vector<Column>& columns) {
  if constexpr (Described<Item>)
    add_part_columns("", item, columns);
  else
    add_columns("value", item, columns);
}

template <class Item>
std::vector<std::string> column_names() {
  std::vector<Column> columns;
  add_item_columns<Item>(nullptr, columns);
  std::vector<std::string> names;
  for (const Column& column : columns) names.push_back(column.first);
  return names;
}

}  // namespace skeinproof
