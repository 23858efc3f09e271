// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/error.h"

namespace skeinproof {

// A value of a JSON text that remembers where it stood, so that whoever finds it wrong can say where.
struct JsonValue {
  enum class Kind { null, truth, number, text, list, object };
  Kind kind = Kind::null;
  bool truth = false;
  double number = 0;
  std::string text;
  std::vector<JsonValue> items;   // of a list or an object
  std::vector<std::string> keys;  // of an object, one an item, no key twice
  std::size_t offset = 0;         // byte of its first character

  const JsonValue* find(std::string_view key) const;
};

// Reads one JSON text (RFC 8259). Failures carry line and column: wrong_format for anything that is not JSON,
// a key twice in one object, numbers no double holds, more than 64 levels or two million values.
Expected<JsonValue> parse_json(std::string_view text);

// What a value is, for a message: “text”, 12, true, null, a list, an object.
std::string in_words(const JsonValue& value);

}  // namespace skeinproof
