// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <QString>
#include <functional>
#include <vector>

namespace skeinproof {

// A text of a page and how to bring it into view.
struct FindPlace {
  QString text;
  std::function<void()> show;
};

// Goes round the places of a page whose text holds the words, whatever their case. Each call goes on behind
// the place shown last, while the words stay the same.
class Finder {
 public:
  bool find_next(const std::vector<FindPlace>& places, const QString& words);

 private:
  QString words_;
  std::size_t next_ = 0;
};

}  // namespace skeinproof
