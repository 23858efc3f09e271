// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/likely_slips.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <set>

#include "core/review/compare_findings.h"
#include "core/review/slip_explains.h"

namespace skeinproof {
namespace {

// Steps of work: a clock would make the answer depend on the machine.
constexpr std::size_t most_steps = 400'000'000;
constexpr std::size_t steps_a_statement = 200;
constexpr std::size_t longest_shown = 80;  // bytes

std::size_t steps_an_edit(const PrintedView& printed) {
  return 2000 + printed.text().size() + steps_a_statement * printed.reading().statements.size();
}

// The words that change, from the first to the last. Where something is put in or cut out, or figures of two
// units change, the statement around is shown.
TextSpan shown_span(const PrintedView& printed, const SlipCandidate& candidate) {
  TextSpan span{candidate.edits.front().span.begin, candidate.edits.back().span.end};
  const bool alone = std::none_of(candidate.edits.begin(), candidate.edits.end(), [](const TextEdit& edit) {
    return edit.span.empty() || edit.after.empty();
  });
  if (alone && candidate.kind != SlipKind::units_exchanged) return span;
  const TextSpan changed = span;
  for (const Statement& statement : printed.reading().statements) {
    const bool around = statement.span.begin <= changed.end && changed.begin <= statement.span.end;
    const bool is_short = statement.span.end - statement.span.begin <= longest_shown;
    if (!around || !is_short || statement.values.empty()) continue;
    span.begin = std::min(span.begin, statement.span.begin);
    span.end = std::max(span.end, statement.span.end);
  }
  return span;
}

std::string words_after(std::string_view text, const TextSpan& span, const std::vector<TextEdit>& edits) {
  std::vector<TextEdit> within = edits;
  for (TextEdit& edit : within) {
    edit.span.begin -= span.begin;
    edit.span.end -= span.begin;
  }
  return edited(words_at(text, span), within);
}

// Tries candidates one after the other. A check that turned one down is asked earlier about the next: slips
// of one kind mostly fail for one reason.
class Judge {
 public:
  explicit Judge(const SlipSearchInput& input) : input_(input), order_(all_checks().size()) {
    std::iota(order_.begin(), order_.end(), std::size_t{0});
    for (std::size_t c = 0; c < input.results.size(); ++c)
      for (const Finding& finding : input.results[c].found)
        for (const std::size_t statement : finding.statements) doubting_[statement].insert(c);
  }

  // Absent where the edit clears nothing or opens something.
  std::optional<SlipFound> judge(const SlipCandidate& candidate) {
    const PrintedView& before = input_.printed;
    std::string text = edited(before.text(), candidate.edits);
    std::optional<Reading> reading;
    if (!candidate.figures.empty())
      reading = edited_reading(before.reading(), before.text(), candidate.figures);
    if (reading) {
      StatementKinds touched{};
      for (const FigureEdit& figure : candidate.figures)
        touched.add(before.reading().statements[figure.statement].kind);
      const PrintedView after(std::move(text), std::move(*reading), input_.bench.pattern());
      return judge(candidate, after, touched);
    }
    const PrintedView after(std::move(text), input_.parts, input_.tellings, input_.bench.pattern());
    return judge(candidate, after, kinds_that_differ(before.reading(), after.reading()));
  }

 private:
  // The checks whose findings rest on figures that the candidate changes: unless they clear something, no
  // other is asked.
  std::set<std::size_t> doubting(const SlipCandidate& candidate) const {
    std::set<std::size_t> checks;
    for (const FigureEdit& figure : candidate.figures)
      if (const auto found = doubting_.find(figure.statement); found != doubting_.end())
        checks.insert(found->second.begin(), found->second.end());
    return checks;
  }

