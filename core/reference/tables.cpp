// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/reference/tables.h"

namespace skeinproof {
namespace {

#include "reference_rows.inc"

}  // namespace

std::span<const Fibre> fibres() { return fibre_rows; }
std::span<const MoisturePoint> moisture_points() { return moisture_point_rows; }
std::span<const LoopConstant> loop_constants() { return loop_constant_rows; }
std::span<const CountSystem> count_systems() { return count_system_rows; }
std::span<const WeightCategory> weight_categories() { return weight_category_rows; }
std::span<const NeedleRow> needle_rows() { return needle_row_rows; }
std::span<const PackageTolerance> package_tolerances() { return package_tolerance_rows; }
std::span<const Caution> cautions() { return caution_rows; }
std::span<const RuleOfThumb> rules_of_thumb() { return rule_of_thumb_rows; }
std::span<const WorkedExample> worked_examples() { return worked_example_rows; }
std::span<const SourceRow> sources() { return source_row_rows; }

}  // namespace skeinproof
