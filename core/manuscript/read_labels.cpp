// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/read_labels.h"

#include <algorithm>
#include <iterator>

#include "core/base/text.h"

namespace skeinproof {
namespace {

constexpr std::string_view letter_names[] = {"xxxs", "xxs", "xs",   "s",     "m", "l",
                                             "xl",   "xxl", "xxxl", "xxxxl", "nb"};
constexpr std::string_view word_names[] = {"small",    "medium",  "large",   "newborn",  "preemie", "child",
                                           "children", "adult",   "toddler", "baby",     "infant",  "men",
                                           "women",    "man",     "woman",   "kids",     "teen",    "junior",
                                           "petite",   "x-small", "x-large", "xx-large", "adults"};
constexpr std::string_view age_words[] = {"months", "month", "mths", "mth", "mos", "mo",
                                          "years",  "year",  "yrs",  "yr",  "m",   "y"};

template <std::size_t n>
bool among(const std::string_view (&table)[n], std::string_view word) {
  return std::find(std::begin(table), std::end(table), word) != std::end(table);
}

class LabelReader {
 public:
  LabelReader(const PlainText& plain, const std::vector<Token>& tokens) : plain_(plain), tokens_(tokens) {}

  char shape(std::size_t i) const { return i < tokens_.size() ? tokens_[i].shape : '\0'; }
  bool glued(std::size_t i) const { return i < tokens_.size() && tokens_[i].glued; }
  std::string lower(std::size_t i) const {
    if (i >= tokens_.size() || tokens_[i].end - tokens_[i].begin > 12) return {};
    return lower_ascii(
        std::string_view(plain_.text).substr(tokens_[i].begin, tokens_[i].end - tokens_[i].begin));
  }

  // Tokens of one name without joints; 0 = none.
  std::size_t atom(std::size_t i, bool words_too) const {
    if (shape(i) == figure_shape) {
      if (!glued(i + 1)) return 1;
      const std::string behind = lower(i + 1);
      const bool sized =
          !behind.empty() && behind.size() <= 3 && behind.find_first_not_of("xltm") == std::string::npos;
      return sized ? 2 : 1;
    }
    const std::string word = lower(i);
    if (word.empty() || word == "m") {
      if (i >= tokens_.size() || !tokens_[i].capital) return 0;
      return word == "m" ? 1 : 0;
    }
    if (among(letter_names, word)) return tokens_[i].capital || word.size() > 1 ? 1 : 0;
    if (words_too && (among(word_names, word) || among(age_words, word))) return 1;
    const bool capital = word.size() == 1 && tokens_[i].capital && word != "i";
    return words_too && capital ? 1 : 0;
  }
  bool is_age(std::size_t i) const { return among(age_words, lower(i)) && !tokens_[i].capital; }

  LabelList read(std::size_t first, bool only_one) {
    std::size_t i = first;
    std::size_t used = atom(i, true);
    if (used == 0 || is_age(i)) return {};
    dash_row_ = is_dash_row(first);
    open_cell(i, used);
    i += used + unit_behind(i + used);
    for (;;) {
      if (take_joined(i)) continue;
      if (only_one || !take_separated(i)) break;
    }
    // "Size 45 cm", "Size: 75 x 90 cm" are measurements.
    if (shape(i) == 'x' || (out_.cells.size() == 1 && unit_seen_)) return {};
    finish(i);
    return std::move(out_);
  }

 private:
  void open_cell(std::size_t i, std::size_t used) {
    ListCell cell;
    cell.begin = tokens_[i].begin;
    out_.cells.push_back(cell);
    first_token_.push_back(i);
    last_token_.push_back(i + used - 1);
    after_slash_.push_back(false);
  }
  void extend(std::size_t last) { last_token_.back() = last; }

  // "34-36-38", "S-M-L": dashes part the names.
  bool is_dash_row(std::size_t i) const {
    int names = 1;
    for (std::size_t used = atom(i, true); used > 0; ++names) {
      i += used;
      if (shape(i) != '-' || !glued(i) || !glued(i + 1)) break;
      used = atom(++i, true);
      if (used == 0) return false;
    }
    return names > 2;
  }
  // 34", 86 cm
  std::size_t unit_behind(std::size_t i) {
    const bool inch_mark = shape(i) == '"' && glued(i);
    const bool unit =
        i < tokens_.size() && tokens_[i].word != nullptr &&
        (tokens_[i].word->unit == PrintedUnit::centimetre || tokens_[i].word->unit == PrintedUnit::inch);
    if (!(inch_mark || unit) || shape(last_token_.back()) != figure_shape) return 0;
    unit_seen_ = true;
    return 1;
  }
  // What goes on with the name at hand: "3-6", "Adult small", "6 months".
  bool take_joined(std::size_t& i) {
    const std::size_t before = last_token_.back();
    if (shape(i) == '-' && glued(i) && glued(i + 1)) {
      if (dash_row_) return false;
      const std::size_t used = atom(i + 1, true);
      if (used == 0) return false;
      i += 1 + used;
      extend(i - 1);
      return true;
    }
    // "XS to M"
    if (shape(i) == static_cast<char>(Sense::to) && atom(i + 1, true) > 0 && !is_age(i + 1)) {
      i += 1 + atom(i + 1, true);
      extend(i - 1);
      return true;
    }
    const std::size_t used = atom(i, true);
    if (used == 0) return false;
    if (shape(i) == figure_shape && shape(before) == figure_shape) return false;
    if (shape(i) == figure_shape && is_age(before)) return false;
    const bool word = among(word_names, lower(i)) || is_age(i) || among(word_names, lower(before));
    if (!word) return false;
    i += used;
    extend(i - 1);
    return true;
  }

