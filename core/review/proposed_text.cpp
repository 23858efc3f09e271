// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/proposed_text.h"

#include <algorithm>

namespace skeinproof {
namespace {

struct Laid {
  TextEdit edit;
  std::size_t cause;
};

bool comes_before(const TextEdit& a, const TextEdit& b) {
  return a.span.begin < b.span.begin || (a.span.begin == b.span.begin && a.span.end < b.span.end);
}

// Whether the two change the same characters, or put words in at the same place.
bool meet(const TextEdit& a, const TextEdit& b) {
  if (a.span == b.span) return true;
  return a.span.begin < b.span.end && b.span.begin < a.span.end;
}

// One that a graver cause laid already is no clash: the same words answer both.
bool can_lay(const TextEdit& edit, const std::vector<Laid>& laid) {
  return std::none_of(laid.begin(), laid.end(),
                      [&](const Laid& one) { return meet(one.edit, edit) && one.edit != edit; });
}

}  // namespace

ProposedText proposed_text(const Review& review, const Record& record) {
  ProposedText proposed;
  std::vector<Laid> laid;
  for (std::size_t cause = 0; cause < review.causes.size(); ++cause) {
    if (!record.decisions[cause].undecided()) continue;
    const auto edits = proposed_answer(review, cause);
    const bool fits =
        std::all_of(edits.begin(), edits.end(), [&](const TextEdit& edit) { return can_lay(edit, laid); });
    if (!fits) proposed.left_out.push_back(cause);
    for (const TextEdit& edit : edits)
      if (fits && std::none_of(laid.begin(), laid.end(), [&](const Laid& one) { return one.edit == edit; }))
        laid.push_back({edit, cause});
  }
  std::stable_sort(laid.begin(), laid.end(),
                   [](const Laid& a, const Laid& b) { return comes_before(a.edit, b.edit); });
  std::size_t done = 0;
  for (const Laid& one : laid) {
    if (one.edit.span.end > review.text.size() || one.edit.span.begin < done) continue;
    proposed.text.append(review.text, done, one.edit.span.begin - done);
    const std::size_t begin = proposed.text.size();
    proposed.text += one.edit.after;
    proposed.changes.push_back({{begin, proposed.text.size()}, one.cause});
    proposed.edits.push_back(one.edit);
    done = one.edit.span.end;
  }
  proposed.text.append(review.text, done);
  return proposed;
}

}  // namespace skeinproof
