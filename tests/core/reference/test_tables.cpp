// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <cmath>
#include <set>

#include "core/reference/tables.h"

namespace skeinproof {
namespace {

// Every row that is cited stands in the tables with a source or as common practice; nothing is bare.
void expect_backed(const Figure& figure, std::string_view row) {
  if (!figure.value && !figure.low && !figure.high) return;
  EXPECT_FALSE(figure.source.empty()) << row;
  EXPECT_NE(figure.confidence, Confidence::unstated) << row;
}

TEST(Tables, hold_all_rows_of_the_published_files) {
  EXPECT_EQ(fibres().size(), 43u);
  EXPECT_EQ(moisture_points().size(), 96u);
  EXPECT_EQ(loop_constants().size(), 54u);
  EXPECT_EQ(count_systems().size(), 32u);
  EXPECT_EQ(weight_categories().size(), 17u);
  EXPECT_EQ(needle_rows().size(), 34u);
  EXPECT_EQ(package_tolerances().size(), 53u);
  EXPECT_EQ(cautions().size(), 38u);
  EXPECT_EQ(rules_of_thumb().size(), 109u);
  EXPECT_EQ(worked_examples().size(), 60u);
  EXPECT_EQ(sources().size(), 65u);
}

TEST(Tables, give_every_figure_its_source) {
  for (const Fibre& fibre : fibres()) {
    ASSERT_TRUE(fibre.density.value) << fibre.id;
    expect_backed(fibre.density, fibre.id);
    expect_backed(fibre.us_regain_pct, fibre.id);
    expect_backed(fibre.regain_at_65_pct, fibre.id);
    if (fibre.allowance.pct) {
      EXPECT_FALSE(fibre.allowance.source.empty()) << fibre.id;
    }
    EXPECT_EQ(fibre.allowance.alternative_pct.has_value(), !fibre.allowance.alternative_when.empty())
        << fibre.id;
    EXPECT_GT(*fibre.density.value, 0.85) << fibre.id;
    EXPECT_LT(*fibre.density.value, 1.6) << fibre.id;
  }
  for (const MoisturePoint& point : moisture_points()) expect_backed(point.regain_pct, point.curve);
  for (const LoopConstant& constant : loop_constants()) expect_backed(constant.figure, constant.id);
  for (const RuleOfThumb& rule : rules_of_thumb()) expect_backed(rule.figure, rule.id);
}

TEST(Tables, moisture_curves_rise_from_nothing_to_saturation) {
  const MoisturePoint* last = nullptr;
  for (const MoisturePoint& point : moisture_points()) {
    if (!last || last->curve != point.curve) {
      EXPECT_EQ(point.humidity_pct, 0);
      EXPECT_EQ(*point.regain_pct.value, 0);
      if (last) {
        EXPECT_EQ(last->humidity_pct, 100) << last->curve;
      }
    } else {
      EXPECT_GT(point.humidity_pct, last->humidity_pct) << point.curve;
      EXPECT_GT(*point.regain_pct.value, *last->regain_pct.value) << point.curve;
    }
    last = &point;
  }
  EXPECT_EQ(last->humidity_pct, 100);
}

TEST(Tables, count_constants_are_exact_products) {
  for (const CountSystem& system : count_systems())
    EXPECT_NEAR(system.tex_constant / system.units_tex, 1, 1e-9) << system.name;
}

// Munden 1959 (constants of course, wale and stitch density): Ks is near Kc x Kw in each state.
TEST(Tables, loop_constants_agree_with_each_other) {
  const auto value = [](std::string_view id) {
    for (const LoopConstant& row : loop_constants())
      if (row.id == id) return row.figure.value.value_or(0);
    ADD_FAILURE() << id;
    return 0.0;
  };
  for (const std::string state : {"dry", "wet", "fully"}) {
    const double kc = value("munden_" + state + "_Kc");
    const double kw = value("munden_" + state + "_Kw");
    EXPECT_NEAR(kc * kw, value("munden_" + state + "_Ks"), 0.2) << state;
    EXPECT_NEAR(kc / kw, 1.305, 0.025) << state;
  }
}

TEST(Tables, needles_grow_down_the_page) {
  double last = 0;
  for (const NeedleRow& row : needle_rows()) {
    EXPECT_GT(row.mm, last);
    last = row.mm;
    if (!row.us.text.empty()) {
      EXPECT_FALSE(row.us.source.empty()) << row.mm;
    }
    if (row.uk_wire_mm) {
      EXPECT_NEAR(*row.uk_wire_mm, row.mm, 0.56) << row.mm;
    }
    if (row.japan_mm) {
      EXPECT_NEAR(*row.japan_mm, row.mm, 0.11) << row.mm;
    }
  }
}

TEST(Tables, european_limits_are_twice_the_tolerances) {
  std::set<std::string> checked;
  for (const PackageTolerance& once : package_tolerances())
    for (const PackageTolerance& twice : package_tolerances()) {
      if (once.id.substr(0, 6) != "eu_T1_" || twice.id.substr(0, 6) != "eu_T2_") continue;
      if (once.id.substr(6) != twice.id.substr(6)) continue;
      EXPECT_DOUBLE_EQ(2 * once.amount.value_or(0), twice.amount.value_or(-1)) << once.id;
      checked.insert(std::string(once.id));
    }
  EXPECT_EQ(checked.size(), 7u);
}

TEST(Tables, cautions_have_words_to_show) {
  for (const Caution& caution : cautions()) {
    EXPECT_FALSE(caution.text.empty()) << caution.id;
    EXPECT_FALSE(caution.source.empty()) << caution.id;
  }
}

}  // namespace
}  // namespace skeinproof
