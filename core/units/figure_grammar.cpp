// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/figure_grammar.h"

#include <charconv>
#include <limits>
#include <tao/pegtl.hpp>

#include "core/base/text.h"
#include "core/units/fraction_glyphs.h"

namespace skeinproof {
namespace {

namespace grammar {
using namespace tao::pegtl;

struct spaces : plus<one<' '>> {};
struct mark : one<'.', ','> {};
struct minus : sor<one<'-'>, utf8::one<U'−'>> {};
struct sign : sor<minus, one<'+'>> {};
struct slash : sor<one<'/'>, utf8::one<U'⁄', U'∕'>> {};

struct whole : plus<digit> {};
struct numerator : plus<digit> {};
struct denominator : plus<digit> {};
struct glyph : utf8::range<U'\u00bc', U'\u215e'> {};
struct fraction : seq<numerator, slash, denominator> {};
struct joint : sor<spaces, one<'-'>> {};
struct whole_and_fraction : seq<whole, joint, fraction> {};
struct whole_and_glyph : seq<whole, opt<joint>, glyph> {};

struct three : seq<digit, digit, digit, not_at<digit>> {};
struct head : seq<rep_min_max<1, 3, digit>, not_at<digit>> {};
struct comma_groups : seq<head, one<','>, three,
                          sor<seq<star<one<','>, three>, one<'.'>, plus<digit>>, plus<one<','>, three>>> {};
struct point_groups : seq<head, one<'.'>, three,
                          sor<seq<star<one<'.'>, three>, one<','>, plus<digit>>, plus<one<'.'>, three>>> {};
struct group_mark : sor<one<'\'', ' '>, utf8::one<U'’'>> {};
struct spaced_groups : seq<head, plus<group_mark, three>, opt<mark, plus<digit>>> {};
struct simple : sor<seq<plus<digit>, opt<mark, star<digit>>>, seq<mark, plus<digit>>> {};
template <class Rule>
struct alone : seq<Rule, not_at<sor<digit, mark>>> {};
struct decimal : sor<alone<comma_groups>, alone<point_groups>, alone<spaced_groups>, alone<simple>> {};

struct unit : plus<not_one<' ', '\t', '\n', '\r', '0', '1', '2', '3', '4', '5', '6', '7', '8', '9'>> {};
struct figure : sor<whole_and_fraction, whole_and_glyph, fraction, glyph, decimal> {};
struct text : seq<opt<sign, opt<spaces>>, figure, opt<spaces>, opt<unit>, eof> {};
}  // namespace grammar

struct State {
  std::string whole, numerator, denominator;
  double glyph = 0, part = 0;
  bool negative = false, sound = true;
  Figures figures;
};

double number(const std::string& digits) {
  double value = 0;
  const auto [end, code] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  static_cast<void>(end);
  return code == std::errc::result_out_of_range ? std::numeric_limits<double>::infinity() : value;
}

std::string without(std::string text, std::string_view marks) {
  std::string kept;
  for (char c : text)
    if (marks.find(c) == std::string_view::npos) kept += c == ',' ? '.' : c;
  return kept;
}

template <class Rule>
struct action : tao::pegtl::nothing<Rule> {};

template <>
struct action<grammar::minus> {
  static void apply0(State& state) { state.negative = true; }
};
template <>
struct action<grammar::whole> {
  template <class Input>
  static void apply(const Input& in, State& state) {
    state.whole = in.string();
  }
};
template <>
struct action<grammar::numerator> {
  template <class Input>
  static void apply(const Input& in, State& state) {
    state.numerator = in.string();
  }
};
template <>
struct action<grammar::denominator> {
  template <class Input>
  static void apply(const Input& in, State& state) {
    state.denominator = in.string();
  }
};
template <>
struct action<grammar::fraction> {
  static void apply0(State& state) {
    const double below = number(state.denominator);
    state.sound = below > 0;
    state.part = below > 0 ? number(state.numerator) / below : 0;
    state.figures.value = state.part;
  }
};
template <>
struct action<grammar::glyph> {
  template <class Input>
  static void apply(const Input& in, State& state) {
    const auto value = value_of_fraction_glyph(code_points(in.string()).front());
    state.sound = value.has_value();
    state.part = value.value_or(0);
    state.figures.value = state.part;
  }
};
struct add_whole {
  static void apply0(State& state) { state.figures.value = number(state.whole) + state.part; }
};
template <>
struct action<grammar::whole_and_fraction> : add_whole {};
template <>
struct action<grammar::whole_and_glyph> : add_whole {};

template <>
struct action<grammar::comma_groups> {
  template <class Input>
  static void apply(const Input& in, State& state) {
    state.figures.value = number(without(in.string(), ","));
  }
};
template <>
struct action<grammar::point_groups> {
  template <class Input>
  static void apply(const Input& in, State& state) {
    state.figures.value = number(without(in.string(), "."));
  }
};
template <>
struct action<grammar::spaced_groups> {
  template <class Input>
  static void apply(const Input& in, State& state) {
    state.figures.value = number(without(in.string(), "' \xe2\x80\x99"));
  }
};
template <>
struct action<grammar::simple> {
  template <class Input>
  static void apply(const Input& in, State& state) {
    const std::string typed = in.string();
    state.figures.value = number(without(typed, ""));
    const auto comma = typed.find(',');
    const bool thousands_like = comma != std::string::npos && comma >= 1 && comma <= 3 &&
                                typed.size() - comma == 4 && typed[0] != '0';
    if (thousands_like) state.figures.grouped = number(without(typed, ","));
  }
};
template <>
struct action<grammar::unit> {
  template <class Input>
  static void apply(const Input& in, State& state) {
    state.figures.unit = in.string();
  }
};

bool is_digit(std::string_view text, std::size_t at) {
  return at < text.size() && text[at] >= '0' && text[at] <= '9';
}

// No-break and thin spaces that stand as thousands marks become apostrophes before every space becomes a
// plain one, so that "1 203" with a no-break space is one figure and "1 3/4" with the same space stays two.
std::string marked_groups(std::string_view text) {
  constexpr std::string_view narrow[] = {"\u00a0", "\u2009", "\u202f", "\u2007"};
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    std::size_t space = 0;
    for (std::string_view mark : narrow)
      if (text.substr(at, mark.size()) == mark) space = mark.size();
    const std::size_t next = at + space;
    const bool group = space > 0 && at > 0 && is_digit(text, at - 1) && is_digit(text, next) &&
                       is_digit(text, next + 1) && is_digit(text, next + 2) && !is_digit(text, next + 3) &&
                       (next + 3 >= text.size() || text[next + 3] != '/');
    if (group) {
      out += '\'';
      at = next;
    } else {
      out += text[at++];
    }
  }
  return out;
}

}  // namespace

std::optional<Figures> parse_figures(std::string_view text) {
  State state;
  const std::string tidy = tidy_spaces(marked_groups(text));
  tao::pegtl::memory_input input(tidy, "");
  if (!tao::pegtl::parse<grammar::text, action>(input, state) || !state.sound) return std::nullopt;
  if (state.negative) {
    state.figures.value = -state.figures.value;
    state.figures.grouped.reset();
  }
  return state.figures;
}

}  // namespace skeinproof
