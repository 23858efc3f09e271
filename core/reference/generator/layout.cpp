// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/reference/generator/layout.h"

namespace skeinproof::generator {
namespace {

Member text(std::string_view name, std::string_view column) { return {name, Kind::text, column, {}}; }
Member text(std::string_view name) { return text(name, name); }
Member source(std::string_view column = "source") { return {"source", Kind::source, column, {}}; }
Member confidence(std::string_view column = "confidence") {
  return {"confidence", Kind::confidence, column, {}};
}
Member number(std::string_view name, std::string_view column) { return {name, Kind::number, column, {}}; }
Member maybe(std::string_view name, std::string_view column) {
  return {name, Kind::optional_number, column, {}};
}

struct Columns {
  std::string_view value, low, high;
};
Member figure(std::string_view name, Columns columns, std::string_view source_column = "source",
              std::string_view confidence_column = "confidence") {
  Member member{name, Kind::text, {}, {}};
  if (!columns.value.empty()) member.inner.push_back(maybe("value", columns.value));
  if (!columns.low.empty()) member.inner.push_back(maybe("low", columns.low));
  if (!columns.high.empty()) member.inner.push_back(maybe("high", columns.high));
  member.inner.push_back(source(source_column));
  member.inner.push_back(confidence(confidence_column));
  return member;
}
Member cited(std::string_view name, std::string_view column, std::string_view source_column,
             std::string_view confidence_column) {
  return {name, Kind::text, {}, {text("text", column), source(source_column), confidence(confidence_column)}};
}

Layout fibres() {
  const Member allowance{
      "allowance",
      Kind::text,
      {},
      {maybe("pct", "eu_allowance_pct"), maybe("alternative_pct", "eu_allowance_alt_pct"),
       text("alternative_when", "eu_allowance_alt_when"), text("note", "eu_allowance_note"),
       source("eu_allowance_source"), confidence("eu_allowance_confidence")}};
  return {"fibres.csv",
          "Fibre",
          "fibre_rows",
          "fibre_id",
          {text("id", "fibre_id"),
           text("name"),
           text("variety_of"),
           text("fibre_class", "class"),
           Member{"vegan", Kind::yes_no, "vegan", {}},
           cited("legal_name", "eu_generic_name", "eu_name_source", "eu_name_confidence"),
           maybe("legal_number", "eu_annex1_no"),
           text("code", "fibre_code"),
           text("code_basis", "fibre_code_basis"),
           figure("density", {"density_g_cm3", "density_low", "density_high"}, "density_source",
                  "density_confidence"),
           allowance,
           figure("us_regain_pct", {"astm_d1909_regain_pct", "", ""}, "astm_source", "astm_confidence"),
           figure("regain_at_65_pct", {"", "regain65_low_pct", "regain65_high_pct"}, "regain65_source",
                  "regain65_confidence"),
           figure("breaking_extension_pct", {"", "breaking_extension_low_pct", "breaking_extension_high_pct"},
                  "breaking_extension_source", "breaking_extension_confidence"),
           figure("elastic_recovery_pct", {"elastic_recovery_at_5pct_ext_pct", "", ""},
                  "elastic_recovery_source", "elastic_recovery_confidence"),
           figure("wet_to_dry_strength", {"", "wet_dry_strength_ratio_low", "wet_dry_strength_ratio_high"},
                  "wet_dry_source", "wet_dry_confidence"),
           text("felting", "felting_risk"),
           text("felting_note"),
           text("sensitivity_note"),
           text("note", "notes")}};
}

Layout moisture() {
  return {"moisture.csv",
          "MoisturePoint",
          "moisture_point_rows",
          "",
          {text("curve", "fibre"), number("humidity_pct", "rh_pct"),
           figure("regain_pct", {"regain_pct", "regain_low_pct", "regain_high_pct"}), text("branch"),
           number("temperature_c", "temperature_c"), text("trust", "trust_A_to_C"), text("note")}};
}

Layout loop_geometry() {
  return {"loop_geometry.csv",
          "LoopConstant",
          "loop_constant_rows",
          "id",
          {text("id"), text("structure"), text("quantity"), text("symbol"), text("state"),
           figure("figure", {"value", "low", "high"}), text("unit"), text("meaning"),
           text("example_input", "worked_example_input"), text("example_output", "worked_example_output"),
           text("note")}};
}

Layout counts() {
  return {
      "counts.csv",
      "CountSystem",
      "count_system_rows",
      "system",
      {text("name", "system"), text("symbol"), text("definition"), Member{"direct", Kind::direct, "kind", {}},
       Member{"tex_constant", Kind::expression, "constant_exact", {}},
       text("units_expression", "gnu_units_expression"), number("units_tex", "gnu_units_tex_for_1"), source(),
       confidence(), Member{"examples", Kind::texts, "example", {}}, text("note")}};
}

Layout weight_categories() {
  return {"weight_categories.csv",
          "WeightCategory",
          "weight_category_rows",
          "",
          {text("system"), maybe("number", "number"), text("name"), text("yarn_types"),
           figure("stitches_per_4in", {"", "gauge_st_per_4in_low", "gauge_st_per_4in_high"}, "cyc_source",
                  "cyc_confidence"),
           figure("needle_mm", {"", "needle_mm_low", "needle_mm_high"}, "cyc_source", "cyc_confidence"),
           text("needle_us_low"), text("needle_us_high"),
           figure("wraps_per_inch", {"", "wpi_low", "wpi_high"}, "wpi_source", "wpi_confidence"),
           text("ply_name", "uk_au_ply_name"),
           figure("metres_per_100g", {"m_per_100g_typical", "m_per_100g_low", "m_per_100g_high"},
                  "trade_source", "trade_confidence"),
           figure("tex", {"", "tex_low", "tex_high"}, "trade_source", "trade_confidence"), text("note")}};
}

Layout needles() {
  return {"needles.csv",
          "NeedleRow",
          "needle_row_rows",
          "mm",
          {number("mm", "mm"), cited("us", "us", "us_source", "us_confidence"),
           cited("uk_old", "uk_canada_old", "uk_source", "uk_confidence"),
           maybe("uk_wire_mm", "swg_mm_of_that_number"),
           cited("japan", "japan_number", "japan_source", "japan_confidence"), maybe("japan_mm", "japan_mm"),
           text("note")}};
}

Layout package_tolerances() {
  return {"package_tolerances.csv",
          "PackageTolerance",
          "package_tolerance_rows",
          "id",
          {text("id"), text("jurisdiction"), text("measure"), text("applies_to"),
           maybe("nominal_from", "nominal_from"), text("from_inclusive", "nominal_from_inclusive"),
           maybe("nominal_to", "nominal_to"), text("to_inclusive", "nominal_to_inclusive"),
           text("nominal_unit"), text("kind", "tolerance_kind"), text("tolerance", "tolerance_value"),
           Member{"amount", Kind::number_if_any, "tolerance_value", {}}, text("tolerance_unit"), text("rule"),
           source(), confidence(), text("example"), text("note")}};
}

Layout cautions() {
  return {"cautions.csv",
          "Caution",
          "caution_rows",
          "id",
          {text("id"), text("hazard"), text("trigger", "trigger_in_tool"), text("who"), text("jurisdiction"),
           text("instrument"), text("requirement", "key_requirement"), maybe("number", "numeric_value"),
           text("number_unit", "numeric_unit"), text("text", "caution_text"), source(), confidence(),
           Member{"number_confidence", Kind::confidence, "numeric_confidence", {}}, text("note")}};
}

Layout rules_of_thumb() {
  return {"rules_of_thumb.csv",
          "RuleOfThumb",
          "rule_of_thumb_rows",
          "id",
          {text("id"), text("topic"), text("rule"),
           figure("figure", {"value_typical", "value_low", "value_high"}), text("unit"), text("use_as"),
           text("note")}};
}

Layout worked_examples() {
  return {"worked_examples.csv",
          "WorkedExample",
          "worked_example_rows",
          "id",
          {text("id"), text("topic"), text("inputs"), number("expected", "expected"), text("unit"),
           number("tolerance", "tolerance"), source(), confidence(), text("note")}};
}

Layout sources() {
  return {"sources.csv",
          "SourceRow",
          "source_row_rows",
          "source_key",
          {text("key", "source_key"), text("citation"), text("how_far_read", "how_far_it_was_read_here")}};
}

}  // namespace

const std::vector<Layout>& layouts() {
  static const std::vector<Layout> all = {
      sources(),           fibres(),  moisture(),           loop_geometry(), counts(),
      weight_categories(), needles(), package_tolerances(), cautions(),      rules_of_thumb(),
      worked_examples()};
  return all;
}

}  // namespace skeinproof::generator
