// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>

#include "core/base/describe.h"
#include "core/base/id.h"
#include "core/units/entered.h"
#include "core/units/quantity.h"

namespace skeinproof {

// Yarn weighed while the item of the chosen size is on the needles: what one colour began with and what is
// left once a place in the work is reached.
struct YarnReading {
  ReadingId id;
  RoleId role;
  std::optional<Entered<Grams>> began_with;
  std::optional<Entered<Grams>> left;
  std::optional<Entered<Grams>> scale_step;
  PieceId piece;                         // the place: this piece is on the needles …
  SectionId section;                     // … in this section (none = the piece is finished), …
  int copy = 1;                          // … the first, second … copy of it, …
  std::optional<Entered<double>> round;  // … this round is done (absent = the whole section)
  std::string when;                      // as typed
  std::string note;
  bool used = true;

  bool operator==(const YarnReading&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("id", self.id);
    visit("role", self.role);
    visit("began_with_g", self.began_with);
    visit("left_g", self.left);
    visit("scale_step_g", self.scale_step);
    visit("piece", self.piece);
    visit("section", self.section);
    visit("copy", self.copy);
    visit("round", self.round);
    visit("when", self.when);
    visit("note", self.note);
    visit("used", self.used);
  }
};

}  // namespace skeinproof
