// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <limits>

#include "core/base/text.h"
#include "core/file/field_kinds.h"
#include "core/file/json.h"
#include "core/file/json_schema.h"
#include "core/file/json_tree.h"

namespace skeinproof {
namespace {

using Kind = JsonValue::Kind;

// Where the reader stands, as a chain up to the root; spelled out only when something is wrong.
struct JsonPath {
  const JsonPath* up = nullptr;
  const char* name = nullptr;
  std::size_t index = 0;

  std::string words() const {
    if (up == nullptr) return "$";
    return name != nullptr ? up->words() + "." + name : up->words() + "[" + std::to_string(index) + "]";
  }
};

struct WrongJson {
  ErrorKind kind;
  std::size_t offset;
  std::string found;
  std::string expected;
};

[[noreturn]] void refuse(ErrorKind kind, const JsonValue& value, const JsonPath& path, std::string expected) {
  throw WrongJson{kind, value.offset, in_words(value), std::move(expected) + " at " + path.words()};
}

void need_kind(const JsonValue& value, Kind kind, const JsonPath& path, const char* expected) {
  if (value.kind != kind) refuse(ErrorKind::wrong_shape, value, path, expected);
}

template <class Whole>
Whole whole_number(const JsonValue& value, const JsonPath& path) {
  need_kind(value, Kind::number, path, "a whole number");
  constexpr double low = std::numeric_limits<Whole>::lowest();
  constexpr double high = std::numeric_limits<Whole>::max();
  if (value.number != std::floor(value.number)) refuse(ErrorKind::wrong_shape, value, path, "a whole number");
  if (value.number < low || value.number > high)
    refuse(ErrorKind::out_of_range, value, path,
           "a whole number from " + std::to_string(std::numeric_limits<Whole>::lowest()) + " to " +
               std::to_string(std::numeric_limits<Whole>::max()));
  return static_cast<Whole>(value.number);
}

template <WordedEnum E>
E enum_value(const JsonValue& value, const JsonPath& path) {
  need_kind(value, Kind::text, path, "a word");
  if (const auto found = from_word<E>(value.text)) return *found;
  std::vector<std::string> words;
  for (const auto& [row, word] : EnumWords<E>::rows) words.push_back("“" + std::string(word) + "”");
  refuse(ErrorKind::unknown_name, value, path, "one of " + join(words, ", "));
}

template <class Part>
std::vector<std::string> field_names() {
  std::vector<std::string> names;
  Part nothing;
  Part::describe(nothing, [&](const char* name, auto&) { names.emplace_back(name); });
  return names;
}

void refuse_unknown_keys(const JsonValue& object, const std::vector<std::string>& known,
                         const JsonPath& path) {
  for (std::size_t i = 0; i < object.keys.size(); ++i) {
    if (std::find(known.begin(), known.end(), object.keys[i]) != known.end()) continue;
    throw WrongJson{ErrorKind::unknown_name, object.items[i].offset, "the key " + quoted(object.keys[i]),
                    "one of " + join(known, ", ") + " at " + path.words()};
  }
}

template <class T>
void read_value(const JsonValue& value, const JsonPath& path, T& target);

template <class Quantity>
void read_entered(const JsonValue& value, const JsonPath& path, Entered<Quantity>& target) {
  static const std::vector<std::string> known = {"value", "typed"};
  const char* shape = "an object such as {\"value\": 5, \"typed\": \"5\"}";
  need_kind(value, Kind::object, path, shape);
  refuse_unknown_keys(value, known, path);
  const JsonValue* number = value.find("value");
  if (number == nullptr) refuse(ErrorKind::wrong_shape, value, path, shape);
  const JsonPath at_number{&path, "value"};
  need_kind(*number, Kind::number, at_number, "a number");
  set_bare(target.value, number->number);
  target.typed.clear();
  if (const JsonValue* typed = value.find("typed"))
    read_value(*typed, JsonPath{&path, "typed"}, target.typed);
}

template <class List>
void read_list(const JsonValue& value, const JsonPath& path, List& target) {
  need_kind(value, Kind::list, path, "a list");
  target.clear();
  target.reserve(value.items.size());
  for (std::size_t i = 0; i < value.items.size(); ++i) {
    target.emplace_back();
    read_value(value.items[i], JsonPath{&path, nullptr, i}, target.back());
  }
}

template <class T>
void read_per_size(const JsonValue& value, const JsonPath& path, PerSize<T>& target) {
  need_kind(value, Kind::list, path, "a list");
  typename PerSize<T>::List list(value.items.size());
  for (std::size_t i = 0; i < list.size(); ++i) {
    const bool absent = value.items[i].kind == Kind::object && value.items[i].items.empty();
    if (!absent) read_value(value.items[i], JsonPath{&path, nullptr, i}, list[i].emplace());
  }
  target = PerSize<T>(std::move(list));
}

template <class Part>
void read_fields(const JsonValue& object, const JsonPath& path, Part& target) {
  Part::describe(target, [&](const char* name, auto& field) {
    if (const JsonValue* value = object.find(name)) read_value(*value, JsonPath{&path, name}, field);
  });
}

template <class T>
void read_value(const JsonValue& value, const JsonPath& path, T& target) {
  if constexpr (TextField<T>) {
    need_kind(value, Kind::text, path, "text in quotation marks");
    target = value.text;
  } else if constexpr (TruthField<T>) {
    need_kind(value, Kind::truth, path, "true or false");
    target = value.truth;
  } else if constexpr (NumberField<T>) {
    need_kind(value, Kind::number, path, "a number");
    target = value.number;
  } else if constexpr (WholeField<T>) {
    target = whole_number<T>(value, path);
  } else if constexpr (IdField<T>) {
    target.value = whole_number<std::uint32_t>(value, path);
  } else if constexpr (WordedEnum<T>) {
    target = enum_value<T>(value, path);
  } else if constexpr (EnteredField<T>) {
    read_entered(value, path, target);
  } else if constexpr (OptionalField<T>) {
    read_value(value, path, target.emplace());
  } else if constexpr (PerSizeField<T>) {
    read_per_size(value, path, target);
  } else if constexpr (SharedField<T>) {
    target.edit([&](auto& list) { read_value(value, path, list); });
  } else if constexpr (ListField<T>) {
    read_list(value, path, target);
  } else {
    static_assert(Described<T>);
    need_kind(value, Kind::object, path, "an object");
    refuse_unknown_keys(value, field_names<T>(), path);
    read_fields(value, path, target);
  }
}

void check_schema(const JsonValue& root, const JsonSchema& schema) {
  const std::string name(schema.name);
  const JsonValue* found = root.kind == Kind::object ? root.find("schema") : nullptr;
  if (found == nullptr || found->kind != Kind::text || found->text != name)
    throw WrongJson{ErrorKind::wrong_format, found != nullptr ? found->offset : root.offset,
                    found != nullptr ? "JSON of the schema " + in_words(*found) : "JSON without a schema",
                    "{\"schema\": \"" + name + "\", …}"};
  const JsonPath start;
  const JsonPath at_version{&start, "version"};
  const JsonValue* version = root.find("version");
  if (version == nullptr) refuse(ErrorKind::wrong_shape, root, at_version, "a whole number");
  const int number = whole_number<int>(*version, at_version);
  if (number > schema.version)
    throw WrongJson{ErrorKind::too_new, version->offset, name + " version " + std::to_string(number),
                    "at most version " + std::to_string(schema.version)};
  if (number < 1) refuse(ErrorKind::out_of_range, *version, at_version, "a version from 1");
}

Error placed(const WrongJson& wrong, std::string_view text, std::string_view file) {
  const LineColumn at = line_column(text, wrong.offset);
  return Error{wrong.kind, {std::string(file), at.line, at.column}, wrong.found, wrong.expected};
}

template <class Document>
Expected<Document> document_from_json(std::string_view text, std::string_view file,
                                      const JsonSchema& schema) {
  auto root = parse_json(text);
  if (!root) {
    root.error().place.file = file;
    return tl::unexpected<Error>(std::move(root.error()));
  }
  try {
    check_schema(*root, schema);
    std::vector<std::string> known = field_names<Document>();
    known.insert(known.begin(), {"schema", "version"});
    const JsonPath start;
    refuse_unknown_keys(*root, known, start);
    Document document;
    read_fields(*root, start, document);
    return document;
  } catch (const WrongJson& wrong) {
    return tl::unexpected<Error>(placed(wrong, text, file));
  }
}

}  // namespace

Expected<Pattern> pattern_from_json(std::string_view text, std::string_view file) {
  auto pattern = document_from_json<Pattern>(text, file, pattern_schema);
  if (!pattern) return pattern;
  if (auto sound = check_invariants(*pattern); !sound) {
    sound.error().place.file = file;
    return tl::unexpected<Error>(std::move(sound.error()));
  }
  return pattern;
}

Expected<HouseStyle> house_style_from_json(std::string_view text, std::string_view file) {
  return document_from_json<HouseStyle>(text, file, house_style_schema);
}

}  // namespace skeinproof
