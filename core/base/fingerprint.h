// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstdint>
#include <string>
#include <string_view>

namespace skeinproof {

// A 64-bit fingerprint of bytes, to see whether something changed; no defence against forgery. FNV-1a
// (Fowler, Noll, Vo; IETF draft-eastlake-fnv). `before` is the fingerprint of what came before.
constexpr std::uint64_t fingerprint(std::string_view bytes, std::uint64_t before = 0xcbf29ce484222325ULL) {
  for (char byte : bytes) before = (before ^ static_cast<unsigned char>(byte)) * 0x100000001b3ULL;
  return before;
}

// Sixteen hexadecimal figures.
inline std::string fingerprint_words(std::uint64_t value) {
  std::string words(16, '0');
  for (std::size_t i = 16; i-- > 0; value >>= 4) words[i] = "0123456789abcdef"[value & 15];
  return words;
}

}  // namespace skeinproof
