// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/manuscript/read_tokens.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <tao/pegtl.hpp>

#include "core/base/text.h"
#include "core/units/fraction_glyphs.h"

namespace skeinproof {
namespace {

namespace grammar {
using namespace tao::pegtl;

struct high : ranges<'\x80', '\xff'> {};
struct letter : sor<alpha, high> {};
struct glyph : ranges<'\x01', '\x08', '\x0e', '\x17'> {};
struct digits : plus<digit> {};

// A fraction written out. A lone one must be of the kind that scales and tapes have, since "5/6" is more
// often two sizes.
struct below : sor<seq<one<'1'>, one<'0', '2', '6'>>, one<'2', '3', '4', '5', '6', '8'>> {};
struct fraction_end : not_at<sor<digit, seq<opt<blank>, one<'/'>>>> {};
struct joined_fraction : seq<digit, opt<digit>, one<'/'>, below, not_at<sor<digit, one<'/'>>>> {};
struct lone_fraction
    : seq<at<seq<digit, one<'/'>>>,
          sor<seq<one<'1'>, one<'/'>, one<'2', '3', '4', '8'>>, seq<one<'2'>, one<'/'>, one<'3'>>,
              seq<one<'3'>, one<'/'>, one<'4', '8'>>, seq<one<'5', '7'>, one<'/'>, one<'8'>>>,
          fraction_end> {};
struct whole_and_fraction : seq<digits, sor<one<'-'>, plus<one<' '>>>, joined_fraction> {};
struct whole_and_glyph : seq<digits, opt<one<' ', '-'>>, glyph> {};
struct lone_glyph : seq<glyph> {};
struct thousands : seq<rep_min_max<1, 3, digit>, plus<one<'\''>, rep<3, digit>>, not_at<digit>> {};
struct with_point : seq<star<digit>, one<'.'>, digits, not_at<seq<one<'.'>, digit>>> {};
struct whole : seq<digits> {};

struct times : seq<one<'x', 'X'>, not_at<sor<letter, seq<one<'-'>, letter>>>> {};
// "US4", "UK10" are a word and a figure.
struct system : seq<sor<seq<one<'U'>, one<'S', 'K'>>, seq<one<'J'>, one<'P'>>>, at<digit>> {};
// "S-M-L" are names of sizes, not one word.
struct size_letters : seq<sor<seq<digit, one<'X'>>, star<one<'X'>>>, one<'S', 'M', 'L'>> {};
struct size_in_row : seq<size_letters, at<seq<one<'-'>, size_letters, not_at<sor<letter, digit>>>>> {};
// A line may break behind a word's hyphen.
struct word
    : seq<letter,
          star<sor<letter, digit, seq<one<'-', '\''>, at<letter>>, seq<one<'-'>, one<'\n'>, at<lower>>>>> {};
struct line_end : seq<one<'\n'>> {};
// A row of dots leads from one column to the next.
struct dot : seq<opt<one<' '>>, one<'.'>> {};
struct gap : sor<one<'\t'>, seq<one<' '>, plus<one<' '>>>, seq<one<'.'>, dot, plus<dot>>> {};
struct space : one<' '> {};
struct mark : any {};

struct figure
    : sor<whole_and_fraction, whole_and_glyph, thousands, with_point, lone_fraction, lone_glyph, whole> {};
struct text : star<sor<gap, space, figure, times, sor<system, size_in_row, word>, line_end, mark>> {};
}  // namespace grammar

struct Lexer {
  const PlainText& plain;
  std::vector<Token>& tokens;
  std::uint32_t token_end = 0;

