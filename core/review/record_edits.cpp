// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/pattern/edits.h"
#include "core/review/query_wording.h"
#include "core/review/record.h"
#include "core/review/record_rows.h"
#include "core/review/recorded_words.h"

namespace skeinproof {
namespace {

const Finding& speaking(const Review& review, std::size_t cause) {
  return review.findings[review.causes.at(cause).findings.front()];
}

Query& row_for(Pattern& pattern, const Review& review, std::size_t cause) {
  if (const auto row = row_of_cause(pattern, review, cause)) return pattern.queries[*row];
  Query query;
  query.id = take_id<QueryId>(pattern);
  query.finding = speaking(review, cause).key();
  pattern.queries.push_back(std::move(query));
  return pattern.queries.back();
}

void take_back(Query& query) {
  query.answer = QueryAnswer::none;
  query.reply.clear();
  query.before.clear();
  query.after.clear();
  query.occurrence = 1;
  query.who.clear();
  query.when.clear();
  query.rested_on.clear();
}

bool says_nothing(const Query& query) {
  return query.answer == QueryAnswer::none && query.on_sheet == OnSheet::by_severity &&
         query.wording.empty() && query.asked_as == 0;
}

// The answer as the last of the rows, because of two replies that meet the later counts. What another row of
// the same answer recorded before is taken back.
Query& answered_row(Pattern& pattern, const Review& review, std::size_t cause, QueryAnswer answer,
                    const Signed& by) {
  reopen(pattern, row_for(pattern, review, cause).id);
  Query query = row_for(pattern, review, cause);
  pattern.queries.erase(std::find_if(pattern.queries.begin(), pattern.queries.end(),
                                     [&](const Query& one) { return one.id == query.id; }));
  query.finding = speaking(review, cause).key();
  query.answer = answer;
  query.reply = by.reply;
  query.who = by.who;
  query.when = by.when;
  pattern.queries.push_back(std::move(query));
  return pattern.queries.back();
}

Expected<void> record_change(Pattern& pattern, const Review& review, std::size_t cause, QueryAnswer answer,
                             const std::vector<TextEdit>& edits, const Signed& by) {
  const Draft* draft = pattern.draft();
  if (draft == nullptr)
    return failure(ErrorKind::not_found, "no submitted text", "a draft whose words can be changed");
  const auto replies = recorded_replies(pattern);
  if (edited(draft->text, replies) != review.text)
    return failure(ErrorKind::changed_behind_our_back, "a review of another text",
                   "the review of this draft with its replies");
  const auto changes = recorded_words(draft->text, replies, review, edits);
  if (changes.empty())
    return failure(ErrorKind::not_found, "no change of words",
                   "words of the draft and others in their place");
  Query row = answered_row(pattern, review, cause, answer, by);
  pattern.queries.pop_back();
  for (const RecordedWords& change : changes) {
    row.before = change.before;
    row.after = change.after;
    row.occurrence = change.occurrence;
    pattern.queries.push_back(row);
    row.id = take_id<QueryId>(pattern);
    row.on_sheet = OnSheet::by_severity;
    row.wording.clear();
    row.asked_as = 0;  // the first of them stands for the answer
  }
  return {};
}

}  // namespace

std::vector<TextEdit> proposed_answer(const Review& review, std::size_t cause) {
  const Cause& one = review.causes.at(cause);
  if (one.slip) return one.slip->edits;
  for (const std::size_t finding : one.findings)
    if (!review.findings[finding].proposal.empty()) return review.findings[finding].proposal;
  return {};
}

TextSpan words_in_question(const Review& review, std::size_t cause) {
  const Finding& finding = speaking(review, cause);
  const auto edits = proposed_answer(review, cause);
  TextSpan all = edits.empty() ? TextSpan{} : edits.front().span;
  for (const TextEdit& edit : edits)
    all = {std::min(all.begin, edit.span.begin), std::max(all.end, edit.span.end)};
  // Edits in several places are no one stretch of words.
  const auto words = words_at(review.text, all);
  if (!words.empty() && words.size() <= 60 && words.find('\n') == std::string_view::npos) return all;
  return finding.places.empty() ? TextSpan{} : finding.places.front();
}

std::vector<TextEdit> amended_answer(const Review& review, std::size_t cause, std::string after) {
  const TextSpan words = words_in_question(review, cause);
  if (words.empty()) return {};
  return {{words, std::move(after)}};
}

std::vector<Asked> asked_now(const Review& review, const Record& record) {
  std::vector<Asked> asked;
  for (const Decision& decision : record.decisions) {
    if (!decision.on_sheet || decision.asked) continue;
    asked.push_back({decision.row ? decision.row->finding : review.findings[decision.finding].key(),
                     std::stoi(decision.number.substr(1))});
  }
  return asked;
}

void keep_numbers(Pattern& pattern, const std::vector<Asked>& asked) {
  for (const Asked& one : asked) {
    const auto of_finding = [&](const Query& query) { return query.finding == one.finding; };
    auto row = std::find_if(pattern.queries.begin(), pattern.queries.end(), of_finding);
    if (row == pattern.queries.end()) {
      Query query;
      query.id = take_id<QueryId>(pattern);
      query.finding = one.finding;
      row = pattern.queries.insert(pattern.queries.end(), std::move(query));
    }
    if (row->asked_as == 0) row->asked_as = one.number;
  }
}

void set_on_sheet(Pattern& pattern, const Review& review, std::size_t cause, OnSheet on_sheet) {
  row_for(pattern, review, cause).on_sheet = on_sheet;
}

void set_wording(Pattern& pattern, const Review& review, std::size_t cause, std::string words) {
  row_for(pattern, review, cause).wording = std::move(words);
}

bool remember_wording(Pattern& pattern, const Review& review, std::size_t cause, const std::string& words) {
  const Finding& finding = speaking(review, cause);
  const auto general = for_every_finding(words, finding, review.text);
  if (!general) return false;
  auto& known = pattern.house_styles.front().query_wordings;
  known.erase(std::remove_if(known.begin(), known.end(),
                             [&](const QueryWording& one) { return one.check == finding.check; }),
              known.end());
  if (!general->empty()) known.push_back({finding.check, *general});
  return true;
}

void keep(Pattern& pattern, const Review& review, std::size_t cause, const Signed& by) {
  answered_row(pattern, review, cause, QueryAnswer::kept, by).rested_on =
      rests_on(review, speaking(review, cause));
}

Expected<void> accept(Pattern& pattern, const Review& review, std::size_t cause, const Signed& by) {
  return record_change(pattern, review, cause, QueryAnswer::accepted, proposed_answer(review, cause), by);
}

Expected<void> accept(Pattern& pattern, const Review& review, std::size_t cause, const LikelySlip& slip,
                      const Signed& by) {
  return record_change(pattern, review, cause, QueryAnswer::accepted, slip.edits, by);
}

Expected<void> amend(Pattern& pattern, const Review& review, std::size_t cause, const std::string& after,
                     const Signed& by) {
  const auto edits = amended_answer(review, cause, after);
  if (!edits.empty()) return record_change(pattern, review, cause, QueryAnswer::amended, edits, by);
  Signed told = by;
  if (told.reply.empty()) told.reply = after;
  answered_row(pattern, review, cause, QueryAnswer::amended, told);
  return {};
}

void reopen(Pattern& pattern, QueryId row) {
  auto& queries = pattern.queries;
  const auto it =
      std::find_if(queries.begin(), queries.end(), [&](const Query& one) { return one.id == row; });
  if (it == queries.end()) return;
  const Query reopened = *it;
  for (Query& one : queries)
    if (one.id == row || (one.finding == reopened.finding && one.answer == reopened.answer &&
                          one.when == reopened.when && one.who == reopened.who))
      take_back(one);
  queries.erase(std::remove_if(queries.begin(), queries.end(), says_nothing), queries.end());
}

}  // namespace skeinproof
