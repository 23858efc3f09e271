// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/record.h"

#include <algorithm>
#include <map>

#include "core/base/fingerprint.h"
#include "core/review/query_wording.h"
#include "core/review/record_rows.h"

namespace skeinproof {
namespace {

// Where a line stands in the text is nothing that a decision rests on.
std::string_view without_line_number(std::string_view line) {
  if (!line.starts_with("line ")) return line;
  const auto end = line.find_first_not_of("0123456789", 5);
  return end == std::string_view::npos ? std::string_view() : line.substr(end);
}

// Whose row is whose. A row that was kept goes first to the finding it rests on, should several have its key.
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
    return query.answer == QueryAnswer::kept && query.rested_on == rests_on(review, finding);
  });
  match([](const Query&, const Finding&) { return true; });
  return rows;
}

DecisionState state_of(const Query& query, const Review& review, const Cause& cause) {
  if (query.answer == QueryAnswer::none) return DecisionState::open;
  if (query.answer != QueryAnswer::kept) return DecisionState::answered;
  const bool rests = std::any_of(cause.findings.begin(), cause.findings.end(), [&](std::size_t f) {
    const Finding& finding = review.findings[f];
    return finding.key() == query.finding && rests_on(review, finding) == query.rested_on;
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

}  // namespace

Record record_of(const Pattern& pattern, const Review& review) {
  const auto rows = rows_of_causes(pattern.queries, review);
  Record record;
  std::vector<bool> belongs(pattern.queries.size(), false);
  for (std::size_t c = 0; c < review.causes.size(); ++c) {
    const Cause& cause = review.causes[c];
    Decision decision;
    decision.number = "Q" + std::to_string(c + 1);
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
  for (std::size_t i = 0; i < belongs.size(); ++i)
    if (!belongs[i] && pattern.queries[i].answer != QueryAnswer::none)
      record.closed.push_back({pattern.queries[i], reply_state(pattern, pattern.queries[i])});
  return record;
}

std::string rests_on(const Review& review, const Finding& finding) {
  std::uint64_t mark = fingerprint(finding.check);
  const auto add = [&](std::string_view words) { mark = fingerprint(words, fingerprint("\x1f", mark)); };
  for (const std::string& line : finding.evidence) add(without_line_number(line));
  for (const TextSpan& place : finding.places) add(words_at(review.text, place));
  for (const std::size_t statement : finding.statements)
    if (statement < review.reading.statements.size())
      add(words_at(review.text, review.reading.statements[statement].span));
  return fingerprint_words(mark);
}

std::optional<std::size_t> row_of_cause(const Pattern& pattern, const Review& review, std::size_t cause) {
  return rows_of_causes(pattern.queries, review).at(cause);
}

ReplyState reply_state(const Pattern& pattern, const Query& query) {
  const bool changes = query.answer == QueryAnswer::accepted || query.answer == QueryAnswer::amended;
  const Draft* draft = pattern.draft();
  if (!changes || query.before.empty() || draft == nullptr) return ReplyState::no_words;
  if (reply_place(draft->text, query)) return ReplyState::laid_over;
  const bool printed = draft->text.find(query.after) != std::string::npos;
  return printed ? ReplyState::printed : ReplyState::not_found;
}

}  // namespace skeinproof
