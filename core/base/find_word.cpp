// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/find_word.h"

namespace skeinproof {
namespace {

bool is_word_byte(char c) {
  return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || static_cast<unsigned char>(c) >= 0xc0;
}

// Whether the word ends here, with or without the ending of a plural.
bool ends_here(std::string_view rest) {
  for (const std::string_view ending : {"", "s", "es"})
    if (rest.substr(0, ending.size()) == ending) {
      const std::string_view after = rest.substr(ending.size());
      if (after.empty() || !is_word_byte(after.front())) return true;
    }
  return false;
}

}  // namespace

FoundWord find_word(std::string_view lower_text, WordList words, std::size_t from) {
  FoundWord first;
  std::size_t before = lower_text.size();
  for (const std::string_view word : words)
    for (auto at = lower_text.find(word, from); at < before; at = lower_text.find(word, at + 1)) {
      if ((at > 0 && is_word_byte(lower_text[at - 1])) || !ends_here(lower_text.substr(at + word.size())))
        continue;
      first = {word, at};
      before = at;
      break;
    }
  return first;
}

}  // namespace skeinproof
