// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/manuscript/block_samples.h"

#include <cmath>
#include <fstream>
#include <sstream>

namespace skeinproof::testing {
namespace {

using Numbers = std::vector<double>;

Entered<double> number(double value) { return {value, {}}; }

void add_sizes(Pattern& pattern, std::size_t count, std::vector<std::size_t> opening) {
  for (std::size_t i = 0; i < count; ++i)
    pattern.sizes.push_back({SizeId{++pattern.last_id}, std::to_string(i + 1), false});
  for (const std::size_t i : opening) pattern.sizes[i].opens_group = true;
}

void add_measurement(Pattern& pattern, const char* name, Fit fit, const Numbers& values) {
  Measurement measurement;
  measurement.id = MeasurementId{++pattern.last_id};
  measurement.name = name;
  measurement.fit = fit;
  for (std::size_t i = 0; i < values.size(); ++i)
    measurement.values.set(i, Entered<Centimetres>{centimetres(values[i]), {}});
  pattern.measurements.push_back(measurement);
}

RoleId add_role(Pattern& pattern, const char* label, const char* shade, const char* shade_number) {
  Role role;
  role.id = RoleId{++pattern.last_id};
  role.label = label;
  role.yarn = pattern.yarns.front().id;
  role.shade.name = shade;
  role.shade.number = shade_number;
  pattern.roles.push_back(role);
  return role.id;
}

FabricId add_fabric(Pattern& pattern, const char* name, double stitches, double rounds, double needle_mm) {
  Fabric fabric;
  fabric.id = FabricId{++pattern.last_id};
  fabric.name = name;
  fabric.gauge.stitches = number(stitches);
  fabric.gauge.rows = number(rounds);
  fabric.gauge.state = GaugeState::washed;
  fabric.gauge.worked = Worked::in_the_round;
  fabric.needle = Entered<Centimetres>{centimetres(needle_mm / 10), {}};
  pattern.fabrics.push_back(fabric);
  return fabric.id;
}

// Needs from the knitted lengths: + swatch, x 1.05, skeins rounded up.
void add_needs(Sample& sample, RoleId role, const Numbers& knitted, double swatch) {
  const double skein = sample.pattern.yarns.front().put_up.length->value.value();
  RoleNeed need;
  need.role = role;
  need.label = sample.pattern.role(role)->label;
  sample.assessment.total_skeins.resize(knitted.size(), 0);
  for (std::size_t i = 0; i < knitted.size(); ++i) {
    SizeNeed size;
    size.known = true;
    size.knitted = metres(knitted[i]);
    size.swatch = metres(swatch);
    size.planned = metres((knitted[i] + swatch) * 1.05);
    size.allowance = size.planned - size.knitted - size.swatch;
    size.low = size.planned * 0.97;
    size.high = size.planned * 1.03;
    size.evidence = NeedEvidence::weighed_sample;
    size.fraction = size.planned.value() / skein;
    size.skeins = static_cast<int>(std::ceil(*size.fraction));
    size.last_skein_share = *size.fraction - (*size.skeins - 1);
    size.last_skein = *size.last_skein_share > 0.95   ? LastSkein::brimful
                      : *size.last_skein_share < 0.05 ? LastSkein::tips_over
                                                      : LastSkein::plain;
    need.sizes.push_back(size);
    auto& total = sample.assessment.total_skeins[i];
    total = *total + *size.skeins;
  }
  sample.assessment.roles.push_back(need);
}

}  // namespace

Sample yoke_sample() {
  Sample sample;
  Pattern& pattern = sample.pattern;
  pattern.title = "Quillmarsh Yoke";
  pattern.item = "pullover";
  pattern.wearer = "adult";
  add_sizes(pattern, 9, {1, 4});
  add_measurement(pattern, "bust", Fit::finished, {81.5, 91, 100, 109, 120, 129, 140, 149, 160});
  add_measurement(pattern, "bust", Fit::to_fit, {76, 84, 92, 102, 112, 122, 132, 142, 152});
  Yarn yarn;
  yarn.id = YarnId{++pattern.last_id};
  yarn.name = "Oddmere Fieldspun";
  yarn.composition = {{"wool", "wool", number(100)}};
  yarn.put_up = {Entered<Metres>{metres(175), {}}, Entered<Grams>{grams(50), {}}, SkeinWord::skein};
  yarn.spinning = Spinning::woollen;
  yarn.structure = "2-ply";
  yarn.category = "sport";
  yarn.surface = "matte";
  yarn.treatment = "untreated";
  yarn.colouring = "heathered";
  pattern.yarns.push_back(yarn);
  const RoleId mc = add_role(pattern, "MC", "Peat", "08");
  const RoleId cc1 = add_role(pattern, "CC1", "Lichen", "21");
  const RoleId cc2 = add_role(pattern, "CC2", "Gorse", "33");
  const RoleId cc3 = add_role(pattern, "CC3", "Ember", "40");
  add_fabric(pattern, "stocking stitch", 26, 34, 3.25);
  add_fabric(pattern, "stranded pattern", 26, 30, 3.5);
  pattern.house_styles = {HouseStyle{}};
  add_needs(sample, mc, {730.8, 796.4, 915.0, 998.9, 1125.7, 1222.3, 1348.4, 1447.7, 1581.9}, 20);
  add_needs(sample, cc1, {172.5, 184.7, 200.8, 213.0, 231.0, 243.2, 261.2, 273.4, 291.4}, 5);
  add_needs(sample, cc2, {71.6, 76.7, 84.3, 89.3, 96.9, 102.0, 109.6, 114.7, 122.3}, 5);
  add_needs(sample, cc3, {40.8, 43.7, 48.0, 50.8, 55.1, 58.0, 62.2, 65.1, 69.4}, 5);
  LengthNote note{cc3, metres(80), {}};
  for (const Size& size : pattern.sizes) note.sizes.push_back(size.label);
  sample.assessment.length_notes = {note};
  return sample;
}

Sample socks_sample() {
  Sample sample;
  Pattern& pattern = sample.pattern;
  pattern.title = "Lampwick Stripe Socks";
  pattern.item = "socks";
  add_sizes(pattern, 5, {1});
  add_measurement(pattern, "foot circumference", Fit::finished, {15, 17.5, 20, 22.5, 25});
  add_measurement(pattern, "foot length", Fit::finished, {15.5, 19.5, 23, 27, 30.5});
  Yarn yarn;
  yarn.id = YarnId{++pattern.last_id};
  yarn.name = "Nibthorpe Sock";
  yarn.composition = {{"wool_superwash", "superwash wool", number(75)},
                      {"polyamide", "polyamide", number(25)}};
  yarn.put_up = {Entered<Metres>{metres(210), {}}, Entered<Grams>{grams(50), {}}, SkeinWord::ball};
  yarn.twist = "tightly twisted";
  yarn.structure = "4-ply";
  yarn.category = "fingering";
  yarn.care = "machine wash at 30 °C";
  pattern.yarns.push_back(yarn);
  const RoleId mc = add_role(pattern, "MC", "Soot", "204");
  const RoleId cc = add_role(pattern, "CC", "Marigold", "311");
  add_fabric(pattern, "stocking stitch", 32, 44, 2.25);
  pattern.house_styles = {HouseStyle{}};
  add_needs(sample, mc, {50.8, 75.4, 104.6, 138.6, 165.6}, 10);
  add_needs(sample, cc, {81.5, 114.6, 153.4, 197.7, 240.0}, 10);
  return sample;
}

std::string golden(const std::string& name) {
  std::ifstream file(SKEINPROOF_SOURCE_DIR "/tests/golden/" + name, std::ios::binary);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

}  // namespace skeinproof::testing
