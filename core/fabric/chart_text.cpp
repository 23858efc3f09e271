// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fabric/chart_text.h"

#include <algorithm>
#include <optional>

#include "core/base/text.h"

namespace skeinproof {
namespace {

using CodePoints = std::vector<char32_t>;

bool is_digit(char32_t c) { return c >= U'0' && c <= U'9'; }
bool is_blank(char32_t c) { return c == U' ' || is_odd_space(c); }
bool parts_cells(char32_t c) { return c == U'\t' || c == U',' || c == U';'; }
bool ends_number(char32_t c) { return c == U':' || c == U')'; }

// Every mark that people draw for "no stitch"; a blank only where it stands between quotation marks.
bool means_no_stitch(char32_t c) {
  constexpr std::u32string_view marks = U".-_‐‑‒–—―−·•";
  return marks.find(c) != std::u32string_view::npos;
}

bool is_symbol(char32_t c) { return c < 127 && is_chart_symbol(static_cast<char>(c)); }
bool is_figureless_symbol(char32_t c) { return is_symbol(c) && !is_digit(c); }

// A cell, or a word between blanks.
struct Token {
  CodePoints text;
  int column = 1;
  bool quoted = false;
};

struct Line {
  std::vector<Token> tokens;
  int number = 1;
  bool cells = false;
};

// One round on its way, with the place of its first square.
struct ReadRound {
  std::string squares;
  Place place;
  std::optional<long> number;
};

tl::unexpected<Error> unknown_character(char32_t c, const Place& place) {
  return failure(ErrorKind::wrong_format, quoted(to_utf8({c})),
                 "a letter, a figure or a sign such as # or * for a colour, or - for no stitch", place);
}

// Parts a line at blanks, and at tabs, commas and semicolons where it has any outside quotation marks.
class LineParts {
 public:
  LineParts(const CodePoints& points, int number) : points_(points) { line_.number = number; }

  Expected<Line> read() {
    find_separators();
    while (at_ < points_.size()) {
      const char32_t c = points_[at_];
      if (c == U'"') {
        if (auto read = quotation(); !read) return tl::unexpected(read.error());
      } else if (line_.cells && parts_cells(c)) {
        close();
        open_ = true;
        ++at_;
      } else if (is_blank(c)) {
        if (!line_.cells) close();
        ++at_;
      } else {
        character(c);
      }
    }
    close();
    return std::move(line_);
  }

 private:
  void find_separators() {
    bool inside = false;
    for (const char32_t c : points_) {
      inside = inside != (c == U'"');
      line_.cells = line_.cells || (!inside && parts_cells(c));
    }
    open_ = line_.cells;
  }

  void character(char32_t c) {
    if (!is_invisible(c)) begin().text.push_back(c);
    ++at_;
    if (ends_number(c) && !line_.cells) close();
  }

  Expected<void> quotation() {
    const std::size_t from = at_ + 1;
    const auto start = points_.begin() + static_cast<std::ptrdiff_t>(from);
    const auto end = std::find(start, points_.end(), U'"');
    if (end == points_.end())
      return failure(ErrorKind::wrong_format, "a quotation mark that is not closed",
                     "a second one in the same line", {"", line_.number, static_cast<int>(from)});
    Token& token = begin();
    token.quoted = true;
    token.text.insert(token.text.end(), start, end);
    at_ = static_cast<std::size_t>(end - points_.begin()) + 1;
    return {};
  }

  Token& begin() {
    if (!open_ || token_.text.empty()) token_.column = static_cast<int>(at_) + 1;
    open_ = true;
    return token_;
  }

  // Ends a word; in a line of cells an empty cell is one too.
  void close() {
    if (!open_) return;
    if (token_.text.empty()) token_.column = static_cast<int>(std::min(at_, points_.size() - 1)) + 1;
    line_.tokens.push_back(std::move(token_));
    token_ = Token{};
    open_ = false;
  }

