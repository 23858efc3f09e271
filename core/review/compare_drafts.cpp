// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/compare_drafts.h"

#include <algorithm>
#include <limits>
#include <map>
#include <set>
#include <tuple>

#include "core/base/text.h"
#include "core/manuscript/read_manuscript.h"
#include "core/review/finding_words.h"

namespace skeinproof {
namespace {

// Printed words with single plain spaces.
std::string in_one_line(std::string_view words) {
  std::string out;
  for (const char c : tidy_spaces(words)) {
    const bool space = c == ' ' || c == '\n' || c == '\r' || c == '\t';
    if (!space)
      out += c;
    else if (!out.empty() && out.back() != ' ')
      out += ' ';
  }
  return std::string(trimmed(out));
}

std::string without_spaces(std::string words) {
  words.erase(std::remove(words.begin(), words.end(), ' '), words.end());
  return words;
}

struct Side {
  std::vector<std::string> words;    // of each statement
  std::vector<std::size_t> partner;  // in the other draft
  static constexpr std::size_t none = std::numeric_limits<std::size_t>::max();

  Side(std::string_view text, const Reading& reading) : partner(reading.statements.size(), none) {
    for (const Statement& one : reading.statements) words.push_back(in_one_line(words_at(text, one.span)));
  }
};

using Likeness = std::tuple<StatementKind, std::string, std::string, PrintedUnit>;
std::map<Likeness, std::vector<std::size_t>> by_likeness(const Reading& reading) {
  std::map<Likeness, std::vector<std::size_t>> all;
  for (std::size_t i = 0; i < reading.statements.size(); ++i) {
    const Statement& one = reading.statements[i];
    all[{one.kind, compared(one.subject), compared(one.qualifier), one.unit}].push_back(i);
  }
  return all;
}

void pair(Side& before, std::size_t i, Side& after, std::size_t j) {
  before.partner[i] = j;
  after.partner[j] = i;
}

// The same words first, in their order; what is left, in its order.
void pair_up(Side& before, const std::vector<std::size_t>& some, Side& after,
             const std::vector<std::size_t>& others) {
  std::map<std::string, std::vector<std::size_t>> waiting;
  for (auto j = others.rbegin(); j != others.rend(); ++j)
    waiting[without_spaces(after.words[*j])].push_back(*j);
  for (const std::size_t i : some) {
    auto& same = waiting[without_spaces(before.words[i])];
    if (same.empty()) continue;
    pair(before, i, after, same.back());
    same.pop_back();
  }
  auto j = others.begin();
  for (const std::size_t i : some) {
    if (before.partner[i] != Side::none) continue;
    while (j != others.end() && after.partner[*j] != Side::none) ++j;
    if (j == others.end()) return;
    pair(before, i, after, *j);
  }
}

Pattern with_drafts(const Pattern& pattern, std::vector<Draft> drafts) {
  Pattern one = pattern;
  one.queries.clear();
  one.drafts = std::move(drafts);
  return one;
}

std::vector<Finding> findings_of(const Pattern& pattern, const Assessment& assessment,
                                 std::vector<Draft> drafts) {
  return review(with_drafts(pattern, std::move(drafts)), assessment, {false}).findings;
}

}  // namespace

std::vector<StatementChange> compare_statements(std::string_view before, const Reading& before_reading,
                                                std::string_view after, const Reading& after_reading) {
  Side old_side(before, before_reading), new_side(after, after_reading);
  const auto others = by_likeness(after_reading);
  for (const auto& [likeness, some] : by_likeness(before_reading))
    if (const auto found = others.find(likeness); found != others.end())
      pair_up(old_side, some, new_side, found->second);

  // By place in the later draft; a gone one behind the statement that it stood behind.
  std::vector<std::pair<std::size_t, StatementChange>> placed;
  for (std::size_t j = 0; j < new_side.words.size(); ++j) {
    const Statement& one = after_reading.statements[j];
    StatementChange change{StatementFate::added, one.kind, one.subject, {}, new_side.words[j], {}, one.span};
    if (const std::size_t i = new_side.partner[j]; i != Side::none) {
      if (without_spaces(old_side.words[i]) == without_spaces(new_side.words[j])) continue;
      change.fate = StatementFate::changed;
      change.before = old_side.words[i];
      change.was = before_reading.statements[i].span;
    }
    placed.emplace_back(2 * j + 1, std::move(change));
  }
  std::size_t behind = 0;
  for (std::size_t i = 0; i < old_side.words.size(); ++i) {
    const Statement& one = before_reading.statements[i];
    if (const std::size_t j = old_side.partner[i]; j != Side::none)
      behind = 2 * j + 2;
    else
      placed.emplace_back(
          behind,
          StatementChange{StatementFate::gone, one.kind, one.subject, old_side.words[i], {}, one.span, {}});
  }
  std::stable_sort(placed.begin(), placed.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  std::vector<StatementChange> changes;
  for (auto& one : placed) changes.push_back(std::move(one.second));
  return changes;
}

DraftComparison compare_drafts(const Pattern& pattern, const Assessment& assessment, std::size_t before,
                               std::size_t after) {
  const Draft &old_draft = pattern.drafts->at(before), &new_draft = pattern.drafts->at(after);
  const Reading old_reading = read_manuscript(old_draft), new_reading = read_manuscript(new_draft);
  DraftComparison comparison;
  comparison.before_name = old_draft.name;
  comparison.after_name = new_draft.name;
  comparison.statements = compare_statements(old_draft.text, old_reading, new_draft.text, new_reading);
  comparison.not_moved = dependents_not_moved(old_draft.text, old_reading, new_draft.text, new_reading);
  comparison.before = findings_of(pattern, assessment, {old_draft});
  comparison.after = findings_of(pattern, assessment, {old_draft, new_draft});
  comparison.findings = compare_findings(comparison.before, comparison.after);
  return comparison;
}

std::size_t findings_closed(const Pattern& pattern, const Assessment& assessment, const Review& review) {
  std::set<std::string> closed, open;
  for (const Finding& finding : review.findings) open.insert(finding.key());
  std::vector<Draft> drafts;
  for (const Draft& draft : *pattern.drafts) {
    drafts.push_back(draft);
    const auto before = findings_of(pattern, assessment, drafts);
    for (const std::size_t i : compare_findings(before, review.findings).closes)
      if (!open.count(before[i].key())) closed.insert(before[i].key());
  }
  return closed.size();
}

}  // namespace skeinproof
