// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string_view>

#include "core/base/error.h"
#include "core/need/assessment.h"
#include "core/sheets/sheet.h"

namespace skeinproof {

// What to buy for one size: skeins of every colour in one dye lot, what is planned of what is bought, what
// the rest would allow, one more where the rule asks for it, the basket, and what to do before casting on.
// `candidate`: none = the pattern's own yarn; `size`: none = the size at the bench. Fails at a candidate or a
// size that the pattern has not (unknown_name).
Expected<Sheet> shopping_list(const Pattern& pattern, const Assessment& assessment, const HouseStyle& house,
                              CandidateId candidate = {}, SizeId size = {}, std::string_view date = {});

}  // namespace skeinproof
