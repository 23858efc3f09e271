// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <unordered_map>

#include "core/manuscript/read_manuscript.h"
#include "core/manuscript/write_block.h"
#include "core/review/compare_drafts.h"

namespace skeinproof {
namespace {

// Words taken out and put in before the way so far is taken and the search starts anew from its end; bounds
// time and room on texts that have little in common.
constexpr int longest_detour = 500;

bool is_space(char c) { return c == ' ' || c == '\n' || c == '\t' || c == '\r' || c == '\f' || c == '\v'; }

struct Word {
  std::string_view text;  // with the white space behind it, and before the first
  int name = 0;           // the same for the same letters
};

std::vector<Word> words_of(std::string_view text, std::unordered_map<std::string_view, int>& names) {
  std::vector<Word> words;
  std::size_t at = 0, begin = 0;
  while (at < text.size() && is_space(text[at])) ++at;
  while (at < text.size()) {
    const std::size_t first = at;
    while (at < text.size() && !is_space(text[at])) ++at;
    const std::string_view letters = text.substr(first, at - first);
    while (at < text.size() && is_space(text[at])) ++at;
    const int name = names.try_emplace(letters, static_cast<int>(names.size())).first->second;
    words.push_back({text.substr(begin, at - begin), name});
    begin = at;
  }
  return words;
}

class Comparison {
 public:
  Comparison(std::vector<Word> before, std::vector<Word> after)
      : before_(std::move(before)), after_(std::move(after)) {}

  std::vector<WordRun> run() {
    while (x_ < before_.size() || y_ < after_.size()) stretch();
    return std::move(runs_);
  }

 private:
  static std::size_t index(int k) { return static_cast<std::size_t>(k + longest_detour + 1); }

  // Follows the diagonals from where we are until the end, or until the detour is too long; then walks the
  // furthest way.
  void stretch() {
    const int n = static_cast<int>(before_.size() - x_), m = static_cast<int>(after_.size() - y_);
    std::vector<int> furthest(2 * static_cast<std::size_t>(longest_detour) + 3, 0);
    std::vector<std::vector<int>> history;
    int best_k = 0;
    for (int d = 0; d <= longest_detour; ++d) {
      history.emplace_back(furthest.begin() + static_cast<std::ptrdiff_t>(index(-d - 1)),
                           furthest.begin() + static_cast<std::ptrdiff_t>(index(d + 1)) + 1);
      int best = -1;
      for (int k = -d; k <= d; k += 2) {
        const bool down = k == -d || (k != d && furthest[index(k - 1)] < furthest[index(k + 1)]);
        int x = down ? furthest[index(k + 1)] : furthest[index(k - 1)] + 1;
        // A way outside either text leads nowhere.
        if (x > n || x - k > m) {
          furthest[index(k)] = x;
          continue;
        }
        while (x < n && x - k < m && same(x, x - k)) ++x;
        furthest[index(k)] = x;
        if (2 * x - k > best) {
          best = 2 * x - k;
          best_k = k;
        }
        if (x == n && x - k == m) return walk(history, d, k, x);
      }
      if (d < longest_detour) continue;
      if (best < 0) return tell_the_rest();
      walk(history, d, best_k, furthest[index(best_k)]);
    }
  }

  bool same(int x, int y) const {
    return before_[x_ + static_cast<std::size_t>(x)].name == after_[y_ + static_cast<std::size_t>(y)].name;
  }

  // Back from the end of a way to where it began, then told forwards.
  void walk(const std::vector<std::vector<int>>& history, int d, int k, int x) {
    std::vector<WordFate> steps;
    for (; d > 0; --d) {
      const auto& furthest = history[static_cast<std::size_t>(d)];
      const auto at = [&](int diagonal) { return furthest[static_cast<std::size_t>(diagonal + d + 1)]; };
      const bool down = k == -d || (k != d && at(k - 1) < at(k + 1));
      const int from_k = down ? k + 1 : k - 1, from_x = at(from_k);
      for (const int start = down ? from_x : from_x + 1; x > start; --x) steps.push_back(WordFate::same);
      steps.push_back(down ? WordFate::added : WordFate::gone);
      k = from_k;
      x = from_x;
    }
    for (; x > 0; --x) steps.push_back(WordFate::same);
    for (auto step = steps.rbegin(); step != steps.rend(); ++step) tell(*step);
  }

  void tell_the_rest() {
    while (x_ < before_.size()) tell(WordFate::gone);
    while (y_ < after_.size()) tell(WordFate::added);
  }

  void tell(WordFate fate) {
    const std::string_view text = fate == WordFate::gone ? before_[x_].text : after_[y_].text;
    if (fate != WordFate::added) ++x_;
    if (fate != WordFate::gone) ++y_;
    if (runs_.empty() || runs_.back().fate != fate) runs_.push_back({fate, {}});
    runs_.back().text += text;
  }

  std::vector<Word> before_, after_;
  std::size_t x_ = 0, y_ = 0;  // words told so far
  std::vector<WordRun> runs_;
};

struct ElementPart {
  BlockElement element;
  TextPart part;
};
constexpr std::array element_parts = {
    ElementPart{BlockElement::sizes, TextPart::sizes},
    ElementPart{BlockElement::yarn, TextPart::block},
    ElementPart{BlockElement::roles, TextPart::block},
    ElementPart{BlockElement::total, TextPart::block},
    ElementPart{BlockElement::gauge, TextPart::gauge},
    ElementPart{BlockElement::needles, TextPart::needles},
    ElementPart{BlockElement::notions, TextPart::block},
};

bool prints(const HouseStyle& house, TextPart part) {
  return std::any_of(house.order.begin(), house.order.end(), [&](BlockElement element) {
    return std::any_of(element_parts.begin(), element_parts.end(),
                       [&](const ElementPart& row) { return row.element == element && row.part == part; });
  });
}

// The lines that hold statements of the parts the house prints in a block.
std::string block_lines(const std::string& text, const Reading& reading, const HouseStyle& house) {
  std::string block;
  std::size_t done = 0;
  for (const Statement& one : reading.statements) {
    if (!prints(house, one.part) || one.span.end <= done) continue;
    auto begin = text.rfind('\n', one.span.begin);
    begin = begin == std::string::npos ? 0 : begin + 1;
    auto end = text.find('\n', one.span.end);
    end = end == std::string::npos ? text.size() : end + 1;
    begin = std::max(begin, done);
    block.append(text, begin, end - begin);
    done = end;
  }
  return block;
}

}  // namespace

std::vector<WordRun> compare_words(std::string_view before, std::string_view after) {
  std::unordered_map<std::string_view, int> names;
  auto first = words_of(before, names);
  return Comparison(std::move(first), words_of(after, names)).run();
}

std::vector<WordRun> compare_block(const Pattern& pattern, const Assessment& assessment) {
  const Draft* draft = pattern.draft();
  if (draft == nullptr) return {};
  const std::string submitted = block_lines(draft->text, read_manuscript(*draft), pattern.house());
  return compare_words(submitted, write_block(pattern, assessment, pattern.house()).text());
}

}  // namespace skeinproof
