// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/base/describe.h"
#include "core/base/enum_words.h"
#include "core/base/id.h"
#include "core/units/entered.h"

namespace skeinproof {

// What a candidate puts in place of the pattern's yarn: in one role, or in every role without a row of its
// own.
struct CandidateYarn {
  RoleId role;  // none = every role without a row of its own
  YarnId yarn;
  int strands = 1;   // equal strands held together
  YarnId held_with;  // another yarn beside it; none = 0
  int held_with_strands = 1;

  bool operator==(const CandidateYarn&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("role", self.role);
    visit("yarn", self.yarn);
    visit("strands", self.strands);
    visit("held_with", self.held_with);
    visit("held_with_strands", self.held_with_strands);
  }
};

// Another yarn, or set of yarns, for the whole item. Its yarns lie in `Pattern::yarns` beside the pattern's.
struct Candidate {
  CandidateId id;
  std::string name;            // empty = the name of its yarn
  bool shown = true;           // a column beside the pattern's own yarn
  bool washed_swatch = false;  // a swatch was knitted and washed as the item will be
  std::vector<CandidateYarn> yarns;
  std::string note;

  bool operator==(const Candidate&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("id", self.id);
    visit("name", self.name);
    visit("shown", self.shown);
    visit("washed_swatch", self.washed_swatch);
    visit("yarns", self.yarns);
    visit("note", self.note);
  }
};

// What a knitter may ask of a candidate.
enum class WishKind {
  within_budget,    // the pattern's budget
  meets_gauge,      // without a change of needle
  needle_change,    // at most with a change of needle
  mass_at_most,     // `limit`: percent more than in the pattern's yarn
  spare_at_most,    // `limit`: percent of what is bought left over
  same_care,        // no stricter than the pattern's yarn
  no_consequence,   // `rule` does not fire; empty = none at all
  not_wool,         // no fibre of an animal touches the skin
  one_dye_lot_buy,  // no role takes more than `limit` skeins
};
template <>
struct EnumWords<WishKind> {
  static constexpr auto rows =
      enum_rows<WishKind>({{WishKind::within_budget, "within the budget"},
                           {WishKind::meets_gauge, "meets the gauge"},
                           {WishKind::needle_change, "gauge within reach of a needle change"},
                           {WishKind::mass_at_most, "not heavier than"},
                           {WishKind::spare_at_most, "not more left over than"},
                           {WishKind::same_care, "no stricter care"},
                           {WishKind::no_consequence, "does not differ by"},
                           {WishKind::not_wool, "no animal fibre"},
                           {WishKind::one_dye_lot_buy, "no colour takes more skeins than"}});
};
enum class WishLevel { must, should, need_not };
template <>
struct EnumWords<WishLevel> {
  static constexpr auto rows = enum_rows<WishLevel>(
      {{WishLevel::must, "must"}, {WishLevel::should, "should"}, {WishLevel::need_not, "need not"}});
};
struct Wish {
  WishKind kind = WishKind::within_budget;
  WishLevel level = WishLevel::should;
  std::optional<Entered<double>> limit;
  std::string rule;  // "S1"

  bool operator==(const Wish&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("kind", self.kind);
    visit("level", self.level);
    visit("limit", self.limit);
    visit("rule", self.rule);
  }
};

}  // namespace skeinproof
