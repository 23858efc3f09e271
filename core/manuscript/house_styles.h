// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string_view>
#include <vector>

#include "core/base/error.h"
#include "core/pattern/house_style.h"

namespace skeinproof {

// Ready sets of choices to start a house style from; the first is the default style. Names are unique and say
// what the style does.
const std::vector<HouseStyle>& ready_house_styles();
const HouseStyle* ready_house_style(std::string_view name);

// What is wrong with a house style, one entry a choice, in the order of the fields: `found` names the choice
// and its value, `expected` says what it may be. Empty = sound.
std::vector<Error> validate_house_style(const HouseStyle& house);

}  // namespace skeinproof
