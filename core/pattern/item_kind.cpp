// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/pattern/item_kind.h"

#include "core/base/find_word.h"

namespace skeinproof {
namespace {

// What is named first in this order decides: a "sock doll" is a doll, a "hooded shawl" a shawl.
struct ItemWords {
  ItemKind kind;
  WordList words;
};
const ItemWords item_words[] = {
    {ItemKind::other,
     {"bed sock",   "bedsock",    "house sock", "slipper sock", "doll",     "toy",      "bear",
      "blanket",    "throw",      "afghan",     "cushion",      "pillow",   "bag",      "basket",
      "pot holder", "potholder",  "coaster",    "garland",      "tea cosy", "tea cozy", "pot-holder",
      "dishcloth",  "washcloth",  "rug",        "slipper",      "trivet",   "hot pad",  "place mat",
      "oven mitt",  "oven glove", "ornament",   "bunting"}},
    {ItemKind::sock, {"sock", "stocking", "knee-high", "kneesock"}},
    {ItemKind::garment,
     {"pullover",  "sweater", "jumper",   "cardigan", "vest", "waistcoat",   "slipover", "dress",
      "tunic",     "top",     "tee",      "jacket",   "coat", "gilet",       "skirt",    "romper",
      "dungarees", "hoodie",  "camisole", "gansey",   "tank", "body warmer", "onesie",   "leggings"}},
    {ItemKind::hat_or_mitten,
     {"hat", "beanie", "cap", "bonnet", "beret", "tam", "balaclava", "mitten", "mitt", "glove", "headband"}},
    {ItemKind::shawl, {"shawl", "shawlette", "stole", "wrap"}},
    {ItemKind::other,
     {"cosy", "cozy", "scarf", "scarves", "cowl", "snood", "poncho", "hood", "bootee", "bootie"}},
};

}  // namespace

ItemKind item_kind(std::string_view lower) {
  for (const ItemWords& row : item_words)
    if (says(lower, row.words)) return row.kind;
  return ItemKind::unknown;
}

bool is_felted_item(std::string_view lower) { return says(lower, {"felted", "fulled", "felting"}); }

bool used_near_heat(std::string_view lower) {
  if (says(lower, {"pot holder", "pot-holder", "potholder", "oven mitt", "oven glove", "trivet", "hot pad",
                   "tea cosy", "tea cozy", "teapot cosy", "teapot cozy", "pan holder", "pan handle cover"}))
    return true;
  return item_kind(lower) == ItemKind::other && says(lower, {"cosy", "cozy"}) &&
         !says(lower, {"phone", "tablet", "laptop", "book", "scarf", "cowl", "blanket", "throw", "slipper"});
}

}  // namespace skeinproof
