// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/item_and_wearer.h"

#include <algorithm>
#include <cctype>
#include <limits>
#include <optional>

#include "core/base/text.h"
#include "core/review/printed_words.h"

namespace skeinproof {
namespace {

// What is named first in this order decides: a "sock doll" is a doll, a "hooded shawl" a shawl.
struct ItemWords {
  ItemKind kind;
  WordList words;
};
const ItemWords item_words[] = {
    {ItemKind::other,
     {"bed sock",   "bedsock",    "house sock", "slipper sock", "doll",     "toy",      "bear",
      "blanket",    "throw",      "afghan",     "cushion",      "pillow",   "bag",      "basket",
      "pot holder", "potholder",  "coaster",    "garland",      "tea cosy", "tea cozy", "pot-holder",
      "dishcloth",  "washcloth",  "rug",        "slipper",      "trivet",   "hot pad",  "place mat",
      "oven mitt",  "oven glove", "ornament",   "bunting"}},
    {ItemKind::sock, {"sock", "stocking", "knee-high", "kneesock"}},
    {ItemKind::garment,
     {"pullover",  "sweater", "jumper",   "cardigan", "vest", "waistcoat",   "slipover", "dress",
      "tunic",     "top",     "tee",      "jacket",   "coat", "gilet",       "skirt",    "romper",
      "dungarees", "hoodie",  "camisole", "gansey",   "tank", "body warmer", "onesie",   "leggings"}},
    {ItemKind::hat_or_mitten,
     {"hat", "beanie", "cap", "bonnet", "beret", "tam", "balaclava", "mitten", "mitt", "glove", "headband"}},
    {ItemKind::shawl, {"shawl", "shawlette", "stole", "wrap"}},
    {ItemKind::other,
     {"cosy", "cozy", "scarf", "scarves", "cowl", "snood", "poncho", "hood", "bootee", "bootie"}},
};

ItemKind kind_of(std::string_view lower) {
  for (const ItemWords& row : item_words)
    if (says(lower, row.words)) return row.kind;
  return ItemKind::unknown;
}

enum class AgeUnit { none, months, years };

// The unit behind a figure of a size label, and how many characters it takes.
AgeUnit unit_behind(std::string_view rest) {
  while (!rest.empty() && std::string_view(" -)]").find(rest.front()) != std::string_view::npos)
    rest.remove_prefix(1);
  std::size_t letters = 0;
  while (letters < rest.size() && std::isalpha(static_cast<unsigned char>(rest[letters]))) ++letters;
  const std::string_view word = rest.substr(0, letters);
  for (const std::string_view months : {"m", "mo", "mos", "mth", "mths", "month", "months"})
    if (word == months) return AgeUnit::months;
  for (const std::string_view years : {"t", "y", "yr", "yrs", "year", "years"})
    if (word == years) return AgeUnit::years;
  return AgeUnit::none;
}

// "Ages 1:2:3–4" are years without a word for it.
std::optional<double> years_behind_age(std::string_view lower) {
  const FoundWord age = find_word(lower, {"age", "aged"});
  if (!age) return std::nullopt;
  std::size_t i = age.at + age.word.size();
  for (const std::size_t end = std::min(lower.size(), i + 6); i < end; ++i)
    if (std::isdigit(static_cast<unsigned char>(lower[i]))) break;
  if (i >= lower.size() || !std::isdigit(static_cast<unsigned char>(lower[i]))) return std::nullopt;
  double years = 0;
  for (; i < lower.size() && std::isdigit(static_cast<unsigned char>(lower[i])); ++i)
    years = std::min(years * 10 + (lower[i] - '0'), 1e6);
  return years <= 18 ? std::optional<double>(years * 12) : std::nullopt;
}

// The youngest age a text names, in months; figures before "months" or "years" count by it, also those in a
// list that the unit ends.
std::optional<double> youngest_age(std::string_view lower) {
  std::optional<double> youngest;
  double first_of_run = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < lower.size();) {
    if (!std::isdigit(static_cast<unsigned char>(lower[i]))) {
      if (std::isalpha(static_cast<unsigned char>(lower[i])))
        first_of_run = std::numeric_limits<double>::infinity();
      ++i;
      continue;
    }
    double number = 0;
    for (; i < lower.size() && std::isdigit(static_cast<unsigned char>(lower[i])); ++i)
      number = std::min(number * 10 + (lower[i] - '0'), 1e6);
    first_of_run = std::min(first_of_run, number);
    const AgeUnit unit = unit_behind(lower.substr(i));
    if (unit == AgeUnit::none) continue;
    const double months = unit == AgeUnit::months ? first_of_run : first_of_run * 12;
    if (months <= 18 * 12) youngest = youngest ? std::min(*youngest, months) : months;
    first_of_run = std::numeric_limits<double>::infinity();
  }
  return youngest ? youngest : years_behind_age(lower);
}

struct WearerWords {
  double oldest_months;  // of those the words stand for, and …
  double youngest_months;
  WordList words;
};
const WearerWords wearer_words[] = {
    {12, 0, {"baby", "babie", "infant", "newborn", "preemie", "layette"}},
    {36, 12, {"toddler"}},
    {12 * 14, 0, {"child", "children", "kids", "boy", "girl", "junior"}},
};

// "Baby alpaca" and "baby weight" are yarns, not wearers.
std::string without_yarn_names(std::string lower) {
  for (const std::string_view yarn :
       {"baby alpaca", "baby llama", "baby camel", "baby yak", "baby suri", "baby merino", "baby weight"})
    for (auto at = lower.find(yarn); at != std::string::npos; at = lower.find(yarn)) lower.erase(at, 5);
  return lower;
}

void take_age(Wearers& wearers, double months, std::string because, const Statement* shown) {
  wearers.up_to_12_months = months <= 12;
  wearers.under_3_years = months < 36;
  wearers.up_to_7_years = months < 8 * 12;
  if (!wearers.up_to_7_years) return;
  wearers.because = std::move(because);
  wearers.shown = shown;
}

}  // namespace

ItemRead item_of(const ReviewInput& input) {
  ItemRead item;
  for (const StatementKind kind : {StatementKind::item, StatementKind::title})
    for (const Statement* one : input.printed.all(kind)) {
      const std::string words = lower_ascii(one->words.empty() ? input.printed.words(one->span) : one->words);
      if (item.kind == ItemKind::unknown) {
        item.kind = kind_of(words);
        if (item.kind != ItemKind::unknown) item.shown = one;
      }
      item.words += words + " ";
    }
  const std::string facts[] = {lower_ascii(input.pattern.item), lower_ascii(input.pattern.title)};
  for (const std::string& words : facts) {
    if (item.kind == ItemKind::unknown) item.kind = kind_of(words);
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
    if (const auto months = youngest_age(words)) {
      take_age(wearers, *months, printed_words(printed, *line), line);
      return wearers;
    }
  }
  for (const std::string& label : printed.size_labels())
    if (const auto months = youngest_age(lower_ascii(label))) {
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
    if (const auto months = youngest_age(lower_ascii(one.words))) {
      take_age(wearers, *months, quoted(one.words), one.statement);
      return wearers;
    }
  for (const WearerWords& row : wearer_words)
    for (const Said& one : said) {
      if (!says(without_yarn_names(lower_ascii(one.words)), row.words)) continue;
      take_age(wearers, row.youngest_months, quoted(one.words), one.statement);
      if (row.oldest_months > 36) wearers.up_to_12_months = wearers.under_3_years = false;
      return wearers;
    }
  return wearers;
}

}  // namespace skeinproof
