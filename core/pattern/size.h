// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>

#include "core/base/describe.h"
#include "core/base/enum_words.h"
#include "core/base/id.h"
#include "core/base/per_size.h"
#include "core/units/entered.h"
#include "core/units/quantity.h"

namespace skeinproof {

struct Size {
  SizeId id;
  std::string label;
  bool opens_group = false;  // a bracket of the size line opens before this size

  bool operator==(const Size&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("id", self.id);
    visit("label", self.label);
    visit("opens_group", self.opens_group);
  }
};

// What a measurement measures; the area from measurements reads the first six.
enum class MeasurementKind {
  circumference,  // bust, chest, foot, head: what the item is sized by
  body_length,    // to the underarm; for flat items and socks the length
  sleeve_width,   // mean
  sleeve_length,
  yoke_depth,
  neck_circumference,
  other,
};
template <>
struct EnumWords<MeasurementKind> {
  static constexpr auto rows = enum_rows<MeasurementKind>({{MeasurementKind::circumference, "circumference"},
                                                           {MeasurementKind::body_length, "length"},
                                                           {MeasurementKind::sleeve_width, "sleeve width"},
                                                           {MeasurementKind::sleeve_length, "sleeve length"},
                                                           {MeasurementKind::yoke_depth, "yoke depth"},
                                                           {MeasurementKind::neck_circumference, "neck"},
                                                           {MeasurementKind::other, "other"}});
};

enum class Fit { finished, to_fit };
template <>
struct EnumWords<Fit> {
  static constexpr auto rows = enum_rows<Fit>({{Fit::finished, "finished"}, {Fit::to_fit, "to fit"}});
};

struct Measurement {
  MeasurementId id;
  std::string name;  // "bust"
  MeasurementKind kind = MeasurementKind::circumference;
  Fit fit = Fit::finished;
  PerSize<Entered<Centimetres>> values;

  bool operator==(const Measurement&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("id", self.id);
    visit("name", self.name);
    visit("kind", self.kind);
    visit("fit", self.fit);
    visit("values_cm", self.values);
  }
};

}  // namespace skeinproof
