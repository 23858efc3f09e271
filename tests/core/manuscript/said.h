// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "core/manuscript/read_manuscript.h"

namespace skeinproof::testing {

// The statements of one kind, each in a line: subject, qualifier, words, values, unit, as "MC: 5 (5 6 7
// skeins". A bracket stands where one opens; a value that is no figure is a dash.
std::vector<std::string> said(std::string_view text, StatementKind kind);

}  // namespace skeinproof::testing
