// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/show.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <limits>

#include "core/units/fraction_glyphs.h"

namespace skeinproof {
namespace {

constexpr std::string_view unknown = "–";
constexpr std::string_view no_break_space = "\u00a0";

// Adds one to the last digit of a decimal text without a sign.
void step_up(std::string& digits) {
  for (std::size_t at = digits.size(); at-- > 0;) {
    if (digits[at] == '.') continue;
    if (digits[at] != '9') {
      ++digits[at];
      return;
    }
    digits[at] = '0';
  }
  digits.insert(digits.begin(), '1');
}

// The absolute value at so many decimals, half up on its shortest text.
std::string rounded_digits(double value, int decimals) {
  std::string text = exact_number(std::abs(value));
  if (text.find('.') == std::string::npos) text += '.';
  const std::size_t wanted = text.find('.') + 1 + static_cast<std::size_t>(decimals);
  const bool up = text.size() > wanted && text[wanted] >= '5';
  text.resize(wanted, '0');
  if (up) step_up(text);
  if (text.back() == '.') text.pop_back();
  return text;
}

std::string styled(std::string digits, bool negative, const NumberStyle& style) {
  const std::size_t point = std::min(digits.find('.'), digits.size());
  std::string whole = digits.substr(0, point);
  std::string rest = digits.substr(point);
  if (style.mark == DecimalMark::comma && !rest.empty()) rest[0] = ',';
  if (style.group_thousands) {
    const std::string_view group = style.mark == DecimalMark::point ? std::string_view(",") : no_break_space;
    for (std::size_t at = whole.size(); at > 3;) whole.insert(at -= 3, group);
  }
  const bool nothing = digits.find_first_not_of("0.") == std::string::npos;
  return (negative && !nothing ? "−" : "") + whole + rest;
}

}  // namespace

std::string exact_number(double value) {
  // The longest double has 309 digits before the point, the smallest 325 and more behind it.
  std::array<char, 1100> buffer{};
  const auto [end, code] =
      std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::fixed);
  return code == std::errc() ? std::string(buffer.data(), end) : std::string(unknown);
}

std::string show_number(double value, int decimals, const NumberStyle& style) {
  if (!std::isfinite(value)) return std::string(unknown);
  return styled(rounded_digits(value, std::max(decimals, 0)), value < 0, style);
}

std::string show_short(double value, int most_decimals, const NumberStyle& style) {
  std::string text = show_number(value, most_decimals, style);
  if (text.find(style.mark == DecimalMark::comma ? ',' : '.') == std::string::npos || most_decimals < 1)
    return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.' || text.back() == ',') text.pop_back();
  return text;
}

double round_half_up(double value, double step) {
  // The slack of a few last binary digits decides on the decimal text: 2.675 at 0.01 is 267.49999999999994
  // steps.
  const double steps = std::abs(value / step) * (1 + 4 * std::numeric_limits<double>::epsilon());
  return std::copysign(std::floor(steps + 0.5) * step, value);
}

std::string show_fraction(double value, int denominator, const NumberStyle& style) {
  if (!std::isfinite(value) || denominator < 1) return std::string(unknown);
  const double parts = round_half_up(std::abs(value) * denominator);
  const double whole = std::floor(parts / denominator);
  int above = static_cast<int>(parts - whole * denominator);
  if (above == 0 || std::abs(value) > 1e15) return show_number(value < 0 ? -whole : whole, 0, style);
  if (style.fractions == FractionStyle::decimal) {
    // As many decimals as the part needs to stand in full, at most four.
    std::string digits = rounded_digits(parts / denominator, 4);
    digits.erase(digits.find_last_not_of('0') + 1);
    return styled(digits, value < 0, style);
  }
  int below = denominator;
  for (int common = above; common > 1; --common)
    while (above % common == 0 && below % common == 0) above /= common, below /= common;
  const std::string front = whole > 0 ? show_number(whole, 0, style) : "";
  const std::string sign = value < 0 ? "−" : "";
  if (style.fractions == FractionStyle::glyph)
    for (const FractionGlyph& glyph : fraction_glyphs)
      if (glyph.numerator == above && glyph.denominator == below)
        return sign + front + std::string(glyph.text);
  return sign + front + (front.empty() ? "" : " ") + std::to_string(above) + "/" + std::to_string(below);
}

double in_yards(Metres length) { return length.value() / metres_per_yard; }
double in_ounces(Grams mass) { return mass.value() / grams_per_ounce; }
double in_inches(Centimetres length) { return length.value() / centimetres_per_inch; }

}  // namespace skeinproof
