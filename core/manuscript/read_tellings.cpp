// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/base/text.h"
#include "core/manuscript/read_parts.h"

namespace skeinproof {
namespace {

// The tokens that lie within characters of the text as it came: from first up to last.
std::pair<std::size_t, std::size_t> tokens_within(const Reader& reader, const TextSpan& span) {
  const auto& tokens = reader.items.tokens;
  const auto place = [&](const Token& token) { return std::size_t{reader.plain.from[token.begin]}; };
  const auto first = std::partition_point(tokens.begin(), tokens.end(),
                                          [&](const Token& token) { return place(token) < span.begin; });
  const auto last =
      std::partition_point(first, tokens.end(), [&](const Token& token) { return place(token) < span.end; });
  return {static_cast<std::size_t>(first - tokens.begin()), static_cast<std::size_t>(last - tokens.begin())};
}

void tell(Reader& reader, const Telling& telling, const TextSpan& span, std::size_t first, std::size_t last) {
  const auto kind = from_word<StatementKind>(telling.means);
  if (!kind) {
    reader.use(first, last);
    reader.out.not_understood.push_back({span, true});
    return;
  }
  ++reader.mention;
  Statement statement = reader.say(*kind, first, last);
  statement.span = span;
  statement.subject = telling.of;
  statement.words = tidy_spaces(telling.words);
  for (std::size_t i = first; i < last && statement.values.empty(); ++i) {
    if (!reader.is_list(i)) continue;
    statement.values = reader.values(i);
    statement.unit = reader.list(i).unit;
  }
  // A list that runs beyond the words told keeps what lies within them.
  std::erase_if(statement.values, [&](const PrintedValue& value) { return !span.holds(value.span); });
  reader.out.statements.back() = std::move(statement);
}

}  // namespace

void read_tellings(Reader& reader, std::string_view text, const std::vector<Telling>& tellings) {
  for (const Telling& telling : tellings) {
    const bool nothing = telling.means == "nothing";
    if (telling.words.empty() || !(nothing || from_word<StatementKind>(telling.means))) continue;
    for (std::size_t at = text.find(telling.words); at != std::string_view::npos;
         at = text.find(telling.words, at + telling.words.size())) {
      const TextSpan span{at, at + telling.words.size()};
      const auto [first, last] = tokens_within(reader, span);
      const auto begin = reader.used.begin() + static_cast<std::ptrdiff_t>(first);
      const auto end = reader.used.begin() + static_cast<std::ptrdiff_t>(last);
      if (std::find(begin, end, false) != end) tell(reader, telling, span, first, last);
    }
  }
}

}  // namespace skeinproof
