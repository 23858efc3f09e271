// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>

#include "core/review/printed_gauge.h"

namespace skeinproof {

// The rules of gauge and needles, by what they look at.
void gauge_is_complete(const ReviewInput& input, Findings& findings);       // G1
void fabrics_have_gauges(const ReviewInput& input, Findings& findings);     // G2
void gauge_state_is_said(const ReviewInput& input, Findings& findings);     // G3
void inch_and_metric_gauges(const ReviewInput& input, Findings& findings);  // G4
void stitch_shape(const ReviewInput& input, Findings& findings);            // G5
void needle_names(const ReviewInput& input, Findings& findings);            // G6
void needle_to_stitch(const ReviewInput& input, Findings& findings);        // G7
void rib_needle(const ReviewInput& input, Findings& findings);              // G8
void circular_fits_tube(const ReviewInput& input, Findings& findings);      // G9
void gauge_said_twice(const ReviewInput& input, Findings& findings);        // G10
void stitches_make_width(const ReviewInput& input, Findings& findings);     // G11

// A gauge for a sentence: "26 sts and 34 rounds = 10 cm".
std::string gauge_words(const PrintedView& printed, const PrintedGauge& gauge);

// Rows in 10 cm that the facts hold for the fabric of a gauge.
std::optional<double> rows_in_force(const ReviewInput& input, const PrintedGauge& gauge);

}  // namespace skeinproof
