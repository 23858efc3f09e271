// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/substitution/integer_plan.h"

#include <glpk.h>

#include <cmath>
#include <memory>

namespace skeinproof {
namespace {

struct Delete {
  void operator()(glp_prob* problem) const { glp_delete_prob(problem); }
};
using Problem = std::unique_ptr<glp_prob, Delete>;

}  // namespace

std::optional<std::vector<double>> IntegerPlan::solve() const {
  glp_term_out(GLP_OFF);
  const Problem problem(glp_create_prob());
  glp_prob* p = problem.get();
  glp_set_obj_dir(p, GLP_MIN);
  if (!columns_.empty()) glp_add_cols(p, static_cast<int>(columns_.size()));
  for (std::size_t i = 0; i < columns_.size(); ++i) {
    const ColumnData& column = columns_[i];
    const int at = static_cast<int>(i) + 1;
    // Kind before bounds: a yes or no sets its own.
    glp_set_col_kind(p, at, column.kind == Kind::amount ? GLP_CV : GLP_IV);
    glp_set_col_bnds(p, at, column.low < column.high ? GLP_DB : GLP_FX, column.low, column.high);
    glp_set_obj_coef(p, at, column.cost);
  }
  std::vector<int> row_of(1, 0), column_of(1, 0);
  std::vector<double> value_of(1, 0);
  if (!rows_.empty()) glp_add_rows(p, static_cast<int>(rows_.size()));
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    const RowData& row = rows_[i];
    const int kind = row.kind == Row::equal ? GLP_FX : row.kind == Row::at_least ? GLP_LO : GLP_UP;
    glp_set_row_bnds(p, static_cast<int>(i) + 1, kind, row.bound, row.bound);
    for (const auto& [column, value] : row.terms) {
      if (value == 0) continue;
      row_of.push_back(static_cast<int>(i) + 1);
      column_of.push_back(column + 1);
      value_of.push_back(value);
    }
  }
  glp_load_matrix(p, static_cast<int>(value_of.size()) - 1, row_of.data(), column_of.data(), value_of.data());
  glp_iocp how;
  glp_init_iocp(&how);
  how.msg_lev = GLP_MSG_OFF;
  how.presolve = GLP_ON;
  how.br_tech = GLP_BR_DTH;
  if (glp_intopt(p, &how) != 0 || glp_mip_status(p) != GLP_OPT) return std::nullopt;
  std::vector<double> values(columns_.size());
  for (std::size_t i = 0; i < values.size(); ++i) {
    values[i] = glp_mip_col_val(p, static_cast<int>(i) + 1);
    if (columns_[i].kind != Kind::amount) values[i] = std::round(values[i]);
  }
  return values;
}

}  // namespace skeinproof
