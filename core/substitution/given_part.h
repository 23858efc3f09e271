// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>

#include "core/base/error.h"
#include "core/base/listed.h"
#include "core/need/assessment.h"

namespace skeinproof {

// Knitted length that goes along when a part is worked in another yarn: its stitches, floats and edges.
// Swatch and ends stay with the yarn the colour begins with. `need` is of one role in one size.
Metres knitted_in(const Pattern& pattern, const SizeNeed& need, const GivenPart& part);
// "heel turn", "Sleeves".
std::string part_name(const Pattern& pattern, const GivenPart& part);
// Fails where the piece or the section is not in the pattern (unknown_name).
Expected<void> check_part(const Pattern& pattern, const GivenPart& part);

}  // namespace skeinproof
