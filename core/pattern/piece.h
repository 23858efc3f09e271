// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/base/describe.h"
#include "core/base/enum_words.h"
#include "core/base/id.h"
#include "core/base/per_size.h"
#include "core/units/entered.h"
#include "core/units/quantity.h"

namespace skeinproof {

// Rows worked while the stitch count goes evenly from one width to another; equal widths are a straight run.
// Stitches = rows x (from + to) / 2. An absent `to` means straight.
struct ShapeRun {
  PerSize<Entered<double>> from;
  PerSize<Entered<double>> to;
  PerSize<Entered<double>> rows;

  bool operator==(const ShapeRun&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("from", self.from);
    visit("to", self.to);
    visit("rows", self.rows);
  }
};

enum class StitchSource { typed, worked_out, chart };
template <>
struct EnumWords<StitchSource> {
  static constexpr auto rows = enum_rows<StitchSource>({{StitchSource::typed, "typed"},
                                                        {StitchSource::worked_out, "worked out"},
                                                        {StitchSource::chart, "chart"}});
};

enum class Colouring { one_role, stripes };
template <>
struct EnumWords<Colouring> {
  static constexpr auto rows =
      enum_rows<Colouring>({{Colouring::one_role, "one role"}, {Colouring::stripes, "stripes"}});
};

struct Stripe {
  RoleId role;
  Entered<double> rows;

  bool operator==(const Stripe&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("role", self.role);
    visit("rows", self.rows);
  }
};

// What happens to the resting colours of a stripe sequence.
enum class StripeChange { carried_not_counted, carried, cut };
template <>
struct EnumWords<StripeChange> {
  static constexpr auto rows =
      enum_rows<StripeChange>({{StripeChange::carried_not_counted, "carried, not counted"},
                               {StripeChange::carried, "carried up the side"},
                               {StripeChange::cut, "cut at every stripe"}});
};

// A stretch of a piece in one fabric.
struct Section {
  SectionId id;
  std::string name;
  FabricId fabric;
  StitchSource source = StitchSource::typed;
  PerSize<Entered<double>> stitches;  // typed: stitches of one copy
  std::vector<ShapeRun> runs;         // worked out
  ChartId chart;                      // chart: whole repeats of it
  PerSize<Entered<double>> repeats;
  Colouring colouring = Colouring::one_role;  // typed and worked out; a chart brings its own colours
  RoleId role;
  std::vector<Stripe> stripes;
  StripeChange stripe_change = StripeChange::carried_not_counted;

  bool operator==(const Section&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("id", self.id);
    visit("name", self.name);
    visit("fabric", self.fabric);
    visit("source", self.source);
    visit("stitches", self.stitches);
    visit("runs", self.runs);
    visit("chart", self.chart);
    visit("repeats", self.repeats);
    visit("colouring", self.colouring);
    visit("role", self.role);
    visit("stripes", self.stripes);
    visit("stripe_change", self.stripe_change);
  }
};

// Yarn that is not in stitches of the cloth. What `amount` counts and what `rate` means follow the kind.
enum class EdgeKind {
  cast_on,   // stitches per copy; rate cm of yarn a stitch, absent = 4 stitch widths of the fabric
  bind_off,  // the same
  seam,      // cm of seam per copy; rate metres of yarn a metre of seam, absent = 1.5
  ends,      // metres per copy
  other,     // metres per copy: cord, pompom, embroidery
};
template <>
struct EnumWords<EdgeKind> {
  static constexpr auto rows = enum_rows<EdgeKind>({{EdgeKind::cast_on, "cast-on"},
                                                    {EdgeKind::bind_off, "bind-off"},
                                                    {EdgeKind::seam, "seam"},
                                                    {EdgeKind::ends, "ends"},
                                                    {EdgeKind::other, "other"}});
};

struct Edge {
  EdgeId id;
  std::string name;
  EdgeKind kind = EdgeKind::cast_on;
  RoleId role;
  FabricId fabric;  // gives the stitch width where no rate is typed
  PerSize<Entered<double>> amount;
  std::optional<Entered<double>> rate;

  bool operator==(const Edge&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("id", self.id);
    visit("name", self.name);
    visit("kind", self.kind);
    visit("role", self.role);
    visit("fabric", self.fabric);
    visit("amount", self.amount);
    visit("rate", self.rate);
  }
};

// A part of the item: body, sleeves, sock. All counts inside are of one copy.
struct Piece {
  PieceId id;
  std::string name;
  int copies = 1;
  std::vector<Section> sections;
  std::vector<Edge> edges;

  bool operator==(const Piece&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("id", self.id);
    visit("name", self.name);
    visit("copies", self.copies);
    visit("sections", self.sections);
    visit("edges", self.edges);
  }
};

}  // namespace skeinproof
