// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string_view>

#include "core/review/review.h"
#include "core/sheets/sheet.h"

namespace skeinproof {

// Every finding of a review, gravest first, those of one cause under each other with its likely slip, then
// what was not checked and why, and what was not understood.
Sheet findings_sheet(const Pattern& pattern, const Review& review, std::string_view date = {});

// "3 Stop, 4 Ask, 1 Note": causes by the severity of their gravest finding; "nothing found".
std::string finding_counts(const Review& review);

}  // namespace skeinproof
