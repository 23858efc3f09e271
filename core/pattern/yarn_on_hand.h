// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/base/describe.h"
#include "core/base/enum_words.h"
#include "core/base/id.h"
#include "core/pattern/role.h"
#include "core/units/entered.h"
#include "core/units/quantity.h"

namespace skeinproof {

// How the length of yarn on hand is known.
enum class LengthBy {
  skeins_and_weight,  // whole skeins by the label, part skeins on the scale
  reel,               // turns x circumference x (1 - stretch)
  sampled_lengths,    // cut lengths weighed one by one, then the whole
  typed_length,
  wraps,  // thickness only: never a length
};
template <>
struct EnumWords<LengthBy> {
  static constexpr auto rows = enum_rows<LengthBy>({{LengthBy::skeins_and_weight, "skeins and weight"},
                                                    {LengthBy::reel, "turns on a reel"},
                                                    {LengthBy::sampled_lengths, "sampled lengths"},
                                                    {LengthBy::typed_length, "length"},
                                                    {LengthBy::wraps, "wraps, for thickness only"}});
};

// A length cut from the yarn, or measured along it, and its weight.
struct SampledLength {
  std::optional<Entered<Metres>> length;
  std::optional<Entered<Grams>> weight;

  bool operator==(const SampledLength&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("length_m", self.length);
    visit("weight_g", self.weight);
  }
};

// One shade and dye lot of a yarn that lies at home. Its yarn lies in `Pattern::yarns` beside the pattern's.
struct YarnOnHand {
  OnHandId id;
  YarnId yarn;
  Shade shade;
  std::string lot;
  LengthBy length_by = LengthBy::skeins_and_weight;
  std::optional<Entered<double>> whole_skeins;
  std::vector<Entered<Grams>> parts;  // part skeins, each on the scale by itself
  std::optional<Entered<Grams>> scale_step;
  std::optional<Entered<double>> humidity_pct;
  std::optional<Entered<Grams>> new_skein;  // a whole new skein of the same yarn, same scale, same hour
  std::optional<Entered<double>> turns;     // reel
  std::optional<Entered<Metres>> circumference;
  std::optional<Entered<double>> stretch_pct;  // what ten turns lose when let go
  std::vector<SampledLength> sampled;
  std::optional<Entered<Metres>> length;
  std::optional<Entered<double>> wraps_per_cm;
  RoleId role;       // held against this role; none = only for what it could become
  bool used = true;  // false: left out of plans and verdicts
  std::string note;

  bool operator==(const YarnOnHand&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("id", self.id);
    visit("yarn", self.yarn);
    visit("shade", self.shade);
    visit("lot", self.lot);
    visit("length_by", self.length_by);
    visit("whole_skeins", self.whole_skeins);
    visit("parts_g", self.parts);
    visit("scale_step_g", self.scale_step);
    visit("humidity_pct", self.humidity_pct);
    visit("new_skein_g", self.new_skein);
    visit("turns", self.turns);
    visit("circumference_m", self.circumference);
    visit("stretch_pct", self.stretch_pct);
    visit("sampled", self.sampled);
    visit("length_m", self.length);
    visit("wraps_per_cm", self.wraps_per_cm);
    visit("role", self.role);
    visit("used", self.used);
    visit("note", self.note);
  }
};

// A part of a piece that may be worked in a yarn of its own when yarn on hand is shared out: "heel turn".
struct GivenPart {
  PieceId piece;
  SectionId section;  // none = the whole piece, edges too

  bool operator==(const GivenPart&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("piece", self.piece);
    visit("section", self.section);
  }
};

// What is allowed when yarn on hand is shared out over the roles.
struct SharingRules {
  bool exchange_roles = true;                          // a yarn may serve another role than its own
  int yarns_a_role = 1;                                // so many yarns may share one role
  std::optional<Entered<double>> thickness_limit_pct;  // greatest difference from the pattern's yarn

  bool operator==(const SharingRules&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("exchange_roles", self.exchange_roles);
    visit("yarns_a_role", self.yarns_a_role);
    visit("thickness_limit_pct", self.thickness_limit_pct);
  }
};

}  // namespace skeinproof
