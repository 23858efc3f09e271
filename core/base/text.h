// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <string_view>
#include <vector>

namespace skeinproof {

// Small text helpers. All text is UTF-8; nothing here looks at the locale.

// A tab, no-break, thin, figure or other odd space; a soft hyphen or zero-width mark.
bool is_odd_space(char32_t c);
bool is_invisible(char32_t c);

// Turns no-break, thin, figure and other odd spaces into plain ones, drops soft hyphens and zero-width marks,
// and trims both ends.
std::string tidy_spaces(std::string_view text);
std::string_view trimmed(std::string_view text);
std::string lower_ascii(std::string_view text);
// A name as names are compared: spaces tidied, letters small.
std::string folded_name(std::string_view name);
std::vector<std::string> split(std::string_view text, char separator);
std::string join(const std::vector<std::string>& parts, std::string_view separator);

// The code points of a text; a byte that is no UTF-8 becomes U+FFFD.
std::vector<char32_t> code_points(std::string_view text);
std::string to_utf8(const std::vector<char32_t>& points);
bool is_utf8(std::string_view text);

// Line and column (from 1, in code points) of a byte offset.
struct LineColumn {
  int line = 1;
  int column = 1;
};
LineColumn line_column(std::string_view text, std::size_t byte_offset);

// The words in curly quotation marks, shortened in the middle to at most `longest` code points.
std::string quoted(std::string_view text, std::size_t longest = 60);

}  // namespace skeinproof
