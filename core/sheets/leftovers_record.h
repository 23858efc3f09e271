// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string_view>

#include "core/base/error.h"
#include "core/need/assessment.h"
#include "core/sheets/sheet.h"

namespace skeinproof {

// What will be left of every colour in metres and grams after joins: of the yarn on hand that is held against
// it, else of the skeins to buy; what readings on the way make of it; and room for what is weighed in the
// end. Size: none = what yarn on hand is meant for where there is any, else the size at the bench. Fails at a
// size that the pattern has not (unknown_name).
Expected<Sheet> leftovers_record(const Pattern& pattern, const Assessment& assessment,
                                 const HouseStyle& house, SizeId size = {}, std::string_view date = {});

}  // namespace skeinproof
