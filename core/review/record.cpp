// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/record.h"

#include <algorithm>
#include <map>
#include <set>

#include "core/review/query_wording.h"
#include "core/review/record_rows.h"

namespace skeinproof {
namespace {

// Whose row is whose. A row that was kept goes first to the finding it rests on, should several have its key;
// one without an answer, or kept, whose finding is there in other sizes now goes to that.
std::vector<std::optional<std::size_t>> rows_of_causes(const std::vector<Query>& queries,
                                                       const Review& review) {
  std::multimap<std::string, std::size_t> by_key;
  for (std::size_t i = 0; i < queries.size(); ++i) by_key.emplace(queries[i].finding, i);
  std::vector<std::optional<std::size_t>> rows(review.causes.size());
  const auto match = [&](auto&& suits) {
    for (std::size_t c = 0; c < rows.size(); ++c)
      for (const std::size_t f : review.causes[c].findings) {
        if (rows[c]) break;
        const auto [first, last] = by_key.equal_range(review.findings[f].key());
        const auto found = std::find_if(
            first, last, [&](const auto& one) { return suits(queries[one.second], review.findings[f]); });
        if (found == last) continue;
        rows[c] = found->second;
        by_key.erase(found);
      }
  };
  match([&](const Query& query, const Finding& finding) {
    return query.answer == QueryAnswer::kept && rests_still(query, review, finding);
  });
  match([](const Query&, const Finding&) { return true; });
  for (const auto& left : by_key) {
    const std::size_t row = left.second;
    const Query& query = queries[row];
    if (query.answer != QueryAnswer::none && query.answer != QueryAnswer::kept) continue;
    const auto in_other_sizes = [&](std::size_t f) {
      return is_narrowed(query, review.findings[f]) || is_widened(query, review.findings[f]);
    };
    for (std::size_t c = 0; c < rows.size(); ++c) {
      const auto& findings = review.causes[c].findings;
      if (rows[c] || std::none_of(findings.begin(), findings.end(), in_other_sizes)) continue;
      rows[c] = row;
      break;
    }
  }
  return rows;
}

DecisionState state_of(const Query& query, const Review& review, const Cause& cause) {
  if (query.answer == QueryAnswer::none) return DecisionState::open;
  if (query.answer != QueryAnswer::kept) return DecisionState::answered;
  const bool rests = std::any_of(cause.findings.begin(), cause.findings.end(), [&](std::size_t f) {
    return rests_still(query, review, review.findings[f]);
  });
  return rests ? DecisionState::kept : DecisionState::lapsed;
}

bool is_on_sheet(const Decision& decision, Severity severity) {
  const OnSheet told = decision.row ? decision.row->on_sheet : OnSheet::by_severity;
  if (told != OnSheet::by_severity) return told == OnSheet::yes;
  return decision.undecided() && (severity == Severity::stop || severity == Severity::ask);
}

std::string wording_of(const Decision& decision, const HouseStyle& house, const Review& review) {
  if (decision.row && !decision.row->wording.empty()) return decision.row->wording;
  const Finding& finding = review.findings[decision.finding];
  for (const QueryWording& one : house.query_wordings)
    if (one.check == finding.check)
      if (auto words = filled_in(one.words, finding, review.text)) return *std::move(words);
  return finding.query;
}

// The numbers of the causes: as asked before, else the lowest that no other was asked under, in their order.
// So a sheet goes out with the numbers that were on the screen, and none of them moves afterwards.
std::vector<int> numbers_of(const std::vector<Query>& queries,
                            const std::vector<std::optional<std::size_t>>& rows) {
  std::set<int> taken;
  for (const Query& query : queries) taken.insert(query.asked_as);
  std::vector<int> numbers;
  int next = 1;
  for (const auto& row : rows) {
    const int asked = row ? queries[*row].asked_as : 0;
    while (asked == 0 && taken.count(next) > 0) ++next;
    numbers.push_back(asked != 0 ? asked : next++);
  }
  return numbers;
}

std::string number_words(int number) { return number > 0 ? "Q" + std::to_string(number) : std::string(); }

}  // namespace

Record record_of(const Pattern& pattern, const Review& review) {
  const auto rows = rows_of_causes(pattern.queries, review);
  const auto numbers = numbers_of(pattern.queries, rows);
  Record record;
  std::vector<bool> belongs(pattern.queries.size(), false);
  for (std::size_t c = 0; c < review.causes.size(); ++c) {
    const Cause& cause = review.causes[c];
    Decision decision;
    decision.asked = rows[c] && pattern.queries[*rows[c]].asked_as > 0;
    decision.number = number_words(numbers[c]);
    decision.finding = cause.findings.front();
    if (rows[c]) {
      belongs[*rows[c]] = true;
      decision.row = pattern.queries[*rows[c]];
      decision.state = state_of(*decision.row, review, cause);
    }
    decision.on_sheet = is_on_sheet(decision, review.findings[decision.finding].severity);
    decision.wording = wording_of(decision, pattern.house(), review);
    record.decisions.push_back(std::move(decision));
  }
  for (std::size_t i = 0; i < belongs.size(); ++i) {
    const Query& query = pattern.queries[i];
    if (!belongs[i] && (query.answer != QueryAnswer::none || query.asked_as > 0))
      record.closed.push_back({query, reply_state(pattern, query), number_words(query.asked_as)});
  }
  return record;
}

std::optional<std::size_t> row_of_cause(const Pattern& pattern, const Review& review, std::size_t cause) {
  return rows_of_causes(pattern.queries, review).at(cause);
}

ReplyState reply_state(const Pattern& pattern, const Query& query) {
  const bool changes = query.answer == QueryAnswer::accepted || query.answer == QueryAnswer::amended;
  const Draft* draft = pattern.draft();
  if (query.answer == QueryAnswer::none) return ReplyState::no_answer;
  if (!changes || query.before.empty() || draft == nullptr) return ReplyState::no_words;
  if (reply_place(draft->text, query)) return ReplyState::laid_over;
  const bool printed = draft->text.find(query.after) != std::string::npos;
  return printed ? ReplyState::printed : ReplyState::not_found;
}

}  // namespace skeinproof
