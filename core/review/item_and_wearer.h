// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>

#include "core/pattern/item_kind.h"
#include "core/pattern/wearer_age.h"
#include "core/review/check.h"

namespace skeinproof {

// What the checks take an item to be, by the words of the text or else of the facts.
struct ItemRead {
  ItemKind kind = ItemKind::unknown;
  std::string words;                 // lower case: item and title, of the text and of the facts
  const Statement* shown = nullptr;  // the printed item or title, where there is one
};
ItemRead item_of(const ReviewInput& input);

// Whose sizes are among those of the pattern, by ages in the size labels ("0–3 months", "2T", "4–6 years")
// and words of the wearer. Without an age, "child" stands for every age of a child.
struct Wearers : WearerAges {
  const Statement* shown = nullptr;  // where they are printed
};
Wearers wearers_of(const ReviewInput& input);

}  // namespace skeinproof
