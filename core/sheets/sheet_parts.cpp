// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheets/sheet_parts.h"

#include "core/manuscript/words.h"
#include "core/need/cautions.h"

namespace skeinproof {

Sheet started_sheet(const Pattern& pattern, const HouseStyle& house, std::string_view subtitle,
                    std::string_view date) {
  Sheet sheet;
  sheet.title = pattern.title.empty() ? "Pattern without a title" : pattern.title;
  sheet.subtitle = std::string(subtitle);
  sheet.date = std::string(date);
  sheet.numbers = {house.mark, house.fractions, false};
  return sheet;
}

void add_cautions(Sheet& sheet, const Pattern& pattern) {
  for (const std::string& caution : cautions_for(pattern)) sheet.foot_notes.push_back("Caution: " + caution);
}

void add_size_columns(Table& table, const Pattern& pattern) {
  for (std::size_t i = 0; i < pattern.sizes.size(); ++i)
    table.columns.push_back({pattern.sizes[i].label, Align::right, i == 0 || pattern.sizes[i].opens_group});
}

bool in_yards_first(const HouseStyle& house) {
  return house.systems == SystemOrder::imperial_first || house.systems == SystemOrder::imperial_only;
}

double in_house_lengths(Metres length, const HouseStyle& house) {
  return in_yards_first(house) ? in_yards(length) : length.value();
}

std::string role_name(const Role& role, const HouseStyle& house) {
  const std::string shade = shade_words(role.shade, house);
  return role.label.empty() || shade.empty() ? role.label + shade : role.label + " " + shade;
}

const RoleNeed* need_of(const Assessment& assessment, RoleId role) {
  for (const RoleNeed& need : assessment.roles)
    if (need.role == role) return &need;
  return nullptr;
}

}  // namespace skeinproof
