// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheets/cautions.h"

#include <algorithm>
#include <initializer_list>
#include <set>

#include "core/base/text.h"
#include "core/reference/lookup.h"

namespace skeinproof {
namespace {

using Words = std::initializer_list<std::string_view>;

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80; }

// Whether a text names one of these things, one or several: "hat", "hats", not "that" or "hatch".
bool names(const std::string& text, Words things) {
  for (const std::string_view thing : things)
    for (auto at = text.find(thing); at != std::string::npos; at = text.find(thing, at + 1)) {
      std::string_view rest = std::string_view(text).substr(at + thing.size());
      for (const std::string_view plural : {"es", "s"})
        if (rest.substr(0, plural.size()) == plural) {
          rest.remove_prefix(plural.size());
          break;
        }
      if ((at == 0 || !is_letter(text[at - 1])) && (rest.empty() || !is_letter(rest.front()))) return true;
    }
  return false;
}

// What a pattern says of its use, in words to look for.
struct Use {
  std::string wearer, item, notions, surface;
  std::set<std::string_view> fibres, fibre_classes;
  std::set<Structure> structures;

  bool infant() const { return names(wearer, {"baby", "babie", "infant", "newborn", "toddler"}); }
  bool child() const {
    return infant() || names(wearer, {"child", "children", "kid", "boy", "girl", "teen"});
  }
  bool is(Words words) const { return names(item, words); }
  bool has(Words words) const { return names(notions, words) || names(item, words); }
  bool holds(Words ids) const {
    return std::any_of(ids.begin(), ids.end(), [&](std::string_view id) { return fibres.count(id) > 0; });
  }
};

Use use_of(const Pattern& pattern) {
  Use use;
  use.wearer = lower_ascii(pattern.wearer + " " + pattern.title + " " + pattern.item);
  use.item = lower_ascii(pattern.item + " " + pattern.title);
  for (const Notion& notion : pattern.notions) use.notions += lower_ascii(notion.name) + " ";
  for (const Piece& piece : pattern.pieces) use.notions += lower_ascii(piece.name) + " ";
  for (const Fabric& fabric : pattern.fabrics) use.structures.insert(fabric.structure);
  for (const Yarn& yarn : pattern.yarns) {
    use.surface += lower_ascii(yarn.surface) + " ";
    for (const FibreShare& share : yarn.composition)
      if (const Fibre* fibre = fibre_by_id(share.fibre)) {
        use.fibres.insert(fibre->id);
        use.fibre_classes.insert(fibre->fibre_class);
      }
  }
  return use;
}

// Which caution of the reference table is called for when.
struct Trigger {
  std::string_view caution;
  bool (*called_for)(const Use&);
};
constexpr Trigger triggers[] = {
    {"cord_neck",
     [](const Use& u) {
       return u.child() && u.has({"cord", "tie", "drawstring", "ribbon"});
     }},
    {"cord_loops",
     [](const Use& u) {
       return u.child() && u.has({"cord", "loop", "sash", "belt", "drawstring"});
     }},
    {"mitten_cord", [](const Use& u) { return u.child() && u.is({"mitten"}) && u.has({"cord"}); }},
    {"small_parts_us",
     [](const Use& u) {
       return u.infant() && u.has({"button", "bead", "eye", "bell", "pompom"});
     }},
    {"small_parts_clothes", [](const Use& u) { return u.infant() && u.has({"button"}); }},
    {"stuffing",
     [](const Use& u) {
       return u.is({"toy", "doll", "bear"});
     }},
    {"sleepwear_us",
     [](const Use& u) {
       return u.child() &&
              u.is({"nightgown", "nightdress", "nightshirt", "pyjama", "pajama", "robe", "sleep suit"});
     }},
    {"sleepwear_eu",
     [](const Use& u) {
       return u.child() &&
              u.is({"nightgown", "nightdress", "nightshirt", "pyjama", "pajama", "robe", "sleep suit"});
     }},
    {"flash_us",
     [](const Use& u) {
       return u.holds({"mohair", "angora"}) || names(u.surface, {"brushed", "halo", "fluffy", "pile"});
     }},
    {"melt",
     [](const Use& u) {
       return u.fibre_classes.count("synthetic") > 0 &&
              u.is({"pot holder", "pot-holder", "potholder", "oven", "trivet"});
     }},
    {"hair_tourniquet",
     [](const Use& u) {
       return u.infant() && u.is({"mitten", "sock", "bootee", "bootie"});
     }},
    {"finger_holes", [](const Use& u) { return u.infant() && u.structures.count(Structure::lace) > 0; }},
    {"blanket_sleep",
     [](const Use& u) {
       return u.infant() && u.is({"blanket", "shawl"});
     }},
    {"hat_indoor",
     [](const Use& u) {
       return u.infant() && u.is({"hat", "bonnet", "cap"});
     }},
    {"skin_wool",
     [](const Use& u) {
       return u.fibre_classes.count("animal") > 0 &&
              !(u.fibres.size() == 1 && u.holds({"silk", "silk_tussah"}));
     }},
    {"shed",
     [](const Use& u) {
       return u.infant() && u.holds({"angora", "mohair", "possum"});
     }},
    {"latex", [](const Use& u) { return u.holds({"elastodiene"}); }},
    {"food_protein",
     [](const Use& u) {
       return u.holds({"protein_soy", "protein_milk"});
     }},
    {"load",
     [](const Use& u) {
       return u.is({"carrier", "swing", "sling"});
     }},
    {"slip",
     [](const Use& u) {
       return u.is({"slipper", "sock"});
     }},
    {"scarf_machine",
     [](const Use& u) {
       return u.is({"scarf", "cowl", "poncho"});
     }},
};

}  // namespace

std::vector<std::string> cautions_for(const Pattern& pattern) {
  const Use use = use_of(pattern);
  std::vector<std::string> texts;
  for (const Trigger& trigger : triggers) {
    const Caution* caution = trigger.called_for(use) ? caution_by_id(trigger.caution) : nullptr;
    if (caution == nullptr) continue;
    std::string text(caution->text);
    if (!caution->instrument.empty()) text += " (" + std::string(caution->instrument) + ")";
    texts.push_back(std::move(text));
  }
  return texts;
}

}  // namespace skeinproof
