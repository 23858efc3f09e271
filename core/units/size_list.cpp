// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/base/text.h"
#include "core/units/fraction_glyphs.h"
#include "core/units/read.h"

namespace skeinproof {
namespace {

using Points = std::vector<char32_t>;

bool is_digit(char32_t c) { return c >= U'0' && c <= U'9'; }
bool is_figure(char32_t c) { return is_digit(c) || value_of_fraction_glyph(c).has_value(); }
bool is_narrow_space(char32_t c) {
  return c == U'\u00a0' || c == U'\u2009' || c == U'\u202f' || c == U'\u2007';
}
bool is_space(char32_t c) { return c == U' ' || is_narrow_space(c) || c == U'\u2003' || c == U'\u2002'; }
bool is_dash(char32_t c) { return c == U'-' || c == U'–' || c == U'—' || c == U'−'; }
bool is_hard(char32_t c) { return c == U'\t' || c == U'\n' || c == U';' || c == U':' || c == U'|'; }

constexpr std::u32string_view opening = U"([{";
constexpr std::u32string_view closing = U")]}";

char32_t at(const Points& text, std::size_t i) { return i < text.size() ? text[i] : U'\0'; }
char32_t before(const Points& text, std::size_t i) { return i > 0 ? text[i - 1] : U'\0'; }

bool glued(const Points& text, std::size_t i) {
  return is_digit(before(text, i)) && is_digit(at(text, i + 1));
}

std::size_t after_digits(const Points& text, std::size_t i) {
  while (is_digit(at(text, i))) ++i;
  return i;
}

// Whether the figure that begins at i is a fraction of its own: "3/4", "½".
bool begins_fraction(const Points& text, std::size_t i) {
  if (value_of_fraction_glyph(at(text, i))) return true;
  const std::size_t slash = after_digits(text, i);
  return slash > i && (at(text, slash) == U'/' || at(text, slash) == U'⁄') && is_digit(at(text, slash + 1));
}

// A no-break space within one figure, as in "1 203".
bool groups_thousands(const Points& text, std::size_t i) {
  return is_narrow_space(text[i]) && is_digit(before(text, i)) && after_digits(text, i + 1) == i + 4 &&
         !begins_fraction(text, i + 1);
}

// What the marks of a whole text mean.
struct Marks {
  bool comma_separates = false;  // a comma between digits without a space
  bool slash_separates = false;  // a slash between digits without a space
  bool has_glued_comma = false;
};

Marks judge_marks(const Points& text) {
  Marks marks;
  bool other_separator = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char32_t c = text[i];
    if (c == U',' && glued(text, i)) marks.has_glued_comma = true;
    if ((c == U',' && !glued(text, i)) || is_hard(c)) other_separator = true;
    if (c == U'/') {
      if (is_space(before(text, i)) && is_space(at(text, i + 1))) other_separator = true;
      const std::size_t next = after_digits(text, i + 1);
      if (is_digit(before(text, i)) && next > i + 1 && at(text, next) == U'/') marks.slash_separates = true;
    }
    if (is_space(c) && is_figure(before(text, i)) && is_digit(at(text, i + 1)) &&
        !begins_fraction(text, i + 1) && !groups_thousands(text, i))
      other_separator = true;
  }
  if (marks.slash_separates) other_separator = true;
  marks.comma_separates = !other_separator;
  return marks;
}

bool separates(const Points& text, std::size_t i, const Marks& marks) {
  const char32_t c = text[i];
  if (is_hard(c)) return true;
  if (c == U',') return !glued(text, i) || marks.comma_separates;
  if (c != U'/') return false;
  return (is_space(before(text, i)) && is_space(at(text, i + 1))) ||
         (marks.slash_separates && glued(text, i));
}

class ListReader {
 public:
  ListReader(const Points& text, const Marks& marks) : text_(text), marks_(marks) {}