  const CodePoints& points_;
  Line line_;
  Token token_;
  std::size_t at_ = 0;
  bool open_ = false;
};

// "12", "12:", "12.", "12)"
std::optional<long> number_of(const Token& token) {
  std::size_t digits = 0;
  long value = 0;
  while (digits < token.text.size() && is_digit(token.text[digits]) && digits < 6)
    value = value * 10 + static_cast<long>(token.text[digits++] - U'0');
  if (digits == 0 || token.quoted) return std::nullopt;
  const std::size_t behind = token.text.size() - digits;
  const bool marked = behind == 1 && (ends_number(token.text.back()) || token.text.back() == U'.');
  return behind == 0 || marked ? std::optional(value) : std::nullopt;
}

bool is_round_word(const Token& token) {
  const std::string word = lower_ascii(to_utf8(token.text));
  return word == "round" || word == "rnd" || word == "row";
}

bool has_symbol_beside_figures(const std::vector<Token>& tokens) {
  return std::any_of(tokens.begin(), tokens.end(), [](const Token& token) {
    return std::any_of(token.text.begin(), token.text.end(), is_figureless_symbol);
  });
}

// Takes the round number off a line. Where all else in the line are figures too, only a marked one ("12:") is
// one.
std::optional<long> take_round_number(std::vector<Token>& tokens) {
  if (tokens.size() < 2) return std::nullopt;
  if (is_round_word(tokens.front())) {
    const auto number = number_of(tokens[1]);
    if (number) tokens.erase(tokens.begin(), tokens.begin() + 2);
    return number;
  }
  const bool told_apart = has_symbol_beside_figures(tokens);
  if (const auto first = number_of(tokens.front());
      first && (told_apart || !is_digit(tokens.front().text.back()))) {
    tokens.erase(tokens.begin());
    return first;
  }
  const auto last = told_apart ? number_of(tokens.back()) : std::nullopt;
  if (last) tokens.pop_back();
  return last;
}

// "12 11 10 … 1" over or under a chart.
bool numbers_stitches(const std::vector<Token>& tokens) {
  std::vector<long> numbers;
  for (const Token& token : tokens) {
    if (token.text.empty()) continue;
    const auto number = number_of(token);
    if (!number) return false;
    numbers.push_back(*number);
  }
  if (numbers.size() < 2) return false;
  const long step = numbers[1] - numbers[0];
  if (step != 1 && step != -1) return false;
  for (std::size_t i = 1; i < numbers.size(); ++i)
    if (numbers[i] - numbers[i - 1] != step) return false;
  return true;
}

bool all_blank(const std::vector<Token>& tokens) {
  return std::all_of(tokens.begin(), tokens.end(),
                     [](const Token& t) { return t.text.empty() && !t.quoted; });
}

class TextReader {
 public:
  explicit TextReader(const ChartTextOptions& options) : options_(options) {}

  Expected<Chart> read(const CodePoints& text) {
    figures_only_ = std::none_of(text.begin(), text.end(), is_figureless_symbol);
    int number = 0;
    CodePoints line;
    for (std::size_t at = 0; at <= text.size(); ++at) {
      const bool end = at == text.size() || text[at] == U'\n' || text[at] == U'\r';
      if (!end) {
        line.push_back(text[at]);
        continue;
      }
      ++number;
      if (auto done = read_line(line, number); !done) return tl::unexpected(done.error());
      line.clear();
      if (at + 1 < text.size() && text[at] == U'\r' && text[at + 1] == U'\n') ++at;
    }
    return finish();
  }

 private:
  Expected<void> read_line(const CodePoints& points, int number) {
    auto parts = LineParts(points, number).read();
    if (!parts) return tl::unexpected(parts.error());
    Line line = std::move(*parts);
    if (line.tokens.empty() || all_blank(line.tokens)) return {};
    if (!figures_only_ && numbers_stitches(line.tokens)) return {};
    const auto round_number = take_round_number(line.tokens);
    if (line.cells)
      for (const Token& token : line.tokens)
        if (token.text.size() > 1)
          return failure(ErrorKind::wrong_format, quoted(to_utf8(token.text)), "one symbol in a cell",
                         {"", line.number, token.column});
    const bool one_round = line.cells || !options_.words_are_rounds ||
                           std::all_of(line.tokens.begin(), line.tokens.end(),
                                       [](const Token& token) { return token.text.size() == 1; });
    std::size_t first_new = rounds_.size();
    for (const Token& token : line.tokens) {
      if (rounds_.size() == first_new || !one_round) {
        if (auto begun = begin_round({"", line.number, token.column}); !begun) return begun;
      }
      if (auto added = add_squares(token, line.number); !added) return added;
    }
    if (rounds_.size() == first_new + 1) rounds_.back().number = round_number;
    return {};
  }

  Expected<void> begin_round(const Place& place) {
    if (rounds_.size() == most_chart_squares)
      return failure(ErrorKind::out_of_range, "more than " + std::to_string(most_chart_squares) + " rounds",
                     "at most " + std::to_string(most_chart_squares), place);
    rounds_.push_back({"", place, std::nullopt});
    return {};
  }

