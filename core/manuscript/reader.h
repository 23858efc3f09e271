// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <string_view>
#include <unordered_map>
#include <unordered_set>
#include <vector>

#include "core/manuscript/read_lists.h"
#include "core/manuscript/statement.h"

namespace skeinproof {

// What a clause is about, by its heading or by what stands in it.
enum class Topic { none, sizes, block, gauge, needles, notions, text, legend, chart, care };

// A clause: tokens from first up to last, the end of a sentence, of a line or of a quotation.
struct Clause {
  std::size_t first = 0, last = 0;
  Topic topic = Topic::none;
  bool headed = false;
  bool schematic = false;  // under the heading of a schematic
  bool goes_on = false;    // behind a semicolon: of the role before it
};

// What the phrase before was about; decides what a bare stretch of cm or a name means.
enum class Run { none, measures, gauge, needles, sample };

// The reading of one text on its way. Token positions are indices into `items.tokens`; `letters` holds one
// letter a token.
struct Reader {
  PlainText plain;
  Items items;
  std::string letters;
  std::vector<bool> used;
  Reading out;

  std::string_view other_language;  // "German"; empty of an English text
  int mention = 0;
  SizesSaid sizes;                                    // by the line of sizes
  std::size_t columns = 0;                            // values in the row of a table read last
  std::vector<std::string> size_names;                // as printed there
  int yarns = 0;                                      // named or unnamed
  std::unordered_map<std::string, int> yarn_by_name;  // in small letters
  std::unordered_set<std::string> roles;              // labels of the block
  std::uint64_t kinds_said = 0;                       // of the mention `kinds_mention`, a bit a kind
  int kinds_mention = 0;

  // Of the clause at hand.
  Run run = Run::none;
  bool schematic = false;
  int yarn = -1;                               // outlives the clause
  bool yarn_found = false;                     // the clause has said of which yarn it speaks
  bool yarn_bare = false;                      // named in this clause, and nothing said of it yet
  std::string role;                            // the role at hand; empty = none
  bool counted = false;                        // it has its count
  PrintedUnit counted_in = PrintedUnit::none;  // the unit of the last count
  bool totals = false;                         // "total" stands before
  std::vector<std::size_t> waiting;            // statements whose role is named behind them
  std::size_t clause_says = 0;                 // its first statement
  bool some_sizes = false;                     // it speaks of some of the sizes
  int count_of_each = -1;                      // the statement of "2 balls each of A, B and C"
  std::string fit;                             // "finished", "to fit": outlives the clause
  std::string measure;                         // name of the measurement at hand; outlives the clause

  char letter(std::size_t i) const { return i < letters.size() ? letters[i] : '\0'; }
  bool has(std::size_t i, Sense sense) const { return letter(i) == static_cast<char>(sense); }
  const Token& token(std::size_t i) const { return items.tokens[i]; }
  const FigureList& list(std::size_t i) const {
    return items.lists[static_cast<std::size_t>(items.tokens[i].list)];
  }
  bool is_list(std::size_t i) const { return i < items.tokens.size() && items.tokens[i].list >= 0; }
  bool is_word(std::size_t i) const { return is_word_letter(letter(i)); }
  bool capital(std::size_t i) const { return is_word(i) && token(i).capital; }
  // A lone figure without a unit.
  bool lone_figure(std::size_t i) const { return letter(i) == '0' && list(i).cells == 1; }
  // The values of a list that may have one a size; `figures`: of what has none.
  std::vector<PrintedValue> values(std::size_t i) const { return values_of(items, list(i), plain, sizes); }
  std::vector<PrintedValue> figures(std::size_t i) const { return values_of(items, list(i), plain, {}); }
  TextSpan span(std::size_t first, std::size_t last) const {
    return plain.as_came(items.tokens[first].begin, items.tokens[last - 1].end);
  }
  // The plain words of tokens, with single spaces; `lower` in small letters.
  std::string words(std::size_t first, std::size_t last) const;
  std::string lower(std::size_t i) const;
  bool is(std::size_t i, std::string_view word) const;
  std::string_view value(std::size_t i) const {
    return i < items.tokens.size() && token(i).word != nullptr ? token(i).word->value : "";
  }

  void use(std::size_t first, std::size_t last);
  // A statement of the tokens from first up to last.
  Statement& say(StatementKind kind, std::size_t first, std::size_t last);
  // The same with the values and the unit of the list at `i`.
  Statement& say_list(StatementKind kind, std::size_t i) { return say_list(kind, i, i + 1, i); }
  Statement& say_list(StatementKind kind, std::size_t first, std::size_t last, std::size_t i);
  // Whether a statement of this kind is of the mention at hand.
  bool said(StatementKind kind) const {
    return kinds_mention == mention && ((kinds_said >> static_cast<unsigned>(kind)) & 1) != 0;
  }
};

// Reads what a clause says, phrase by phrase.
void read_clause(Reader& reader, const Clause& clause);

}  // namespace skeinproof
