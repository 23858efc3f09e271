// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "core/base/error.h"
#include "core/base/text.h"
#include "core/units/read.h"
#include "core/yarn/yarn.h"

namespace skeinproof {

// What cells of a table of yarns hold beyond single quantities, and how it is written there. `assumed` is the
// unit of a bare figure; what was typed then keeps it, so that it reads back by itself.

Expected<Entered<Grams>> read_mass_as(std::string_view text, std::string_view assumed);
Expected<Entered<Centimetres>> read_needle(std::string_view text,
                                           std::string_view assumed);  // "4 mm", "US 6"

// "50g/175m", "1¾ oz / 191 yd ball", "175 m / 197 yd per 50 g / 1¾ oz": the first weight, the first length
// and the word. What the text does not name stays as in `before`.
Expected<PutUp> read_put_up(std::string_view text, const PutUp& before);
// A length (weight) by itself, else a whole put-up.
Expected<PutUp> read_length_or_put_up(std::string_view text, std::string_view assumed, const PutUp& before);
Expected<PutUp> read_weight_or_put_up(std::string_view text, std::string_view assumed, const PutUp& before);

// "7.90 EUR", "€7,90", "£ 4"; a bare figure takes the currency `assumed` and fails where there is none.
Expected<Price> read_price(std::string_view text, std::string_view assumed);
bool is_currency(std::string_view text);

// "100 g / 350 m, 14.00 EUR; 25 g / 87 m".
Expected<std::vector<SoldAs>> read_also_sold(std::string_view text);

struct AmountOwned {
  std::optional<Entered<double>> skeins;
  std::optional<Entered<Grams>> weight;
};
Expected<AmountOwned> read_amount(std::string_view text, std::string_view assumed);  // "3 skeins + 41 g", "2"
Expected<Entered<double>> read_skeins(std::string_view text);                        // "3", "2½ balls"

Expected<void> read_band(std::string_view text, Yarn& yarn);  // "24–26", "26 sts"; fails without changing it
Expected<bool> read_truth(std::string_view text);             // yes, no, true, false, 1, 0, x

template <WordedEnum Word>
Expected<Word> read_word(std::string_view text);  // SkeinWord, Spinning, Market; as words of a label too

std::string number_text(const Entered<double>& value);
std::string length_text(const Entered<Metres>& value);
std::string mass_text(const Entered<Grams>& value);
std::string needle_text(const Entered<Centimetres>& value);
std::string put_up_text(const PutUp& put_up);
std::string price_text(const Price& price);
std::string also_sold_text(const std::vector<SoldAs>& also_sold);

}  // namespace skeinproof
