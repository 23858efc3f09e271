// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <limits>
#include <string>
#include <utility>
#include <vector>

#include "core/base/text.h"
#include "core/file/row_fields.h"

namespace skeinproof {

// Thrown by CellReader where a cell holds what its field cannot.
struct DamagedRow {
  std::string found;
  std::string expected;
};

// Takes the cells of one row in the order in which add_columns gives them.
class CellReader {
 public:
  CellReader(const Row& row, const std::vector<std::string>& names, const std::string& table)
      : row_(row), names_(names), table_(table) {}

  template <class Part>
  void read_part(Part& part) {
    Part::describe(part, [&](const char*, auto& field) {
      if constexpr (!RowsField<std::decay_t<decltype(field)>>) read(field);
    });
  }

  template <class T>
  void read(T& field) {
    if constexpr (OptionalField<T>) {
      read_optional(field);
    } else if constexpr (EnteredField<T>) {
      set_bare(field.value, take<double>("a number"));
      field.typed = text();
    } else if constexpr (IdField<T>) {
      if (is_null())
        ++at_;
      else
        field.value = whole<std::uint32_t>();
    } else if constexpr (WordedEnum<T>) {
      const std::string word = text();
      const auto value = from_word<T>(word);
      if (!value) refuse(skeinproof::quoted(word), "a word of this column");
      field = *value;
    } else if constexpr (TruthField<T>) {
      field = truth();
    } else if constexpr (WholeField<T>) {
      field = whole<T>();
    } else if constexpr (NumberField<T>) {
      field = take<double>("a number");
    } else if constexpr (TextField<T>) {
      field = text();
    } else {
      static_assert(Described<T>);
      read_part(field);
    }
  }

  bool is_null() const { return std::holds_alternative<std::monostate>(row_[at_]); }
  std::int64_t position() { return take<std::int64_t>("a whole number"); }

 private:
  template <class T>
  void read_optional(std::optional<T>& field) {
    std::vector<Column> columns;
    add_columns<T>("", nullptr, columns);
    bool known = false;
    for (std::size_t i = 0; i < columns.size(); ++i)
      known = known || !std::holds_alternative<std::monostate>(row_[at_ + i]);
    if (known)
      read(field.emplace());
    else
      at_ += columns.size();
  }
  template <class T>
  const T& take(const char* expected) {
    const T* value = std::get_if<T>(&row_[at_]);
    if (value == nullptr) refuse(is_null() ? "nothing" : "a value of another type", expected);
    ++at_;
    return *value;
  }
  template <class Whole>
  Whole whole() {
    const std::int64_t value = take<std::int64_t>("a whole number");
    if (value < std::int64_t{std::numeric_limits<Whole>::lowest()} ||
        value > std::int64_t{std::numeric_limits<Whole>::max()}) {
      --at_;
      refuse(std::to_string(value), "a whole number in range");
    }
    return static_cast<Whole>(value);
  }
  // SQLite checks no CHECK of a file that it opens for reading only.
  bool truth() {
    const std::int64_t value = take<std::int64_t>("0 or 1");
    if (value == 0 || value == 1) return value == 1;
    --at_;
    refuse(std::to_string(value), "0 or 1");
  }
  const std::string& text() {
    const std::string& value = take<std::string>("text");
    if (!is_utf8(value)) {
      --at_;
      refuse(skeinproof::quoted(value), "UTF-8 text");
    }
    return value;
  }
  [[noreturn]] void refuse(std::string found, std::string expected) const {
    throw DamagedRow{std::move(found), std::move(expected) + " in " + table_ + "." + names_[at_]};
  }

  const Row& row_;
  const std::vector<std::string>& names_;
  const std::string& table_;
  std::size_t at_ = 0;
};

}  // namespace skeinproof
