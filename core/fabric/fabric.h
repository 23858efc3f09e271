// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>

#include "core/base/describe.h"
#include "core/base/enum_words.h"
#include "core/base/id.h"
#include "core/units/entered.h"
#include "core/units/quantity.h"

namespace skeinproof {

// The state a gauge was measured in; decides K in loop length = sqrt(K / stitch density).
enum class GaugeState { unstated, never_wetted, wetted, washed };
template <>
struct EnumWords<GaugeState> {
  static constexpr auto rows = enum_rows<GaugeState>({{GaugeState::unstated, "unstated"},
                                                      {GaugeState::never_wetted, "never wetted"},
                                                      {GaugeState::wetted, "wetted"},
                                                      {GaugeState::washed, "washed"}});
};

enum class Worked { unstated, flat, in_the_round };
template <>
struct EnumWords<Worked> {
  static constexpr auto rows = enum_rows<Worked>(
      {{Worked::unstated, "unstated"}, {Worked::flat, "flat"}, {Worked::in_the_round, "in the round"}});
};

// Stitches and rows (rounds) counted over a stated length of cloth.
struct Gauge {
  std::optional<Entered<double>> stitches;
  std::optional<Entered<double>> rows;
  Entered<Centimetres> over{centimetres(10), "10 cm"};
  GaugeState state = GaugeState::unstated;
  Worked worked = Worked::unstated;

  bool operator==(const Gauge&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("stitches", self.stitches);
    visit("rows", self.rows);
    visit("over_cm", self.over);
    visit("state", self.state);
    visit("worked", self.worked);
  }
};

// A swatch of counted stitches put on a scale, cast-on, bind-off and tails excluded.
struct Swatch {
  std::optional<Entered<Grams>> weight;
  std::optional<Entered<double>> stitches;  // stitches x rows of the whole swatch
  std::optional<Entered<Grams>> scale_step;
  std::optional<Entered<Grams>> new_skein;  // a whole new skein of the same yarn, same scale, same hour
  std::optional<Entered<double>> humidity_pct;
  YarnId yarn;

  bool operator==(const Swatch&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("weight_g", self.weight);
    visit("stitches", self.stitches);
    visit("scale_step_g", self.scale_step);
    visit("new_skein_g", self.new_skein);
    visit("humidity_pct", self.humidity_pct);
    visit("yarn", self.yarn);
  }
};

enum class Structure {
  plain,
  rib,
  garter,
  moss,
  cable,
  stranded,
  intarsia,
  lace,
  slip_stitch,
  brioche,
  other
};
template <>
struct EnumWords<Structure> {
  static constexpr auto rows = enum_rows<Structure>({{Structure::plain, "stocking stitch"},
                                                     {Structure::rib, "rib"},
                                                     {Structure::garter, "garter stitch"},
                                                     {Structure::moss, "moss stitch"},
                                                     {Structure::cable, "cable"},
                                                     {Structure::stranded, "stranded"},
                                                     {Structure::intarsia, "intarsia"},
                                                     {Structure::lace, "lace"},
                                                     {Structure::slip_stitch, "slip stitch"},
                                                     {Structure::brioche, "brioche"},
                                                     {Structure::other, "other"}});
};

// Where the loop length of a fabric comes from.
enum class LoopSource { from_gauge, from_swatch, typed };
template <>
struct EnumWords<LoopSource> {
  static constexpr auto rows = enum_rows<LoopSource>({{LoopSource::from_gauge, "from the gauge"},
                                                      {LoopSource::from_swatch, "from a weighed swatch"},
                                                      {LoopSource::typed, "typed"}});
};

// A kind of cloth in the pattern with its gauge and the yarn one stitch of it takes.
struct Fabric {
  FabricId id;
  std::string name;
  Structure structure = Structure::plain;
  Gauge gauge;
  std::optional<Entered<Centimetres>> needle;  // diameter
  LoopSource loop_source = LoopSource::from_gauge;
  std::optional<Entered<Centimetres>> typed_loop;  // yarn in one stitch
  std::optional<Entered<Centimetres>>
      float_per_stitch;  // yarn over one passed stitch; absent = width x slack
  Swatch swatch;

  bool operator==(const Fabric&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("id", self.id);
    visit("name", self.name);
    visit("structure", self.structure);
    visit("gauge", self.gauge);
    visit("needle_cm", self.needle);
    visit("loop_source", self.loop_source);
    visit("typed_loop_cm", self.typed_loop);
    visit("float_per_stitch_cm", self.float_per_stitch);
    visit("swatch", self.swatch);
  }
};

}  // namespace skeinproof
