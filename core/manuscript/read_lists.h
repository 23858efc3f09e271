// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <span>
#include <vector>

#include "core/manuscript/read_tokens.h"

namespace skeinproof {

// One value of a list before the meaning of its commas is settled.
struct ListCell {
  std::uint32_t begin = 0, end = 0;  // in the plain text
  double number = 0, half_step = 0;
  bool absent = false;            // a dash or an empty cell
  bool label = false;             // a word: "XL", "0-3"
  bool opens_group = false;       // a bracket opens before it
  bool after_comma = false;       // a comma glued on both sides stands before it: "17,5"
  bool range = false;             // "5-10": the end of a stretch that the cell before begins
  bool slashed_fraction = false;  // "1/2"
  std::uint8_t digits = 0;        // of a whole number
};

// A list with one value a size, a pair, or a lone figure; with its unit where one stands behind it.
struct FigureList {
  std::size_t first_cell = 0, cells = 0;
  std::uint32_t begin = 0, end = 0;  // in the plain text, with the unit
  PrintedUnit unit = PrintedUnit::none;
  const TradeWord* unit_word = nullptr;
  bool bracketed = false;
  bool parted = false;   // something other than a glued comma parts values
  bool slashed = false;  // "24/32"
  bool spaced = false;   // spaces or gaps part values
  bool dashed = false;   // "17 - 19 - 21"
  bool in_turn = true;   // each bracket holds one value: "1 (2) 3 (4) 5"
  bool unit_each = false;
  char mark = 0;  // what parts values outside brackets
};

// A text as words, marks and lists.
struct Items {
  std::vector<Token> tokens;
  std::vector<FigureList> lists;
  std::vector<ListCell> cells;
};

inline constexpr char label_list_shape = '9';

// The letter of a list by its unit; names of sizes have their own.
constexpr char list_shape(PrintedUnit unit) {
  switch (unit) {
    case PrintedUnit::metre:
    case PrintedUnit::yard:
      return '1';
    case PrintedUnit::gram:
    case PrintedUnit::ounce:
    case PrintedUnit::kilogram:
    case PrintedUnit::pound:
      return '2';
    case PrintedUnit::centimetre:
    case PrintedUnit::inch:
      return '3';
    case PrintedUnit::millimetre:
      return '4';
    case PrintedUnit::percent:
      return '5';
    case PrintedUnit::skein:
      return '6';
    case PrintedUnit::stitch:
      return '7';
    case PrintedUnit::row:
      return '8';
    default:
      return '0';
  }
}

// Folds each list into one token, in one pass; brackets may be nested, of any kind, or never close.
Items fold_lists(const PlainText& plain, std::vector<Token> tokens);

// What the text has said of its sizes.
struct SizesSaid {
  std::size_t count = 0;  // 0 = nothing
  bool slashed = false;   // "1/2/3"
};

// The values of a list, as what is known of the sizes makes likely: commas may be decimal marks or part
// values, as may the slash of a fraction. Of a thing that has no value a size, `sizes` is empty.
std::vector<PrintedValue> values_of(const Items& items, const FigureList& list, const PlainText& plain,
                                    const SizesSaid& sizes);

}  // namespace skeinproof