  Expected<void> add_squares(const Token& token, int line) {
    std::string& squares = rounds_.back().squares;
    if (token.text.empty()) squares += no_stitch;
    for (std::size_t i = 0; i < token.text.size(); ++i) {
      const char32_t c = token.text[i];
      const int column = token.column + static_cast<int>(i) + (token.quoted ? 1 : 0);
      const bool nothing = means_no_stitch(c) || (token.quoted && is_blank(c));
      if (!nothing && !is_symbol(c)) return unknown_character(c, {"", line, column});
      squares += nothing ? no_stitch : static_cast<char>(c);
      if (!nothing && symbols_.find(static_cast<char>(c)) == std::string::npos)
        note_symbol(static_cast<char>(c), {"", line, column});
    }
    if (squares.size() > most_chart_squares)
      return failure(ErrorKind::out_of_range,
                     "a round of more than " + std::to_string(most_chart_squares) + " squares",
                     "at most " + std::to_string(most_chart_squares), rounds_.back().place);
    return {};
  }

  void note_symbol(char symbol, const Place& place) {
    symbols_ += symbol;
    if (symbols_.size() == most_chart_symbols + 1) first_too_many_ = place;
  }

  // Numbers that rise put the first line first, numbers that fall the last; others contradict themselves.
  Expected<bool> last_line_first() const {
    if (options_.order != RoundOrder::by_numbers) return options_.order == RoundOrder::last_line_first;
    std::optional<long> before;
    std::optional<bool> falls;
    for (const ReadRound& round : rounds_) {
      if (!round.number) continue;
      if (before) {
        const bool falls_here = *round.number < *before;
        if (*round.number == *before || (falls && *falls != falls_here))
          return failure(ErrorKind::wrong_shape,
                         "round " + std::to_string(*round.number) + " after round " + std::to_string(*before),
                         "round numbers that only rise or only fall", round.place);
        falls = falls_here;
      }
      before = round.number;
    }
    return falls.value_or(false);
  }

  Expected<void> make_equally_wide() {
    std::size_t widest = 0;
    for (const ReadRound& round : rounds_) widest = std::max(widest, round.squares.size());
    for (ReadRound& round : rounds_) {
      const std::size_t missing = widest - round.squares.size();
      if (options_.padding == Padding::none) {
        if (round.squares.size() != rounds_.front().squares.size())
          return failure(ErrorKind::wrong_count, std::to_string(round.squares.size()) + " squares",
                         std::to_string(rounds_.front().squares.size()) + " squares as in the first line",
                         round.place);
      } else {
        round.squares.insert(options_.padding == Padding::left ? 0 : round.squares.size(), missing,
                             no_stitch);
      }
    }
    return {};
  }

  Expected<Chart> finish() {
    if (rounds_.empty())
      return failure(ErrorKind::wrong_shape, "no round", "a line of symbols for every round");
    if (symbols_.size() > most_chart_symbols)
      return failure(ErrorKind::out_of_range, std::to_string(symbols_.size()) + " different symbols",
                     "at most " + std::to_string(most_chart_symbols), first_too_many_);
    const auto reversed = last_line_first();
    if (!reversed) return tl::unexpected(reversed.error());
    if (options_.stitch_one == StitchOne::left)
      for (ReadRound& round : rounds_) std::reverse(round.squares.begin(), round.squares.end());
    if (auto wide = make_equally_wide(); !wide) return tl::unexpected(wide.error());
    if (*reversed) std::reverse(rounds_.begin(), rounds_.end());
    Chart chart;
    std::vector<std::string> rounds;
    for (ReadRound& round : rounds_) rounds.push_back(std::move(round.squares));
    chart.rounds = std::move(rounds);
    for (const char symbol : symbols_) chart.colours.push_back({std::string(1, symbol), RoleId{}});
    return chart;
  }

  const ChartTextOptions& options_;
  bool figures_only_ = false;
  std::vector<ReadRound> rounds_;
  std::string symbols_;
  Place first_too_many_;
};

}  // namespace

Expected<Chart> read_chart_text(std::string_view text, const ChartTextOptions& options) {
  return TextReader(options).read(code_points(text));
}

std::string chart_text(const Chart& chart, const ChartTextOptions& options) {
  std::vector<std::string> rounds = *chart.rounds;
  if (options.order == RoundOrder::last_line_first) std::reverse(rounds.begin(), rounds.end());
  if (options.stitch_one == StitchOne::left)
    for (std::string& round : rounds) std::reverse(round.begin(), round.end());
  std::string text;
  for (const std::string& round : rounds) text += round + "\n";
  return text;
}

}  // namespace skeinproof
