// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/base/describe.h"
#include "core/base/enum_words.h"
#include "core/base/id.h"
#include "core/pattern/bench_change.h"
#include "core/units/entered.h"
#include "core/units/quantity.h"

namespace skeinproof {

// One colour of a weighed sample.
struct WeighedRole {
  RoleId role;
  std::optional<Entered<Grams>> reading;    // on the scale
  std::optional<Entered<Grams>> notions;    // buttons, zip, labels, waste yarn in the reading
  std::optional<Entered<Grams>> new_skein;  // a whole new skein of the same yarn, same scale, same hour

  bool operator==(const WeighedRole&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("role", self.role);
    visit("reading_g", self.reading);
    visit("notions_g", self.notions);
    visit("new_skein_g", self.new_skein);
  }
};

// How many copies of a piece were on the scale, where it was not the whole item.
struct WeighedCopies {
  PieceId piece;
  int copies = 1;

  bool operator==(const WeighedCopies&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("piece", self.piece);
    visit("copies", self.copies);
  }
};

// How the moisture of the reading is dealt with.
enum class Moisture { not_corrected, new_skein, humidity };
template <>
struct EnumWords<Moisture> {
  static constexpr auto rows =
      enum_rows<Moisture>({{Moisture::not_corrected, "not corrected"},
                           {Moisture::new_skein, "a new skein weighed in the same hour"},
                           {Moisture::humidity, "relative humidity stated"}});
};

// A sample of one size, weighed colour by colour: the designer's own, or a tester's.
struct Weighing {
  WeighingId id;
  std::string name;
  SizeId size;
  std::vector<WeighedRole> roles;
  std::vector<WeighedCopies> only;  // empty = the whole item
  Moisture moisture = Moisture::not_corrected;
  std::optional<Entered<double>> humidity_pct;
  std::optional<Entered<Grams>> scale_step;
  std::string state;  // "washed, dry"
  std::string who;
  std::string when;  // as typed, or ISO 8601
  std::string note;
  bool used = true;
  bool tester = false;               // reported by a test knitter
  std::vector<BenchChange> altered;  // what was knitted otherwise than the pattern says

  bool operator==(const Weighing&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("id", self.id);
    visit("name", self.name);
    visit("size", self.size);
    visit("roles", self.roles);
    visit("only", self.only);
    visit("moisture", self.moisture);
    visit("humidity_pct", self.humidity_pct);
    visit("scale_step_g", self.scale_step);
    visit("state", self.state);
    visit("who", self.who);
    visit("when", self.when);
    visit("note", self.note);
    visit("used", self.used);
    visit("tester", self.tester);
    visit("altered", self.altered);
  }
};

}  // namespace skeinproof
