// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <string>

#include "core/base/describe.h"
#include "core/base/enum_words.h"
#include "core/base/id.h"

namespace skeinproof {

enum class OnSheet { by_severity, yes, no };
template <>
struct EnumWords<OnSheet> {
  static constexpr auto rows =
      enum_rows<OnSheet>({{OnSheet::by_severity, "by severity"}, {OnSheet::yes, "yes"}, {OnSheet::no, "no"}});
};

enum class QueryAnswer { none, accepted, amended, kept };
template <>
struct EnumWords<QueryAnswer> {
  static constexpr auto rows = enum_rows<QueryAnswer>({{QueryAnswer::none, "none"},
                                                       {QueryAnswer::accepted, "accepted"},
                                                       {QueryAnswer::amended, "amended"},
                                                       {QueryAnswer::kept, "kept"}});
};

// What was decided about one finding. The finding itself is worked out anew each time and found again by its
// key.
struct Query {
  QueryId id;
  std::string finding;  // key: check, role, sizes
  OnSheet on_sheet = OnSheet::by_severity;
  std::string wording;  // of the query sheet; empty = the house's, else the check's
  QueryAnswer answer = QueryAnswer::none;
  std::string reply;  // the designer's words, or the reason for keeping
  // Accepted or amended: the printed words and those that take their place, `occurrence` counted from 1 in
  // the draft.
  std::string before;
  std::string after;
  int occurrence = 1;
  std::string who;
  std::string when;
  std::string rested_on;  // fingerprint of what a "kept" rested on; it lapses when that moves
  int asked_as = 0;       // its number on the query sheet that went out; 0 = not asked yet

  bool operator==(const Query&) const = default;
  template <class Self, class Visit>
  static void describe(Self& self, Visit&& visit) {
    visit("id", self.id);
    visit("finding", self.finding);
    visit("on_sheet", self.on_sheet);
    visit("wording", self.wording);
    visit("answer", self.answer);
    visit("reply", self.reply);
    visit("before", self.before);
    visit("after", self.after);
    visit("occurrence", self.occurrence);
    visit("who", self.who);
    visit("when", self.when);
    visit("rested_on", self.rested_on);
    visit("asked_as", self.asked_as);
  }
};

}  // namespace skeinproof