  Expected<SizeList> read() {
    for (std::size_t i = 0; i < text_.size(); ++i) {
      const char32_t c = text_[i];
      if (const auto kind = opening.find(c); kind != opening.npos) {
        if (open_ != opening.npos) return wrong(i, "no bracket within a bracket");
        take_cells(i);
        open_ = kind;
        last_ = Last::open;
        opens_next_ = true;
        start_ = i + 1;
      } else if (const auto end = closing.find(c); end != closing.npos) {
        if (open_ != end) return wrong(i, "an opening bracket before it");
        if (blank(i) && last_ == Last::open) return wrong(i, "values between the brackets");
        take_cells(i, last_ == Last::separator);
        open_ = opening.npos;
        last_ = Last::close;
        start_ = i + 1;
      } else if (separates(text_, i, marks_)) {
        take_cells(i, last_ != Last::close);
        last_ = Last::separator;
        start_ = i + 1;
      }
    }
    if (open_ != opening.npos) return wrong(text_.size(), "a closing bracket");
    take_cells(text_.size(), last_ == Last::separator);
    if (list_.values.empty()) return wrong(0, "one value per size, such as 5 (5, 6, 7)");
    return std::move(list_);
  }

 private:
  enum class Last { start, separator, open, close };

  tl::unexpected<Error> wrong(std::size_t i, std::string expected) const {
    Place place{{}, 1, 1};
    for (std::size_t k = 0; k < i && k < text_.size(); ++k) {
      place.column = text_[k] == U'\n' ? 1 : place.column + 1;
      if (text_[k] == U'\n') ++place.line;
    }
    const std::string found = i < text_.size() ? quoted(to_utf8(Points(1, text_[i]))) : "the end of the list";
    return failure(ErrorKind::wrong_shape, text_.empty() ? "nothing" : found, std::move(expected),
                   std::move(place));
  }

  bool blank(std::size_t end) const {
    return std::all_of(text_.begin() + static_cast<std::ptrdiff_t>(start_),
                       text_.begin() + static_cast<std::ptrdiff_t>(end), is_space);
  }

  void add(std::size_t from, std::size_t to) {
    const Points value(text_.begin() + static_cast<std::ptrdiff_t>(from),
                       text_.begin() + static_cast<std::ptrdiff_t>(to));
    const bool absent = value.empty() || (value.size() == 1 && is_dash(value[0]));
    list_.values.push_back(absent ? std::nullopt : std::optional(to_utf8(value)));
    list_.opens_group.push_back(opens_next_);
    opens_next_ = false;
  }

  // Whether the word that begins at i goes on with the value before it: a fraction after its whole, a unit
  // after its figure.
  bool continues(std::size_t value, std::size_t end, std::size_t i) const {
    if (!is_figure(text_[value])) return false;
    const bool whole = after_digits(text_, value) == end;
    if (is_figure(text_[i])) return whole && begins_fraction(text_, i);
    return is_figure(text_[end - 1]) && !is_dash(text_[i]) && text_[i] != U'.' && text_[i] != U'+';
  }

  // The values of one cell, which are several where only spaces part them.
  void take_cells(std::size_t end, bool absent_where_blank = false) {
    if (blank(end)) {
      if (absent_where_blank) add(end, end);
      return;
    }
    std::size_t value = end, value_end = end;
    for (std::size_t i = start_; i < end;) {
      while (i < end && is_space(text_[i])) ++i;
      if (i == end) break;
      std::size_t word_end = i;
      while (word_end < end && (!is_space(text_[word_end]) || groups_thousands(text_, word_end))) ++word_end;
      if (value == end) {
        value = i;
      } else if (!continues(value, value_end, i)) {
        add(value, value_end);
        value = i;
      }
      value_end = i = word_end;
    }
    add(value, value_end);
  }

  const Points& text_;
  const Marks& marks_;
  SizeList list_;
  std::size_t start_ = 0;
  std::size_t open_ = opening.npos;
  Last last_ = Last::start;
  bool opens_next_ = false;
};

Points list_points(std::string_view text) {
  while (!text.empty() && (text.back() == '\n' || text.back() == '\r')) text.remove_suffix(1);
  Points points = code_points(text);
  points.erase(std::remove(points.begin(), points.end(), U'\r'), points.end());
  return points;
}

}  // namespace

Expected<SizeList> read_size_list(std::string_view text, std::size_t sizes) {
  const Points points = list_points(text);
  Marks marks = judge_marks(points);
  auto list = ListReader(points, marks).read();
  if (sizes == 0 || !marks.has_glued_comma || !list || list->values.size() == sizes) return list;
  marks.comma_separates = !marks.comma_separates;
  auto other = ListReader(points, marks).read();
  return other && other->values.size() == sizes ? other : list;
}

}  // namespace skeinproof
