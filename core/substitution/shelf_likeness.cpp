// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/substitution/shelf_likeness.h"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "core/base/find_word.h"
#include "core/base/text.h"
#include "core/reference/lookup.h"
#include "core/units/show.h"
#include "core/yarn/care.h"
#include "core/yarn/linear_density.h"
#include "core/yarn/thickness.h"

namespace skeinproof {
namespace {

constexpr double mg_per_km_of_tex = 1000;

SurfaceClass surface_of(const YarnCharacter& is, const std::string& words) {
  if (is.uneven) return SurfaceClass::uneven;
  if (is.halo == Halo::marked) return SurfaceClass::marked_halo;
  if (is.halo == Halo::light) return SurfaceClass::light_halo;
  if (words.empty()) return SurfaceClass::unknown;
  return says(words, {"lustrous", "lustre", "shiny", "glossy", "sheen", "silky"}) ? SurfaceClass::lustrous
                                                                                  : SurfaceClass::plain;
}

StructureClass structure_of(const YarnCharacter& is) {
  if (is.chainette) return StructureClass::chainette;
  if (is.cabled) return StructureClass::cabled;
  if (!is.plies) return StructureClass::unknown;
  return *is.plies == 1   ? StructureClass::single
         : *is.plies == 2 ? StructureClass::two_ply
                          : StructureClass::many_ply;
}

ColouringClass colouring_of(const YarnCharacter& is, const std::string& words) {
  if (words.empty()) return ColouringClass::unknown;
  if (is.variegated.value_or(false)) return ColouringClass::variegated;
  return says(words,
              {"heather", "heathered", "marl", "marled", "tweed", "tweedy", "ragg", "mottled", "flecked"})
             ? ColouringClass::flecked
             : ColouringClass::one_colour;
}

std::uint16_t kin_of(std::string_view fibre) {
  const Fibre* row = fibre_by_id(fibre);
  if (row != nullptr && !row->variety_of.empty()) row = fibre_by_id(row->variety_of);
  const auto all = fibres();
  return static_cast<std::uint16_t>(row != nullptr ? row - all.data()
                                                   : static_cast<std::ptrdiff_t>(all.size()));
}

void add_part(std::vector<FibrePart>& parts, FibrePart part) {
  const auto at = std::lower_bound(parts.begin(), parts.end(), part,
                                   [](const FibrePart& a, const FibrePart& b) { return a.kin < b.kin; });
  if (at != parts.end() && at->kin == part.kin)
    at->share += part.share;
  else
    parts.insert(at, part);
}

void take_fibres(LikeYarn& like, const std::vector<FibreShare>& composition) {
  double total = 0;
  for (const FibreShare& share : composition) total += std::max(0.0, share.percent.value);
  if (!(total > 0)) return;
  for (const FibreShare& share : composition) {
    const FibrePart part{kin_of(share.fibre), static_cast<float>(std::max(0.0, share.percent.value) / total)};
    like.fibres_known = like.fibres_known || part.kin < fibres().size();
    add_part(like.parts, part);
  }
  if (const auto density = fibre_density(composition)) like.fibre_volume = 1 / density->g_per_cm3;
}

std::string plain_currency(const std::string& typed) {
  if (typed == "€") return "EUR";
  if (typed == "£") return "GBP";
  return typed;
}

// Shares both have in common, of 1. What is known by its words only is like nothing.
double shared_fibre(const LikeYarn& a, const LikeYarn& b) {
  double shared = 0;
  auto x = a.parts.begin();
  auto y = b.parts.begin();
  const std::size_t known = fibres().size();
  while (x != a.parts.end() && y != b.parts.end() && x->kin < known && y->kin < known) {
    if (x->kin == y->kin) {
      shared += std::min(x->share, y->share);
      ++x;
      ++y;
    } else if (x->kin < y->kin) {
      ++x;
    } else {
      ++y;
    }
  }
  return shared;
}

// 0 the same, 1 not known of one, 2 another.
template <class Class>
int class_level(Class a, Class b) {
  if (a == Class::unknown || b == Class::unknown) return 1;
  return a == b ? 0 : 2;
}

constexpr std::string_view surface_words[] = {"not known",  "plain",       "lustrous",
                                              "light halo", "marked halo", "uneven"};
constexpr std::string_view structure_words[] = {"not known", "single",    "2-ply",    "3 or more plies",
                                                "cabled",    "chainette", "two kinds"};
constexpr std::string_view colouring_words[] = {"not known", "one colour", "flecked", "variegated"};

template <class Class, std::size_t n>
std::string class_words(Class yarn, Class asked, std::string_view thing, const std::string_view (&words)[n]) {
  const std::string name(thing);
  if (yarn == Class::unknown) return name + " not known";
  const std::string is(words[static_cast<std::size_t>(yarn)]);
  if (asked == Class::unknown) return name + " " + is + ", of the other not known";
  return yarn == asked ? "same " + name : "other " + name + ": " + is;
}

std::string percent(double value) { return show_short(std::abs(value), std::abs(value) < 1 ? 1 : 0) + " %"; }

std::string thickness_words(const LikeYarn& yarn, const LikeYarn& asked) {
  const auto difference = thickness_difference(yarn, asked);
  if (!difference) return "thickness not known";
  const double thicker = difference->thicker_pct, heavier = difference->heavier_pct;
  constexpr double same = 0.5;
  std::string words =
      std::abs(thicker) < same ? "as thick" : percent(thicker) + (thicker > 0 ? " thicker" : " thinner");
  if (!difference->by_volume) return words + " by weight, fibre not known";
  if (std::abs(heavier) >= same)
    words += " (" + percent(heavier) + (heavier > 0 ? " heavier" : " lighter") + " by the metre)";
  if (yarn.air != asked.air && yarn.air != AirClass::unstated && asked.air != AirClass::unstated)
    words += ", " + std::string(word_of(yarn.air)) + " beside " + std::string(word_of(asked.air)) +
             ", so that may be 20 % out";
  return words;
}

std::string fibre_names(const LikeYarn& yarn) {
  std::vector<std::string> names;
  const auto all = fibres();
  for (const FibrePart& part : yarn.parts)
    if (part.kin < all.size()) {
      const std::string_view name = all[part.kin].name;
      names.push_back(lower_ascii(trimmed(name.substr(0, name.find_first_of(",(")))));
    }
  return join(names, ", ");
}

std::string fibre_words(const LikeYarn& yarn, const LikeYarn& asked, int level) {
  const std::string share = " (" + show_short(shared_fibre(yarn, asked) * 100, 0) + " % in common)";
  switch (level) {
    case 0:
      return "same fibre";
    case 1:
      return "mostly the same fibre" + share;
    case 2:
      return "partly the same fibre" + share;
    case 3:
      return "other fibre: " + fibre_names(yarn);
    default:
      return "fibre not known";
  }
}

std::string care_words(const LikeYarn& yarn, const LikeYarn& asked) {
  if (!yarn.care) return "care not known";
  const std::string words(care_rank_words(*yarn.care));
  if (!asked.care) return words + ", of the other not known";
  return words + (care_level(yarn, asked) == 0 ? ", no stricter" : ", stricter");
}

std::string price_words(const LikeYarn& yarn, const LikeYarn& asked) {
  if (!yarn.price_a_100m) return "price not known";
  if (!asked.price_a_100m || yarn.currency != asked.currency || *asked.price_a_100m <= 0) return {};
  const double dearer = (*yarn.price_a_100m / *asked.price_a_100m - 1) * 100;
  constexpr double same = 0.5;
  if (std::abs(dearer) < same) return "same price a metre";
  return percent(dearer) + (dearer > 0 ? " dearer" : " cheaper") + " a metre";
}

}  // namespace

LikeYarn like_yarn(const Yarn& yarn) {
  LikeYarn like;
  if (const auto density = linear_density(yarn.put_up))
    like.mg_per_km = std::llround(in_tex(*density) * mg_per_km_of_tex);
  take_fibres(like, yarn.composition);
  like.care = care_rank(lower_ascii(yarn.care));
  const YarnCharacter is = character_of(yarn);
  like.surface = surface_of(is, lower_ascii(yarn.surface));
  like.structure = structure_of(is);
  like.colouring = colouring_of(is, lower_ascii(yarn.colouring));
  like.air = air_class(yarn);
  if (yarn.price && yarn.put_up.length && yarn.put_up.length->value > metres(0)) {
    like.price_a_100m = yarn.price->amount.value / yarn.put_up.length->value.value() * 100;
    like.currency = plain_currency(yarn.price->currency);
  }
  return like;
}

LikeYarn held(const LikeYarn& yarn, int strands) {
  LikeYarn all = yarn;
  all.mg_per_km *= strands;
  if (all.price_a_100m) *all.price_a_100m *= strands;
  return all;
}

LikeYarn held_together(const LikeYarn& a, const LikeYarn& b) {
  LikeYarn both;
  if (a.mg_per_km > 0 && b.mg_per_km > 0) both.mg_per_km = a.mg_per_km + b.mg_per_km;
  const double share =
      both.mg_per_km > 0 ? static_cast<double>(a.mg_per_km) / static_cast<double>(both.mg_per_km) : 0.5;
  if (!a.parts.empty() && !b.parts.empty()) {
    for (const FibrePart& part : a.parts)
      add_part(both.parts, {part.kin, part.share * static_cast<float>(share)});
    for (const FibrePart& part : b.parts)
      add_part(both.parts, {part.kin, part.share * static_cast<float>(1 - share)});
    both.fibres_known = a.fibres_known || b.fibres_known;
  }
  if (a.fibre_volume > 0 && b.fibre_volume > 0)
    both.fibre_volume = share * a.fibre_volume + (1 - share) * b.fibre_volume;
  if (a.care && b.care) both.care = std::min(*a.care, *b.care);
  both.air = a.air == b.air ? a.air : AirClass::unstated;
  if (a.price_a_100m && b.price_a_100m && a.currency == b.currency) {
    both.price_a_100m = *a.price_a_100m + *b.price_a_100m;
    both.currency = a.currency;
  }
  // The one that marks the cloth: a halo veils a plain strand, colours show beside a plain one.
  both.surface = a.surface == SurfaceClass::unknown || b.surface == SurfaceClass::unknown
                     ? SurfaceClass::unknown
                     : std::max(a.surface, b.surface);
  both.structure = a.structure == b.structure ? a.structure
                   : a.structure == StructureClass::unknown || b.structure == StructureClass::unknown
                       ? StructureClass::unknown
                       : StructureClass::two_kinds;
  both.colouring = a.colouring == ColouringClass::unknown || b.colouring == ColouringClass::unknown
                       ? ColouringClass::unknown
                       : std::max(a.colouring, b.colouring);
  return both;
}

int fibre_level(const LikeYarn& yarn, const LikeYarn& asked) {
  if (!yarn.fibres_known || !asked.fibres_known) return 4;
  const double shared = shared_fibre(yarn, asked);
  constexpr double same = 0.895, most = 0.495, some = 0.045;  // 90, 50 and 5 % once rounded
  return shared >= same ? 0 : shared >= most ? 1 : shared >= some ? 2 : 3;
}

int care_level(const LikeYarn& yarn, const LikeYarn& asked) {
  if (!yarn.care || !asked.care) return 1;
  return *yarn.care >= *asked.care ? 0 : 2;
}

std::optional<ThicknessDifference> thickness_difference(const LikeYarn& yarn, const LikeYarn& asked) {
  if (yarn.mg_per_km <= 0 || asked.mg_per_km <= 0) return std::nullopt;
  const double mass = static_cast<double>(yarn.mg_per_km) / static_cast<double>(asked.mg_per_km);
  ThicknessDifference difference;
  difference.heavier_pct = (mass - 1) * 100;
  difference.by_volume = yarn.fibre_volume > 0 && asked.fibre_volume > 0;
  const double volume = difference.by_volume ? mass * yarn.fibre_volume / asked.fibre_volume : mass;
  difference.thicker_pct = (std::sqrt(volume) - 1) * 100;
  return difference;
}

ShelfLikeness likeness_of(const LikeYarn& yarn, const LikeYarn& asked) {
  ShelfLikeness like;
  like.thickness_step = static_cast<int>(std::size(shelf_thickness_steps)) + 1;
  if (const auto difference = thickness_difference(yarn, asked)) {
    const double off = std::abs(difference->thicker_pct);
    const auto* step =
        std::lower_bound(std::begin(shelf_thickness_steps), std::end(shelf_thickness_steps), off);
    like.thickness_step = static_cast<int>(step - std::begin(shelf_thickness_steps));
  }
  like.fibre = fibre_level(yarn, asked);
  like.care = care_level(yarn, asked);
  like.surface = class_level(yarn.surface, asked.surface);
  like.structure = class_level(yarn.structure, asked.structure);
  like.colouring = class_level(yarn.colouring, asked.colouring);
  return like;
}

std::string likeness_words(const LikeYarn& yarn, const LikeYarn& asked, const ShelfLikeness& likeness) {
  std::vector<std::string> parts = {
      thickness_words(yarn, asked),
      fibre_words(yarn, asked, likeness.fibre),
      care_words(yarn, asked),
      class_words(yarn.surface, asked.surface, "surface", surface_words),
      class_words(yarn.structure, asked.structure, "structure", structure_words),
      class_words(yarn.colouring, asked.colouring, "colouring", colouring_words),
      price_words(yarn, asked)};
  parts.erase(std::remove(parts.begin(), parts.end(), std::string()), parts.end());
  return join(parts, "; ");
}

}  // namespace skeinproof
