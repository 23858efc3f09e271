// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>
#include <nlohmann/json.hpp>

#include "core/file/field_kinds.h"
#include "core/file/json.h"
#include "core/file/json_schema.h"

namespace skeinproof {
namespace {

using Json = nlohmann::ordered_json;

Json json_of_number(double number) {
  constexpr double exact_whole = 9007199254740992.0;
  const bool whole = std::abs(number) < exact_whole && number == std::floor(number) && !std::signbit(number);
  return whole ? Json(static_cast<std::int64_t>(number)) : Json(number);
}

template <class T>
Json json_of(const T& value);

template <class Quantity>
Json json_of_entered(const Entered<Quantity>& entered) {
  Json json = {{"value", json_of_number(bare(entered.value))}};
  if (!entered.typed.empty()) json["typed"] = entered.typed;
  return json;
}

template <class T>
Json json_of_per_size(const PerSize<T>& values) {
  Json json = Json::array();
  for (const auto& value : values.list()) json.push_back(value ? json_of(*value) : Json::object());
  while (!json.empty() && json.back().empty()) json.erase(json.size() - 1);
  return json;
}

template <class Part>
void put_fields(Json& json, const Part& part) {
  Part::describe(part, [&](const char* name, const auto& field) {
    using Field = std::decay_t<decltype(field)>;
    if constexpr (OptionalField<Field>) {
      if (field) json[name] = json_of(*field);
    } else {
      json[name] = json_of(field);
    }
  });
}

template <class T>
Json json_of(const T& value) {
  if constexpr (NumberField<T>) {
    return json_of_number(value);
  } else if constexpr (WordedEnum<T>) {
    return word_of(value);
  } else if constexpr (IdField<T>) {
    return value.value;
  } else if constexpr (EnteredField<T>) {
    return json_of_entered(value);
  } else if constexpr (SharedField<T>) {
    return json_of(*value);
  } else if constexpr (PerSizeField<T>) {
    return json_of_per_size(value);
  } else if constexpr (ListField<T>) {
    Json json = Json::array();
    for (const auto& item : value) json.push_back(json_of(item));
    return json;
  } else if constexpr (Described<T>) {
    Json json = Json::object();
    put_fields(json, value);
    return json;
  } else {
    static_assert(TextField<T> || TruthField<T> || WholeField<T>);
    return value;
  }
}

std::string on_one_line(const Json& json) {
  return json.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
}

// Indented by two, but what fits on a line stays on it, as a typed value or a round of a chart does.
void write_pretty(const Json& json, std::size_t indent, std::string& text) {
  constexpr std::size_t line = 100;
  constexpr std::size_t most_on_a_line = 16;
  if (!json.is_structured() || json.size() <= most_on_a_line) {
    const std::string compact = on_one_line(json);
    if (!json.is_structured() || json.empty() || indent + compact.size() <= line) {
      text += compact;
      return;
    }
  }
  const std::string margin(indent + 2, ' ');
  text += json.is_object() ? '{' : '[';
  const char* separator = "\n";
  for (const auto& item : json.items()) {
    text += separator;
    text += margin;
    if (json.is_object()) text += on_one_line(Json(item.key())) + ": ";
    write_pretty(item.value(), indent + 2, text);
    separator = ",\n";
  }
  text += "\n" + std::string(indent, ' ');
  text += json.is_object() ? '}' : ']';
}

template <class Document>
Json json_of_document(const Document& document, const JsonSchema& schema) {
  Json json = {{"schema", schema.name}, {"version", schema.version}};
  put_fields(json, document);
  return json;
}

template <class Document>
std::string pretty(const Document& document, const JsonSchema& schema) {
  std::string text;
  write_pretty(json_of_document(document, schema), 0, text);
  return text + "\n";
}

}  // namespace

std::string to_json(const Pattern& pattern) { return pretty(pattern, pattern_schema); }
std::string to_json(const HouseStyle& style) { return pretty(style, house_style_schema); }
std::string to_json(std::span<const ShelfYarn> entries) {
  Json json = {{"schema", yarn_shelf_schema.name}, {"version", yarn_shelf_schema.version}};
  json["yarns"] = Json::array();
  for (const ShelfYarn& entry : entries) json["yarns"].push_back(json_of(entry));
  std::string text;
  write_pretty(json, 0, text);
  return text + "\n";
}
std::string to_compact_json(const Pattern& pattern) {
  return on_one_line(json_of_document(pattern, pattern_schema));
}

}  // namespace skeinproof
