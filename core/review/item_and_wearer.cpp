// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/item_and_wearer.h"

#include <algorithm>
#include <optional>

#include "core/base/text.h"
#include "core/review/printed_words.h"

namespace skeinproof {
namespace {

void take_age(Wearers& wearers, double months, std::string because, const Statement* shown) {
  take_age(wearers, months, std::move(because));
  if (wearers.up_to_7_years) wearers.shown = shown;
}

}  // namespace

ItemRead item_of(const ReviewInput& input) {
  ItemRead item;
  for (const StatementKind kind : {StatementKind::item, StatementKind::title})
    for (const Statement* one : input.printed.all(kind)) {
      const std::string words = lower_ascii(one->words.empty() ? input.printed.words(one->span) : one->words);
      if (item.kind == ItemKind::unknown) {
        item.kind = item_kind(words);
        if (item.kind != ItemKind::unknown) item.shown = one;
      }
      item.words += words + " ";
    }
  const std::string facts[] = {lower_ascii(input.pattern.item), lower_ascii(input.pattern.title)};
  for (const std::string& words : facts) {
    if (item.kind == ItemKind::unknown) item.kind = item_kind(words);
    item.words += words + " ";
  }
  return item;
}

Wearers wearers_of(const ReviewInput& input) {
  Wearers wearers;
  const PrintedView& printed = input.printed;
  if (const Statement* line = printed.sizes_line()) {
    // The unit may stand once, behind the last size, and the word for an age before the first.
    const std::size_t begin = line->span.begin - std::min<std::size_t>(line->span.begin, 6);
    const std::size_t end = std::min(printed.text().size(), line->span.end + 10);
    const std::string words = lower_ascii(printed.words(TextSpan{begin, end}));
    if (const auto months = youngest_age_months(words)) {
      take_age(wearers, *months, printed_words(printed, *line), line);
      return wearers;
    }
  }
  for (const std::string& label : printed.size_labels())
    if (const auto months = youngest_age_months(lower_ascii(label))) {
      take_age(wearers, *months, quoted(label), printed.sizes_line());
      return wearers;
    }

  struct Said {
    std::string words;
    const Statement* statement;
  };
  std::vector<Said> said;
  for (const StatementKind kind : {StatementKind::wearer, StatementKind::title, StatementKind::item})
    for (const Statement* one : printed.all(kind))
      said.push_back({std::string(one->words.empty() ? printed.words(one->span) : one->words), one});
  for (const std::string* fact : {&input.pattern.wearer, &input.pattern.title, &input.pattern.item})
    said.push_back({*fact, nullptr});
  for (const Said& one : said)
    if (const auto months = youngest_age_months(lower_ascii(one.words))) {
      take_age(wearers, *months, quoted(one.words), one.statement);
      return wearers;
    }
  for (const WearerWords& row : wearer_word_rows())
    for (const Said& one : said) {
      if (!says(without_yarn_names(lower_ascii(one.words)), row.words)) continue;
      take_wearer_word(wearers, row, quoted(one.words));
      if (!wearers.because.empty()) wearers.shown = one.statement;
      return wearers;
    }
  return wearers;
}

}  // namespace skeinproof
