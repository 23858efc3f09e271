// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/file/migrate.h"

#include <algorithm>
#include <array>
#include <string>

namespace skeinproof {

extern const char* const project_schema_2_step;
extern const char* const project_schema_3_step;

std::span<const Migration> migrations() {
  static const std::array steps = {Migration{1, project_schema_2_step}, Migration{2, project_schema_3_step}};
  return steps;
}

Expected<void> migrate(SQLite::Database& copy, int from, int to, std::span<const Migration> steps) {
  if (from > to)
    return failure(ErrorKind::too_new, "schema version " + std::to_string(from),
                   "at most version " + std::to_string(to));
  try {
    SQLite::Transaction transaction(copy);
    for (int version = from; version < to; ++version) {
      const auto step =
          std::find_if(steps.begin(), steps.end(), [&](const Migration& row) { return row.from == version; });
      if (step == steps.end())
        return failure(ErrorKind::damaged, "schema version " + std::to_string(version),
                       "a version that was released");
      copy.exec(std::string(step->sql));
    }
    copy.exec("PRAGMA user_version = " + std::to_string(to));
    transaction.commit();
    return {};
  } catch (const SQLite::Exception& exception) {
    return failure(ErrorKind::damaged, exception.what(),
                   "the tables of schema version " + std::to_string(from));
  }
}

}  // namespace skeinproof
