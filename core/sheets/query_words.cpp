// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheets/query_words.h"

#include <algorithm>

#include "core/base/text.h"

namespace skeinproof {

std::string name_of_draft(const Pattern& pattern) {
  const Draft* draft = pattern.draft();
  if (draft == nullptr) return "the facts as typed";
  return draft->name.empty() ? "your draft" : draft->name;
}

std::string in_one_line(std::string_view words) {
  std::string line = tidy_spaces(words);
  std::replace_if(
      line.begin(), line.end(), [](char c) { return c == '\n' || c == '\r' || c == '\t'; }, ' ');
  return line;
}

std::string counted(std::size_t count, const std::string& word) {
  return std::to_string(count) + " " + word + (count == 1 ? "" : "s");
}

std::string replacement_words(const std::string& before, const std::string& after) {
  const std::string to = after.empty() ? "nothing" : quoted(in_one_line(after));
  return before.empty() ? to : quoted(in_one_line(before)) + " → " + to;
}

std::vector<std::string> reasons_not_checked(const Review& review) {
  std::vector<std::pair<std::string, std::vector<std::string>>> reasons;
  for (const NotChecked& one : review.not_checked) {
    const auto known = std::find_if(reasons.begin(), reasons.end(),
                                    [&](const auto& reason) { return reason.first == one.because; });
    if (known == reasons.end())
      reasons.push_back({one.because, {one.check}});
    else if (std::find(known->second.begin(), known->second.end(), one.check) == known->second.end())
      known->second.push_back(one.check);
  }
  std::vector<std::string> words;
  for (const auto& [because, checks] : reasons) words.push_back(because + " (" + join(checks, ", ") + ")");
  return words;
}

}  // namespace skeinproof
