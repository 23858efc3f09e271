// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/review/review.h"

namespace skeinproof {

// The statement at a place of the text in force, the innermost; none where nothing was read.
std::optional<std::size_t> statement_at(const Reading& reading, std::size_t byte);

// One statement along the sizes: each row in the order of the columns, as many as stand there.
struct StatementAlong {
  std::string name;                  // "MC, count, skeins"
  std::vector<std::string> columns;  // labels of the sizes; none where it is one value for all of them
  std::vector<bool> opens_group;
  std::vector<std::string> submitted;  // in the draft, before any reply
  std::vector<std::string> read;       // the figures, with the unit in the name
  std::vector<std::string> in_force;   // the facts as typed or taken over; empty where there are none
  std::vector<std::string> proposed;   // with `proposals`, edits of the text in force, laid in
  std::string count_words;             // "8 values for 9 sizes"
};
StatementAlong statement_along(const Pattern& pattern, const Review& review, std::size_t statement,
                               const std::vector<TextEdit>& proposals);

}  // namespace skeinproof
