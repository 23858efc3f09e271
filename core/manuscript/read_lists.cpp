// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/read_lists.h"

#include <algorithm>

#include "core/base/text.h"
#include "core/manuscript/read_labels.h"

namespace skeinproof {
namespace {

constexpr std::size_t most_marks = 6;  // between two values of a list: "),\n ("
constexpr char and_mark = '&';
constexpr std::size_t far_ahead = 400;  // tokens looked at to find the unit of a bracket

// What stands between two values.
struct Joint {
  int opens = 0, closes = 0;
  char mark = 0;  // , ; : / - \t & or 0 for space alone
  bool newline = false;
  bool glued = false;  // no space at either side
  bool sound = true;
  std::size_t next = 0;  // the token of the next value
  bool apart = false;    // a dash with spaces about it
  int empty_cells = 0;
};

class Folder {
 public:
  Folder(const PlainText& plain, std::vector<Token> tokens) : plain_(plain), tokens_(std::move(tokens)) {}

  Items fold() {
    for (std::size_t i = 0; i < tokens_.size();) {
      const std::size_t before = i;
      i = take_labels(i);
      if (i == before && starts_list(i)) i = take_list(i);
      if (i == before) {
        note_quotes(tokens_[i]);
        put(tokens_[i++]);
      }
    }
    tokens_.resize(out_);
    items_.tokens = std::move(tokens_);
    return std::move(items_);
  }

 private:
  char shape(std::size_t i) const { return i < tokens_.size() ? tokens_[i].shape : '\0'; }
  bool glued(std::size_t i) const { return i < tokens_.size() && tokens_[i].glued; }
  bool figure(std::size_t i) const { return shape(i) == figure_shape; }
  std::string_view words(std::size_t i) const {
    return std::string_view(plain_.text).substr(tokens_[i].begin, tokens_[i].end - tokens_[i].begin);
  }
  void note_quotes(const Token& token) {
    if (token.shape == '\n') in_quotes_ = false;
    if (token.shape == '"') in_quotes_ = !in_quotes_;
  }

  bool starts_line() const {
    const char last = before_list(1);
    return last == '\n' || last == '\0' ||
           (last == gap_shape && (before_list(2) == '\n' || before_list(2) == '\0'));
  }
  bool behind_sample_word() const {
    for (std::size_t k = 1; k <= 6; ++k) {
      const char c = before_list(k);
      if (c == static_cast<char>(Sense::shown) || c == static_cast<char>(Sense::model)) return true;
      if (c == '\n' || c == '.') return false;
    }
    return false;
  }
  // The names of the sizes behind the word for them, or in the head row of a table; the marks and small words
  // between are passed on.
  std::size_t take_labels(std::size_t i) {
    std::size_t first = i;
    if (shape(i) == static_cast<char>(Sense::size_word)) {
      if (tokens_[i].word->value == "one size") return i;
      first = after_size_word(i + 1);
    } else if (!(starts_line() && is_label(plain_, tokens_, i) && heads_table(i))) {
      return i;
    }
    const LabelList labels = read_labels(plain_, tokens_, first, behind_sample_word());
    if (labels.cells.empty()) return i;
    for (; i < first; ++i) put(tokens_[i]);
    FigureList list;
    list.first_cell = items_.cells.size();
    list.cells = labels.cells.size();
    list.begin = labels.cells.front().begin;
    list.end = labels.end;
    list.bracketed = labels.bracketed;
    list.slashed = labels.slashed;
    list.parted = true;
    items_.cells.insert(items_.cells.end(), labels.cells.begin(), labels.cells.end());
    push_list(list, tokens_[first].glued, label_list_shape);
    return labels.next;
  }
  std::size_t after_size_word(std::size_t i) const {
    constexpr std::string_view between = ":-(\n\t*";
    constexpr std::string_view words[] = {"eu",   "european", "uk",      "us",    "to", "fit",
                                          "ages", "age",      "women's", "men's", "is", "are"};
    for (std::size_t k = 0; k < 5 && i < tokens_.size(); ++k, ++i) {
      if (between.find(shape(i)) != std::string_view::npos) continue;
      const std::string word = lower_ascii(this->words(i));
      if (tokens_[i].end - tokens_[i].begin > 10 ||
          std::find(std::begin(words), std::end(words), word) == std::end(words))
        break;
    }
    return i;
  }
  bool heads_table(std::size_t i) const {
    std::size_t next = i + 1;
    if (figure(i)) ++next;
    const char c = shape(next);
    return (c == gap_shape || c == '(' || c == '/' || c == ',') && is_label(plain_, tokens_, next + 1);
  }
  bool starts_list(std::size_t i) const {
    if (figure(i)) return true;
    return shape(i) == '-' && shape(i + 1) == '(' && (figure(i + 2) || shape(i + 2) == '-') && !glued(i);
  }

