// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <string_view>

namespace skeinproof {

// A text that no spreadsheet runs as a formula: one that begins with = + - @ (of full width, too), behind
// spaces or apostrophes as well, or with a tab or a line end, gets an apostrophe before it. `as_typed` takes
// that one off again, so that as_typed(without_formula(x)) is x.
std::string without_formula(std::string_view text);
std::string as_typed(std::string_view cell);

// A cell in quotation marks where it holds one, a line end, outer spaces or one of `separators`.
std::string csv_cell(std::string_view text, std::string_view separators);

}  // namespace skeinproof
