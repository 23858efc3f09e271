// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>
#include <vector>

#include "core/base/enum_words.h"
#include "core/base/id.h"

namespace skeinproof {

// How much a consequence matters. The rules of one weight stand in an order of their own, the worst first.
enum class ConsequenceWeight { stop, changes_item, worth_knowing };
template <>
struct EnumWords<ConsequenceWeight> {
  static constexpr auto rows =
      enum_rows<ConsequenceWeight>({{ConsequenceWeight::stop, "Stop"},
                                    {ConsequenceWeight::changes_item, "Changes the item"},
                                    {ConsequenceWeight::worth_knowing, "Worth knowing"}});
};

// A rule that fired for a candidate: a judgement, never a number.
struct Consequence {
  std::string id;  // "S1"
  ConsequenceWeight weight = ConsequenceWeight::worth_knowing;
  std::string title;          // "Grows in length and narrows"
  std::string short_words;    // for a narrow column: "lengthens"
  std::string because;        // the trigger with its figures
  std::string advice;         // what may be done
  std::string test;           // the cheapest test that settles it
  std::string short_test;     // for a narrow column: "hang test 47 g, 24 h"
  std::vector<RoleId> roles;  // in which it fired; empty = the item as a whole
  std::string source;
};

// Rules that could not be looked at, and what is missing: "S7, S8" because "no structure of Tallowhithe".
struct NotLookedAt {
  std::vector<std::string> rules;
  std::string because;
};

}  // namespace skeinproof
