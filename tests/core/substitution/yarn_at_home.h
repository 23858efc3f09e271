// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <initializer_list>
#include <string>

#include "core/pattern/edits.h"
#include "tests/support/samples.h"

namespace skeinproof::testing {

// The samples with yarn at home that these tests lay there themselves, whatever the files hold.

inline void clear_home(Pattern& pattern) {
  pattern.on_hand.clear();
  pattern.given_parts.clear();
  pattern.sharing = {};
  pattern.on_hand_size = {};
}

inline RoleId role_named(const Pattern& pattern, const std::string& label) {
  for (const Role& role : pattern.roles)
    if (role.label == label) return role.id;
  return {};
}

inline SizeId size_named(const Pattern& pattern, const std::string& label) {
  return pattern.sizes[*pattern.size_index(label)].id;
}

inline Yarn* yarn_named(Pattern& pattern, YarnId id) {
  for (Yarn& yarn : pattern.yarns)
    if (yarn.id == id) return &yarn;
  return nullptr;
}

// So many whole skeins and part skeins of it.
inline YarnOnHand& lay(Pattern& pattern, YarnId yarn, const std::string& shade, const std::string& role,
                       double whole, std::initializer_list<double> parts_g, const std::string& lot = "") {
  const OnHandId id = add_on_hand(pattern, yarn);
  YarnOnHand& on_hand = pattern.on_hand.back();
  on_hand.id = id;
  on_hand.shade.name = shade;
  on_hand.role = role_named(pattern, role);
  on_hand.whole_skeins = Entered<double>{whole, ""};
  for (double part : parts_g) on_hand.parts.push_back({grams(part), ""});
  on_hand.lot = lot;
  return on_hand;
}

// A yarn that runs so many metres in a gram, of the same fibres as another.
inline YarnId spun_at(Pattern& pattern, const std::string& name, double metres_in_a_gram, YarnId like) {
  const YarnId id = add_yarn(pattern, name);
  Yarn& yarn = *yarn_named(pattern, id);
  yarn.composition = pattern.yarn(like)->composition;
  yarn.put_up.length = Entered<Metres>{metres(100 * metres_in_a_gram), ""};
  yarn.put_up.weight = Entered<Grams>{grams(100), ""};
  return id;
}

// Two lots of the main colour and what is left of the others.
inline Pattern quillmarsh_at_home() {
  Pattern pattern = quillmarsh();
  clear_home(pattern);
  pattern.on_hand_size = size_named(pattern, "4");
  const YarnId yarn = pattern.roles[0].yarn;
  lay(pattern, yarn, "Peat", "MC", 5, {41}, "X");
  lay(pattern, yarn, "Peat", "MC", 2, {}, "Y");
  lay(pattern, yarn, "Lichen", "CC1", 0, {44, 30});
  lay(pattern, yarn, "Gorse", "CC2", 0, {36});
  lay(pattern, spun_at(pattern, "Handspun", 3.1, yarn), "Ember", "CC3", 0, {12.5});
  return pattern;
}

// Ends of four sock yarns; heel and toe may be worked in a yarn of their own.
inline Pattern lampwick_at_home() {
  Pattern pattern = lampwick();
  clear_home(pattern);
  const YarnId yarn = pattern.roles[0].yarn;
  lay(pattern, yarn, "Soot", "MC", 0, {41});
  lay(pattern, yarn, "Marigold", "CC", 0, {38});
  lay(pattern, spun_at(pattern, "Slate", 4.0, yarn), "Slate", "", 0, {22});
  lay(pattern, spun_at(pattern, "Teal handspun", 3.6, yarn), "Teal", "", 0, {30});
  const Piece& sock = pattern.pieces.front();
  for (const Section& section : sock.sections)
    if (section.name == "heel flap" || section.name == "heel turn" || section.name == "toe")
      pattern.given_parts.push_back({sock.id, section.id});
  return pattern;
}

}  // namespace skeinproof::testing
