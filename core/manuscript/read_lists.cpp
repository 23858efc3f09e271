// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/read_lists.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/text.h"

namespace skeinproof {
namespace {

constexpr std::size_t most_marks = 6;   // between two values of a list: "),\n ("
constexpr std::size_t far_ahead = 400;  // tokens looked at to find the unit of a bracket

constexpr std::string_view size_names[] = {
    "xxs", "xs", "s",  "m",  "l",  "xl", "xxl", "xxxl",  "xxxxl",  "2xl",   "3xl",     "4xl", "5xl",
    "6xl", "1x", "2x", "3x", "4x", "5x", "6x",  "small", "medium", "large", "newborn", "nb",  "preemie"};

// What stands between two values.
struct Joint {
  int opens = 0, closes = 0;
  char mark = 0;  // , ; : / - \t & or 0 for space alone
  bool newline = false;
  bool glued = false;  // no space at either side
  bool sound = true;
  std::size_t next = 0;  // the token of the next value
  int empty_cells = 0;
};

class Folder {
 public:
  Folder(const PlainText& plain, const std::vector<Token>& tokens) : plain_(plain), tokens_(tokens) {}

  Items fold() {
    items_.tokens.reserve(tokens_.size());
    for (std::size_t i = 0; i < tokens_.size();) {
      const std::size_t before = i;
      if (starts_list(i)) i = take_list(i);
      if (i == before) {
        note_quotes(tokens_[i]);
        items_.tokens.push_back(tokens_[i++]);
      }
    }
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

  bool behind_size_word() const {
    const auto& out = items_.tokens;
    for (std::size_t k = out.size(); k-- > 0 && out.size() - k <= 3;) {
      const char c = out[k].shape;
      if (c == static_cast<char>(Sense::size_word)) return true;
      if (c != ':' && c != '-' && c != '(' && c != '\n' && c != gap_shape) return false;
    }
    return false;
  }
  // "S", "XL", "2XL" and the tokens they take; 0 where none stands there.
  std::size_t label_at(std::size_t i) const {
    std::string name;
    std::size_t used = 0;
    if (figure(i) && glued(i + 1) && (shape(i + 1) == 'w' || shape(i + 1) == 'W' || shape(i + 1) == 'x')) {
      name = lower_ascii(words(i)) + lower_ascii(words(i + 1));
      used = 2;
    } else if (i < tokens_.size() && !figure(i) && tokens_[i].end - tokens_[i].begin <= 8) {
      name = lower_ascii(words(i));
      used = 1;
      if (name == "x" && shape(i + 1) == '-' && glued(i + 1)) {
        name = "x" + std::string(i + 2 < tokens_.size() ? lower_ascii(words(i + 2).substr(0, 1)) : "");
        used = 3;
      }
    }
    if (used == 0 || i + used > tokens_.size()) return 0;
    if (words(i) == "m") return 0;
    return std::find(std::begin(size_names), std::end(size_names), name) != std::end(size_names) ? used : 0;
  }
  bool starts_list(std::size_t i) const {
    if (figure(i)) return true;
    if (shape(i) == '-') return shape(i + 1) == '(' && (figure(i + 2) || shape(i + 2) == '-') && !glued(i);
    const std::size_t used = label_at(i);
    if (used == 0) return false;
    if (behind_size_word()) return true;
    std::size_t next = i + used;
    if (shape(next) != '(' && shape(next) != '/' && shape(next) != ',') return false;
    return label_at(next + 1) > 0;
  }

  Joint joint_at(std::size_t i, const FigureList& list) const {
    Joint joint;
    std::size_t k = i;
    bool dash = false;
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
                 figure(k + 1)) {
        joint.mark = '-';
        dash = true;
      } else if (c == static_cast<char>(Sense::to) && k == i && figure(k + 1)) {
        joint.mark = '-';
      } else if (c == static_cast<char>(Sense::also) && k == i && figure(k + 1) &&
                 list.unit == PrintedUnit::none) {
        joint.mark = '&';
      } else {
        break;
      }
    }
    static_cast<void>(dash);
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

  // The unit within the bracket that opens at i, if any.
  const TradeWord* unit_in_bracket(std::size_t i) const {
    for (std::size_t k = i + 1; k < tokens_.size() && k < i + far_ahead; ++k) {
      if (const TradeWord* unit = unit_at(k)) return unit;
      const char c = shape(k);
      if (c == ')') return nullptr;
      if (c != figure_shape && c != ',' && c != ';' && c != ':' && c != '/' && c != '-' && c != '\n' &&
          c != gap_shape)
        return nullptr;
    }
    return nullptr;
  }

