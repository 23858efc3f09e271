// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/query_wording.h"

#include <algorithm>
#include <array>
#include <set>

#include "core/base/text.h"
#include "core/review/finding_words.h"

namespace skeinproof {
namespace {

struct Own {
  std::string placeholder, words;
};
// The longer before those that may stand in them.
std::array<Own, 6> own_words(const Finding& finding, std::string_view text) {
  const std::string printed =
      finding.places.empty() ? std::string() : tidy_spaces(words_at(text, finding.places.front()));
  return {{{"{query}", finding.query},
           {"{working}", join(finding.evidence, "; ")},
           {"{change}", finding.proposal_words},
           {"{words}", printed},
           {"{size}", finding.sizes.empty() ? std::string() : sizes_in_words(finding.sizes)},
           {"{role}", listed(finding.roles)}}};
}

bool is_figure(char c) { return c >= '0' && c <= '9'; }
bool is_of_a_word(char c) {
  const char small = static_cast<char>(c | 0x20);
  return is_figure(c) || (small >= 'a' && small <= 'z');
}

// Whether a word or a figure ends between these two characters, or there is none.
bool parts(std::string_view text, std::size_t at) {
  if (at == 0 || at >= text.size()) return true;
  if (is_of_a_word(text[at - 1]) && is_of_a_word(text[at])) return false;
  const auto inside_figure = [&](std::size_t mark) {
    return mark > 0 && mark + 1 < text.size() && (text[mark] == '.' || text[mark] == ',') &&
           is_figure(text[mark - 1]) && is_figure(text[mark + 1]);
  };
  return !inside_figure(at) && !inside_figure(at - 1);
}

std::string replaced(std::string_view text, std::string_view words, std::string_view by) {
  std::string out;
  std::size_t done = 0;
  for (auto at = text.find(words); at != std::string_view::npos; at = text.find(words, at + 1)) {
    const std::size_t end = at + words.size();
    if (at < done || !parts(text, at) || !parts(text, end)) continue;
    out.append(text, done, at - done);
    out += by;
    done = end;
  }
  out.append(text, done);
  return out;
}

std::set<std::string> figures_in(std::string_view text) {
  std::set<std::string> figures;
  for (std::size_t at = 0; at < text.size();) {
    std::size_t end = at;
    while (end < text.size() &&
           (is_figure(text[end]) || (end > at && (text[end] == '.' || text[end] == ',') &&
                                     end + 1 < text.size() && is_figure(text[end + 1]))))
      ++end;
    if (end > at) figures.emplace(text.substr(at, end - at));
    at = std::max(end, at + 1);
  }
  return figures;
}

}  // namespace

std::optional<std::string> filled_in(std::string_view words, const Finding& finding, std::string_view text) {
  const auto own = own_words(finding, text);
  std::string filled;
  // One pass, so that what is filled in is never looked through for placeholders.
  for (std::size_t at = 0; at < words.size();) {
    const auto here = std::find_if(own.begin(), own.end(), [&](const Own& one) {
      return words.substr(at).starts_with(one.placeholder);
    });
    if (here == own.end()) {
      filled += words[at++];
      continue;
    }
    if (here->words.empty()) return std::nullopt;
    filled += here->words;
    at += here->placeholder.size();
  }
  return filled;
}

std::optional<std::string> for_every_finding(std::string_view words, const Finding& finding,
                                             std::string_view text) {
  std::string general(words);
  for (const Own& one : own_words(finding, text))
    if (!one.words.empty()) general = replaced(general, one.words, one.placeholder);
  std::set<std::string> of_it;
  for (const std::string& where : {finding.query, finding.title, finding.proposal_words})
    of_it.merge(figures_in(where));
  for (const std::string& line : finding.evidence) of_it.merge(figures_in(line));
  for (const std::string& figure : figures_in(general))
    if (of_it.count(figure)) return std::nullopt;
  return general;
}

}  // namespace skeinproof
