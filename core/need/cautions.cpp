// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/need/cautions.h"

#include <algorithm>
#include <initializer_list>
#include <set>

#include "core/base/text.h"
#include "core/pattern/item_kind.h"
#include "core/pattern/wearer_age.h"
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

  WearerAges ages;

  bool infant() const {
    return ages.under_3_years || names(wearer, {"baby", "babie", "infant", "newborn", "toddler"});
  }
  bool child() const {
    return infant() || ages.up_to_7_years ||
           names(wearer, {"child", "children", "kid", "boy", "girl", "teen"});
  }
  bool is(Words words) const { return names(item, words); }
  bool has(Words words) const { return names(notions, words) || names(item, words); }
  bool holds(Words ids) const {
    return std::any_of(ids.begin(), ids.end(), [&](std::string_view id) { return fibres.count(id) > 0; });
  }
};

Use use_of(const Pattern& pattern, const std::vector<const Yarn*>& yarns) {
  Use use;
  use.ages = wearer_ages(pattern);
  use.wearer = lower_ascii(pattern.wearer + " " + pattern.title + " " + pattern.item);
  use.item = lower_ascii(pattern.item + " " + pattern.title);
  for (const Notion& notion : pattern.notions) use.notions += lower_ascii(notion.name) + " ";
  for (const Piece& piece : pattern.pieces) use.notions += lower_ascii(piece.name) + " ";
  for (const Fabric& fabric : pattern.fabrics) use.structures.insert(fabric.structure);
  for (const Yarn* yarn : yarns) {
    use.surface += lower_ascii(yarn->surface) + " ";
    for (const FibreShare& share : yarn->composition)
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
    {"cord_us",
     [](const Use& u) {
       return u.child() && u.has({"cord", "drawstring"}) && u.has({"hood", "hooded", "neck", "collar"});
     }},
    {"cord_scope",
     [](const Use& u) {
       return u.child() && u.is({"hat", "bonnet", "mitten", "scarf", "scarve"}) &&
              u.has({"cord", "tie", "ribbon"});
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
    {"small_parts_eu",
     [](const Use& u) {
       return u.infant() && u.is({"toy", "doll", "bear"});
     }},
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
    {"sleepwear_uk",
     [](const Use& u) {
       return u.is({"nightgown", "nightdress", "nightshirt", "pyjama", "pajama", "robe", "sleep suit"});
     }},
    {"flash_us",
     [](const Use& u) {
       return u.holds({"mohair", "angora"}) || names(u.surface, {"brushed", "halo", "fluffy", "pile"});
     }},
    {"melt",
     [](const Use& u) {
       return u.fibre_classes.count("synthetic") > 0 && (used_near_heat(u.item) || u.is({"oven"}));
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
    {"weighted",
     [](const Use& u) {
       return u.infant() && u.is({"blanket"}) && names(u.item, {"weighted", "chunky"});
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
    {"dye",
     [](const Use& u) {
       return u.holds({"polyester", "acetate", "triacetate"});
     }},
    {"nickel",
     [](const Use& u) {
       return u.has({"zip", "snap", "press stud", "metal"}) || u.holds({"metallised"});
     }},
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

// A candidate or yarn at home that no role is knitted in.
bool is_only_thought_of(const Pattern& pattern, YarnId yarn) {
  if (!pattern.is_on_bench(yarn)) return false;
  for (const Candidate& candidate : pattern.candidates)
    for (const CandidateYarn& row : candidate.yarns)
      if (row.yarn == yarn || row.held_with == yarn) return true;
  return std::any_of(pattern.on_hand.begin(), pattern.on_hand.end(),
                     [&](const YarnOnHand& one) { return one.yarn == yarn; });
}

}  // namespace

std::vector<std::string> cautions_for(const Pattern& pattern) {
  std::vector<const Yarn*> yarns;
  for (const Yarn& yarn : pattern.yarns)
    if (!is_only_thought_of(pattern, yarn.id)) yarns.push_back(&yarn);
  return cautions_for(pattern, yarns);
}

std::vector<std::string> cautions_for(const Pattern& pattern, const std::vector<const Yarn*>& yarns) {
  const Use use = use_of(pattern, yarns);
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

std::string_view law_comes_first() {
  return "What the law of the place and a licensed test ask for comes first.";
}

}  // namespace skeinproof
