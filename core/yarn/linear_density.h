// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <span>

#include "core/base/error.h"
#include "core/reference/tables.h"
#include "core/yarn/yarn.h"

namespace skeinproof {

// How far a gram of yarn reaches. Tex is grams per 1000 m (ISO 1144). All functions expect more than zero.
Expected<MetresPerGram> linear_density(const PutUp& put_up);  // fails where length or weight is missing

double in_tex(MetresPerGram density);
MetresPerGram from_tex(double tex);
double metric_count(MetresPerGram density);  // Nm
double metres_per_100g(MetresPerGram density);
double yards_per_ounce(MetresPerGram density);

// Any numbering of the table, both ways.
double in_count(const CountSystem& system, MetresPerGram density);
MetresPerGram from_count(const CountSystem& system, double number);

// Strands held together side by side: 1/mu = sum of 1/mu_j.
MetresPerGram held_together(std::span<const MetresPerGram> strands);
// Ends twisted into one yarn, which shortens them: `take_up` = (length of an end - plied length) / plied
// length.
MetresPerGram plied(MetresPerGram end, int ends, double take_up = 0);

}  // namespace skeinproof
