// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <map>
#include <numeric>

#include "core/base/text.h"
#include "core/manuscript/facts_parts.h"
#include "core/pattern/edits.h"
#include "core/pattern/size_line.h"

namespace skeinproof {
namespace {

SizeLine numbered(const std::vector<PrintedValue>& values) {
  SizeLine line;
  for (std::size_t i = 0; i < values.size(); ++i) {
    line.labels.push_back(std::to_string(i + 1));
    line.opens_group.push_back(i > 0 && values[i].opens_group);
  }
  return line;
}

SizeLine printed_line(const FactsTaken& taken, const Statement& statement) {
  SizeLine line = numbered(statement.values);
  for (std::size_t i = 0; i < line.labels.size(); ++i)
    line.labels[i] = tidy_spaces(taken.words(statement.values[i].span));
  return line;
}

// Where no line names the sizes of a pattern that has one only, the lists tell how many there are: the
// number of values most of them have.
const Statement* list_that_counts_sizes(const FactsTaken& taken) {
  std::map<std::size_t, int> lists;
  const Statement* most = nullptr;
  for (const StatementKind kind :
       {StatementKind::count, StatementKind::measurement, StatementKind::total_count})
    for (const Statement* statement : taken.all(kind)) {
      const std::size_t values = statement->values.size();
      if (values < 2 || values > most_sizes) continue;
      ++lists[values];
      if (most == nullptr || lists[values] > lists[most->values.size()]) most = statement;
    }
  return most;
}

std::string doubled_label(const SizeLine& line) {
  std::set<std::string> seen;
  for (const std::string& label : line.labels)
    if (label.empty() || !seen.insert(label).second) return label;
  return {};
}

// The sizes in force stand in the line as printed, further ones between them: those are put in.
bool put_in_further_sizes(Pattern& pattern, const SizeLine& line) {
  std::size_t at = 0;
  for (const std::string& label : line.labels)
    if (at < pattern.sizes.size() && pattern.sizes[at].label == label) ++at;
  if (at != pattern.sizes.size()) return false;
  for (std::size_t i = 0; i < line.labels.size(); ++i)
    if (i >= pattern.sizes.size() || pattern.sizes[i].label != line.labels[i])
      insert_size(pattern, i, line.labels[i]);
  return true;
}

void one_place_each(FactsTaken& taken, std::size_t sizes) {
  taken.size_places.resize(sizes);
  for (std::size_t i = 0; i < sizes; ++i) taken.size_places[i] = i;
}

void name_sizes(FactsTaken& taken, SizeLine line) {
  put_in_further_sizes(taken.pattern, line);
  const SizeLine now = size_line(taken.pattern);
  // One bracket, or none, says nothing of the groups.
  const bool grouped = std::count(line.opens_group.begin(), line.opens_group.end(), true) > 1;
  if (!grouped && now.labels == line.labels) line.opens_group = now.opens_group;
  if (!(now == line)) set_sizes(taken.pattern, line);
  one_place_each(taken, line.labels.size());
}

// A text that speaks of some of the sizes takes none away.
void find_some_sizes(FactsTaken& taken, const SizeLine& line) {
  std::vector<std::string> unknown;
  for (const std::string& label : line.labels) {
    taken.size_places.push_back(taken.pattern.size_index(label));
    if (!taken.size_places.back()) unknown.push_back(label);
  }
  if (!unknown.empty())
    taken.left_out.push_back("sizes: " + std::to_string(line.labels.size()) + " where " +
                             std::to_string(taken.pattern.sizes.size()) +
                             " are in force, and none is named " + join(unknown, ", "));
}

}  // namespace

void take_sizes(FactsTaken& taken) {
  const auto& lines = taken.all(StatementKind::size_labels);
  const std::size_t in_force = taken.pattern.sizes.size();
  if (lines.empty() || lines.front()->values.empty()) {
    const Statement* list = in_force == 1 ? list_that_counts_sizes(taken) : nullptr;
    if (list != nullptr) return name_sizes(taken, numbered(list->values));
    return one_place_each(taken, in_force);
  }
  const Statement& statement = *lines.front();
  if (statement.values.size() > most_sizes) {
    taken.left_out.push_back("sizes: " + std::to_string(statement.values.size()) + " of them, at most " +
                             std::to_string(most_sizes) + " can be held");
    return one_place_each(taken, in_force);
  }
  const SizeLine line = printed_line(taken, statement);
  const std::string doubled = doubled_label(line);
  const bool named =
      doubled.empty() && std::find(line.labels.begin(), line.labels.end(), "") == line.labels.end();
  if (named && (line.labels.size() >= in_force)) return name_sizes(taken, line);
  if (named) return find_some_sizes(taken, line);
  taken.left_out.push_back("sizes: " + quoted(doubled) + " does not name one size");
  if (in_force == 1) return name_sizes(taken, numbered(statement.values));
  if (in_force == line.labels.size()) return one_place_each(taken, in_force);
  taken.size_places.resize(line.labels.size());
}

}  // namespace skeinproof