  std::optional<SlipFound> judge(const SlipCandidate& candidate, const PrintedView& after,
                                 StatementKinds touched) {
    SlipFound found;
    const std::set<std::size_t> first = doubting(candidate);
    if (!first.empty()) {
      if (!ask(after, touched, found, [&](std::size_t c) { return first.count(c) != 0; }))
        return std::nullopt;
      if (found.slip.clears.empty()) return std::nullopt;
    }
    if (!ask(after, touched, found, [&](std::size_t c) { return first.count(c) == 0; })) return std::nullopt;
    if (found.slip.clears.empty()) return std::nullopt;
    std::sort(found.slip.clears.begin(), found.slip.clears.end());
    describe(candidate, after, found);
    return found;
  }

  // False where one of the checks finds something new or can no longer run.
  template <class Among>
  bool ask(const PrintedView& after, StatementKinds touched, SlipFound& found, Among&& among) {
    for (std::size_t at = 0; at < order_.size(); ++at) {
      const std::size_t c = order_[at];
      if (!among(c) || !all_checks()[c]->reads.meets(touched)) continue;
      const CheckResult& was = input_.results[c];
      const CheckResult now = input_.bench.run(*all_checks()[c], after);
      if (was.found.empty() && now.found.empty() && now.not_checked.size() <= was.not_checked.size())
        continue;
      const FindingChange change = compare_findings(was.found, now.found);
      if (!change.opens.empty() || now.not_checked.size() > was.not_checked.size()) {
        std::rotate(order_.begin(), order_.begin() + static_cast<std::ptrdiff_t>(at),
                    order_.begin() + static_cast<std::ptrdiff_t>(at) + 1);
        return false;
      }
      for (const std::size_t i : change.closes) found.slip.clears.push_back(input_.rank[c][i]);
    }
    return true;
  }

  void describe(const SlipCandidate& candidate, const PrintedView& after, SlipFound& found) const {
    const std::string_view text = input_.printed.text();
    found.kind = candidate.kind;
    found.changed = changed_characters(text, candidate.edits);
    found.slip.name = candidate.name;
    found.slip.edits = candidate.edits;
    const TextSpan shown = shown_span(input_.printed, candidate);
    found.slip.before = std::string(words_at(text, shown));
    found.slip.after = words_after(text, shown, candidate.edits);
    const auto agrees = what_agrees(input_.bench.input(after), candidate.edits);
    found.explains = static_cast<int>(agrees.size());
    for (const std::string& one : agrees)
      found.slip.explains_too += (found.slip.explains_too.empty() ? "" : ", ") + one;
  }

  const SlipSearchInput& input_;
  std::vector<std::size_t> order_;  // checks
  std::map<std::size_t, std::set<std::size_t>>
      doubting_;  // by statement, the checks whose findings rest on it
};

}  // namespace

SlipSearch search_slips(const SlipSearchInput& input) {
  SlipSearch search;
  const std::size_t most = most_steps / steps_an_edit(input.printed);
  const auto candidates = slip_candidates(input.bench.input(input.printed), input.findings, most);
  search.cut_short = candidates.size() >= most;
  Judge judge(input);
  for (const SlipCandidate& candidate : candidates)
    if (auto found = judge.judge(candidate)) search.found.push_back(std::move(*found));
  return search;
}

bool confirm(const SlipSearchInput& input, SlipFound& slip) {
  const PrintedView after(edited(input.printed.text(), slip.slip.edits), input.parts, input.tellings,
                          input.bench.pattern());
  const auto results = input.bench.run_all(after);
  slip.slip.clears.clear();
  for (std::size_t c = 0; c < results.size(); ++c) {
    const FindingChange change = compare_findings(input.results[c].found, results[c].found);
    if (!change.opens.empty() || results[c].not_checked.size() > input.results[c].not_checked.size())
      return false;
    for (const std::size_t i : change.closes) slip.slip.clears.push_back(input.rank[c][i]);
  }
  std::sort(slip.slip.clears.begin(), slip.slip.clears.end());
  return !slip.slip.clears.empty();
}

}  // namespace skeinproof
