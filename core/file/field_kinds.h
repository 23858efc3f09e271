// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <type_traits>
#include <vector>

#include "core/base/describe.h"
#include "core/base/enum_words.h"
#include "core/base/id.h"
#include "core/base/per_size.h"
#include "core/base/shared.h"
#include "core/units/entered.h"

namespace skeinproof {

// The kinds of field a described part of the document may have. Whatever walks over a whole document (JSON,
// the project file, the generator of the tests) branches on these and on nothing else:
//   text, truth, whole number, number, worded enumeration, id, entered value, described part,
//   optional of the last two, list, list per size, shared list.
template <class T>
inline constexpr bool is_id = false;
template <class Part>
inline constexpr bool is_id<Id<Part>> = true;
template <class T>
inline constexpr bool is_entered = false;
template <class Quantity>
inline constexpr bool is_entered<Entered<Quantity>> = true;
template <class T>
inline constexpr bool is_optional = false;
template <class T>
inline constexpr bool is_optional<std::optional<T>> = true;
template <class T>
inline constexpr bool is_list = false;
template <class T>
inline constexpr bool is_list<std::vector<T>> = true;
template <class T>
inline constexpr bool is_per_size = false;
template <class T>
inline constexpr bool is_per_size<PerSize<T>> = true;
template <class T>
inline constexpr bool is_shared = false;
template <class T>
inline constexpr bool is_shared<Shared<T>> = true;

template <class T>
concept TextField = std::is_same_v<T, std::string>;
template <class T>
concept TruthField = std::is_same_v<T, bool>;
template <class T>
concept WholeField = std::is_same_v<T, int> || std::is_same_v<T, std::uint32_t>;
template <class T>
concept NumberField = std::is_same_v<T, double>;
template <class T>
concept IdField = is_id<T>;
template <class T>
concept EnteredField = is_entered<T>;
template <class T>
concept OptionalField = is_optional<T>;
template <class T>
concept SharedField = is_shared<T>;
template <class T>
concept PerSizeField = is_per_size<T>;
template <class T>
concept ListField = is_list<T>;

// The bare number of a quantity, and back.
inline double bare(double value) { return value; }
template <class Quantity>
double bare(Quantity quantity) {
  return quantity.value();
}
inline void set_bare(double& target, double value) { target = value; }
template <class Quantity>
void set_bare(Quantity& target, double value) {
  target = Quantity::from_value(value);
}

}  // namespace skeinproof
