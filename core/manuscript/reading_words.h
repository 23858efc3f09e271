// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <cstddef>
#include <string_view>

#include "core/manuscript/statement.h"

namespace skeinproof {

// What a word of the trade does in a submitted text. The letter stands for it in the line of letters over
// which the phrases are matched (see letter_grammar.h).
enum class Sense : char {
  size_word = 'Z',
  yarn_word = 'Y',
  gauge_word = 'G',
  needle_word = 'N',
  notions_word = 'I',
  text_word = 'X',
  key_word = 'K',
  chart_word = 'C',
  schematic_word = 'D',
  measures_word = 'M',
  care_heading = '!',
  role_label = 'R',   // MC, CC1
  role_words = 'r',   // main colour
  role_prefix = 'h',  // colour, shade, yarn as in "yarn A"
  skein_word = 'S',
  unit_word = 'u',
  per = 'P',
  over = 'V',
  in = 'i',
  of = 'f',
  also = '&',
  to = 'd',
  with = '@',
  about = 'A',
  at_most = 'L',
  used = 'U',
  total = 'T',
  measure = 'B',
  measure_end = 'b',  // from underarm, incl. ribbing
  fit = 'F',
  ease = 'E',
  needle_system = 'Q',
  needle_type = 'y',
  fabric = 'q',
  gauge_state = 'z',
  worked = 'l',
  shown = 'H',
  model = 'j',
  all_sizes = 'J',
  notion = 'O',
  description = 'v',
  care = 'e',
  piece = 'p',
  strands = 's',
  withdrawn = 'a',
  item = 't',
  wearer = 'g',
  extra = 'k',
  phrase = 'm',
  caution = 'c',
  cast_on = 'n',
  colours_word = 'o',
  fibre = '$',
  number_word = '^',
  together = '_',  // "together", "throughout"
  for_what = '~',
  sentence_verb = '<',  // work, knit, join: an instruction
};

// Whether a letter of the line stands for a word.
constexpr bool is_word_letter(char c) {
  return (c >= 'a' && c <= 'z' && c != 'x') || (c >= '@' && c <= 'Z') || c == '!' || c == '$' || c == '^' ||
         c == '_' || c == '~' || c == '<';
}

// A row of the table of words. `value` says which one it is: the qualifier, the fabric, the role.
struct TradeWord {
  std::string_view words;  // lower case, parts of a compound parted by a space
  Sense sense;
  std::string_view value = {};
  PrintedUnit unit = PrintedUnit::none;
};

// The row of exactly these words.
const TradeWord* trade_word(std::string_view words);
// The row of one word, and how many further words a row that begins with it can have.
struct WordEntry {
  const TradeWord* row = nullptr;
  std::size_t further = 0;
};
WordEntry word_entry(std::string_view word);

}  // namespace skeinproof
