// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/base/describe.h"
#include "core/base/enum_words.h"
#include "core/base/id.h"
#include "core/units/entered.h"
#include "core/units/quantity.h"

namespace skeinproof {

// One fibre of a composition. `fibre` is an id of the reference table ("wool_superwash"), empty where the
// words name no fibre we know; `words` is how the label says it ("superwash wool"). Percent of mass.
struct FibreShare {
  std::string fibre;
  std::string words;
  Entered<double> percent;

  bool operator==(const FibreShare&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("fibre", self.fibre);
    visit("words", self.words);
    visit("percent", self.percent);
  }
};

enum class SkeinWord { skein, ball, hank, cake, cone };
template <>
struct EnumWords<SkeinWord> {
  static constexpr auto rows = enum_rows<SkeinWord>({{SkeinWord::skein, "skein"},
                                                     {SkeinWord::ball, "ball"},
                                                     {SkeinWord::hank, "hank"},
                                                     {SkeinWord::cake, "cake"},
                                                     {SkeinWord::cone, "cone"}});
};

// What one skein of a yarn holds by its label.
struct PutUp {
  std::optional<Entered<Metres>> length;
  std::optional<Entered<Grams>> weight;
  SkeinWord word = SkeinWord::skein;

  bool operator==(const PutUp&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("length_m", self.length);
    visit("weight_g", self.weight);
    visit("word", self.word);
  }
};

// How the fibres were laid before twisting; decides the official moisture allowance of wool and the air in
// the yarn. Combed = worsted, carded = woollen.
enum class Spinning { unstated, worsted, semi_worsted, woollen, filament };
template <>
struct EnumWords<Spinning> {
  static constexpr auto rows = enum_rows<Spinning>({{Spinning::unstated, "unstated"},
                                                    {Spinning::worsted, "worsted-spun"},
                                                    {Spinning::semi_worsted, "semi-worsted"},
                                                    {Spinning::woollen, "woollen-spun"},
                                                    {Spinning::filament, "filament"}});
};

// Whose official moisture allowance the label weight was made up at.
enum class Market { unstated, europe, united_states };
template <>
struct EnumWords<Market> {
  static constexpr auto rows = enum_rows<Market>(
      {{Market::unstated, "unstated"}, {Market::europe, "Europe"}, {Market::united_states, "United States"}});
};

struct Price {
  Entered<double> amount;  // per skein
  std::string currency;    // as ISO 4217 or a sign: "EUR", "€"

  bool operator==(const Price&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("amount", self.amount);
    visit("currency", self.currency);
  }
};

// Another put-up in which the same yarn is sold.
struct SoldAs {
  PutUp put_up;
  std::optional<Price> price;

  bool operator==(const SoldAs&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("put_up", self.put_up);
    visit("price", self.price);
  }
};

// A yarn as its band and its maker describe it.
struct Yarn {
  YarnId id;
  std::string name;
  std::vector<FibreShare> composition;
  PutUp put_up;
  Spinning spinning = Spinning::unstated;
  Market market = Market::unstated;
  std::string structure;                             // "2-ply", "single", "chainette"
  std::string twist;                                 // "tightly twisted"
  std::string category;                              // weight word without the word "weight": "sport", "DK"
  std::string surface;                               // "matte", "light halo", "brushed"
  std::string treatment;                             // "untreated", "superwash"
  std::string colouring;                             // "solid", "heathered", "variegated"
  std::string care;                                  // "hand wash"
  bool withdrawn = false;                            // no longer made
  std::string description;                           // further words of the maker
  std::optional<Entered<double>> band_stitches_low;  // recommended stitches per 10 cm
  std::optional<Entered<double>> band_stitches_high;
  std::optional<Entered<Centimetres>> band_needle;  // recommended needle diameter
  std::optional<Price> price;
  std::vector<SoldAs> also_sold;

  bool operator==(const Yarn&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("id", self.id);
    visit("name", self.name);
    visit("composition", self.composition);
    visit("put_up", self.put_up);
    visit("spinning", self.spinning);
    visit("market", self.market);
    visit("structure", self.structure);
    visit("twist", self.twist);
    visit("category", self.category);
    visit("surface", self.surface);
    visit("treatment", self.treatment);
    visit("colouring", self.colouring);
    visit("care", self.care);
    visit("withdrawn", self.withdrawn);
    visit("description", self.description);
    visit("band_stitches_low", self.band_stitches_low);
    visit("band_stitches_high", self.band_stitches_high);
    visit("band_needle_cm", self.band_needle);
    visit("price", self.price);
    visit("also_sold", self.also_sold);
  }
};

}  // namespace skeinproof
