// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>

#include "core/manuscript/statement.h"

namespace skeinproof::testing {

// A text with statements put on its words by hand, each search going on where the last one ended.
class HandReading {
 public:
  explicit HandReading(std::string words) : text(std::move(words)) {}

  std::string text;
  Reading reading;

  Statement& say(StatementKind kind, std::string_view words, std::string subject = {}) {
    Statement& statement = reading.statements.emplace_back();
    statement.kind = kind;
    statement.words = words;
    statement.subject = std::move(subject);
    statement.span = find(words);
    statement.mention = ++mention_;
    return statement;
  }
  // A list such as "5 (5, 6)", a figure or a label for each run of letters, digits and dashes.
  Statement& list(StatementKind kind, std::string_view words, std::string subject = {}) {
    Statement& statement = say(kind, words, std::move(subject));
    bool opens = false;
    for (std::size_t at = statement.span.begin; at < statement.span.end;) {
      std::size_t to = at;
      while (to < statement.span.end && std::string_view("(), ").find(text[to]) == std::string::npos) ++to;
      if (to == at) {
        opens = opens || text[at++] == '(';
        continue;
      }
      PrintedValue value;
      value.span = {at, to};
      value.opens_group = opens;
      if (text[at] >= '0' && text[at] <= '9') value.number = std::stod(text.substr(at, to - at));
      statement.values.push_back(value);
      opens = false;
      at = to;
    }
    return statement;
  }

 private:
  TextSpan find(std::string_view words) {
    const auto at = text.find(words, from_);
    if (at == std::string::npos) throw std::invalid_argument(std::string(words));
    from_ = at;
    return {at, at + words.size()};
  }

  std::size_t from_ = 0;
  int mention_ = 0;
};

}  // namespace skeinproof::testing
