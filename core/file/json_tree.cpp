// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/file/json_tree.h"

#include <algorithm>
#include <iterator>
#include <nlohmann/json.hpp>
#include <optional>

#include "core/base/text.h"
#include "core/units/show.h"

namespace skeinproof {
namespace {

constexpr std::size_t deepest = 64;
constexpr std::size_t most_values = 2'000'000;

// Reads characters and counts them where the parser's user can see it.
class CountingIterator {
 public:
  using iterator_category = std::input_iterator_tag;
  using value_type = char;
  using difference_type = std::ptrdiff_t;
  using pointer = const char*;
  using reference = const char&;

  CountingIterator(const char* at, std::size_t* count) : at_(at), count_(count) {}
  reference operator*() const { return *at_; }
  CountingIterator& operator++() {
    ++at_;
    ++*count_;
    return *this;
  }
  CountingIterator operator++(int) {
    CountingIterator before = *this;
    ++*this;
    return before;
  }
  bool operator==(const CountingIterator& other) const { return at_ == other.at_; }
  bool operator!=(const CountingIterator& other) const { return at_ != other.at_; }

 private:
  const char* at_;
  std::size_t* count_;
};

class TreeBuilder {
 public:
  explicit TreeBuilder(std::string_view text) : text_(text) {}

  std::size_t* count() { return &read_; }
  Expected<JsonValue> take() {
    if (error_) return tl::unexpected<Error>(*error_);
    return std::move(root_);
  }

  bool null() { return put(at_token(JsonValue::Kind::null)); }
  bool boolean(bool truth) {
    JsonValue value = at_token(JsonValue::Kind::truth);
    value.truth = truth;
    return put(std::move(value));
  }
  bool number_integer(std::int64_t number) { return number_float(static_cast<double>(number), {}); }
  bool number_unsigned(std::uint64_t number) { return number_float(static_cast<double>(number), {}); }
  bool number_float(double number, const std::string&) {
    JsonValue value = at_token(JsonValue::Kind::number);
    value.number = number;
    // The parser has already looked at the character behind a number, unless the text ends there.
    if (token_end_ > 0 &&
        std::string_view("0123456789").find(text_[token_end_ - 1]) == std::string_view::npos)
      --token_end_;
    return put(std::move(value));
  }
  bool string(std::string& text) {
    JsonValue value = at_token(JsonValue::Kind::text);
    value.text = std::move(text);
    return put(std::move(value));
  }
  bool binary(std::vector<std::uint8_t>&) { return false; }
  bool start_object(std::size_t) { return open(JsonValue::Kind::object); }
  bool start_array(std::size_t) { return open(JsonValue::Kind::list); }
  bool end_object() { return close(); }
  bool end_array() { return close(); }
  bool key(std::string& key) {
    const std::size_t offset = at_token(JsonValue::Kind::text).offset;
    auto& keys = open_.back().keys;
    if (std::find(keys.begin(), keys.end(), key) != keys.end())
      return fail(offset, "the key " + skeinproof::quoted(key) + " twice", "each key once in an object");
    keys.push_back(std::move(key));
    return true;
  }
  bool parse_error(std::size_t position, const std::string& last_token,
                   const nlohmann::detail::exception& error) {
    const std::size_t offset = std::min(position == 0 ? 0 : position - 1, text_.size());
    if (error.id == 406)
      return fail(at_token(JsonValue::Kind::number).offset, skeinproof::quoted(last_token),
                  "a number below 1.8e308");
    const bool ended = position > text_.size() || trimmed(text_.substr(offset)).empty();
    return fail(offset, ended ? "the end of the text" : skeinproof::quoted(last_token), "JSON");
  }

 private:
  bool fail(std::size_t offset, std::string found, std::string expected) {
    const LineColumn place = line_column(text_, offset);
    error_ =
        Error{ErrorKind::wrong_format, {{}, place.line, place.column}, std::move(found), std::move(expected)};
    return false;
  }

  // A value whose first character is the next one behind the last token that is no blank and no separator.
  JsonValue at_token(JsonValue::Kind kind) {
    JsonValue value;
    value.kind = kind;
    value.offset = std::min(text_.find_first_not_of(" \t\r\n,:", token_end_), text_.size());
    token_end_ = read_;
    return value;
  }
  bool put(JsonValue value) {
    if (++values_ > most_values) return fail(value.offset, "more than two million values", "a smaller text");
    if (open_.empty())
      root_ = std::move(value);
    else
      open_.back().items.push_back(std::move(value));
    return true;
  }
  bool open(JsonValue::Kind kind) {
    JsonValue value = at_token(kind);
    if (open_.size() >= deepest) return fail(value.offset, "more than 64 levels", "at most 64 levels");
    open_.push_back(std::move(value));
    return true;
  }
  bool close() {
    JsonValue value = std::move(open_.back());
    open_.pop_back();
    token_end_ = read_;
    return put(std::move(value));
  }

  std::string_view text_;
  std::size_t read_ = 0;       // characters the parser has taken
  std::size_t token_end_ = 0;  // behind the last token
  std::size_t values_ = 0;
  std::vector<JsonValue> open_;
  JsonValue root_;
  std::optional<Error> error_;
};

}  // namespace

const JsonValue* JsonValue::find(std::string_view key) const {
  const auto found = std::find(keys.begin(), keys.end(), key);
  return found == keys.end() ? nullptr : &items[static_cast<std::size_t>(found - keys.begin())];
}

Expected<JsonValue> parse_json(std::string_view text) {
  TreeBuilder builder(text);
  std::size_t unseen = 0;
  nlohmann::json::sax_parse(CountingIterator(text.data(), builder.count()),
                            CountingIterator(text.data() + text.size(), &unseen), &builder);
  return builder.take();
}

std::string in_words(const JsonValue& value) {
  switch (value.kind) {
    case JsonValue::Kind::null:
      return "null";
    case JsonValue::Kind::truth:
      return value.truth ? "true" : "false";
    case JsonValue::Kind::number:
      return exact_number(value.number);
    case JsonValue::Kind::text:
      return skeinproof::quoted(value.text);
    case JsonValue::Kind::list:
      return "a list";
    case JsonValue::Kind::object:
      return "an object";
  }
  return {};
}

}  // namespace skeinproof
