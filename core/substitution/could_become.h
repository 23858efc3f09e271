// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/base/enum_words.h"
#include "core/need/assessment.h"
#include "core/substitution/yarn_supply.h"

namespace skeinproof {

// What yarn on hand could become: yarns shared out over the roles of every size.

// What one role, or parts of it that are given to another yarn, gets.
struct SharedOut {
  RoleId role;
  std::vector<GivenPart> parts;       // empty: the role, less its parts that were given away
  std::string what;                   // "MC", "heel flap, heel turn and toe"
  std::vector<std::size_t> supplies;  // of `CouldBecome::supplies`
  Metres needed;                      // planned; a part without swatch and ends
  Metres had;                         // of these yarns together, before joins, less what they give elsewhere
  Metres spare;                       // had - joins - needed
  bool brimful = false;               // nearly all of it is needed
};

// A proven way to knit one size.
struct SharingPlan {
  SizeId size;
  std::vector<SharedOut> shares;      // roles in the order of the pattern, each followed by its given parts
  std::vector<std::string> warnings;  // "Soot brimful by 0.7 m", "Teal is 8 % thicker than Soot"
  std::string words;                  // "MC in Marigold (156.0 of 159.6 m), CC in …"
};

// How far the rules are loosened; each holds the ones before it.
enum class Loosening { roles_kept, roles_exchanged, parts_given, yarns_share };
template <>
struct EnumWords<Loosening> {
  static constexpr auto rows =
      enum_rows<Loosening>({{Loosening::roles_kept, "every yarn in its own role"},
                            {Loosening::roles_exchanged, "yarns may change their roles"},
                            {Loosening::parts_given, "given parts in a yarn of their own"},
                            {Loosening::yarns_share, "two yarns may share a role"}});
};
struct Rung {
  Loosening loosening = Loosening::roles_kept;
  std::string words;                   // "yarns may change their roles"
  std::vector<SizeId> sizes;           // all that can be knitted, in pattern order
  std::optional<SharingPlan> best;     // the last of these
  std::optional<SharingPlan> roomier;  // another way to the same size that leaves more to spare
};

// What a shop would have to add.
struct ToBuy {
  YarnId yarn;
  RoleId role;  // it would serve; none = a part of one
  std::string name;
  int skeins = 0;
  Metres lacking;  // at least, of what is bought
  std::optional<double> cost;
  std::string currency;
};
struct NextSizeUp {
  SizeId size;
  std::vector<ToBuy> buys;
  std::string words;  // "For size 4: 1 ball of Nibthorpe Sock in Marigold 311"
};

struct CouldBecome {
  std::vector<YarnSupply> supplies;
  Rung in_force;            // under the pattern's own rules
  std::vector<Rung> rungs;  // from the tightest to the loosest, whether allowed or not
  std::optional<NextSizeUp>
      next;                     // above the best size in force; absent where there is none or no buying helps
  std::vector<Error> left_out;  // yarn without a length, parts that do not exist
  std::vector<std::string> not_looked_at;  // sizes whose need is not known, with the reason
};

// Every rung's best size is proven: an integer plan exists for it and none for any larger size. A size counts
// by its planned length, or where only printed counts are known by the most they allow. Fails where there is
// no yarn on hand with a length (not_found) and where the pattern has no role (wrong_count). `assessment` is
// that of the pattern. Pure.
Expected<CouldBecome> could_become(const Pattern& pattern, const Assessment& assessment,
                                   const NumberStyle& style = {});

}  // namespace skeinproof
