// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/review/check.h"

namespace skeinproof {

// A printed figure and the figure that takes its place.
struct FigureEdit {
  std::size_t statement = 0, value = 0;  // indices into the reading and the statement
  std::string after;
};

// The reading of a text in which figures alone gave way to figures, worked out from the reading before
// instead of reading all of it again. Absent where that is not safe: the new words are no plain figure, two
// edits meet, or the figure is part of the words of a statement.
std::optional<Reading> edited_reading(const Reading& before, std::string_view text,
                                      const std::vector<FigureEdit>& edits);

// The kinds of the statements in which two readings differ, wherever in the text they stand; every kind where
// the parts of the document differ.
StatementKinds kinds_that_differ(const Reading& one, const Reading& other);

}  // namespace skeinproof