  Joint joint_at(std::size_t i, const FigureList& list) const {
    Joint joint;
    std::size_t k = i;
    joint.glued = true;
    for (; k < tokens_.size() && k - i < most_marks; ++k) {
      const char c = shape(k);
      if (!glued(k)) joint.glued = false;
      if (c == '(') {
        ++joint.opens;
      } else if (c == ')') {
        if (joint.opens > 0) joint.sound = false;
        ++joint.closes;
      } else if (c == '\n') {
        joint.newline = true;
        joint.glued = false;
      } else if (c == gap_shape) {
        const bool tab = words(k).find('\t') != std::string_view::npos || words(k) == "|";
        if (joint.mark == gap_shape && tab) ++joint.empty_cells;
        if (joint.mark == 0) joint.mark = gap_shape;
        joint.glued = false;
      } else if (c == ',' || c == ';' || c == ':' || c == '/') {
        if (joint.mark != 0 && joint.mark != gap_shape) joint.sound = false;
        joint.mark = c;
      } else if (c == '-' && joint.mark == 0 && joint.opens == 0 && joint.closes == 0 && !joint.newline &&
                 (figure(k + 1) || list.dashed)) {
        // "17 - 19 - 21" is a list, "5 - 10" a stretch.
        joint.mark = '-';
        joint.apart = !glued(k) && !glued(k + 1) && (list.dashed || shape(k + 2) == '-');
      } else if (c == '+' && figure(k + 1) && joint.mark != 0) {
        continue;
      } else if (c == static_cast<char>(Sense::to) && k == i && (figure(k + 1) || shape(k + 1) == '+')) {
        joint.mark = '-';
      } else if (c == static_cast<char>(Sense::also) && k == i && figure(k + 1) &&
                 list.unit == PrintedUnit::none) {
        joint.mark = and_mark;
      } else if (c == static_cast<char>(Sense::also) && joint.mark == 0 && joint.opens == 0 &&
                 list.bracketed && shape(k + 1) == '(' && figure(k + 2) && list.unit == PrintedUnit::none) {
        joint.mark = and_mark;  // "4 (5, 5) and [6, 6, 7]"
      } else {
        break;
      }
    }
    if (!glued(k)) joint.glued = false;
    joint.next = k;
    return joint;
  }

  // Whether a list in brackets begins at this value: "5 (5, 6)".
  bool bracket_follows(std::size_t value) const {
    std::size_t k = value + 1;
    if (shape(k) == '\n') ++k;
    return shape(k) == '(' && (figure(k + 1) || (shape(k + 1) == '-' && !figure(k + 2)));
  }

