// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/file/storable.h"

#include <cmath>

#include "core/base/text.h"
#include "core/file/field_kinds.h"

namespace skeinproof {
namespace {

// Walks over everything and gathers the first thing that cannot be stored.
class StorableCheck {
 public:
  const std::optional<Error>& first() const { return first_; }

  template <class T>
  void look_at(const char* name, const T& value) {
    if constexpr (TextField<T>) {
      if (!is_utf8(value)) add("bytes that are no text", "UTF-8", name);
    } else if constexpr (NumberField<T>) {
      if (!std::isfinite(value)) add("a number without end", "a finite number", name);
    } else if constexpr (EnteredField<T>) {
      look_at(name, bare(value.value));
      look_at(name, value.typed);
    } else if constexpr (OptionalField<T>) {
      if (value) look_at(name, *value);
    } else if constexpr (SharedField<T>) {
      look_at(name, *value);
    } else if constexpr (PerSizeField<T>) {
      look_at(name, value.list());
    } else if constexpr (ListField<T>) {
      for (const auto& item : value) look_at(name, item);
    } else if constexpr (Described<T>) {
      T::describe(value, [&](const char* field_name, const auto& field) { look_at(field_name, field); });
    }
  }

 private:
  void add(const char* found, const std::string& expected, const char* name) {
    if (!first_) first_ = Error{ErrorKind::broken_invariant, {}, found, expected + " in " + name};
  }
  std::optional<Error> first_;
};

}  // namespace

Expected<void> check_storable(const Pattern& pattern) {
  StorableCheck check;
  check.look_at("pattern", pattern);
  if (check.first()) return tl::unexpected<Error>(*check.first());
  return check_invariants(pattern);
}

Expected<void> check_storable(std::span<const ShelfYarn> entries) {
  for (const ShelfYarn& entry : entries) {
    StorableCheck check;
    check.look_at("yarns", entry);
    if (check.first()) return tl::unexpected<Error>(*check.first());
  }
  return {};
}

}  // namespace skeinproof
