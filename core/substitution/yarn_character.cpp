// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/substitution/yarn_character.h"

#include <algorithm>
#include <cctype>

#include "core/base/find_word.h"
#include "core/base/text.h"
#include "core/reference/lookup.h"

namespace skeinproof {
namespace {

constexpr std::string_view number_words[] = {"",      "single", "two",  "three", "four",   "five",  "six",
                                             "seven", "eight",  "nine", "ten",   "eleven", "twelve"};

// The number that stands before "ply", "plies" or "plied".
std::optional<int> number_before_ply(std::string_view text) {
  for (const std::string_view ply : {"ply", "plies", "plied"}) {
    const auto at = text.find(ply);
    if (at == std::string_view::npos) continue;
    std::string_view before = text.substr(0, at);
    while (!before.empty() && (before.back() == ' ' || before.back() == '-')) before.remove_suffix(1);
    std::size_t digits = 0;
    while (digits < before.size() &&
           std::isdigit(static_cast<unsigned char>(before[before.size() - 1 - digits])))
      ++digits;
    if (digits > 0 && digits <= 2) {
      int number = 0;
      for (const char c : before.substr(before.size() - digits)) number = number * 10 + (c - '0');
      if (number > 0) return number;
    }
    for (int i = 1; i < static_cast<int>(std::size(number_words)); ++i)
      if (before.ends_with(number_words[i])) return i;
  }
  return std::nullopt;
}

std::optional<int> plies_of(std::string_view structure) {
  if (says(structure, {"single", "singles", "single-ply", "unplied", "unspun", "roving"})) return 1;
  return number_before_ply(structure);
}

Twist twist_of(std::string_view words) {
  if (says(words, {"low twist", "low-twist", "low", "soft", "softly", "loose", "loosely", "slack",
                   "lightly twisted", "barely twisted", "unspun", "roving"}))
    return Twist::low;
  if (says(words,
           {"tight", "tightly", "high", "high twist", "high-twist", "firm", "firmly", "hard", "crisp"}))
    return Twist::firm;
  return Twist::unstated;
}

const WordList halo_words = {"halo",  "haloed", "fluffy",  "fuzzy",  "hairy",
                             "furry", "fluff",  "brushed", "raised", "napped"};
const WordList denied_halo = {"no halo", "without halo", "halo-free", "without a halo"};
const WordList light_words = {"light",  "slight", "slightly", "faint", "subtle",  "soft",
                              "gentle", "little", "some",     "hint",  "delicate"};

bool always_has_halo(const std::vector<FibreShare>& composition) {
  double halo = 0, total = 0;
  for (const FibreShare& share : composition) {
    total += std::max(0.0, share.percent.value);
    if (share.fibre == "angora" || share.fibre == "mohair") halo += std::max(0.0, share.percent.value);
  }
  return total > 0 && halo >= total / 2;
}

std::optional<Halo> halo_of(const Yarn& yarn, std::string_view surface) {
  if (says(surface, denied_halo)) return Halo::none;
  if (says(surface, halo_words))
    return says(surface, light_words) && !says(surface, {"brushed", "fluffy"}) ? Halo::light : Halo::marked;
  if (!yarn.surface.empty()) return Halo::none;
  return always_has_halo(yarn.composition) ? std::optional(Halo::marked) : std::nullopt;
}

// What a fibre counts as, beside what the table says of it.
struct FibreClass {
  std::string_view id;
  double FibreShares::*share;
};
const FibreClass fibre_rows[] = {
    {"polyamide", &FibreShares::polyamide},
    {"polyamide", &FibreShares::hard_wearing},
    {"polyester", &FibreShares::hard_wearing},
    {"polypropylene", &FibreShares::hard_wearing},
    {"alpaca", &FibreShares::alpaca},
    {"mohair", &FibreShares::mohair},
    {"wool_longwool", &FibreShares::longwool},
    {"silk", &FibreShares::slick},
    {"silk_tussah", &FibreShares::slick},
    {"silk", &FibreShares::low_recovery},
    {"silk_tussah", &FibreShares::low_recovery},
    {"silk", &FibreShares::no_felt},
    {"silk_tussah", &FibreShares::no_felt},
    {"angora", &FibreShares::sheds},
    {"mohair", &FibreShares::sheds},
    {"possum", &FibreShares::sheds},
    {"elastane", &FibreShares::elastic},
    {"elastodiene", &FibreShares::elastic},
};
const FibreClass class_rows[] = {
    {"plant", &FibreShares::plant},         {"plant", &FibreShares::low_recovery},
    {"plant", &FibreShares::no_felt},       {"regenerated", &FibreShares::low_recovery},
    {"regenerated", &FibreShares::slick},   {"regenerated", &FibreShares::no_felt},
    {"synthetic", &FibreShares::synthetic}, {"synthetic", &FibreShares::no_felt},
    {"animal", &FibreShares::animal},
};

bool treated_words(std::string_view treatment) {
  return says(treatment,
              {"superwash", "shrink-resist", "shrink resist", "shrink-resistant", "machine washable wool"}) &&
         !says(treatment, {"non-superwash", "non superwash", "not superwash", "no superwash"});
}

void count_wool(FibreShares& shares, const Fibre& fibre, double share, bool treated) {
  if (fibre.id != "wool" && fibre.variety_of != "wool") return;
  shares.wool += share;
  if (fibre.id != "wool_superwash" && !treated) return;
  shares.superwash += share;
  shares.no_felt += share;
  if (fibre.id == "wool_longwool") shares.longwool -= share;
}

}  // namespace

YarnCharacter character_of(const Yarn& yarn) {
  YarnCharacter is;
  const std::string structure = lower_ascii(yarn.structure), surface = lower_ascii(yarn.surface);
  const std::string twist = lower_ascii(yarn.twist), colouring = lower_ascii(yarn.colouring);
  const std::string all = structure + "; " + surface + "; " + lower_ascii(yarn.description);
  is.structure_known = !structure.empty() || !twist.empty();
  is.surface_known = !surface.empty();
  is.chainette = says(structure, {"chainette", "tube", "tubular", "chain construction", "i-cord"});
  is.cabled = says(structure, {"cabled", "cable-plied"});
  if (!is.chainette) is.plies = plies_of(structure);
  is.twist = twist_of(twist.empty() ? structure : twist);
  is.halo = halo_of(yarn, surface + "; " + structure);
  is.brushed = says(all, {"brushed", "raised", "napped"});
  is.uneven = says(all, {"thick and thin", "thick-and-thin", "thick-thin", "boucle", "bouclé", "slub",
                         "slubby", "slubbed", "bobbled", "nubby"});
  is.coarse = says(all, {"coarse", "rustic", "carpet wool", "longwool", "scratchy"});
  is.hand_dyed = says(colouring, {"hand-dyed", "hand dyed", "hand-painted", "hand painted", "kettle-dyed",
                                  "kettle dyed", "handdyed"});
  if (!colouring.empty())
    is.variegated =
        says(colouring, {"variegated", "self-striping", "self striping", "striping", "speckled",
                         "hand-painted", "hand painted", "space-dyed", "space dyed", "multicolour",
                         "multicolor", "multi-coloured", "multi-colored", "gradient", "ombre"});
  return is;
}

FibreShares fibre_shares(const std::vector<FibreShare>& composition, std::string_view treatment) {
  FibreShares shares;
  double total = 0;
  for (const FibreShare& share : composition) total += std::max(0.0, share.percent.value);
  if (!(total > 0)) return shares;
  const bool treated = treated_words(lower_ascii(treatment));
  for (const FibreShare& share : composition) {
    const Fibre* fibre = fibre_by_id(share.fibre);
    const double percent = 100 * std::max(0.0, share.percent.value) / total;
    if (fibre == nullptr || !(percent > 0)) continue;
    shares.known = true;
    for (const FibreClass& row : fibre_rows)
      if (row.id == fibre->id) shares.*row.share += percent;
    for (const FibreClass& row : class_rows)
      if (row.id == fibre->fibre_class) shares.*row.share += percent;
    count_wool(shares, *fibre, percent, treated);
  }
  return shares;
}

Recovery recovery_of(const FibreShares& shares) {
  constexpr double half = 50, few = 30;
  if (shares.low_recovery >= half) return Recovery::low;
  if (shares.wool + shares.polyamide >= half && shares.low_recovery < few) return Recovery::high;
  return Recovery::middling;
}

AirClass air_class(const Yarn& yarn) {
  const YarnCharacter is = character_of(yarn);
  if (is.brushed) return AirClass::brushed;
  if (is.chainette) return AirClass::chainette;
  switch (yarn.spinning) {
    case Spinning::worsted:
    case Spinning::semi_worsted:
    case Spinning::filament:
      return AirClass::worsted;
    case Spinning::woollen:
      return AirClass::woollen;
    case Spinning::unstated:
      break;
  }
  return AirClass::unstated;
}

}  // namespace skeinproof
