// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/bench/places.h"

namespace skeinproof {

void Places::went_to(WindowPlace place) {
  if (!places_.empty() && places_[at_] == place) return;
  if (!places_.empty()) places_.resize(at_ + 1);
  places_.push_back(place);
  at_ = places_.size() - 1;
}

std::optional<WindowPlace> Places::back() {
  if (!can_go_back()) return std::nullopt;
  return places_[--at_];
}

std::optional<WindowPlace> Places::forward() {
  if (!can_go_forward()) return std::nullopt;
  return places_[++at_];
}

void Places::forget() {
  places_.clear();
  at_ = 0;
}

}  // namespace skeinproof
