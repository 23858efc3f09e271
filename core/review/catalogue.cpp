// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/review/check.h"

namespace skeinproof {

const std::vector<const Check*>& all_checks() {
  static const std::vector<const Check*> all = [] {
    std::vector<const Check*> rows;
    for (const auto family :
         {put_up_checks(), fibre_checks(), description_checks(), role_checks(), list_checks(), need_checks(),
          gauge_checks(), measurement_checks(), care_checks(), text_checks()})
      for (const Check& check : family) rows.push_back(&check);
    return rows;
  }();
  return all;
}

const Check* check_by_id(std::string_view id) {
  const auto& all = all_checks();
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const Check* check) { return check->id == id; });
  return found == all.end() ? nullptr : *found;
}

}  // namespace skeinproof
