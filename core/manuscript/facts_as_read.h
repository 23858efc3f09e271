// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "core/manuscript/statement.h"
#include "core/pattern/pattern.h"

namespace skeinproof {

// What taking a reading into the facts in force would change, before it is done.
struct FactChange {
  std::string what;    // "put-up of Oddmere Fieldspun"
  std::string before;  // as in force; empty = unknown
  std::string after;   // as read
};
struct FactsAsRead {
  Pattern pattern;
  std::vector<FactChange> changes;
  std::vector<std::string>
      left_out;  // statements that no fact can hold, and why: "CC2: 8 values for 9 sizes"
};

// The pattern with the facts a text states laid over its own: sizes, measurements, yarns, roles with their
// printed counts and notes, gauges, needles, notions, total line. Roles are matched by label, yarns by name,
// measurements and fabrics by name; what is not there yet is added, nothing is taken away. A list with too
// few or too many values is left out and said so.
FactsAsRead facts_as_read(const Pattern& pattern, std::string_view text, const Reading& reading);

}  // namespace skeinproof
