// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <SQLiteCpp/SQLiteCpp.h>

#include <string>

#include "core/need/assessment.h"

namespace skeinproof {

// The fingerprint of everything the results of a pattern rest on.
std::string inputs_fingerprint(const Pattern& pattern);

// Writes what was worked out into the empty result_ tables. Figures that are not known or not finite are
// NULL. Throws SQLite::Exception.
void write_result_rows(SQLite::Database& database, const Pattern& pattern, const Assessment& assessment,
                       const std::string& program);

}  // namespace skeinproof
