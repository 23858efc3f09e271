// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>

#include "core/base/describe.h"
#include "core/base/enum_words.h"
#include "core/base/id.h"
#include "core/base/per_size.h"
#include "core/units/entered.h"
#include "core/units/quantity.h"

namespace skeinproof {

// How the need of a colour is expected to grow with the fabric area from size to size.
enum class GrowthBand { automatic, whole_garment, part, hardly_grows, unknown };
template <>
struct EnumWords<GrowthBand> {
  static constexpr auto rows = enum_rows<GrowthBand>({{GrowthBand::automatic, "automatic"},
                                                      {GrowthBand::whole_garment, "whole garment"},
                                                      {GrowthBand::part, "part"},
                                                      {GrowthBand::hardly_grows, "hardly grows"},
                                                      {GrowthBand::unknown, "unknown"}});
};

// CIE colour of a shade as the user gives it; only the lightness is needed anywhere.
struct Shade {
  std::string name;
  std::string number;
  std::optional<Entered<double>> lightness;  // CIE L*, 0 to 100
  std::optional<Entered<double>> a;          // CIE a*, b*: for the chip on screen only
  std::optional<Entered<double>> b;

  bool operator==(const Shade&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("name", self.name);
    visit("number", self.number);
    visit("lightness", self.lightness);
    visit("a", self.a);
    visit("b", self.b);
  }
};

// A colour of the pattern: MC, CC1 …
struct Role {
  RoleId id;
  std::string label;
  YarnId yarn;
  Shade shade;
  int strands = 1;         // equal strands of the yarn held together
  RoleId goes_along_with;  // worked together with another role, so it needs that role's length; none = 0
  std::optional<Entered<Metres>> swatch;
  bool charge_entries = true;  // false where the yarn is carried up and never cut between rounds
  GrowthBand growth = GrowthBand::automatic;
  PerSize<Entered<double>> printed_count;  // skeins in the submitted or published text
  std::string printed_note;                // length note as printed
  std::optional<Entered<Metres>> printed_at_most;

  bool operator==(const Role&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("id", self.id);
    visit("label", self.label);
    visit("yarn", self.yarn);
    visit("shade", self.shade);
    visit("strands", self.strands);
    visit("goes_along_with", self.goes_along_with);
    visit("swatch_m", self.swatch);
    visit("charge_entries", self.charge_entries);
    visit("growth", self.growth);
    visit("printed_count", self.printed_count);
    visit("printed_note", self.printed_note);
    visit("printed_at_most_m", self.printed_at_most);
  }
};

}  // namespace skeinproof
