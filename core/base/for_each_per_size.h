// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <vector>

#include "core/base/describe.h"
#include "core/base/per_size.h"

namespace skeinproof {

// Calls `visit` on every PerSize list inside a described value, at any depth.
template <class T, class Visit>
void for_each_per_size(T&, Visit&&) {}

template <class T, class Visit>
void for_each_per_size(PerSize<T>& list, Visit&& visit) {
  visit(list);
}
template <class T, class Visit>
void for_each_per_size(std::vector<T>& parts, Visit&& visit);

template <Described T, class Visit>
void for_each_per_size(T& value, Visit&& visit) {
  T::describe(value, [&](const char*, auto& field) { for_each_per_size(field, visit); });
}
template <class T, class Visit>
void for_each_per_size(std::vector<T>& parts, Visit&& visit) {
  for (T& part : parts) for_each_per_size(part, visit);
}

}  // namespace skeinproof
