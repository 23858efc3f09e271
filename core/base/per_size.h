// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <algorithm>
#include <optional>
#include <vector>

#include "core/base/shared.h"

namespace skeinproof {

// One value per size, in pattern order; an absent value is unknown, not zero. The list is shared between
// snapshots. An empty list means "nothing typed for any size".
template <class T>
class PerSize {
 public:
  using Value = std::optional<T>;
  using List = std::vector<Value>;

  PerSize() = default;
  explicit PerSize(List list) : list_(std::move(list)) {}

  bool empty() const {
    return std::none_of(list_->begin(), list_->end(), [](const Value& v) { return v.has_value(); });
  }
  std::size_t size() const { return list_->size(); }
  const List& list() const { return *list_; }

  // The value at a size, absent where none was typed or the list is shorter.
  Value at(std::size_t size_index) const {
    return size_index < list_->size() ? (*list_)[size_index] : std::nullopt;
  }
  // The same without a copy; null where absent.
  const T* find(std::size_t size_index) const {
    return size_index < list_->size() && (*list_)[size_index] ? &*(*list_)[size_index] : nullptr;
  }
  void set(std::size_t size_index, Value value) {
    list_.edit([&](List& list) {
      if (list.size() <= size_index) list.resize(size_index + 1);
      list[size_index] = std::move(value);
    });
  }

  // The three moves by which every list follows the sizes.
  void insert_size(std::size_t before) {
    if (before < list_->size())
      list_.edit(
          [&](List& list) { list.insert(list.begin() + static_cast<std::ptrdiff_t>(before), Value{}); });
  }
  void erase_size(std::size_t index) {
    if (index < list_->size())
      list_.edit([&](List& list) { list.erase(list.begin() + static_cast<std::ptrdiff_t>(index)); });
  }
  void move_size(std::size_t from, std::size_t to) {
    if (from >= list_->size() && to >= list_->size()) return;
    list_.edit([&](List& list) {
      list.resize(std::max({list.size(), from + 1, to + 1}));
      Value moved = std::move(list[from]);
      list.erase(list.begin() + static_cast<std::ptrdiff_t>(from));
      list.insert(list.begin() + static_cast<std::ptrdiff_t>(to), std::move(moved));
    });
  }

  // Equal when every size reads the same; trailing absences do not count.
  friend bool operator==(const PerSize& a, const PerSize& b) {
    if (a.list_.same_object(b.list_)) return true;
    const std::size_t n = std::max(a.size(), b.size());
    for (std::size_t i = 0; i < n; ++i)
      if (a.at(i) != b.at(i)) return false;
    return true;
  }

 private:
  Shared<List> list_;
};

}  // namespace skeinproof
