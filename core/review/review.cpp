// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/review.h"

#include <algorithm>
#include <limits>
#include <set>
#include <utility>

#include "core/review/causes.h"
#include "core/review/compare_findings.h"
#include "core/review/rehearsal.h"

namespace skeinproof {
namespace {

const std::vector<PartTold> no_parts;
const std::vector<Telling> no_tellings;

std::size_t place_of(const Finding& finding) {
  return finding.places.empty() ? std::numeric_limits<std::size_t>::max() : finding.places.front().begin;
}

// The findings of all checks in their order of rank, and the rank of each.
struct Ranked {
  std::vector<Finding> findings;
  std::vector<std::vector<std::size_t>> rank;  // by check and finding
};
Ranked ranked(const std::vector<CheckResult>& results) {
  std::vector<std::pair<std::size_t, std::size_t>> order;
  Ranked all;
  for (std::size_t c = 0; c < results.size(); ++c) {
    all.rank.emplace_back(results[c].found.size());
    for (std::size_t i = 0; i < results[c].found.size(); ++i) order.emplace_back(c, i);
  }
  const auto finding = [&](const auto& at) -> const Finding& { return results[at.first].found[at.second]; };
  std::stable_sort(order.begin(), order.end(), [&](const auto& a, const auto& b) {
    const Finding &one = finding(a), &other = finding(b);
    if (one.severity != other.severity) return one.severity < other.severity;
    return place_of(one) < place_of(other);
  });
  for (const auto& at : order) {
    all.rank[at.first][at.second] = all.findings.size();
    all.findings.push_back(finding(at));
  }
  return all;
}

const std::vector<PartTold>& parts_of(const Pattern& pattern) {
  return pattern.draft() ? pattern.draft()->parts : no_parts;
}
const std::vector<Telling>& tellings_of(const Pattern& pattern) {
  return pattern.draft() ? pattern.draft()->tellings : no_tellings;
}

std::vector<NotChecked> not_checked_of(const std::vector<CheckResult>& results) {
  std::vector<NotChecked> all;
  for (const CheckResult& result : results)
    all.insert(all.end(), result.not_checked.begin(), result.not_checked.end());
  return all;
}

}  // namespace

Review review(const Pattern& pattern, const Assessment& assessment, const ReviewOptions& options) {
  const auto& parts = parts_of(pattern);
  const auto& tellings = tellings_of(pattern);
  const PrintedView printed(printed_text(pattern, assessment), parts, tellings, pattern);
  const CheckBench bench(pattern, assessment, printed);
  const auto results = bench.run_all(printed);
  Ranked all = ranked(results);
  const SlipSearchInput search{bench, printed, parts, tellings, results, all.findings, all.rank};

  Review review;
  SlipSearch slips;
  if (options.search_slips) slips = search_slips(search);
  review.slips_cut_short = slips.cut_short;
  review.causes = causes_of(search, std::move(slips.found));
  review.text = printed.text();
  review.reading = printed.reading();
  review.not_checked = not_checked_of(results);
  review.checks_run = static_cast<int>(std::count_if(
      results.begin(), results.end(), [](const CheckResult& result) { return result.not_checked.empty(); }));
  review.findings = std::move(all.findings);
  return review;
}

Rehearsal rehearse(const Pattern& pattern, const Assessment& assessment, const Review& before,
                   const std::vector<TextEdit>& answer) {
  Rehearsal rehearsal;
  rehearsal.text = edited(before.text, answer);
  const PrintedView printed(rehearsal.text, parts_of(pattern), tellings_of(pattern), pattern);
  const auto results = CheckBench(pattern, assessment, printed).run_all(printed);
  const Ranked after = ranked(results);
  FindingChange change = compare_findings(before.findings, after.findings);
  rehearsal.closes = std::move(change.closes);
  rehearsal.stays = std::move(change.stays);
  for (const std::size_t i : change.opens) rehearsal.opens.push_back(after.findings[i]);
  std::set<std::string> could_not;
  for (const NotChecked& one : before.not_checked) could_not.insert(one.check);
  for (NotChecked& one : not_checked_of(results))
    if (!could_not.count(one.check)) rehearsal.no_longer_checked.push_back(std::move(one));
  return rehearsal;
}

}  // namespace skeinproof
