// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include "core/review/check.h"

namespace skeinproof {

// The cautions, by what they look at. Silence is no all-clear: a pattern says little of its use.
void small_parts_for_the_youngest(const ReviewInput& input, Findings& findings);  // C5
void cords_at_childrens_necks(const ReviewInput& input, Findings& findings);      // C6
void fluff_and_floats_for_babies(const ReviewInput& input, Findings& findings);   // C7
void melting_fibre_near_heat(const ReviewInput& input, Findings& findings);       // C9

}  // namespace skeinproof
