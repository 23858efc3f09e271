// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <string_view>

#include "core/need/assessment.h"
#include "core/pattern/pattern.h"
#include "core/sheets/sheet.h"

namespace skeinproof {

// What the sheets of one pattern have in common.
Sheet started_sheet(const Pattern& pattern, const HouseStyle& house, std::string_view subtitle,
                    std::string_view date);
void add_cautions(Sheet& sheet, const Pattern& pattern);
void add_size_columns(Table& table, const Pattern& pattern);

bool in_yards_first(const HouseStyle& house);
// Metres, or yards for a house that puts imperial first.
double in_house_lengths(Metres length, const HouseStyle& house);
std::string role_name(const Role& role, const HouseStyle& house);  // "MC Peat 08"
const RoleNeed* need_of(const Assessment& assessment, RoleId role);

}  // namespace skeinproof
