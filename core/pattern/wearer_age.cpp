// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/pattern/wearer_age.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <limits>

#include "core/base/text.h"

namespace skeinproof {
namespace {

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

const WearerWords wearer_words[] = {
    {12, 0, {"baby", "babie", "infant", "newborn", "preemie", "layette"}},
    {36, 12, {"toddler"}},
    {12 * 14, 0, {"child", "children", "kids", "boy", "girl", "junior"}},
};

}  // namespace

std::optional<double> youngest_age_months(std::string_view lower) {
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

std::span<const WearerWords> wearer_word_rows() { return wearer_words; }

std::string without_yarn_names(std::string lower) {
  for (const std::string_view yarn :
       {"baby alpaca", "baby llama", "baby camel", "baby yak", "baby suri", "baby merino", "baby weight"})
    for (auto at = lower.find(yarn); at != std::string::npos; at = lower.find(yarn)) lower.erase(at, 5);
  return lower;
}

void take_age(WearerAges& ages, double months, std::string because) {
  ages.up_to_12_months = months <= 12;
  ages.under_3_years = months < 36;
  ages.up_to_7_years = months < 8 * 12;
  if (ages.up_to_7_years) ages.because = std::move(because);
}

void take_wearer_word(WearerAges& ages, const WearerWords& row, std::string because) {
  take_age(ages, row.youngest_months, std::move(because));
  if (row.oldest_months > 36) ages.up_to_12_months = ages.under_3_years = false;
}

WearerAges wearer_ages(const Pattern& pattern) {
  WearerAges ages;
  const auto by_age = [&](const std::string& words) {
    const auto months = youngest_age_months(lower_ascii(words));
    if (months) take_age(ages, *months, quoted(words));
    return months.has_value();
  };
  for (const Size& size : pattern.sizes)
    if (by_age(size.label)) return ages;
  const std::array<const std::string*, 3> facts = {&pattern.wearer, &pattern.title, &pattern.item};
  for (const std::string* fact : facts)
    if (by_age(*fact)) return ages;
  for (const WearerWords& row : wearer_words)
    for (const std::string* fact : facts) {
      if (!says(without_yarn_names(lower_ascii(*fact)), row.words)) continue;
      take_wearer_word(ages, row, quoted(*fact));
      return ages;
    }
  return ages;
}

}  // namespace skeinproof
