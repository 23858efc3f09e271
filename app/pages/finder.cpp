// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages/finder.h"

namespace skeinproof {

bool Finder::find_next(const std::vector<FindPlace>& places, const QString& words) {
  if (words != words_) next_ = 0;
  words_ = words;
  if (words.isEmpty()) return false;
  for (std::size_t step = 0; step < places.size(); ++step) {
    const std::size_t at = (next_ + step) % places.size();
    if (!places[at].text.contains(words, Qt::CaseInsensitive)) continue;
    places[at].show();
    next_ = at + 1;
    return true;
  }
  return false;
}

}  // namespace skeinproof
