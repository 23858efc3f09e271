// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/role_labels.h"

#include <algorithm>

#include "core/review/finding_words.h"

namespace skeinproof {

std::string plain_label(std::string_view label) {
  std::string plain = compared(label);
  for (const std::string_view before : {"colour ", "color ", "yarn ", "shade "})
    if (plain.rfind(before, 0) == 0) plain.erase(0, before.size());
  return plain;
}

bool is_main(const std::string& label) {
  return label == "mc" || label == "m" || label == "main colour" || label == "main color" || label == "main";
}
bool is_lone_contrast(const std::string& label) {
  return label == "cc" || label == "cc1" || label == "c" || label == "contrast colour" ||
         label == "contrast color" || label == "contrast";
}

RoleLabels::RoleLabels(const PrintedView& printed) {
  for (const PrintedRole& role : printed.roles()) labels_.insert(plain_label(role.label));
  contrasts_ = static_cast<std::size_t>(
      std::count_if(labels_.begin(), labels_.end(), [](const auto& label) { return !is_main(label); }));
}

bool RoleLabels::holds(std::string_view label) const {
  const std::string plain = plain_label(label);
  if (plain.empty() || labels_.count(plain) > 0) return true;
  const bool one_contrast =
      contrasts_ == 1 &&
      std::any_of(labels_.begin(), labels_.end(), [](const auto& one) { return is_lone_contrast(one); });
  if (is_lone_contrast(plain) && one_contrast) return true;
  return labels_.size() == 1 && is_main(plain) && (is_main(*labels_.begin()) || labels_.begin()->empty());
}

}  // namespace skeinproof
