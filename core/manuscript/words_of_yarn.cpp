// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>

#include "core/base/text.h"
#include "core/manuscript/words.h"
#include "core/reference/lookup.h"

namespace skeinproof {
namespace {

// Names of one thickness in the three sets, and further words that mean it. Common practice, no source: the
// ply numbers are those of Australian and British hand-knitting yarns, not counts of strands.
struct CategoryNames {
  std::string_view united_states, united_kingdom, ply;
  std::array<std::string_view, 4> also;
};
constexpr CategoryNames category_names[] = {
    {"lace", "lace", "2-ply", {"2 ply", "cobweb", "heavy lace"}},
    {"light fingering", "3-ply", "3-ply", {"3 ply", "baby"}},
    {"fingering", "4-ply", "4-ply", {"4 ply", "sock", "super fine"}},
    {"sport", "light DK", "5-ply", {"5 ply", "fine"}},
    {"DK", "DK", "8-ply", {"8 ply", "double knitting", "light worsted", "light"}},
    {"worsted", "light aran", "10-ply", {"10 ply", "medium", "afghan", "aran light"}},
    {"heavy worsted", "aran", "10-ply", {"aran"}},
    {"bulky", "chunky", "12-ply", {"12 ply", "craft", "rug"}},
    {"super bulky", "super chunky", "14-ply", {"14 ply", "roving"}},
    {"jumbo", "jumbo", "jumbo", {}},
};

// Treatment words that stay beside a generic fibre name.
constexpr std::string_view kept_words[] = {"superwash", "untreated",  "organic",
                                           "recycled",  "mercerised", "mercerized"};

bool names_category(const CategoryNames& names, std::string_view lower) {
  const auto same = [&](std::string_view word) { return !word.empty() && lower_ascii(word) == lower; };
  return same(names.united_states) || same(names.united_kingdom) || same(names.ply) ||
         std::any_of(names.also.begin(), names.also.end(), same);
}

// The legal list gives some fibres two names ("polyamide or nylon", "flax or linen") and some a remark in
// brackets; a block prints one name.
std::string one_legal_name(const Fibre& fibre, FibreNames names) {
  std::string name(trimmed(fibre.legal_name.text.substr(0, fibre.legal_name.text.find('('))));
  const auto either = name.find(" or ");
  if (either == std::string::npos) return name;
  const bool first = fibre.id == "polyamide" && names == FibreNames::generic_polyamide;
  return first ? name.substr(0, either) : name.substr(either + 4);
}

std::string fibre_words(const FibreShare& share, const HouseStyle& house) {
  const Fibre* fibre = fibre_by_id(share.fibre);
  if (fibre == nullptr) return share.words;
  if (house.fibre_names == FibreNames::as_written)
    return share.words.empty() ? lower_ascii(fibre->name) : share.words;
  std::string words;
  for (const std::string& word : split(lower_ascii(share.words), ' '))
    if (std::find(std::begin(kept_words), std::end(kept_words), word) != std::end(kept_words))
      words += word + " ";
  return words + one_legal_name(*fibre, house.fibre_names);
}

std::string structure_words(const Yarn& yarn) {
  std::vector<std::string> words;
  if (!yarn.twist.empty()) words.push_back(yarn.twist);
  if (yarn.spinning != Spinning::unstated) words.emplace_back(word_of(yarn.spinning));
  if (!yarn.structure.empty()) words.push_back(yarn.structure);
  return join(words, " ");
}

}  // namespace

std::string composition_words(const Yarn& yarn, const HouseStyle& house) {
  std::vector<std::string> shares;
  for (const FibreShare& share : yarn.composition)
    shares.push_back(short_number(share.percent.value, 1, house) + "% " + fibre_words(share, house));
  return join(shares, ", ");
}

std::string skein_word(SkeinWord word, bool plural, const HouseStyle& house) {
  const std::string one = house.skein_word.empty() ? std::string(word_of(word)) : house.skein_word;
  if (!plural) return one;
  return house.skein_word_plural.empty() ? one + "s" : house.skein_word_plural;
}

std::string put_up_words(const Yarn& yarn, const HouseStyle& house, Inside inside) {
  const PutUp& put_up = yarn.put_up;
  if (!put_up.length && !put_up.weight) return {};
  std::string words;
  if (put_up.length) words = length_words(put_up.length->value, house, inside) + " per ";
  if (put_up.weight) words += mass_words(put_up.weight->value, house, inside) + " ";
  return words + skein_word(put_up.word, false, house);
}

std::string category_words(std::string_view category, CategoryWords set) {
  std::string lower = lower_ascii(tidy_spaces(category));
  if (lower.ends_with(" weight")) lower.resize(lower.size() - 7);
  const auto found = std::find_if(std::begin(category_names), std::end(category_names),
                                  [&](const CategoryNames& names) { return names_category(names, lower); });
  if (set == CategoryWords::as_written || found == std::end(category_names)) return std::string(category);
  switch (set) {
    case CategoryWords::united_states:
      return std::string(found->united_states);
    case CategoryWords::united_kingdom:
      return std::string(found->united_kingdom);
    default:
      return std::string(found->ply);
  }
}

std::string description_words(const Yarn& yarn, DescriptionElement element, const HouseStyle& house) {
  switch (element) {
    case DescriptionElement::treatment:
      return yarn.treatment;
    case DescriptionElement::structure:
      return structure_words(yarn);
    case DescriptionElement::category: {
      const std::string words = category_words(yarn.category, house.category_words);
      return words.empty() || words.ends_with(" weight") ? words : words + " weight";
    }
    case DescriptionElement::surface:
      return yarn.surface;
    case DescriptionElement::colouring:
      return yarn.colouring;
    case DescriptionElement::care:
      return yarn.care;
  }
  return {};
}

std::string shade_words(const Shade& shade, const HouseStyle& house) {
  if (shade.number.empty() || house.shade_number == ShadeNumber::left_out) return shade.name;
  const std::string sign = house.shade_number == ShadeNumber::with_number_sign ? "#"
                           : house.shade_number == ShadeNumber::with_no_dot    ? "no. "
                                                                               : "";
  return shade.name.empty() ? sign + shade.number : shade.name + " " + sign + shade.number;
}

}  // namespace skeinproof