  const TradeWord* unit_at(std::size_t i) const {
    static constexpr TradeWord percent = {"%", Sense::unit_word, {}, PrintedUnit::percent};
    static constexpr TradeWord inch = {"\"", Sense::unit_word, {}, PrintedUnit::inch};
    if (shape(i) == '%') return &percent;
    if (shape(i) == '"' && glued(i) && !in_quotes_) return &inch;
    if (i >= tokens_.size() || tokens_[i].word == nullptr) return nullptr;
    const TradeWord* word = tokens_[i].word;
    if (word->sense == Sense::needle_system) return nullptr;
    if (word->unit == PrintedUnit::none) return nullptr;
    // A lone capital is a label: "M", "G".
    if (word->words.size() == 1 && tokens_[i].capital && !glued(i)) return nullptr;
    if (word->sense == Sense::in && !unit_in(i)) return nullptr;
    return word;
  }
  // "in" behind a figure is an inch unless what follows makes it the small word.
  bool unit_in(std::size_t i) const {
    const char next = shape(i + 1);
    if (next == 'W' || next == static_cast<char>(Sense::role_label) ||
        next == static_cast<char>(Sense::role_words) || next == static_cast<char>(Sense::fabric) ||
        next == static_cast<char>(Sense::all_sizes) || next == static_cast<char>(Sense::per))
      return false;
    if (next == 'w') return words(i + 1) != "the" && words(i + 1) != "next" && words(i + 1) != "this";
    return true;
  }

  // The unit within the bracket that opens at i, if any; whether only figures stand before it.
  struct InBracket {
    const TradeWord* unit = nullptr;
    bool figures = true;
  };
  InBracket in_bracket(std::size_t i) const {
    constexpr std::string_view between = "0,;:/-\n\t";
    for (std::size_t k = i + 1; k < tokens_.size() && k < i + far_ahead; ++k) {
      if (const TradeWord* unit = unit_at(k)) return {unit, true};
      if (shape(k) == ')') break;
      if (between.find(shape(k)) == std::string_view::npos) return {nullptr, false};
    }
    return {};
  }

  ListCell cell_at(std::size_t i) const {
    ListCell cell;
    cell.begin = tokens_[i].begin;
    cell.end = tokens_[i].end;
    cell.absent = !figure(i);
    if (cell.absent) return cell;
    cell.number = tokens_[i].number;
    cell.half_step = tokens_[i].half_step;
    const auto text = words(i);
    cell.slashed_fraction = text.size() == 3 && text[1] == '/';
    if (text.size() < 200 && text.find_first_not_of("0123456789") == std::string_view::npos)
      cell.digits = static_cast<std::uint8_t>(text.size());
    return cell;
  }
  void push(ListCell cell, FigureList& list) {
    items_.cells.push_back(cell);
    ++list.cells;
    list.end = cell.end;
  }

  // A dash that stands where a value should: an absent one.
  bool absent_at(std::size_t i, const Joint& joint, const FigureList& list) const {
    if (shape(i) != '-' || !(joint.mark != 0 || joint.opens > 0 || list.spaced)) return false;
    constexpr std::string_view ends = ",);:/\t(\n.";
    const char after = shape(i + 1);
    return after == '\0' || ends.find(after) != std::string_view::npos || unit_at(i + 1) != nullptr;
  }

