// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstddef>
#include <initializer_list>
#include <string_view>

namespace skeinproof {

// Words, in lower case, that a text is searched for. A word stands alone, in its singular or plural: "hat"
// is found in "two hats", not in "that"; a hyphen parts words.
using WordList = std::initializer_list<std::string_view>;
struct FoundWord {
  std::string_view word;  // of the list; empty = none
  std::size_t at = 0;
  explicit operator bool() const { return !word.empty(); }
};
// The first place in a lower-case text where a word of the list stands, from `from` on.
FoundWord find_word(std::string_view lower_text, WordList words, std::size_t from = 0);
inline bool says(std::string_view lower_text, WordList words) {
  return static_cast<bool>(find_word(lower_text, words));
}

}  // namespace skeinproof
