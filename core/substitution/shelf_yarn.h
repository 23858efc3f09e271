// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <span>
#include <string>
#include <type_traits>
#include <vector>

#include "core/pattern/pattern.h"

namespace skeinproof {

using ShelfYarnId = Id<struct ShelfYarnPart>;

// One entry of a person's own list of yarns: a yarn that is known, in one shade and dye lot where those are
// known, and how much of it lies at home. The id of the yarn itself is not used.
struct ShelfYarn {
  ShelfYarnId id;  // 0 = not on the shelf yet
  Yarn yarn;
  Shade shade;
  std::string lot;
  std::optional<Entered<double>> skeins;  // whole ones at home
  std::optional<Entered<Grams>> weight;   // at home in part skeins beside the whole ones, or in all
  std::string place;                      // where it lies: "blue box"
  std::string note;
  bool invented = false;  // of a sample: there is no such yarn

  bool operator==(const ShelfYarn&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("id", self.id);
    // The fields of the yarn are those of the entry, so that a table has them side by side.
    using Part = std::decay_t<decltype(self.yarn)>;
    Part::describe(self.yarn, [&](const char* name, auto& field) {
      if constexpr (!std::is_same_v<std::decay_t<decltype(field)>, YarnId>) visit(name, field);
    });
    visit("shade", self.shade);
    visit("lot", self.lot);
    visit("skeins", self.skeins);
    visit("weight_g", self.weight);
    visit("place", self.place);
    visit("note", self.note);
    visit("invented", self.invented);
  }
};

// Whether any of it is at home.
bool is_owned(const ShelfYarn& entry);
// What is at home by the label: whole skeins and part skeins. Absent where nothing is owned or the put-up
// does not say.
std::optional<Metres> owned_length(const ShelfYarn& entry);

// Entries that may be one and the same: alike in name, composition and put-up once case, spaces and units are
// set aside (lengths and weights to 1 %, so that "1¾ oz / 191 yd" is "50 g / 175 m"; shares to 0.1 %).
// `exact` = the shade and the lot are alike too. Nothing is merged by itself.
struct ShelfDuplicate {
  std::size_t entry = 0;     // index among those that were asked about
  std::size_t on_shelf = 0;  // index on the shelf
  bool exact = false;
};
// At most one for each entry, the exact one where there is one.
std::vector<ShelfDuplicate> find_duplicates(std::span<const ShelfYarn> shelf,
                                            std::span<const ShelfYarn> entries);
// Duplicates among entries of one list; `on_shelf` is the earlier one.
std::vector<ShelfDuplicate> find_duplicates(std::span<const ShelfYarn> entries);

// What becomes of new entries that are on the shelf already, shade and lot and all.
enum class DuplicateChoice { leave_out, add, replace };
template <>
struct EnumWords<DuplicateChoice> {
  static constexpr auto rows = enum_rows<DuplicateChoice>({{DuplicateChoice::leave_out, "leave out"},
                                                           {DuplicateChoice::add, "add"},
                                                           {DuplicateChoice::replace, "replace"}});
};
struct ShelfIntake {
  std::vector<ShelfYarn> entries;          // to be stored; those that replace others carry their ids
  std::vector<ShelfDuplicate> duplicates;  // exact ones; `entry` among those that were offered
  std::size_t twice = 0;                   // left out because an earlier one offered is the same
  std::size_t other_lots = 0;              // yarns known already, in another shade or lot: taken
};
ShelfIntake plan_intake(std::span<const ShelfYarn> shelf, std::span<const ShelfYarn> offered,
                        DuplicateChoice choice);

// Puts a yarn of the shelf into a pattern: the one that lies there already where it is the same, else a new
// one.
YarnId yarn_from_shelf(Pattern& pattern, const ShelfYarn& entry);
// As a candidate: one yarn, or two held together; `strands` of the first.
CandidateId candidate_from_shelf(Pattern& pattern, const ShelfYarn& first,
                                 const ShelfYarn* held_with = nullptr, int strands = 1);
// As yarn on hand, with its shade, lot and what is owned.
OnHandId on_hand_from_shelf(Pattern& pattern, const ShelfYarn& entry);
// A yarn of the pattern as an entry; without an id and without anything owned.
ShelfYarn shelf_yarn_of(const Pattern& pattern, YarnId yarn);

}  // namespace skeinproof
