// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/substitution/shelf_fields.h"

#include <algorithm>
#include <array>
#include <cassert>

#include "core/base/text.h"
#include "core/substitution/shelf_readings.h"
#include "core/units/show.h"
#include "core/yarn/read_composition.h"

namespace skeinproof {
namespace {

using enum ShelfField;

constexpr ShelfFieldRow rows[] = {
    {name, "Name", "yarn|yarn name|title|product|quality|article", true},
    {composition, "Composition", "fibre|fibres|fiber|fibers|fibre content|fiber content|material|content",
     true},
    {put_up, "Put-up", "putup|package|packaging|band|ball band|weight and length|length and weight", false},
    {length, "Length",
     "metres|meters|yards|yardage|metreage|meterage|yd|yds|m|length per skein|metres per skein|yards per "
     "skein|"
     "running length|length per ball",
     true},
    {weight, "Weight", "grams|ounces|oz|g|skein weight|ball weight|weight per skein|unit weight|mass", true},
    {skein_word, "Sold as", "skein word|form|unit", true},
    {spinning, "Spinning", "spun", true},
    {market, "Label of", "market", true},
    {structure, "Structure", "ply|plies|construction", true},
    {twist, "Twist", "", true},
    {category, "Thickness", "weight category|yarn weight|category|weight class|weight name|thickness name",
     true},
    {surface, "Surface", "texture|finish", true},
    {treatment, "Treatment", "", true},
    {colouring, "Colouring", "coloring|dyeing|dye", true},
    {care, "Care", "washing|wash|care instructions", true},
    {withdrawn, "No longer made", "withdrawn|discontinued", true},
    {description, "Description", "", true},
    {band_stitches, "Stitches in 10 cm", "gauge|tension|stitches|sts|stitches per 10 cm|sts per 10 cm", true},
    {band_needle, "Needle", "needles|needle size|recommended needle", true},
    {price, "Price", "price per skein|price per ball|cost|price a skein", true},
    {currency, "Currency", "", false},
    {also_sold, "Also sold as", "other put-ups", true},
    {shade, "Shade", "colour|color|colourway|colorway|shade name|colour name|color name", true},
    {shade_number, "Shade number", "number|colour number|color number|shade no|colour no|no", true},
    {lightness, "Lightness", "l*", true},
    {lot, "Dye lot", "lot|dyelot|batch", true},
    {owned, "Owned", "amount|at home|on hand|stash|stock", false},
    {skeins_owned, "Skeins owned", "quantity|qty|skeins|balls|count|number of skeins", true},
    {weight_owned, "Weight owned", "grams owned|part skeins|weight at home|total weight", true},
    {place, "Place", "location|where|storage|box|bin", true},
    {note, "Note", "notes|remark|remarks|comment|comments", true},
    {invented, "Invented", "sample", true},
    {kept_in_note, "Kept in the note", "", false},
    {left_out, "Left out", "", false},
};

std::string yes(bool truth) { return truth ? "yes" : ""; }

std::string band_words(const Yarn& yarn) {
  if (!yarn.band_stitches_low && !yarn.band_stitches_high) return {};
  const std::string low = yarn.band_stitches_low ? number_text(*yarn.band_stitches_low) : "";
  const std::string high = yarn.band_stitches_high ? number_text(*yarn.band_stitches_high) : "";
  return low == high || high.empty() ? low : low.empty() ? high : low + "–" + high;
}

std::string owned_words(const ShelfYarn& entry) {
  std::vector<std::string> parts;
  if (entry.skeins) {
    const std::string count = number_text(*entry.skeins);
    parts.push_back(count + " " + std::string(word_of(entry.yarn.put_up.word)) +
                    (entry.skeins->value == 1 ? "" : "s"));
  }
  if (entry.weight) parts.push_back(mass_text(*entry.weight));
  return join(parts, " + ");
}

template <class Quantity>
std::string text_or_nothing(const std::optional<Entered<Quantity>>& value,
                            std::string (*text)(const Entered<Quantity>&)) {
  return value ? text(*value) : std::string();
}

// Takes what was read, or passes on why it was not.
template <class Read, class Target>
Expected<void> take(Expected<Read> read, Target& target) {
  if (!read) return tl::unexpected(std::move(read.error()));
  target = std::move(*read);
  return {};
}

// A field of plain words and where it lies; one of the three is set.
struct TextRow {
  ShelfField field;
  std::string Yarn::*of_yarn = nullptr;
  std::string Shade::*of_shade = nullptr;
  std::string ShelfYarn::*of_entry = nullptr;
};
constexpr TextRow text_rows[] = {
    {name, &Yarn::name},
    {structure, &Yarn::structure},
    {twist, &Yarn::twist},
    {category, &Yarn::category},
    {surface, &Yarn::surface},
    {treatment, &Yarn::treatment},
    {colouring, &Yarn::colouring},
    {care, &Yarn::care},
    {description, &Yarn::description},
    {shade, nullptr, &Shade::name},
    {shade_number, nullptr, &Shade::number},
    {lot, nullptr, nullptr, &ShelfYarn::lot},
    {place, nullptr, nullptr, &ShelfYarn::place},
    {note, nullptr, nullptr, &ShelfYarn::note},
};

// The words of such a field; null where the field is another kind.
template <class Entry>
auto text_of(Entry& entry, ShelfField field) -> decltype(&entry.note) {
  for (const TextRow& row : text_rows)
    if (row.field == field)
      return row.of_yarn != nullptr    ? &(entry.yarn.*row.of_yarn)
             : row.of_shade != nullptr ? &(entry.shade.*row.of_shade)
                                       : &(entry.*row.of_entry);
  return nullptr;
}

Expected<void> read_owned(ShelfYarn& entry, std::string_view text, std::string_view assumed) {
  const auto owned = read_amount(text, assumed);
  if (!owned) return tl::unexpected(owned.error());
  entry.skeins = owned->skeins;
  entry.weight = owned->weight;
  return {};
}

Expected<void> read_price_field(ShelfYarn& entry, std::string_view text, std::string_view assumed) {
  const std::string known = !assumed.empty()   ? std::string(assumed)
                            : entry.yarn.price ? entry.yarn.price->currency
                                               : std::string();
  return take(read_price(text, known), entry.yarn.price);
}

Expected<void> read_currency(ShelfYarn& entry, std::string_view text) {
  if (!entry.yarn.price) return failure(ErrorKind::not_found, "a currency without a price", "a price first");
  if (!is_currency(text))
    return failure(ErrorKind::not_a_quantity, quoted(text), "a currency such as EUR, £ or kr");
  entry.yarn.price->currency = text;
  return {};
}

void clear(ShelfYarn& entry, ShelfField field) {
  Yarn& yarn = entry.yarn;
  switch (field) {
    case composition:
      yarn.composition.clear();
      return;
    case put_up:
      yarn.put_up = {};
      return;
    case length:
      yarn.put_up.length.reset();
      return;
    case weight:
      yarn.put_up.weight.reset();
      return;
    case skein_word:
      yarn.put_up.word = SkeinWord::skein;
      return;
    case spinning:
      yarn.spinning = Spinning::unstated;
      return;
    case market:
      yarn.market = Market::unstated;
      return;
    case withdrawn:
      yarn.withdrawn = false;
      return;
    case band_stitches:
      yarn.band_stitches_low.reset();
      yarn.band_stitches_high.reset();
      return;
    case band_needle:
      yarn.band_needle.reset();
      return;
    case price:
    case currency:
      yarn.price.reset();
      return;
    case also_sold:
      yarn.also_sold.clear();
      return;
    case lightness:
      entry.shade.lightness.reset();
      return;
    case owned:
      entry.skeins.reset();
      entry.weight.reset();
      return;
    case skeins_owned:
      entry.skeins.reset();
      return;
    case weight_owned:
      entry.weight.reset();
      return;
    case invented:
      entry.invented = false;
      return;
    default:
      if (std::string* words = text_of(entry, field)) words->clear();
  }
}

}  // namespace

std::span<const ShelfFieldRow> shelf_field_rows() { return rows; }

const ShelfFieldRow& shelf_field_row(ShelfField field) {
  const ShelfFieldRow& row = rows[static_cast<std::size_t>(field)];
  assert(row.field == field);
  return row;
}

std::string field_text(const ShelfYarn& entry, ShelfField field) {
  const Yarn& yarn = entry.yarn;
  switch (field) {
    case composition:
      return composition_text(yarn.composition);
    case put_up:
      return put_up_text(yarn.put_up);
    case length:
      return text_or_nothing(yarn.put_up.length, length_text);
    case weight:
      return text_or_nothing(yarn.put_up.weight, mass_text);
    case skein_word:
      return std::string(word_of(yarn.put_up.word));
    case spinning:
      return yarn.spinning == Spinning::unstated ? "" : std::string(word_of(yarn.spinning));
    case market:
      return yarn.market == Market::unstated ? "" : std::string(word_of(yarn.market));
    case withdrawn:
      return yes(yarn.withdrawn);
    case band_stitches:
      return band_words(yarn);
    case band_needle:
      return text_or_nothing(yarn.band_needle, needle_text);
    case price:
      return yarn.price ? price_text(*yarn.price) : std::string();
    case currency:
      return yarn.price ? yarn.price->currency : std::string();
    case also_sold:
      return also_sold_text(yarn.also_sold);
    case lightness:
      return text_or_nothing(entry.shade.lightness, number_text);
    case owned:
      return owned_words(entry);
    case skeins_owned:
      return text_or_nothing(entry.skeins, number_text);
    case weight_owned:
      return text_or_nothing(entry.weight, mass_text);
    case invented:
      return yes(entry.invented);
    default: {
      const std::string* words = text_of(entry, field);
      return words != nullptr ? *words : std::string();
    }
  }
}

Expected<void> read_field(ShelfYarn& entry, ShelfField field, std::string_view text,
                          std::string_view assumed) {
  const std::string words(trimmed(text));
  if (words.empty()) {
    clear(entry, field);
    return {};
  }
  Yarn& yarn = entry.yarn;
  switch (field) {
    case composition:
      return take(read_composition(words), yarn.composition);
    case put_up:
      return take(read_put_up(words, yarn.put_up), yarn.put_up);
    case length:
      return take(read_length_or_put_up(words, assumed, yarn.put_up), yarn.put_up);
    case weight:
      return take(read_weight_or_put_up(words, assumed, yarn.put_up), yarn.put_up);
    case skein_word:
      return take(read_word<SkeinWord>(words), yarn.put_up.word);
    case spinning:
      return take(read_word<Spinning>(words), yarn.spinning);
    case market:
      return take(read_word<Market>(words), yarn.market);
    case withdrawn:
      return take(read_truth(words), yarn.withdrawn);
    case band_stitches:
      return read_band(words, yarn);
    case band_needle:
      return take(read_needle(words, assumed), yarn.band_needle);
    case price:
      return read_price_field(entry, words, assumed);
    case currency:
      return read_currency(entry, words);
    case also_sold:
      return take(read_also_sold(words), yarn.also_sold);
    case lightness:
      return take(read_number(words, 0, 100, "L*"), entry.shade.lightness);
    case owned:
      return read_owned(entry, words, assumed);
    case skeins_owned:
      return take(read_skeins(words), entry.skeins);
    case weight_owned:
      return take(read_mass_as(words, assumed), entry.weight);
    case invented:
      return take(read_truth(words), entry.invented);
    default:
      if (std::string* target = text_of(entry, field)) *target = words;
      return {};
  }
}

}  // namespace skeinproof
