// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/base/enum_words.h"
#include "core/base/error.h"
#include "core/pattern/pattern.h"

namespace skeinproof {

// Which put-ups of a yarn to buy for a length, and whether to buy one more.

// So many of one put-up.
struct PutUpCount {
  SoldAs sold_as;
  int skeins = 0;
};

struct PutUpMix {
  std::vector<PutUpCount> counts;  // only what is bought, the longest put-up first
  int skeins = 0;
  Metres bought, left_over;     // left over = bought - length to cover
  std::optional<double> cost;   // absent without prices
  std::string currency;         // as typed
  double last_skein_share = 0;  // of the shortest put-up bought that is needed, in (0, 1]
  bool by_price = false;  // false: no put-up has a price, so the fewest skeins, then the least left over
  bool proven = true;     // false: given up after a great many tries, the best of them
  std::vector<Error> left_out;  // put-ups and prices that could not be used, each with what is amiss
};

// Own put-up and price first, then all others it is sold in.
std::vector<SoldAs> put_ups_of(const Yarn& yarn);

// The cheapest mix that covers a length: least cost, then the fewest skeins, then the least left over. Where
// only some put-ups have a price the others are left out; where prices of two currencies meet none of them
// counts. Fails, naming what is missing, where no put-up has a length, and for a length that is not above 0
// or takes more than 100,000 skeins.
Expected<PutUpMix> cheapest_mix(Metres cover, const std::vector<SoldAs>& put_ups);

// What has to be covered for a planned length: the length itself, or less where the house rounds a hair over
// down in the yarn's own put-up. `bare` = knitted + swatch.
Metres length_to_cover(Metres planned, Metres bare, const Yarn& yarn, const HouseStyle& house);

// "€" and "EUR", "£" and "GBP" are one currency.
bool same_currency(const std::string& one, const std::string& other);

// Why one skein more belongs into the basket, to be returned by a date. Common practice, no source.
enum class SpareReason { last_skein_nearly_full, hand_dyed, withdrawn, to_be_lengthened };
template <>
struct EnumWords<SpareReason> {
  static constexpr auto rows = enum_rows<SpareReason>(
      {{SpareReason::last_skein_nearly_full, "the last skein is nearly all needed"},
       {SpareReason::hand_dyed, "hand-dyed skeins differ, and more than one is needed"},
       {SpareReason::withdrawn, "the shade is withdrawn"},
       {SpareReason::to_be_lengthened, "a piece is to be lengthened"}});
};
// The rule for what is bought of one yarn; none = no spare. `lengthened`: a change on the bench takes more of
// this colour.
std::vector<SpareReason> reasons_for_spare(const Pattern& pattern, const Yarn& yarn, int skeins,
                                           double last_skein_share, bool lengthened);
// Roles that a made change makes longer take more of.
std::vector<RoleId> lengthened_roles(const Pattern& pattern, SizeId size);

}  // namespace skeinproof
