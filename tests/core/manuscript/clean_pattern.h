// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <rapidcheck.h>

#include "core/pattern/pattern.h"
#include "tests/core/manuscript/block_samples.h"

namespace skeinproof::testing {

// An invented pattern without a fault, with needs given: up to nine sizes, three yarns and five colours, in
// the words and figures of the trade. No check has anything to say of its block, but that it names no sample.
rc::Gen<Sample> generate_clean_pattern();
// A house style with its choices drawn by chance, of those that print every fact.
rc::Gen<HouseStyle> generate_house_style();

}  // namespace skeinproof::testing
