// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
#include <optional>
#include <string>
#include <vector>

#include "core/base/enum_words.h"
#include "core/base/error.h"
#include "core/review/review.h"

namespace skeinproof {

// The record of decisions (`Pattern::queries`) laid beside a review. One query is one cause.

enum class DecisionState {
  open,
  kept,      // still resting on the same words and working
  lapsed,    // was kept, but what that rested on has changed: to be decided anew
  answered,  // the reply is recorded, and the finding is there still
};
template <>
struct EnumWords<DecisionState> {
  static constexpr auto rows = enum_rows<DecisionState>({{DecisionState::open, "open"},
                                                         {DecisionState::kept, "kept"},
                                                         {DecisionState::lapsed, "lapsed"},
                                                         {DecisionState::answered, "answered"}});
};

// What stands on one cause of a review, in the order of its causes.
struct Decision {
  std::string number;        // "Q1": as it was asked, else the next free one in the order of the causes
  std::size_t finding = 0;   // that speaks for the cause: its first
  std::optional<Query> row;  // as recorded; absent where nothing was
  DecisionState state = DecisionState::open;
  bool asked = false;     // it went out on a query sheet under its number
  bool on_sheet = false;  // as told; else Stop and Ask that are open or lapsed
  std::string wording;    // its own; else the house's for that check; else the check's

  bool undecided() const { return state == DecisionState::open || state == DecisionState::lapsed; }
};

// What became of what was asked or answered of a finding that is there no more.
enum class ReplyState {
  laid_over,  // its words are laid over the draft at hand
  printed,    // the draft at hand prints it
  not_found,  // the draft at hand has neither the old words nor the new: to be looked at
  no_words,   // kept, or answered without a change of words
  no_answer,  // asked, and no reply recorded
};
template <>
struct EnumWords<ReplyState> {
  static constexpr auto rows = enum_rows<ReplyState>({{ReplyState::laid_over, "laid over the draft"},
                                                      {ReplyState::printed, "printed in the draft"},
                                                      {ReplyState::not_found, "words not found in the draft"},
                                                      {ReplyState::no_words, "no words to change"},
                                                      {ReplyState::no_answer, "no reply recorded"}});
};
struct ClosedQuery {
  Query row;
  ReplyState state = ReplyState::no_words;
  std::string number;  // "Q3" as it was asked; empty where it was not
};

struct Record {
  std::vector<Decision> decisions;  // one for each cause
  std::vector<ClosedQuery> closed;  // rows asked or answered that belong to no cause, as recorded
};

// A row belongs to the cause that has a finding of its key, the first of them counting first; else to one
// that has it in other sizes. A "keep" stands while the finding is of some of its sizes and nothing of those
// has changed. Pure and total.
Record record_of(const Pattern& pattern, const Review& review);
// What of the text in force became of a recorded answer.
ReplyState reply_state(const Pattern& pattern, const Query& query);

// The change that would answer a query: the likely slip's, else the proposal of the first finding that has
// one. Edits of `Review::text`, as a rehearsal takes them; empty where there is none.
std::vector<TextEdit> proposed_answer(const Review& review, std::size_t cause);
// The words that an answer of one's own takes the place of; empty where the finding shows no words.
TextSpan words_in_question(const Review& review, std::size_t cause);
// An answer of one's own in the place of those words.
std::vector<TextEdit> amended_answer(const Review& review, std::size_t cause, std::string after);

struct Asked {
  std::string finding;  // key of the row, or of the finding that speaks for the cause
  int number = 0;
};
// What goes out when the query sheet is handed on: what is ticked and was not asked before.
std::vector<Asked> asked_now(const Review& review, const Record& record);
// Keeps the numbers, in this or in another state of the same document. A number that was kept before stays.
void keep_numbers(Pattern& pattern, const std::vector<Asked>& asked);

// Edits of a pattern. `review` is the review of that pattern, `cause` an index into its causes; a row is made
// where there is none.
struct Signed {
  std::string reply;  // the designer's words, or the reason for keeping
  std::string who;
  std::string when;
};
void set_on_sheet(Pattern& pattern, const Review& review, std::size_t cause, OnSheet on_sheet);
// Empty words take the house's or the check's again.
void set_wording(Pattern& pattern, const Review& review, std::size_t cause, std::string words);
// Remembers words for this check in the house style in force. The finding's own printed words, roles, sizes
// and proposal in them become placeholders ({words}, {role}, {size}, {change}, {working}, {query}), filled in
// for each finding. False, and nothing remembered, where other figures of this finding are left in them: they
// would be wrong elsewhere. Empty words forget.
bool remember_wording(Pattern& pattern, const Review& review, std::size_t cause, const std::string& words);
void keep(Pattern& pattern, const Review& review, std::size_t cause, const Signed& by);
// Records edits of `Review::text` as the words that take the place of those in the draft, so that
// `printed_text` lays them over it; the words recorded are widened until the draft has them once only, where
// that can be. Edits far from each other make a row each. Fails with not_found where there is no draft, or
// where no change is given.
Expected<void> accept(Pattern& pattern, const Review& review, std::size_t cause, const Signed& by);
Expected<void> accept(Pattern& pattern, const Review& review, std::size_t cause, const LikelySlip& slip,
                      const Signed& by);
// Where the finding shows no words, the answer is recorded alone and changes nothing.
Expected<void> amend(Pattern& pattern, const Review& review, std::size_t cause, const std::string& after,
                     const Signed& by);
// Takes an answer or a "keep" back; what was said of sheet and wording stays.
void reopen(Pattern& pattern, QueryId row);

}  // namespace skeinproof
