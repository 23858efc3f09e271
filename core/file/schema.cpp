// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/file/schema.h"

namespace skeinproof {

extern const char* const project_schema_1;

std::string_view project_schema(int version) { return version == 1 ? project_schema_1 : std::string_view(); }

}  // namespace skeinproof
