// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string_view>

namespace skeinproof {

// What an item is, by the word for it. `other`: named, but none of those that rules are made for.
enum class ItemKind { unknown, garment, sock, hat_or_mitten, shawl, other };
// The first word that names an item in a lower-case text.
ItemKind item_kind(std::string_view lower);
// By the same words: felted after knitting; used near heat.
bool is_felted_item(std::string_view lower);
bool used_near_heat(std::string_view lower);

}  // namespace skeinproof
