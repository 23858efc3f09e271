// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/file/schema.h"

#include <array>
#include <string>

#include "core/file/migrate.h"

namespace skeinproof {

extern const char* const project_schema_1;

std::string_view project_schema(int version) {
  static const auto schemas = [] {
    std::array<std::string, project_schema_version> all;
    all[0] = project_schema_1;
    for (const Migration& step : migrations()) {
      const auto from = static_cast<std::size_t>(step.from);
      all[from] = all[from - 1] + std::string(step.sql);
    }
    return all;
  }();
  if (version < 1 || version > project_schema_version) return {};
  return schemas[static_cast<std::size_t>(version) - 1];
}

}  // namespace skeinproof
