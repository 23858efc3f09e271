// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/pattern/size_line.h"

#include <cassert>
#include <set>

#include "core/pattern/edits.h"
#include "core/units/read.h"

namespace skeinproof {

Expected<SizeLine> read_size_line(std::string_view text) {
  const std::string wanted = "sizes such as 1 (2, 3, 4) (5, 6, 7)";
  const auto list = read_size_list(text);
  if (!list) return failure(list.error().kind, std::string(text), wanted);
  SizeLine line;
  std::set<std::string> seen;
  for (const auto& label : list->values) {
    if (!label || label->empty())
      return failure(ErrorKind::not_a_quantity, std::string(text), "a name for every size");
    if (!seen.insert(*label).second)
      return failure(ErrorKind::not_a_quantity, *label, "every size named once");
    line.labels.push_back(*label);
  }
  if (line.labels.empty()) return failure(ErrorKind::not_a_quantity, std::string(text), wanted);
  if (line.labels.size() > most_sizes)
    return failure(ErrorKind::out_of_range, std::to_string(line.labels.size()) + " sizes",
                   "at most " + std::to_string(most_sizes));
  line.opens_group = list->opens_group;
  line.opens_group.resize(line.labels.size(), false);
  line.opens_group.front() = false;
  return line;
}

SizeLine size_line(const Pattern& pattern) {
  SizeLine line;
  for (const Size& size : pattern.sizes) {
    line.labels.push_back(size.label);
    line.opens_group.push_back(size.opens_group);
  }
  return line;
}

void set_sizes(Pattern& pattern, const SizeLine& line) {
  assert(!line.labels.empty() && line.opens_group.size() == line.labels.size());
  while (pattern.sizes.size() > line.labels.size()) erase_size(pattern, pattern.sizes.size() - 1);
  while (pattern.sizes.size() < line.labels.size()) insert_size(pattern, pattern.sizes.size(), {});
  for (std::size_t i = 0; i < pattern.sizes.size(); ++i) {
    pattern.sizes[i].label = line.labels[i];
    pattern.sizes[i].opens_group = line.opens_group[i];
  }
}

}  // namespace skeinproof
