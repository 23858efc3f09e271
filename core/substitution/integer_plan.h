// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <utility>
#include <vector>

namespace skeinproof {

// A small integer plan: least cost under linear rows, solved by GLPK. All figures finite.
class IntegerPlan {
 public:
  using Column = int;
  using Terms = std::vector<std::pair<Column, double>>;  // a column may stand in a row once

  Column yes_or_no(double cost = 0) { return add({Kind::yes_or_no, 0, 1, cost}); }
  Column whole(double most, double cost = 0) { return add({Kind::whole, 0, most, cost}); }
  Column amount(double most, double cost = 0) { return add({Kind::amount, 0, most, cost}); }

  void at_most(Terms terms, double bound) { rows_.push_back({std::move(terms), bound, Row::at_most}); }
  void at_least(Terms terms, double bound) { rows_.push_back({std::move(terms), bound, Row::at_least}); }
  void equal(Terms terms, double bound) { rows_.push_back({std::move(terms), bound, Row::equal}); }

  // A value for each column, proven to cost the least; absent where the rows allow none. Whole columns are
  // rounded to whole numbers; rows hold within 1e-6 of their own size.
  std::optional<std::vector<double>> solve() const;
  std::size_t columns() const { return columns_.size(); }
  std::size_t rows() const { return rows_.size(); }

 private:
  enum class Kind { yes_or_no, whole, amount };
  enum class Row { at_most, at_least, equal };
  struct ColumnData {
    Kind kind;
    double low, high, cost;
  };
  struct RowData {
    Terms terms;
    double bound;
    Row kind;
  };
  Column add(ColumnData column) {
    columns_.push_back(column);
    return static_cast<Column>(columns_.size()) - 1;
  }
  std::vector<ColumnData> columns_;
  std::vector<RowData> rows_;
};

}  // namespace skeinproof
