// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/likely_slips.h"

#include <algorithm>

#include "core/review/compare_findings.h"
#include "core/review/slip_explains.h"

namespace skeinproof {
namespace {

// Steps of work: a clock would make the answer depend on the machine.
constexpr std::size_t most_steps = 400'000'000;
constexpr std::size_t steps_a_statement = 200;

std::size_t steps_an_edit(const PrintedView& printed) {
  return 2000 + printed.text().size() + steps_a_statement * printed.reading().statements.size();
}

// The words that change, from the first to the last.
TextSpan changed_span(const std::vector<TextEdit>& edits) {
  return {edits.front().span.begin, edits.back().span.end};
}

std::string words_after(std::string_view text, const std::vector<TextEdit>& edits) {
  const TextSpan span = changed_span(edits);
  std::vector<TextEdit> within = edits;
  for (TextEdit& edit : within) {
    edit.span.begin -= span.begin;
    edit.span.end -= span.begin;
  }
  return edited(words_at(text, span), within);
}

class Judge {
 public:
  explicit Judge(const SlipSearchInput& input) : input_(input) {}

  // Absent where the edit clears nothing or opens something.
  std::optional<SlipFound> judge(const SlipCandidate& candidate) const {
    const PrintedView& before = input_.printed;
    const std::string text = edited(before.text(), candidate.edits);
    std::optional<Reading> reading;
    if (!candidate.figures.empty())
      reading = edited_reading(before.reading(), before.text(), candidate.figures);
    if (reading) {
      const PrintedView after(text, std::move(*reading), input_.bench.pattern());
      return judge(candidate, after);
    }
    const PrintedView after(text, input_.parts, input_.tellings, input_.bench.pattern());
    return judge(candidate, after);
  }

 private:
  std::optional<SlipFound> judge(const SlipCandidate& candidate, const PrintedView& after) const {
    const StatementKinds touched = kinds_that_differ(input_.printed.reading(), after.reading());
    SlipFound found;
    const auto& checks = all_checks();
    for (const bool with_findings : {true, false}) {
      for (std::size_t c = 0; c < checks.size(); ++c) {
        const CheckResult& was = input_.results[c];
        if (was.found.empty() == with_findings || !checks[c]->reads.meets(touched)) continue;
        const CheckResult now = input_.bench.run(*checks[c], after);
        if (now.not_checked.size() > was.not_checked.size()) return std::nullopt;
        const FindingChange change = compare_findings(was.found, now.found);
        if (!change.opens.empty()) return std::nullopt;
        for (const std::size_t i : change.closes) found.slip.clears.push_back(input_.rank[c][i]);
      }
      if (found.slip.clears.empty()) return std::nullopt;
    }
    std::sort(found.slip.clears.begin(), found.slip.clears.end());
    describe(candidate, after, found);
    return found;
  }

  void describe(const SlipCandidate& candidate, const PrintedView& after, SlipFound& found) const {
    const std::string_view text = input_.printed.text();
    found.kind = candidate.kind;
    found.changed = changed_characters(text, candidate.edits);
    found.slip.name = candidate.name;
    found.slip.edits = candidate.edits;
    found.slip.before = std::string(words_at(text, changed_span(candidate.edits)));
    found.slip.after = words_after(text, candidate.edits);
    const auto agrees = what_agrees(input_.bench.input(after), candidate.edits);
    found.explains = static_cast<int>(agrees.size());
    for (const std::string& one : agrees)
      found.slip.explains_too += (found.slip.explains_too.empty() ? "" : ", ") + one;
  }

  const SlipSearchInput& input_;
};

}  // namespace

SlipSearch search_slips(const SlipSearchInput& input) {
  SlipSearch search;
  const std::size_t most = most_steps / steps_an_edit(input.printed);
  const auto candidates = slip_candidates(input.bench.input(input.printed), input.findings, most);
  search.cut_short = candidates.size() >= most;
  const Judge judge(input);
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
