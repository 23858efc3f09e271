// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/listed.h"

namespace skeinproof {

std::string listed(const std::vector<std::string>& words) {
  std::string all;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) all += i + 1 == words.size() ? " and " : ", ";
    all += words[i];
  }
  return all;
}

}  // namespace skeinproof
