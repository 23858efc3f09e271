// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/text.h"

namespace skeinproof {
namespace {

void append_utf8(std::string& out, char32_t c) {
  if (c < 0x80) {
    out += static_cast<char>(c);
  } else if (c < 0x800) {
    out += static_cast<char>(0xc0 | (c >> 6));
    out += static_cast<char>(0x80 | (c & 0x3f));
  } else if (c < 0x10000) {
    out += static_cast<char>(0xe0 | (c >> 12));
    out += static_cast<char>(0x80 | ((c >> 6) & 0x3f));
    out += static_cast<char>(0x80 | (c & 0x3f));
  } else {
    out += static_cast<char>(0xf0 | (c >> 18));
    out += static_cast<char>(0x80 | ((c >> 12) & 0x3f));
    out += static_cast<char>(0x80 | ((c >> 6) & 0x3f));
    out += static_cast<char>(0x80 | (c & 0x3f));
  }
}

constexpr char32_t broken = 0xfffd;

// Reads one code point at `at` and moves past it; `broken` for bytes that are no UTF-8.
char32_t next_code_point(std::string_view text, std::size_t& at) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char lead = byte(at);
  const int more = lead < 0x80         ? 0
                   : (lead >> 5) == 6  ? 1
                   : (lead >> 4) == 14 ? 2
                   : (lead >> 3) == 30 ? 3
                                       : -1;
  if (more < 0 || at + static_cast<std::size_t>(more) >= text.size()) {
    ++at;
    return broken;
  }
  char32_t point = more == 0 ? lead : lead & (0x3f >> more);
  for (int i = 1; i <= more; ++i) {
    const unsigned char tail = byte(at + static_cast<std::size_t>(i));
    if ((tail & 0xc0) != 0x80) {
      ++at;
      return broken;
    }
    point = (point << 6) | (tail & 0x3f);
  }
  constexpr char32_t smallest[] = {0, 0x80, 0x800, 0x10000};
  if (point < smallest[more] || point > 0x10ffff || (point >= 0xd800 && point <= 0xdfff)) {
    ++at;
    return broken;
  }
  at += static_cast<std::size_t>(more) + 1;
  return point;
}

}  // namespace

bool is_odd_space(char32_t c) {
  return c == U'\u00a0' || c == U'\u1680' || (c >= U'\u2000' && c <= U'\u200a') || c == U'\u202f' ||
         c == U'\u205f' || c == U'\u3000' || c == U'\t';
}

bool is_invisible(char32_t c) {
  return c == U'\u00ad' || c == U'\u200b' || c == U'\u200c' || c == U'\u200d' || c == U'\u2060' ||
         c == U'\ufeff';
}

std::vector<char32_t> code_points(std::string_view text) {
  std::vector<char32_t> points;
  points.reserve(text.size());
  for (std::size_t at = 0; at < text.size();) points.push_back(next_code_point(text, at));
  return points;
}

std::string to_utf8(const std::vector<char32_t>& points) {
  std::string text;
  text.reserve(points.size());
  for (char32_t c : points) append_utf8(text, c);
  return text;
}

bool is_utf8(std::string_view text) {
  constexpr std::string_view replacement = "\xef\xbf\xbd";
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t before = at;
    if (next_code_point(text, at) == broken && text.substr(before, 3) != replacement) return false;
  }
  return true;
}

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view blank = " \t\r\n";
  const auto first = text.find_first_not_of(blank);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(blank) - first + 1);
}

std::string tidy_spaces(std::string_view text) {
  std::string tidy;
  tidy.reserve(text.size());
  for (char32_t c : code_points(text)) {
    if (is_invisible(c)) continue;
    append_utf8(tidy, is_odd_space(c) ? U' ' : c);
  }
  return std::string(trimmed(tidy));
}

std::string lower_ascii(std::string_view text) {
  std::string lower(text);
  for (char& c : lower)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return lower;
}

std::string folded_name(std::string_view name) { return lower_ascii(tidy_spaces(name)); }

std::vector<std::string> split(std::string_view text, char separator) {
  std::vector<std::string> parts;
  for (std::size_t from = 0;;) {
    const auto to = text.find(separator, from);
    parts.emplace_back(text.substr(from, to - from));
    if (to == std::string_view::npos) return parts;
    from = to + 1;
  }
}

std::string join(const std::vector<std::string>& parts, std::string_view separator) {
  std::string text;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (i > 0) text += separator;
    text += parts[i];
  }
  return text;
}

LineColumn line_column(std::string_view text, std::size_t byte_offset) {
  LineColumn place;
  const std::string_view before = text.substr(0, byte_offset);
  for (char c : before) {
    const auto byte = static_cast<unsigned char>(c);
    if (c == '\n') {
      ++place.line;
      place.column = 1;
    } else if ((byte & 0xc0) != 0x80) {
      ++place.column;
    }
  }
  return place;
}

std::string quoted(std::string_view text, std::size_t longest) {
  auto points = code_points(text);
  if (points.size() > longest) {
    const std::size_t half = longest / 2;
    std::vector<char32_t> shorter(points.begin(), points.begin() + static_cast<std::ptrdiff_t>(half));
    shorter.push_back(U'…');
    shorter.insert(shorter.end(), points.end() - static_cast<std::ptrdiff_t>(longest - half - 1),
                   points.end());
    points = std::move(shorter);
  }
  return "“" + to_utf8(points) + "”";
}

}  // namespace skeinproof