  bool joins(const Joint& joint, const FigureList& list, int depth) const {
    if (!joint.sound || joint.closes > depth) return false;
    const int level = depth - joint.closes;  // before brackets open
    const bool outside = level == 0 && joint.opens == 0;
    const bool has_unit = list.unit != PrintedUnit::none;
    if (joint.opens > 0 && level == 0 && joint.mark != 0 && joint.mark != ',' && joint.mark != gap_shape &&
        joint.mark != and_mark)
      return false;
    if (joint.newline && outside && !(joint.mark == ',' && !list.bracketed && !has_unit && list.cells > 1))
      return false;
    if (joint.newline && joint.opens > 0 && level == 0 && has_unit) return false;
    if (!outside && joint.opens == 0 && joint.closes == 0) return true;  // within a bracket anything parts
    if (joint.opens > 0) return !(joint.mark == '/' || joint.mark == '-');
    if (list.bracketed && level == 0) {
      // "1 (2) 3 (4) 5" is one list, "5 (6, 7), 8 (9, 10)" two.
      const bool in_turn = joint.closes > 0 && joint.mark == 0 && list.in_turn && !has_unit;
      const bool decimal = joint.mark == ',' && joint.glued && joint.closes == 0;
      return in_turn || decimal || joint.mark == gap_shape;
    }
    const bool decimal_comma = joint.mark == ',' && joint.glued;
    // "81-86 (91-97)": each value may be a stretch.
    const bool stretch = joint.mark == '-' && joint.glued && list.cells == 1;
    if (outside && !list.bracketed && !decimal_comma && !stretch && bracket_follows(joint.next)) return false;
    // "7/7/8, 18 mm": one list has one mark, but for a decimal comma within its figures.
    if (list.mark != 0 && joint.mark != list.mark && !(joint.mark == ',' && joint.glued) &&
        joint.mark != and_mark && joint.mark != 0)
      return false;
    switch (joint.mark) {
      case ',':
        return !(list.cells == 1 && leading_zero(list) && !joint.glued);
      case ';':
        return !has_unit || list.unit_each;
      case ':':
        return joint.glued;
      case '/':
      case '-':
        return !has_unit || same_unit_ahead(joint.next, list);
      case and_mark:
        return list.cells > 1 || ends_in_pair(joint) || unit_at(joint.next + 1) != nullptr;
      case gap_shape:
        return list.cells > 1 || !leading_zero(list);
      case 0:
        return !has_unit && !leading_zero(list) &&
               (list.spaced ||
                (list.cells == 1 && figure(joint.next + 1) && !bracket_follows(joint.next + 1)));
      default:
        return false;
    }
  }
  // "5", "87,5"
  bool one_value(const FigureList& list) const {
    return list.cells == 1 || (list.cells == 2 && items_.cells[list.first_cell + 1].after_comma);
  }
  // The unit behind a value, which may have a decimal comma: "87,5 cm".
  const TradeWord* unit_of_value(std::size_t value) const {
    const bool comma = shape(value + 1) == ',' && glued(value + 1) && figure(value + 2) && glued(value + 2);
    return unit_at(comma ? value + 3 : value + 1);
  }
  bool same_unit_ahead(std::size_t value, const FigureList& list) const {
    const TradeWord* unit = unit_of_value(value);
    return unit != nullptr && unit->unit == list.unit;
  }
  bool leading_zero(const FigureList& list) const {
    const ListCell& cell = items_.cells[list.first_cell];
    return cell.digits > 1 && plain_.text[cell.begin] == '0';
  }

  // Behind the name of a needle system, or "no.", a figure stands alone: "US 5 (3.75 mm)", "#204, 1 skein".
  bool stands_alone() const {
    const char before = before_list(1) == '.' ? before_list(2) : before_list(1);
    return before == '#' || before == static_cast<char>(Sense::needle_system) ||
           before == static_cast<char>(Sense::role_prefix);
  }
  // "US 4 and 6)": the sizes of two needles.
  bool ends_in_pair(const Joint& joint) const {
    if (joint.mark != and_mark || !stands_alone()) return false;
    const char behind = shape(joint.next + 1);
    return behind == ')' || behind == ',' || behind == '.' || behind == '\n' || behind == '\0' ||
           behind == static_cast<char>(Sense::needle_word);
  }
  // "Rust 18 ..... 2 balls": a figure that belongs to the word before it.
  bool belongs_to_name() const { return before_list(1) == 'W'; }