  ListCell cell_at(std::size_t i, std::size_t used) const {
    ListCell cell;
    cell.begin = tokens_[i].begin;
    cell.end = tokens_[i + used - 1].end;
    cell.label = used > 1 || !figure(i);
    cell.absent = shape(i) == '-';
    if (cell.absent) cell.label = false;
    if (!cell.label && !cell.absent) {
      cell.number = tokens_[i].number;
      cell.half_step = tokens_[i].half_step;
      const auto text = words(i);
      if (text.size() < 200 && text.find_first_not_of("0123456789") == std::string_view::npos)
        cell.digits = static_cast<std::uint8_t>(text.size());
    }
    return cell;
  }
  void push(ListCell cell, FigureList& list) {
    items_.cells.push_back(cell);
    ++list.cells;
    list.end = cell.end;
  }

  // Tokens that the value at i takes; 0 where none stands there.
  std::size_t value_at(std::size_t i, bool of_sizes) const {
    if (of_sizes) {
      if (const std::size_t used = label_at(i)) return used;
      if (figure(i) && shape(i + 1) == '-' && glued(i + 1) && figure(i + 2) && glued(i + 2)) return 3;
    }
    if (figure(i)) return 1;
    return 0;
  }

  bool joins(const Joint& joint, const FigureList& list, int depth, bool of_sizes) const {
    if (!joint.sound || joint.closes > depth) return false;
    const int level = depth - joint.closes;  // before brackets open
    const bool outside = level == 0 && joint.opens == 0;
    const bool has_unit = list.unit != PrintedUnit::none;
    if (joint.opens > 0 && level == 0 && joint.mark != 0 && joint.mark != ',' && joint.mark != gap_shape)
      return false;
    if (joint.newline && outside && !(joint.mark == ',' && !list.bracketed && !has_unit && list.cells > 1))
      return false;
    if (joint.newline && joint.opens > 0 && level == 0 && has_unit) return false;
    if (!outside && joint.opens == 0 && joint.closes == 0) return true;  // within a bracket anything parts
    if (joint.opens > 0) return !(joint.mark == '/' || joint.mark == '-');
    if (list.bracketed && joint.mark != gap_shape && !(joint.closes > 0 && level > 0)) {
      // "5 (6, 7), 8 (9, 10)" is two lists
      return false;
    }
    if (outside && !list.bracketed && bracket_follows(joint.next) && !of_sizes) return false;
    switch (joint.mark) {
      case ',':
        return true;
      case ';':
        return !has_unit || list.unit_each;
      case ':':
        return joint.glued;
      case '/':
        return !has_unit;
      case '-':
        return !has_unit;
      case '&':
        return list.cells > 1 || unit_at(joint.next + 1) != nullptr;
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
  bool leading_zero(const FigureList& list) const {
    const ListCell& cell = items_.cells[list.first_cell];
    return cell.digits > 1 && plain_.text[cell.begin] == '0';
  }

  std::size_t take_list(std::size_t i) {
    FigureList list;
    const bool of_sizes = behind_size_word() || (!figure(i) && shape(i) != '-');
    list.first_cell = items_.cells.size();
    list.begin = tokens_[i].begin;
    std::size_t used = shape(i) == '-' ? 1 : value_at(i, of_sizes);
    if (used == 0) return i;
    push(cell_at(i, used), list);
    i += used;
    int depth = 0;
    i = take_unit(i, list, depth);
    for (;;) {
      Joint joint = joint_at(i, list);
      std::size_t at = joint.next;
      std::size_t take = value_at(at, of_sizes);
      // A dash where a value should stand.
      if (take == 0 && shape(at) == '-' && (joint.mark != 0 || joint.opens > 0 || list.spaced)) {
        const char after = shape(at + 1);
        if (after == ',' || after == ')' || after == ';' || after == ':' || after == '/' ||
            after == gap_shape || after == '(' || after == '\n' || after == '.' || after == '\0' ||
            unit_at(at + 1) != nullptr)
          take = 1;
      }
      if (take == 0 || !joins(joint, list, depth, of_sizes)) break;
      if (list.unit != PrintedUnit::none && !fits_unit(joint, at, list, depth)) break;
      depth += joint.opens - joint.closes;
      ListCell cell = cell_at(at, take);
      cell.opens_group = joint.opens > 0;
      cell.after_comma = joint.mark == ',' && joint.glued && joint.opens == 0 && joint.closes == 0;
      cell.range = joint.mark == '-';
      for (int empty = 0; empty < joint.empty_cells; ++empty) {
        ListCell none;
        none.begin = none.end = cell.begin;
        none.absent = true;
        push(none, list);
      }
      list.bracketed = list.bracketed || joint.opens > 0;
      list.slashed = list.slashed || joint.mark == '/';
      list.spaced = list.spaced || (joint.mark == 0 && joint.opens == 0 && joint.closes == 0) ||
                    joint.mark == gap_shape;
      list.parted =
          list.parted || (!cell.after_comma && !cell.range && joint.opens == 0 && joint.closes == 0);
      push(cell, list);
      i = take_unit(at + take, list, depth);
    }
    while (depth > 0 && (shape(i) == ')' || (shape(i) == '\n' && shape(i + 1) == ')'))) {
      if (shape(i) == '\n') ++i;
      list.end = tokens_[i].end;
      --depth;
      ++i;
    }
    if (list.unit == PrintedUnit::none) i = take_unit(i, list, depth);
    Token token;
    token.shape = list.unit == PrintedUnit::none && of_sizes ? '9' : list_shape(list.unit);
    token.begin = list.begin;
    token.end = list.end;
    token.glued = tokens_[first_of(list.begin, i)].glued;
    token.list = static_cast<std::int32_t>(items_.lists.size());
    items_.lists.push_back(list);
    items_.tokens.push_back(token);
    return i;
  }
  std::size_t first_of(std::uint32_t begin, std::size_t i) const {
    while (i > 0 && (i >= tokens_.size() || tokens_[i].begin > begin)) --i;
    return i;
  }

  // A unit behind the value just taken.
  std::size_t take_unit(std::size_t i, FigureList& list, int depth) {
    const bool hyphen = shape(i) == '-' && glued(i) && glued(i + 1);  // "50-g balls"
    const std::size_t at = hyphen ? i + 1 : i;
    const TradeWord* unit = unit_at(at);
    if (unit == nullptr) return i;
    if (hyphen && unit->unit != PrintedUnit::gram && unit->unit != PrintedUnit::ounce &&
        unit->unit != PrintedUnit::inch && unit->unit != PrintedUnit::centimetre &&
        unit->unit != PrintedUnit::metre && unit->unit != PrintedUnit::yard)
      return i;
    list.unit = unit->unit;
    list.unit_word = unit;
    list.unit_each = list.unit_each || depth > 0 || list.cells == 1;
    list.end = tokens_[at].end;
    return at + 1;
  }

  // Behind a value with its unit: the next value goes on with the list where it has the same unit, or stands
  // in a bracket without any.
  bool fits_unit(const Joint& joint, std::size_t at, const FigureList& list, int depth) const {
    if (joint.mark == '-' || joint.mark == '/') return false;
    if (joint.opens > 0 && depth == 0) {
      const TradeWord* unit = unit_in_bracket(at - 1);
      return unit == nullptr ? list.cells == 1 : unit->unit == list.unit;
    }
    if (depth > 0) return true;
    const TradeWord* unit = unit_at(at + 1);
    return unit != nullptr && unit->unit == list.unit;
  }

  const PlainText& plain_;
  const std::vector<Token>& tokens_;
  Items items_;
  bool in_quotes_ = false;
};

bool thousands_like(const ListCell& head, const ListCell& tail) {
  return tail.after_comma && tail.digits == 3 && head.digits >= 1 && head.digits <= 3 && head.number != 0;
}

}  // namespace

Items fold_lists(const PlainText& plain, const std::vector<Token>& tokens) {
  return Folder(plain, tokens).fold();
}

std::vector<PrintedValue> values_of(const Items& items, const FigureList& list, const PlainText& plain,
                                    std::size_t sizes) {
  const ListCell* cells = items.cells.data() + list.first_cell;
  std::size_t glued = 0;
  bool thousands = true;
  for (std::size_t i = 1; i < list.cells; ++i)
    if (cells[i].after_comma) {
      ++glued;
      thousands = thousands && thousands_like(cells[i - 1], cells[i]);
    }
  const bool alone = list.cells == 2 && glued == 1 && !list.bracketed;
  bool separates = glued > 0 && !list.parted && !alone;
  const std::size_t apart = list.cells, merged = list.cells - glued;
  if (glued > 0 && sizes > 0) {
    if (!separates && merged != sizes && apart == sizes) separates = true;
    if (separates && apart != sizes && merged == sizes) separates = false;
  }
  thousands = thousands && (list.parted || alone || merged == sizes);
  std::vector<PrintedValue> values;
  values.reserve(list.cells);
  for (std::size_t i = 0; i < list.cells; ++i) {
    const ListCell& cell = cells[i];
    if (cell.after_comma && !separates && !values.empty() && values.back().number && !cell.absent &&
        !cell.label) {
      PrintedValue& value = values.back();
      const double scale = std::pow(10.0, -static_cast<double>(cell.digits));
      if (thousands) {
        value.number = *value.number * 1000 + cell.number;
      } else {
        value.number = *value.number + cell.number * scale;
        value.half_step = cell.half_step * scale;
      }
      value.span.end = plain.as_came(cell.begin, cell.end).end;
      continue;
    }
    PrintedValue value;
    if (!cell.absent && !cell.label) {
      value.number = cell.number;
      value.half_step = cell.half_step;
    }
    value.span = plain.as_came(cell.begin, cell.end);
    if (cell.begin == cell.end && cell.begin < plain.from.size())
      value.span = {plain.from[cell.begin], plain.from[cell.begin]};
    value.opens_group = cell.opens_group;
    values.push_back(value);
  }
  return values;
}

}  // namespace skeinproof