  template <class Input>
  Token& add(const Input& in, char shape) {
    Token token;
    token.shape = shape;
    token.begin = static_cast<std::uint32_t>(in.begin() - plain.text.data());
    token.end = static_cast<std::uint32_t>(in.end() - plain.text.data());
    token.glued = token.begin == token_end && token.begin > 0;
    token_end = token.end;
    return tokens.emplace_back(token);
  }
  template <class Input>
  void figure(const Input& in, double number, double half_step) {
    Token& token = add(in, figure_shape);
    token.number = number;
    token.half_step = half_step;
  }
  // A slash glued to a figure before it: "1/2/3" is three figures.
  bool behind_slash() const {
    return tokens.size() > 1 && token_end > 0 && tokens.back().shape == '/' && tokens.back().glued &&
           tokens[tokens.size() - 2].shape == figure_shape;
  }
  // "Sizes 1/2" are two.
  bool behind_size_word() const {
    std::size_t last = tokens.size();
    while (last > 0 && (tokens[last - 1].shape == ':' || tokens[last - 1].shape == '-')) --last;
    if (last == 0 || tokens[last - 1].end - tokens[last - 1].begin > 5) return false;
    const Token& token = tokens[last - 1];
    const std::string word =
        lower_ascii(std::string_view(plain.text).substr(token.begin, token.end - token.begin));
    return word == "size" || word == "sizes" || word == "age" || word == "ages";
  }
  bool behind_figure() const { return !tokens.empty() && tokens.back().shape == figure_shape; }
};

double number(std::string_view digits) {
  if (digits.size() < 10 && digits.find('.') == std::string_view::npos) {
    std::uint32_t whole = 0;
    for (const char c : digits) whole = whole * 10 + static_cast<std::uint32_t>(c - '0');
    return whole;
  }
  double value = 0;
  const auto [end, code] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  static_cast<void>(end);
  return code == std::errc{} ? value : 0;
}

// "3/4" and its half step, an eighth.
std::pair<double, double> fraction(std::string_view text) {
  const auto slash = text.find('/');
  const double below = number(text.substr(slash + 1));
  return {number(text.substr(0, slash)) / below, 0.5 / below};
}
std::pair<double, double> glyph(char byte) {
  const FractionGlyph& row = fraction_glyphs[fraction_row(byte)];
  return {static_cast<double>(row.numerator) / row.denominator, 0.5 / row.denominator};
}

template <class Rule>
struct action : tao::pegtl::nothing<Rule> {};

template <>
struct action<grammar::whole> {
  template <class Input>
  static void apply(const Input& in, Lexer& lexer) {
    lexer.figure(in, number({in.begin(), in.size()}), 0.5);
  }
};
template <>
struct action<grammar::with_point> {
  template <class Input>
  static bool apply(const Input& in, Lexer& lexer) {
    const std::string_view text(in.begin(), in.size());
    const auto point = text.find('.');
    if (point == 0 && lexer.behind_figure() &&
        lexer.tokens.back().end == in.begin() - lexer.plain.text.data())
      return false;
    lexer.figure(in, number(text), 0.5 * std::pow(10.0, -static_cast<double>(text.size() - point - 1)));
    return true;
  }
};
template <>
struct action<grammar::thousands> {
  template <class Input>
  static void apply(const Input& in, Lexer& lexer) {
    std::string digits = in.string();
    digits.erase(std::remove(digits.begin(), digits.end(), '\''), digits.end());
    lexer.figure(in, number(digits), 0.5);
  }
};
template <>
struct action<grammar::whole_and_fraction> {
  template <class Input>
  static bool apply(const Input& in, Lexer& lexer) {
    const std::string_view text(in.begin(), in.size());
    const auto joint = text.find_first_of(" -");
    const auto part = fraction(text.substr(text.find_last_of(" -") + 1));
    if (part.first >= 1 || lexer.behind_slash()) return false;
    lexer.figure(in, number(text.substr(0, joint)) + part.first, part.second);
    return true;
  }
};
template <>
struct action<grammar::whole_and_glyph> {
  template <class Input>
  static void apply(const Input& in, Lexer& lexer) {
    const std::string_view text(in.begin(), in.size());
    const auto part = glyph(text.back());
    lexer.figure(in, number(text.substr(0, text.find_first_not_of("0123456789"))) + part.first, part.second);
  }
};
template <>
struct action<grammar::lone_fraction> {
  template <class Input>
  static bool apply(const Input& in, Lexer& lexer) {
    if (lexer.behind_slash() || lexer.behind_size_word()) return false;
    const auto part = fraction({in.begin(), in.size()});
    lexer.figure(in, part.first, part.second);
    return true;
  }
};
template <>
struct action<grammar::lone_glyph> {
  template <class Input>
  static void apply(const Input& in, Lexer& lexer) {
    const auto part = glyph(*in.begin());
    lexer.figure(in, part.first, part.second);
  }
};
template <>
struct action<grammar::times> {
  template <class Input>
  static void apply(const Input& in, Lexer& lexer) {
    lexer.add(in, 'x');
  }
};
struct add_word {
  template <class Input>
  static void apply(const Input& in, Lexer& lexer) {
    const char first = *in.begin();
    Token& token = lexer.add(in, 'w');
    token.capital = first >= 'A' && first <= 'Z';
    // Marked capitals of Latin-1 and its neighbours: "Ödmark".
    if (first == '\xc3' && in.size() > 1) token.capital = in.begin()[1] >= '\x80' && in.begin()[1] <= '\x9e';
    if (token.capital) token.shape = 'W';
  }
};
template <>
struct action<grammar::word> : add_word {};
template <>
struct action<grammar::system> : add_word {};
template <>
struct action<grammar::size_in_row> : add_word {};
template <>
struct action<grammar::gap> {
  template <class Input>
  static void apply(const Input& in, Lexer& lexer) {
    lexer.add(in, gap_shape);
  }
};
template <>
struct action<grammar::line_end> {
  template <class Input>
  static void apply(const Input& in, Lexer& lexer) {
    lexer.add(in, '\n');
  }
};
template <>
struct action<grammar::mark> {
  template <class Input>
  static void apply(const Input& in, Lexer& lexer) {
    const char c = *in.begin();
    constexpr std::string_view known = "()[]{},;:/-=+&\"#%.*|";
    char shape = known.find(c) == std::string_view::npos ? '?' : c;
    if (shape == '[' || shape == '{') shape = '(';
    if (shape == ']' || shape == '}') shape = ')';
    lexer.add(in, shape == '|' ? gap_shape : shape);
  }
};

// The words of a token in the form of the table: small letters, a space for each hyphen. A hyphen at the end
// of a line parts a word or two: "nee-" + "dles", "hand-" + "dyed".
void append_key(std::string& key, std::string_view word, bool hyphen_ends_line = false) {
  for (std::size_t i = 0; i < word.size(); ++i) {
    const char c = word[i];
    const bool broken = c == '-' && i + 1 < word.size() && word[i + 1] == '\n';
    if (c == '\n' || (broken && hyphen_ends_line)) continue;
    key += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c == '-' ? ' ' : c;
  }
}

constexpr std::size_t longest_key = 40;

// MC, CC, CC12, C1, MC2.
bool is_role_label(std::string_view word) {
  const auto letters = word.find_first_of("0123456789");
  const std::string_view label = word.substr(0, letters);
  if (label != "MC" && label != "CC" && label != "C" && label != "BC" && label != "PC") return false;
  if (letters == std::string_view::npos) return label != "C" && label.size() == 2;
  return word.size() - letters <= 2 &&
         word.find_first_not_of("0123456789", letters) == std::string_view::npos;
}

// The longest row of the table that begins at a word; several words become one token.
void give_senses(const PlainText& plain, std::vector<Token>& raw) {
  std::size_t out = 0;  // never beyond the token at hand
  std::string key;
  const auto text_of = [&](const Token& token) {
    return std::string_view(plain.text).substr(token.begin, token.end - token.begin);
  };
  for (std::size_t i = 0; i < raw.size(); ++i) {
    Token token = raw[i];
    if ((token.shape != 'w' && token.shape != 'W') || token.end - token.begin > longest_key) {
      raw[out++] = token;
      continue;
    }
    key.clear();
    if (text_of(token).find('\n') != std::string_view::npos) append_key(key, text_of(token), true);
    if (key.empty() || trade_word(key) == nullptr) {
      key.clear();
      append_key(key, text_of(token));
    }
    const std::string_view first = std::string_view(key).substr(0, key.find(' '));
    const WordEntry entry = word_entry(first);
    std::size_t more = entry.further;
    const TradeWord* best = first.size() == key.size() ? entry.row : more > 0 ? trade_word(key) : nullptr;
    // "Yarn A", but "A light halo".
    if (token.end - token.begin == 1 && token.capital && i + 1 < raw.size() && raw[i + 1].shape != 'w')
      best = nullptr;
    std::size_t last = i;
    for (std::size_t k = i + 1; more > 0 && k < raw.size(); ++k, --more) {
      // A line end may stand within a term.
      std::size_t next = k;
      if (raw[next].shape == '\n' && next + 1 < raw.size()) ++next;
      // "st.st."
      const bool dotted =
          raw[next].shape == '.' && raw[next].glued && next + 1 < raw.size() && raw[next + 1].glued;
      if (dotted) ++next;
      if ((raw[next].shape != 'w' && raw[next].shape != 'W') || (raw[next].glued && !dotted) ||
          raw[next].end - raw[next].begin > longest_key)
        break;
      key += ' ';
      append_key(key, text_of(raw[next]));
      if (const TradeWord* row = trade_word(key)) {
        best = row;
        last = next;
        // "st.st." within a sentence.
        if (dotted && next + 2 < raw.size() && raw[next + 1].shape == '.' && raw[next + 1].glued &&
            raw[next + 2].shape == 'w')
          last = next + 1;
      }
      k = next;
    }
    if (best != nullptr) {
      token.word = best;
      token.shape = static_cast<char>(best->sense);
      token.end = raw[last].end;
      i = last;
    } else if (is_role_label(text_of(token))) {
      token.shape = static_cast<char>(Sense::role_label);
    }
    raw[out++] = token;
  }
  raw.resize(out);
}

}  // namespace

std::vector<Token> read_tokens(const PlainText& plain) {
  std::vector<Token> raw;
  raw.reserve(plain.text.size() / 3 + 1);
  Lexer lexer{plain, raw};
  tao::pegtl::memory_input<tao::pegtl::tracking_mode::lazy> input(plain.text, "");
  tao::pegtl::parse<grammar::text, action>(input, lexer);
  give_senses(plain, raw);
  return raw;
}

}  // namespace skeinproof
