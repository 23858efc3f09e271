// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <SQLiteCpp/SQLiteCpp.h>

#include <span>
#include <string_view>

#include "core/base/error.h"

namespace skeinproof {

// How the tables of one released schema become those of the next.
struct Migration {
  int from;  // to from + 1
  std::string_view sql;
};

// The steps from every released version but the newest, oldest first.
std::span<const Migration> migrations();

// Takes a database, which must be a copy, through the steps from one version to another, in one transaction.
// Failure: too_new or damaged where a step is missing or does not fit. Throws nothing.
Expected<void> migrate(SQLite::Database& copy, int from, int to, std::span<const Migration> steps);

}  // namespace skeinproof
