// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/plain_text.h"

#include <algorithm>
#include <iterator>
#include <limits>

#include "core/base/text.h"
#include "core/units/fraction_glyphs.h"

namespace skeinproof {
namespace {

struct PlainMark {
  char32_t sign;
  char plain;
};
constexpr PlainMark plain_marks[] = {
    {U'‐', '-'},  {U'‑', '-'},  {U'‒', '-'},  {U'–', '-'},       {U'—', '-'},       {U'―', '-'},
    {U'−', '-'},  {U'“', '"'},  {U'”', '"'},  {U'„', '"'},       {U'«', '"'},       {U'»', '"'},
    {U'″', '"'},  {U'‟', '"'},  {U'‘', '\''}, {U'’', '\''},      {U'‚', '\''},      {U'′', '\''},
    {U'⁄', '/'},  {U'∕', '/'},  {U'×', 'x'},  {U'•', '*'},       {U'·', '*'},       {U'▪', '*'},
    {U'●', '*'},  {U'…', '.'},  {U'№', '#'},  {U'\u2028', '\n'}, {U'\u2029', '\n'}, {U'\u0085', '\n'},
    {U'＝', '='}, {U'：', ':'}, {U'，', ','}, {U'（', '('},      {U'）', ')'},
};

bool is_narrow_space(char32_t c) {
  return c == U'\u00a0' || c == U'\u2009' || c == U'\u202f' || c == U'\u2007';
}

// One character of the text as it came.
struct Character {
  char32_t point = 0;
  std::uint8_t bytes = 1;
  bool sound = true;
};

Character character_at(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char lead = byte(at);
  if (lead < 0x80) return {lead, 1, true};
  const int more = (lead >> 5) == 6 ? 1 : (lead >> 4) == 14 ? 2 : (lead >> 3) == 30 ? 3 : 0;
  constexpr char32_t smallest[] = {0, 0x80, 0x800, 0x10000};
  constexpr Character broken = {0, 1, false};
  if (more == 0 || at + static_cast<std::size_t>(more) >= text.size()) return broken;
  char32_t point = lead & (0x3fu >> more);
  for (int i = 1; i <= more; ++i) {
    const unsigned char tail = byte(at + static_cast<std::size_t>(i));
    if ((tail & 0xc0) != 0x80) return broken;
    point = (point << 6) | (tail & 0x3fu);
  }
  if (point < smallest[more] || point > 0x10ffff || (point >= 0xd800 && point <= 0xdfff)) return broken;
  return {point, static_cast<std::uint8_t>(more + 1), true};
}

bool digit(std::string_view text, std::size_t i) {
  return i < text.size() && text[i] >= '0' && text[i] <= '9';
}

// "1 203" with a narrow space is one figure; a row of figures parted by such spaces is several.
bool groups_thousands(std::string_view before, std::string_view text, std::size_t after) {
  std::size_t digits = 0;
  while (digits < before.size() && digit(before, before.size() - 1 - digits)) ++digits;
  if (digits == 0 || digits > 3) return false;
  if (digits < before.size() &&
      (before[before.size() - 1 - digits] == ' ' || before[before.size() - 1 - digits] == '/') &&
      digit(before, before.size() - 2 - digits))
    return false;
  if (!digit(text, after) || !digit(text, after + 1) || !digit(text, after + 2)) return false;
  const std::size_t next = after + 3;
  if (next >= text.size()) return true;
  if (digit(text, next) || text[next] == '/') return false;
  const Character mark = character_at(text, next);
  return !(is_narrow_space(mark.point) && digit(text, next + mark.bytes));
}

}  // namespace

char fraction_byte(std::size_t row) { return static_cast<char>(row < 8 ? row + 1 : row - 8 + 0x0e); }
int fraction_row(char byte) {
  const int value = static_cast<unsigned char>(byte);
  const int row = value >= 1 && value <= 8        ? value - 1
                  : value >= 0x0e && value < 0x1a ? value - 0x0e + 8
                                                  : -1;
  return row < static_cast<int>(std::size(fraction_glyphs)) ? row : -1;
}

PlainText plain_text(std::string_view text) {
  text = text.substr(0, std::numeric_limits<std::uint32_t>::max());
  PlainText plain;
  plain.text.resize(text.size());
  plain.from.resize(text.size());
  plain.length.resize(text.size());
  std::size_t size = 0;
  const auto put = [&](char c, std::size_t from, std::uint8_t length) {
    plain.text[size] = c;
    plain.from[size] = static_cast<std::uint32_t>(from);
    plain.length[size] = length;
    ++size;
  };
  for (std::size_t at = 0; at < text.size();) {
    if (text[at] >= ' ' && text[at] < '\x7f') {
      put(text[at], at, 1);
      ++at;
      continue;
    }
    const Character c = character_at(text, at);
    const std::size_t next = at + c.bytes;
    if (!c.sound) {
      put(PlainText::unreadable, at, 1);
    } else if (c.point < 0x80) {
      const char byte = static_cast<char>(c.point);
      const bool control = (byte >= 0 && byte < ' ' && byte != '\n' && byte != '\t') || byte == '\x7f';
      if (byte == '\r')
        put('\n', at, next < text.size() && text[next] == '\n' ? 2 : 1);
      else
        put(control ? ' ' : byte, at, 1);
      if (byte == '\r' && next < text.size() && text[next] == '\n') ++at;
    } else if (is_invisible(c.point)) {
      // nothing is put
    } else if (is_odd_space(c.point)) {
      if (!(is_narrow_space(c.point) &&
            groups_thousands(std::string_view(plain.text).substr(0, size), text, next)))
        put(' ', at, c.bytes);
    } else {
      const auto mark = std::find_if(std::begin(plain_marks), std::end(plain_marks),
                                     [&](const PlainMark& row) { return row.sign == c.point; });
      const auto fraction = std::find_if(std::begin(fraction_glyphs), std::end(fraction_glyphs),
                                         [&](const FractionGlyph& row) { return row.sign == c.point; });
      if (mark != std::end(plain_marks)) {
        put(mark->plain, at, c.bytes);
      } else if (fraction != std::end(fraction_glyphs)) {
        put(fraction_byte(static_cast<std::size_t>(fraction - std::begin(fraction_glyphs))), at, c.bytes);
      } else {
        for (std::size_t i = at; i < next; ++i) put(text[i], i, 1);
      }
    }
    at += c.bytes;
  }
  plain.text.resize(size);
  plain.from.resize(size);
  plain.length.resize(size);
  return plain;
}

}  // namespace skeinproof
