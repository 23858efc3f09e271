// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <cmath>
#include <map>

#include "core/reference/lookup.h"
#include "core/units/read.h"
#include "core/units/show.h"
#include "core/yarn/linear_density.h"
#include "tests/outside/gnu_units.h"

// GNU units is the judge here: a free program with its own definitions of textile counts, wire gauges and
// measures.
namespace skeinproof {
namespace {

TEST(GnuUnits, answers) {
  ASSERT_NEAR(gnu_units("1 yd", "m"), 0.9144, 1e-12) << "the program `units` must be installed";
  ASSERT_TRUE(std::isnan(gnu_units("1 yd", "kg")));
}

TEST(GnuUnits, agrees_on_every_count_system) {
  for (const CountSystem& system : count_systems()) {
    const double tex = gnu_units(std::string(system.units_expression), "tex");
    EXPECT_NEAR(system.tex_constant / tex, 1, 1e-9) << system.name;
    EXPECT_NEAR(in_tex(from_count(system, 1)) / tex, 1, 1e-9) << system.name;
    EXPECT_NEAR(in_count(system, from_tex(tex)), 1, 1e-9) << system.name;
  }
}

TEST(GnuUnits, agrees_on_what_a_put_up_is_in_each_label_form) {
  const MetresPerGram density = metres_per_gram(175.0 / 50);
  EXPECT_NEAR(in_tex(density), gnu_units("50 g / 175 m", "tex"), 1e-8);
  EXPECT_NEAR(metric_count(density), gnu_units("175 m / 50 g", "metricyarncount"), 1e-10);
  EXPECT_NEAR(yards_per_ounce(density), gnu_units("175 m / 50 g", "yd/oz"), 1e-9);
  EXPECT_NEAR(metres_per_100g(density), gnu_units("175 m / 50 g", "m/hectogram"), 1e-9);
}

TEST(GnuUnits, agrees_on_what_people_type) {
  for (const char* text : {"175 m", "191 yd", "36 in", "3 ft", "1.2 km", "150 cm", "7 mm"})
    EXPECT_NEAR(read_length(text)->value.value(), gnu_units(text, "m"), 1e-10) << text;
  for (const char* text : {"50 g", "1.75 oz", "1 lb", "0.1 kg", "3 ounces"})
    EXPECT_NEAR(read_mass(text)->value.value(), gnu_units(text, "g"), 1e-10) << text;
  for (const char* text : {"81.5 cm", "32 in", "3.25 mm", "1 m"})
    EXPECT_NEAR(read_measure(text)->value.value(), gnu_units(text, "cm"), 1e-10) << text;
  EXPECT_NEAR(in_yards(metres(175)), gnu_units("175 m", "yd"), 1e-9);
  EXPECT_NEAR(in_ounces(grams(50)), gnu_units("50 g", "oz"), 1e-11);
  EXPECT_NEAR(in_inches(centimetres(81.5)), gnu_units("81.5 cm", "in"), 1e-10);
}

// Old United Kingdom needle numbers are those of the British Standard Wire Gauge.
TEST(GnuUnits, agrees_on_the_wire_gauge_of_old_needle_numbers) {
  const std::map<std::string_view, int> zeros = {{"0", 0}, {"00", -1}, {"000", -2}};
  int checked = 0;
  for (const NeedleRow& row : needle_rows()) {
    if (row.uk_old.text.empty()) continue;
    const auto zero = zeros.find(row.uk_old.text);
    const int number = zero == zeros.end() ? std::stoi(std::string(row.uk_old.text)) : zero->second;
    const double wire = gnu_units("brwiregauge(" + std::to_string(number) + ")", "mm");
    EXPECT_NEAR(row.uk_wire_mm.value_or(0), wire, 1e-3) << row.uk_old.text;
    EXPECT_NEAR(row.mm, wire, 0.56) << row.uk_old.text;
    ++checked;
  }
  EXPECT_EQ(checked, 19);
}

}  // namespace
}  // namespace skeinproof
