// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <set>
#include <string>
#include <string_view>

#include "core/review/printed_view.h"

namespace skeinproof {

// A label as it is compared: "Colour A", "yarn A" and "A" are one.
std::string plain_label(std::string_view label);
// Of a plain label.
bool is_main(const std::string& label);
bool is_lone_contrast(const std::string& label);

// The labels of a yarn block.
class RoleLabels {
 public:
  explicit RoleLabels(const PrintedView& printed);
  // The only contrast may be called CC or CC1, and the only colour MC.
  bool holds(std::string_view label) const;

 private:
  std::set<std::string> labels_;
  std::size_t contrasts_ = 0;
};

}  // namespace skeinproof