  bool take_separated(std::size_t& i) {
    std::size_t k = i;
    int opens = 0, closes = 0;
    char mark = 0;
    bool newline = false, tight = true;  // no space at either side
    for (; k < tokens_.size() && k < i + 6; ++k) {
      const char c = shape(k);
      tight = tight && glued(k);
      if (c == '(') {
        ++opens;
      } else if (c == ')') {
        if (opens > 0) return false;
        ++closes;
      } else if (c == '\n') {
        newline = true;
      } else if (c == ',' || c == ';' || c == ':' || c == '/' || c == gap_shape ||
                 c == static_cast<char>(Sense::also)) {
        if (mark == 0 || mark == gap_shape) mark = c;
      } else if (c == '-' && (dash_row_ || (!glued(k) && !glued(k + 1)))) {
        mark = '-';
      } else {
        break;
      }
    }
    tight = tight && glued(k);
    const int level = depth_ - closes;
    if (level < 0) return false;
    const std::size_t used = atom(k, true);
    if (used == 0 || is_age(k)) return false;
    const bool outside = level == 0 && opens == 0;
    // "Size S: 2 skeins"
    const bool letters = shape(first_token_.front()) != figure_shape;
    if (mark == ':' && letters && shape(k) == figure_shape && used == 1) return false;
    // "Sizes 1–3: 4, 5, 5 balls"
    if (mark == ':' && outside && closes == 0 && !tight) return false;
    if (newline && outside && mark != ',') return false;
    if (mark == 0 && outside && closes == 0 && shape(k) != figure_shape) return false;
    if (mark == 0 && outside && closes > 0 && group_cells_ != 1) return false;
    if (mark != 0 && outside && closes > 0 && mark != gap_shape && mark != '/') return false;
    const bool joins_bracket = mark == 0 || mark == ',' || mark == gap_shape ||
                               mark == static_cast<char>(Sense::also);  // "and [L, XL]"
    if (opens > 0 && !joins_bracket) return false;
    out_.slashed = out_.slashed || mark == '/';
    const bool slash = mark == '/' && glued(k) && closes == 0 && opens == 0;
    if (!slash) parted_ = true;
    depth_ = level + opens;
    if (!slash) group_cells_ = opens > 0 ? 1 : group_cells_ + 1;
    out_.bracketed = out_.bracketed || opens > 0;
    open_cell(k, used);
    out_.cells.back().opens_group = opens > 0;
    after_slash_.back() = slash;
    i = k + used + unit_behind(k + used);
    return true;
  }

  void finish(std::size_t i) {
    // "36/37, 38/39": a slash within a name where something else parts the names.
    std::vector<ListCell> cells;
    std::vector<std::size_t> firsts, lasts;
    for (std::size_t k = 0; k < out_.cells.size(); ++k) {
      if (after_slash_[k] && parted_ && !cells.empty()) {
        lasts.back() = last_token_[k];
        continue;
      }
      cells.push_back(out_.cells[k]);
      firsts.push_back(first_token_[k]);
      lasts.push_back(last_token_[k]);
    }
    out_.cells = std::move(cells);
    // The unit of ages behind the last name is said of all.
    const bool last_only = out_.cells.size() > 1 && lasts.back() > firsts.back() && is_age(lasts.back()) &&
                           !is_age(lasts[lasts.size() - 2]);
    if (last_only) --lasts.back();
    for (std::size_t k = 0; k < out_.cells.size(); ++k) {
      ListCell& cell = out_.cells[k];
      cell.end = tokens_[lasts[k]].end;
      const Token& token = tokens_[firsts[k]];
      cell.label = firsts[k] != lasts[k] || token.shape != figure_shape;
      if (!cell.label) {
        cell.number = token.number;
        cell.half_step = token.half_step;
      }
    }
    while (depth_ > 0 && (shape(i) == ')' || (shape(i) == '\n' && shape(i + 1) == ')'))) {
      if (shape(i) == '\n') ++i;
      --depth_;
      ++i;
    }
    if (i < tokens_.size() && is_age(i) && shape(i) != '\n') ++i;
    out_.next = i;
    out_.end = tokens_[i - 1].end;
  }

  const PlainText& plain_;
  const std::vector<Token>& tokens_;
  LabelList out_;
  std::vector<std::size_t> first_token_, last_token_;
  std::vector<bool> after_slash_;
  int depth_ = 0;
  int group_cells_ = 1;
  bool parted_ = false;
  bool dash_row_ = false;
  bool unit_seen_ = false;
};

}  // namespace

LabelList read_labels(const PlainText& plain, const std::vector<Token>& tokens, std::size_t first,
                      bool only_one) {
  if (first >= tokens.size()) return {};
  return LabelReader(plain, tokens).read(first, only_one);
}

bool is_label(const PlainText& plain, const std::vector<Token>& tokens, std::size_t at) {
  const LabelReader reader(plain, tokens);
  return reader.atom(at, false) > 0 && (reader.shape(at) != figure_shape || reader.atom(at, false) == 2);
}

}  // namespace skeinproof
