// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <memory>
#include <utility>

namespace skeinproof {

// An immutable value that many snapshots of a document share. Copying is cheap; comparison looks at identity
// first. A default-constructed one holds a default T.
template <class T>
class Shared {
 public:
  Shared() : value_(nothing()) {}
  Shared(T value) : value_(std::make_shared<const T>(std::move(value))) {}

  const T& operator*() const { return *value_; }
  const T* operator->() const { return value_.get(); }
  bool same_object(const Shared& other) const { return value_ == other.value_; }

  // Replaces the value by an edited copy; other holders keep the old one.
  template <class Change>
  void edit(Change&& change) {
    T copy = *value_;
    std::forward<Change>(change)(copy);
    value_ = std::make_shared<const T>(std::move(copy));
  }

  friend bool operator==(const Shared& a, const Shared& b) {
    return a.value_ == b.value_ || *a.value_ == *b.value_;
  }

 private:
  static const std::shared_ptr<const T>& nothing() {
    static const auto none = std::make_shared<const T>();
    return none;
  }
  std::shared_ptr<const T> value_;
};

}  // namespace skeinproof
