// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <map>
#include <numbers>

#include "core/fabric/gauge.h"
#include "core/fabric/loop_length.h"
#include "core/reference/lookup.h"
#include "core/units/show.h"
#include "core/yarn/linear_density.h"
#include "core/yarn/moisture.h"
#include "core/yarn/thickness.h"
#include "core/yarn/weigh.h"

// Every row of the table of worked examples, recomputed by the functions the program itself works with. The
// published source of each stands in the row.
namespace skeinproof {
namespace {

MetresPerGram from(std::string_view count, double number) {
  return from_count(*count_system_by_name(count), number);
}
double to(std::string_view count, MetresPerGram density) {
  return in_count(*count_system_by_name(count), density);
}

double value_of(std::string_view loop_constant) { return *loop_constant_by_id(loop_constant)->figure.value; }

PutUp put_up(Metres length, Grams weight) {
  PutUp result;
  result.length = Entered<Metres>{length, {}};
  result.weight = Entered<Grams>{weight, {}};
  return result;
}
Metres yards(double value) { return metres(value * metres_per_yard); }

Gauge gauge(double stitches, double rows, GaugeState state) {
  Gauge result;
  result.stitches = Entered<double>{stitches, {}};
  result.rows = Entered<double>{rows, {}};
  result.state = state;
  return result;
}
const Gauge washed_22_28 = gauge(22, 28, GaugeState::washed);

double loop_cm(const Gauge& of) { return loop_from_gauge(of)->loop.value(); }
double metres_per_m2(const Gauge& of) { return *stitches_per_cm2(of) * loop_cm(of) * 100; }

// The yarn of most rows: 225 m in 100 g.
const MetresPerGram light_yarn = *linear_density(put_up(metres(225), grams(100)));

double diameter_mm(MetresPerGram density, double rho, double phi) {
  return yarn_diameter(density, rho, phi).value() * 10;
}

const std::vector<FibreShare> wool = {{"wool", "wool", {100, {}}}};
const std::vector<FibreShare> cotton = {{"cotton", "cotton", {100, {}}}};
// European allowances, carded wool 17.00 and staple polyamide 6.25.
const std::vector<FibreShare> wool_and_nylon = {{"wool", "wool", {75, {}}}, {"polyamide", "nylon", {25, {}}}};

double skein_at(const std::vector<FibreShare>& fibres_of, double humidity) {
  return 100 * label_gram(fibres_of, Spinning::worsted, Market::europe, humidity)->on_scale;
}

double leftover_metres() {
  WeighedYarn yarn;
  yarn.reading = grams(18.4);
  yarn.put_up = put_up(metres(100), grams(50));
  yarn.composition = wool;
  yarn.spinning = Spinning::worsted;
  yarn.market = Market::europe;
  yarn.humidity_pct = 40;
  return weighed_length(yarn)->length.value();
}

double only_category(double stitches_per_4in) {
  const auto found = weight_categories_by_stitches(stitches_per_4in);
  return found.size() == 1 ? *found[0]->number : -1;
}

using Compute = std::function<double()>;
const std::map<std::string_view, Compute>& computed() {
  static const std::map<std::string_view, Compute> rows = {
      {"W01", [] { return to("cotton count", from_tex(20)); }},
      {"W02", [] { return to("denier", from_tex(20)); }},
      {"W03", [] { return metric_count(from_tex(20)); }},
      {"W04", [] { return to("cotton count", from_tex(30)); }},
      {"W05", [] { return to("worsted count", from("cotton count", 10)); }},
      {"W06", [] { return to("yards per pound", from("metric count", 1)); }},
      {"W07", [] { return in_tex(from("grains per 120 yards (American grain)", 100)); }},
      {"W08", [] { return to("woollen run (US)", from("cotton count", 10)); }},
      {"W09", [] { return in_tex(from("linen lea", 30)); }},
      {"W10", [] { return in_tex(plied(from("worsted count", 32), 2)); }},
      {"W11", [] { return to("cotton count", plied(from("cotton count", 35.2), 2, 0.10)); }},
      {"W12", [] { return in_tex(light_yarn); }},
      {"W13", [] { return in_tex(*linear_density(put_up(yards(115), grams(50)))); }},
      {"W14", [] { return to("yards per pound", light_yarn); }},
      // The constant 0.00444 cm is the general formula at the packing 4 / (pi x 1e5 x 0.00444²).
      {"W15",
       [] {
         const double constant = value_of("diameter_444");
         const double packing = 4 / (std::numbers::pi * 1e5 * constant * constant);
         return yarn_diameter(from_tex(30), 1.54, packing).value();
       }},
      {"W16",
       [] {
         return 2.54 /
                (value_of("diameter_peirce") * std::sqrt(to("cotton count", from("cotton count", 36))));
       }},
      {"W17", [] { return diameter_mm(light_yarn, 1.31, 0.25); }},
      {"W18", [] { return diameter_mm(light_yarn, fibre_density(cotton)->g_per_cm3, 0.25); }},
      // The length at which cotton is as thick as wool: the square of the ratio of thickness at equal length.
      {"W19",
       [] {
         const double ratio = thickness_ratio(light_yarn, fibre_density(wool)->g_per_cm3, light_yarn,
                                              fibre_density(cotton)->g_per_cm3);
         return ratio * ratio;
       }},
      {"W20", [] { return value_of("munden_fully_Kc") * value_of("munden_fully_Kw") / (0.5 * 0.5); }},
      {"W21", [] { return loop_cm(washed_22_28); }},
      {"W22", [] { return metres_per_m2(washed_22_28); }},
      {"W23", [] { return loop_cm(gauge(20, 26, GaugeState::never_wetted)); }},
      {"W24",
       [] { return metres_per_m2(gauge(22, 28, GaugeState::never_wetted)) / metres_per_m2(washed_22_28); }},
      {"W25",
       [] {
         return 10 * (2 * row_height(washed_22_28)->value() + stitch_width(washed_22_28)->value()) +
                5.94 * 1.29;
       }},
      {"W26", [] { return 1.2 * value_of("l_over_d"); }},
      {"W27", [] { return firmness(light_yarn, loop_from_gauge(washed_22_28)->loop); }},
      {"W28", [] { return metres_per_m2(washed_22_28) / light_yarn.value(); }},
      {"W29", [] { return 10 * loop_from_swatch(grams(10.30) * light_yarn, 1200)->loop.value(); }},
      {"W30",
       [] {
         const double loop = loop_from_swatch(grams(10.30) * light_yarn, 1200)->loop.value();
         return loop * loop * *stitches_per_cm2(washed_22_28);
       }},
      {"W31", [] { return *loop_shape(washed_22_28); }},
      {"W32", [] { return 0.85 * metres_per_m2(washed_22_28); }},
      {"W33", [] { return 0.85 * metres_per_m2(washed_22_28) / light_yarn.value(); }},
      {"W34", [] { return std::ceil(0.85 * metres_per_m2(washed_22_28) / light_yarn.value() / 50); }},
      {"W35", [] { return 48 * 8 * 5 / *rule_by_id("area_rule")->figure.value; }},
      {"W36", [] { return 48 * 8 * 5 * value_of("munden_fully_Kc") / 36; }},
      {"W37", [] { return regain_from_content_pct(12.0); }},
      {"W38", [] { return regain_from_content_pct(13.04); }},
      {"W39", [] { return 100 * label_gram(wool, Spinning::worsted, Market::europe, 40)->dry; }},
      {"W40", [] { return skein_at(wool, 40); }},
      {"W41", [] { return skein_at(cotton, 40); }},
      {"W42", [] { return leftover_metres(); }},
      {"W43", [] { return 100 * label_gram(wool_and_nylon, Spinning::woollen, Market::europe, 65)->dry; }},
      {"W44", [] { return *blend_allowance_pct(wool_and_nylon, Spinning::woollen, Market::europe); }},
      {"W45", [] { return regain(*fibre_by_id("wool"), 45).pct; }},
      {"W46", [] { return european_mass_shortage(grams(25))->amount; }},
      {"W47", [] { return european_mass_shortage(grams(50))->amount; }},
      {"W48", [] { return european_mass_shortage(grams(100))->amount; }},
      {"W49", [] { return european_mass_shortage(grams(150))->amount; }},
      {"W50", [] { return european_mass_shortage(grams(200))->amount; }},
      {"W51", [] { return european_mass_shortage(grams(400))->amount; }},
      {"W52", [] { return european_mass_limit(grams(50))->amount; }},
      {"W53", [] { return german_yarn_length_shortage(metres(100))->amount; }},
      {"W54", [] { return german_yarn_length_shortage(metres(101))->amount; }},
      {"W55", [] { return coarsest_scale_step(grams(50)).value(); }},
      {"W56", [] { return 4 * centimetres_per_inch / stitch_width(washed_22_28)->value(); }},
      {"W57", [] { return only_category(22); }},
      {"W58", [] { return only_category(20); }},
      {"W59", [] { return needles_by_us("8").at(0)->mm; }},
      {"W60", [] { return needles_by_uk_old("10").at(0)->mm; }},
  };
  return rows;
}

class WorkedExampleRow : public testing::TestWithParam<WorkedExample> {};

TEST_P(WorkedExampleRow, comes_out) {
  const WorkedExample& row = GetParam();
  const auto at = computed().find(row.id);
  ASSERT_NE(at, computed().end()) << "no computation for " << row.id << ": " << row.inputs;
  // A tolerance of nothing still leaves room for the last binary digit.
  EXPECT_NEAR(at->second(), row.expected, row.tolerance + 1e-12)
      << row.inputs << " [" << citation(row.source) << "]";
}

INSTANTIATE_TEST_SUITE_P(All, WorkedExampleRow,
                         testing::ValuesIn(worked_examples().begin(), worked_examples().end()),
                         [](const auto& each) { return std::string(each.param.id); });

TEST(WorkedExamples, every_computation_has_its_row) {
  EXPECT_EQ(computed().size(), worked_examples().size());
}

}  // namespace

void PrintTo(const WorkedExample& row, std::ostream* out) { *out << row.id; }

}  // namespace skeinproof
