// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <array>
#include <optional>
#include <string_view>
#include <utility>

namespace skeinproof {

// The words an enumeration is written with in files and JSON. Each enumeration that is stored has a row
// table:
//   template <> struct EnumWords<Fit> { static constexpr auto rows = enum_rows<Fit>({{Fit::finished,
//   "finished"}, …}); };
template <class E>
struct EnumWords;

template <class E, std::size_t n>
constexpr std::array<std::pair<E, std::string_view>, n> enum_rows(
    const std::pair<E, std::string_view> (&rows)[n]) {
  return std::to_array(rows);
}

template <class E>
concept WordedEnum = requires {
  EnumWords<E>::rows;
};

template <WordedEnum E>
constexpr std::string_view word_of(E value) {
  for (const auto& [row, word] : EnumWords<E>::rows)
    if (row == value) return word;
  return {};
}

template <WordedEnum E>
constexpr std::optional<E> from_word(std::string_view word) {
  for (const auto& [row, row_word] : EnumWords<E>::rows)
    if (row_word == word) return row;
  return std::nullopt;
}

}  // namespace skeinproof