  std::size_t take_list(std::size_t i) {
    FigureList list;
    const bool alone = stands_alone(), of_name = belongs_to_name();
    const bool is_glued = glued(i);
    list.first_cell = items_.cells.size();
    list.begin = tokens_[i].begin;
    push(cell_at(i), list);
    int depth = 0;
    std::size_t group = 0;  // values in the bracket at hand
    i = take_unit(i + 1, list, depth);
    for (;;) {
      const Joint joint = joint_at(i, list);
      const std::size_t at = joint.next;
      if (!figure(at) && !absent_at(at, joint, list)) break;
      if (alone && joint.mark != '-' && !(joint.mark == ',' && joint.glued) && !ends_in_pair(joint)) break;
      if (of_name && list.cells == 1 && joint.mark == gap_shape) break;
      if (!joins(joint, list, depth)) break;
      if (list.unit != PrintedUnit::none && !fits_unit(joint, at, list, depth)) break;
      depth += joint.opens - joint.closes;
      const bool decimal = joint.mark == ',' && joint.glued && joint.opens == 0 && joint.closes == 0;
      group = joint.opens > 0 ? 1 : decimal ? group : group + 1;
      ListCell cell = cell_at(at);
      cell.opens_group = joint.opens > 0;
      const bool bare = joint.opens == 0 && joint.closes == 0;
      cell.after_comma = decimal;
      if (bare && depth == 0 && !decimal && joint.mark != 0 && list.mark == 0) list.mark = joint.mark;
      cell.range = joint.mark == '-' && !joint.apart;
      for (int empty = 0; empty < joint.empty_cells; ++empty) push_empty(cell.begin, list);
      list.bracketed = list.bracketed || joint.opens > 0;
      list.in_turn = list.in_turn && (depth == 0 || group == 1);
      list.slashed = list.slashed || joint.mark == '/';
      list.dashed = list.dashed || joint.apart;
      list.spaced = list.spaced || (joint.mark == 0 && bare) || joint.mark == gap_shape;
      list.parted = list.parted || (!cell.after_comma && !cell.range && bare);
      push(cell, list);
      i = take_unit(at + 1, list, depth);
    }
    while (depth > 0 && (shape(i) == ')' || (shape(i) == '\n' && shape(i + 1) == ')'))) {
      if (shape(i) == '\n') ++i;
      list.end = tokens_[i].end;
      --depth;
      ++i;
    }
    if (list.unit == PrintedUnit::none) i = take_unit(i, list, depth);
    push_list(list, is_glued, list_shape(list.unit));
    return i;
  }
  void push_empty(std::uint32_t place, FigureList& list) {
    ListCell none;
    none.begin = none.end = place;
    none.absent = true;
    push(none, list);
  }
  void push_list(const FigureList& list, bool is_glued, char list_letter) {
    Token token;
    token.shape = list_letter;
    token.begin = list.begin;
    token.end = list.end;
    token.glued = is_glued;
    token.list = static_cast<std::int32_t>(items_.lists.size());
    items_.lists.push_back(list);
    put(token);
  }

  // A unit behind the value just taken.
  std::size_t take_unit(std::size_t i, FigureList& list, int depth) {
    const bool hyphen = shape(i) == '-' && glued(i) && glued(i + 1);  // "50-g balls"
    const bool column = list.spaced && shape(i) == gap_shape;
    const std::size_t at = hyphen || column ? i + 1 : i;
    const TradeWord* unit = unit_at(at);
    if (unit == nullptr) return i;
    if (hyphen && unit->unit != PrintedUnit::gram && unit->unit != PrintedUnit::ounce &&
        unit->unit != PrintedUnit::inch && unit->unit != PrintedUnit::centimetre &&
        unit->unit != PrintedUnit::metre && unit->unit != PrintedUnit::yard)
      return i;
    list.unit = unit->unit;
    list.unit_word = unit;
    list.unit_each = list.unit_each || depth > 0 || one_value(list);
    list.end = tokens_[at].end;
    return at + 1;
  }

  // Behind a value with its unit: the next value goes on with the list where it has the same unit, or stands
  // in a bracket without any.
  bool fits_unit(const Joint& joint, std::size_t at, const FigureList& list, int depth) const {
    const int level = depth - joint.closes;
    if (joint.opens > 0 && level == 0) {
      const InBracket inside = in_bracket(at - 1);
      return inside.unit == nullptr ? inside.figures && one_value(list) : inside.unit->unit == list.unit;
    }
    const TradeWord* unit = unit_of_value(at);
    return unit == nullptr ? level > 0 : unit->unit == list.unit;
  }

  // What is folded takes the place of what was read: never more tokens than there were.
  void put(const Token& token) { tokens_[out_++] = token; }
  // The shape of the k-th token before the one at hand.
  char before_list(std::size_t k) const { return k <= out_ ? tokens_[out_ - k].shape : '\0'; }

  const PlainText& plain_;
  std::vector<Token> tokens_;
  std::size_t out_ = 0;
  Items items_;
  bool in_quotes_ = false;
};

}  // namespace

Items fold_lists(const PlainText& plain, std::vector<Token> tokens) {
  return Folder(plain, std::move(tokens)).fold();
}

}  // namespace skeinproof
