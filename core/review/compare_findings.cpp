// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/compare_findings.h"

#include <algorithm>
#include <map>
#include <string>

namespace skeinproof {
namespace {

enum class Fate { unknown, same, narrowed };

std::string without_sizes(const Finding& finding) {
  Finding key = finding;
  key.sizes.clear();
  return key.key();
}

bool within(const std::vector<std::string>& some, const std::vector<std::string>& all) {
  return std::all_of(some.begin(), some.end(), [&](const std::string& size) {
    return std::find(all.begin(), all.end(), size) != all.end();
  });
}

}  // namespace

FindingChange compare_findings(const std::vector<Finding>& before, const std::vector<Finding>& after) {
  std::multimap<std::string, std::size_t> by_key;
  for (std::size_t i = 0; i < before.size(); ++i) by_key.emplace(before[i].key(), i);
  std::vector<bool> kept(before.size(), false);
  FindingChange change;
  std::vector<std::size_t> unmatched;
  for (std::size_t j = 0; j < after.size(); ++j) {
    const auto found = by_key.find(after[j].key());
    if (found == by_key.end()) {
      unmatched.push_back(j);
      continue;
    }
    kept[found->second] = true;
    if (after[j].severity < before[found->second].severity) change.opens.push_back(j);
    by_key.erase(found);
  }
  for (const std::size_t j : unmatched) {
    bool narrowed = false;
    for (std::size_t i = 0; i < before.size(); ++i) {
      if (before[i].check != after[j].check || without_sizes(before[i]) != without_sizes(after[j])) continue;
      const bool inside = !after[j].sizes.empty() && within(after[j].sizes, before[i].sizes);
      const bool wider = !before[i].sizes.empty() && within(before[i].sizes, after[j].sizes);
      if (inside || wider) kept[i] = true;
      narrowed = narrowed || (inside && after[j].severity >= before[i].severity);
    }
    if (!narrowed) change.opens.push_back(j);
  }
  for (std::size_t i = 0; i < before.size(); ++i) (kept[i] ? change.stays : change.closes).push_back(i);
  std::sort(change.opens.begin(), change.opens.end());
  return change;
}

}  // namespace skeinproof
