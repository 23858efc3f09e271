// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/enum_words.h"
#include "core/base/error.h"
#include "core/yarn/yarn.h"

namespace skeinproof {

// How well a yarn springs back when let go: low where cotton, linen, silk, viscose and the like are half of
// it; high where wool and polyamide are half of it and those are less than 30 %; else middling. Common
// practice, no source.
enum class Recovery { low, middling, high };
template <>
struct EnumWords<Recovery> {
  static constexpr auto rows = enum_rows<Recovery>(
      {{Recovery::low, "low"}, {Recovery::middling, "middling"}, {Recovery::high, "high"}});
};

enum class Halo { none, light, marked };
enum class Twist { unstated, low, firm };

// What the words of a band say of a yarn, for rules and for likeness. An absent value is not said, which is
// not the same as no.
struct YarnCharacter {
  std::optional<int> plies;  // 1 for a single; none for a chainette
  bool chainette = false;
  bool cabled = false;
  Twist twist = Twist::unstated;
  std::optional<Halo> halo;  // by the words of surface and structure, else by fibres that always have one
  bool brushed = false;      // raised: more air than its spinning alone
  bool uneven = false;       // thick and thin, bouclé, slub
  std::optional<bool> variegated;  // several colours within a skein
  bool hand_dyed = false;
  bool coarse = false;
  bool structure_known = false;  // structure or twist is stated
  bool surface_known = false;
};
YarnCharacter character_of(const Yarn& yarn);

// Shares of a composition, percent of its sum; fibres the table does not know count in none. All zero and
// not `known` where there is no composition.
struct FibreShares {
  bool known = false;
  double low_recovery = 0;  // plant fibres, silk, viscose and other regenerated ones
  double wool = 0;          // of sheep, treated or not
  double superwash = 0;     // sheep's wool that is treated, by its fibre or by the yarn's treatment
  double polyamide = 0;
  double hard_wearing = 0;  // polyamide, polyester, polypropylene
  double alpaca = 0;
  double mohair = 0;
  double longwool = 0;  // untreated
  double plant = 0;
  double slick = 0;  // silk, viscose, lyocell and their kin; not superwash, which needs its spinning
  double synthetic = 0;
  double animal = 0;
  double sheds = 0;    // angora, mohair, possum
  double elastic = 0;  // elastane, elastodiene
  double no_felt = 0;  // superwash, plant, regenerated, synthetic, silk
};
FibreShares fibre_shares(const std::vector<FibreShare>& composition, std::string_view treatment);
Recovery recovery_of(const FibreShares& shares);

// How much air a yarn holds beside one of its mass: yarns of one class compare within a few percent of
// thickness, those of two do not.
enum class AirClass { unstated, worsted, woollen, brushed, chainette };
template <>
struct EnumWords<AirClass> {
  static constexpr auto rows = enum_rows<AirClass>({{AirClass::unstated, "of unstated spinning"},
                                                    {AirClass::worsted, "worsted-spun"},
                                                    {AirClass::woollen, "woollen-spun"},
                                                    {AirClass::brushed, "brushed"},
                                                    {AirClass::chainette, "chainette"}});
};
AirClass air_class(const Yarn& yarn);

}  // namespace skeinproof
