// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <QStringList>
#include <cstdint>
#include <vector>

#include "core/pattern/pattern.h"

namespace skeinproof {

// Something a person can go to by name: a size (which becomes the chosen one) or a part on a page.
struct GoToTarget {
  QString words;  // "size 5", "MC Peat 08", "Yoke, chart"
  QString page;   // empty for a size
  std::uint32_t part = 0;
};

std::vector<GoToTarget> go_to_targets(const Pattern& pattern, const QStringList& page_names);
// The target whose words begin with what was typed, else the first that holds it; case does not matter.
const GoToTarget* best_target(const std::vector<GoToTarget>& targets, const QString& typed);

}  // namespace skeinproof
