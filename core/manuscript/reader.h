// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "core/manuscript/read_lists.h"
#include "core/manuscript/statement.h"

namespace skeinproof {

// What a clause is about.
enum class Topic {
  none,
  sizes,
  block,
  gauge,
  needles,
  notions,
  sample,
  text,
  legend,
  chart,
  schematic,
  care
};

// A clause: tokens from first up to last, the end of a sentence, of a line or of a quotation.
struct Clause {
  std::size_t first = 0, last = 0;
  Topic topic = Topic::none;
  bool quoted = false;
};

// The reading of one text on its way. Token positions are indices into `items.tokens`; `letters` holds one
// letter a token.
struct Reader {
  PlainText plain;
  Items items;
  std::string letters;
  std::vector<bool> used;
  Reading out;

  int mention = 0;
  std::size_t sizes = 0;  // how many, where a line of sizes was read
  std::vector<std::string> size_labels;
  std::vector<std::string> yarns;  // names in the order they are named; empty = unnamed
  std::vector<std::string> roles;  // labels declared in the block
  int yarn = -1;
  std::string role;                  // the role at hand; empty = none
  bool counted = false;              // the role at hand has its count
  bool totals = false;               // the word "total" stands before the next count
  bool yarn_found = false;           // the clause has said already of which yarn it speaks
  std::vector<std::size_t> waiting;  // statements of the clause whose role is named behind them
  std::string fit;                   // "finished", "to fit": said of the measurements that follow
  std::string measure;               // name of the measurement at hand

  char letter(std::size_t i) const { return i < letters.size() ? letters[i] : '\0'; }
  const Token& token(std::size_t i) const { return items.tokens[i]; }
  const FigureList& list(std::size_t i) const {
    return items.lists[static_cast<std::size_t>(items.tokens[i].list)];
  }
  bool is_list(std::size_t i) const { return i < items.tokens.size() && items.tokens[i].list >= 0; }
  bool is_word(std::size_t i) const {
    const char c = letter(i);
    return (c >= 'a' && c <= 'z' && c != 'x') || (c >= '@' && c <= 'Z') || c == '!';
  }
  bool single(std::size_t i) const { return is_list(i) && values(i).size() == 1; }
  std::vector<PrintedValue> values(std::size_t i) const { return values_of(items, list(i), plain, sizes); }
  TextSpan span(std::size_t first, std::size_t last) const {
    return plain.as_came(items.tokens[first].begin, items.tokens[last - 1].end);
  }
  // The plain words of tokens, with single spaces.
  std::string words(std::size_t first, std::size_t last) const;
  std::string lower(std::size_t i) const;
  bool is(std::size_t i, std::string_view word) const;
  std::string_view value(std::size_t i) const { return token(i).word != nullptr ? token(i).word->value : ""; }

  void use(std::size_t first, std::size_t last);
  // A statement of the tokens from first up to last.
  Statement& say(StatementKind kind, std::size_t first, std::size_t last);
  // The same with the values and the unit of the list at `i`.
  Statement& say_list(StatementKind kind, std::size_t i);
  Statement& say_list(StatementKind kind, std::size_t first, std::size_t last, std::size_t i);
};

void read_sizes_clause(Reader& reader, const Clause& clause);
void read_block_clause(Reader& reader, const Clause& clause);
void read_gauge_clause(Reader& reader, const Clause& clause);
void read_needles_clause(Reader& reader, const Clause& clause);
void read_notions_clause(Reader& reader, const Clause& clause);
void read_sample_clause(Reader& reader, const Clause& clause);
void read_text_clause(Reader& reader, const Clause& clause);
void read_legend_clause(Reader& reader, const Clause& clause);
void read_care_clause(Reader& reader, const Clause& clause);

}  // namespace skeinproof
