// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <span>
#include <string>
#include <string_view>

#include "core/base/error.h"
#include "core/substitution/shelf_yarn.h"

namespace skeinproof {

// The fields of an entry of the shelf as text, one row each: what a table shows, what is typed into it, and
// the columns of a CSV file.
enum class ShelfField {
  name,
  composition,
  put_up,  // "50 g / 175 m"
  length,
  weight,
  skein_word,
  spinning,
  market,
  structure,
  twist,
  category,
  surface,
  treatment,
  colouring,
  care,
  withdrawn,
  description,
  band_stitches,  // per 10 cm: "24–26"
  band_needle,
  price,  // "7.90 EUR"
  currency,
  also_sold,  // "100 g / 350 m, 14.00 EUR; 25 g / 87 m"
  shade,
  shade_number,
  lightness,
  lot,
  owned,  // "3 skeins + 41 g"
  skeins_owned,
  weight_owned,
  place,
  note,
  invented,
  kept_in_note,  // of an unknown column: its words go into the note behind its heading
  left_out,      // of a column that is not wanted
};

// How one field is called and found.
struct ShelfFieldRow {
  ShelfField field;
  std::string_view heading;  // "Put-up"; heads the exported column
  std::string_view also;     // other headings it goes by, separated by |
  bool exported;             // false: another field says the same
};
std::span<const ShelfFieldRow> shelf_field_rows();
const ShelfFieldRow& shelf_field_row(ShelfField field);

// The text of a field as it was typed where it was, in units that read back; empty where it is not known.
std::string field_text(const ShelfYarn& entry, ShelfField field);

// Reads a text into a field; an empty one clears it. Units as of core/units/read.h, and a figure without one
// in `assumed` ("yd", "oz", "mm", "EUR"; empty = m, g, mm). A price needs a currency, from its text, from
// `assumed` or there already. On failure the entry stays as it was.
Expected<void> read_field(ShelfYarn& entry, ShelfField field, std::string_view text,
                          std::string_view assumed = {});

}  // namespace skeinproof
