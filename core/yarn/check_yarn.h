// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <vector>

#include "core/base/error.h"
#include "core/yarn/yarn.h"

namespace skeinproof {

// What is plainly wrong with the entries of a yarn, for showing at the fields. Judgements about a pattern are
// made elsewhere; these stand in the way of working anything out. Empty = nothing wrong; an empty entry is
// not wrong.
std::vector<Error> check_composition(const std::vector<FibreShare>& composition);
std::vector<Error> check_put_up(const PutUp& put_up);

// What a skein may hold: metres per gram between thread and roving, length and weight of one put-up.
// Common practice, no source.
inline constexpr double least_metres_per_gram = 0.3;
inline constexpr double most_metres_per_gram = 20;
inline constexpr double most_skein_metres = 2500;  // more is wound on a cone
inline constexpr double most_cone_metres = 100000;
inline constexpr double most_put_up_grams = 5000;

}  // namespace skeinproof
